//! What is between rig and pipe: pull head, swivel and the link that parts before the pipe does.

use super::force::{PullOnPipe, Pulling};
use super::pulled::{Pulled, best};
use super::section::Borne;
use crate::check::{Absent, Care, Outcome, Rule, Verdict, Ways, at_most, only, required};
use crate::drive::{Pull, PulledPipe};
use crate::law::{Calc, Doubted, Law};
use crate::laws::pull_limits::WeakLinkSetting;
use crate::method::walked::Walked;
use crate::quantity::{Band, Force, Measure, Role, Shown};
use crate::source::{Cited, Origin};

const PARTS: &str = "the link parts in the expected pull";
const MAY_PART: &str = "the link parts in the high pull";
const HEAD: &str = "no rating is given: pull head and swivel must bear this much; compared with what the pipe may \
    bear";
const LINK: &str = "no weak link is given: use one that parts above the likely pull and at no more than the limit";

const WIDE: &str = "more than a usual ramp leaves beside its bending: make the ramp wide enough for the setting, \
    and give bend_radius";
const GAUGE: &str = "more than the ramp leaves beside its bending: hold the pull to less by gauge until the head is in the \
    bore; after that little of it reaches the ramp";
const LOWER: &str = "a round setting is hardly above the limit, and the high pull stays below it: set it to the limit";
/// How far above the limit a setting that is told in round numbers may be: links part within as much. Our judgement.
const ROUND: f64 = 1.05;
const HIGH: &str = "the rig can reach a setting above what pipe, head and joint may bear: set it to the limit or less";

/// The most that the weak link may be set to, with a ramp that leaves so much to the pull beside its bend.
pub(super) fn setting(
    calc: &mut Calc,
    pull: &Pull,
    borne: &Borne,
    beside_bend: Doubted<Force>,
) -> Doubted<Cited<Force>> {
    calc.doubted(|calc| {
        let (pipe, joint) = (calc.take(beside_bend), calc.take(borne.straight).value);
        let pull_head = pull.works.head_rating.map_or(pipe, |rating| rating.value);
        Cited::new(calc.law(WeakLinkSetting { pipe, pull_head, joint }), Origin::Law(&WeakLinkSetting::EQUATION))
    })
}

pub(in crate::method) fn head(at: &Walked<'_>) -> Outcome {
    let Pulled { pull, strength, on_pipe, .. } = at.pulled()?;
    let peak = on_pipe.map(PullOnPipe::in_wall);
    Ok(match pull.works.head_rating {
        Some(rating) => at_most(Role::Pull, peak, rating),
        None => {
            // No more comes on it than the pipe may bear: the weak link parts.
            let most = strength.borne.straight;
            let asked = peak.zip(most).map(|(peak, most)| peak.map(|peak| peak.min(most.value)));
            required(Role::Pull, asked, most).with_note(HEAD)
        }
    })
}

pub(in crate::method) fn set(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Pulled { pipe, pull, strength, on_pipe, .. } = at.pulled()?;
    calc.part("weak link");
    let told = pull.works.weak_link;
    only(
        told.is_some() || !matches!(pipe, PulledPipe::Steel(_)),
        "a welded steel string is pulled without a weak link",
    )?;
    let check = |most| match told {
        // No more comes on it than the rig pulls.
        Some(link) => at_most(Role::Pull, link.value.min(at.drive.rig.pull.value), most),
        // It has to be set over the likely pull, or it parts in any.
        None => {
            let asked = required(Role::Pull, on_pipe.map(|on_pipe| Band::same(on_pipe.peak().likely)), most);
            // None that is usual parts before the pipe does.
            let asked = if asked.verdict() == Verdict::NotDecided { asked.by(Rule::High) } else { asked };
            asked.with_note(LINK)
        }
    };
    let borne = &strength.borne;
    let set = check(setting(calc, pull, borne, borne.beside_bend));
    if set.verdict() != Verdict::Over {
        return Ok(set);
    }
    // A ramp of which nothing is told may be as wide as that asks for. On one that is told only what the tail drags on
    // is bent, once the head has left it: that is checked beside the bending.
    let note = if pull.bend_radius.is_none() { WIDE } else { GAUGE };
    let straight = |borne: &Borne| {
        let straight = borne.straight.map(|straight| straight.value);
        check(setting(&mut Calc::silent(), pull, borne, straight)).with_care(Care::Condition, note)
    };
    let set = straight(borne);
    if set.verdict() != Verdict::Over || told.is_none() {
        return Ok(set);
    }
    let pulled = on_pipe.map(PullOnPipe::peak).in_spite_of_doubt().high.si();
    let hardly = |(_, limit): (Shown, Shown)| pulled <= limit.si && set.utilisation().is_some_and(|used| used <= ROUND);
    if set.high().is_some_and(hardly) {
        return Ok(set.by(Rule::Screen).with_care(Care::Condition, LOWER));
    }
    let best = straight(&best(Pulling { drive: at.drive, pipe: at.pipe, pulled: pipe, pull }, on_pipe).borne);
    let ways: Ways = match pipe {
        PulledPipe::Jointed(_) => &[&["candidates[].joint_deflection_factor"]],
        _ => &[&["pull.welds"], &["pull.score"]],
    };
    Ok(set.at_best(best).with_note(HIGH).settled_by(ways))
}

pub(in crate::method) fn pulled(at: &Walked<'_>) -> Outcome {
    let pulled = at.pulled()?;
    let link = pulled.pull.works.weak_link.ok_or(Absent::NotApplicable("no weak link is given"))?;
    let check = at_most(Role::Pull, pulled.on_pipe.map(PullOnPipe::peak), link);
    Ok(match check.verdict() {
        Verdict::Within => check,
        Verdict::Over => check.with_note(PARTS),
        _ => check.with_note(MAY_PART),
    })
}
