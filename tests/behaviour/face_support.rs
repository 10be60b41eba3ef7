//! Pressure of a closed face: no less than what keeps the ground in, no more than what it bears. Hand sums.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};
use jackpull::{Method, assess};

/// The axis lies 20 m deep.
const SOFT: &str = "
service: gravity_sewer
length: 60 m
launch: { invert_depth: 20.48 m, dewatered: true }
reception: { invert_depth: 20.48 m, dewatered: true }
grade: 0 %
groundwater: 1 m
lubrication: logged
spoil: slurry
surface: { over: open }
ground:
  - { class: soft_clay, spt_n: 2, largest_stone: 0 mm, soil: { moist: 17.5 kN/m3, saturated: 17.5 kN/m3, friction_angle: 17.5 deg, undrained_strength: 20 kPa } }
rig: { thrust: 4000 kN, pull: 500 kN }
stem: { outside_diameter: none }
candidates: [{ material: concrete, size: 800 mm, outside_diameter: 960 mm, strength: 50 MPa, pipe_length: 2 m }]
";
const STRENGTH: &str = ", undrained_strength: 20 kPa";

fn face(text: &str) -> Check {
    let drive = drive(text);
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    *scheme.checks.get(Subject::FaceSupport).unwrap_or_else(|| panic!("no check of the face"))
}

fn with(text: &str, low: &str, high: &str) -> Check {
    face(&text.edit("spoil: slurry", &format!("spoil: slurry\nface_pressure: {{ low: {low}, high: {high} }}")))
}

/// 17.5 kN/m3 over 20 m are 350 kPa: clay of 20 kPa asks for 350 - 3 x 20 = 290 kPa, the ground bears 0.9 x 350 = 315 kPa.
#[test]
fn soft_clay_leaves_a_window() {
    let held = face(SOFT);
    let (least, greatest) = held.high().unwrap();
    assert_relative_eq!(least.si, 290e3, max_relative = 1e-6);
    assert_relative_eq!(greatest.si, 315e3, max_relative = 1e-6);
    assert_eq!((held.verdict, held.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(with(SOFT, "295 kPa", "310 kPa").verdict, Verdict::Within);
    assert_eq!(with(SOFT, "280 kPa", "310 kPa").verdict, Verdict::Over);
    assert_eq!(with(SOFT, "295 kPa", "320 kPa").verdict, Verdict::Over);
}

/// 15 kPa less strength leave 5 kPa between the two, which no machine holds; 10 kPa of strength leave nothing.
#[test]
fn a_narrow_window_is_not_decided_and_none_is_over() {
    let narrow = face(&SOFT.edit("strength: 20 kPa", "strength: 13 kPa"));
    assert_eq!(narrow.verdict, Verdict::NotDecided);
    assert_eq!(face(&SOFT.edit("strength: 20 kPa", "strength: 10 kPa")).verdict, Verdict::Over);
    assert_eq!(with(&SOFT.edit("strength: 20 kPa", "strength: 13 kPa"), "312 kPa", "314 kPa").verdict, Verdict::Within);
}

/// By two blows alone the clay has 7 to 25 kPa: 329 of 315 kPa at its weakest, 275 at its best.
#[test]
fn blows_alone_do_not_tell_whether_there_is_a_pressure() {
    let blows = face(&SOFT.edit(STRENGTH, ""));
    assert_eq!(
        (blows.verdict, blows.settled_by),
        (Verdict::NotDecided, &[&["ground[].soil.undrained_strength"][..]][..])
    );
    let (least, _) = blows.high().unwrap();
    assert_relative_eq!(least.si, 329e3, max_relative = 1e-6);
    let (least, _) = blows.best().unwrap();
    assert_relative_eq!(least.si, 275e3, max_relative = 1e-6);
}

/// Sand, axis 4 m deep, water at 1 m: 18 + 3 x 20 = 78 kPa, 29.4 of water, 48.6 effective. It arches over the head: a column
/// 0.96 (1 + 2 tan 30) = 2.07 m wide at 48.6/4 kN/m3, tan 30 in its sides, leaves 21.8 (1 - exp(-2.23)) = 19.4 kPa; a third of it
/// and the water are 35.9 kPa, and the ground bears 0.9 x 78 = 70.2.
#[test]
fn sand_under_water_is_held_over_water_and_what_arching_leaves() {
    let sand = SOFT.edit("class: soft_clay, spt_n: 2", "class: medium_to_dense_sand, spt_n: 25").edit(STRENGTH, "");
    let sand = sand.edit("moist: 17.5 kN/m3, saturated: 17.5 kN/m3", "moist: 18 kN/m3, saturated: 20 kN/m3");
    let sand = sand.edit("friction_angle: 17.5 deg", "friction_angle: 30 deg").edit_all("20.48 m", "4.48 m");
    let held = face(&sand);
    let (least, greatest) = held.high().unwrap();
    let (width, tan) = (0.96 * (1.0 + 2.0 * 30_f64.to_radians().tan()), 30_f64.to_radians().tan());
    let effective: f64 = 78e3 - 3.0 * 9_806.65;
    let arched = width * effective / 4.0 / (2.0 * tan) * (1.0 - (-2.0 * tan * 4.0 / width).exp());
    let need = 3.0 * 9_806.65 + arched / 3.0;
    assert_relative_eq!(need, 35.9e3, max_relative = 1e-3);
    // The lesser end of what the machine may let it swing by lies over it.
    assert_relative_eq!(least.si, need + 10e3, max_relative = 1e-3);
    assert_relative_eq!(greatest.si, 70.2e3, max_relative = 1e-6);
    assert_eq!((held.verdict, held.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(with(&sand, "47 kPa", "70 kPa").verdict, Verdict::Within);
    // Less than the swing of the pressure over what just holds it.
    let near = with(&sand, "40 kPa", "70 kPa");
    assert_eq!((near.verdict, near.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(with(&sand, "35 kPa", "70 kPa").verdict, Verdict::Over);
    assert_eq!(with(&sand, "67 kPa", "71 kPa").verdict, Verdict::Over);
}

/// Stiff clay near the surface stands by itself: 19 kN/m3 over 4 m are 76 kPa, less than three times 60.
#[test]
fn a_face_that_stands_asks_for_nothing() {
    let firm = SOFT.edit("class: soft_clay, spt_n: 2", "class: firm_to_very_stiff_clay, spt_n: 12");
    let firm = firm.edit("strength: 20 kPa", "strength: 60 kPa").edit_all("20.48 m", "4.48 m");
    assert_eq!(face(&firm).verdict, Verdict::Within);
    let open = firm.edit("spoil: slurry", "spoil: open_edge\ncutting_edge: 20 mm");
    let drive = drive(&open);
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    assert!(scheme.checks.get(Subject::FaceSupport).is_none());
}
