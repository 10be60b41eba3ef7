//! The row of a user's table that a value which nothing can be computed with comes from.

use super::table::Head;
use super::{Handbook, HandbookError, sense};
use crate::yaml::{self, Complaint, Fault, Field, Words};
use serde::Deserialize;

/// The keys of a table and nothing else, to find their places.
#[derive(Debug, Deserialize)]
struct Keys {
    rows: Vec<Key>,
}

#[derive(Debug, Deserialize)]
struct Key {
    key: Field<Words>,
}

impl Handbook {
    /// The user's table file that an error comes from, by name and text, with the fault at its row: the row itself, or
    /// one in whose place the user's stands. `None` where no file is to blame.
    #[must_use]
    pub fn blamed(&self, error: &HandbookError) -> Option<(&str, &str, Fault)> {
        let (table, told, unfit) = match error {
            HandbookError::Unfit { table, row, .. } => (table, row, true),
            HandbookError::NoRow { table, wanted } => (table, wanted, false),
            _ => return None,
        };
        let names: Vec<&str> = told.split(", ").collect();
        let (_, overlays) = self.texts(table)?;
        let laid = self.written(table)?;
        for (name, text) in overlays.iter().rev() {
            let guilty = yaml::rows(text).into_iter().position(|(key, columns)| {
                if unfit {
                    return names.contains(&key.as_str()) || holds(&columns, &names);
                }
                let row = laid.iter().find(|row| row.key == key);
                row.and_then(|row| row.replaced.as_ref()).is_some_and(|replaced| holds(replaced, &names))
            });
            if let Some(index) = guilty {
                return Some((name, text, at_row(text, index, error.to_string().into())));
            }
        }
        // The tables of the book are sound, so that the fault is in one of the user's all the same.
        let (name, text) = overlays.last().filter(|_| unfit)?;
        Some((name, text, Fault { path: String::new(), complaint: error.to_string().into(), place: None }))
    }

    /// What makes no sense in the rows of a file that is to be laid over a table: what cannot be read is told elsewhere.
    pub(super) fn senseless(&self, table: &str, text: &str) -> Vec<Fault> {
        let before = self.written(table).unwrap_or_default();
        let wrong = |(index, (key, columns)): (usize, (String, Vec<(String, String)>))| {
            sense::wrong(table, &before, &key, &columns).map(|complaint| at_row(text, index, complaint))
        };
        // Each place costs one more reading of the text.
        yaml::rows(text).into_iter().enumerate().filter_map(wrong).take(yaml::MOST_FAULTS).collect()
    }

    /// The fault of an overlay of a table that is not there, at the line that names it, with the table that was probably meant.
    pub fn no_table(text: &str, id: &str) -> Fault {
        let complaint = Complaint::from(HandbookError::NoTable(id.to_owned()).to_string());
        let near = yaml::did_you_mean(id, Self::TABLES, &[]);
        let complaint = complaint.advise(format!("{near}`jackpull handbook` lists them"));
        match yaml::read::<Head>(text) {
            Ok(head) => yaml::locate::<Head>(text, head.id.handle(), complaint),
            Err(_) => Fault { path: "id".to_owned(), complaint, place: None },
        }
    }
}

/// Whether the columns of a row have all the words that it is told by.
fn holds(columns: &[(String, String)], names: &[&str]) -> bool {
    names.iter().all(|name| columns.iter().any(|(_, text)| text == name))
}

fn at_row(text: &str, index: usize, complaint: Complaint) -> Fault {
    let key = yaml::read::<Keys>(text).ok().and_then(|keys| keys.rows.get(index).map(|row| row.key.handle()));
    let fault = match key {
        Some(key) => yaml::locate::<Keys>(text, key, complaint),
        None => Fault { path: String::new(), complaint, place: None },
    };
    Fault { path: format!("rows[{index}]"), ..fault }
}
