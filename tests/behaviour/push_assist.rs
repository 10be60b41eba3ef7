//! A machine at the reception pit that pushes the tail of the string, against hand sums.

use crate::drives::{drive, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Check, Subject, Verdict};
use jackpull::method::{Point, Stage, StageProfile, profile};
use jackpull::{Method, Scheme, assess};
use std::f64::consts::{FRAC_PI_4, PI};

const PE: &str = "material: pe100, size: 315 mm, sdr: 11";
const STEEL: &str = "material: steel, size: 10 in, wall: 8 mm, steel_grade: api_5l_b";

fn assisted(pipe: &str, assist: &str) -> (Scheme, Vec<StageProfile>) {
    let assist = if assist.is_empty() { String::new() } else { format!(", push_assist: {{ {assist} }}") };
    let drive = drive(&text(|text| text.edit("25 degC }", &format!("23 degC{assist} }}")).edit(PE, pipe)));
    let pipe = &drive.candidates()[1];
    (assess(&drive, pipe, Method::Pullback), profile(&drive, pipe, Method::Pullback))
}

fn limit(scheme: &Scheme, subject: Subject) -> f64 {
    scheme.checks.get(subject).unwrap().high().unwrap().1.si
}

fn verdict(scheme: &Scheme, subject: Subject) -> Verdict {
    scheme.checks.get(subject).unwrap().verdict
}

fn pull(stages: &[StageProfile]) -> &StageProfile {
    stages.last().unwrap()
}

#[test]
fn a_machine_that_pushes_nothing_changes_no_number() {
    let (alone, stages) = assisted(PE, "");
    let (idle, assisted) = assisted(PE, "force: 0 kN, free_length: 2 m");
    assert_eq!((alone.force, alone.rig_force, alone.thrust), (idle.force, idle.rig_force, idle.thrust));
    for check in alone.checks.iter() {
        assert_eq!(idle.checks.get(check.subject), Some(check));
    }
    assert_eq!((pull(&stages).stage, pull(&assisted).stage), (Stage::PULLBACK, Stage::PUSH_ASSIST));
    let without = |point: &Point| Point { on_tail: None, ..*point };
    assert_eq!(pull(&stages).points, pull(&assisted).points.iter().map(without).collect::<Vec<_>>());
}

/// The likely pull is less by the push, the high one is as without it; the ramp lies behind the grip and gains nothing.
#[test]
fn help_from_behind_can_fail() {
    let (alone, _) = assisted(PE, "");
    let (helped, _) = assisted(PE, "force: 5 kN, free_length: 2 m");
    for subject in [Subject::Tension, Subject::RigPull] {
        let [alone, helped] = [&alone, &helped].map(|scheme| scheme.checks.get(subject).unwrap());
        let likely = |check: &Check| check.likely().unwrap().0.si;
        assert_relative_eq!(likely(alone) - likely(helped), 5e3, max_relative = 1e-9);
        assert_eq!(alone.high(), helped.high());
    }
    for subject in [Subject::TensionAndBending, Subject::StrainWithBend] {
        assert_eq!(alone.checks.get(subject), helped.checks.get(subject));
    }
    assert_eq!(verdict(&helped, Subject::PushedTail), Verdict::Within);
}

/// More push than the string resists does not push the reamer, and what the machine is set to has to be borne.
#[test]
fn no_more_is_pushed_than_resists() {
    let (alone, stages) = assisted(PE, "");
    let (pushed, assisted) = assisted(PE, "force: 10 MN, free_length: 2 m");
    assert_eq!(pushed.force.unwrap().likely.value, 0.0);
    assert_eq!(pushed.force.unwrap().high, alone.force.unwrap().high);
    assert_eq!(verdict(&pushed, Subject::PushedTail), Verdict::Over);
    for (alone, assisted) in pull(&stages).points.iter().zip(&pull(&assisted).points) {
        let (pipe, tail) = (alone.on_pipe.unwrap(), assisted.on_tail.unwrap());
        assert_eq!((tail.low, tail.likely, tail.high.value), (pipe.low, pipe.likely, 10e6));
        let rest = alone.on_rig.likely - pipe.likely;
        assert_relative_eq!(assisted.on_rig.likely.value, rest.value, max_relative = 1e-12);
    }
}

/// Between its points the profile is straight, also where the push begins to be less than the string resists: sampled
/// from the profile without help.
#[test]
fn the_profile_turns_where_the_push_no_longer_does_it_all() {
    let between = |points: &[Point], advance: f64, of: fn(&Point) -> [f64; 2]| {
        let next = points.iter().position(|point| point.advance.value >= advance).unwrap().max(1);
        let (one, other) = (&points[next - 1], &points[next]);
        let share = (advance - one.advance.value) / (other.advance - one.advance).value;
        let (one, other) = (of(one), of(other));
        [0, 1].map(|level| one[level] + (other[level] - one[level]) * share)
    };
    let of_pipe: fn(&Point) -> [f64; 2] =
        |point| point.on_pipe.map(|band| [band.low.value, band.likely.value]).unwrap();
    let of_rig: fn(&Point) -> [f64; 2] = |point| [point.on_rig.low.value, point.on_rig.likely.value];
    let (_, stages) = assisted(PE, "");
    let alone = &pull(&stages).points;
    let ends = [alone.first().unwrap(), alone.last().unwrap()].map(of_pipe);
    for level in [0, 1] {
        let assist = (ends[0][level] + ends[1][level]) / 2.0;
        let (_, helped) = assisted(PE, &format!("force: {assist} N, free_length: 2 m"));
        let helped = &pull(&helped).points;
        assert!(helped.len() > alone.len());
        for step in 0..=600 {
            let advance = f64::from(step) * 0.1;
            let (pipe, rig) = (between(alone, advance, of_pipe), between(alone, advance, of_rig));
            let (less, left) = (between(helped, advance, of_pipe), between(helped, advance, of_rig));
            for level in [0, 1] {
                assert_relative_eq!(less[level], (pipe[level] - assist).max(0.0), max_relative = 1e-9, epsilon = 1e-6);
                assert_relative_eq!(left[level], rig[level] - pipe[level].min(assist), max_relative = 1e-9);
            }
        }
    }
}

