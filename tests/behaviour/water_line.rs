//! Where the water table meets the bore: friction on either side of it, at its place.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::Subject;
use jackpull::drive::AssumedValue;
use jackpull::method::{Point, profile};
use jackpull::source::Origin;
use jackpull::{Method, assess};
use std::f64::consts::PI;

/// 60 m of loose sand falling 1 in 40 from 4 m to 5.5 m of depth, with the table at a depth; no face, no stem.
fn sloping(table: &str, pipes: &str) -> String {
    format!(
        "service: casing\nlength: 60 m\nlaunch: {{ invert_depth: 4 m }}\nreception: {{ invert_depth: 5.5 m }}\n\
         grade: -2.5 %\ngroundwater: {table}\nlubrication: none\nwork: {{ round_the_clock: true }}\n\
         ground: [{{ class: loose_sand, spt_n: 8, largest_stone: 0 mm }}]\nrig: {{ thrust: 9 MN, pull: 1 MN }}\n\
         stem: {{ outside_diameter: none }}\nface: {{ low: 0 kN, likely: 0 kN, high: 0 kN }}\ncandidates:\n{pipes}"
    )
}

const PIPE: &str = "  - { material: clay, size: 400 mm, outside_diameter: 400 mm, end_bearing_area: 0.03 m2 }\n";
const LARGE: &str = "  - { material: clay, size: 900 mm, outside_diameter: 900 mm, end_bearing_area: 0.3 m2 }\n";

/// Rows of the design bands for loose sand, dry 8 / 20 / 45 and wet 5 / 12 / 20 kPa: the table at 4.5 m meets the invert at
/// 20 m and the crown of 400 mm at 36 m; between them the lower low and the higher rest.
#[test]
fn each_side_has_its_own_friction() {
    let drive = drive(&sloping("4.5 m", PIPE));
    let force = assess(&drive, &drive.candidates()[0], Method::PipeJacking).force.unwrap();
    let around = PI * 0.4 * 1e3;
    let by_hand = [8.0 * 20.0 + 5.0 * 16.0 + 5.0 * 24.0, 20.0 * 36.0 + 12.0 * 24.0, 45.0 * 36.0 + 20.0 * 24.0];
    for (force, by_hand) in [force.low, force.likely, force.high].into_iter().zip(by_hand) {
        assert_relative_eq!(force.value, around * by_hand, max_relative = 1e-9);
    }
    // The profile turns where the water is met, and is straight between.
    let stages = profile(&drive, &drive.candidates()[0], Method::PipeJacking);
    let points = &stages.last().unwrap().points;
    let advances: Vec<f64> = points.iter().map(|point| (point.advance.value * 1e6).round() / 1e6).collect();
    assert_eq!(advances, [0.0, 20.0, 36.0, 60.0]);
    let high: fn(&Point) -> f64 = |point| point.on_rig.high.value;
    assert_relative_eq!(high(&points[2]), around * 45.0 * 36.0, max_relative = 1e-9);
}

/// What is assumed is told for each side, each with the row that holds it.
#[test]
fn each_side_is_told_with_its_row() {
    let drive = drive(&sloping("4.5 m", PIPE));
    let of = |side: &str| {
        let field = format!("ground[0].unit_friction, jacked pipe, {side}");
        drive.assumed().iter().find(|assumed| assumed.field == field).unwrap()
    };
    let levels = |side| match of(side).value {
        AssumedValue::Band(band) => [band.low.si, band.likely.si, band.high.si].map(|si| si / 1e3),
        _ => panic!("a band"),
    };
    assert_eq!(levels("above water"), [8.0, 20.0, 45.0]);
    assert_eq!(levels("below water"), [5.0, 12.0, 20.0]);
    assert_eq!(levels("where water stands against the pipe"), [5.0, 20.0, 45.0]);
    assert!(matches!(of("above water").origin, Origin::Row(_)) && matches!(of("below water").origin, Origin::Row(_)));
    assert!(matches!(of("where water stands against the pipe").origin, Origin::Law(_)));
}

/// A pipe's force is its own, whatever other pipes there are to choose from.
#[test]
fn another_pipe_changes_nothing() {
    for table in ["3.7 m", "4.5 m", "5.2 m", "5.4 m"] {
        let (alone, beside) = (drive(&sloping(table, PIPE)), drive(&sloping(table, &format!("{PIPE}{LARGE}"))));
        let force = |drive: &jackpull::Drive| assess(drive, &drive.candidates()[0], Method::PipeJacking).force.unwrap();
        let (alone, beside) = (force(&alone), force(&beside));
        for (one, other) in [(alone.low, beside.low), (alone.likely, beside.likely), (alone.high, beside.high)] {
            assert_relative_eq!(one.value, other.value, max_relative = 1e-12);
        }
    }
}

/// So is the rating of the ground: hard rock suits a slurry machine of 1.2 m and more, whatever else is on the list.
#[test]
fn another_pipe_changes_no_rating() {
    let rock = |pipes: &str| {
        sloping("none", pipes)
            .edit(
                "class: loose_sand, spt_n: 8",
                "class: hard_rock, unit_friction: { low: 1 kPa, likely: 2 kPa, high: 3 kPa }",
            )
            .edit("stem: { outside_diameter: none }\nface:", "stem: { outside_diameter: none }\nspoil: slurry\nface:")
    };
    let large = LARGE.edit_all("900 mm", "1500 mm");
    let verdict = |text: &str, pipe: usize| {
        let drive = drive(
            &text.edit("invert_depth: 4 m", "invert_depth: 8 m").edit("invert_depth: 5.5 m", "invert_depth: 9.5 m"),
        );
        assess(&drive, &drive.candidates()[pipe], Method::PipeJacking).checks.get(Subject::Ground).unwrap().verdict
    };
    let (small, both) = (rock(PIPE), rock(&format!("{PIPE}{large}")));
    assert_eq!(verdict(&rock(&large), 0), verdict(&both, 1));
    assert_eq!(verdict(&small, 0), verdict(&both, 0));
    assert_ne!(verdict(&both, 0), verdict(&both, 1));
}
