//! Where a value comes from, in words.

use super::Handbook;
use crate::source::{Mark, Origin};
use core::fmt;

/// Where a value comes from. Displayed as in a report: the row where it is one, source, locator and mark.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Reference<'a> {
    /// Source id.
    pub source: &'a str,
    /// Locator in the source; the field for a given value.
    pub locator: &'a str,
    /// Mark.
    pub mark: Mark,
    /// Table and key, where it is a row.
    pub row: Option<(&'static str, &'a str)>,
    /// What the embedded row says, where a user's table took its place.
    pub replaces: Option<String>,
}

impl Reference<'_> {
    /// The row as `TABLE/KEY`, where it is one.
    #[must_use]
    pub fn row_id(&self) -> Option<String> {
        self.row.map(|(table, key)| format!("{table}/{key}"))
    }

    /// What the locator says of the value, without where it is worked out.
    pub(crate) fn words(&self) -> &str {
        self.locator.trim_end_matches("; derivation in note")
    }

    /// The row, or the source.
    #[must_use]
    pub fn place(&self) -> String {
        self.row_id().unwrap_or_else(|| self.source.to_owned())
    }
}

impl Handbook {
    /// The words behind an origin. Those of a row of another handbook are not found: they stay empty.
    #[must_use]
    pub fn reference(&self, origin: Origin) -> Reference<'_> {
        let plain = |source, locator, mark| Reference { source, locator, mark, row: None, replaces: None };
        match origin {
            Origin::Row(id) => match self.citation(id) {
                Some((table, key, citation)) => Reference {
                    row: Some((table, key)),
                    replaces: self.replaced(id),
                    ..plain(&citation.source, &citation.locator, citation.mark)
                },
                None => plain("", "", Mark::Judgement),
            },
            Origin::Law(equation) => plain(equation.source, equation.locator, equation.mark),
            Origin::File(field) => plain("drive file", field.0, Mark::Given),
        }
    }
}

impl fmt::Display for Reference<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(row) = self.row_id() {
            write!(f, "{row}: {}, {} ({})", self.source, self.locator, self.mark)?;
        } else {
            write!(f, "{}: {} ({})", self.source, self.locator, self.mark)?;
        }
        match &self.replaces {
            Some(replaced) => write!(f, ", in place of {replaced}"),
            None => Ok(()),
        }
    }
}
