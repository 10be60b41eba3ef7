//! Faulty input: exit code 2, nothing on the output stream, and where the fault is.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stderr};

/// The messages for the first example with one text in place of another.
fn with(name: &str, from: &str, to: &str) -> String {
    let text = std::fs::read_to_string(example("fennbridge_mill_lane.yaml")).unwrap();
    let path = file(name, text.edit(from, to).as_bytes());
    let output = jackpull(&["assess", &path]);
    assert_eq!(output.status.code(), Some(2), "{name}");
    assert!(output.stdout.is_empty());
    stderr(&output)
}

#[test]
fn a_wrong_unit_is_refused_with_its_place() {
    let message = with("wrong_unit.yaml", "length: 60 m", "length: 60 kN");
    let start = "error: length: expected a length, got \"60 kN\" which is a force\n --> ";
    let end = "wrong_unit.yaml:6:9\n  |\n6 | length: 60 kN\n  |         ^\n  = write for example \"60 m\"\n\n";
    assert!(message.starts_with(start) && message.ends_with(end), "{message}");
}

/// What a file is called is the user's, and may be hostile.
#[test]
fn a_file_name_does_not_disturb_the_screen() {
    let message = stderr(&jackpull(&["assess", "no \u{1b}[31msuch\nfile.yaml"]));
    assert!(message.contains("--> no  [31msuch file.yaml\n"), "{message:?}");
}

#[test]
fn faults_name_field_line_and_what_was_expected() {
    for (name, from, to, parts) in [
        ("bare", "length: 60 m", "length: 60", ["length: expected a length, got 60 without a unit", ".yaml:6:9\n"]),
        ("negative", "thrust: 900 kN", "thrust: -900 kN", ["rig.thrust: expected a force above zero", ".yaml:18:16\n"]),
        ("infinite", "pull: 500 kN", "pull: inf kN", ["rig.pull: expected a force, got \"inf kN\"", ".yaml:18:30\n"]),
        (
            "unknown_key",
            "lubrication: metered",
            "lubricant: metered",
            ["the key \"lubricant\" is not known here", ".yaml:13:1\n"],
        ),
        ("missing_key", "rig: {", "wrong: {", ["the key \"wrong\" is not known here", ".yaml:18:1\n"]),
        (
            "missing",
            "groundwater: 5.5 m",
            "# groundwater: 5.5 m",
            ["the key \"groundwater\" is missing at the top level", "= add a line `groundwater: ...`"],
        ),
        (
            "word",
            "class: firm_to_very_stiff_clay",
            "class: blue_clay",
            ["ground[0].class: expected a ground class", ".yaml:15:12\n"],
        ),
        ("size", "size: 10 in", "size: 11 in", ["candidates[0].size: no clay jacking pipe of 11 in", ".yaml:29:29\n"]),
        (
            "short",
            "  - class: firm",
            "  - to: 50 m\n    class: firm",
            ["ground[0].to: the ground ends here, 10.0 m short", ".yaml:15:9\n"],
        ),
    ] {
        let message = with(&format!("{name}.yaml"), from, to);
        for part in parts {
            assert!(message.contains(part), "{name}: no {part} in\n{message}");
        }
    }
}

