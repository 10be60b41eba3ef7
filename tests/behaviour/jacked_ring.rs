//! The ring of a flexible pipe that is jacked, in service; and what a railway over a pipe asks for.

use crate::drives::drive;
use crate::edit::Edit;
use crate::pull_works::hangs;
use approx::assert_relative_eq;
use jackpull::check::{Absent, Care, Check, Subject, Verdict};
use jackpull::{Method, Scheme, assess};

/// Nine metres deep under eight of water, PVC of 495 x 12 mm.
const DEEP: &str = "
service: pressure_main
length: 60 m
launch: { invert_depth: 9 m }
grade: 0 %
groundwater: 1 m
surface: { over: open }
lubrication: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }]
rig: { thrust: 2 MN, pull: 500 kN }
candidates: [{ material: pvc, size: 450 mm, outside_diameter: 495 mm, wall: 12 mm, rated_force: 400 kN }]
";

fn jacked(text: &str) -> Scheme {
    let drive = drive(text);
    assess(&drive, &drive.candidates()[0], Method::PipeJacking)
}

fn of(text: &str, subject: Subject) -> Check {
    *jacked(text).checks.get(subject).unwrap_or_else(|| panic!("no {}", subject.label()))
}

/// Round, its ring of years bears 35 kPa, half of it 17; water alone is 78 (sums by hand, apart from the program).
#[test]
fn a_thin_ring_under_water() {
    let collapse = of(DEEP, Subject::CollapseInService);
    assert_eq!(collapse.verdict, Verdict::Over);
    let ring = 2.0 * 140_000.0 * 6_894.757 / (1.0 - 0.38 * 0.38) / (495.0 / 12.0 - 1.0_f64).powi(3);
    assert_relative_eq!(ring, 35e3, max_relative = 2e-2);
    let (demand, limit) = collapse.likely().unwrap();
    assert!(demand.si > 78e3 && limit.si < 17.5e3, "{demand:?} {limit:?}");
    assert_eq!(of(DEEP, Subject::Deflection).verdict, Verdict::Over);
    assert_eq!(of(DEEP, Subject::Vacuum).verdict, Verdict::Over);
}

/// Steel of 12 mm bears it; by its class the clay weighs 125 pcf, and 10.5 kN/m3 below the water, and hangs at 20 deg in the
/// sides of the bore: 103.6 kPa leave 44.2 on one of 0.508 m (x = 2.04), beside 78.5 of water. Loose ground, trains and little
/// cover put all of it on the pipe.
#[test]
fn a_stiff_ring_holds() {
    let steel = DEEP
        .edit(
            "material: pvc, size: 450 mm, outside_diameter: 495 mm",
            "material: steel, size: 508 mm, outside_diameter: 508 mm",
        )
        .edit(", rated_force: 400 kN", ", yield_strength: 235 MPa");
    let collapse = of(&steel, Subject::CollapseInService);
    let whole = 125.0 * 157.087_46 + 10.5e3 * 8.0;
    let pressed = |text: &str| of(text, Subject::CollapseInService).high().unwrap().0.si;
    assert_relative_eq!(pressed(&steel), hangs(whole, 9.0, 0.508, 20.0) + 9_806.65 * 8.0, max_relative = 1e-3);
    let rail = steel.edit("pressure_main", "casing").edit("over: open", "over: railway, railway_permits: uncased");
    assert!(pressed(&rail) > whole + 9_806.65 * 8.0);
    let soft = steel.edit("firm_to_very_stiff_clay, spt_n: 12", "soft_clay, spt_n: 3");
    assert!(pressed(&soft) > 9.0 * 17.5e3, "{}", pressed(&soft));
    let at =
        |depth: &str| pressed(&steel.edit("invert_depth: 9 m", &format!("invert_depth: {depth}")).edit("1 m", "none"));
    // Under 8 ft of cover, 2.44 m, the column is whole; from there on it hangs.
    assert_relative_eq!(at("2.9 m"), 125.0 * 157.087_46 * 2.9, max_relative = 1e-6);
    assert_relative_eq!(at("3 m"), hangs(125.0 * 157.087_46 * 3.0, 3.0, 0.508, 20.0), max_relative = 1e-3);
    assert_eq!(collapse.verdict, Verdict::Within);
    assert_eq!(
        jacked(&steel).checks.outcome(Subject::Vacuum),
        Err(Absent::NotApplicable("metal this thick bears any vacuum"))
    );
}

