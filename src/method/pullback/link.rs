//! What is between rig and pipe: pull head, swivel and the link that parts before the pipe does.

use super::force::PullOnPipe;
use super::pulled::Pulled;
use super::section::Borne;
use crate::check::{Absent, Outcome, Verdict, at_most};
use crate::drive::Pull;
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::pull_limits::WeakLinkSetting;
use crate::method::walked::Walked;
use crate::quantity::{Force, Role};
use crate::source::{Cited, Origin};

const PARTS: &str = "the link parts in the expected pull";
const MAY_PART: &str = "the link parts in the high pull";

/// The most that the weak link may be set to.
pub(super) fn setting<R: Recorder>(calc: &mut Calc<R>, pull: &Pull, borne: &Borne) -> Doubted<Cited<Force>> {
    calc.doubted(|calc| {
        let (pipe, joint) = (calc.take(borne.beside_bend), calc.take(borne.straight).value);
        let pull_head = pull.works.head_rating.map_or(pipe, |rating| rating.value);
        Cited::new(calc.law(WeakLinkSetting { pipe, pull_head, joint }), Origin::Law(&WeakLinkSetting::EQUATION))
    })
}

pub(in crate::method) fn head(at: &Walked<'_>) -> Outcome {
    let pulled = at.pulled()?;
    let rating = pulled.pull.works.head_rating.ok_or(Absent::Missing)?;
    Ok(at_most(Role::Pull, pulled.on_pipe.map(PullOnPipe::peak), rating))
}

pub(in crate::method) fn set<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let Pulled { pull, strength, .. } = at.pulled()?;
    let link = pull.works.weak_link.ok_or(Absent::Missing)?;
    calc.part("weak link");
    Ok(at_most(Role::Pull, link.value, setting(calc, pull, &strength.borne)))
}

pub(in crate::method) fn pulled(at: &Walked<'_>) -> Outcome {
    let pulled = at.pulled()?;
    let link = pulled.pull.works.weak_link.ok_or(Absent::Missing)?;
    let check = at_most(Role::Pull, pulled.on_pipe.map(PullOnPipe::peak), link);
    Ok(match check.verdict {
        Verdict::Within => check,
        Verdict::Over => check.with_note(PARTS),
        _ => check.with_note(MAY_PART),
    })
}
