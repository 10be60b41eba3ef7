//! Whether a reamed bore stands until the pipe is in it. Hand sums.

use crate::edit::Edit;
use crate::pull_works::{check, pulled};
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};

const G: f64 = 9.806_65;

/// Level, 4 m deep; a bore of 300 mm round a pipe of 200 mm: its crown lies 0.25 m over the invert, its axis 0.1 m.
const CLAY: &str = "
service: pressure_main
length: 60 m
launch: { invert_depth: 4 m }
grade: 0 %
groundwater: none
lubrication: none
surface: { over: open }
ground: [{ class: soft_clay, spt_n: 3, largest_stone: 0 mm, soil: { moist: 18 kN/m3, saturated: 18 kN/m3, friction_angle: 17 deg, undrained_strength: 20 kPa } }]
rig: { thrust: 900 kN, pull: 500 kN }
pull: { duration: 6 h, pipe_temperature: 20 degC, fluid_level: 1 m }
candidates: [{ material: pe100, size: 200 mm, sdr: 11, bore: 300 mm }]
";

fn bore(text: &str) -> Check {
    check(&pulled(text), Subject::ReamedBore)
}

/// 18 kN/m3 over 3.9 m are 70.2 kPa, less 2.9 m of fluid as light as water, over 20 kPa: 2.09 of 3.
#[test]
fn clay_stands_by_its_strength_and_the_fluid() {
    let stands = bore(CLAY);
    let (number, limit) = stands.high().unwrap();
    assert_relative_eq!(limit.si, 3.0, max_relative = 1e-9);
    assert_relative_eq!(number.si, (70.2e3 - 1_000.0 * G * 2.9) / 20e3, max_relative = 1e-6);
    assert_eq!(stands.verdict, Verdict::Within);
    // Of 8 kPa it does not: 5.2 of 4 at the least.
    let weak = CLAY.edit("undrained_strength: 20 kPa", "undrained_strength: 8 kPa");
    assert_eq!(bore(&weak).verdict, Verdict::Over);
    // 14 kPa stand with fluid that is kept, and dry they do not: 70.2 / 14 = 5.0.
    let kept = CLAY.edit("undrained_strength: 20 kPa", "undrained_strength: 14 kPa");
    assert_eq!(bore(&kept).verdict, Verdict::Within);
    let dry = kept.edit("fluid_level: 1 m", "hole: dry_and_stable");
    assert_eq!(bore(&dry).verdict, Verdict::Over);
    assert_relative_eq!(bore(&dry).high().unwrap().0.si, 70.2 / 14.0, max_relative = 1e-6);
    // How high the fluid stands that is not told decides as well.
    assert_eq!(bore(&kept.edit(", fluid_level: 1 m", "")).verdict, Verdict::NotDecided);
}

/// What holds sand is one rule: 10 kPa over the water is well, less with care, no more than the water bars; half a metre where
/// the crown, 3.75 m deep, is dry, a quarter of it with care.
#[test]
fn fluid_that_is_told_is_held_against_the_water() {
    let sand = CLAY.edit("class: soft_clay, spt_n: 3", "class: medium_to_dense_sand, spt_n: 25").edit(
        ", soil: { moist: 18 kN/m3, saturated: 18 kN/m3, friction_angle: 17 deg, undrained_strength: 20 kPa }",
        ", soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg }",
    );
    let wet = sand.edit("groundwater: none", "groundwater: 2 m");
    let at = |text: &str, level: &str| {
        let check = bore(&text.edit("fluid_level: 1 m", &format!("fluid_level: {level}")));
        (check.verdict, check.care)
    };
    // 1 m over the water is 9.8 kPa, 1.1 m 10.8 kPa.
    assert_eq!(at(&wet, "0.9 m"), (Verdict::Within, None));
    assert_eq!(at(&wet, "1 m"), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(at(&wet, "1.9 m"), (Verdict::WithCare, Some(Care::Condition)));
    // Of no density it may be clean mud of 1.05: 18.0 over 17.2 kPa. Of 1.02, 17.5 kPa, it hardly holds more than water does.
    assert_eq!(at(&wet, "2 m").0, Verdict::NotDecided);
    for (density, wanted) in [("1000", Verdict::Over), ("1020", Verdict::Over), ("1050", Verdict::WithCare)] {
        let told = wet.edit("fluid_level: 1 m", &format!("fluid_level: 1 m, fluid_density: {density} kg/m3"));
        assert_eq!(at(&told, "2 m").0, wanted, "{density}");
    }
    assert_eq!(at(&sand, "3.2 m"), (Verdict::Within, None));
    assert_eq!(at(&sand, "3.3 m"), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(at(&sand, "3.5 m"), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(at(&sand, "3.51 m").0, Verdict::Over);
    // The stem lies in the same bore: it is held by the same fluid, and not by one that stands lower than the water.
    let state = |level: &str| {
        let text = wet.edit("fluid_level: 1 m", &format!("fluid_level: {level}"));
        let drive = crate::drives::drive(&format!("pilot: drilled\n{text}"));
        let round = |one: &&jackpull::drive::Assumed| one.field == "ground[0].bore round the stem";
        let told = drive.assumed().iter().find(round).map(|one| one.value.text(jackpull::quantity::UnitSystem::Si));
        told.unwrap()
    };
    assert_eq!(state("1.9 m"), state("0.5 m"));
    assert_eq!(state("2 m"), "not counted on to stand");
}

/// Sand under water at 2 m, the crown 3.75 m deep: 17.2 kPa of water and 10 over it; fluid kept 1 m under the ground stands
/// 2.75 m over the crown, 27.0 kPa as light as water.
#[test]
fn sand_is_held_by_fluid_over_its_water() {
    let sand = CLAY.edit("class: soft_clay, spt_n: 3", "class: medium_to_dense_sand, spt_n: 25").edit(
        ", soil: { moist: 18 kN/m3, saturated: 18 kN/m3, friction_angle: 17 deg, undrained_strength: 20 kPa }",
        ", soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg }",
    );
    let wet = sand.edit("groundwater: none", "groundwater: 2 m");
    let need = 1_000.0 * G * 1.75 + 10e3;
    let full = bore(&wet.edit("fluid_level: 1 m", "fluid_level: 0 m"));
    assert_relative_eq!(full.high().unwrap().1.si, need, max_relative = 1e-6);
    assert_eq!(full.verdict, Verdict::Within);
    let low = bore(&wet.edit("fluid_level: 1 m", "fluid_level: 2 m, fluid_density: 1000 kg/m3"));
    assert_eq!((low.verdict, low.settled_by), (Verdict::Over, &[&["pull.fluid_level"][..]][..]));
    // Not told: both pits are to be kept full, as far as the ground bears it.
    let untold = bore(&wet.edit(", fluid_level: 1 m", ""));
    assert_eq!((untold.verdict, untold.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_relative_eq!(untold.high().unwrap().0.si, need, max_relative = 1e-6);
    // A dry bore in sand above the water is looked after.
    let dry = bore(&sand.edit("fluid_level: 1 m", "hole: dry_and_stable"));
    assert_eq!(dry.verdict, Verdict::WithCare);
    let rock = CLAY.edit("class: soft_clay, spt_n: 3", "class: hard_rock").edit(", undrained_strength: 20 kPa", "");
    assert!(pulled(&rock).checks.get(Subject::ReamedBore).is_none());
}
