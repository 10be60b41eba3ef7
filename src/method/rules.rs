//! Rules that the checks of pushed bodies share: a force that is watched, and what the contractor is asked for.

use super::either::Either;
use super::walked::Walked;
use crate::check::{Care, Check, Decides, NOTHING, Rule, Subject, Verdict, Ways, at_most};
use crate::drive::{Drive, IfStalled};
use crate::law::Doubted;
use crate::quantity::{Band, Force, Measure, Ratio, Role};

const STALLS: &str = "at the high end the drive stalls: hold the jacks to what may be borne (`rig: { held_to: ... }`) and \
                      say how it is freed (`if_stalled`)";
const FREED: &str = "the jacks are held to what may be borne; where it stalls it is freed as the file says";
const BEYOND: &str = "so far past what may be borne that nothing held to it gets through: a shorter drive, better lubrication, work \
                      without nights, or more strength";
const PULL_STALLS: &str = "at the high end the pull stalls: say how it is freed (`if_stalled`)";
const PULL_FREED: &str = "the rig holds at its rating; where the pull stalls a pit is dug over it, as the file says";

/// What anything is pushed with: no more than the jacks can give.
pub(super) fn by_jacks(at: &Walked<'_>, thrust: Either<Doubted<Band<Force>>>) -> Either<Doubted<Band<Force>>> {
    let most = at.drive.rig.thrust.value;
    thrust.map(|thrust| thrust.map(|thrust| thrust.map(|force| force.min(most))))
}

/// Up to a share of the limit at the high level; beyond it not decided until the file says at what force the jacks are
/// held, from the likely one to `most`, and how a drive that stalls there is freed. A frame holds itself: `most` is none.
pub(super) fn watched(drive: &Drive, check: Check<()>, share: Ratio, most: Option<Force>) -> Check<()> {
    let told = |held: Force, likely: Force| most.is_some_and(|most| held >= likely && held <= most);
    let held = |likely: Force| most.is_none() || drive.rig.held_to.is_some_and(|held| told(held.value, likely));
    let ways: Ways = if most.is_some() { &[&["rig.held_to", "if_stalled"]] } else { &[&["if_stalled"]] };
    let check = check.by(Rule::Watched(share));
    stalls(check, drive.leeway.held, |likely| held(likely) && drive.is_freed(), [STALLS, FREED], ways)
}

/// A pull against the rating of the rig, which holds itself there. Only a pit over the pipe frees one that stalls.
pub(super) fn against_rig_pull(drive: &Drive, pull: Doubted<Band<Force>>) -> Check<()> {
    let share = Subject::RigPull.decides().share(&drive.leeway);
    let check = at_most(Role::Pull, pull, drive.rig.pull).by(Rule::Watched(share));
    let freed = drive.if_stalled == Some(IfStalled::RescuePit) && drive.is_freed();
    stalls(check, drive.leeway.held, |_| freed, [PULL_STALLS, PULL_FREED], &[&["if_stalled"]])
}

/// What stalls at the high level alone asks for care where it is held and freed, up to so many times its limit.
fn stalls(
    check: Check<()>,
    most: Ratio,
    is_freed: impl Fn(Force) -> bool,
    [stalls, freed]: [&'static str; 2],
    ways: Ways,
) -> Check<()> {
    let (Verdict::NotDecided, None, Some((likely, _))) = (check.verdict, check.doubt, check.likely()) else {
        return check;
    };
    if is_freed(Force::from_si(likely.si)) && can_be_held(&check, most) {
        check.by(Rule::Watched(most)).with_care(Care::Condition, freed)
    } else if can_be_held(&check, most) {
        check.with_note(stalls).settled_by(ways)
    } else {
        check.with_note(BEYOND).settled_by(NOTHING)
    }
}

/// Whether jacks that are held below a limit may get through at all: up to so many times that limit at the high level.
pub(super) fn can_be_held(check: &Check<()>, most: Ratio) -> bool {
    check.high().is_some_and(|(demand, limit)| demand.si <= most.si() * limit.si)
}

/// The same by the factor that is in the limit, held to the limit itself.
pub(super) fn watched_up_to(at: &Walked<'_>, check: Check<()>, factor: Ratio) -> Check<()> {
    let share = Decides::Watched(factor.si()).share(&at.drive.leeway);
    let most = check.high().map(|(_, limit)| Force::from_si(limit.si) * share);
    watched(at.drive, check, share, most)
}

/// What is asked of plant that is not told, as it would be judged if it were: the likely force with the whole factor, the
/// high one with what must be left of it.
pub(super) fn asked(thrust: Doubted<Band<Force>>, factor: Ratio, left: Ratio) -> Doubted<Band<Force>> {
    thrust.map(|thrust| Band::same(thrust.likely.max(thrust.high * (left / factor))))
}
