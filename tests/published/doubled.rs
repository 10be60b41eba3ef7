//! Doubles each number of each table in turn, lays it over the handbook, and asks every page. A number that no page
//! objects to is untested, and stands in `untested.txt` with the reason; no other does. Rows that nothing computes with
//! yet are left out: the handbook prints them as used by nothing yet.
//!
//! A zero has no double: one of its unit stands in for it. An overlay that the loader refuses counts as untested, since
//! then no page has looked at it.

use crate::found::{Page, run};
use jackpull::Handbook;
use jackpull::source::Mark;
use serde_yaml::{Mapping, Value};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// A source and its pages.
#[derive(Debug)]
pub(crate) struct Source {
    pub(crate) name: &'static str,
    pages: &'static [Page],
}

macro_rules! sources {
    ($($($name:ident)::+),+ $(,)?) => {
        /// Every module that has pages.
        pub(crate) const SOURCES: &[Source] =
            &[$(Source { name: concat!($("/", stringify!($name)),+), pages: crate::$($name)::+::PAGES }),+];

        /// Without a doubling no page objects.
        #[test]
        fn nothing_is_found_in_the_embedded_tables() {
            let handbook = Handbook::embedded();
            $(assert_eq!(crate::$($name)::+::check(&handbook), Vec::<String>::new());)+
        }
    };
}

sources!(
    acpa_dd_21,
    asme_b36_10,
    astm_c76,
    recalled::astm_f1804,
    recalled::astm_f1962,
    astm_f2619,
    awwa_c151,
    buried_pipe_texts,
    clay_sheet,
    recalled::cpar_1998,
    cn_annex_e,
    recalled::dvgw_gw_321,
    worked::end_schemes_check,
    recalled::en_545,
    field_cases,
    recalled::final_bore,
    recalled::gb_50268,
    hdd_utility_2005,
    worked::independent_check,
    invert_tolerance,
    iso_4065,
    jacked_pipe,
    recalled::jacking_stations,
    worked::joint_check,
    jswas_a6,
    recalled::metals,
    recalled::mop_133,
    pilot_tube_page,
    pja_introduction,
    ppi_2008,
    recalled::pressure_classes,
    worked::pressure_models,
    printed_limits,
    selections,
    recalled::service_tables,
    worked::site_check,
    moser_buried_pipe,
    worked::reaction_wall,
    recalled::prci_1995,
    worked::pull_check,
    recalled::pulled_materials,
    soil_scales,
    stein_2001,
    recalled::subgrade_sand,
    recalled::ten_states,
    recalled::suitability_matrix,
    recalled::surroundings,
    recalled::technique_limits,
    ttp_2010,
    ttp_2010_pull,
    recalled::aisc_360,
    recalled::uk_friction,
);

/// One number of a table, and the overlay that doubles it.
#[derive(Debug)]
pub(crate) struct Cell {
    /// `table/row/column`; a row of one value has the column `value`.
    pub(crate) name: String,
    pub(crate) overlay: String,
}

/// The text with its number so many times itself; `None` where it does not begin with a number. A zero becomes what the
/// other numbers grow by.
pub(crate) fn times(text: &str, factor: f64) -> Option<String> {
    let end = text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '-' | '+'))).unwrap_or(text.len());
    let (number, unit) = text.split_at(end);
    let number: f64 = number.parse().ok()?;
    let more = if number == 0.0 { factor - 1.0 } else { factor * number };
    Some(format!("{more}{unit}"))
}

pub(crate) fn scalar(value: &Value) -> Option<String> {
    match value {
        Value::String(text) => Some(text.clone()),
        Value::Number(number) => Some(number.to_string()),
        _ => None,
    }
}

pub(crate) fn overlay(table: &str, key: &str, value: Value) -> String {
    let row = Mapping::from_iter([("key".into(), key.into()), ("value".into(), value)]);
    let file = Mapping::from_iter([
        ("id".into(), table.into()),
        ("title".into(), "one row changed".into()),
        ("rows".into(), Value::Sequence(vec![Value::Mapping(row)])),
    ]);
    serde_yaml::to_string(&file).unwrap()
}

/// Rows of a table: key, mark and what they hold.
pub(crate) fn rows_in_use(table: &str) -> Vec<(String, Mark, Value)> {
    let handbook = Handbook::embedded();
    let citations = handbook.rows_of(table).unwrap();
    let cited = |key: &str| citations.iter().find(|(of, _)| *of == key);
    let file: Value = serde_yaml::from_str(Handbook::embedded_text(table).unwrap()).unwrap();
    let rows = file["rows"].as_sequence().unwrap().iter();
    let row = |row: &Value| {
        let key = row["key"].as_str().unwrap();
        cited(key).map(|(_, citation)| (key.to_owned(), citation.mark, row["value"].clone()))
    };
    rows.filter_map(row).collect()
}

