//! `assess` on jacked pipe of several materials.

use crate::run::{example, jackpull, stderr, stdout};
use serde_json::Value;

const THREE: &str = "fennbridge_kiln_bank.yaml";

#[test]
fn three_materials_are_ranked() {
    for units in ["si", "us"] {
        let output = jackpull(&["assess", "--full", "--units", units, &example(THREE)]);
        assert_eq!(output.status.code(), Some(0), "{}", stderr(&output));
        let page = stdout(&output);
        assert!(page.starts_with("PIPE JACKING, "), "{page}");
        let (own, _) = page.split_once("\nDrive file\n").unwrap();
        assert!(own.lines().all(|line| line.chars().count() <= 100), "{page}");
        for part in
            ["concrete 400 mm", "polymer concrete 400 mm", "steel 18 in", "joint angle", "pipe in the pit, column"]
        {
            assert!(page.contains(part), "{part}:\n{page}");
        }
    }
}

/// Figures that are not checks stand in the text and in the JSON, with what they rest on.
#[test]
fn figures_are_in_text_and_json() {
    let output = jackpull(&["assess", "--format", "json", &example(THREE)]);
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    let page =
        stdout(&jackpull(&["assess", "--full", &example(THREE)])).split_whitespace().collect::<Vec<_>>().join(" ");
    let mut told = 0;
    for scheme in report["schemes"].as_array().unwrap() {
        for figure in scheme["figures"].as_array().unwrap() {
            for key in ["label", "source", "at", "mark"] {
                assert!(!figure[key].as_str().unwrap().is_empty(), "{key} in {figure}");
            }
            assert!(figure["value"]["value"].is_f64() && figure["value"]["unit"].is_string(), "{figure}");
            assert!(page.contains(&format!("{}: ", figure["label"].as_str().unwrap())), "{figure}");
            told += 1;
        }
    }
    assert!(told > 10, "{told}");
    let concrete = |name: &str| page.contains(&format!("mean stress allowed by {name}"));
    assert!(concrete("default") && concrete("EN 1916") && concrete("ASCE 27"));
}
