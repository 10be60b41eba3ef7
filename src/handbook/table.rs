//! One table of cited rows: how it is read, laid over and looked up.

use crate::source::{Cited, Mark, Origin, RowId};
use crate::yaml::{self, Complaint, Fault, Field, Words, key_words};
use foldhash::{HashMap, HashMapExt as _};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::collections::HashSet;

key_words!(Mark, "how the value was obtained", {
    "published" => Mark::Published,
    "second_hand" => Mark::SecondHand,
    "memory" => Mark::Memory,
    "common_practice" => Mark::CommonPractice,
    "judgement" => Mark::Judgement,
    "given" => Mark::Given,
});

impl Default for Mark {
    /// The mark that claims least.
    fn default() -> Self {
        Self::Judgement
    }
}

/// The head of an overlay, to know which table it is for.
#[derive(Debug, Deserialize)]
pub(super) struct Head {
    pub(super) id: Field<Words>,
}

/// Which keys a user's row may have.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Keys {
    /// Any: rows are found by their columns.
    Open,
    /// Those of the embedded table: rows are looked up by key, and one of another key would be taken in silence.
    Fixed,
}

/// A table file as written.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, bound = "V: DeserializeOwned")]
struct TableFile<V> {
    id: Field<Words>,
    title: Field<Words>,
    source: Option<Field<Words>>,
    locator: Option<Field<Words>>,
    mark: Option<Field<Mark>>,
    note: Option<Field<Words>>,
    used_by: Option<Field<Words>>,
    rows: Vec<RowFile<V>>,
}

/// A row as written; source, locator and mark are inherited from the table where the row has none.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields, bound = "V: DeserializeOwned")]
struct RowFile<V> {
    key: Field<Words>,
    value: V,
    range: Option<Field<Words>>,
    source: Option<Field<Words>>,
    locator: Option<Field<Words>>,
    mark: Option<Field<Mark>>,
    note: Option<Field<Words>>,
    used_by: Option<Field<Words>>,
}

/// Where a row comes from, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Citation {
    /// Key in `sources.yaml`, or the name of the overlay.
    pub source: String,
    /// Section, equation, table, row or page.
    pub locator: String,
    /// How it was obtained.
    pub mark: Mark,
    /// What a reader must know before using the value.
    pub note: Option<String>,
    /// Range printed by the source, as printed.
    pub range: Option<String>,
    /// Checks and laws that use the value.
    pub used_by: String,
}

/// One row.
#[doc(hidden)]
#[derive(Debug, Clone)]
pub struct Row<V> {
    /// Unique in the table.
    pub key: String,
    /// The value or values, by column.
    pub value: V,
    /// Where it comes from.
    pub citation: Citation,
    /// The embedded row that an overlay replaced.
    pub replaced: Option<Box<Row<V>>>,
    /// 0 for an embedded row, 1 for a row of the first file laid over, and so on.
    layer: u16,
}

/// One table.
#[doc(hidden)]
#[derive(Debug, Clone)]
pub struct Table<V> {
    /// The file stem.
    pub id: &'static str,
    /// What the table holds.
    pub title: String,
    /// The rows, in the order of the file, overlays at the end.
    pub rows: Vec<Row<V>>,
    /// Where the row with a key is.
    places: HashMap<String, usize>,
    position: u16,
    layers: u16,
}

impl<V: DeserializeOwned> Table<V> {
    /// Reads an embedded table from what the build made of its text; what is wrong with it is told in the text.
    pub(super) fn read(id: &'static str, position: u16, made: &str, text: &str) -> Result<Self, Vec<Fault>> {
        let made = serde_json::from_str(made).ok().and_then(|file| Self::of(id, position, file, text).ok());
        made.map_or_else(|| Self::of(id, position, yaml::read(text)?, text), Ok)
    }

    fn of(id: &'static str, position: u16, file: TableFile<V>, text: &str) -> Result<Self, Vec<Fault>> {
        let locate = |at, message: String| vec![yaml::locate::<TableFile<V>>(text, at, message.into())];
        if file.id.value.0 != id {
            return Err(locate(file.id.handle(), format!("expected the table \"{id}\", got \"{}\"", file.id.value.0)));
        }
        let (rows, places, title) = (Vec::new(), HashMap::new(), file.title.value.0.clone());
        let mut table = Self { id, title, rows, places, position, layers: 0 };
        for row in file.rows {
            let at = row.key.handle();
            let key = row.key.value.0;
            if table.places.insert(key.clone(), table.rows.len()).is_some() {
                return Err(locate(at, format!("the key \"{key}\" is given twice")));
            }
            let own = |own: Option<Field<Words>>, whole: &Option<Field<Words>>| {
                own.or_else(|| whole.clone()).map(|words| words.value.0)
            };
            let missing = |what: &str| locate(at, format!("row \"{key}\" and its table have no {what}"));
            let source = own(row.source, &file.source).ok_or_else(|| missing("source"))?;
            let locator = own(row.locator, &file.locator).ok_or_else(|| missing("locator"))?;
            let mark = row.mark.or_else(|| file.mark.clone()).ok_or_else(|| missing("mark"))?.value;
            let citation = Citation {
                source,
                locator,
                mark,
                note: own(row.note, &file.note),
                range: row.range.map(|range| range.value.0),
                used_by: own(row.used_by, &file.used_by).ok_or_else(|| missing("use"))?,
            };
            table.rows.push(Row { key, value: row.value, citation, replaced: None, layer: 0 });
        }
        Ok(table)
    }

