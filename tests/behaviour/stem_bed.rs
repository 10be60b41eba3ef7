//! What the ground between the pits does for a slender stem, against hand sums.

use crate::drives::drive;
use approx::assert_relative_eq;
use jackpull::check::{Check, Subject, Verdict};
use jackpull::{Method, assess};
use proptest::prelude::*;
use std::f64::consts::PI;

/// A stem of 60 mm x 5 mm, all but held in the pit, in ground of one friction.
fn check(ground: &str, water: &str, depth: f64) -> Check {
    let drive = drive(&format!(
        "service: casing\nlength: 60 m\nlaunch: {{ invert_depth: {depth} m }}\ngrade: 0 %\ngroundwater: {water}\n\
         lubrication: none\nwork: {{ round_the_clock: true }}\nground:\n  - {{ {ground}, largest_stone: 0 mm, unit_friction: {{ low: 1 kPa, likely: 8 kPa, \
         high: 40 kPa }} }}\nrig: {{ thrust: 900 kN, pull: 500 kN }}\n\
         stem: {{ outside_diameter: 60 mm, head_diameter: 60 mm, wall: 5 mm, free_length: 0.5 m }}\ncandidates:\n  - {{ material: clay, size: \
         400 mm, outside_diameter: 400 mm, end_bearing_area: 0.03 m2 }}\n"
    ));
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    *scheme.checks.get(Subject::StemBuckling).unwrap()
}

/// Allowed of 2 sqrt(k E I), half of it.
fn allowed(bed: f64) -> f64 {
    (bed * 200e9 * PI / 64.0 * (0.06_f64.powi(4) - 0.05_f64.powi(4))).sqrt()
}

fn limits(check: &Check) -> [f64; 2] {
    [check.likely().unwrap().1.si, check.high().unwrap().1.si]
}

/// Ground that no source gives a bed for holds no more than clay of the same count, 67 x 6.25 kPa N.
#[test]
fn soft_ground_of_no_class_of_clay_does_not_hold_a_stem() {
    for class in ["silt", "fill", "unknown", "peat", "soft_clay"] {
        let check = check(&format!("class: {class}, spt_n: 1"), "1 m", 5.0);
        assert_relative_eq!(limits(&check)[1], allowed(67.0 * 6.25e3), max_relative = 1e-9);
        assert_ne!(check.verdict, Verdict::Within, "{class}");
        let note = check.note.unwrap();
        assert_eq!(note.contains("no source gives the bed"), class != "soft_clay", "{class}: {note}");
    }
    assert_eq!(check("class: peat, spt_n: 30", "1 m", 5.0).verdict, Verdict::WithCare);
    assert_eq!(check("class: silt, spt_n: 30", "1 m", 5.0).verdict, Verdict::Within);
}

/// 7, 21 and 56 tons per cubic foot above water, 4, 14 and 34 below (Terzaghi 1955), on the axis of the pipe, here 3 m
/// down; at the high level half, in dense sand two thirds, of it. Less in proportion below 4 blows.
#[test]
fn sand_holds_a_stem_by_depth_and_count() {
    let ton = 2_000.0 * 4.448_221_615_260_5 / 0.3048_f64.powi(3);
    for (ground, moist, submerged, low) in [
        ("class: loose_sand, spt_n: 1", 7.0 / 4.0, 1.0, 0.5),
        ("class: loose_sand, spt_n: 4", 7.0, 4.0, 0.5),
        ("class: loose_sand, spt_n: 9", 7.0, 4.0, 0.5),
        ("class: medium_to_dense_sand, spt_n: 12", 21.0, 14.0, 0.5),
        ("class: gravel, spt_n: 12", 21.0, 14.0, 0.5),
        ("class: medium_to_dense_sand, spt_n: 40", 56.0, 34.0, 0.67),
    ] {
        for (water, tons) in [("none", moist), ("1 m", submerged)] {
            let [likely, high] = limits(&check(ground, water, 3.2));
            let pit = PI.powi(2) * 200e9 * PI / 64.0 * (0.06_f64.powi(4) - 0.05_f64.powi(4)) / 0.25 / 2.0;
            assert_relative_eq!(likely, allowed(tons * ton * 3.0).min(pit), max_relative = 1e-9);
            assert_relative_eq!(high, allowed(low * tons * ton * 3.0).min(pit), max_relative = 1e-9);
        }
    }
    // Without a count loose sand may have none.
    assert_eq!(limits(&check("class: loose_sand", "none", 3.2))[1], 0.0);
}

/// The other ground of a mixed face counts as well: by the count of the face, where it may have it, else by the least of its class.
#[test]
fn the_softer_ground_of_a_face_counts() {
    let mixed = check("class: medium_to_dense_sand, mixed_with: silt, spt_n: 40", "none", 5.0);
    let soft = check("class: silt, spt_n: 40", "none", 5.0);
    let sand = check("class: medium_to_dense_sand, spt_n: 40", "none", 5.0);
    assert_eq!(limits(&mixed)[1], limits(&soft)[1].min(limits(&sand)[1]));
    let past = check("class: medium_to_dense_sand, mixed_with: loose_sand, spt_n: 40", "none", 5.0);
    assert_eq!(limits(&past)[1], 0.0);
    assert!(mixed.note.unwrap().contains("silt"));
}

proptest! {
    /// More blows and more depth never take from what may be pushed, water never adds.
    #[test]
    fn a_bed_grows_with_count_and_depth(
        class in prop::sample::select(vec!["silt", "fill", "unknown", "loose_sand"]),
        n in 0.0..10.0_f64, more in 0.0..10.0_f64, depth in 1.0..10.0_f64, deeper in 0.0..10.0_f64,
    ) {
        let at = |n: f64, water, depth| limits(&check(&format!("class: {class}, spt_n: {}", n.min(10.0)), water, depth));
        let [likely, high] = at(n, "none", depth);
        prop_assert!(high <= likely);
        for [likely_too, high_too] in [at(n + more, "none", depth), at(n, "none", depth + deeper)] {
            prop_assert!(likely_too >= likely * (1.0 - 1e-12) && high_too >= high * (1.0 - 1e-12));
        }
        let [likely_wet, high_wet] = at(n, "0 m", depth);
        prop_assert!(likely_wet <= likely && high_wet <= high);
    }
}
