//! Pullback with upsizing: stem pushed, then stem, reamer and pipe pulled back. The reamer makes the new bore larger
//! than the pilot bore; there is no old pipe in it.

mod assist;
pub(super) mod figures;
mod force;
mod grout;
mod in_place;
mod jointed;
mod link;
mod pvc;
mod section;
mod service;
mod site;
mod steel;
mod strength;

use force::{PullOnPipe, pull_on_pipe};
use section::Borne;

use super::along::{Point, StageProfile};
use super::front::head;
use super::scheme::Scheme;
use super::stage::{Body, Stage, Trailing, along_grade, peak, stem_friction_to, walk_pulled, whole_friction};
use crate::check::{Check, Subject, Verdict};
use crate::drive::{Drive, Pipe, Pull, PulledPipe};
use crate::handbook::Method;
use crate::law::{Calc, Doubted, Recorder, Silent};
use crate::laws::pull::ReamedBore;
use crate::quantity::{Band, Force, Length, Measure, Role};
use crate::source::Cited;

pub(super) fn assess<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
    stem: Doubted<Band<Force>>,
    scheme: &mut Scheme,
) {
    let reaming = (!pipe.passes.is_empty()).then(|| {
        calc.part(Stage::REAMING.title());
        calc.doubted(|calc| reaming(calc, drive, pipe, pull))
    });
    calc.part(stage(pull).title());
    let on_pipe = calc.doubted(|calc| {
        let mut on_pipe = pull_on_pipe(calc, drive, pipe, pulled, pull);
        on_pipe.raise_after_stops(drive);
        on_pipe
    });
    let rig = calc.doubted(|calc| {
        let reamer = last_reamer(calc, drive, pipe, pull);
        let on_pipe = calc.take(on_pipe);
        let trailing = trailing(&on_pipe, reamer, drive.length.value);
        let mut greatest = Band::<Force>::default();
        walk_pulled(calc, drive, pipe, &trailing, |_, force, _| greatest = peak(greatest, force));
        greatest
    });
    let larger = |one: Doubted<Band<Force>>, other| one.zip(other).map(|(one, other)| peak(one, other));
    let all = reaming.map_or(rig, |reaming| larger(rig, reaming));
    scheme.force = Some(on_pipe.in_spite_of_doubt().peak());
    scheme.rig_force = Some(larger(all, stem).in_spite_of_doubt());

    let borne = strength(calc, pipe, pulled, pull, &on_pipe, scheme);
    link::checks(calc, pull, &borne, &on_pipe, scheme);
    assist::checks(calc, pipe, pulled, pull, &borne, scheme);
    service::checks(calc, drive, pipe, pulled, pull, scheme);
    site::checks(calc, drive, pipe, pull, (&borne, &on_pipe, all), scheme);
    let limit = drive.rig.pull;
    scheme.checks.add(Check::at_most(Subject::RigPull, Role::Pull, rig, limit));
    if let Some(reaming) = reaming {
        scheme.checks.add(Check::at_most(Subject::ReamingPull, Role::Pull, reaming, limit));
    }
    if let Some(rating) = drive.stem.joint_pull {
        scheme.checks.add(Check::at_most(Subject::StemPull, Role::Pull, all, rating));
    }
    scheme.checks.add(step(calc, drive, pipe, pull));
    if let (Some(torque), Some(rating)) = (pull.reaming_torque, drive.rig.torque_through(&drive.stem)) {
        scheme.checks.add(Check::at_most(Subject::ReamingTorque, Role::Torque, torque, rating));
    }
    scheme.checks.add(bore(pipe));
}

/// The stage that brings the pipe.
const fn stage(pull: &Pull) -> Stage {
    if pull.push_assist.is_some() { Stage::PUSH_ASSIST } else { Stage::PULLBACK }
}

/// Reamer and pipe behind the stem.
fn trailing(
    on_pipe: &PullOnPipe,
    reamer: Band<Force>,
    length: Length,
) -> Trailing<impl Fn(Length) -> Band<Force> + use<'_>> {
    Trailing { reamer, pull: move |advance| on_pipe.at(advance, length), turns: on_pipe.turns(length), is_stem: false }
}

/// The checks of what the pipe bears.
fn strength<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    scheme: &mut Scheme,
) -> Borne {
    match pulled {
        PulledPipe::Pe(pe) => strength::checks(calc, pipe, pe, pull, on_pipe, scheme),
        PulledPipe::Pvc(pvc) => pvc::checks(calc, pipe, pvc, pull, on_pipe, scheme),
        PulledPipe::Jointed(jointed) => jointed::checks(calc, pipe, jointed, pull, on_pipe, scheme),
        PulledPipe::Steel(steel) => steel::checks(calc, pipe, steel, pull, on_pipe, scheme),
    }
}

/// What the pipe bears, without its checks.
fn borne<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
) -> Borne {
    strength(calc, pipe, pulled, pull, on_pipe, &mut Scheme::new(Method::Pullback))
}

