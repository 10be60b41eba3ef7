//! The messages of the parser in the words of this crate, and places that it does not tell.

use super::fault::{Complaint, Fault, Place};
use super::nearest::did_you_mean;

/// The parser's error as a fault: its text is `path: message at line L column C`.
pub(super) fn fault(told: &str, place: Option<Place>, text: &str) -> Fault {
    // A key is quoted as it was read, escapes and all.
    let told: String = told.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    let told = match place {
        Some(Place { line, column }) => {
            told.strip_suffix(&format!(" at line {line} column {column}")).unwrap_or(&told).to_owned()
        }
        None => told,
    };
    if let Some((complaint, found)) = syntax(&told, text, place) {
        return Fault { path: String::new(), complaint, place: found };
    }
    let (path, message) = match told.split_once(": ") {
        Some((path, message)) if !path.contains(' ') => (path, message),
        _ => ("", told.as_str()),
    };
    let path = path.trim_end_matches([':', ' ']).trim_matches('.').to_owned();
    // A key that is missing at the top level has no place: the parser names that of the first key.
    let top = path.is_empty() && message.starts_with("missing field");
    Fault { complaint: in_our_words(message, path.is_empty()), path, place: place.filter(|_| !top) }
}

/// Text that is no YAML, or more than one: what is wrong, and where.
fn syntax(told: &str, text: &str, place: Option<Place>) -> Option<(Complaint, Option<Place>)> {
    let line = place.and_then(|place| text.lines().nth(place.line.saturating_sub(1))).unwrap_or_default();
    let with = |message: String, advice: &str| Some((Complaint::from(message).advise(advice), place));
    if told.starts_with("found character that cannot start any token") {
        if line.chars().take_while(|c| c.is_whitespace()).any(|c| c == '\t') {
            return with("the line is indented with a tab".to_owned(), "indent it with spaces");
        }
        let found = place.and_then(|place| line.chars().nth(place.column.saturating_sub(1)))?;
        return match found {
            '\t' => with("a tab stands where a key or a value is due".to_owned(), "put spaces in its place"),
            found => with(format!("a value cannot begin with \"{found}\""), "put it in quotes"),
        };
    }
    if told.starts_with("found a tab character") {
        return with("the line is indented with a tab".to_owned(), "indent it with spaces");
    }
    if told.starts_with("mapping values are not allowed") {
        return with(
            "a \":\" where no key can end".to_owned(),
            "put a text with \": \" in it in quotes, and begin the keys of one block in one column",
        );
    }
    if told.starts_with("did not find expected key") || told.starts_with("did not find expected '-' indicator") {
        return with(
            "the line does not fit into the block above it".to_owned(),
            "begin the keys of one block in one column, and write them `key: value`",
        );
    }
    if told.starts_with("did not find expected ','") {
        return with("a comma or a closing bracket is missing before this".to_owned(), "close what opens above");
    }
    if told.starts_with("could not find expected ':'") {
        let message = "a line without a \":\" behind its key";
        return Some((Complaint::from(message).advise("write `key: value`"), begun(told).or(place)));
    }
    if told.starts_with("found unexpected end of stream") && told.contains("quoted scalar") {
        return Some((Complaint::from("a quote that is not closed").advise("close it"), begun(told).or(place)));
    }
    if told.contains("more than one document") {
        let (mark, does, place) =
            second_document(text).map_or(("---", "begins a second", None), |(mark, does, at)| (mark, does, Some(at)));
        let complaint = Complaint::from(format!("a line of \"{mark}\" {does} document, and one is read"));
        return Some((complaint.advise("give each a file of its own"), place));
    }
    None
}

/// Where the parser says that what it was at begins: the last place in its message.
fn begun(told: &str) -> Option<Place> {
    let (_, last) = told.rsplit_once(" at line ")?;
    let (line, column) = last.split_once(" column ")?;
    Some(Place { line: line.parse().ok()?, column: column.parse().ok()? })
}