    /// Lays a user's file of the same shape over the table: a row with a known key takes the place of the embedded
    /// one, a new key is added unless keys are fixed. Whatever it says of itself, the source of a laid-over row is the
    /// file and its mark is *given*.
    pub(super) fn lay_over(&mut self, name: &str, text: &str, keys: Keys) -> Result<(), Vec<Fault>> {
        let file: TableFile<V> = yaml::read(text)?;
        self.layers += 1;
        let mut seen = HashSet::new();
        for row in file.rows {
            let at = row.key.handle();
            let key = row.key.value.0;
            if !seen.insert(key.clone()) {
                let message = format!("the key \"{key}\" is given twice");
                return Err(vec![yaml::locate::<TableFile<V>>(text, at, message.into())]);
            }
            if keys == Keys::Fixed && self.get(&key).is_none() {
                return Err(vec![yaml::locate::<TableFile<V>>(text, at, self.unknown_key(&key))]);
            }
            let words = |words: Option<Field<Words>>| words.map(|words| words.value.0);
            // What the row cites nobody here has read: it is cited as the file's own word.
            let cites = words(row.source.or_else(|| file.source.clone()));
            let locator = words(row.locator.or_else(|| file.locator.clone())).unwrap_or_else(|| format!("row {key}"));
            let citation = Citation {
                source: name.to_owned(),
                locator: cites.map_or_else(|| locator.clone(), |cites| format!("citing {cites}, {locator}")),
                mark: Mark::Given,
                note: words(row.note.or_else(|| file.note.clone())),
                range: words(row.range),
                // A new row is for what the others of its table are for.
                used_by: self.rows.first().map(|row| row.citation.used_by.clone()).unwrap_or_default(),
            };
            let mut laid = Row { key, value: row.value, citation, replaced: None, layer: self.layers };
            match self.places.get(&laid.key).and_then(|place| self.rows.get_mut(*place)) {
                Some(own) => {
                    laid.citation.used_by.clone_from(&own.citation.used_by);
                    std::mem::swap(own, &mut laid);
                    own.replaced = Some(Box::new(laid));
                }
                None => {
                    self.places.insert(laid.key.clone(), self.rows.len());
                    self.rows.push(laid);
                }
            }
        }
        Ok(())
    }
}

impl<V> Table<V> {
    /// The handle of the row at `index`.
    #[expect(clippy::cast_possible_truncation, reason = "a table of more than 65,535 rows exceeds the input limit")]
    const fn id_of(&self, index: usize) -> RowId {
        RowId { table: self.position, row: index as u16 }
    }

    fn unknown_key(&self, key: &str) -> Complaint {
        let known: Vec<&str> = self.rows.iter().map(|row| row.key.as_str()).collect();
        let near = yaml::did_you_mean(key, &known, &[]);
        let id = self.id;
        Complaint::from(format!("the table \"{id}\" has no row \"{key}\", and looks for no keys but its own"))
            .advise(format!("{near}`jackpull handbook {id}` prints its rows"))
    }

    /// All rows with their origins, those laid over last first, so that a search that takes the first row that fits
    /// takes the user's.
    pub fn iter(&self) -> impl Iterator<Item = Cited<&Row<V>>> {
        (0..=self.layers).rev().flat_map(|layer| {
            let rows = self.rows.iter().enumerate().filter(move |(_, row)| row.layer == layer);
            rows.map(|(index, row)| Cited::new(row, Origin::Row(self.id_of(index))))
        })
    }

    /// The row that fits; of several the one laid over last, then the first.
    pub fn find(&self, mut fits: impl FnMut(&V) -> bool) -> Option<Cited<&V>> {
        self.iter().find(|row| fits(&row.value.value)).map(|row| row.map(|row| &row.value))
    }

    /// The row with that key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<Cited<&V>> {
        let place = *self.places.get(key)?;
        self.rows.get(place).map(|row| Cited::new(&row.value, Origin::Row(self.id_of(place))))
    }
}
