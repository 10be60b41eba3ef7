//! The only file that names the YAML crate: guards before parsing, and faults with their place after it.
//!
//! The YAML parser stops at the first fault and keeps no positions. Each scalar of an input type is therefore a
//! [`Field`], which counts itself as it is read: the first pass notes the faulty ones by number and goes on; then
//! one strict pass per fault fails exactly there, and the parser itself names path, line and column. The same
//! re-read finds the place of a field whose fault shows only later, when the values are put together.

use crate::quantity::FromText;
use core::cell::RefCell;
use core::fmt;
use core::marker::PhantomData;
use serde::de::{DeserializeOwned, Visitor};
use serde::{Deserialize, Deserializer};

/// Largest input that is read.
pub const LARGEST_INPUT: usize = 1 << 20;
/// Most opening brackets and braces: the parser's time grows with their square, 2,000 take about 20 ms.
pub const MOST_BRACKETS: usize = 2_000;
/// Most faults reported in one run, so that a hostile file stays linear.
pub const MOST_FAULTS: usize = 20;

/// Where in a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
}

/// One thing wrong with an input text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// Path of the field, for example `candidates[0].size`; empty at the top level.
    pub path: String,
    /// What was read and what was expected.
    pub message: String,
    /// Where, if the parser can tell.
    pub place: Option<Place>,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.path.is_empty() {
            write!(f, "{}: ", self.path)?;
        }
        f.write_str(&self.message)?;
        match self.place {
            Some(place) => write!(f, " at line {} column {}", place.line, place.column),
            None => Ok(()),
        }
    }
}

impl core::error::Error for Fault {}

/// A scalar as YAML gives it.
#[derive(Debug, Clone, Copy)]
pub enum Scalar<'a> {
    /// Quoted or plain text that is no number, boolean or null.
    Text(&'a str),
    /// A number, as it would be written, and its value.
    Number(f64),
    /// `true` or `false`.
    Boolean(bool),
    /// `null`, `~` or nothing.
    Nothing,
}

impl fmt::Display for Scalar<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Text(text) => f.write_str(&crate::quantity::parse::shortened(text)),
            Self::Number(number) => write!(f, "{number}"),
            Self::Boolean(boolean) => write!(f, "{boolean}"),
            Self::Nothing => f.write_str("nothing"),
        }
    }
}

/// A type that one scalar can be read into. `Default` stands in for a faulty value until the fault is reported;
/// it never leaves [`read`].
pub trait FromScalar: Default {
    /// Reads the scalar.
    ///
    /// # Errors
    /// A sentence that says what was expected, what was read and how it is written.
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, String>;
}

impl<Q: FromText + Default> FromScalar for Q {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, String> {
        let text = match scalar {
            Scalar::Text(text) => text.to_owned(),
            other => other.to_string(),
        };
        Q::from_text(&text).map_err(|error| error.to_string())
    }
}

/// Free text.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Words(pub String);

impl FromScalar for Words {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, String> {
        match scalar {
            Scalar::Nothing => Err("expected a text, got nothing".to_owned()),
            Scalar::Text(text) if text.trim().is_empty() => Err("expected a text, got an empty one".to_owned()),
            other => Ok(Self(match other {
                Scalar::Text(text) => text.to_owned(),
                other => other.to_string(),
            })),
        }
    }
}

/// Writes `FromScalar` for an enum of key words.
macro_rules! key_words {
    ($name:ty, $what:literal, { $($word:literal => $variant:expr),+ $(,)? }) => {
        impl $crate::yaml::FromScalar for $name {
            fn from_scalar(scalar: $crate::yaml::Scalar<'_>) -> Result<Self, String> {
                match scalar {
                    $($crate::yaml::Scalar::Text($word) => Ok($variant),)+
                    other => Err(format!(
                        concat!("expected ", $what, ", got \"{}\" (write one of: {})"),
                        other,
                        [$($word),+].join(", ")
                    )),
                }
            }
        }

        impl $name {
            /// As written in files.
            #[must_use]
            pub fn key(self) -> &'static str {
                match self {
                    $(value if value == $variant => $word,)+
                    _ => "",
                }
            }
        }
    };
}
pub(crate) use key_words;

