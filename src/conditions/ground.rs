//! Ground against method.

use super::plan::Plan;
use crate::check::{Absent, Care, Outcome, Verdict, rated};
use crate::drive::{BoreState, Drive, Stretch, UNTOLD_PILOT};
use crate::handbook::{Method, Rating};
use crate::source::{Equation, Origin};

/// The worst stretch decides.
pub(crate) fn ground(at: &Plan<'_>) -> Outcome {
    let suits = at.pipe.ground.ok_or(Absent::NotApplicable("the ground is not rated"))?;
    let worst = match at.method {
        Method::PipeJacking => suits.jacking,
        Method::Pullback => suits.pullback,
    };
    let check = rated(verdict(worst.value), worst.origin);
    let wet = |stretch: &Stretch| stretch.treatment.is_none() && stretch.way.is_wet();
    let settling: &'static [&'static str] = if at.is_jacked() && at.drive.stretches.iter().any(wet) {
        &["ground[].treatment", "spoil"]
    } else {
        &["ground[].spt_n", "ground[].largest_stone"]
    };
    let check = check.settled_by(settling);
    let check = match open_bore(at.drive) {
        Some((care, note)) if worst.value == Rating::Suitable => check.with_care(care, note),
        _ => check,
    };
    Ok(match (worst.value, worst.origin) {
        (Rating::Depends, origin) if origin == Origin::Law(&UNTOLD_PILOT) => {
            check.with_note(PILOT).settled_by(&["pilot"])
        }
        (Rating::Depends, Origin::Law(_)) => check.with_note(NO_RATING),
        (Rating::Depends, _) => check.with_note(UNDECIDED),
        (Rating::Marginal, Origin::Law(_)) => check.with_note(TREATED),
        _ => check,
    })
}

/// What has to be so where the bore is taken to stand open round a drilled stem: the least sure stretch counts.
fn open_bore(drive: &Drive) -> Option<(Care, &'static str)> {
    let any = |state| drive.stretches.iter().any(|stretch| stretch.open().is_some_and(|open| open.0 == state));
    let clay = drive.stretches.iter().any(|stretch| stretch.open().is_some() && !stretch.class().is_rock());
    if any(BoreState::Held) {
        Some((Care::Condition, HELD))
    } else if any(BoreState::Partly) {
        Some((Care::Data, PARTLY))
    } else {
        (any(BoreState::Stands) && clay).then_some((Care::Data, STANDS))
    }
}

/// The equation, if any, behind what the tables do not tell of the friction or the blow counts of a stretch. A pulled
/// pipe asks for the stem alone, and where the bore stands open nothing of that is in doubt.
pub(crate) fn ground_doubt(drive: &Drive, method: Method) -> Option<&'static Equation> {
    let settled = |stretch: &&Stretch| method == Method::Pullback && stretch.open().is_some();
    drive.stretches.iter().filter(|stretch| !settled(stretch)).find_map(|stretch| stretch.doubt)
}

const STANDS: &str = "the bore is taken to stand open round the stem for the week of the work: the log has to say intact \
                      clay, without fissures or seams that bring water";
const PARTLY: &str = "the bore is taken to stand open round the stem for two days, and to close on a part of its length: \
                      no night longer than the work asks for, fill and grout then";
const HELD: &str = "fluid is taken to hold the bore: keep both pits full of it up to the ground";

const PILOT: &str = "no pilot can be pushed through some of the ground: say whether it is drilled";
const UNDECIDED: &str = "what the file says of the ground does not decide it: see the row; spt_n and largest_stone may";
const NO_RATING: &str = "no rating of the technique in this ground was found, published or recalled; see `technique`";
const TREATED: &str = "with the ground treated as the file says: rated as above water, marginal at best";

const fn verdict(rating: Rating) -> Verdict {
    match rating {
        Rating::Suitable => Verdict::Within,
        Rating::Marginal => Verdict::WithCare,
        Rating::Unsuitable => Verdict::Over,
        Rating::Depends => Verdict::NotDecided,
    }
}
