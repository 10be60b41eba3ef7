//! What the parser must not see.

use super::fault::{Complaint, Fault, Place};

/// Largest input that is read, in bytes.
pub const LARGEST_INPUT: usize = 1 << 20;
/// Most opening brackets and braces: the parser's time grows with their square, 2,000 take about 20 ms.
pub const MOST_BRACKETS: usize = 2_000;
/// Deepest indentation: the parser recurses with the nesting of blocks.
pub const DEEPEST_INDENT: usize = 200;

/// The text of a file's bytes.
///
/// # Errors
/// If there are too many, or they are not UTF-8 text.
pub fn text_of(bytes: &[u8]) -> Result<&str, Fault> {
    if bytes.len() > LARGEST_INPUT {
        return Err(whole(format!("the file has more than {LARGEST_INPUT} bytes; no input file needs as many")));
    }
    core::str::from_utf8(bytes).map_err(|error| {
        let (before, _) = bytes.split_at(error.valid_up_to());
        let line = before.iter().filter(|byte| **byte == b'\n').count() + 1;
        let column = before.iter().rev().take_while(|byte| **byte != b'\n').count() + 1;
        let complaint = Complaint::from("the file is not text in UTF-8").advise("save it as UTF-8");
        Fault { path: String::new(), complaint, place: Some(Place { line, column }) }
    })
}

fn whole(message: String) -> Fault {
    Fault { path: String::new(), complaint: message.into(), place: None }
}

fn at(line: usize, column: usize, complaint: Complaint) -> Fault {
    Fault { path: String::new(), complaint, place: Some(Place { line: line + 1, column: column + 1 }) }
}

/// Refuses what the parser must not see.
pub(super) fn guard(text: &str) -> Result<(), Fault> {
    text_of(text.as_bytes())?;
    let brackets = text.bytes().filter(|byte| matches!(byte, b'[' | b'{')).count();
    if brackets > MOST_BRACKETS {
        let complaint = format!("the file has {brackets} opening brackets; at most {MOST_BRACKETS} are read");
        return Err(Fault {
            complaint: Complaint::from(complaint).advise("write lists as lines that begin with \"- \""),
            ..whole(String::new())
        });
    }
    for (number, line) in text.lines().enumerate() {
        // Dashes nest too: "- - - 1" is a list in a list in a list.
        let indent = line.chars().take_while(|c| matches!(c, ' ' | '-' | '?' | '\t')).count();
        if indent > DEEPEST_INDENT {
            return Err(at(number, DEEPEST_INDENT, "is indented deeper than any input file needs".into()));
        }
        if let Some(column) = line.chars().position(|c| c.is_control() && c != '\t' && c != '\r') {
            let complaint = Complaint::from("has a control character here").advise("delete it");
            return Err(at(number, column, complaint));
        }
        if let Some(fault) = anchor(number, line) {
            return Err(fault);
        }
    }
    Ok(())
}

/// An anchor or alias stands where a value or a key begins, not between words.
fn anchor(number: usize, line: &str) -> Option<Fault> {
    let mut quote = None;
    let mut before = '\n';
    let mut spaced = true;
    for (column, c) in line.chars().enumerate() {
        match (quote, c) {
            (None, '#') if spaced => return None,
            (None, '\'' | '"') if !before.is_alphanumeric() => quote = Some(c),
            (Some(open), c) if open == c => quote = None,
            (None, '&' | '*') if spaced && matches!(before, '\n' | ':' | '-' | '?' | '[' | '{' | ',') => {
                let message = format!("anchors and aliases (\"{c}\") are not read");
                return Some(at(number, column, Complaint::from(message).advise("write the value out, or in quotes")));
            }
            _ => {}
        }
        spaced = c.is_whitespace() || matches!(c, '[' | '{' | ',');
        if !c.is_whitespace() {
            before = c;
        }
    }
    None
}
