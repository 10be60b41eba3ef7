//! What drives over a pipe, by whose rules: hand sums.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::Subject;
use jackpull::{Method, assess};

/// A cover of 2.0 m over 609.6 mm of steel.
const CASING: &str = "
service: casing
length: 30 m
launch: { invert_depth: 2.61 m }
grade: 0 %
groundwater: none
lubrication: none
surface: { over: road }
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm, soil: { moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 25 deg } }]
rig: { thrust: 2 MN, pull: 500 kN }
candidates: [{ material: steel, size: 24 in, wall: 12.7 mm, yield_strength: 240 MPa }]
";

/// The whole column of soil with all that drives over it.
fn pressed(text: &str) -> f64 {
    let drive = drive(text);
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    scheme.checks.get(Subject::CollapseInService).unwrap().high().unwrap().0.si
}

/// Under 2 m load model 1 is 63 kPa; load model 71 of a heavy line 39 x 1.33 x (1.4 - 0.1 x 1.5) = 64.8 kPa. HL-93 lies
/// between the 457 psf of 6 ft and the 385 of 7 ft.
#[test]
fn each_code_has_its_own_loads() {
    let alone = pressed(&CASING.edit("over: road", "over: open"));
    assert_relative_eq!(alone, 2.61 * 19e3, max_relative = 1e-6);
    let europe = CASING.edit("surface:", "load_code: en_1991_2\nsurface:");
    assert_relative_eq!(pressed(&europe) - alone, 63e3, max_relative = 1e-3);
    // 2 m are 6.56 ft.
    let between = |six: f64, seven: f64| six + (seven - six) * (2.0 / 0.304_8 - 6.0);
    assert_relative_eq!(pressed(CASING) - alone, between(457.0, 385.0) * 47.880_26, max_relative = 1e-3);
    let rail = |text: &str| pressed(&text.edit("over: road", "over: railway"));
    assert_relative_eq!(rail(&europe) - alone, 39e3 * 1.33 * 1.25, max_relative = 1e-3);
    // A gear of 180 kip under 6 ft of cover, by either code.
    let gear = |text: &str| pressed(&text.edit("over: road", "over: runway"));
    assert_relative_eq!(gear(CASING) - alone, between(8.79, 7.85) * 6_894.757, max_relative = 1e-3);
    assert_relative_eq!(gear(&europe) - alone, between(8.79, 7.85) * 6_894.757, max_relative = 1e-3);
    // E-80: 15.63 psi under 6 ft, 12.15 under 7.
    assert_relative_eq!(rail(CASING) - alone, between(15.63, 12.15) * 6_894.757, max_relative = 1e-3);
}
