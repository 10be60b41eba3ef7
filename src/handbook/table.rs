//! One table of cited rows: how it is read, laid over and looked up.

use crate::source::{Cited, Mark, Origin, RowId};
use crate::yaml::{self, Complaint, Fault, Field, Handle, Words, key_words};
use core::fmt;
use core::marker::PhantomData;
use foldhash::{HashMap, HashMapExt as _};
use serde::de::{DeserializeOwned, Error, MapAccess, Visitor};
use serde::{Deserialize, Deserializer};

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
#[derive(Debug)]
struct TableFile<V> {
    id: Field<Words>,
    title: Field<Words>,
    told: Told,
    rows: Vec<RowFile<V>>,
}

/// A row as written; source, locator and mark are inherited from the table where the row has none.
#[derive(Debug)]
struct RowFile<V> {
    key: Field<Words>,
    told: Told,
    value: V,
}

/// What a table and a row may tell alike. It is read apart from what is of a type of its own: written by `derive` for each of
/// the tables, the reading of it was half of the crate as built.
#[derive(Debug, Default)]
struct Told {
    name: Option<Field<Words>>,
    title: Option<Field<Words>>,
    range: Option<Field<Words>>,
    source: Option<Field<Words>>,
    locator: Option<Field<Words>>,
    mark: Option<Field<Mark>>,
    note: Option<Field<Words>>,
    used_by: Option<Field<Words>>,
    /// The parts that were there, by bit.
    seen: u16,
}

/// What a key of either is.
#[derive(Debug, Clone, Copy)]
enum Part {
    Name,
    Title,
    Range,
    Source,
    Locator,
    Mark,
    Note,
    UsedBy,
    /// What is of a type of its own.
    Own,
}

/// Declares the keys of a table file or a row.
macro_rules! parts {
    ($($name:ident: $($key:ident $word:literal $part:ident),+;)+) => {$(
        #[derive(Debug, Clone, Copy, Deserialize)]
        #[serde(field_identifier)]
        enum $name { $(#[serde(rename = $word)] $key),+ }

        impl IsPart for $name {
            const KEYS: &'static [&'static str] = &[$($word),+];
            fn part(self) -> (Part, &'static str) {
                match self { $(Self::$key => (Part::$part, $word)),+ }
            }
        }
    )+};
}

trait IsPart: DeserializeOwned {
    const KEYS: &'static [&'static str];
    /// What it is, and how it is written.
    fn part(self) -> (Part, &'static str);
}

parts! {
    OfTable: Id "id" Name, Title "title" Title, Source "source" Source, Locator "locator" Locator, Mark "mark" Mark,
        Note "note" Note, UsedBy "used_by" UsedBy, Rows "rows" Own;
    OfRow: Key "key" Name, Value "value" Own, Range "range" Range, Source "source" Source, Locator "locator" Locator,
        Mark "mark" Mark, Note "note" Note, UsedBy "used_by" UsedBy;
}

impl Told {
    /// Reads on to the key whose value is of a type of its own; false where no more comes.
    fn until_own<'de, K: IsPart, A: MapAccess<'de>>(&mut self, map: &mut A) -> Result<bool, A::Error> {
        while let Some(key) = map.next_key::<K>()? {
            let (part, word) = key.part();
            let bit = 1 << part as u16;
            if self.seen & bit != 0 {
                return Err(A::Error::duplicate_field(word));
            }
            self.seen |= bit;
            match part {
                Part::Name => self.name = Some(map.next_value()?),
                Part::Title => self.title = Some(map.next_value()?),
                Part::Range => self.range = map.next_value()?,
                Part::Source => self.source = map.next_value()?,
                Part::Locator => self.locator = map.next_value()?,
                Part::Mark => self.mark = map.next_value()?,
                Part::Note => self.note = map.next_value()?,
                Part::UsedBy => self.used_by = map.next_value()?,
                Part::Own => return Ok(true),
            }
        }
        Ok(false)
    }

    /// What is written of a row of an embedded table, where it tells nothing by the table.
    fn citation(&self, key: &Field<Words>, row: Self) -> Result<Citation, Wrong> {
        let own = |own: Option<Field<Words>>, whole: &Option<Field<Words>>| {
            own.or_else(|| whole.clone()).map(|words| words.value.0)
        };
        let missing =
            |what: &str| (key.handle(), format!("row \"{}\" and its table have no {what}", key.value.0).into());
        Ok(Citation {
            source: own(row.source, &self.source).ok_or_else(|| missing("source"))?,
            locator: own(row.locator, &self.locator).ok_or_else(|| missing("locator"))?,
            mark: row.mark.or_else(|| self.mark.clone()).ok_or_else(|| missing("mark"))?.value,
            note: own(row.note, &self.note),
            range: row.range.map(|range| range.value.0),
            used_by: own(row.used_by, &self.used_by).ok_or_else(|| missing("use"))?,
        })
    }

    /// What is written of a row of a file of this name that is laid over; what it cites nobody here has read, so that it is
    /// cited as the file's own word.
    fn laid(&self, name: &str, key: &str, row: Self, used_by: String) -> Citation {
        let words = |own: Option<Field<Words>>, whole: &Option<Field<Words>>| {
            own.or_else(|| whole.clone()).map(|words| words.value.0)
        };
        let cites = words(row.source, &self.source);
        let locator = words(row.locator, &self.locator).unwrap_or_else(|| format!("row {key}"));
        Citation {
            source: name.to_owned(),
            locator: cites.map_or_else(|| locator.clone(), |cites| format!("citing {cites}, {locator}")),
            mark: Mark::Given,
            note: words(row.note, &self.note),
            range: row.range.map(|range| range.value.0),
            used_by,
        }
    }
}

struct Reads<T>(PhantomData<T>);

impl<'de, V: DeserializeOwned> Deserialize<'de> for TableFile<V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_struct("TableFile", OfTable::KEYS, Reads::<Self>(PhantomData))
    }
}

