//! Checks of a proposed pipe that rest on what only its maker knows: not decided, and what to ask for.

use crate::check::{Care, Draft, Outcome, Subject, Verdict, Ways, rated, required};
use crate::conditions::Plan;
use crate::drive::{BY_ITS_MAKER, NotGiven};
use crate::handbook::Family;
use crate::quantity::{Force, Measure, Role};

const END: &str = "list the pipe with the greatest jacking force that its maker allows, `rated_force`; for concrete its \
                   strength and end bearing area do as well";
const USUAL: &str = "the maker's force is not given: the pipe must bear this much; compared with what a maker usually allows \
                     for this size";
const FACTOR: &str = "the strength of the fused joint is not given: its maker must warrant four fifths of that of the pipe \
                      (`joint_factor`)";
const PULL: &str = "list the pipe with the pull that the maker of its joint allows, `joint_pull`";
const DEFLECTION: &str = "list the pipe with the deflection that its joint may take, `joint_deflection`";

const RATED: Ways = &[&["candidates[].rated_force"]];
const END_FORCE: Ways = &[&["candidates[].rated_force"], &["candidates[].end_bearing_area", "candidates[].strength"]];
const JOINT_PULL: Ways = &[&["candidates[].joint_pull"]];

/// Puts what the maker has to settle in place of what stood in for it. What is over at its best stays over.
pub(super) fn settle(at: &Plan<'_>, subject: Subject, outcome: Outcome) -> Outcome {
    let asked = |missing: &&NotGiven| missing.method() == at.method;
    at.pipe.not_given.iter().filter(asked).fold(outcome, |outcome, missing| match (missing, subject) {
        (NotGiven::EndForce, Subject::EndCapacity) => {
            let by_joint = matches!(at.pipe.family(), Family::DuctileIron | Family::Pvc | Family::FibreCement);
            let ways = if by_joint { RATED } else { END_FORCE };
            let demand = outcome.ok().and_then(|check| check.high()).map(|(demand, _)| Force::from_si(demand.si));
            Ok(match demand.zip(at.pipe.jacked.as_ref().and_then(|jacked| jacked.usual_end)) {
                Some((demand, usual)) => {
                    required(Role::Thrust, demand, usual).by_habit().with_note(USUAL).settled_by(ways)
                }
                None => open(END, ways),
            })
        }
        (NotGiven::JointFactor, Subject::Tension) => outcome.map(|check| check.with_care(Care::Condition, FACTOR)),
        (NotGiven::JointPull, Subject::Tension) => Ok(open(PULL, JOINT_PULL)),
        (NotGiven::JointPull, Subject::WeakLink) => outcome.map(|_| open(PULL, JOINT_PULL)),
        (NotGiven::JointDeflection, Subject::BendRadius) => Ok(open(DEFLECTION, &[&["candidates[].joint_deflection"]])),
        _ => outcome,
    })
}

/// No number stands for what is not known.
fn open(note: &'static str, ways: Ways) -> Draft {
    rated(Verdict::NotDecided, BY_ITS_MAKER).with_note(note).settled_by(ways)
}
