//! `template` prints a file that assesses as printed.

use crate::run::{file, jackpull, stderr, stdout};
use jackpull::drive_file::fields::{Shape, Spec};
use jackpull::{DriveFile, Handbook, read_drive};

#[test]
fn every_template_assesses_as_printed() {
    for service in ["gravity_sewer", "pressure_main", "casing"] {
        for units in ["si", "us"] {
            let output = jackpull(&["template", "--service", service, "--units", units]);
            assert_eq!(output.status.code(), Some(0));
            assert!(!stdout(&output).contains('<'), "a placeholder is left:\n{}", stdout(&output));
            let path = file(&format!("template_{service}_{units}.yaml"), &output.stdout);
            let assessed = jackpull(&["assess", &path]);
            let page = stdout(&assessed);
            assert_eq!(assessed.status.code(), Some(0), "{service}, {units}: {}{page}", stderr(&assessed));
            assert!(stderr(&assessed).is_empty(), "{}", stderr(&assessed));
            // A main of PE is pulled; a sewer pushes the clay pipe that it lists first, and a casing is of steel.
            let start = match service {
                "pressure_main" => "PULLBACK, PE",
                "casing" => "PIPE JACKING, steel 16 in wall",
                _ => "PIPE JACKING, clay 10 in: ",
            };
            assert!(page.starts_with(start), "{service}, {units}: {page}");
        }
    }
}

/// A line of a template that begins with "# " and a key, taken off its "# ": what it says, with the key and how far in it is.
fn optional(line: &str) -> Option<(&str, usize, &str)> {
    let told = line.strip_prefix("# ")?;
    let key = told.trim_start();
    let inside = told.len() - key.len();
    let (key, _) = key.split_once(": ")?;
    key.chars().all(|c| c.is_ascii_lowercase() || c == '_').then_some((told, inside, key))
}

/// The text with its optional lines of these keys taken off their "# ", each in place of the line that says it already.
fn with(text: &str, keys: &[&str]) -> String {
    let is_taken = |line: &str| optional(line).is_some_and(|(_, _, key)| keys.contains(&key));
    let taken: Vec<(usize, &str)> =
        text.lines().filter(|line| is_taken(line)).filter_map(optional).map(|(_, inside, key)| (inside, key)).collect();
    let replaced = |line: &str| {
        let key = line.trim_start();
        taken.iter().any(|(inside, of)| *inside == line.len() - key.len() && key.starts_with(&format!("{of}:")))
    };
    let lines = text.lines().filter(|line| line.starts_with('#') || !replaced(line));
    let told = lines.map(|line| optional(line).filter(|_| is_taken(line)).map_or(line, |(told, ..)| told));
    told.collect::<Vec<_>>().join("\n")
}

/// The optional lines are right once their "# " is taken off: each by itself, and all together.
#[test]
fn the_optional_lines_are_read() {
    let handbook = Handbook::embedded();
    for units in ["si", "us"] {
        let of = |service: &str| stdout(&jackpull(&["template", "--service", service, "--units", units]));
        let templates = ["gravity_sewer", "pressure_main", "casing"].map(of);
        let keys: Vec<&str> = templates[0].lines().filter_map(optional).map(|(.., key)| key).collect();
        assert!(keys.len() > 50, "{}: {keys:?}", keys.len());
        for key in &keys {
            // A surface that is not even needs the grade beside its depths, as the template says.
            let lines: &[&str] = if *key == "depths" { &["depths", "grade"] } else { &[key] };
            // Some are for one service alone.
            let read = templates.each_ref().map(|text| read_drive(&with(text, lines), &handbook));
            let faults: Vec<String> = read.iter().filter_map(|read| Some(read.as_ref().err()?.to_string())).collect();
            assert!(faults.len() < read.len(), "{key}: {faults:?}");
        }
        let of_one_service = ["plug", "carrier", "vacuum", "service_pressure", "surge"];
        let most: Vec<&str> = keys.iter().filter(|key| !of_one_service.contains(key)).copied().collect();
        let all = with(&templates[0], &most);
        let path = file(&format!("template_whole_{units}.yaml"), all.as_bytes());
        let assessed = jackpull(&["assess", &path]);
        assert_eq!(assessed.status.code(), Some(0), "{}{}\n{all}", stderr(&assessed), stdout(&assessed));
    }
}

/// No field of the drive file is left out of the template.
#[test]
fn every_field_is_named() {
    fn walk(specs: &[Spec], words: &[&str]) {
        for spec in specs {
            assert!(words.contains(&spec.key), "{}", spec.names[0].0);
            if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
                walk(inner, words);
            }
        }
    }
    let text = stdout(&jackpull(&["template"]));
    let words: Vec<&str> = text.split(|c: char| !(c.is_ascii_alphanumeric() || c == '_')).collect();
    walk(DriveFile::FIELDS, &words);
}
