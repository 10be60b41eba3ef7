//! Rows of tables as plain records, and how tests of many rows say what is wrong.

use jackpull::handbook::{
    GroundClass, GuidedTechnique, Handbook, Lubrication, Method, Rating, Row, Spoil, Table, TipModel, WaterSide,
};
use jackpull::quantity::{Dim, Measure};
use jackpull::yaml::{Field, Words};

/// One row as plain words and SI numbers, so that every column meets the same checks.
#[derive(Debug, Clone)]
pub(crate) struct Record {
    pub(crate) table: &'static str,
    pub(crate) key: String,
    pub(crate) words: Vec<(&'static str, String)>,
    pub(crate) numbers: Vec<Number>,
}

#[derive(Debug, Clone, Copy)]
pub(crate) struct Number {
    pub(crate) column: &'static str,
    pub(crate) value: f64,
    pub(crate) dim: Dim,
}

fn number<Q: Measure>(column: &'static str, field: &Field<Q>) -> Number {
    Number { column, value: si(field), dim: Q::DIM }
}

pub(crate) fn si<Q: Measure>(field: &Field<Q>) -> f64 {
    field.value.si()
}

impl Record {
    pub(crate) fn number(&self, column: &str) -> f64 {
        self.open(column).unwrap_or_else(|| panic!("{} {} has no {column}", self.table, self.key))
    }

    pub(crate) fn open(&self, column: &str) -> Option<f64> {
        self.numbers.iter().find(|number| number.column == column).map(|number| number.value)
    }

    pub(crate) fn word(&self, column: &str) -> &str {
        self.words.iter().find(|(name, _)| *name == column).map_or("", |(_, word)| word)
    }
}

trait InWords {
    fn in_words(&self) -> String;
}
impl InWords for Words {
    fn in_words(&self) -> String {
        self.0.clone()
    }
}
macro_rules! in_words {
    ($($kind:ty),+) => { $(impl InWords for $kind {
        fn in_words(&self) -> String {
            self.key().to_owned()
        }
    })+ };
}
in_words!(GuidedTechnique, GroundClass, WaterSide, Lubrication, TipModel, Rating, Spoil, Method);

/// Records of one table: words; numbers; numbers that may be absent.
macro_rules! records {
    ($book:ident.$table:ident: $($word:ident)*; $($number:ident)*; $($open:ident)*) => {
        $book.$table().unwrap().rows.iter().map(|row| Record {
            table: stringify!($table),
            key: row.key.clone(),
            words: vec![$((stringify!($word), row.value.$word.value.in_words())),*],
            numbers: [
                $(Some(number(stringify!($number), &row.value.$number)),)*
                $(row.value.$open.as_ref().map(|open| number(stringify!($open), open)),)*
            ].into_iter().flatten().collect(),
        }).collect::<Vec<Record>>()
    };
}
/// Records of one table whose rows are one number.
fn single<Q: Measure>(table: &Table<Field<Q>>) -> Vec<Record> {
    let record = |row: &Row<Field<Q>>| {
        let numbers = vec![number("value", &row.value)];
        Record { table: table.id, key: row.key.clone(), words: vec![], numbers }
    };
    table.rows.iter().map(record).collect()
}

/// Ground suitability, with the columns that may be absent.
fn suitability(book: &Handbook) -> Vec<Record> {
    let mut records = records!(book.ground_suitability: ground water jacking pullback; ;
        head_over head_to n_from n_below stone_over stone_to od_from od_below);
    for (record, row) in records.iter_mut().zip(&book.ground_suitability().unwrap().rows) {
        let columns = [
            ("auger", &row.value.auger),
            ("slurry", &row.value.slurry),
            ("open_shield", &row.value.open_shield),
            ("pullback_gravity", &row.value.pullback_gravity),
        ];
        for (column, cell) in columns {
            record.words.extend(cell.as_ref().map(|cell| (column, cell.value.in_words())));
        }
    }
    records
}

/// Every table that holds numbers.
pub(crate) fn tables_of_numbers(book: &Handbook) -> Vec<Vec<Record>> {
    vec![
        records!(book.clay_pipe: ; size outside_diameter weight rated_at_2_5 rated_at_3_0 rated_at_3_5 rating_strength;),
        single(book.clay_strength().unwrap()),
        records!(book.pe_iso4427: ; size sdr wall;),
        records!(book.pe_ips: ; size outside_diameter;),
        records!(book.pe_material: american german soft stiff; density tensile_yield;),
        records!(book.pe_pull_stress: edition material; up_to stress at;),
        records!(book.pe_duration_factor: edition; up_to factor;),
        records!(book.pe_modulus: material; duration modulus;),
        records!(book.pe_temperature: set; at factor;),
        records!(book.friction_band: ground water lubrication; low likely high;),
        records!(book.ground_class: ground tip; n_low n_likely n_high;),
        suitability(book),
        records!(book.guided_suitability: technique ground water rating; ; n_from n_below stone_to),
        records!(book.face: ; low likely high least_low least_likely least_high;),
        records!(book.bore_rule: ; times plus; od_from od_below),
        records!(book.method_limit: method; length; od_from od_to),
        single(book.practice_ratio().unwrap()),
        single(book.practice_pressure().unwrap()),
        single(book.practice_length().unwrap()),
        single(book.practice_angle().unwrap()),
        single(book.practice_duration().unwrap()),
        single(book.score_weight().unwrap()),
    ]
}

/// All faults at once, the first forty in words.
pub(crate) fn assert_none(faults: &[String]) {
    let first = faults.iter().take(40).map(String::as_str).collect::<Vec<_>>().join("\n");
    assert!(faults.is_empty(), "{} faults, the first of them:\n{first}", faults.len());
}

pub(crate) fn assert_all<T>(items: impl IntoIterator<Item = T>, fault: impl Fn(T) -> Option<String>) {
    assert_none(&items.into_iter().filter_map(fault).collect::<Vec<_>>());
}
