//! Pressure inside: held in a string while it is pulled, and carried by a main in service. Hand sums.

use crate::drives::drive;
use crate::edit::Edit;
use crate::pull_works::{CLAY, PE, check, high, pulled, text};
use approx::assert_relative_eq;
use jackpull::check::{Care, Subject, Verdict};
use jackpull::{Handbook, Method, assess, read_drive};
use std::f64::consts::PI;

/// 200 mm, wall 18.2 mm, 10 % of it scored.
const OD: f64 = 0.2;
const SCORED: f64 = 0.018_2 * 0.9;

fn string(pull: &str) -> String {
    text("casing", "60 m", &format!("duration: 6 h{pull}"), CLAY, PE)
}

/// 300 kPa on a bore of 163.6 mm push 6.31 kN: the wall bears them beside the pull, the rig does not. A wall that is
/// allowed 1,150 psi along may have half of it round: 2 x 3.96 MPa x 16.38 / 183.62 mm = 707 kPa.
#[test]
fn a_pressure_inside_pushes_on_the_ends() {
    let (without, with) = (pulled(&string("")), pulled(&string(", inside_pressure: 300 kPa")));
    let thrust = 300e3 * PI / 4.0 * (OD - 2.0 * 0.018_2_f64).powi(2);
    assert_relative_eq!(thrust, 6_306.0, max_relative = 1e-3);
    let more = |subject| high(&with, subject).0 - high(&without, subject).0;
    assert_relative_eq!(more(Subject::Tension), thrust, max_relative = 1e-6);
    assert_relative_eq!(more(Subject::PullHead), thrust, max_relative = 1e-6);
    assert_eq!(more(Subject::RigPull), 0.0);
    // A weak link parts by the pull alone: it is set so much lower.
    let link = |scheme| high(scheme, Subject::WeakLink).1;
    assert_relative_eq!(link(&without) - link(&with), thrust, max_relative = 1e-6);
    let section = PI * (OD - SCORED) * SCORED;
    let stress = |scheme| high(scheme, Subject::TensionAndBending).0;
    assert_relative_eq!(stress(&with) - stress(&without), thrust / section, max_relative = 1e-6);

    let hoop = 0.5 * 1_150.0 * 6_894.757 * 2.0 * SCORED / (OD - SCORED);
    assert_relative_eq!(hoop, 707e3, max_relative = 1e-3);
    let (demand, limit) = high(&with, Subject::InsidePressure);
    assert_eq!(demand, 300e3);
    assert_relative_eq!(limit, hoop, max_relative = 1e-3);
    assert_eq!(check(&with, Subject::InsidePressure).verdict, Verdict::Within);
    assert!(without.checks.get(Subject::InsidePressure).is_none());
    let much = pulled(&string(", inside_pressure: 800 kPa"));
    assert_eq!(check(&much, Subject::InsidePressure).verdict, Verdict::Over);
}

/// What is held inside takes of what presses outside, where the fluid stands no longer than the pressure is held, and for
/// no more than the wall may hold.
#[test]
fn a_pressure_counts_against_collapse_while_it_is_held() {
    let pressed = |pull: &str| high(&pulled(&string(pull)), Subject::Collapse).0;
    let stands = ", fluid_stands_for: 6 h";
    let outside = pressed(stands);
    assert!(outside > 50e3);
    assert_relative_eq!(pressed(&format!("{stands}, inside_pressure: 40 kPa")), outside - 40e3, max_relative = 1e-6);
    // The fluid is taken to stand for a day, and the pressure is let off after six hours.
    assert_eq!(pressed(", inside_pressure: 40 kPa"), pressed(""));
    assert_eq!(pressed(", fluid_stands_for: 8 h, inside_pressure: 40 kPa"), pressed(", fluid_stands_for: 8 h"));
    // In the same string 55 m deep 2 MPa count for what its wall may hold: 0.8 of 707 kPa, its welds being unknown.
    let deep = |pull: &str| high(&pulled(&string(pull).edit("depth: 4 m", "depth: 55 m")), Subject::Collapse).0;
    // It holds there where the fluid is kept at 1100 kg/m3: 593 kPa of it and 69 in the annulus.
    let light = 1_100.0 * 9.806_65 * 55.0 + 68.95e3;
    assert_relative_eq!(deep(&format!("{stands}, inside_pressure: 2 MPa")), light - 0.8 * 707e3, max_relative = 5e-3);
    assert!(deep(stands) > light);
}

const MAIN: &str = "
service: pressure_main
length: 60 m
launch: { invert_depth: 2 m }
grade: 0 %
groundwater: none
lubrication: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }]
rig: { thrust: 900 kN, pull: 500 kN }
pull: { duration: 6 h, pipe_temperature: 20 degC }
service_pressure: 1 MPa
candidates: [{ material: pe100, size: 200 mm, sdr: 11 }]
";

fn carried(text: &str) -> jackpull::check::Check {
    check(&pulled(text), Subject::ServicePressure)
}

