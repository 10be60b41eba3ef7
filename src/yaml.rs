//! The only file that names the YAML crate: guards before parsing, and faults with their place after it.
//!
//! The YAML parser stops at the first fault and keeps no positions. Each scalar of an input type is therefore a
//! [`Field`], which counts itself as it is read: the first pass notes the faulty ones by number and goes on; then
//! one strict pass per fault fails exactly there, and the parser itself names path, line and column. The same
//! re-read finds the place of a field whose fault shows only later, when the values are put together.

mod fault;
mod field;
mod guard;
mod nearest;

pub use fault::{Complaint, Fault, Place};
pub(crate) use field::key_words;
pub use field::{Field, FromScalar, Handle, Scalar, ToScalar, Words};
pub use guard::{DEEPEST_INDENT, LARGEST_INPUT, MOST_BRACKETS, text_of};
pub(crate) use nearest::did_you_mean;

use field::{Pass, SENTINEL, under};
use serde::Serialize;
use serde::de::DeserializeOwned;

/// Most faults reported in one run, so that a hostile file stays linear.
pub const MOST_FAULTS: usize = 20;

/// Reads `text` into `T`, reporting every faulty value and the first structural fault (a missing or unknown key,
/// a list where a value is due) with its place.
///
/// # Errors
/// All faults found, in the order of the text, at most [`MOST_FAULTS`] faulty values.
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, Vec<Fault>> {
    guard::guard(text).map_err(|fault| vec![fault])?;
    let text = without_mark(text);
    let (result, mut collected) = under(Pass::Collect(Vec::new()), || serde_yaml::from_str::<T>(text));
    collected.truncate(MOST_FAULTS);
    let located = |(ordinal, complaint)| locate::<T>(text, Handle(Some(ordinal)), complaint);
    let mut faults: Vec<Fault> = collected.into_iter().map(located).collect();
    match result {
        Ok(value) if faults.is_empty() => Ok(value),
        Ok(_) => Err(faults),
        Err(error) => {
            faults.push(structural(&error));
            Err(faults)
        }
    }
}

/// The fault of one field, with its place found by reading `text` again up to it.
#[must_use]
pub fn locate<T: DeserializeOwned>(text: &str, at: Handle, complaint: Complaint) -> Fault {
    let text = without_mark(text);
    let found = at.0.and_then(|ordinal| {
        let (result, _) = under(Pass::FailAt(ordinal), || serde_yaml::from_str::<T>(text));
        result.err().filter(|error| error.to_string().contains(SENTINEL))
    });
    match found {
        Some(error) => Fault { complaint, ..structural(&error) },
        None => Fault { path: String::new(), complaint, place: None },
    }
}

/// The byte order mark that some editors put first would become part of the first key.
fn without_mark(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// Writes a value so that [`read`] gives it back.
///
/// # Errors
/// If the value has a shape that YAML cannot hold.
pub fn write<T: Serialize>(value: &T) -> Result<String, Fault> {
    serde_yaml::to_string(value).map_err(|error| structural(&error))
}

/// Keys and columns of the rows of a table as they are written; empty for a text that is no table.
#[must_use]
pub fn rows(text: &str) -> Vec<(String, Vec<(String, String)>)> {
    #[derive(serde::Deserialize)]
    struct Rows {
        rows: Vec<Row>,
    }
    #[derive(serde::Deserialize)]
    struct Row {
        key: serde_yaml::Value,
        value: serde_yaml::Value,
    }
    let read = |text| guard::guard(text).ok().and_then(|()| serde_yaml::from_str::<Rows>(without_mark(text)).ok());
    let columns = |value: serde_yaml::Value| match value {
        serde_yaml::Value::Mapping(columns) => {
            columns.into_iter().map(|(name, value)| (scalar_text(&name), scalar_text(&value))).collect()
        }
        value => vec![(String::new(), scalar_text(&value))],
    };
    let rows = read(text).map_or_else(Vec::new, |table| table.rows);
    rows.into_iter().map(|row| (scalar_text(&row.key), columns(row.value))).collect()
}

fn scalar_text(value: &serde_yaml::Value) -> String {
    match value {
        serde_yaml::Value::String(text) => text.clone(),
        serde_yaml::Value::Number(number) => number.to_string(),
        serde_yaml::Value::Bool(boolean) => boolean.to_string(),
        _ => String::new(),
    }
}

/// The parser's error as a fault: its text is `path: message at line L column C`.
fn structural(error: &serde_yaml::Error) -> Fault {
    let place = error.location().map(|at| Place { line: at.line(), column: at.column() });
    // A key is quoted as it was read, escapes and all.
    let text: String = error.to_string().chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    let text = match place {
        Some(Place { line, column }) => {
            text.strip_suffix(&format!(" at line {line} column {column}")).unwrap_or(&text).to_owned()
        }
        None => text,
    };
    let (path, message) = match text.split_once(": ") {
        Some((path, message)) if !path.contains(' ') => (path, message),
        _ => ("", text.as_str()),
    };
    let path = path.trim_end_matches([':', ' ']).trim_matches('.').to_owned();
    let complaint = in_our_words(message, path.is_empty());
    // A missing key has no position of its own; at the top level it has none at all.
    let top = path.is_empty() && place.is_none() && message.starts_with("missing field");
    Fault { path, complaint, place: place.or(top.then_some(Place { line: 1, column: 1 })) }
}

/// The messages of serde in the words of this crate.
fn in_our_words(message: &str, top: bool) -> Complaint {
    let quoted = |text: &str| -> Vec<String> { text.split('`').skip(1).step_by(2).map(ToOwned::to_owned).collect() };
    if let Some(rest) = message.strip_prefix("unknown field ") {
        let names = quoted(rest);
        if let Some((unknown, known)) = names.split_first() {
            let known: Vec<&str> = known.iter().map(String::as_str).collect();
            let near = did_you_mean(unknown, &known, &[]);
            let complaint = Complaint::from(format!("the key \"{unknown}\" is not known here"));
            return complaint.advise(format!("{near}known here: {}", known.join(", ")));
        }
    }
    if let Some(rest) = message.strip_prefix("missing field ") {
        let name = quoted(rest).into_iter().next().unwrap_or_default();
        let level = if top { "the top level of the file" } else { "this block" };
        return Complaint::from(format!("the key \"{name}\" is missing from {level}"))
            .advise(format!("add a line `{name}: ...`; `jackpull template` shows one of each"));
    }
    if let Some(rest) = message.strip_prefix("duplicate field ") {
        let name = quoted(rest).into_iter().next().unwrap_or_default();
        return Complaint::from(format!("the key \"{name}\" is there twice")).advise("delete one of them");
    }
    if let Some((found, expected)) =
        message.strip_prefix("invalid type: ").and_then(|rest| rest.split_once(", expected "))
    {
        let found = match found.split(' ').next() {
            Some("sequence") => "a list".to_owned(),
            Some("map") => "a block of keys".to_owned(),
            Some("unit") => "nothing".to_owned(),
            Some("enum") => "a tag".to_owned(),
            _ => found.replace('`', "\""),
        };
        let (expected, advice) = match expected {
            "one value" => ("one value", "write for example `key: 60 m`"),
            "a sequence" => ("a list", "write each entry on a line that begins with \"- \""),
            expected if expected.starts_with("struct") => ("a block of keys", "write for example `{ key: value }`"),
            expected => return Complaint::from(format!("expected {expected}, got {found}")),
        };
        return Complaint::from(format!("expected {expected}, got {found}")).advise(advice);
    }
    Complaint::from(message)
}
