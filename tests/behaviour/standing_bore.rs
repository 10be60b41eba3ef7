//! A pipe that is pulled into a drilled bore that stands: where it lies there, how wide that bore is, and what presses on
//! it; and ground that does not stand, whatever force there is. Sums by hand are shown beside them.

use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};
use jackpull::conditions::{Plan, amounts};
use jackpull::{Drive, Handbook, Method, assess, read_drive};

/// 60 m through rock, drilled to a laser, dry.
const ROCK: &str = "
service: gravity_sewer
length: 60 m
launch: { invert_depth: 6 m }
grade: 0.5 %
groundwater: none
lubrication: none
surface: { over: open }
tolerance: 30 mm
ground: [{ class: hard_rock }]
rig: { thrust: 445 kN, pull: 400 kN }
pilot: drilled
spoil: vacuum
pull: { duration: 6 h, pipe_temperature: 20 degC, hole: dry_and_stable }
candidates: [{ material: pe100, size: 400 mm, sdr: 11 }]
";

fn drive(text: &str) -> Drive {
    read_drive(text, &Handbook::embedded()).unwrap_or_else(|faults| panic!("{faults}"))
}

fn check(text: &str, subject: Subject) -> Check {
    let drive = drive(text);
    let scheme = assess(&drive, &drive.candidates()[0], Method::Pullback);
    *scheme.checks.get(subject).unwrap_or_else(|| panic!("{}", subject.label()))
}

/// Likely and high demand in mm.
fn invert(text: &str) -> ([f64; 2], Check) {
    let check = check(text, Subject::Invert);
    let (likely, high) = (check.likely().unwrap(), check.high().unwrap());
    ([likely.0.si * 1e3, high.0.si * 1e3], check)
}