/// A rigid pipe has its crushing strength instead.
#[test]
fn a_rigid_pipe_has_none() {
    let clay = DEEP
        .edit(
            "material: pvc, size: 450 mm, outside_diameter: 495 mm, wall: 12 mm, rated_force: 400 kN",
            "material: clay, size: 10 in",
        )
        .edit("pressure_main", "gravity_sewer");
    for subject in [Subject::CollapseInService, Subject::Deflection] {
        assert!(jacked(&clay).checks.get(subject).is_none());
    }
}

/// Under tracks plastic lies in a casing, unless the railway permits it without; of other pipe that is asked, and a casing
/// is one.
#[test]
fn a_pipe_under_tracks() {
    let rail = DEEP.edit("over: open", "over: railway");
    let permitted = rail.edit("over: railway", "over: railway, railway_permits: uncased");
    let steel = |text: &str| {
        text.edit(
            "material: pvc, size: 450 mm, outside_diameter: 495 mm",
            "material: steel, size: 508 mm, outside_diameter: 508 mm",
        )
        .edit(", rated_force: 400 kN", ", yield_strength: 235 MPa")
    };
    let verdict = |text: &str| jacked(text).checks.get(Subject::RailwayCasing).map(|check| check.verdict);
    assert_eq!(verdict(&rail), Some(Verdict::Over));
    assert_eq!(verdict(&permitted), Some(Verdict::WithCare));
    assert_eq!(verdict(&steel(&rail)), Some(Verdict::NotDecided));
    assert_eq!(verdict(&steel(&rail).edit("pressure_main", "casing")), None);
    assert_eq!(verdict(DEEP), None);
    let senseless = DEEP.edit("over: open", "over: open, railway_permits: uncased");
    let fault = jackpull::read_drive(&senseless, &jackpull::Handbook::embedded()).unwrap_err().to_string();
    assert!(fault.contains("no railway is given over the bore"), "{fault}");
}

/// PVC of 495 x 12 mm in clay above the water, lubricated. After 720 h of 6 min to 50 years, 3.857 of 6.642 decades, 400 ksi
/// are 249 (sums by hand, apart from the program): a ring of 61.5 kPa, at 3 % out of round 47.0, half of it 23.5. Lubricant
/// of 20 kPa passes, 50 are more than half over it.
#[test]
fn lubricant_presses_on_a_ring_that_nothing_holds() {
    let dry = DEEP.edit("groundwater: 1 m", "groundwater: none").edit("lubrication: none", "lubrication: metered");
    let check = of(&dry, Subject::CollapseWhilePushed);
    let (likely, high) = (check.likely().unwrap(), check.high().unwrap());
    assert_relative_eq!(high.1.si, 23.5e3, max_relative = 2e-3);
    assert_eq!((likely.0.si, high.0.si), (20e3, 20e3));
    assert_eq!((check.verdict, check.care), (Verdict::WithCare, Some(Care::Condition)));
    let told = |pressure: &str, text: &str| {
        let line = format!("lubrication: metered\nlubricant_pressure: {pressure}");
        of(&text.edit("lubrication: metered", &line), Subject::CollapseWhilePushed)
    };
    assert_eq!(told("20 kPa", &dry).verdict, Verdict::Within);
    assert_eq!(told("30 kPa", &dry).verdict, Verdict::Over);
    // Half a metre of water beside it, and 20 kPa are too much: who pumps has to say with what.
    let wet = dry.edit("groundwater: none", "groundwater: 8.5 m");
    let check = of(&wet, Subject::CollapseWhilePushed);
    assert_relative_eq!(check.likely().unwrap().0.si, 20e3 + 0.5 * 9_806.65, max_relative = 1e-9);
    assert_eq!(check.verdict, Verdict::NotDecided);
    assert_eq!(check.settled_by, &[&["lubricant_pressure"][..]]);
    assert_eq!(told("10 kPa", &wet).verdict, Verdict::Within);
}

