//! Right files with values that nobody should write, through the whole library: read, resolve, assess, print, and tables laid
//! over. `PROPTEST_CASES` is the budget.

use jackpull::quantity::UnitSystem;
use jackpull::report::Beside;
use jackpull::{DriveFile, Handbook, HandbookError, Report, choose};
use proptest::prelude::*;
use std::sync::Arc;

const FILES: [&str; 4] = [
    include_str!("../../examples/fennbridge_mill_lane.yaml"),
    include_str!("../../examples/fennbridge_quarry_road.yaml"),
    include_str!("../../examples/fennbridge_sallow_junction.yaml"),
    include_str!("../../examples/fennbridge_osier_road.yaml"),
];

/// What stands in place of a value: of another form, of another dimension, and at the ends of what numbers can be.
const VALUES: [&str; 20] = [
    "", "~", "true", "[]", "{}", "none", "0", "-1", "1e-300", "1e308", ".nan", "0 m", "1 mm", "5 m", "300 m", "-3 kPa",
    "40 %", "1e6 kN", "0.5 h", "silt",
];

/// The text with the value at one place, counted round, written anew or its line left out.
fn changed(text: &str, place: usize, value: Option<&str>) -> String {
    let places: Vec<(usize, usize)> = text
        .match_indices(": ")
        .map(|(at, mark)| {
            let from = at + mark.len();
            (from, from + text[from..].find([',', '}', ']', '\n']).unwrap_or(0))
        })
        .collect();
    let (from, to) = places[place % places.len()];
    match value {
        Some(value) => format!("{}{value}{}", &text[..from], &text[to..]),
        None => {
            let begin = text[..from].rfind('\n').map_or(0, |at| at + 1);
            let end = text[from..].find('\n').map_or(text.len(), |at| from + at + 1);
            format!("{}{}", &text[..begin], &text[end..])
        }
    }
}

fn change() -> impl Strategy<Value = (usize, Option<&'static str>)> {
    (any::<usize>(), prop::option::weighted(0.9, prop::sample::select(&VALUES[..])))
}

/// All that the library makes of a drive: faults that are told, or pages whose numbers are numbers.
fn through(text: &str, handbook: &Arc<Handbook>) -> Result<(), TestCaseError> {
    let Ok(file) = DriveFile::read(text) else { return Ok(()) };
    let Ok(drive) = file.resolve(handbook) else { return Ok(()) };
    let Ok(choice) = choose(&drive) else { return Ok(()) };
    let Ok(beside) = Beside::of(&file, handbook, &drive, &choice) else { return Ok(()) };
    let report = Report::new(&drive, &choice).with(&beside);
    for system in [UnitSystem::Si, UnitSystem::Us] {
        let pages = [report.text_in_full(system), report.html(system, true), report.crew(system)];
        for page in pages.into_iter().flatten() {
            let is_number = |word: &str| !matches!(word, "NaN" | "inf" | "-inf");
            prop_assert!(page.split([' ', '\n', '>', '<']).all(is_number), "{page}");
        }
        if let Ok(json) = report.json(system) {
            prop_assert!(serde_json::from_str::<serde_json::Value>(&json).is_ok());
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_drive_of_strange_values_is_refused_or_printed(
        file in prop::sample::select(&FILES[..]), changes in prop::collection::vec(change(), 1..4),
    ) {
        let text = changes.iter().fold(file.to_owned(), |text, (place, value)| changed(&text, *place, *value));
        through(&text, &Handbook::embedded())?;
    }

    #[test]
    fn a_table_of_strange_values_is_refused_or_laid_over(
        file in prop::sample::select(&FILES[..]), table in prop::sample::select(Handbook::TABLES),
        changes in prop::collection::vec(change(), 1..4),
    ) {
        let book = Handbook::embedded_text(table).unwrap();
        let text = changes.iter().fold(book.to_owned(), |text, (place, value)| changed(&text, *place, *value));
        match Handbook::embedded().with_overlay("ours.yaml", &text) {
            Ok(laid) => through(file, &Arc::new(laid))?,
            Err(HandbookError::Malformed { faults, .. }) => prop_assert!(!faults.is_empty()),
            Err(_) => {}
        }
    }
}
