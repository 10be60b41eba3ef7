//! Ground against method.

use super::plan::Plan;
use crate::check::{Absent, Outcome, Verdict, rated};
use crate::drive::Drive;
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
    Ok(match (worst.value, worst.origin) {
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
