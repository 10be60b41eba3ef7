//! The only file that names the YAML crate: guards before parsing, and faults with their place after it.
//!
//! The YAML parser stops at the first fault and keeps no positions. Each scalar of an input type is therefore a
//! [`Field`], which counts itself as it is read, and so does a key that is unknown or missing: the first pass notes the
//! faulty ones by number and goes on; then one strict pass per fault fails exactly there, and the parser itself names
//! path, line and column. The same re-read finds the place of a field whose fault shows only later, when the values are
//! put together.

mod block;
pub(crate) mod fault;
pub(crate) mod field;
mod guard;
mod nearest;
mod words;

pub(crate) use block::{Blank, Block, Known, block, listed, told};
pub use fault::{Complaint, Fault, Place};
pub(crate) use field::Handle;
#[cfg(feature = "command")]
pub(crate) use field::UNKNOWN;
pub use field::{Field, Form, FromScalar, Scalar, ToScalar, Words};
pub(crate) use field::{MayBe, key_words};
pub use guard::{DEEPEST_INDENT, LARGEST_INPUT, MOST_BRACKETS, text_of};
pub(crate) use nearest::{did_you_mean, meant, meant_surely};

use field::{Pass, SENTINEL, under};
use serde::Serialize;
use serde::de::DeserializeOwned;
use words::{doubled, next_key};

/// Most faults reported in one run, so that a hostile file stays linear.
pub const MOST_FAULTS: usize = 20;

/// Parses a text; what is read into is not told, so that what follows is built once and not for every type.
type Parse<'a> = &'a mut dyn FnMut(&str) -> Result<(), serde_yaml::Error>;

/// Reads `text` into `T`, reporting every faulty value and every unknown or missing key, and the first of what ends the
/// reading (a key that is there twice, a value where a block is due), with its place.
///
/// # Errors
/// All faults found, in the order of the text, at most [`MOST_FAULTS`] faulty values.
pub(crate) fn read<T: DeserializeOwned>(text: &str) -> Result<T, Vec<Fault>> {
    let mut value = None;
    read_by(text, &mut |text| {
        value = Some(serde_yaml::from_str::<T>(text)?);
        Ok(())
    })?;
    value.ok_or_else(Vec::new)
}

fn read_by(text: &str, parse: Parse<'_>) -> Result<(), Vec<Fault>> {
    guard::guard(text).map_err(|fault| vec![fault])?;
    let text = without_mark(text);
    let (result, mut collected, count) = under(Pass::Collect(Vec::new()), || parse(text));
    collected.truncate(MOST_FAULTS);
    let located = |(ordinal, complaint)| locate_by(text, Handle(Some(ordinal)), complaint, parse);
    let mut faults: Vec<Fault> = collected.into_iter().map(located).collect();
    if let Err(error) = result {
        faults.push(broken(text, &error, count, parse));
    }
    if faults.is_empty() { Ok(()) } else { Err(faults) }
}

/// The fault of one field, with its place found by reading `text` again up to it.
pub(crate) fn locate<T: DeserializeOwned>(text: &str, at: Handle, complaint: Complaint) -> Fault {
    locate_by(without_mark(text), at, complaint, &mut |text| serde_yaml::from_str::<T>(text).map(drop))
}

fn locate_by(text: &str, at: Handle, complaint: Complaint, parse: Parse<'_>) -> Fault {
    let found = at.0.and_then(|ordinal| {
        let (result, ..) = under(Pass::FailAt(ordinal), || parse(text));
        result.err().filter(|error| error.to_string().contains(SENTINEL))
    });
    match found {
        Some(error) => Fault { complaint, ..structural(&error, text) },
        None => Fault { path: String::new(), complaint, place: None },
    }
}

fn structural(error: &serde_yaml::Error, text: &str) -> Fault {
    let place = error.location().map(|at| Place { line: at.line(), column: at.column() });
    words::fault(&error.to_string(), place, text)
}

/// What stopped the parser, after it had read so many scalars.
fn broken(text: &str, error: &serde_yaml::Error, count: u32, parse: Parse<'_>) -> Fault {
    let fault = structural(error, text);
    let told = error.to_string();
    let Some(name) = doubled(&told) else { return fault };
    // The parser names the block; the second of the keys is what is to be looked at.
    let before = count.checked_sub(1);
    let last = before.and_then(|last| locate_by(text, Handle(Some(last)), Complaint::default(), parse).place);
    let last = last.or_else(|| next_key(text, name, None));
    Fault { place: next_key(text, name, last).or(fault.place), ..fault }
}

/// The byte order mark that some editors put first would become part of the first key.
fn without_mark(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// Writes a value so that [`read`] gives it back.
///
/// # Errors
/// If the value has a shape that YAML cannot hold.
pub(crate) fn write<T: Serialize>(value: &T) -> Result<String, Fault> {
    serde_yaml::to_string(value).map_err(|error| structural(&error, ""))
}

/// Reads `text` as it stands, whatever it is for.
///
/// # Errors
/// What is no YAML, or a key that stands twice, with its place.
pub fn tree(text: &str) -> Result<serde_json::Value, Vec<Fault>> {
    let tree: serde_yaml::Value = read(text)?;
    let whole =
        |error: serde_json::Error| Fault { path: String::new(), complaint: error.to_string().into(), place: None };
    serde_json::to_value(tree).map_err(|error| vec![whole(error)])
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