/// 273 mm x 8 mm, 3 m: half of pi² E I / (2.1 L)² with 29,000 ksi and I by the difference of fourth powers, and the
/// allowed tension, by the sum of the inverses (Rankine). The end of the column as in AISC 360, one end free.
#[test]
fn the_pushed_tail_is_a_column() {
    let (steel, _) = assisted(STEEL, "force: 100 kN, free_length: 3 m");
    let outside = 10.75 * 0.0254;
    let second_moment = PI / 64.0 * (f64::powi(outside, 4) - f64::powi(outside - 0.016, 4));
    let modulus = 29e6 * 6_894.757_293_168;
    let buckling = PI.powi(2) * modulus * second_moment / (2.1_f64 * 3.0).powi(2) / 2.0;
    let crushing = limit(&steel, Subject::Tension);
    let column = limit(&steel, Subject::PushedTail);
    assert_relative_eq!(column, 1.0 / (1.0 / buckling + 1.0 / crushing), max_relative = 1e-6);
    assert_eq!(verdict(&steel, Subject::PushedTail), Verdict::Within);
    // One that is longer bears less, and so does plastic that is warm.
    let (longer, _) = assisted(STEEL, "force: 100 kN, free_length: 30 m");
    assert!(limit(&longer, Subject::PushedTail) < column / 10.0);
    let (plastic, _) = assisted(PE, "force: 20 kN, free_length: 4 m");
    let warm =
        drive(&text(|text| text.edit("25 degC }", "40 degC, push_assist: { force: 20 kN, free_length: 4 m } }")));
    let warm = assess(&warm, &warm.candidates()[1], Method::Pullback);
    assert!(limit(&warm, Subject::PushedTail) < 0.9 * limit(&plastic, Subject::PushedTail));
}

/// Half of 2 sqrt(E I w / r), with w the lift less the weight of an empty PE string of 315 mm SDR 11 in fluid of 1.05, and
/// at the high level of 1.0, which lifts it least.
#[test]
fn the_string_snakes_beyond_what_its_lift_holds() {
    let at = |bore: &str| assisted(&format!("{PE}, bore: {bore}"), "force: 20 kN, free_length: 4 m").0;
    let (narrow, wide) = (at("415 mm"), at("515 mm"));
    let likely = |scheme: &Scheme| scheme.checks.get(Subject::TailSnaking).unwrap().likely().unwrap().1.si;
    assert_relative_eq!(likely(&narrow) / likely(&wide), 2.0_f64.sqrt(), max_relative = 1e-9);
    // Lift against weight at the two levels: E I and the clearance fall out of the quotient.
    let (outside, wall) = (0.315_f64, 0.315 / 11.0);
    let lift = |fluid: f64| {
        let whole = FRAC_PI_4 * outside.powi(2) * fluid;
        whole - FRAC_PI_4 * (outside.powi(2) - (outside - 2.0 * wall).powi(2)) * 0.95
    };
    let quotient = limit(&narrow, Subject::TailSnaking) / likely(&narrow);
    assert_relative_eq!(quotient, (lift(1.0) / lift(1.05)).sqrt(), max_relative = 2e-3);
    // Many times over it is outside all experience, and bars nothing.
    let (hard, _) = assisted(PE, "force: 300 kN, free_length: 1 m");
    assert_eq!(verdict(&hard, Subject::TailSnaking), Verdict::NotDecided);
}

#[test]
fn a_grip_and_a_jointed_string_are_judged() {
    let (weak, _) = assisted(PE, "force: 20 kN, free_length: 2 m, grip_rating: 19 kN");
    assert_eq!(verdict(&weak, Subject::TailGrip), Verdict::Over);
    let (strong, _) = assisted(PE, "force: 20 kN, free_length: 2 m, grip_rating: 20 kN");
    assert_eq!(verdict(&strong, Subject::TailGrip), Verdict::Within);
    let iron = "material: ductile_iron, size: 10 in, wall: 0.3 in, joint_pull: 200 kN, joint_deflection: 3 deg, \
                pipe_length: 6 m";
    let (iron, _) = assisted(iron, "force: 20 kN, free_length: 2 m");
    assert_eq!(verdict(&iron, Subject::PushedTail), Verdict::NotDecided);
    assert!(iron.checks.get(Subject::TailSnaking).is_none());
}