/// 400 mm is pulled into 1.2 x 400 + 50 = 530 mm, as it was built. In the dry bore it lies on the bottom: 10 and 20 mm of
/// the pilot alone, on condition that the bore is set for it. Afloat in its fluid it lies at the crown as well. A steel
/// pipe of 0.42 kN/m displaces 0.0377 m2: 0.37 kN/m in water and 0.55 in the heaviest fluid, and nobody knows: half of a
/// play of 1.2 x 219 + 50 - 219 = 94 mm likely, all of it high. In clay that may close nobody knows either.
#[test]
fn where_a_pulled_pipe_lies() {
    let (numbers, in_rock) = invert(ROCK);
    assert_eq!((in_rock.verdict, in_rock.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_relative_eq!(numbers[0], 10.0, max_relative = 1e-9);
    assert_relative_eq!(numbers[1], 20.0, max_relative = 1e-9);
    let afloat = ROCK.edit(", hole: dry_and_stable", "");
    // Afloat it lies anywhere in 1.2 x 400 + 50 = 530 mm.
    let (floating, _) = invert(&afloat);
    assert_relative_eq!(floating[0], 10.0 + 65.0, max_relative = 1e-9);
    assert_relative_eq!(floating[1], 20.0 + 130.0, max_relative = 1e-9);
    let steel = "candidates: [{ material: steel, size: 219.1 mm, wall: 8.2 mm, steel_grade: a139_b }]";
    let steel = |text: &str| text.edit("candidates: [{ material: pe100, size: 400 mm, sdr: 11 }]", steel);
    let play = 1.2 * 219.1 + 50.0 - 219.1;
    let (unknown, _) = invert(&steel(&afloat));
    assert_relative_eq!(unknown[0], 10.0 + play / 2.0, max_relative = 1e-4);
    assert_relative_eq!(unknown[1], 20.0 + play, max_relative = 1e-4);
    assert_relative_eq!(invert(&steel(ROCK)).0[1], 20.0, max_relative = 1e-9);
    let clay = ROCK.edit("{ class: hard_rock }", "{ class: firm_to_very_stiff_clay, spt_n: 8, largest_stone: 0 mm }");
    let (closing, _) = invert(&clay);
    assert_relative_eq!(closing[1], 20.0 + 130.0, max_relative = 1e-6);
}

/// A string no larger than the bore of its pilot comes in without a reamer: 200 mm behind a head of 300 mm, in a bore
/// of 300 mm and not of 1.2 x 200 + 50 = 290 mm. One step larger than the pilot it is reamed, without a pass before.
#[test]
fn no_reamer_where_the_pilot_is_wide_enough() {
    let stem = "stem: { outside_diameter: 280 mm, head_diameter: 300 mm }\n";
    let small = format!("{}{stem}", ROCK.edit("size: 400 mm", "size: 200 mm"));
    let bore = check(&small, Subject::Bore);
    assert_relative_eq!(bore.high().unwrap().0.si, 0.300, max_relative = 1e-9);
    let reaming = |text: &str| {
        let drive = drive(text);
        assess(&drive, &drive.candidates()[0], Method::Pullback).checks.outcome(Subject::ReamingPull).is_ok()
    };
    assert!(!reaming(&small), "a pass before the pipe comes");
    let narrow = small.edit("size: 200 mm, sdr: 11", "size: 200 mm, sdr: 11, bore: 280 mm");
    let fault = read_drive(&narrow, &Handbook::embedded()).unwrap_err().to_string();
    assert!(fault.contains("smaller than that of the pilot"), "{fault}");
}

/// Water in a string that hangs down its ramp stands against the fluid: 1500 - 1000 kg/m3 over the column in place of 1500.
/// What is told to be in it has to stay in it.
#[test]
fn water_inside_against_collapse() {
    let fluid = ROCK.edit(", hole: dry_and_stable", "");
    let empty = check(&fluid, Subject::Collapse).likely().unwrap().0.si;
    let text = fluid.edit("20 degC }", "20 degC, contents: water }");
    let filled = check(&text, Subject::Collapse);
    let column = 9810.0 * drive_depth();
    assert_relative_eq!(empty - filled.likely().unwrap().0.si, column, max_relative = 0.01);
    assert_eq!(filled.care, Some(Care::Condition));
    let in_pit =
        text.edit("contents: water }", "contents: water, laydown: { length: 10 m, place: pit, joint_time: 20 min } }");
    assert_relative_eq!(check(&in_pit, Subject::Collapse).likely().unwrap().0.si, empty, max_relative = 1e-9);
}

/// From the ground to the invert at the deeper pit, which the fluid may fill: 6 m.
const fn drive_depth() -> f64 {
    6.0
}

/// 400 mm SDR 13.6 bears some 111 kPa. Under 3.8 m of fluid of 1500 kg/m3, 56 kPa, and 69 in the annulus it collapses; of
/// 1100 it is 41 and 69, and that the fluid is kept so is a condition.
#[test]
fn a_light_fluid_is_a_condition() {
    let deep = |sdr: &str| {
        let text = ROCK.edit(", hole: dry_and_stable", "").edit("invert_depth: 6 m", "invert_depth: 3.8 m");
        check(&text.edit("sdr: 11", &format!("sdr: {sdr}")), Subject::Collapse)
    };
    let [thick, middle, thin] = ["9", "13.6", "26"].map(deep);
    assert_eq!(thick.verdict, Verdict::Within);
    assert_eq!((middle.verdict, middle.care), (Verdict::WithCare, Some(Care::Condition)), "{middle:?}");
    assert_eq!(thin.verdict, Verdict::Over);
}

/// Sand that runs or flows is barred by its state before an open stem, whatever force there is, and told what helps; sand
/// above water ravels, and takes care; clay in the face may bind it. A fluid or a casing is another technique.
#[test]
fn ground_that_runs_into_an_open_stem() {
    let jacked = |ground: &str, lines: &str| {
        let text = ROCK
            .edit("[{ class: hard_rock }]", &format!("[{{ {ground}, largest_stone: 0 mm }}]"))
            .edit("{ material: pe100, size: 400 mm, sdr: 11 }", "{ material: clay, size: 15 in }")
            .edit("pull: { duration: 6 h, pipe_temperature: 20 degC, hole: dry_and_stable }\n", "")
            .edit("groundwater: none\n", lines);
        let drive = drive(&text);
        *assess(&drive, &drive.candidates()[0], Method::PipeJacking).checks.get(Subject::Ground).unwrap()
    };
    let (dry, wet) = ("groundwater: none\n", "groundwater: 2 m\n");
    for (ground, water, verdict) in [
        ("class: loose_sand, spt_n: 6", dry, Verdict::Over),
        ("class: loose_sand, spt_n: 6", wet, Verdict::Over),
        ("class: gravel, spt_n: 20", dry, Verdict::Over),
        ("class: silt, spt_n: 12", wet, Verdict::Over),
        ("class: medium_to_dense_sand, spt_n: 20", wet, Verdict::Over),
        ("class: medium_to_dense_sand, spt_n: 20", dry, Verdict::WithCare),
        ("class: silt, spt_n: 12", dry, Verdict::WithCare),
        ("class: medium_to_dense_sand, spt_n: 20, treatment: dewatered", wet, Verdict::WithCare),
        ("class: firm_to_very_stiff_clay, spt_n: 20, mixed_with: medium_to_dense_sand", wet, Verdict::NotDecided),
    ] {
        let check = jacked(ground, water);
        assert_eq!(check.verdict, verdict, "{ground}, {water}");
        if verdict == Verdict::Over {
            assert!(check.note.unwrap().contains("case it"), "{ground}");
        }
    }
    // On condition that its strength is found out.
    assert_eq!(jacked("class: hard_rock", dry).verdict, Verdict::WithCare);
    assert_eq!(jacked("class: weak_rock", dry).verdict, Verdict::WithCare);
}

/// What nobody has told of the ground decides nothing: no force bars a drive by it, and none passes.
#[test]
fn unknown_ground_decides_nothing() {
    let text = ROCK.edit("length: 60 m", "length: 400 m").edit("class: hard_rock", "class: unknown");
    let text = text.edit("{ material: pe100, size: 400 mm, sdr: 11 }", "{ material: clay, size: 15 in }");
    let text = text.edit("pull: { duration: 6 h, pipe_temperature: 20 degC, hole: dry_and_stable }\n", "");
    let drive = drive(&text);
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    for subject in [Subject::JackingThrust, Subject::EndCapacity, Subject::StemThrust] {
        assert_eq!(scheme.checks.get(subject).unwrap().verdict, Verdict::NotDecided, "{}", subject.label());
    }
    let ground = scheme.checks.get(Subject::Ground).unwrap();
    assert_eq!((ground.verdict, ground.settled_by), (Verdict::NotDecided, &[&["ground[].class"][..]][..]));
}

/// A bit takes out what a pushed pilot pushes aside: 60 m of 0.134 m, 0.85 m3, and the ring to 530 mm, 12.4 m3.
#[test]
fn soil_of_a_drilled_pilot() {
    let text = format!("{ROCK}stem: {{ outside_diameter: 114 mm, head_diameter: 134 mm }}\n");
    let drive = drive(&text);
    let plan = Plan { drive: &drive, pipe: &drive.candidates()[0], method: Method::Pullback };
    let spoil = amounts(&plan).spoil;
    let ring = |bore: f64, pilot: f64| std::f64::consts::FRAC_PI_4 * (bore * bore - pilot * pilot) * 60.0;
    assert_relative_eq!(spoil[0].unwrap().volume.value, ring(0.134, 0.0), max_relative = 1e-9);
    let rest: f64 = spoil.iter().skip(1).flatten().map(|stage| stage.volume.value).sum();
    assert_relative_eq!(rest, ring(0.530, 0.134), max_relative = 1e-9);
}
