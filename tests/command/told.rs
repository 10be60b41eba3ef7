//! What the page tells, so that nobody reads more into it than is there.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stdout};
use serde_json::Value;
use std::sync::atomic::{AtomicUsize, Ordering};

static FILES: AtomicUsize = AtomicUsize::new(0);

fn page(name: &str, change: impl FnOnce(String) -> String, more: &[&str]) -> String {
    let text = std::fs::read_to_string(example(name)).unwrap();
    // Tests run side by side.
    let number = FILES.fetch_add(1, Ordering::Relaxed);
    let path = file(&format!("told_{number}.yaml"), change(text).as_bytes());
    let arguments: Vec<&str> = ["assess"].iter().chain(more).copied().chain([path.as_str()]).collect();
    stdout(&jackpull(&arguments))
}

const CLAY: &str = "fennbridge_mill_lane.yaml";

/// A factor of ours keeps its mark beside a strength that is given.
#[test]
fn a_given_strength_lifts_no_mark() {
    let report: Value = serde_json::from_str(&page(CLAY, |text| text, &["--format", "json"])).unwrap();
    let checks = report["schemes"][0]["checks"].as_array().unwrap();
    let end = checks.iter().find(|check| check["subject"] == "pipe end, jacking force").unwrap();
    assert_eq!(end["factor"]["row"], "practice_ratio/clay.factor");
    assert_eq!(end["mark"], "judgement");
}

/// The other schemes stand in short, and in full where that is asked for.
#[test]
fn other_schemes_are_told_in_short() {
    let short = page(CLAY, |text| text, &[]);
    let full = page(CLAY, |text| text, &["--full"]);
    assert!(short.contains("Other schemes: checks that are not within"), "{short}");
    assert!(!short.contains("Checks: pullback") && full.contains("Checks: pullback"), "{full}");
    assert!(short.lines().count() < full.lines().count());
    assert!(short.contains("pipe pushed behind the stem: total on the rig likely "), "{short}");
    assert!(
        short.contains("of the stem, low: unit_friction") && short.contains("of the pipe, low: unit_friction"),
        "{short}"
    );
}

/// A file in feet is reported in feet, with one unit of force.
#[test]
fn units_are_those_of_the_file() {
    let feet = page(CLAY, |text| text.edit("length: 60 m", "length: 196.850394 ft"), &[]);
    assert!(feet.contains("rig: thrust ") && feet.contains(" kip, pull "), "{feet}");
    assert!(page(CLAY, |text| text, &[]).contains(" kN, pull "));
}

/// A pull through sand by a link that is set low, and pipe that its maker does not rate for thrust.
const LINK: &str = "name: Hill main
service: pressure_main
length: 180 m
launch: { invert_depth: 2.5 m }
reception: { invert_depth: 2.5 m }
groundwater: none
lubrication: none
ground: [{ class: medium_to_dense_sand, spt_n: 25, largest_stone: 40 mm }]
rig: { thrust: 2000 kN, pull: 2000 kN }
pull: { duration: 8 h, pipe_temperature: 30 degC, pull_head: { weak_link: 39 kN } }
candidates:
  - { material: pe100, size: 250 mm, sdr: 11 }
  - { material: ductile_iron, size: 10 in, wall: 8 mm, joint_pull: 300 kN, joint_deflection: 2 deg, pipe_length: 5.5 m }
";

/// A method that a pipe is not looked at for is named with the field it needs; a link that parts is told to part.
#[test]
fn what_is_not_looked_at_and_what_parts_is_named() {
    let page = page(CLAY, |_| LINK.to_owned(), &["--full"]);
    assert!(page.contains("Not assessed: pipe jacking of ductile iron 10 in (needs rated_force)."), "{page}");
    assert!(page.contains("the link parts in the expected pull"), "{page}");
    assert!(page.contains("long, level\n"), "{page}");
}
