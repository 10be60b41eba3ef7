//! A pipe laid in a casing afterwards: room round it, and room for a grade of its own.

use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Subject, Verdict};
use jackpull::{Handbook, Method, Scheme, assess, read_drive};

/// A casing of 24 in under a road, bored by auger without a pilot.
const CASED: &str = "
service: casing
length: 40 m
launch: { invert_depth: 3.6 m }
grade: 0.5 %
groundwater: none
lubrication: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0 mm }]
rig: { thrust: 1800 kN, pull: 500 kN }
stem: { outside_diameter: none }
guidance: laser
surface: { over: road }
candidates: [{ material: steel, size: 24 in, wall: 9.5 mm }]
carrier: { service: gravity_sewer, outside_diameter: 330 mm }
";

fn of(text: &str) -> Scheme {
    let drive = read_drive(text, &Handbook::embedded()).unwrap_or_else(|error| panic!("{error:?}\n{text}"));
    assess(&drive, &drive.candidates()[0], Method::PipeJacking)
}

fn verdict(text: &str, subject: Subject) -> Verdict {
    of(text).checks.get(subject).unwrap().verdict
}

/// 24 in of 9.5 mm is 590.6 mm inside: 260.6 mm round 330 mm, where a railway asks for 4 in, and 2 in below 6 in; set to
/// its grade by half of it, 130.3 mm.
#[test]
fn a_carrier_has_the_bore_of_its_casing_less_itself() {
    let scheme = of(CASED);
    let room = scheme.checks.get(Subject::CarrierRoom).unwrap().high().unwrap();
    assert_relative_eq!(room.0.si, 0.2606, max_relative = 1e-9);
    assert_relative_eq!(room.1.si, 0.1016, max_relative = 1e-9);
    let grade = scheme.checks.get(Subject::CarrierGrade).unwrap().high().unwrap();
    assert_relative_eq!(grade.1.si, 0.1303, max_relative = 1e-9);
    let small = of(&CASED.edit("330 mm", "110 mm"));
    assert_relative_eq!(small.checks.get(Subject::CarrierRoom).unwrap().high().unwrap().1.si, 0.0508);
}

/// 69 mm round 521.6 mm: a railway's rule is a limit under its tracks and a habit elsewhere. Nothing larger than the bore
/// goes in anywhere.
#[test]
fn a_tight_carrier_is_over_under_a_railway_and_a_habit_elsewhere() {
    let tight = CASED.edit("330 mm", "521.6 mm");
    assert_eq!(verdict(&tight, Subject::CarrierRoom), Verdict::WithCare);
    assert_eq!(verdict(&tight.edit("over: road", "over: railway"), Subject::CarrierRoom), Verdict::Over);
    assert_eq!(verdict(&CASED.edit("330 mm", "600 mm"), Subject::CarrierRoom), Verdict::Over);
}

/// Play of less than half of what railways ask for, 50.8 mm of 101.6 mm, leaves nothing for joints: 45 mm round a carrier of
/// 545.6 mm, and 31.75 mm round 22 in in 23.25 in, do not go in anywhere; 55 mm ask for care. Round a small one 25.4 mm.
#[test]
fn a_carrier_without_room_for_its_joints_does_not_go_in() {
    for (carrier, is_over) in [("545.6 mm", true), ("22 in", true), ("535.6 mm", false)] {
        let verdict = verdict(&CASED.edit("330 mm", carrier), Subject::CarrierRoom);
        assert_eq!(verdict, if is_over { Verdict::Over } else { Verdict::WithCare }, "{carrier}");
    }
}

/// An auger casing that nothing steers is taken to be off by 1 % of its length, 400 mm against 130 mm: over where the file
/// says so, open where it is silent, since steered heads are to be had. A main needs no grade.
#[test]
fn a_sewer_in_a_casing_needs_a_line_that_is_kept() {
    assert_eq!(verdict(CASED, Subject::CarrierGrade), Verdict::Within);
    let unsteered = CASED.edit("guidance: laser", "guidance: none");
    assert_eq!(verdict(&unsteered, Subject::CarrierGrade), Verdict::Over);
    let untold = of(&CASED.edit("guidance: laser\n", ""));
    let open = untold.checks.get(Subject::CarrierGrade).unwrap();
    assert_eq!(open.verdict, Verdict::NotDecided);
    assert_eq!(open.settled_by, [["guidance"]]);
    assert!(of(&unsteered.edit("gravity_sewer", "pressure_main")).checks.get(Subject::CarrierGrade).is_none());
}

/// In a level casing of 40 m a sewer at 0.4 % falls by 160 mm: half of it and the error of the casing are set against the
/// 130.3 mm. At 0.5 % in a casing at 0.5 % there is none of it. In a level one nobody has said what it falls by.
#[test]
fn a_sewer_falls_in_a_level_casing() {
    let level = CASED.edit("grade: 0.5 %", "grade: 0 %");
    let with = |text: &str, grade: &str| text.edit("330 mm }", &format!("330 mm, grade: {grade} }}"));
    let set = |text: &str| of(text).checks.get(Subject::CarrierGrade).unwrap().high().unwrap().0.si;
    let error = set(CASED);
    assert_relative_eq!(set(&with(&level, "0.4 %")), error + 0.080, max_relative = 1e-9);
    assert_relative_eq!(set(&with(&level, "-0.4 %")), error + 0.080, max_relative = 1e-9);
    assert_relative_eq!(set(&with(CASED, "0.5 %")), error, max_relative = 1e-9);
    assert_eq!(verdict(&with(&level, "0.4 %"), Subject::CarrierGrade), Verdict::Within);
    assert_eq!(verdict(&with(&level, "1.5 %"), Subject::CarrierGrade), Verdict::Over);
    let silent = *of(&level).checks.get(Subject::CarrierGrade).unwrap();
    assert_eq!((silent.verdict, silent.settled_by), (Verdict::NotDecided, &[&["carrier.grade"][..]][..]));
    let fault = |text: &str| format!("{:?}", read_drive(text, &Handbook::embedded()).unwrap_err());
    assert!(fault(&with(&level, "0 %")).contains("a sewer without fall does not drain"));
    assert!(
        fault(&with(&level, "0.4 %").edit("gravity_sewer, outside", "pressure_main, outside"))
            .contains("is for a gravity sewer")
    );
}

/// A carrier belongs in a casing, and is none itself.
#[test]
fn a_carrier_stands_where_a_casing_does() {
    let faults = |text: &str| read_drive(text, &Handbook::embedded()).unwrap_err().to_string();
    let sewer = faults(&CASED.edit("service: casing", "service: pressure_main"));
    assert!(sewer.contains("carrier.service: is laid in a casing"), "{sewer}");
    let itself = faults(&CASED.edit("service: gravity_sewer", "service: casing"));
    assert!(itself.contains("carrier.service: is no carrier"), "{itself}");
}

/// An auger casing without a pilot is held to the range of auger boring, 4 to 60 in and 600 ft; one behind a pilot to that
/// of the pilot, 300 ft.
#[test]
fn an_auger_casing_has_a_range_of_its_own() {
    let length = |text: &str| of(text).checks.get(Subject::Length).unwrap().high().unwrap().1.si;
    assert_relative_eq!(length(CASED), 600.0 * 0.3048, max_relative = 1e-9);
    assert_relative_eq!(
        length(&CASED.edit("stem: { outside_diameter: none }\n", "")),
        300.0 * 0.3048,
        max_relative = 1e-9
    );
}
