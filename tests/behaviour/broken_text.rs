//! Text that is no YAML, or not one file of it: told in plain words, at the place to be mended.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::{Handbook, InputError, read_drive};

/// The last fault of a text: what broke the reading.
fn broken(text: &str) -> (String, Option<(usize, usize)>) {
    match read_drive(text, &Handbook::embedded()) {
        Err(InputError::Faults(faults)) => {
            let fault = faults.last().unwrap();
            let place = fault.place.map(|place| (place.line, place.column));
            let path = if fault.path.is_empty() { String::new() } else { format!("{}: ", fault.path) };
            (format!("{path}{}", fault.complaint), place)
        }
        Err(error) => panic!("{error}"),
        Ok(_) => panic!("taken:\n{text}"),
    }
}

/// The second of two keys is pointed at, whatever comes between and however it is written.
#[test]
fn a_key_that_is_there_twice_is_found() {
    let twice = |key: &str| format!("the key \"{key}\" is given twice (delete one of them)");
    let base = text(|text| text);
    let named = format!("name: \"a length: b\" # length: c\n{base}");
    for (text, key, place) in [
        (format!("{base}length: 70 m\n"), "length", (18, 1)),
        (format!("{named}'length': 70 m\n"), "length", (19, 1)),
        (base.edit("rig: { thrust: 900 kN,", "rig: { thrust: 900 kN, thrust: 8 kN,"), "thrust", (11, 24)),
        (base.edit("rig: {", "rig:\n  thrust: 9 kN\n  thrust: 8 kN\nrigs: {"), "thrust", (13, 3)),
        (base.edit("size: 10 in", "size: 10 in, size: 12 in"), "size", (16, 36)),
        (format!("ground: []\nground: []\n{base}"), "ground", (2, 1)),
    ] {
        let (message, found) = broken(&text);
        assert!(message.ends_with(&twice(key)), "{message}\n{text}");
        assert_eq!(found, Some(place), "{text}");
    }
}

/// It has no place: the first line is not at fault.
#[test]
fn a_key_missing_at_the_top_has_no_line() {
    for text in ["", "name: x\n", "# a comment\nname: x\nlength: 60 m\n"] {
        let (message, place) = broken(text);
        assert!(message.starts_with("the key \"ground\" is missing at the top level of the file"), "{message}");
        assert_eq!(place, None);
    }
}

#[test]
fn what_is_no_yaml_is_told_in_plain_words() {
    let base = text(|text| text);
    for (text, wanted, place) in [
        (base.edit("  - { to: 25 m", "\t- { to: 25 m"), "the line is indented with a tab", (8, 1)),
        (base.edit("rig: {", "rig:\n\tthrust: 9 kN\nx: {"), "the line is indented with a tab", (12, 1)),
        (
            base.edit("rig: { thrust: 900 kN, ", "rig:\n  thrust: 900 kN\n\tstroke: 1 m\nrig: { "),
            "the line is indented with a tab",
            (13, 1),
        ),
        (format!("{base}...\n{base}"), "a line of \"...\" ends the first document, and one is read", (18, 1)),
        (format!("---\n{base}...\n# more\n---\n{base}"), "a line of \"...\" ends the first document", (19, 1)),
        (format!("{base}---\n{base}"), "a line of \"---\" begins a second document", (18, 1)),
        (format!("# ours\n---\n{base}--- # more\n{base}"), "a line of \"---\" begins a second document", (20, 1)),
        (format!("name: @x\n{base}"), "a value cannot begin with \"@\" (put it in quotes)", (1, 7)),
        (format!("name: a: b\n{base}"), "a \":\" where no key can end", (1, 8)),
        (base.edit("length: 60 m", "length 60 m"), "a line without a \":\" behind its key", (2, 1)),
        (base.edit("length: 60 m", "length: \"60 m"), "a quote that is not closed", (2, 9)),
        (base.edit("lubrication:", " lubrication:"), "a \":\" where no key can end", (6, 13)),
    ] {
        let (message, found) = broken(&text);
        assert!(message.starts_with(wanted), "{wanted}: {message}");
        assert_eq!(found, Some(place), "{message}");
    }
}

/// A comma for thousands is a mark of YAML inside braces.
#[test]
fn a_comma_for_thousands_is_named() {
    let (message, place) = broken(&text(|text| text.edit("thrust: 900 kN", "thrust: 1,200 kN")));
    assert!(
        message.starts_with("rig: the key \"200 kN\" is not known here (inside braces a comma begins"),
        "{message}"
    );
    assert_eq!(place, Some((11, 18)));
}
