//! Calls each rating of the tables of suitability *suitable* in turn, lays it over the handbook, and asks every page. A
//! rating that no page objects to is untested, and stands in `unrated.txt` with the reason; no other does.

use crate::doubled::{Cell, listed, untested, with};
use jackpull::Handbook;
use serde_yaml::Value;
use std::collections::BTreeSet;

const TABLES: [&str; 3] = ["ground_suitability", "guided_suitability", "ground_hazard"];

/// Every rating of a table that is not *suitable*, made so.
fn ratings(table: &str) -> Vec<Cell> {
    let file: Value = serde_yaml::from_str(Handbook::embedded_text(table).unwrap()).unwrap();
    let mut cells = Vec::new();
    for row in file["rows"].as_sequence().unwrap() {
        let (key, columns) = (row["key"].as_str().unwrap(), row["value"].as_mapping().unwrap());
        for (column, value) in columns {
            if matches!(value.as_str(), Some("marginal" | "unsuitable" | "depends")) {
                let mut changed = columns.clone();
                changed.insert(column.clone(), "suitable".into());
                cells.push(Cell::new(table, key, column.as_str().unwrap(), Value::Mapping(changed)));
            }
        }
    }
    cells
}

#[test]
fn every_rating_is_tested_or_listed() {
    let listed: BTreeSet<&str> = listed(include_str!("unrated.txt")).into_keys().collect();
    let cells: Vec<Cell> = TABLES.into_iter().flat_map(ratings).collect();
    for cell in &cells {
        assert!(with(&[cell]).is_some(), "{} is refused", cell.name());
    }
    let untested = untested(&cells, &listed);
    let missing: Vec<&&str> = untested.difference(&listed).collect();
    let stale: Vec<&&str> = listed.difference(&untested).collect();
    assert!(
        missing.is_empty() && stale.is_empty(),
        "{} ratings, {} untested\nmissing in unrated.txt: {missing:#?}\nlisted, but tested or gone: {stale:#?}",
        cells.len(),
        untested.len(),
    );
}
