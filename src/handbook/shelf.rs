//! A table on its shelf, and what is written for every shelf alike.

use super::HandbookError;
use super::table::{Keys, Table};
use std::sync::{Arc, OnceLock};

/// One table on the shelf: what the build made of its text, the text, overlays, and, once asked for, its rows.
#[derive(Debug)]
pub(super) struct Shelf<V> {
    id: &'static str,
    position: u16,
    made: &'static str,
    text: &'static str,
    keys: Keys,
    overlays: Vec<(String, String)>,
    parsed: OnceLock<Result<Arc<Table<V>>, HandbookError>>,
}

impl<V: serde::de::DeserializeOwned> Shelf<V> {
    pub(super) const fn new(id: &'static str, position: u16, [made, text]: [&'static str; 2], keys: Keys) -> Self {
        Self { id, position, made, text, keys, overlays: Vec::new(), parsed: OnceLock::new() }
    }

    pub(super) fn table(&self) -> Result<&Table<V>, HandbookError> {
        let parse = || {
            let malformed = |table: &str| {
                let table = table.to_owned();
                move |faults| HandbookError::Malformed { table, faults }
            };
            let mut table = Table::read(self.id, self.position, self.made, self.text).map_err(malformed(self.id))?;
            for (name, text) in &self.overlays {
                table.lay_over(name, text, self.keys).map_err(malformed(name))?;
            }
            Ok(Arc::new(table))
        };
        self.parsed.get_or_init(parse).as_ref().map(|table| &**table).map_err(Clone::clone)
    }

    pub(super) fn with(&self, overlay: Option<(&str, &str)>) -> Self {
        let mut shelf = Self::new(self.id, self.position, [self.made, self.text], self.keys);
        shelf.overlays.clone_from(&self.overlays);
        // A table that nothing is laid over stays as it was parsed.
        if overlay.is_none() {
            shelf.parsed = self.parsed.clone();
        }
        shelf.overlays.extend(overlay.map(|(name, text)| (name.to_owned(), text.to_owned())));
        shelf
    }

    /// The embedded text, and the names and texts laid over it.
    pub(super) fn texts(&self) -> (&'static str, &[(String, String)]) {
        (self.text, &self.overlays)
    }
}

/// Which keys a user's rows may have: any, unless the shelf says `as fixed_keys`.
macro_rules! keys {
    () => {
        $crate::handbook::table::Keys::Open
    };
    (fixed_keys) => {
        $crate::handbook::table::Keys::Fixed
    };
}
pub(super) use keys;

/// Writes the handbook: `table: Row` a shelf, and `as fixed_keys` where rows are looked up by key and never by column.
macro_rules! shelves {
    ($($(#[$doc:meta])* $table:ident: $row:ty $(as $keys:ident)?),+ $(,)?) => {
        #[expect(non_camel_case_types, reason = "one name per table serves as position, field and file stem")]
        #[derive(Clone, Copy)]
        enum Position { $($table),+ }

        /// All tables, with a user's overlays laid over them.
        #[derive(Debug)]
        pub struct Handbook { $($table: Shelf<$row>,)+ }

        impl Handbook {
            /// Stems of the embedded table files.
            pub const TABLES: &'static [&'static str] = &[$(stringify!($table)),+];

            fn new() -> Self {
                Self { $($table: Shelf::new(
                    stringify!($table),
                    Position::$table as u16,
                    [
                        include_str!(concat!(env!("OUT_DIR"), "/", stringify!($table), ".json")),
                        include_str!(concat!("../tables/", stringify!($table), ".yaml")),
                    ],
                    keys!($($keys)?),
                ),)+ }
            }

            /// The text of an embedded table.
            #[must_use]
            pub fn embedded_text(id: &str) -> Option<&'static str> {
                match id {
                    $(stringify!($table) => Some(include_str!(concat!("../tables/", stringify!($table), ".yaml"))),)+
                    _ => None,
                }
            }

            $($(#[$doc])*
            ///
            /// # Errors
            /// If the table or an overlay of it is malformed.
            #[doc(hidden)]
            pub fn $table(&self) -> Result<&Table<$row>, HandbookError> {
                self.$table.table()
            })+

            /// Parses every table.
            ///
            /// # Errors
            /// The first malformed table.
            pub fn parse_all(&self) -> Result<(), HandbookError> {
                $(self.$table.table()?;)+
                Ok(())
            }

            fn laid_over(&self, id: &str, name: &str, text: &str) -> Option<Self> {
                Self::TABLES.contains(&id).then(|| Self {
                    $($table: self.$table.with((id == stringify!($table)).then_some((name, text))),)+
                })
            }

            /// The embedded text of a table, and the names and texts laid over it.
            fn texts(&self, id: &str) -> Option<(&'static str, &[(String, String)])> {
                match id {
                    $(stringify!($table) => Some(self.$table.texts()),)+
                    _ => None,
                }
            }

            /// Title of a table.
            ///
            /// # Errors
            /// If the table is malformed.
            pub fn title(&self, id: &str) -> Result<&str, HandbookError> {
                match id {
                    $(stringify!($table) => self.$table.table().map(|table| table.title.as_str()),)+
                    _ => Err(HandbookError::NoTable(id.to_owned())),
                }
            }

            /// Table, key and citation of a row.
            #[must_use]
            pub fn citation(&self, id: RowId) -> Option<(&'static str, &str, &Citation)> {
                $(if id.table == Position::$table as u16 {
                    let row = self.$table.table().ok()?.rows.get(usize::from(id.row))?;
                    return Some((stringify!($table), row.key.as_str(), &row.citation));
                })+
                None
            }

            /// Keys and citations of the rows of a table.
            ///
            /// # Errors
            /// If there is no such table or it is malformed.
            pub fn rows_of(&self, id: &str) -> Result<Vec<(&str, &Citation)>, HandbookError> {
                match id {
                    $(stringify!($table) => {
                        let rows = &self.$table.table()?.rows;
                        Ok(rows.iter().map(|row| (row.key.as_str(), &row.citation)).collect())
                    })+
                    _ => Err(HandbookError::NoTable(id.to_owned())),
                }
            }
        }
    };
}
pub(super) use shelves;
