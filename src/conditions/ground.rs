//! Ground against method.

use super::plan::Plan;
use crate::check::{Absent, Outcome, Verdict, rated};
use crate::drive::{Drive, Stretch, UNTOLD_PILOT};
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

/// The equation, if any, behind what the tables do not tell of the friction or the blow counts of a stretch.
pub(crate) fn ground_doubt(drive: &Drive) -> Option<&'static Equation> {
    drive.stretches.iter().find_map(|stretch| stretch.doubt)
}

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
