//! Faults of an input file as a compiler prints them: place, source line, caret.

use crate::drive_file::InputError;
use crate::yaml::Fault;
use std::fmt::Write as _;

/// Every fault of `error` in the file `name` with the text `text`.
pub(super) fn render(name: &str, text: &str, error: &InputError) -> String {
    match error {
        InputError::Faults(faults) => faults.iter().map(|fault| one(name, text, fault)).collect(),
        other => format!("error: {name}: {other}\n"),
    }
}

fn one(name: &str, text: &str, fault: &Fault) -> String {
    let path = if fault.path.is_empty() { String::new() } else { format!("{}: ", fault.path) };
    let Some(place) = fault.place else {
        return format!("error: {name}: {path}{}\n", fault.message);
    };
    let mut out = format!("error: {name}:{}:{}: {path}{}\n", place.line, place.column, fault.message);
    if let Some(line) = text.lines().nth(place.line.saturating_sub(1)) {
        const LONGEST: usize = 120;
        let line: String = line.chars().map(|c| if c.is_control() { ' ' } else { c }).take(LONGEST).collect();
        let number = place.line.to_string();
        let margin = " ".repeat(number.len());
        let indent = " ".repeat(place.column.saturating_sub(1).min(LONGEST));
        let _ = write!(out, "{margin} |\n{number} | {line}\n{margin} | {indent}^\n");
    }
    out
}
