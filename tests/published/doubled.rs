//! Doubles each number of each table in turn, lays it over the handbook, and asks every page. A number that no page
//! objects to is untested, and stands in `untested.txt` with the reason; no other does. Of a number of which a page notices a
//! tenth more ([`crate::tenth`]) its double is not asked for. Rows that nothing computes with
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
    pub(crate) pages: &'static [(&'static str, Page)],
}

macro_rules! sources {
    ($($($name:ident)::+),+ $(,)?) => {
        /// Every module that has pages.
        pub(crate) const SOURCES: &[Source] =
            &[$(Source { name: concat!($("/", stringify!($name)),+), pages: crate::$($name)::+::PAGES }),+];

        /// Without a doubling no page objects.
        #[test]
        pub(crate) fn nothing_is_found_in_the_embedded_tables() {
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
    worked::whole_drives,
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

/// One number of a table, and its row with that number changed.
#[derive(Debug)]
pub(crate) struct Cell {
    /// `table/row/column`; a row of one value has the column `value`.
    name: String,
    row: Value,
}

impl Cell {
    pub(crate) fn new(table: &str, key: &str, column: &str, value: Value) -> Self {
        Self { name: format!("{table}/{key}/{column}"), row: row(key, value) }
    }

    pub(crate) fn name(&self) -> &str {
        &self.name
    }

    /// `table/row`.
    pub(crate) fn of_row(&self) -> &str {
        self.name.rsplit_once('/').unwrap().0
    }

    pub(crate) fn table(&self) -> &str {
        self.name.split_once('/').unwrap().0
    }
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

fn row(key: &str, value: Value) -> Value {
    Value::Mapping(Mapping::from_iter([("key".into(), key.into()), ("value".into(), value)]))
}

fn laid_over(table: &str, rows: Vec<Value>) -> String {
    let file = Mapping::from_iter([
        ("id".into(), table.into()),
        ("title".into(), "rows changed".into()),
        ("rows".into(), Value::Sequence(rows)),
    ]);
    serde_yaml::to_string(&file).unwrap()
}

pub(crate) fn overlay(table: &str, key: &str, value: Value) -> String {
    laid_over(table, vec![row(key, value)])
}

/// The handbook with cells of different rows laid over; `None` where the loader refuses them.
pub(crate) fn with(cells: &[&Cell]) -> Option<Arc<Handbook>> {
    let mut tables: BTreeMap<&str, Vec<Value>> = BTreeMap::new();
    for cell in cells {
        tables.entry(cell.table()).or_default().push(cell.row.clone());
    }
    let mut handbook = Handbook::embedded();
    for (table, rows) in tables {
        handbook = Arc::new(handbook.with_overlay("changed", &laid_over(table, rows)).ok()?);
    }
    Some(handbook)
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

/// Every number of every table but the bibliography, so many times itself.
pub(crate) fn all_cells(factor: f64) -> Vec<Cell> {
    let tables = Handbook::TABLES.iter().filter(|table| **table != "sources");
    tables.flat_map(|table| cells(table, factor)).collect()
}

/// Every number of a table, so many times itself.
fn cells(table: &str, factor: f64) -> Vec<Cell> {
    let mut cells = Vec::new();
    for (key, _, value) in rows_in_use(table) {
        let key = key.as_str();
        let mut add = |column: &str, value: Value| {
            cells.push(Cell::new(table, key, column, value));
        };
        match &value {
            Value::Mapping(columns) => {
                for (column, value) in columns {
                    if let Some(more) = scalar(value).as_deref().and_then(|text| times(text, factor)) {
                        let mut changed = columns.clone();
                        changed.insert(column.clone(), more.into());
                        add(column.as_str().unwrap(), Value::Mapping(changed));
                    }
                }
            }
            value => {
                if let Some(more) = scalar(value).as_deref().and_then(|text| times(text, factor)) {
                    add("value", more.into());
                }
            }
        }
    }
    cells
}

/// Where a page stands, its name and the page.
pub(crate) type Named = (&'static str, &'static str, Page);

/// Every page.
pub(crate) fn pages() -> Vec<Named> {
    SOURCES.iter().flat_map(|source| source.pages.iter().map(|(name, page)| (source.name, *name, *page))).collect()
}

/// The page that objects, where one does. `pages` is put in the order of last use: neighbours are mostly seen by the same
/// page. An overlay that the loader refuses is seen by none.
pub(crate) fn catcher(cell: &Cell, pages: &mut [Named]) -> Option<Named> {
    let handbook = with(&[cell])?;
    first(pages, |page| !run(page, &handbook).is_empty())
}

/// The first page that objects, put before the others.
pub(crate) fn first(pages: &mut [Named], objects: impl Fn(Page) -> bool) -> Option<Named> {
    let place = pages.iter().position(|(_, _, page)| objects(*page))?;
    pages[..=place].rotate_right(1);
    Some(pages[0])
}

/// Each cell with what `look` sees of it; every thread has its own order of the pages.
pub(crate) fn each<C: Sync, T: Send>(cells: &[C], look: impl Fn(&C, &mut [Named]) -> T + Sync) -> Vec<(&C, T)> {
    let next = AtomicUsize::new(0);
    let work = || {
        let (mut pages, mut seen) = (pages(), Vec::new());
        while let Some(cell) = cells.get(next.fetch_add(1, Ordering::Relaxed)) {
            seen.push((cell, look(cell, &mut pages)));
        }
        seen
    };
    let threads = thread::available_parallelism().map_or(1, usize::from);
    thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        workers.into_iter().flat_map(|worker| worker.join().unwrap()).collect()
    })
}

/// Names of the cells that no page objects to. Those of which none is known to are laid over many at a time, a number of a row
/// at once: where no page objects then, none looks at any.
pub(crate) fn untested<'c>(cells: &'c [Cell], listed: &BTreeSet<&str>) -> BTreeSet<&'c str> {
    let (mut groups, mut ranks) = (Vec::new(), Vec::<Vec<&Cell>>::new());
    let mut of_row: BTreeMap<&str, usize> = BTreeMap::new();
    for cell in cells {
        if !listed.contains(cell.name()) {
            groups.push(vec![cell]);
            continue;
        }
        let rank = of_row.entry(cell.of_row()).and_modify(|rank| *rank += 1).or_default();
        if ranks.len() <= *rank {
            ranks.push(Vec::new());
        }
        ranks[*rank].push(cell);
    }
    groups.extend(ranks.iter().flat_map(|rank| rank.chunks(32)).map(<[&Cell]>::to_vec));
    let seen = each(&groups, |group, pages| {
        let (fit, mut unseen): (Vec<&Cell>, Vec<&Cell>) = group.iter().partition(|cell| with(&[**cell]).is_some());
        unseen.extend(of_none(&fit, pages));
        unseen
    });
    seen.into_iter().flat_map(|(_, unseen)| unseen).map(|cell| cell.name.as_str()).collect()
}

/// Those that no page objects to.
fn of_none<'c>(cells: &[&'c Cell], pages: &mut [Named]) -> Vec<&'c Cell> {
    let are_unseen =
        with(cells).is_some_and(|handbook| first(pages, |page| !run(page, &handbook).is_empty()).is_none());
    if are_unseen {
        return cells.to_vec();
    }
    if cells.len() < 2 {
        return Vec::new();
    }
    let (one, other) = cells.split_at(cells.len() / 2);
    let mut unseen = of_none(one, pages);
    unseen.extend(of_none(other, pages));
    unseen
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
    let mut cells = all_cells(2.0);
    let noticed = crate::tenth::Listed::read();
    cells.retain(|cell| !noticed.is_noticed(cell.name()));
    let untested = untested(&cells, &listed);
    let missing: Vec<&&str> = untested.difference(&listed).collect();
    let stale: Vec<&&str> = listed.difference(&untested).collect();
    assert!(
        missing.is_empty() && stale.is_empty(),
        "{} numbers of which a tenth is not noticed, {} untested\nmissing in untested.txt: {missing:#?}\nlisted, but tested or gone: {stale:#?}",
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
    let mut pages = pages();
    let cells = cells("clay_pipe", 2.0);
    let rating = cells.iter().find(|cell| cell.name() == "clay_pipe/us_8_in/rated_at_3_0").unwrap();
    assert!(catcher(rating, &mut pages).is_some());
    let of_ramp = |value: &str| Cell::new("practice_angle", "pull.ramp", "value", value.into());
    assert!(catcher(&of_ramp("15 deg"), &mut pages).is_none());
    let refused = of_ramp("15 mm");
    assert!(with(&[&refused]).is_none());
    assert!(catcher(&refused, &mut pages).is_none());
    assert_eq!(of_none(&[rating, &of_ramp("15 deg")], &mut pages).len(), 1);
}
