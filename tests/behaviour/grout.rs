//! The annulus of a pulled pipe while it is grouted: grout of which nothing is told, and its pressure on the ground. Hand
//! sums.

use crate::drives::drive;
use crate::edit::Edit;
use crate::pull_works::{check, high, pulled};
use approx::assert_relative_eq;
use jackpull::check::{Absent, Care, Check, Subject, Verdict};
use jackpull::{Method, assess};
use std::f64::consts::{FRAC_PI_4, PI};

const G: f64 = 9.806_65;
/// Of PE 100, in kg/m3.
const DENSITY: f64 = 960.0;

/// Falls by 0.6 m to the launch pit, 3 m deep there; the bore of 12 in is 1.5 times as wide as the pipe.
const LINE: &str = "
service: gravity_sewer
length: 60 m
launch: { invert_depth: 3 m }
grade: 1 %
groundwater: none
lubrication: none
surface: { over: open }
ground: [{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm, soil: { moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 25 deg } }]
rig: { thrust: 900 kN, pull: 500 kN }
pull: { duration: 6 h, pipe_temperature: 20 degC }
annulus: { filling: grouted, grout_density: 1500 kg/m3, grout_pressure: 20 kPa, grout_sets_in: 12 h }
candidates: [{ material: pe100, size: 200 mm, sdr: 17, bore: 300 mm }]
";
const DATA: &str = ", grout_density: 1500 kg/m3, grout_pressure: 20 kPa, grout_sets_in: 12 h";

/// The crown of the bore lies 0.25 m over the invert. At the launch pit 2.75 m of 19 kN/m3 bear 52.3 kPa, and the grout
/// stands 0.6 m over it: 1.5 x 9.81 x 0.6 + 20 = 28.8 kPa. At the other pit the invert is 2.4 m deep: 2.15 m bear 40.9 kPa
/// against 20.
#[test]
fn grout_presses_on_the_ground_as_high_as_it_stands() {
    let scheme = pulled(LINE);
    let (demand, limit) = high(&scheme, Subject::GroutPressure);
    assert_relative_eq!(demand, 1_500.0 * G * 0.6 + 20e3, max_relative = 1e-3);
    assert_relative_eq!(limit, 2.75 * 19e3, max_relative = 1e-6);
    assert_eq!(check(&scheme, Subject::GroutPressure).verdict, Verdict::Within);
    // 45 kPa are more than the shallow end bears.
    let hard = pulled(&LINE.edit("20 kPa", "45 kPa"));
    let (demand, limit) = high(&hard, Subject::GroutPressure);
    assert_relative_eq!(demand, 45e3, max_relative = 1e-6);
    assert_relative_eq!(limit, 2.15 * 19e3, max_relative = 1e-3);
    assert_eq!(check(&hard, Subject::GroutPressure).verdict, Verdict::Over);
}

