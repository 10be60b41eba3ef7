//! Pullback with upsizing: stem pushed, then stem, reamer and pipe pulled back. The reamer makes the new bore larger
//! than the pilot bore; there is no old pipe in it.

pub(super) mod assist;
pub(super) mod break_out;
pub(super) mod figures;
pub(super) mod force;
mod grout;
pub(super) mod grout_pressure;
pub(super) mod grout_uplift;
mod in_place;
mod jointed;
pub(super) mod link;
pub(super) mod lubricant;
mod pressed;
pub(super) mod pulled;
mod pvc;
pub(super) mod reamed_bore;
mod section;
pub(super) mod service;
pub(super) mod site;
mod steel;
mod strength;
mod while_pushed;

use force::{Pulling, pull_on_pipe};
use pulled::{last_reamer, reamer, stage, trailing};
use section::Strength;
use service::InService;

use super::along::{Point, StageProfile};
use super::either::Either;
use super::rest::Put;
use super::rules::{against_rig_pull, against_winch, by_rig, strength_of_clay};
use super::stage::{Body, Stage, TURNS, Trailing, stem_friction_to, walk_pulled, whole_friction};
use super::stem::{rated_torque, torque};
use super::walked::Walked;
use crate::check::{Absent, Care, Outcome, Rule, Verdict, at_least, at_most, only, rated, required};
use crate::drive::{Drive, Pipe};
use crate::handbook::{GroundClass, Method};
use crate::law::Calc;
use crate::laws::pull::ReamedBore;
use crate::quantity::{Band, Force, Length, Measure, Role};
use crate::source::{Cited, Equation, Origin};

/// A check of what the pipe bears of the pull.
pub(super) fn of_pipe(at: &Walked<'_>, check: impl FnOnce(&Strength) -> Outcome) -> Outcome {
    check(&at.pulled()?.strength)
}

/// A check of a flexible pipe after it is put in.
pub(super) fn in_service(at: &Walked<'_>, check: impl FnOnce(&InService) -> Outcome) -> Outcome {
    check(at.served())
}

/// Pull on the pipe, against its tension: it is watched where a weak link parts before the pipe does.
pub(super) fn tension(at: &Walked<'_>) -> Outcome {
    let pulled = at.pulled()?;
    let check = pulled.strength.tension;
    Ok(match pulled.pull.works.weak_link {
        Some(_) => check.by(Rule::Watched(at.drive.leeway.most)),
        None => check,
    })
}

const NOT_REAMED: &str = "nothing is reamed: the pipe goes into the bore of the stem's head";
const DRAWN: &str = "draws the stem back out of the bore before the pipe goes in";

/// Pull on the rig, of a pipe or of a stem that is drawn out of the bore before the pipe goes in.
pub(super) fn rig_pull(at: &Walked<'_>) -> Outcome {
    if let Some(drawn) = at.stem_drawn {
        return Ok(against_rig_pull(at.drive, Either::sure(drawn)).with_note(DRAWN));
    }
    Ok(against_rig_pull(at.drive, at.pulled()?.rig))
}

/// Pull of a winch on the pipe.
pub(super) fn winch(at: &Walked<'_>) -> Outcome {
    let pulled = at.pulled()?;
    let rating = pulled.pull.winch.ok_or(Absent::NotApplicable("no winch pulls the pipe"))?;
    Ok(against_winch(at.drive, pulled.rig, rating))
}

pub(super) fn reaming_pull(at: &Walked<'_>) -> Outcome {
    let reaming = at.pulled()?.reaming.ok_or(Absent::NotApplicable("no pass before the one that brings the pipe"))?;
    Ok(against_rig_pull(at.drive, reaming))
}

pub(super) fn stem_pull(at: &Walked<'_>) -> Outcome {
    const JOINTS: &str = "no joint rating is given: the joints must bear this much; compared with the highest usual \
        rating";
    let all = match at.stem_drawn {
        Some(drawn) => Either::sure(drawn),
        None => at.pulled()?.all(),
    };
    let all = by_rig(at.drive, all);
    Ok(match at.drive.stem.joint_pull {
        Some(rating) => all.check(|pull| at_most(Role::Pull, pull, rating)).settled_by(strength_of_clay(at.drive)),
        None => all.check(|pull| required(Role::Pull, pull, at.drive.usual.stem.pull)).with_note(JOINTS),
    })
}

pub(super) fn reaming_torque(at: &Walked<'_>) -> Outcome {
    let pull = at.pulled()?.pull;
    only(pull.winch.is_none(), NOT_REAMED)?;
    torque(pull.reaming_torque, rated_torque(at)?)
}

