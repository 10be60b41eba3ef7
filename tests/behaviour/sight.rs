//! What the head of a bore is sighted by: a beam goes straight, and so far and no further. Hand sums.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};
use jackpull::law::Law;
use jackpull::laws::guidance::Sagitta;
use jackpull::quantity::{Length, Measure};
use jackpull::{Handbook, Method, assess, choose, read_drive};

const MACHINE: &str = "
service: gravity_sewer
length: 180 m
launch: { invert_depth: 6.5 m }
grade: 0.4 %
groundwater: none
lubrication: metered
spoil: slurry
pilot: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 22, largest_stone: 0 mm }]
rig: { thrust: 9 MN }
candidates: [{ material: concrete, size: 1200 mm, outside_diameter: 1430 mm, inside_diameter: 1200 mm, strength: 50 MPa }]
";
const GUIDED: &str = "
service: gravity_sewer
length: 70 m
launch: { invert_depth: 4 m }
grade: 0.5 %
groundwater: none
lubrication: metered
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0 mm }]
rig: { thrust: 900 kN }
stem: { outside_diameter: 100 mm, head_diameter: 140 mm }
candidates: [{ material: clay, size: 10 in }]
";
const CURVE: &str = "steering: { curve_radius: 400 m }\n";

fn jacked(text: &str, subject: Subject) -> Option<Check> {
    let drive = drive(text);
    assess(&drive, &drive.candidates()[0], Method::PipeJacking).checks.get(subject).copied()
}

fn sight(text: &str) -> Option<Check> {
    jacked(text, Subject::Sight)
}

/// 70 m on 400 m rise by 4,900 / 3,200 = 1.531 m; of a full circle of 1 m the arc that the law is for would rise by 2 m.
#[test]
fn the_rise_of_a_curve() {
    let rise =
        |length, radius| Sagitta { length: Length::from_si(length), radius: Length::from_si(radius) }.value().si();
    assert_relative_eq!(rise(70.0, 400.0), 1.531_25);
    // A quarter of a circle rises by R (1 - cos 45 deg), and the law is on the safe side of it.
    assert!(rise(std::f64::consts::FRAC_PI_2, 1.0) >= 1.0 - std::f64::consts::FRAC_PI_4.cos());
}

/// A stem of 100 mm leaves 50 mm about its axis. What a pilot that is told to be pushed is sighted through does not bend;
/// where nothing is told it may be drilled, and guided otherwise.
#[test]
fn a_stem_is_not_sighted_round_a_curve() {
    assert!(sight(GUIDED).is_none());
    let curved = format!("{GUIDED}{CURVE}");
    let untold = sight(&curved).unwrap();
    let (rise, half) = untold.high().unwrap();
    assert_relative_eq!(rise.si, 1.531_25);
    assert_relative_eq!(half.si, 0.05);
    assert_eq!((untold.verdict, untold.settled_by), (Verdict::NotDecided, &[&["guidance"][..]][..]));
    for told in ["guidance: laser\n", "pilot: displacement\n"] {
        assert_eq!(sight(&format!("{curved}{told}")).unwrap().verdict, Verdict::Over, "{told}");
    }
    assert!(sight(&format!("{curved}guidance: gyro\n")).is_none());
    let pushed = format!("{curved}guidance: gyro\npilot: displacement\n");
    let fault = read_drive(&pushed, &Handbook::embedded()).unwrap_err().to_string();
    assert!(fault.contains("guidance: has no room in a pilot that is pushed"), "{fault}");
}

/// 180 m on 400 m rise by 32,400 / 3,200 = 10.1 m in a pipe of 1.2 m: barred with a laser, and line 1 says why; asked for
/// where nothing is told. On 10,000 m they rise by 0.405 m of 0.6 m.
#[test]
fn a_machine_on_a_curve_is_guided_by_more_than_a_laser() {
    let curved = format!("{MACHINE}{CURVE}");
    let check = sight(&curved).unwrap();
    assert_eq!((check.verdict, check.settled_by), (Verdict::NotDecided, &[&["guidance"][..]][..]));
    let laser = format!("{curved}guidance: laser\n");
    assert_eq!(sight(&laser).unwrap().verdict, Verdict::Over);
    let reason = choose(&drive(&laser)).unwrap().reason;
    assert!(
        reason.contains("line of sight of the laser") && reason.contains("by a gyro or a total station"),
        "{reason}"
    );
    let wide = sight(&laser.edit("radius: 400 m", "radius: 10000 m")).unwrap();
    assert_relative_eq!(wide.utilisation().unwrap(), 0.405 / 0.6, max_relative = 1e-9);
    assert_eq!(wide.verdict, Verdict::Within);
    for told in ["gyro", "total_station"] {
        assert!(sight(&format!("{curved}guidance: {told}\n")).is_none(), "{told}");
        assert!(jacked(&format!("{curved}guidance: {told}\n"), Subject::Invert).is_some());
    }
    // What nothing steers keeps no curve.
    assert_eq!(sight(&format!("{curved}guidance: none\n")).unwrap().verdict, Verdict::Over);
}

/// A laser reaches some 200 m: beyond, with care, and past twice that it is over. A machine of which nothing is told is taken
/// to be guided further, which the first page says.
#[test]
fn a_laser_reaches_so_far() {
    let of = |length: &str, told: &str| sight(&format!("{}{told}", MACHINE.edit("length: 180 m", length)));
    assert!(of("length: 200 m", "guidance: laser\n").is_none());
    assert_eq!(of("length: 210 m", "guidance: laser\n").unwrap().verdict, Verdict::WithCare);
    assert_eq!(of("length: 400 m", "guidance: laser\n").unwrap().verdict, Verdict::WithCare);
    assert_eq!(of("length: 410 m", "guidance: laser\n").unwrap().verdict, Verdict::Over);
    let untold = of("length: 410 m", "").unwrap();
    assert_eq!((untold.verdict, untold.care), (Verdict::WithCare, Some(Care::Condition)));
    assert!(of("length: 410 m", "guidance: gyro\n").is_none());
    // Nor does silence help on a long curve.
    assert_eq!(of("length: 410 m", CURVE).unwrap().verdict, Verdict::NotDecided);
}

/// A pushed pilot is sighted for 300 ft, a drilled one for as far as a laser reaches; one that is located from the surface
/// has the range of its method, 2,000 ft.
#[test]
fn the_length_is_held_to_what_guides() {
    let limit = |told: &str| jacked(&format!("{GUIDED}{told}"), Subject::Length).unwrap().high().unwrap().1.si;
    assert_relative_eq!(limit("pilot: displacement\n"), 91.44);
    assert_relative_eq!(limit("pilot: drilled\n"), 91.44);
    let main = "
service: pressure_main
length: 120 m
launch: { invert_depth: 2.5 m }
reception: { invert_depth: 2.5 m }
groundwater: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0 mm }]
rig: { thrust: 150 kN, pull: 200 kN }
pull: { duration: 5 h, pipe_temperature: 20 degC }
candidates: [{ material: pe100, size: 400 mm, sdr: 11 }]
";
    for (told, limit) in [
        ("pilot: displacement\n", 91.44),
        ("pilot: drilled\n", 200.0),
        ("pilot: drilled\nguidance: walked_over\n", 609.6),
        ("pilot: walked_over\n", 609.6),
    ] {
        let drive = drive(&format!("{main}{told}"));
        let check = *assess(&drive, &drive.candidates()[0], Method::Pullback).checks.get(Subject::Length).unwrap();
        assert_relative_eq!(check.high().unwrap().1.si, limit, max_relative = 1e-9);
    }
}
