//! The rows of a table as they are written: the digits and units of the book, before any conversion.

use super::Handbook;
use crate::source::RowId;
use crate::yaml;

/// A row as written.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Written {
    /// Key.
    pub key: String,
    /// Columns and their texts; a table of single values has one column without a name.
    pub columns: Vec<(String, String)>,
    /// The embedded row that an overlay took the place of.
    pub replaced: Option<Vec<(String, String)>>,
}

impl Written {
    /// The columns in one line.
    #[must_use]
    pub fn line(&self) -> String {
        line(&self.columns)
    }
}

/// Columns in one line: `low 3 kPa, likely 8 kPa`.
#[must_use]
pub fn line(columns: &[(String, String)]) -> String {
    let texts =
        columns.iter().map(|(name, text)| if name.is_empty() { text.clone() } else { format!("{name} {text}") });
    texts.collect::<Vec<_>>().join(", ")
}

impl Handbook {
    /// The rows of a table as written, in the order of its rows; `None` where there is no such table.
    #[must_use]
    pub fn written(&self, table: &str) -> Option<Vec<Written>> {
        let (embedded, overlays) = self.texts(table)?;
        let written = |(key, columns)| Written { key, columns, replaced: None };
        let mut rows: Vec<Written> = yaml::rows(embedded).into_iter().map(written).collect();
        for (_, text) in overlays {
            for laid in yaml::rows(text).into_iter().map(written) {
                match rows.iter_mut().find(|row| row.key == laid.key) {
                    Some(row) => {
                        let replaced = row.replaced.take().unwrap_or_else(|| row.columns.clone());
                        *row = Written { replaced: Some(replaced), ..laid };
                    }
                    None => rows.push(laid),
                }
            }
        }
        Some(rows)
    }

    /// The rows that differ from those of the handbook, in words: what a user's file says in place of what.
    #[cfg_attr(not(feature = "report"), expect(dead_code, reason = "told in the report alone"))]
    pub(crate) fn laid_rows(&self) -> Vec<String> {
        let mut told = Vec::new();
        for table in Self::TABLES {
            let Some((embedded, [_, ..])) = self.texts(table) else { continue };
            let book = yaml::rows(embedded);
            for row in self.written(table).unwrap_or_default() {
                let (key, now) = (&row.key, row.line());
                match &row.replaced {
                    Some(before) if *before != row.columns => {
                        told.push(format!("{table}, {key}: {now} in place of {}", line(before)));
                    }
                    None if book.iter().all(|(own, _)| own != key) => {
                        told.push(format!("{table}, {key}: {now}, a new row that goes before those of the handbook"));
                    }
                    _ => {}
                }
            }
        }
        told
    }

    /// What the embedded row said, where an overlay took its place.
    #[must_use]
    pub fn replaced(&self, id: RowId) -> Option<String> {
        let (table, ..) = self.citation(id)?;
        let (_, overlays) = self.texts(table)?;
        if overlays.is_empty() {
            return None;
        }
        let rows = self.written(table)?;
        rows.get(usize::from(id.row))?.replaced.as_deref().map(line)
    }
}