/// Every number of a table, doubled.
fn cells(table: &str) -> Vec<Cell> {
    let mut cells = Vec::new();
    for (key, _, value) in rows_in_use(table) {
        let key = key.as_str();
        let mut add = |column: &str, value: Value| {
            cells.push(Cell { name: format!("{table}/{key}/{column}"), overlay: overlay(table, key, value) });
        };
        match &value {
            Value::Mapping(columns) => {
                for (column, value) in columns {
                    if let Some(twice) = scalar(value).as_deref().and_then(|text| times(text, 2.0)) {
                        let mut changed = columns.clone();
                        changed.insert(column.clone(), twice.into());
                        add(column.as_str().unwrap(), Value::Mapping(changed));
                    }
                }
            }
            value => {
                if let Some(twice) = scalar(value).as_deref().and_then(|text| times(text, 2.0)) {
                    add("value", twice.into());
                }
            }
        }
    }
    cells
}

/// Whether any page objects. `pages` is put in the order of last use: neighbours are mostly seen by the same page.
fn is_caught(cell: &Cell, pages: &mut [Page]) -> bool {
    let Ok(handbook) = Handbook::embedded().with_overlay("doubled", &cell.overlay) else { return false };
    let handbook = Arc::new(handbook);
    let catcher = pages.iter().position(|page| !run(*page, &handbook).is_empty());
    if let Some(catcher) = catcher {
        pages[..=catcher].rotate_right(1);
    }
    catcher.is_some()
}

/// Names of the cells that no page objects to.
pub(crate) fn untested(cells: &[Cell]) -> BTreeSet<&str> {
    let next = AtomicUsize::new(0);
    let work = || {
        let mut pages: Vec<Page> = SOURCES.iter().flat_map(|source| source.pages).copied().collect();
        let mut missed = BTreeSet::new();
        while let Some(cell) = cells.get(next.fetch_add(1, Ordering::Relaxed)) {
            if !is_caught(cell, &mut pages) {
                missed.insert(cell.name.as_str());
            }
        }
        missed
    };
    let threads = thread::available_parallelism().map_or(1, usize::from);
    thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        workers.into_iter().flat_map(|worker| worker.join().unwrap()).collect()
    })
}

/// A list of what is not tested: a name, two spaces, a reason; sorted.
pub(crate) fn listed(text: &'static str) -> BTreeMap<&'static str, &'static str> {
    let mut list = BTreeMap::new();
    let mut last = "";
    for line in text.lines().filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let (name, reason) = line.split_once("  ").unwrap_or_else(|| panic!("no reason: {line}"));
        assert!(!reason.trim().is_empty(), "no reason: {line}");
        assert!(last < name, "not sorted, or twice: {line}");
        last = name;
        list.insert(name, reason.trim());
    }
    list
}

#[test]
fn every_number_is_tested_or_listed() {
    // A page that objects anyway would catch every cell.
    nothing_is_found_in_the_embedded_tables();
    let listed: BTreeSet<&str> = listed(include_str!("untested.txt")).into_keys().collect();
    let cells: Vec<Cell> =
        Handbook::TABLES.iter().filter(|table| **table != "sources").flat_map(|table| cells(table)).collect();
    let untested = untested(&cells);
    let missing: Vec<&&str> = untested.difference(&listed).collect();
    let stale: Vec<&&str> = listed.difference(&untested).collect();
    assert!(
        missing.is_empty() && stale.is_empty(),
        "{} numbers, {} untested\nmissing in untested.txt: {missing:#?}\nlisted, but tested or gone: {stale:#?}",
        cells.len(),
        untested.len(),
    );
}

#[test]
fn a_text_is_doubled_by_its_number() {
    for (text, twice) in [
        ("11 in", Some("22 in")),
        ("3 %", Some("6 %")),
        ("13.3125 in", Some("26.625 in")),
        ("-20 degF", Some("-40 degF")),
        ("0.45 MPa", Some("0.9 MPa")),
        ("0 mm", Some("1 mm")),
        ("1.5", Some("3")),
        ("pe4xxx", None),
        ("any", None),
    ] {
        assert_eq!(times(text, 2.0).as_deref(), twice, "{text}");
    }
}

/// The net must hold: a cell that a page looks at is caught, one that nothing looks at is not, and an overlay that the
/// loader refuses is not either.
#[test]
fn a_doubled_rating_is_caught_and_a_refused_overlay_is_not() {
    nothing_is_found_in_the_embedded_tables();
    let mut pages: Vec<Page> = SOURCES.iter().flat_map(|source| source.pages).copied().collect();
    let cells = cells("clay_pipe");
    let rating = cells.iter().find(|cell| cell.name == "clay_pipe/us_8_in/rated_at_3_0").unwrap();
    assert!(is_caught(rating, &mut pages));
    let same = "id: practice_angle\ntitle: no change\nrows: [{ key: pull.ramp, value: 15 deg }]\n";
    assert!(!is_caught(&Cell { name: "no change".to_owned(), overlay: same.to_owned() }, &mut pages));
    let refused = "id: practice_angle\ntitle: a length\nrows: [{ key: pull.ramp, value: 15 mm }]\n";
    assert!(Handbook::embedded().with_overlay("doubled", refused).is_err());
    assert!(!is_caught(&Cell { name: "refused".to_owned(), overlay: refused.to_owned() }, &mut pages));
}
