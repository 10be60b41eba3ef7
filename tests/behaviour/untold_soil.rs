//! Soil that the file tells in part: what then passes is looked at with less than the whole of it.

use crate::edit::Edit;
use crate::pull_works::{check, high, pulled, text};
use approx::assert_relative_eq;
use jackpull::Scheme;
use jackpull::check::{Subject, Verdict};

const NO_WEIGHT: &str = "below water the saturated unit weight of the ground is needed";
const PE: &str = "material: pe100, size: 315 mm, sdr: 11";
const PIPES: [&str; 3] = [
    PE,
    "material: pvc_fused, size: 12 in, sdr: 25, joint_factor: 0.9",
    "material: steel, size: 12 in, wall: 0.375 in, steel_grade: api_5l_b",
];

/// Clay 5 m deep under water at 1.5 m, with these further words of its soil.
fn wet(soil: &str, rest: &str, pipe: &str) -> Scheme {
    let ground = format!(
        "groundwater: 1.5 m
traffic: none
ground: [{{ class: soft_clay, spt_n: 3, largest_stone: 0 mm,
           soil: {{ moist: 18 kN/m3, friction_angle: 25 deg, undrained_strength: 20 kPa{soil} }} }}]
{rest}"
    );
    let file = text("pressure_main", "60 m", "duration: 6 h, score: 0 %", &ground, pipe);
    pulled(&file.edit("invert_depth: 4 m", "invert_depth: 5 m"))
}

const SATURATED: &str = ", saturated: 19 kN/m3";

/// 18 x 1.5 + 19 x 3.5 = 93.5 kPa, where water alone is 34.3 kPa: without the 19 nothing of it is decided.
#[test]
fn soil_without_its_weight_below_water() {
    assert_relative_eq!(
        high(&wet(SATURATED, "", PE), Subject::CollapseInService).0,
        18e3 * 1.5 + 19e3 * 3.5,
        max_relative = 1e-9
    );
    let vacuum = "vacuum: { pressure: 10 kPa, lasts: 6 h }";
    for pipe in PIPES {
        let scheme = wet("", vacuum, pipe);
        let service = check(&scheme, Subject::CollapseInService);
        assert_eq!((service.verdict, service.note), (Verdict::NotDecided, Some(NO_WEIGHT)), "{pipe}");
        assert_relative_eq!(service.high().unwrap().0.si, 9_806.65 * 3.5, max_relative = 1e-3);
        assert_eq!(check(&scheme, Subject::Vacuum).verdict, Verdict::NotDecided, "{pipe}");
        let plastic = !pipe.contains("steel");
        assert_eq!(scheme.checks.get(Subject::Deflection).is_some(), plastic, "{pipe}");
        if plastic {
            let deflection = check(&scheme, Subject::Deflection);
            assert_eq!((deflection.verdict, deflection.note), (Verdict::NotDecided, Some(NO_WEIGHT)), "{pipe}");
        }
    }
    // Proved grout lets nothing sag, and the weight still presses.
    let held = wet("", "annulus: { filling: grouted, proof: proved }", PE);
    assert!(held.checks.get(Subject::Deflection).is_none());
    assert_eq!(check(&held, Subject::CollapseInService).verdict, Verdict::NotDecided);
}

/// What groundwater alone overloads stays over: 50 m of it is 490 kPa.
#[test]
fn what_water_alone_overloads_is_over() {
    let file = text(
        "casing",
        "60 m",
        "duration: 6 h",
        "groundwater: 1 m
ground: [{ class: soft_clay, spt_n: 3, largest_stone: 0 mm, soil: { moist: 18 kN/m3, friction_angle: 25 deg } }]",
        PE,
    );
    let deep = pulled(&file.edit("invert_depth: 4 m", "invert_depth: 51 m"));
    assert_eq!(check(&deep, Subject::CollapseInService).verdict, Verdict::Over);
}

/// 20 m deep with its soil, and 1.2 m deep under 19.8 m of fluid where none is told: no plain pass. With that soil told the
/// worst place is the shallow one.
#[test]
fn break_out_on_part_of_the_drive() {
    let at = |first: &str, second: &str| {
        let sand = "class: medium_to_dense_sand, spt_n: 30, largest_stone: 20 mm";
        let ground = format!(
            "depths: [{{ at: 49.9 m, invert_depth: 20 m }}, {{ at: 70 m, invert_depth: 1.2 m }}]
groundwater: none
ground: [{{ to: 50 m, {sand}{first} }}, {{ {sand}{second} }}]"
        );
        let pipe = "material: pe100, size: 315 mm, wall: 43 mm";
        let file = text("pressure_main", "100 m", "duration: 6 h", &ground, pipe);
        let file = file.edit("invert_depth: 4 m }", "invert_depth: 20 m }\nreception: { invert_depth: 20 m }");
        check(&pulled(&file), Subject::BreakOut)
    };
    let soil = |stiffness: &str| format!(", soil: {{ moist: 21 kN/m3, friction_angle: 32 deg{stiffness} }}");
    let (stiff, soft) = (soil(", shear_modulus: 10 MPa"), soil(""));
    let part = at(&stiff, "");
    let (demand, limit) = part.high().unwrap();
    assert!(demand.si < limit.si, "{part:?}");
    assert_eq!(part.verdict, Verdict::WithCare);
    assert!(part.note.unwrap().starts_with("of the stretches whose soil is told: "), "{part:?}");
    assert!(at(&soft, "").note.unwrap().contains("some by the total stress"));
    let told = at(&stiff, &stiff);
    assert!(told.is_failed_screen() && told.high().unwrap().1.si < limit.si);
    // The note is of the worst place: that has its stiffness, though the other stretch has not.
    assert!(at(&soft, &stiff).note.unwrap().starts_with("here with its stiffness"));
    assert!(at(&stiff, &soft).note.unwrap().starts_with("against the total stress"));
}

/// Clay under water by its moist weight alone: the stress that the fluid meets is not known.
#[test]
fn break_out_without_the_weight_below_water() {
    let open = check(&wet("", "", PE), Subject::BreakOut);
    assert_eq!((open.verdict, open.note), (Verdict::NotDecided, Some(NO_WEIGHT)));
    assert!(check(&wet(SATURATED, "", PE), Subject::BreakOut).high().is_some());
}