#[test]
fn a_file_that_is_not_there_is_exit_code_2() {
    let output = jackpull(&["assess", "no/such/file.yaml"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(stderr(&output).contains("no/such/file.yaml"));
}

#[test]
fn faults_are_json_for_programs() {
    let text = std::fs::read_to_string(example("fennbridge_mill_lane.yaml")).unwrap();
    let path = file("json_faults.yaml", text.edit("length: 60 m", "length: 60").edit("10 in", "ten in").as_bytes());
    let output = jackpull(&["assess", "--format", "json", &path]);
    assert_eq!(output.status.code(), Some(2));
    let faults: serde_json::Value = serde_json::from_str(&stderr(&output)).unwrap();
    assert!(faults["file"].as_str().unwrap().ends_with("json_faults.yaml"));
    let faults = faults["faults"].as_array().unwrap();
    assert_eq!(faults.len(), 2);
    assert_eq!(faults[0]["path"], "length");
    assert_eq!((&faults[0]["line"], &faults[0]["column"]), (&6.into(), &9.into()));
    assert_eq!(faults[0]["message"], "expected a length, got 60 without a unit");
    assert_eq!(faults[0]["advice"], "write for example \"60 m\"");
    assert_eq!(faults[0]["source_line"], "length: 60");
    assert_eq!(faults[1]["path"], "candidates[0].size");
}

/// An array has an entry for each file, in their order: its report, or its faults as they stand on the error stream.
#[test]
fn a_faulty_file_has_its_place_in_a_json_array() {
    let sound = example("fennbridge_mill_lane.yaml");
    let faulty = file("json_faulty.yaml", b"length: 3\n");
    let other = "no/such/file.yaml";
    let run = |files: &[&str]| {
        let output = jackpull(&[&["assess", "--format", "json"], files].concat());
        let refused = files.iter().filter(|file| **file != sound).count();
        assert_eq!(output.status.code(), Some(1 + i32::try_from(refused).unwrap()));
        let array: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
        let lines = stderr(&output).lines().map(|line| serde_json::from_str(line).unwrap()).collect();
        (array.as_array().unwrap().clone(), lines)
    };
    let (entries, faults): (Vec<serde_json::Value>, Vec<serde_json::Value>) = run(&[&faulty, &sound, other]);
    assert_eq!(entries.len(), 3);
    assert_eq!(faults, [entries[0].clone(), entries[2].clone()]);
    assert!(entries[0]["file"].as_str().unwrap().ends_with("json_faulty.yaml"));
    assert_eq!(entries[0]["faults"][0]["path"], "length");
    assert!(entries[1]["faults"].is_null() && entries[1]["schemes"].is_array());
    assert_eq!(entries[2]["file"], other);
    // Also where all are faulty.
    let (entries, faults) = run(&[&faulty, other]);
    assert_eq!((entries.len(), &entries), (2, &faults));
    // One file alone leaves the output empty.
    let output = jackpull(&["assess", "--format", "json", &faulty]);
    assert!(output.stdout.is_empty() && !output.stderr.is_empty());
}

/// Binary rubbish, a file too large, a folder: one message each, no page.
#[test]
fn what_is_no_text_file_is_refused() {
    let rubbish: Vec<u8> = (0..2_000_u32).map(|n| (n * 7 % 256) as u8).collect();
    for (name, bytes, part) in [
        ("rubbish.yaml", rubbish, "not text in UTF-8"),
        ("large.yaml", vec![b'#'; 11 << 20], "more than 1048576 bytes"),
    ] {
        let output = jackpull(&["assess", &file(name, &bytes)]);
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        assert!(stderr(&output).contains(part), "{}", stderr(&output));
    }
    assert_eq!(jackpull(&["assess", env!("CARGO_TARGET_TMPDIR")]).status.code(), Some(2));
}

/// A table of the user's goes through the same door.
#[test]
fn a_faulty_table_is_refused_with_its_place() {
    let table =
        file("factor.yaml", b"id: practice_ratio\ntitle: our factor\nrows:\n  - { key: clay.factor, value: 4 kN }\n");
    let output = jackpull(&["assess", "--tables", &table, &example("fennbridge_mill_lane.yaml")]);
    assert_eq!(output.status.code(), Some(2));
    assert!(output.stdout.is_empty());
    let message = stderr(&output);
    assert!(message.contains("rows[0].value: expected a plain number or a percentage, got \"4 kN\""), "{message}");
    assert!(message.contains("factor.yaml:4:"), "{message}");
}

/// What shows only in a drive is still the fault of the table, told once for all drives.
#[test]
fn a_value_of_a_table_that_makes_no_sense_is_not_blamed_on_the_drive() {
    let table = file("below.yaml", b"id: practice_ratio\ntitle: ours\nrows:\n  - { key: clay.factor, value: -3 }\n");
    let drives = [example("fennbridge_mill_lane.yaml"), example("fennbridge_quarry_road.yaml")];
    let output = jackpull(&["assess", "--tables", &table, &drives[0], &drives[1]]);
    assert_eq!(output.status.code(), Some(2));
    let message = stderr(&output);
    let start = "error: rows[0]: table practice_ratio, clay.factor: is below zero\n --> ";
    assert!(message.starts_with(start) && message.contains("below.yaml:4:12\n"), "{message}");
    assert_eq!(message.matches("error: ").count(), 1, "{message}");
    assert!(!message.contains("fennbridge"), "{message}");
}

#[test]
fn a_table_that_is_not_there_is_told_at_its_line_with_the_near_one() {
    let table = file("no_table.yaml", b"title: ours\nid: practise_ratio\nrows: []\n");
    let output = jackpull(&["assess", "--tables", &table, &example("fennbridge_mill_lane.yaml")]);
    assert_eq!(output.status.code(), Some(2));
    let message = stderr(&output);
    for part in
        ["error: id: there is no table \"practise_ratio\"", "no_table.yaml:2:5\n", "did you mean \"practice_ratio\"?"]
    {
        assert!(message.contains(part), "no {part} in\n{message}");
    }
}

/// A table goes through the same door as a drive: broken text is told in plain words there too.
#[test]
fn a_tab_or_a_second_document_in_a_table_is_told_in_plain_words() {
    let head = "id: practice_ratio\ntitle: ours\nrows:\n";
    for (name, rows, told, place) in [
        ("tab_first", "\t- { key: clay.factor, value: 3 }\n", "the line is indented with a tab", "4:1"),
        ("tab_later", "  - key: clay.factor\n\tvalue: 3\n", "the line is indented with a tab", "5:1"),
        (
            "two",
            "  - { key: clay.factor, value: 3 }\n---\nid: pe_ips\n",
            "a line of \"---\" begins a second document",
            "5:1",
        ),
    ] {
        let table = file(&format!("{name}.yaml"), format!("{head}{rows}").as_bytes());
        let output = jackpull(&["assess", "--tables", &table, &example("fennbridge_mill_lane.yaml")]);
        assert_eq!(output.status.code(), Some(2));
        let message = stderr(&output);
        assert!(message.starts_with(&format!("error: {told}")), "{message}");
        assert!(message.contains(&format!("{name}.yaml:{place}\n")), "{message}");
    }
}
