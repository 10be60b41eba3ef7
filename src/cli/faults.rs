//! Faults of an input file as a compiler prints them: what, where, the source line with a caret, one line of advice.

use crate::yaml::Fault;
use serde_json::{Value, json};
use std::fmt::Write as _;

/// What is wrong with one input file.
pub(super) struct Faulty {
    name: String,
    text: String,
    faults: Vec<Fault>,
}

/// What a screen shows as it is, in place of what would disturb it.
fn harmless(text: &str) -> impl Iterator<Item = char> {
    text.chars().map(|c| if c.is_control() { ' ' } else { c })
}

impl Faulty {
    pub(super) fn new(name: &str, text: &str, faults: Vec<Fault>) -> Self {
        Self { name: name.to_owned(), text: text.to_owned(), faults }
    }

    /// Of which file.
    pub(super) fn name(&self) -> &str {
        &self.name
    }

    /// Of a text that its reader never saw: nothing of it is shown, and what has a name for the reader is told by it.
    pub(super) fn unseen(mut self, name: impl Fn(&str) -> Option<String>) -> Self {
        self.text.clear();
        for fault in &mut self.faults {
            fault.place = None;
            if let Some(name) = name(&fault.path) {
                fault.path = name;
            }
        }
        self
    }

    /// In one line: the messages with their places.
    pub(super) fn line(&self) -> String {
        let one = |fault: &Fault| {
            let path = if fault.path.is_empty() { String::new() } else { format!("{}: ", fault.path) };
            let place = fault.place.map_or_else(String::new, |at| format!(" (line {}, column {})", at.line, at.column));
            format!("{path}{}{place}", fault.complaint.message)
        };
        self.faults.iter().map(one).collect::<Vec<_>>().join("; ")
    }

    /// Something wrong with the file as a whole.
    pub(super) fn whole(name: &str, message: impl Into<String>) -> Self {
        let fault = Fault { path: String::new(), complaint: message.into().into(), place: None };
        Self::new(name, "", vec![fault])
    }

    /// For reading.
    pub(super) fn text(&self) -> String {
        self.faults.iter().map(|fault| self.one(fault)).collect()
    }

    /// For programs: one object in one line.
    pub(super) fn json(&self) -> String {
        let one = |fault: &Fault| {
            json!({
                "path": fault.path,
                "line": fault.place.map(|place| place.line),
                "column": fault.place.map(|place| place.column),
                "message": fault.complaint.message,
                "advice": fault.complaint.advice,
                "source_line": self.source_line(fault),
            })
        };
        let faults: Vec<Value> = self.faults.iter().map(one).collect();
        format!("{}\n", json!({ "file": self.name, "faults": faults }))
    }

    /// The line of the fault, as far as it fits on a screen, without what would disturb the screen.
    fn source_line(&self, fault: &Fault) -> Option<String> {
        const LONGEST: usize = 120;
        let line = self.text.lines().nth(fault.place?.line.saturating_sub(1))?;
        Some(harmless(line).take(LONGEST).collect())
    }

    fn one(&self, fault: &Fault) -> String {
        let path =
            if fault.path.is_empty() { String::new() } else { harmless(&fault.path).chain(": ".chars()).collect() };
        let mut out = format!("error: {path}{}\n", fault.complaint.message);
        let number = fault.place.map_or_else(String::new, |place| place.line.to_string());
        let margin = " ".repeat(number.len().max(1));
        let name: String = harmless(&self.name).collect();
        let _ = match fault.place {
            Some(place) => writeln!(out, "{margin}--> {name}:{}:{}", place.line, place.column),
            None => writeln!(out, "{margin}--> {name}"),
        };
        if let (Some(place), Some(line)) = (fault.place, self.source_line(fault)) {
            let indent = " ".repeat(place.column.saturating_sub(1).min(line.chars().count()));
            let _ = write!(out, "{margin} |\n{number} | {line}\n{margin} | {indent}^\n");
        }
        if let Some(advice) = &fault.complaint.advice {
            let _ = writeln!(out, "{margin} = {advice}");
        }
        out.push('\n');
        out
    }
}
