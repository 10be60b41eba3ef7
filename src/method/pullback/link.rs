//! What is between rig and pipe: pull head, swivel and the link that parts before the pipe does.

use super::force::PullOnPipe;
use super::section::Borne;
use crate::check::{Check, Subject, Verdict};
use crate::drive::Pull;
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::pull_limits::WeakLinkSetting;
use crate::method::scheme::Scheme;
use crate::quantity::{Band, Force, Role};
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

pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    pull: &Pull,
    borne: &Borne,
    on_pipe: &Doubted<PullOnPipe>,
    scheme: &mut Scheme,
) {
    let peak = on_pipe.map(PullOnPipe::peak);
    if let Some(rating) = pull.works.head_rating {
        scheme.checks.add(Check::at_most(Subject::PullHead, Role::Pull, peak, rating));
    }
    if let Some(link) = pull.works.weak_link {
        calc.part("weak link");
        let most = setting(calc, pull, borne);
        scheme.checks.add(Check::at_most(Subject::WeakLink, Role::Pull, Band::same(link.value), most));
        let check = Check::at_most(Subject::WeakLinkPull, Role::Pull, peak, link).as_screen();
        scheme.checks.add(match check.verdict {
            Verdict::Within => check,
            _ if check.is_failed_screen() => check.with_note(PARTS),
            _ => check.with_note(MAY_PART),
        });
    }
}
