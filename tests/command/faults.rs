//! Faulty input: exit code 2, nothing on the output stream, and where the fault is.

use crate::run::{example, file, jackpull, stderr};

/// The messages for the first example with one text in place of another.
fn with(name: &str, from: &str, to: &str) -> String {
    let text = std::fs::read_to_string(example("fennbridge_mill_lane.yaml")).unwrap();
    assert!(text.contains(from), "{from}");
    let path = file(name, text.replacen(from, to, 1).as_bytes());
    let output = jackpull(&["assess", &path]);
    assert_eq!(output.status.code(), Some(2), "{name}");
    assert!(output.stdout.is_empty());
    stderr(&output)
}

#[test]
fn a_wrong_unit_is_refused_with_its_place() {
    let message = with("wrong_unit.yaml", "length: 60 m", "length: 60 kN");
    let expected = "wrong_unit.yaml:5:9: length: expected a length, got \"60 kN\" which is a force (write for example \
                    \"300 ft\")\n  |\n5 | length: 60 kN\n  |         ^\n";
    assert!(message.contains(expected), "{message}");
}

#[test]
fn faults_name_field_line_and_what_was_expected() {
    for (name, from, to, parts) in [
        ("bare", "length: 60 m", "length: 60", ["length: expected a length, got 60 without a unit", ":5:9:"]),
        ("negative", "thrust: 900 kN", "thrust: -900 kN", ["rig.thrust: expected a force above zero", ":14:16:"]),
        ("infinite", "pull: 500 kN", "pull: inf kN", ["rig.pull: expected a force, got \"inf kN\"", ":14:30:"]),
        ("unknown_key", "lubrication: metered", "lubricant: metered", ["unknown field `lubricant`", ":9:1:"]),
        ("missing_key", "rig: {", "wrong: {", ["unknown field `wrong`", ":14:1:"]),
        ("missing", "groundwater: 5.5 m", "# groundwater: 5.5 m", ["missing field `groundwater`", "top level"]),
        (
            "word",
            "class: firm_to_very_stiff_clay",
            "class: blue_clay",
            ["ground[0].class: expected a ground class", ":11:12:"],
        ),
        ("size", "size: 10 in", "size: 11 in", ["candidates[0].size: no clay jacking pipe of 11 in", ":19:29:"]),
        (
            "short",
            "  - class: firm",
            "  - to: 50 m\n    class: firm",
            ["ground[0].to: the ground ends here, 10.0 m short", ":11:9:"],
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
