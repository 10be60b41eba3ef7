//! Ground against method.

use crate::check::{Check, Subject, Verdict};
use crate::drive::{Drive, Stretch};
use crate::handbook::{Method, Rating};
use crate::source::Cited;

/// The worst stretch decides.
#[must_use]
pub fn ground(drive: &Drive, method: Method) -> Option<Check> {
    let rating = |stretch: &Stretch| match method {
        Method::PipeJacking => stretch.jacking,
        Method::Pullback => stretch.pullback,
    };
    let worst: Cited<Rating> = drive.stretches.iter().map(rating).max_by_key(|rating| gravity(rating.value))?;
    let check = Check::rated(Subject::Ground, verdict(worst.value), worst.origin);
    Some(if worst.value == Rating::Depends { check.with_note(UNDECIDED) } else { check })
}

const UNDECIDED: &str = "what the file says of the ground does not decide it: see the row; spt_n and largest_stone may";

const fn verdict(rating: Rating) -> Verdict {
    match rating {
        Rating::Suitable => Verdict::Within,
        Rating::Marginal => Verdict::WithCare,
        Rating::Unsuitable => Verdict::Over,
        Rating::Depends => Verdict::NotDecided,
    }
}

/// Which stretch decides: an unsuitable one excludes whatever the others are.
const fn gravity(rating: Rating) -> u8 {
    match rating {
        Rating::Suitable => 0,
        Rating::Marginal => 1,
        Rating::Depends => 2,
        Rating::Unsuitable => 3,
    }
}