/// One scalar of an input file, with the number that finds its place again.
#[derive(Debug, Clone, PartialEq)]
pub struct Field<T> {
    /// The value.
    pub value: T,
    ordinal: u32,
}

impl<T> From<T> for Field<T> {
    /// A value given in code, with no place in a text.
    fn from(value: T) -> Self {
        Self { value, ordinal: u32::MAX }
    }
}

impl<T> Field<T> {
    /// The handle by which [`locate`] finds this field in the text.
    pub const fn handle(&self) -> Handle {
        Handle(self.ordinal)
    }
}

/// Finds a field again in the text it was read from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Handle(u32);

/// What the pass under way does with faulty scalars.
enum Pass {
    /// Note the number of each faulty one and go on.
    Collect(Vec<(u32, String)>),
    /// Fail at this number with this message.
    FailAt(u32, String),
}

struct Reading {
    next: u32,
    pass: Pass,
}

thread_local! {
    // serde hands no context to `Deserialize`, so the pass under way is kept beside it.
    static READING: RefCell<Option<Reading>> = const { RefCell::new(None) };
}

/// Separates path and message in the parser's error text.
const SENTINEL: char = '\u{1}';

impl<'de, T: FromScalar> Deserialize<'de> for Field<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct ScalarVisitor<T>(PhantomData<T>);
        impl<T: FromScalar> Visitor<'_> for ScalarVisitor<T> {
            type Value = Field<T>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("one value")
            }
            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Self::Value, E> {
                field(Scalar::Text(text))
            }
            fn visit_bool<E: serde::de::Error>(self, boolean: bool) -> Result<Self::Value, E> {
                field(Scalar::Boolean(boolean))
            }
            fn visit_f64<E: serde::de::Error>(self, number: f64) -> Result<Self::Value, E> {
                field(Scalar::Number(number))
            }
            #[expect(clippy::cast_precision_loss, reason = "no input needs whole numbers beyond 2^53")]
            fn visit_u64<E: serde::de::Error>(self, number: u64) -> Result<Self::Value, E> {
                field(Scalar::Number(number as f64))
            }
            #[expect(clippy::cast_precision_loss, reason = "no input needs whole numbers beyond 2^53")]
            fn visit_i64<E: serde::de::Error>(self, number: i64) -> Result<Self::Value, E> {
                field(Scalar::Number(number as f64))
            }
            fn visit_unit<E: serde::de::Error>(self) -> Result<Self::Value, E> {
                field(Scalar::Nothing)
            }
        }
        deserializer.deserialize_any(ScalarVisitor(PhantomData))
    }
}

fn field<T: FromScalar, E: serde::de::Error>(scalar: Scalar<'_>) -> Result<Field<T>, E> {
    let read = T::from_scalar(scalar);
    READING.with_borrow_mut(|reading| {
        let Some(reading) = reading else {
            return read.map(|value| Field { value, ordinal: 0 }).map_err(E::custom);
        };
        let ordinal = reading.next;
        reading.next += 1;
        match (&mut reading.pass, read) {
            (Pass::FailAt(number, message), _) if *number == ordinal => Err(E::custom(format!("{SENTINEL}{message}"))),
            (Pass::Collect(faults), Err(message)) => {
                faults.push((ordinal, message));
                Ok(Field { value: T::default(), ordinal })
            }
            (_, read) => Ok(Field { value: read.unwrap_or_default(), ordinal }),
        }
    })
}

/// One pass of the parser; the collected faults come back with the result.
fn pass<T: DeserializeOwned>(text: &str, pass: Pass) -> (Result<T, serde_yaml::Error>, Vec<(u32, String)>) {
    READING.set(Some(Reading { next: 0, pass }));
    let result = serde_yaml::from_str(text);
    let reading = READING.take();
    match reading.map(|reading| reading.pass) {
        Some(Pass::Collect(faults)) => (result, faults),
        _ => (result, Vec::new()),
    }
}

