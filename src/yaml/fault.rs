//! What is wrong with an input text, and where.

use super::nearest::did_you_mean;
use crate::quantity::parse::shortened;
use core::fmt;

/// Where in a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// Line, from 1.
    pub line: usize,
    /// Column, from 1.
    pub column: usize,
}

/// What was read and what was expected, and how it is written.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[must_use]
pub struct Complaint {
    /// One sentence without a full stop.
    pub message: String,
    /// What to write instead, in one line.
    pub advice: Option<String>,
}

impl Complaint {
    /// What is wrong, and what to do about it.
    pub fn advised(what: impl Into<String>, advice: impl Into<String>) -> Self {
        Self::from(what.into()).advise(advice)
    }

    /// With a line of advice.
    pub fn advise(self, advice: impl Into<String>) -> Self {
        Self { advice: Some(advice.into()), ..self }
    }

    /// A word that is none of `words`: the one that was probably meant is named, or what `meanings` has for a word of
    /// the trade.
    pub fn unknown_word(what: &str, read: &str, words: &[&str], meanings: &[(&str, &[&str])]) -> Self {
        let near = did_you_mean(read, words, meanings);
        Self::from(format!("expected {what}, got \"{read}\""))
            .advise(format!("{near}write one of: {}", words.join(", ")))
    }

    /// A key that is none of `known`; `near` asks for the one that was probably meant.
    pub(super) fn unknown_key(read: &str, near: &str, known: &[&str]) -> Self {
        let complaint = Self::from(format!("the key \"{}\" is not known here", shortened(read)));
        // "1,200 kN" inside braces is two entries.
        if read.starts_with(|c: char| c.is_ascii_digit()) {
            return complaint.advise("inside braces a comma begins the next key: write thousands without one");
        }
        complaint.advise(format!("{near}known here: {}", known.join(", ")))
    }

    /// A key that is not there.
    pub(super) fn missing_key(key: &str, top: bool) -> Self {
        let level = if top { "at the top level of the file" } else { "from this block" };
        Self::from(format!("the key \"{key}\" is missing {level}"))
            .advise(format!("add a line `{key}: ...`; `jackpull template` shows one of each"))
    }

    /// Something else than a value where one is due.
    pub(super) fn no_value(found: &str) -> Self {
        Self::from(format!("expected one value, got {found}")).advise("write for example `key: 60 m`")
    }
}

impl From<String> for Complaint {
    fn from(message: String) -> Self {
        Self { message, advice: None }
    }
}

impl From<&str> for Complaint {
    fn from(message: &str) -> Self {
        Self::from(message.to_owned())
    }
}

/// What is wrong, and what to do about it.
impl<M: Into<String>, A: Into<String>> From<(M, A)> for Complaint {
    fn from((message, advice): (M, A)) -> Self {
        Self { message: message.into(), advice: Some(advice.into()) }
    }
}

impl fmt::Display for Complaint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)?;
        match &self.advice {
            Some(advice) => write!(f, " ({advice})"),
            None => Ok(()),
        }
    }
}

/// One thing wrong with an input text.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
#[must_use]
pub struct Fault {
    /// Path of the field, for example `candidates[0].size`; empty at the top level.
    pub path: String,
    /// What is wrong.
    pub complaint: Complaint,
    /// Where, if the parser can tell.
    pub place: Option<Place>,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.path.is_empty() {
            write!(f, "{}: ", self.path)?;
        }
        write!(f, "{}", self.complaint)?;
        match self.place {
            Some(place) => write!(f, " at line {} column {}", place.line, place.column),
            None => Ok(()),
        }
    }
}

impl core::error::Error for Fault {}
