//! Checks of a proposed pipe that rest on what only its maker knows: not decided, and what to ask for.

use super::rules::{Gives, watched};
use crate::check::{Care, Draft, Outcome, Subject, Verdict, Ways, at_most, rated, required};
use crate::conditions::Plan;
use crate::drive::{BY_ITS_MAKER, NotGiven, Pull, PulledPipe};
use crate::handbook::{Family, Method};
use crate::quantity::{Band, Force, Measure, Ratio, Role};
use crate::source::Cited;

const END: &str = "list the pipe with the greatest jacking force that its maker allows, `rated_force`; for concrete its \
                   strength and end bearing area do as well";
const USUAL: &str = "the maker's force is not given: the pipe must bear this much; compared with what a maker usually allows \
                     for this size";
const USUAL_AND_SET: &str = "the maker's force is not given, and the limit is what a maker usually allows for this size: order a pipe that \
                             bears it, set the jacks to no more, and plan how a drive that stalls is freed";
const HOT_AND_LONG: &str =
    "the pull is taken as hot and long, since its duration and the temperature of the wall are not given";
/// What plastic bears in a cool hour over what it bears on a hot day: some 1.6 times the stress, some 1.8 times the stiffness, by
/// the tables of PE.
const COOL_AND_SHORT: f64 = 1.8;
const FACTOR: &str = "the strength of the fused joint is not given: its maker must warrant four fifths of that of the pipe \
                      (`joint_factor`)";
const PULL: &str = "list the pipe with the pull that the maker of its joint allows, `joint_pull`";
const DEFLECTION: &str = "list the pipe with the deflection that its joint may take, `joint_deflection`";

const RATED: Ways = &[&["candidates[].rated_force"]];
const END_FORCE: Ways = &[&["candidates[].rated_force"], &["candidates[].end_bearing_area", "candidates[].strength"]];
/// The angle of a joint tells a radius with the length of a pipe alone.
const DEFLECTED: Ways = &[&["candidates[].joint_deflection", "candidates[].pipe_length"]];
const JOINT_PULL: Ways = &[&["candidates[].joint_pull"]];

/// Puts what the maker has to settle in place of what stood in for it. What is over at its best stays over.
pub(super) fn settle(at: &Plan<'_>, subject: Subject, outcome: Outcome) -> Outcome {
    let outcome = outcome.map(|check| by_hot_and_long(at, subject, check));
    let asked = |missing: &&NotGiven| missing.method() == at.method;
    at.pipe.not_given.iter().filter(asked).fold(outcome, |outcome, missing| match (missing, subject) {
        (NotGiven::EndForce, Subject::EndCapacity) => {
            let by_joint = matches!(at.pipe.family(), Family::DuctileIron | Family::Pvc | Family::FibreCement);
            let ways = if by_joint { RATED } else { END_FORCE };
            let demands = outcome.ok().and_then(|check| check.likely().zip(check.high()));
            let demands = demands.map(|(likely, high)| [likely, high].map(|(demand, _)| Force::from_si(demand.si)));
            Ok(match demands.zip(at.pipe.jacked.as_ref().and_then(|jacked| jacked.usual_end)) {
                Some((demands, usual)) => ordered(at, demands, usual).settled_by(ways),
                None => open(END, ways),
            })
        }
        (NotGiven::JointFactor, Subject::Tension) => outcome.map(|check| check.with_care(Care::Condition, FACTOR)),
        (NotGiven::JointPull, Subject::Tension) => Ok(open(PULL, JOINT_PULL)),
        (NotGiven::JointPull, Subject::WeakLink) => outcome.map(|_| open(PULL, JOINT_PULL)),
        (NotGiven::JointDeflection, Subject::BendRadius) => Ok(open(DEFLECTION, DEFLECTED)),
        _ => outcome,
    })
}

/// A force that the maker has to warrant, against the most that is usual; one that is past it at the high level alone is held to
/// it.
fn ordered(at: &Plan<'_>, [likely, high]: [Force; 2], usual: Cited<Force>) -> Draft {
    let order = required(Role::Thrust, high, usual).by_habit().with_note(USUAL);
    if high <= usual.value {
        return order;
    }
    let held = at_most(Role::Thrust, Band { low: likely, likely, high }, usual);
    let held = watched((at.drive, at.pipe), held, Ratio::from(1.0), Gives::Body(usual.value));
    if held.verdict() <= Verdict::WithCare { held.with_care(Care::Condition, USUAL_AND_SET) } else { order }
}

/// A hot and long pull that nobody tells bars nothing that a cool and short one might pass, and waits for its data.
fn by_hot_and_long(at: &Plan<'_>, subject: Subject, check: Draft) -> Draft {
    let in_pull = matches!(
        subject,
        Subject::Tension
            | Subject::TensionAndBending
            | Subject::Strain
            | Subject::StrainWithBend
            | Subject::Collapse
            | Subject::WeakLink
    );
    let untold = |pull: &Pull| !(pull.temperature_told && pull.duration_told);
    let is_plastic = at.pipe.pulled.as_ref().is_some_and(PulledPipe::is_plastic);
    let hangs = in_pull && at.method == Method::Pullback && is_plastic && at.drive.pull.as_ref().is_some_and(untold);
    let passes = |check: &Draft| check.by(subject.decides().rule(&at.drive.leeway)).verdict() <= Verdict::WithCare;
    if !hangs || passes(&check) || check.utilisation().is_none_or(|used| used > COOL_AND_SHORT) {
        return check;
    }
    // What spares a string that collapses is asked for first.
    let ways: Ways = &[&["pull.duration", "pull.pipe_temperature"]];
    match (subject, check.verdict()) {
        (Subject::Collapse, Verdict::Over) => check.undecided(HOT_AND_LONG),
        (Subject::Collapse, _) => check,
        _ => check.undecided(HOT_AND_LONG).settled_by(ways),
    }
}

/// No number stands for what is not known.
fn open(note: &'static str, ways: Ways) -> Draft {
    rated(Verdict::NotDecided, BY_ITS_MAKER).with_note(note).settled_by(ways)
}