impl<'de, V: DeserializeOwned> Visitor<'de> for Reads<TableFile<V>> {
    type Value = TableFile<V>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("struct TableFile")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<TableFile<V>, A::Error> {
        let (mut told, mut rows) = (Told::default(), None);
        while told.until_own::<OfTable, A>(&mut map)? {
            rows = Some(map.next_value()?);
        }
        let id = told.name.take().ok_or_else(|| A::Error::missing_field("id"))?;
        let title = told.title.take().ok_or_else(|| A::Error::missing_field("title"))?;
        Ok(TableFile { id, title, told, rows: rows.ok_or_else(|| A::Error::missing_field("rows"))? })
    }
}

impl<'de, V: DeserializeOwned> Deserialize<'de> for RowFile<V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_struct("RowFile", OfRow::KEYS, Reads::<Self>(PhantomData))
    }
}

impl<'de, V: DeserializeOwned> Visitor<'de> for Reads<RowFile<V>> {
    type Value = RowFile<V>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("struct RowFile")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<RowFile<V>, A::Error> {
        let (mut told, mut value) = (Told::default(), None);
        while told.until_own::<OfRow, A>(&mut map)? {
            value = Some(map.next_value()?);
        }
        let key = told.name.take().ok_or_else(|| A::Error::missing_field("key"))?;
        Ok(RowFile { key, told, value: value.ok_or_else(|| A::Error::missing_field("value"))? })
    }
}

/// What is wrong with a file, and where.
type Wrong = (Handle, Complaint);

fn twice(key: &Field<Words>) -> Wrong {
    (key.handle(), format!("the key \"{}\" is given twice", key.value.0).into())
}

/// Notes the place of a row.
fn placed(places: &mut HashMap<String, usize>, key: &Field<Words>) -> Result<(), Wrong> {
    let place = places.len();
    if places.insert(key.value.0.clone(), place).is_some() { Err(twice(key)) } else { Ok(()) }
}

fn unknown_key(id: &str, known: &[&str], key: &Field<Words>) -> Wrong {
    let (at, key) = (key.handle(), &key.value.0);
    let near = yaml::did_you_mean(key, known, &[]);
    let complaint =
        Complaint::from(format!("the table \"{id}\" has no row \"{key}\", and looks for no keys but its own"));
    (at, complaint.advise(format!("{near}`jackpull handbook {id}` prints its rows")))
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
        Self::built(id, position, file)
            .map_err(|(at, complaint)| vec![yaml::locate::<TableFile<V>>(text, at, complaint)])
    }

    fn built(id: &'static str, position: u16, file: TableFile<V>) -> Result<Self, Wrong> {
        let own = &file.id.value.0;
        if own != id {
            return Err((file.id.handle(), format!("expected the table \"{id}\", got \"{own}\"").into()));
        }
        let (mut rows, mut places) = (Vec::with_capacity(file.rows.len()), HashMap::new());
        for RowFile { key, told, value } in file.rows {
            placed(&mut places, &key)?;
            let citation = file.told.citation(&key, told)?;
            rows.push(Row { key: key.value.0, value, citation, replaced: None, layer: 0 });
        }
        Ok(Self { id, title: file.title.value.0, rows, places, position, layers: 0 })
    }

    /// Lays a user's file of the same shape over the table: a row with a known key takes the place of the embedded
    /// one, a new key is added unless keys are fixed. Whatever it says of itself, the source of a laid-over row is the
    /// file and its mark is *given*.
    pub(super) fn lay_over(&mut self, name: &str, text: &str, keys: Keys) -> Result<(), Vec<Fault>> {
        let file = yaml::read(text)?;
        self.laid(name, file, keys).map_err(|(at, complaint)| vec![yaml::locate::<TableFile<V>>(text, at, complaint)])
    }

    fn laid(&mut self, name: &str, file: TableFile<V>, keys: Keys) -> Result<(), Wrong> {
        self.layers += 1;
        let mut seen = HashMap::new();
        // A new row is for what the others of its table are for.
        let used_by = self.rows.first().map(|row| row.citation.used_by.clone()).unwrap_or_default();
        for RowFile { key, told, value } in file.rows {
            placed(&mut seen, &key)?;
            let place = self.places.get(&key.value.0).copied();
            if keys == Keys::Fixed && place.is_none() {
                let known: Vec<&str> = self.rows.iter().map(|row| row.key.as_str()).collect();
                return Err(unknown_key(self.id, &known, &key));
            }
            let key = key.value.0;
            let citation = file.told.laid(name, &key, told, used_by.clone());
            let mut laid = Row { key, value, citation, replaced: None, layer: self.layers };
            match place.and_then(|place| self.rows.get_mut(place)) {
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