/// A wall of 20 mm bears five times as much: 24.75 - 1 in place of 41.25 - 1, cubed, 4.87.
#[test]
fn a_stout_ring_bears_any_usual_lubricant() {
    let stout = DEEP.edit("lubrication: none", "lubrication: metered").edit("wall: 12 mm", "wall: 20 mm");
    let stout = stout.edit("groundwater: 1 m", "groundwater: none");
    let check = of(&stout, Subject::CollapseWhilePushed);
    let (demand, limit) = check.high().unwrap();
    assert_eq!((check.verdict, demand.si), (Verdict::Within, 50e3));
    assert_relative_eq!(limit.si, 4.868 * 23.5e3, max_relative = 5e-3);
}

/// Steel of 508 x 6.4 mm before a clay pipe, 8 m of water beside it: 78.5 kPa of 2 x 200 GPa / 78.4 cubed x 0.764 / 2 = 317 kPa.
/// Without water, and on a rigid pipe, nothing presses.
#[test]
fn a_casing_bears_the_water_alone() {
    let clay = DEEP
        .edit(
            "material: pvc, size: 450 mm, outside_diameter: 495 mm, wall: 12 mm, rated_force: 400 kN",
            "material: clay, size: 10 in",
        )
        .edit("pressure_main", "gravity_sewer")
        .edit("lubrication: none", "lubrication: metered");
    let none = |text: &str| jacked(text).checks.outcome(Subject::CollapseWhilePushed).unwrap_err();
    assert_eq!(none(&clay), Absent::NotApplicable("the pipe is rigid: see its crushing strength"));
    let cased = clay.edit("size: 10 in", "size: 10 in, casing: 508 mm, casing_wall: 6.4 mm");
    let check = of(&cased, Subject::CollapseWhilePushed);
    let (demand, limit) = check.high().unwrap();
    assert_relative_eq!(demand.si, 8.0 * 9_806.65, max_relative = 1e-9);
    assert_relative_eq!(limit.si, 317e3, max_relative = 5e-3);
    assert_eq!(check.verdict, Verdict::Within);
    let dry = cased.edit("groundwater: 1 m", "groundwater: none");
    assert_eq!(none(&dry), Absent::NotApplicable("neither water nor lubricant presses on it"));
    assert_eq!(
        none(&DEEP.edit("groundwater: 1 m", "groundwater: none")),
        Absent::NotApplicable("neither water nor lubricant presses on it")
    );
}

/// A pressure of lubricant that nobody pumps is a fault.
#[test]
fn lubricant_that_is_not_there_has_no_pressure() {
    let fault = |text: &str| jackpull::read_drive(text, &jackpull::Handbook::embedded()).unwrap_err().to_string();
    // Less than 9.81 kPa a metre of the water does not fill the annulus; the ground bears no more than its weight and strength.
    for (pressure, why) in [("1 kPa", "is less than the"), ("900 kPa", "that the ground over the pipe bears")] {
        let wrong = DEEP.edit("lubrication: none", &format!("lubrication: metered\nlubricant_pressure: {pressure}"));
        assert!(fault(&wrong).contains(why), "{}", fault(&wrong));
    }
    let dry = DEEP.edit("lubrication: none", "lubrication: none\nlubricant_pressure: 20 kPa");
    assert!(fault(&dry).contains("lubricant_pressure: the pipe is not lubricated"), "{}", fault(&dry));
}
