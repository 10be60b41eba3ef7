//! What `assess --format filled` prints: the drive file with what was taken for all that it leaves out.

use crate::run::{SEWER, example, file, jackpull, stderr, stdout};
use serde_json::Value;

fn answer(path: &str) -> Value {
    let mut json: Value = serde_json::from_slice(&jackpull(&["assess", "--format", "json", path]).stdout).unwrap();
    // Name and digest are those of the file.
    json.as_object_mut().unwrap().retain(|key, _| !["file", "drive_digest"].contains(&key.as_str()));
    json
}

/// It reads as the file does, and gives the same answer; every value that the report calls assumed stands in it with its
/// source.
#[test]
fn a_filled_file_gives_the_same_answer() {
    let examples = ["fennbridge_mill_lane.yaml", "fennbridge_quarry_road.yaml"].map(example);
    for path in examples.into_iter().chain([file("filled_plain.yaml", SEWER.as_bytes())]) {
        let output = jackpull(&["assess", "--format", "filled", &path]);
        assert!(stderr(&output).is_empty(), "{}", stderr(&output));
        let filled = stdout(&output);
        assert!(filled.starts_with(&std::fs::read_to_string(&path).unwrap()), "{filled}");
        let before = answer(&path);
        assert_eq!(answer(&file("filled.yaml", filled.as_bytes())), before);
        let assumed = before["schemes"][0]["assumed"].as_array().unwrap();
        assert!(!assumed.is_empty());
        for one in assumed {
            let text = |key: &str| one[key].as_str().unwrap_or_default().to_owned();
            let source = one["row"].as_str().unwrap_or(one["source"].as_str().unwrap()).to_owned();
            let line =
                filled.lines().find(|line| line.starts_with(&format!("# {}: {}  # ", text("field"), text("value"))));
            assert!(line.is_some_and(|line| line.contains(&source)), "{one} is not in\n{filled}");
        }
    }
}

/// A line of it that is a field goes into the file as it stands: as the engineer's word it makes nothing better.
#[test]
fn a_value_of_a_filled_file_can_be_told() {
    let sewer = format!("{SEWER}surface: {{ over: road }}\n");
    let path = file("filled_short.yaml", sewer.as_bytes());
    let filled = stdout(&jackpull(&["assess", "--format", "filled", &path]));
    let tolerance = filled.lines().find(|line| line.starts_with("# tolerance: ")).unwrap();
    let (told, _) = tolerance.trim_start_matches("# ").split_once("  # ").unwrap();
    assert_eq!(told, "tolerance: 20 mm");
    let told = file("filled_told.yaml", format!("{sewer}{told}\n").as_bytes());
    let (before, after) = (answer(&path), answer(&told));
    let standing = |answer: &Value| answer["schemes"][0]["standing"].as_str().unwrap().to_owned();
    assert_eq!(standing(&before), "fits with care");
    assert_eq!(standing(&after), "fits with care");
    let invert = |answer: &Value| {
        let checks = answer["schemes"][0]["checks"].as_array().unwrap().clone();
        checks.into_iter().find(|check| check["subject"] == "invert, line and grade").unwrap()
    };
    assert_eq!(invert(&before)["utilisation"], invert(&after)["utilisation"]);
    // Above the last line what is told of fields, below it what no field tells.
    let (fields, others) = filled.split_once("# Assumed besides, without a field in the file:").unwrap();
    assert!(fields.contains("# stem.outside_diameter: 114 mm  # pilot_stem/pushed"), "{filled}");
    assert!(
        others.contains("# restart after a stop, ") && others.contains("# candidates[0]: angle of the line"),
        "{filled}"
    );
}
