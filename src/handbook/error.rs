//! Why the handbook cannot answer.

use crate::yaml::Fault;
use thiserror::Error;

/// Why the handbook cannot answer.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum HandbookError {
    /// A table or an overlay is malformed.
    #[error("table {table}: {}", .faults.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))]
    Malformed {
        /// Table or overlay.
        table: String,
        /// What is wrong, with places.
        faults: Vec<Fault>,
    },
    /// A row that a check needs is not there.
    #[error("table {table} has no row for {wanted}")]
    NoRow {
        /// Table.
        table: &'static str,
        /// What was looked for.
        wanted: String,
    },
    /// A row, of a user's table most likely, has a value that nothing can be computed with.
    #[error("table {table}, {row}: {why}")]
    Unfit {
        /// Table.
        table: &'static str,
        /// What the row is for.
        row: String,
        /// What is wrong with it.
        why: &'static str,
    },
    /// An overlay names a table that is not there.
    #[error("there is no table \"{0}\"")]
    NoTable(String),
}
