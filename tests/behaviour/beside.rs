//! Services that run along the bore, and what the surface and the traffic tell of each other: hand sums and the door.

use crate::drives::{drive, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Subject, Verdict};
use jackpull::{Handbook, Method, assess, read_drive};
use proptest::prelude::*;
use std::f64::consts::PI;

/// The shared drive in sand above water with these lines more.
fn with(lines: &str) -> String {
    text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        let sand = "class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm";
        format!("{before}ground: [{{ {sand} }}]\n{lines}rig:{after}")
    })
}

/// Likely and high of a check of the pulled pipe.
fn demand(lines: &str, subject: Subject) -> [f64; 2] {
    let drive = drive(&with(lines));
    let [_, pe] = drive.candidates() else { panic!("two pipes") };
    let scheme = assess(&drive, pe, Method::Pullback);
    let check = scheme.checks.get(subject).unwrap();
    [check.likely().unwrap().0.si, check.high().unwrap().0.si]
}

fn main_beside(distance: f64) -> String {
    format!("crossings: [{{ at: 30 m, depth: 2 m, beside: {distance} m, allowed_settlement: 500 mm }}]\n")
}

/// Axis at 4.08 m less 157.5 mm, the bore 472.5 mm wide, the main at 2 m: its own distance aslant. A trough of
/// 0.2 times the height to 0.175 of the depth and 0.325 of the height settles it most where it is just as wide as the main is
/// far.
#[test]
fn a_main_along_the_bore() {
    let up = 4.08 - 0.1575 - 2.0;
    let (whole, pipe) = (PI / 4.0 * 0.4725_f64.powi(2), PI / 4.0 * 0.315_f64.powi(2));
    let at =
        |lost: f64, width: f64, y: f64| lost / ((2.0 * PI).sqrt() * width) * (-y * y / (2.0 * width * width)).exp();
    let wide = 0.175 * (4.08 - 0.1575) + 0.325 * up;
    for (y, worst_width) in [(0.2, 0.2 * up), (0.45, 0.45), (1.5, wide)] {
        let [clear, _] = demand(&main_beside(y), Subject::ServiceClearance);
        assert_relative_eq!(clear, (up * up + y * y).sqrt() - 0.23625, max_relative = 1e-9);
        let [likely, high] = demand(&main_beside(y), Subject::ServiceSettlement);
        let usual = 0.015 * whole + (whole - pipe);
        assert_relative_eq!(likely, at(usual, 0.25 * up, y), max_relative = 1e-9);
        assert_relative_eq!(high, at(0.02 * whole + (whole - pipe), worst_width, y), max_relative = 1e-9);
    }
}

/// It is bent along the line as the face goes by, by its settlement over 2.5 widths: most where the width is its distance over
/// the root of 2. Far out it feels next to nothing; what crosses has the whole slope of the trough.
#[test]
fn a_main_along_the_bore_is_bent_along_it() {
    let (whole, pipe) = (PI / 4.0 * 0.4725_f64.powi(2), PI / 4.0 * 0.315_f64.powi(2));
    let lost = 0.02 * whole + (whole - pipe);
    for (y, width) in [(0.6, 0.6 / 2_f64.sqrt()), (1.5, 1.5 / 2_f64.sqrt())] {
        let slope = lost / (2.0 * PI * width * width) * (-y * y / (2.0 * width * width)).exp();
        let [_, high] = demand(
            &main_beside(y).edit("allowed_settlement", "allowed_slope: 4 %, allowed_settlement"),
            Subject::ServiceSlope,
        );
        assert_relative_eq!(high, slope, max_relative = 1e-9);
    }
}

/// No nearer to the axis than one and a half bores of 472.5 mm does a trough tell how the ground moves.
#[test]
fn a_main_at_the_height_of_the_bore_is_not_decided() {
    let at = |depth: &str| {
        let drive = drive(&with(&main_beside(1.0).edit("depth: 2 m", depth)));
        let pe = &drive.candidates()[1];
        assess(&drive, pe, Method::Pullback).checks.get(Subject::ServiceSettlement).unwrap().verdict
    };
    assert_eq!((at("depth: 3.2 m"), at("depth: 3.3 m")), (Verdict::Within, Verdict::NotDecided));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(32) })]
    /// Farther off there is more room and less settlement, and never less at the high than at the likely end.
    #[test]
    fn farther_off_is_never_worse(near in 0.01..4.0_f64, more in 0.01..2.0_f64) {
        for (subject, sign) in [(Subject::ServiceClearance, 1.0), (Subject::ServiceSettlement, -1.0)] {
            let (one, other) = (demand(&main_beside(near), subject), demand(&main_beside(near + more), subject));
            prop_assert!(sign * (other[0] - one[0]) >= 0.0 && sign * (other[1] - one[1]) >= 0.0);
        }
        let [likely, high] = demand(&main_beside(near), Subject::ServiceSettlement);
        prop_assert!(high >= likely);
    }
}

#[test]
fn contradictions_are_refused_at_their_place() {
    for (lines, wanted) in [
        (main_beside(0.0), "above zero"),
        ("surface: { over: railway }\ntraffic: highway\n".to_owned(), "write `traffic: railway`"),
        ("surface: { over: road }\ntraffic: none\n".to_owned(), "write `traffic: highway`"),
        ("surface: { over: open }\ntraffic: railway\n".to_owned(), "write `over: railway`"),
    ] {
        let error = read_drive(&with(&lines), &Handbook::embedded()).expect_err(wanted).to_string();
        assert!(error.contains(wanted) && error.contains("line"), "{wanted}: {error}");
    }
    for (over, traffic) in [("open", "none"), ("road", "highway"), ("railway", "railway")] {
        drive(&with(&format!("surface: {{ over: {over} }}\ntraffic: {traffic}\n")));
    }
}

/// A service where two grounds meet is in both: the one that moves more counts, whichever comes first; so it is within half
/// the depth of the invert, and no further.
#[test]
fn a_main_where_two_grounds_meet() {
    const SAND: &str = "class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm";
    const CLAY: &str = "class: soft_clay, spt_n: 3, largest_stone: 0 mm";
    let over = |first: &str, second: &str, to: &str| {
        let one = format!("ground: [{{ {SAND} }}]");
        let two = format!("ground: [{{ to: {to}, {first} }}, {{ {second} }}]");
        let drive = drive(&with(&main_beside(1.0)).edit(&one, &two));
        let scheme = assess(&drive, &drive.candidates()[1], Method::Pullback);
        let check = scheme.checks.get(Subject::ServiceSettlement).unwrap();
        [check.likely().unwrap().0.si, check.high().unwrap().0.si]
    };
    let (sand, clay) = (over(SAND, SAND, "30 m"), over(CLAY, CLAY, "30 m"));
    assert_ne!(sand, clay);
    let both = [0, 1].map(|level| sand[level].max(clay[level]));
    assert_eq!(over(SAND, CLAY, "30 m"), both);
    assert_eq!(over(CLAY, SAND, "30 m"), both);
    assert_eq!(over(SAND, CLAY, "31 m"), both);
    assert_eq!(over(SAND, CLAY, "33 m"), sand);
}
