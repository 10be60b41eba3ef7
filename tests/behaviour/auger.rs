//! An auger in what is pushed: the torque that its weight and the spoil on it take, and what they add to a pipe that lies on
//! the bottom of a bore that stands. Sums by hand, apart from the program.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Absent, Check, Subject, Verdict};
use jackpull::{Method, Scheme, assess};

/// A casing of 610 x 9.5 mm, 591 mm inside.
const CASING: &str = "
service: casing
length: 60 m
launch: { invert_depth: 4 m }
grade: 0 %
groundwater: none
surface: { over: open }
lubrication: none
spoil: auger
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }]
rig: { thrust: 3 MN, pull: 500 kN, torque: 30 kN*m }
stem: { outside_diameter: none }
candidates: [{ material: steel, size: 610 mm, outside_diameter: 610 mm, wall: 9.5 mm, yield_strength: 240 MPa }]
";

fn jacked(text: &str) -> Scheme {
    let drive = drive(text);
    assess(&drive, &drive.candidates()[0], Method::PipeJacking)
}

fn drag(text: &str) -> Check {
    *jacked(text).checks.get(Subject::AugerDrag).unwrap()
}

fn rated(torque: &str) -> String {
    CASING.edit("torque: 30 kN*m", &format!("torque: {torque}"))
}

/// Likely an auger of 532 mm, 0.2222 m2: 0.392 kN/m of spoil at 3 and a pitch of 532 mm take 5.98 kN m over 60 m, its 1.090 kN/m
/// at 0.3 another 5.22. High one of 561 mm, 0.2476 m2: 0.971 kN/m at 4 take 20.8, 1.700 at 0.4 another 11.5. At its least one of
/// 473 mm takes 1.17 and 1.95.
#[test]
fn auger_and_spoil_rub_on_the_invert() {
    let check = drag(CASING);
    let (likely, high) = (check.likely().unwrap(), check.high().unwrap());
    assert_relative_eq!(likely.0.si, 11.19e3, max_relative = 1e-3);
    assert_relative_eq!(high.0.si, 32.28e3, max_relative = 1e-3);
    assert_eq!((high.1.si, check.verdict), (30e3, Verdict::WithCare));
    assert_eq!(drag(&rated("33 kN*m")).verdict, Verdict::Within);
    let waits = drag(&rated("11 kN*m"));
    assert_eq!((waits.verdict, waits.settled_by), (Verdict::NotDecided, &[&["rig.auger_torque"][..]][..]));
    assert_eq!(drag(&rated("3.2 kN*m")).verdict, Verdict::NotDecided);
    let over = drag(&rated("3 kN*m"));
    assert_eq!(over.verdict, Verdict::Over);
    assert_relative_eq!(over.high().unwrap().0.si, 3.120e3, max_relative = 1e-3);
}

/// Soil that may leave otherwise bars nothing; what is told of the auger stands for itself.
#[test]
fn an_auger_that_nobody_tells_bars_nothing() {
    let untold = rated("3 kN*m").edit("spoil: auger\n", "");
    let check = drag(&untold);
    assert_eq!(check.verdict, Verdict::NotDecided);
    assert_eq!(check.settled_by, &[&["spoil"][..], &["rig.auger_torque"]]);
    let why = |text: &str| jacked(text).checks.outcome(Subject::AugerDrag).unwrap_err();
    let told = "torque: 30 kN*m, auger_torque: { low: 10 kN*m, likely: 15 kN*m, high: 25 kN*m }";
    let told = CASING.edit("torque: 30 kN*m", told);
    assert_eq!(why(&told), Absent::NotApplicable("the file tells the torque of the auger"));
    let slurry = CASING.edit("spoil: auger", "spoil: slurry");
    assert_eq!(why(&slurry), Absent::NotApplicable("the soil does not leave by auger"));
    let unrated = CASING.edit(", torque: 30 kN*m", "");
    assert_eq!(why(&unrated), Absent::NotApplicable("the rig is not rated for torque"));
}

/// In rock a clay pipe of 21 in lies on the bottom with auger and spoil in it. An auger of 480 mm, 0.1810 m2, weighs 0.888 kN/m
/// and carries 0.320: 1.207 kN/m, at the high level at 0.6 and 1.5, are 1.086, over 60 m 65.2 kN. Cleared by vacuum it has none.
#[test]
fn auger_and_spoil_weigh_on_a_pipe_in_a_bore_that_stands() {
    let text = |spoil: &str| {
        CASING
            .edit("service: casing", "service: gravity_sewer")
            .edit("grade: 0 %", "grade: 0.5 %")
            .edit("spoil: auger", &format!("spoil: {spoil}\npilot: drilled\nwork: {{ round_the_clock: true }}"))
            .edit("class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm", "class: hard_rock, hazards: []")
            .edit("stem: { outside_diameter: none }", "stem: { outside_diameter: 254 mm }")
            .edit(
                "material: steel, size: 610 mm, outside_diameter: 610 mm, wall: 9.5 mm, yield_strength: 240 MPa",
                "material: clay, size: 21 in, inside_diameter: 21 in",
            )
    };
    let high = |spoil: &str| jacked(&text(spoil)).force.unwrap().high.value;
    assert_relative_eq!(high("auger") - high("vacuum"), 65.2e3, max_relative = 1e-2);
}