/// 2 x 8 MPa x 18.2 / 181.8 mm: 1,602 kPa, as long as no more than a tenth of the wall is scored.
#[test]
fn a_main_carries_what_its_wall_holds_for_life() {
    let made = carried(MAIN);
    let (demand, limit) = made.high().unwrap();
    assert_eq!(demand.si, 1e6);
    assert_relative_eq!(limit.si, 2.0 * 8e6 * 18.2 / 181.8, max_relative = 1e-4);
    assert_eq!(made.verdict, Verdict::Within);
    assert_eq!(carried(&MAIN.edit("service_pressure: 1 MPa", "service_pressure: 16.1 bar")).verdict, Verdict::Over);
    // Scored by 12 %: 16.016 / 183.984 mm. A class of the maker stands in for the wall, and falls alike.
    let scored = |text: &str, score: &str| {
        let text = text.edit("pipe_temperature: 20 degC", &format!("pipe_temperature: 20 degC, score: {score}"));
        carried(&text).high().unwrap().1.si
    };
    assert_relative_eq!(scored(MAIN, "12 %"), 2.0 * 8e6 * 16.016 / 183.984, max_relative = 1e-4);
    let class = MAIN.edit("sdr: 11 }", "sdr: 11, pressure_class: 12 bar }");
    assert_relative_eq!(scored(&class, "12 %"), 1.2e6 * (16.016 / 183.984) / (18.2 / 181.8), max_relative = 1e-6);
    assert_relative_eq!(scored(&class, "10 %"), 1.2e6, max_relative = 1e-9);
}

/// PE carries half as much again as its class with the surges of every day, and twice with those of mishaps: 1.602 x 1.5 =
/// 2.403 and 3.204 MPa beside 1.5 MPa of service. PVC DR 18 of 4,000 psi / 17 = 235 psi has 1.6 for mishaps alone, 376
/// psi; what a joint is rated for is not raised.
#[test]
fn a_main_carries_more_with_a_surge() {
    let main = MAIN.edit("service_pressure: 1 MPa", "service_pressure: 1.5 MPa");
    let with =
        |text: &str, surge: &str| carried(&text.edit("candidates:", &format!("surge: {{ {surge} }}\ncandidates:")));
    for (surge, limit, verdict) in [
        ("recurring: 0.9 MPa", 2.403e6, Verdict::Within),
        ("recurring: 0.91 MPa", 2.403e6, Verdict::Over),
        ("recurring: 0.3 MPa, occasional: 1.7 MPa", 3.204e6, Verdict::Within),
        ("recurring: 0.3 MPa, occasional: 1.71 MPa", 3.204e6, Verdict::Over),
        // What stands for good is the class alone: 1.5 of 1.602 is nearer than 1.7 of 2.403.
        ("recurring: 0.2 MPa", 1.602e6, Verdict::Within),
    ] {
        let check = with(&main, surge);
        assert_relative_eq!(check.high().unwrap().1.si, limit, max_relative = 1e-3);
        assert_eq!(check.verdict, verdict, "{surge}");
    }
    // All in one pressure, it is held against the class.
    assert_eq!(carried(&MAIN.edit("service_pressure: 1 MPa", "service_pressure: 2.3 MPa")).verdict, Verdict::Over);
    let pvc = MAIN
        .edit("material: pe100, size: 200 mm, sdr: 11", "material: pvc_fused, size: 8 in, sdr: 18, joint_factor: 1")
        .edit("service_pressure: 1 MPa", "service_pressure: 200 psi");
    for (surge, verdict) in [
        ("recurring: 34 psi", Verdict::Within),
        ("recurring: 36 psi", Verdict::Over),
        ("occasional: 175 psi", Verdict::Within),
        ("occasional: 178 psi", Verdict::Over),
    ] {
        assert_eq!(with(&pvc, surge).verdict, verdict, "{surge}");
    }
    let sewer = MAIN
        .edit("pressure_main", "gravity_sewer")
        .edit("grade: 0 %", "grade: 1 %")
        .edit("service_pressure: 1 MPa\n", "");
    let fault = read_drive(&format!("{sewer}surge: {{ recurring: 1 bar }}\n"), &Handbook::embedded()).unwrap_err();
    assert!(fault.to_string().contains("surge.recurring: is for a pressure main"), "{fault}");
}

/// Silence leaves what it carries to the owner: never a plain pass, never a bar.
#[test]
fn a_main_of_which_no_pressure_is_told_says_what_it_carries() {
    let silent = carried(&MAIN.edit("service_pressure: 1 MPa\n", ""));
    assert_eq!((silent.verdict, silent.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_relative_eq!(silent.high().unwrap().1.si, 1.602e6, max_relative = 1e-3);
    assert_eq!(silent.settled_by, [["service_pressure"]]);
    let sewer = MAIN
        .edit("pressure_main", "gravity_sewer")
        .edit("grade: 0 %", "grade: 1 %")
        .edit("service_pressure: 1 MPa\n", "");
    assert!(pulled(&sewer).checks.get(Subject::ServicePressure).is_none());
}

/// Of jacked GRP only its maker knows the class.
#[test]
fn a_class_that_only_its_maker_knows_is_asked_for() {
    let grp = "{ material: grp, size: 400 mm, outside_diameter: 427 mm, wall: 25 mm, strength: 90 MPa, end_bearing_area: 0.02 m2, \
               weight: 0.6 kN/m }";
    let told = MAIN.edit("{ material: pe100, size: 200 mm, sdr: 11 }", grp);
    let made = |text: &str| {
        let drive = drive(text);
        check(&assess(&drive, &drive.candidates()[0], Method::PipeJacking), Subject::ServicePressure)
    };
    let unknown = made(&told);
    assert_eq!(
        (unknown.verdict, unknown.settled_by),
        (Verdict::NotDecided, &[&["candidates[].pressure_class"][..]][..])
    );
    assert_eq!(made(&told.edit("service_pressure: 1 MPa\n", "")).verdict, Verdict::WithCare);
    let classed = told.edit("weight: 0.6 kN/m", "weight: 0.6 kN/m, pressure_class: 1 MPa");
    assert_eq!(made(&classed).verdict, Verdict::Within);
    assert_eq!(made(&classed.edit("service_pressure: 1 MPa", "service_pressure: 1.1 MPa")).verdict, Verdict::Over);
}