/// Force on rig, stem and pipe along the reaming passes and the pullback, by advance from the reception pit.
pub(super) fn profiles(at: Pulling<'_>) -> Vec<StageProfile> {
    let Pulling { drive, pipe, pull, .. } = at;
    let calc = &mut Calc::silent();
    let put = Put::of(drive, pipe, Method::Pullback);
    let stem = whole_friction(calc, put, Body::Stem).moving;
    let mut stages = Vec::new();
    let mut before = drive.stem.head;
    for bore in &pipe.passes {
        let trailing = Trailing {
            reamer: reamer(calc, at, *bore, before),
            pull: |advance: Length| stem_behind(stem, drive, pipe, advance),
            turns: [None; TURNS],
            is_stem: true,
        };
        let mut points = Vec::new();
        walk_pulled(calc, put, &trailing, |advance, on_rig, _| {
            points.push(Point { advance, on_rig, on_stem: Some(on_rig), ..Point::default() });
        });
        stages.push(StageProfile { stage: Stage::REAMING, bore: Some(*bore), points });
        before = *bore;
    }
    let on_pipe = pull_on_pipe(calc, at);
    if pull.winch.is_some() {
        let length = drive.length.value;
        let joined = on_pipe.turns(length).into_iter().flatten();
        let ends = [Length::default()].into_iter().chain(joined).chain([length]);
        let points = ends.map(|advance| {
            let on_pipe = on_pipe.at(advance, length);
            Point { advance, on_rig: on_pipe, on_pipe: Some(on_pipe), ..Point::default() }
        });
        stages.push(StageProfile { stage: Stage::WINCH, bore: None, points: points.collect() });
        return stages;
    }
    let reamer = last_reamer(calc, at);
    let trailing = trailing(&on_pipe, reamer, drive.length.value);
    let on_tail = |advance| on_pipe.pushed(advance, drive.length.value);
    let mut points = Vec::new();
    walk_pulled(calc, put, &trailing, |advance, on_rig, on_pipe| {
        let on_tail = on_tail(advance);
        let (on_stem, on_pipe) = (Some(on_rig), Some(on_pipe));
        points.push(Point { advance, on_rig, on_stem, on_pipe, on_tail, ..Point::default() });
    });
    stages.push(StageProfile { stage: stage(pull), bore: Some(pipe.bore.value), points });
    stages
}

/// Friction of the stem that follows a reamer, from the reception pit as far as it has come.
fn stem_behind(whole: Band<Force>, drive: &Drive, pipe: &Pipe, advance: Length) -> Band<Force> {
    let left = stem_friction_to(drive, pipe, drive.length.value - advance);
    whole.with(left, |whole, left| (whole - left).max(Force::default()))
}

const ONE_STEP: &str = "the bore is usually opened in smaller steps; give `passes` as planned";

/// The reaming step that goes furthest beyond habit.
pub(super) fn step(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let pull = at.pulled()?.pull;
    only(pull.winch.is_none(), NOT_REAMED)?;
    let rule = &pull.step;
    if at.drive.stretches.iter().any(|stretch| stretch.has(GroundClass::is_rock)) {
        return Ok(rated(Verdict::Within, Origin::Law(&STEP_IN_ROCK)).with_care(Care::Condition, BY_OPENER));
    }
    calc.part("reaming steps");
    let mut before = at.drive.stem.head;
    let mut worst = (Length::default(), Band::same(Length::default()), f64::NEG_INFINITY);
    for bore in at.pipe.passes.iter().chain([&at.pipe.bore.value]) {
        let mut most = |ratio, step| calc.law(ReamedBore { bore_before: before, ratio, step });
        let usual = most(rule.ratio.0, rule.step.0);
        let greatest = most(rule.ratio.1, rule.step.1);
        let over = (*bore / usual).value;
        if over > worst.2 {
            worst = (*bore, Band { low: greatest, likely: greatest, high: usual }, over);
        }
        before = *bore;
    }
    let check = at_most(Role::Diameter, worst.0, Cited::new(worst.1, rule.origin));
    Ok(if check.verdict() == Verdict::Within { check } else { check.with_note(ONE_STEP) })
}

/// Said of the steps of a reamer in rock.
const STEP_IN_ROCK: Equation = Equation::judged(
    "reaming step in rock",
    "what the hole opener and its cutters take",
    "the habits of soft ground are none of rock",
    "rock in the face",
);
const BY_OPENER: &str = "rock is opened in the steps that the maker of the hole opener tells, by cores: ask for them";

pub(super) fn bore(at: &Walked<'_>) -> Outcome {
    only(at.pulled()?.pull.winch.is_none(), NOT_REAMED)?;
    let (bore, rule) = (at.pipe.bore.value, at.pipe.bore_rule);
    let (pipe, joint) = (at.pipe.outside_diameter.value, at.pipe.widest.value);
    let passes = (pipe * NARROWEST).max(if joint > pipe { joint + Length::from_si(ROUND_A_JOINT) } else { pipe });
    if bore < passes {
        return Ok(at_least(Role::Diameter, bore, rule.map(|_| passes)).by(Rule::High).with_note(NARROW));
    }
    let least = at_least(Role::Diameter, bore, rule);
    // The rule is a usual least and, in an agency's text, a most.
    let slack = Length::from_si(1e-6);
    Ok(if bore > rule.value + slack {
        at_most(Role::Diameter, bore, rule)
            .with_note("larger than one agency allows: the annulus settles unless it is grouted")
    } else if bore < rule.value - slack {
        least.with_note("smaller than usual: fluid return, steering and cuttings need proof")
    } else {
        least
    })
}

/// A bore over its pipe below which none is pulled in: habit.
const NARROWEST: f64 = 1.1;
/// Room that a joint needs in the bore, in metres: habit.
const ROUND_A_JOINT: f64 = 0.025;
const NARROW: &str = "the pipe or its joints do not go through so narrow a bore";
