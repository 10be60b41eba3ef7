//! Rock, counts over fifty blows, loose gravel and silt that flows: what is told never comes out worse than silence.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};
use jackpull::{Method, assess};

const CASING: &str = "
service: casing
length: 30 m
launch: { invert_depth: 3.6 m, wall: { width: 3 m, height: 2 m } }
grade: 1 %
groundwater: none
lubrication: none
ground: [{ class: weak_rock, spt_n: 70, largest_stone: 0 mm }]
rig: { thrust: 1800 kN }
spoil: auger
pilot: none
surface: { over: open }
candidates: [{ material: steel, size: 24 in, wall: 12.7 mm, yield_strength: 240 MPa }]
";

fn jacked(text: &str, subject: Subject) -> Check {
    let drive = drive(text);
    *assess(&drive, &drive.candidates()[0], Method::PipeJacking).checks.get(subject).unwrap()
}

/// Without a pilot no tip is pushed, and seventy blows are no worse than none told: in rock, in hard clay and in dense sand.
#[test]
fn counts_over_fifty_are_no_worse_than_none() {
    for class in ["weak_rock", "hard_clay", "medium_to_dense_sand"] {
        let told = CASING.edit("weak_rock", class);
        let untold = told.edit("spt_n: 70, ", "");
        for subject in [Subject::ThrustWall, Subject::Ground] {
            let (told, untold) = (jacked(&told, subject), jacked(&untold, subject));
            assert!(told.verdict <= untold.verdict.max(Verdict::WithCare), "{class}: {told:?}");
            assert!(told.doubt.is_none(), "{class}: {told:?}");
        }
    }
}

/// Above 40 blows no pilot is pushed through sand: where none is told a drilled one is taken, and one that is told to be
/// pushed is barred.
#[test]
fn a_pilot_that_cannot_be_pushed_is_drilled() {
    let sand = CASING.edit("weak_rock, spt_n: 70", "medium_to_dense_sand, spt_n: 45").edit("pilot: none\n", "");
    let pushed = format!("{sand}pilot: displacement\n");
    assert_eq!(jacked(&pushed, Subject::Ground).verdict, Verdict::Over);
    let sewer = |text: &str| {
        text.edit("service: casing", "service: gravity_sewer")
            .edit("spoil: auger\n", "")
            .edit("material: steel, size: 24 in, wall: 12.7 mm, yield_strength: 240 MPa", "material: clay, size: 10 in")
    };
    assert_eq!(jacked(&sewer(&pushed), Subject::Ground).verdict, Verdict::Over);
    assert_ne!(jacked(&sewer(&sand), Subject::Ground).verdict, Verdict::Over);
}

/// What bars a pull is then the pilot, in rock too, and not that its pipe is pulled.
#[test]
fn a_pilot_that_stops_is_named() {
    for ground in ["medium_to_dense_sand, spt_n: 45, largest_stone: 0 mm", "hard_rock"] {
        let text = CASING
            .edit("weak_rock, spt_n: 70, largest_stone: 0 mm", ground)
            .edit(
                "spoil: auger\npilot: none",
                "pilot: displacement\npull: { duration: 6 h, pipe_temperature: 20 degC }",
            )
            .edit("rig: { thrust: 1800 kN }", "rig: { thrust: 1800 kN, pull: 900 kN }")
            .edit("service: casing", "service: pressure_main")
            .edit(
                "material: steel, size: 24 in, wall: 12.7 mm, yield_strength: 240 MPa",
                "material: pe100, size: 315 mm, sdr: 11",
            );
        let reason = jackpull::choose(&drive(&text)).unwrap().reason;
        assert!(
            reason.contains("ground: no pilot is pushed through rock") && !reason.contains("by pulling"),
            "{reason}"
        );
    }
}

