//! What the command prints of stem, auger and casing.

use crate::edit::Edit;
use crate::run::{file, jackpull, stderr, stdout};
use serde_json::Value;

const DRIVE: &str = "
service: casing
length: 60 m
launch: { invert_depth: 5 m, wall: { width: 4 m, height: 4 m, movement: checked } }
grade: 0 %
groundwater: none
lubrication: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm,
    unit_friction: { low: 1 kPa, likely: 3 kPa, high: 6 kPa } }]
work: { round_the_clock: true }
surface: { over: open }
crossings: []
steering: { joint_angle: 0.1 deg }
rig: { thrust: 2 MN, pull: 500 kN, torque: 20 kN*m, MORE_RIG }
stem: { outside_diameter: 100 mm, joint_torque: 9 kN*m, MORE_STEM }
candidates:
  - { material: clay, size: 400 mm, outside_diameter: 480 mm, end_bearing_area: 0.06 m2, casing: 530 mm,
      casing_wall: 10 mm, crushing: 60 kN/m, packer: { thickness: 12 mm } }
";

fn path(name: &str, rig: &str, stem: &str) -> String {
    let text = DRIVE.edit(", MORE_RIG", rig).edit(", MORE_STEM", stem);
    file(&format!("stem_{name}.yaml"), text.as_bytes())
}

fn page(path: &str) -> String {
    let output = jackpull(&["assess", "--full", path]);
    let page = stdout(&output);
    assert_eq!(output.status.code(), Some(0), "{}{page}", stderr(&output));
    let (own, _) = page.split_once("\nDrive file\n").unwrap();
    assert!(own.lines().all(|line| line.chars().count() <= 100), "{page}");
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn first(path: &str) -> Value {
    let output = jackpull(&["assess", "--format", "json", path]);
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    report["schemes"][0].clone()
}

/// A rating of torque that nothing is held against is told, and no longer once the torque is given.
#[test]
fn a_rating_without_a_torque_is_told() {
    let asked =
        ["torque of the pilot stem (stem.torque)", "torque of the auger, where there is one (rig.auger_torque)"];
    let bare = page(&path("bare", "", ""));
    let torque = "torque: { low: 2 kN*m, likely: 4 kN*m, high: 8 kN*m }";
    let full = path("torque", &format!(", auger_{torque}"), &format!(", {torque}"));
    let told = page(&full);
    for what in asked {
        assert!(bare.contains(what) && !told.contains(what), "{what}:\n{bare}\n{told}");
    }
    for subject in ["torque, pilot stem", "torque, auger"] {
        assert!(!bare.contains(subject) && told.contains(subject), "{subject}:\n{told}");
        let checks = first(&full)["checks"].as_array().unwrap().clone();
        assert!(checks.iter().any(|check| check["subject"] == subject && check["verdict"] == "within"), "{checks:?}");
    }
    // What rubs is held against the rig until the whole torque is told.
    assert!(bare.contains("torque, drag of the auger") && !told.contains("torque, drag of the auger"), "{bare}");
}

/// Each stage tells what the rig bears, what the pipe bears, and what is driven out ahead.
#[test]
fn stem_and_casing_have_their_own_columns() {
    let path = path("along", "", "");
    let page = page(&path);
    for head in [
        "pilot stem pushed, advance from the launch pit on rig: likely, high on stem: likely, high",
        "casing pushed behind the stem, advance from the launch pit on rig: likely, high on casing: likely, high on stem: likely, high",
        "pipe pushes the casing out, advance from the launch pit on rig: likely, high on pipe: likely, high on casing: likely, high",
    ] {
        assert!(page.contains(head), "{head}:\n{page}");
    }
    let stages = first(&path)["stages"].clone();
    let last = stages[2]["points"].as_array().unwrap().clone();
    let high = |point: &Value, on: &str| point[on]["high"]["value"].as_f64().unwrap();
    // 60 m of 530 mm at 6 kPa when the pipe comes, pi 0.530 60 6 = 599.4 kN and more, and none when it has come.
    assert!(high(&last[0], "on_casing") > 599.4 && high(last.last().unwrap(), "on_casing") == 0.0, "{last:?}");
    assert!(last[0]["on_stem"].is_null());
}