/// The line that parts a text in two documents, and what it does.
fn second_document(text: &str) -> Option<(&'static str, &'static str, Place)> {
    let is_blank = |line: &str| line.trim().is_empty() || line.trim_start().starts_with('#');
    let is = |line: &str, mark: &str| {
        line.strip_prefix(mark).is_some_and(|behind| behind.is_empty() || behind.starts_with([' ', '\t']))
    };
    let mut begun = false;
    for (number, line) in text.lines().enumerate() {
        let place = Place { line: number + 1, column: 1 };
        match begun {
            true if is(line, "---") => return Some(("---", "begins a second", place)),
            true if is(line, "...") => return Some(("...", "ends the first", place)),
            _ => begun |= !is_blank(line),
        }
    }
    None
}

/// The name of a key that is given twice, where the parser says so.
pub(super) fn doubled(told: &str) -> Option<&str> {
    let (_, rest) = told.split_once("duplicate field `").or(told.split_once("duplicate entry with key \""))?;
    rest.split_once(['`', '"']).map(|(name, _)| name)
}

/// Where a key stands next, behind the scalar that was read last before it.
pub(super) fn next_key(text: &str, name: &str, after: Option<Place>) -> Option<Place> {
    let (first, from) = after.map_or((1, 0), |place| (place.line, place.column));
    for (number, line) in text.lines().enumerate().skip(first.saturating_sub(1)) {
        // On the line of that scalar itself only a comma or a brace can come before the next key.
        let own_line = number + 1 == first && from > 0;
        let (mut mark, mut spaced) = ('\n', true);
        for (column, (at, c)) in line.char_indices().enumerate() {
            if c == '#' && spaced {
                break;
            }
            let begins =
                matches!(mark, ',' | '{') && (!own_line || column >= from) || matches!(mark, '\n' | '-') && !own_line;
            let rest = line.get(at..).unwrap_or_default().trim_start_matches(['"', '\'']);
            let behind = rest.strip_prefix(name).map(|behind| behind.trim_start_matches(['"', '\'', ' ']));
            if begins && behind.is_some_and(|behind| behind.starts_with(':')) {
                return Some(Place { line: number + 1, column: column + 1 });
            }
            spaced = c.is_whitespace();
            if !spaced {
                mark = c;
            }
        }
    }
    None
}

/// The messages of serde in the words of this crate.
fn in_our_words(message: &str, top: bool) -> Complaint {
    let quoted = |text: &str| -> Vec<String> { text.split('`').skip(1).step_by(2).map(ToOwned::to_owned).collect() };
    if let Some(rest) = message.strip_prefix("unknown field ") {
        let names = quoted(rest);
        if let Some((unknown, known)) = names.split_first() {
            let known: Vec<&str> = known.iter().map(String::as_str).collect();
            let near = did_you_mean(unknown, &known, &[]);
            return Complaint::unknown_key(unknown, &near, &known);
        }
    }
    if let Some(rest) = message.strip_prefix("missing field ") {
        let name = quoted(rest).into_iter().next().unwrap_or_default();
        return Complaint::missing_key(&name, top);
    }
    if let Some(name) = doubled(message) {
        return Complaint::from(format!("the key \"{name}\" is given twice")).advise("delete one of them");
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
            "one value" => return Complaint::no_value(&found),
            "a sequence" if found == "string \"none\"" => ("a list", "write `[]` where there is none"),
            "a sequence" => ("a list", "write each entry on a line that begins with \"- \""),
            expected if expected.starts_with("struct") || expected == "a block of keys" => {
                ("a block of keys", "write for example `{ key: value }`")
            }
            expected => return Complaint::from(format!("expected {expected}, got {found}")),
        };
        return Complaint::from(format!("expected {expected}, got {found}")).advise(advice);
    }
    Complaint::from(message)
}