/// Force on rig, stem and pipe along the reaming passes and the pullback, by advance from the reception pit.
pub(super) fn profiles(drive: &Drive, pipe: &Pipe, pulled: &PulledPipe, pull: &Pull) -> Vec<StageProfile> {
    let calc = &mut Calc::new(Silent);
    let stem = whole_friction(calc, drive, pipe, Body::Stem);
    let mut stages = Vec::new();
    let mut before = drive.stem.head;
    for bore in &pipe.passes {
        let trailing = Trailing {
            reamer: reamer(calc, drive, pull, *bore, before),
            pull: |advance: Length| stem_behind(stem, drive, pipe, advance),
            turns: [None; 2],
            is_stem: true,
        };
        let mut points = Vec::new();
        walk_pulled(calc, drive, pipe, &trailing, |advance, on_rig, _| {
            points.push(Point {
                advance,
                on_rig,
                on_wall: None,
                on_stem: Some(on_rig),
                on_casing: None,
                on_pipe: None,
                on_tail: None,
            });
        });
        stages.push(StageProfile { stage: Stage::REAMING, bore: Some(*bore), points });
        before = *bore;
    }
    let on_pipe = pull_on_pipe(calc, drive, pipe, pulled, pull);
    let reamer = last_reamer(calc, drive, pipe, pull);
    let trailing = trailing(&on_pipe, reamer, drive.length.value);
    let on_tail = |advance| on_pipe.pushed(advance, drive.length.value);
    let mut points = Vec::new();
    walk_pulled(calc, drive, pipe, &trailing, |advance, on_rig, on_pipe| {
        let on_tail = on_tail(advance);
        points.push(Point {
            advance,
            on_rig,
            on_wall: None,
            on_stem: Some(on_rig),
            on_casing: None,
            on_pipe: Some(on_pipe),
            on_tail,
        });
    });
    stages.push(StageProfile { stage: stage(pull), bore: Some(pipe.bore.value), points });
    stages
}

/// Friction of the stem that follows a reamer, from the reception pit as far as it has come.
fn stem_behind(whole: Band<Force>, drive: &Drive, pipe: &Pipe, advance: Length) -> Band<Force> {
    let left = stem_friction_to(drive, pipe, drive.length.value - advance);
    whole.with(left, |whole, left| (whole - left).max(Force::default()))
}

/// Resistance of a reamer in the ground where it is greatest.
fn reamer<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pull: &Pull, bore: Length, before: Length) -> Band<Force> {
    // Neither the table nor the user's force of a reamer follows the ground: any stretch does.
    drive.stretches.first().map_or(Band::default(), |any| head(calc, pull.reamer, bore, before, any))
}

/// Resistance of the reamer that brings the pipe.
fn last_reamer<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pull: &Pull) -> Band<Force> {
    let before = pipe.passes.last().copied().unwrap_or(drive.stem.head);
    reamer(calc, drive, pull, pipe.bore.value, before)
}

/// Greatest force on the rig over the reaming passes before the pipe comes. The stem that follows the reamer takes
/// the place of the stem that has left, so the friction is that of one whole stem all along.
fn reaming<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pull: &Pull) -> Band<Force> {
    let stem = whole_friction(calc, drive, pipe, Body::Stem);
    let climb = along_grade(calc, drive.stem.weight, drive.length.value, -drive.grade.value);
    let stem = if drive.stops.is_empty() { stem } else { Band { high: stem.high * drive.restart, ..stem } };
    let mut greatest = Band::<Force>::default();
    let mut before = drive.stem.head;
    for bore in &pipe.passes {
        let reamer = reamer(calc, drive, pull, *bore, before);
        let total = reamer.with(stem, |reamer, stem| reamer + stem).with(climb, |force, climb| force + climb);
        greatest = peak(greatest, total);
        before = *bore;
    }
    greatest
}

const ONE_STEP: &str = "by habit the bore goes up in smaller steps; give `passes` for what is planned";

/// The reaming step that goes furthest beyond habit.
fn step<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, pull: &Pull) -> Check {
    calc.part("reaming steps");
    let rule = &pull.step;
    let mut before = drive.stem.head;
    let mut worst = (Length::default(), Band::same(Length::default()), f64::NEG_INFINITY);
    for bore in pipe.passes.iter().chain([&pipe.bore.value]) {
        let mut most = |ratio, step| calc.law(ReamedBore { bore_before: before, ratio, step });
        let usual = most(rule.ratio.0, rule.step.0);
        let greatest = most(rule.ratio.1, rule.step.1);
        let over = (*bore / usual).value;
        if over > worst.2 {
            worst = (*bore, Band { low: greatest, likely: greatest, high: usual }, over);
        }
        before = *bore;
    }
    let (demand, limit) = (Band::same(worst.0), Cited::new(worst.1, rule.origin));
    let check = Check::at_most_by_level(Subject::ReamingStep, Role::Diameter, demand, limit).as_screen();
    if check.verdict == Verdict::Within { check } else { check.with_note(ONE_STEP) }
}

fn bore(pipe: &Pipe) -> Check {
    let check = Check::at_least(Subject::Bore, Role::Diameter, pipe.bore.value, pipe.bore_rule).as_screen();
    let rule = pipe.bore_rule.value;
    // The rule is a usual least and, in an agency's text, a most.
    let slack = Length::from_si(1e-6);
    if pipe.bore.value > rule + slack {
        Check::at_most(Subject::Bore, Role::Diameter, Band::same(pipe.bore.value), pipe.bore_rule)
            .as_screen()
            .with_note("larger than an agency's most: the annulus settles unless it is grouted")
    } else if pipe.bore.value < rule - slack {
        check.with_note("smaller than usual: fluid return, steering and cuttings need proof")
    } else {
        check
    }
}
