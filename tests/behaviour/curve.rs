//! A line that is planned on a curve: what it adds to the force, and welded steel in it. Hand sums.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Subject, Verdict};
use jackpull::{Method, Scheme, assess};
use std::f64::consts::PI;

const LINE: &str = "
service: casing
length: 60 m
launch: { invert_depth: 5 m }
grade: 0 %
groundwater: none
lubrication: metered
spoil: slurry
work: { round_the_clock: true }
steering: { curve_radius: 300 m }
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }]
rig: { thrust: 9 MN, pull: 9 MN }
stem: { outside_diameter: none }
candidates: [{ material: concrete, size: 800 mm, strength: 50 MPa, pipe_length: 1 m }]
";
const CURVE: &str = "steering: { curve_radius: 300 m }\n";

fn jacked(text: &str) -> Scheme {
    let drive = drive(text);
    assess(&drive, &drive.candidates()[0], Method::PipeJacking)
}

/// 60 m on 300 m turn by 0.2: exp(0.3 x 0.2) = 1.062 with lubrication and exp(0.5 x 0.2) = 1.105 without.
#[test]
fn a_curve_adds_to_the_force_behind_it() {
    for (lubrication, factor) in [("metered", 1.061_84), ("none", 1.105_17)] {
        let text = LINE.edit("metered", lubrication);
        let (curved, straight) = (jacked(&text).force.unwrap(), jacked(&text.edit(CURVE, "")).force.unwrap());
        assert_relative_eq!(curved.high.value / straight.high.value, factor, max_relative = 1e-4);
        assert_relative_eq!(curved.likely.value / straight.likely.value, factor, max_relative = 1e-4);
        assert_eq!(curved.low, straight.low);
    }
    let (curved, straight) = (jacked(LINE), jacked(&LINE.edit(CURVE, "")));
    let thrust = |scheme: &Scheme| scheme.checks.get(Subject::JackingThrust).unwrap().high().unwrap().0.si;
    assert_relative_eq!(thrust(&curved) / thrust(&straight), 1.061_84, max_relative = 1e-4);
    // Nothing of it is told but the radius: at best the pipe rubs with 0.1 on its outer side.
    let best = curved.checks.get(Subject::JackingThrust).unwrap().best().unwrap().0.si;
    assert_relative_eq!(best / thrust(&straight), 1.020_20, max_relative = 1e-4);
    assert!(curved.checks.get(Subject::CurveBending).is_none());
}

/// 610 mm of steel, 29 x 10^6 psi, on 800 m: 199,948 x 609.6 / 1,600,000 = 76.2 MPa beside the push, of 240 / 1.5 = 160 MPa; on
/// 300 m 203 MPa.
#[test]
fn welded_steel_bends_in_a_curve() {
    let steel = LINE.edit(
        "material: concrete, size: 800 mm, strength: 50 MPa, pipe_length: 1 m",
        "material: steel, size: 24 in, wall: 12.7 mm, yield_strength: 240 MPa",
    );
    let wide = jacked(&steel.edit("300 m", "800 m"));
    let check = wide.checks.get(Subject::CurveBending).unwrap();
    let (demand, limit) = check.high().unwrap();
    let area = PI * (0.609_6 - 0.012_7) * 0.012_7;
    let bent = demand.si - wide.force.unwrap().high.value / area;
    assert_relative_eq!(bent, 76.2e6, max_relative = 2e-3);
    assert_relative_eq!(limit.si, 160e6, max_relative = 1e-6);
    assert_eq!(check.verdict, Verdict::Within);
    assert_eq!(jacked(&steel).checks.get(Subject::CurveBending).unwrap().verdict, Verdict::Over);
    assert!(jacked(&steel.edit(CURVE, "")).checks.get(Subject::CurveBending).is_none());
}

/// A casing before a pipe of clay is bent as well: 508 mm on 300 m 169 MPa of 205 / 1.5.
#[test]
fn a_casing_bends_in_a_curve_too() {
    let cased = LINE.edit(
        "material: concrete, size: 800 mm, strength: 50 MPa, pipe_length: 1 m",
        "material: clay, size: 10 in, casing: 508 mm, casing_wall: 10 mm, casing_yield_strength: 205 MPa",
    );
    let check = *jacked(&cased).checks.get(Subject::CurveBending).unwrap();
    assert_eq!(check.verdict, Verdict::Over);
    let (demand, limit) = check.likely().unwrap();
    assert!(demand.si > 169e6 && demand.si < 260e6, "{demand:?}");
    assert_relative_eq!(limit.si, 205e6 / 1.5, max_relative = 1e-6);
}
