//! Rules that the checks of pushed bodies share: a force that is watched, and what the contractor is asked for.

use super::either::Either;
use super::walked::Walked;
use crate::check::{Care, Check, Decides, Rule, Verdict};
use crate::drive::Drive;
use crate::law::Doubted;
use crate::quantity::{Band, Force, Measure, Ratio};

/// Times the limit up to which a drive that is held to a force, and freed where it stalls, asks for care: our judgement.
const HELD: f64 = 2.5;

const STALLS: &str = "at the high end the drive stalls: hold the jacks to what may be borne (`rig: { held_to: ... }`) and \
                      say how it is freed (`if_stalled`)";
const FREED: &str = "the jacks are held to what may be borne; where it stalls it is freed as the file says";

/// What anything is pushed with: no more than the jacks can give.
pub(super) fn by_jacks(at: &Walked<'_>, thrust: Either<Doubted<Band<Force>>>) -> Either<Doubted<Band<Force>>> {
    let most = at.drive.rig.thrust.value;
    thrust.map(|thrust| thrust.map(|thrust| thrust.map(|force| force.min(most))))
}

/// Up to a share of the limit at the high level; beyond it not decided until the file says at what force the jacks are
/// held, from the likely one to `most`, and how a drive that stalls there is freed. A frame holds itself: `most` is none.
pub(super) fn watched(drive: &Drive, check: Check<()>, share: Ratio, most: Option<Force>) -> Check<()> {
    let check = check.by(Rule::Watched(share));
    let (Verdict::NotDecided, None, Some((demand, limit)), Some((likely, _))) =
        (check.verdict, check.doubt, check.high(), check.likely())
    else {
        return check;
    };
    let holds = |held: Force| most.is_some_and(|most| held.si() >= likely.si && held <= most);
    let held = most.is_none() || drive.rig.held_to.is_some_and(|held| holds(held.value));
    if held && drive.is_freed() && demand.si <= HELD * limit.si {
        check.by(Rule::Watched(Ratio::from_si(HELD))).with_care(Care::Condition, FREED)
    } else {
        check.with_note(STALLS).settled_by(if most.is_some() {
            &["rig.held_to", "if_stalled"]
        } else {
            &["if_stalled"]
        })
    }
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
