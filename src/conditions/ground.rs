//! Ground against method.

use crate::check::{Check, Subject, Verdict};
use crate::drive::{Drive, Pipe};
use crate::handbook::{Method, Rating};
use crate::source::{Equation, Origin};

/// The worst stretch decides.
#[must_use]
pub fn ground(pipe: &Pipe, method: Method) -> Option<Check> {
    let rated = pipe.ground?;
    let worst = match method {
        Method::PipeJacking => rated.jacking,
        Method::Pullback => rated.pullback,
    };
    let check = Check::rated(Subject::Ground, verdict(worst.value), worst.origin);
    Some(match (worst.value, worst.origin) {
        (Rating::Depends, Origin::Law(_)) => check.with_note(NO_RATING),
        (Rating::Depends, _) => check.with_note(UNDECIDED),
        (Rating::Marginal, Origin::Law(_)) => check.with_note(TREATED),
        _ => check,
    })
}

/// The equation, if any, behind what the tables do not tell of the friction or the blow counts of a stretch.
#[must_use]
pub fn ground_doubt(drive: &Drive) -> Option<&'static Equation> {
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