/// Of which nothing is told: as light as water and not pumped it stays within, so a pressure to hold to is asked for.
#[test]
fn grout_that_is_not_told_is_held_to_a_pressure() {
    let untold = check(&pulled(&LINE.edit(DATA, "")), Subject::GroutPressure);
    assert_eq!((untold.verdict, untold.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(untold.high().unwrap().0.si, 1_000.0 * G * 0.6);
    // Under a railway a pressure to hold to is no answer.
    let rail = LINE.edit(DATA, "").edit("over: open", "over: railway");
    assert_eq!(check(&pulled(&rail), Subject::GroutPressure).verdict, Verdict::NotDecided);
}

/// Proved grout holds the ring, and before it does it presses on it: without its data it is heavy, pumped hard and sets
/// slowly, or light and gentle. The thin pipe bears only the gentle one.
#[test]
fn proved_grout_without_its_data_is_not_decided() {
    let proved = LINE.edit(DATA, ", proof: proved");
    let ring = check(&pulled(&proved), Subject::CollapseInGrout);
    assert_eq!(ring.verdict, Verdict::NotDecided);
    let heavy = 1_900.0 * G * (0.3 + 60.0 * 0.01) + 100e3;
    assert_relative_eq!(ring.high().unwrap().0.si, heavy, max_relative = 1e-3);
    assert_relative_eq!(ring.best().unwrap().0.si, 1_000.0 * G * (0.3 + 60.0 * 0.01), max_relative = 1e-3);
    // What is told is judged alone.
    assert_eq!(check(&pulled(LINE), Subject::CollapseInGrout).best(), None);
    // A thick pipe bears either.
    let thick = check(&pulled(&proved.edit("sdr: 17", "sdr: 9")), Subject::CollapseInGrout);
    assert_eq!(thick.verdict, Verdict::Within);
    let open = LINE.edit(DATA, "").edit("filling: grouted", "filling: open");
    for subject in [Subject::CollapseInGrout, Subject::GroutPressure] {
        assert!(pulled(&open).checks.get(subject).is_none(), "{subject:?}");
    }
}

/// The pipe weighs as PE does: pi x (0.2 - 0.0119) x 0.0119 m at 960 kg/m3 are 66.2 N/m, and it displaces
/// 0.0314 m2 of 1,500: 462 N/m. The ground over its width bears 0.2 x 40.9 kPa at the shallow end. Full of water it is
/// lifted by 239 N/m less, and the water stands 0.6 m in it against the grout.
#[test]
fn grout_lifts_the_pipe() {
    let weight = PI * (0.2 - 0.011_9) * 0.011_9 * DENSITY * G;
    let lifts = |density: f64| FRAC_PI_4 * 0.2 * 0.2 * density * G - weight;
    let scheme = pulled(LINE);
    let (demand, limit) = high(&scheme, Subject::GroutUplift);
    assert_relative_eq!(demand, lifts(1_500.0), max_relative = 1e-6);
    assert_relative_eq!(limit, 0.2 * 2.15 * 19e3, max_relative = 1e-3);
    assert_eq!(check(&scheme, Subject::GroutUplift).verdict, Verdict::Within);
    let full = pulled(&LINE.edit("grout_sets_in: 12 h", "grout_sets_in: 12 h, ballast: water"));
    let water = FRAC_PI_4 * 0.176_2 * 0.176_2 * 1_000.0 * G;
    assert_relative_eq!(high(&full, Subject::GroutUplift).0, lifts(1_500.0) - water, max_relative = 1e-6);
    let presses = |scheme| high(scheme, Subject::CollapseInGrout).0;
    assert_relative_eq!(presses(&scheme) - presses(&full), 1_000.0 * G * 0.6, max_relative = 1e-3);
    // As heavy as its grout it does not rise.
    let light = LINE.edit("1500 kg/m3", "950 kg/m3").edit("grout_sets_in: 12 h", "grout_sets_in: 12 h, ballast: water");
    let sinks = pulled(&light).checks.outcome(Subject::GroutUplift).unwrap_err();
    assert_eq!(sinks, Absent::NotApplicable("the pipe sinks in its grout"));
    // Grout of which nothing is told is as heavy as grout may be.
    assert_relative_eq!(
        high(&pulled(&LINE.edit(DATA, "")), Subject::GroutUplift).0,
        lifts(1_900.0),
        max_relative = 1e-6
    );
}

/// Spacers that alone keep the invert, 25 mm and 100 mm of play against 60 mm, have to hold the pipe down. Where it may
/// float nobody holds it.
#[test]
fn spacers_hold_down_what_keeps_its_line_by_them() {
    let spaced = LINE.edit("filling: grouted", "spacers: 45 mm, filling: grouted");
    let with = |file: &str, tolerance: &str| {
        let uplift = check(
            &pulled(&file.edit("grade: 1 %", &format!("grade: 1 %\ntolerance: {tolerance}"))),
            Subject::GroutUplift,
        );
        (uplift.verdict, uplift.care)
    };
    assert_eq!(with(&spaced, "60 mm"), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(with(&spaced, "150 mm").0, Verdict::Within);
    assert_eq!(with(LINE, "60 mm").0, Verdict::Within);
}

/// PVC of 324 x 12 mm that is pushed into a bore of 400 mm which stands.
const PUSHED: &str = "
service: gravity_sewer
length: 40 m
launch: { invert_depth: 4 m }
grade: 1 %
groundwater: none
lubrication: none
spoil: vacuum
pilot: drilled
stem: { outside_diameter: 219 mm, head_diameter: 400 mm, withdrawn: true }
surface: { over: open }
ground: [{ class: hard_clay, spt_n: 35, largest_stone: 0 mm }]
rig: { thrust: 900 kN, pull: 500 kN }
annulus: { filling: grouted, grout_density: 1500 kg/m3, grout_pressure: 50 kPa, grout_sets_in: 12 h }
candidates: [{ material: pvc, size: 300 mm, outside_diameter: 324 mm, wall: 12 mm, rated_force: 300 kN }]
";

/// It is pressed as a pulled one is: 50 kPa and 1.5 x 9.81 x (0.4 + 0.4) m, 61.8 kPa. At 400,000 - 260,000 x 0.313 = 318,600
/// psi after 12 h, out of round by 3 % and by its buoyancy at least, it bears no more than half of 214 kPa. Pumped at 150 kPa
/// it collapses; a rigid pipe does not.
#[test]
fn grout_presses_on_a_pipe_that_is_pushed() {
    let of = |text: &str| -> Option<Check> {
        let drive = drive(text);
        assess(&drive, &drive.candidates()[0], Method::PipeJacking).checks.get(Subject::CollapseInGrout).copied()
    };
    let check = of(PUSHED).unwrap();
    let (demand, limit) = check.high().unwrap();
    assert_relative_eq!(demand.si, 50e3 + 1_500.0 * G * 0.8, max_relative = 1e-3);
    let modulus = 318_600.0 * 6_894.757;
    let round = 2.0 * modulus / (1.0 - 0.38 * 0.38) / (324.0 / 12.0 - 1.0_f64).powi(3);
    let oval = |ovality: f64| ((1.0 - ovality) / (1.0 + ovality).powi(2)).powi(3);
    assert!(limit.si <= round / 2.0 * oval(0.03) * 1.001 && limit.si > round / 2.0 * oval(0.05), "{limit:?} {round}");
    assert_eq!(check.verdict, Verdict::Within);
    assert_eq!(of(&PUSHED.edit("50 kPa", "150 kPa")).unwrap().verdict, Verdict::Over);
    // Of which nothing is told it may be heavy and pumped hard.
    let untold = PUSHED.edit(", grout_density: 1500 kg/m3, grout_pressure: 50 kPa, grout_sets_in: 12 h", "");
    assert_eq!(of(&untold).unwrap().verdict, Verdict::NotDecided);
    let clay = PUSHED
        .edit("pvc, size: 300 mm, outside_diameter: 324 mm, wall: 12 mm, rated_force: 300 kN", "clay, size: 10 in");
    assert_eq!(of(&clay), None);
}