/// A bit of 150 mm in hard rock is pushed by 350, 600 and 900 kN/m, 52.5, 90 and 135 kN; in weak rock by the least of them.
#[test]
fn a_bit_in_hard_rock_has_a_range() {
    let stem = |class: &str| {
        let rock = CASING.edit("weak_rock, spt_n: 70", class).edit(
            "spoil: auger\npilot: none",
            "spoil: vacuum\npilot: drilled\nstem: { outside_diameter: 110 mm, head_diameter: 150 mm }",
        );
        let check = jacked(&rock, Subject::StemThrust);
        (check.likely().unwrap().0.si, check.high().unwrap().0.si)
    };
    let (hard, weak) = (stem("hard_rock"), stem("weak_rock"));
    assert_relative_eq!(hard.0 - weak.0, 90e3 - 52.5e3, max_relative = 1e-6);
    assert!(hard.1 >= 135e3, "{hard:?}");
}

/// Nothing tells how strong a rock is: what goes through it does so on condition, and no auger that is told cuts hard rock.
#[test]
fn rock_is_a_condition() {
    let weak = jacked(CASING, Subject::Ground);
    assert_eq!((weak.verdict, weak.care), (Verdict::WithCare, Some(Care::Condition)));
    let hard = CASING.edit("weak_rock, spt_n: 70", "hard_rock").edit("pilot: none", "pilot: drilled");
    assert_eq!(jacked(&hard, Subject::Ground).verdict, Verdict::Over);
    assert_eq!(jacked(&hard.edit("spoil: auger\n", ""), Subject::Ground).verdict, Verdict::NotDecided);
    let cleared = hard.edit("spoil: auger", "spoil: vacuum");
    let dry = jacked(&cleared, Subject::Ground);
    assert_eq!((dry.verdict, dry.care), (Verdict::WithCare, Some(Care::Condition)));
    assert!(!dry.note.unwrap().contains("water in its joints"), "{dry:?}");
    let wet = jacked(&cleared.edit("groundwater: none", "groundwater: 0 m"), Subject::Ground);
    assert!(wet.note.unwrap().contains("water in its joints"), "{wet:?}");
}

/// Gravel of eight blows is gravel, and resists a tip as one of ten does.
#[test]
fn loose_gravel_is_read() {
    let gravel = |blows: u32| {
        let text = CASING.edit("weak_rock, spt_n: 70", &format!("gravel, spt_n: {blows}"));
        let text = text.edit("pilot: none", "pilot: displacement");
        jacked(&text, Subject::StemThrust).high().unwrap().0.si
    };
    assert_relative_eq!(gravel(8), gravel(10));
}

/// A machine sinks in silt of one blow under water as it does in very soft clay.
#[test]
fn silt_that_flows_is_as_bad_as_soft_clay() {
    let silt = |blows: &str| {
        let text = CASING.edit("weak_rock, spt_n: 70", &format!("silt{blows}")).edit("spoil: auger", "spoil: slurry");
        jacked(&text.edit("groundwater: none", "groundwater: 1 m"), Subject::Ground).verdict
    };
    assert_eq!(silt(", spt_n: 1"), Verdict::WithCare);
    assert_eq!(silt(", spt_n: 10"), Verdict::Within);
    assert_ne!(silt(""), Verdict::Within);
}

/// A face of clay and rock rubs as the clay does: rock stands round what is pushed.
#[test]
fn a_face_of_soil_and_rock_rubs_as_the_soil() {
    let clay = CASING
        .edit("weak_rock, spt_n: 70", "firm_to_very_stiff_clay, spt_n: 25")
        .edit("spoil: auger", "spoil: slurry\nwork: { round_the_clock: true }");
    let mixed = clay.edit("spt_n: 25", "spt_n: 25, mixed_with: weak_rock");
    let (clay, mixed) = (jacked(&clay, Subject::JackingThrust), jacked(&mixed, Subject::JackingThrust));
    assert!(mixed.doubt.is_none(), "{mixed:?}");
    assert!(mixed.high().unwrap().0.si >= clay.high().unwrap().0.si);
}