/// Reads `text` into `T`, reporting every faulty value and the first structural fault (a missing or unknown key,
/// a list where a value is due) with its place.
///
/// # Errors
/// All faults found, in the order of the text, at most [`MOST_FAULTS`].
pub fn read<T: DeserializeOwned>(text: &str) -> Result<T, Vec<Fault>> {
    guard(text).map_err(|fault| vec![fault])?;
    let (result, mut collected) = pass::<T>(text, Pass::Collect(Vec::new()));
    collected.truncate(MOST_FAULTS);
    let mut faults: Vec<Fault> =
        collected.into_iter().map(|(ordinal, message)| locate::<T>(text, Handle(ordinal), message)).collect();
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
pub fn locate<T: DeserializeOwned>(text: &str, at: Handle, message: String) -> Fault {
    let (result, _) = pass::<T>(text, Pass::FailAt(at.0, message.clone()));
    match result {
        Err(error) if error.to_string().contains(SENTINEL) => structural(&error),
        _ => Fault { path: String::new(), message, place: None },
    }
}

/// The parser's error as a fault: its text is `path: message at line L column C`.
fn structural(error: &serde_yaml::Error) -> Fault {
    let place = error.location().map(|at| Place { line: at.line(), column: at.column() });
    let text = error.to_string();
    let text = match place {
        Some(Place { line, column }) => {
            text.strip_suffix(&format!(" at line {line} column {column}")).unwrap_or(&text).to_owned()
        }
        None => text,
    };
    let (path, message) = match text.split_once(SENTINEL) {
        Some((path, message)) => (path.trim_end_matches([':', ' ']), message),
        None => match text.split_once(": ") {
            Some((path, message)) if !path.contains(' ') => (path, message),
            _ => ("", text.as_str()),
        },
    };
    let message = message.trim_matches('.').to_owned();
    let missing_at_top = path.is_empty() && message.starts_with("missing field");
    let message = if missing_at_top { format!("{message}, at the top level") } else { message };
    Fault { path: path.to_owned(), message, place: place.or(missing_at_top.then_some(Place { line: 1, column: 1 })) }
}

/// Refuses what the parser must not see.
fn guard(text: &str) -> Result<(), Fault> {
    let refuse = |message: String, place| Err(Fault { path: String::new(), message, place });
    if text.len() > LARGEST_INPUT {
        return refuse(format!("the file has {} bytes; at most {LARGEST_INPUT} are read", text.len()), None);
    }
    let brackets = text.bytes().filter(|byte| matches!(byte, b'[' | b'{')).count();
    if brackets > MOST_BRACKETS {
        return refuse(format!("the file has {brackets} opening brackets; at most {MOST_BRACKETS} are read"), None);
    }
    for (number, line) in text.lines().enumerate() {
        let mut quote = None;
        let mut before = '\n';
        let mut spaced = true;
        for (column, c) in line.chars().enumerate() {
            match (quote, c) {
                (None, '#') if spaced => break,
                (None, '\'' | '"') if !before.is_alphanumeric() => quote = Some(c),
                (Some(open), c) if open == c => quote = None,
                // An anchor or alias stands where a value or a key begins, not between words.
                (None, '&' | '*') if spaced && matches!(before, '\n' | ':' | '-' | '?' | '[' | '{' | ',') => {
                    return refuse(
                        format!("anchors and aliases (\"{c}\") are not read; write the value out, or in quotes"),
                        Some(Place { line: number + 1, column: column + 1 }),
                    );
                }
                _ => {}
            }
            spaced = c.is_whitespace() || matches!(c, '[' | '{' | ',');
            if !c.is_whitespace() {
                before = c;
            }
        }
    }
    Ok(())
}
