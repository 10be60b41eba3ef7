//! Checks of a proposed pipe that rest on what only its maker knows: not decided, and what to ask for.

use super::scheme::Scheme;
use crate::check::{Check, Subject, Verdict, rated};
use crate::drive::{BY_ITS_MAKER, NotGiven, Pipe};
use crate::handbook::Method;

const FACTOR: &str = "at best, with a fused joint as strong as the pipe: list the pipe with its maker's `joint_factor`";
const PULL: &str = "list the pipe with the pull that the maker of its joint allows, `joint_pull`";
const DEFLECTION: &str = "list the pipe with the deflection that its joint may take, `joint_deflection`";

/// Puts what the maker has to settle in place of what stood in for it. What is over at its best stays over.
pub(super) fn open(pipe: &Pipe, scheme: &mut Scheme) {
    for missing in &pipe.not_given {
        match (missing, scheme.method) {
            (NotGiven::JointFactor, Method::Pullback) => {
                for subject in [
                    Subject::Tension,
                    Subject::TensionAndBending,
                    Subject::Collapse,
                    Subject::WeakLink,
                    Subject::PushedTail,
                ] {
                    if let Some(check) = scheme.checks.get(subject) {
                        scheme.checks.add(check.undecided(FACTOR));
                    }
                }
            }
            (NotGiven::JointPull, Method::Pullback) => {
                settle(scheme, Subject::Tension, PULL);
                if scheme.checks.get(Subject::WeakLink).is_some() {
                    settle(scheme, Subject::WeakLink, PULL);
                }
            }
            (NotGiven::JointDeflection, Method::Pullback) => settle(scheme, Subject::BendRadius, DEFLECTION),
            _ => {}
        }
    }
}

/// Not decided before its maker settles it.
pub(super) fn by_the_maker(note: &'static str) -> Check<()> {
    rated(Verdict::NotDecided, BY_ITS_MAKER).with_note(note)
}

/// No number stands for what is not known.
fn settle(scheme: &mut Scheme, subject: Subject, note: &'static str) {
    scheme.checks.add(by_the_maker(note).of(subject));
}
