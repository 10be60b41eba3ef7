//! Whether a scheme may be chosen at all, whatever its score.

use crate::check::Verdict;
use crate::method::Scheme;

/// Whether a scheme may be chosen, best first; the ranking goes by this before the score.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// Every check is within.
    Fits,
    /// No check is over or open; at least one asks for care.
    WithCare,
    /// Something is not decided; it can never be chosen.
    Open,
    /// A check is over, or the pipe cannot be put in this way or bear the service.
    Barred,
}

impl Standing {
    /// As printed and as written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Fits => "fits",
            Self::WithCare => "fits with care",
            Self::Open => "open",
            Self::Barred => "barred",
        }
    }

    /// Fits, or fits with care.
    #[must_use]
    pub const fn can_be_chosen(self) -> bool {
        matches!(self, Self::Fits | Self::WithCare)
    }
}

/// The standing of a scheme; one without any check is open.
pub(super) fn standing(scheme: &Scheme) -> Standing {
    let any = |verdict| scheme.checks.iter().any(|check| check.verdict == verdict);
    if scheme.is_excluded() || any(Verdict::Over) {
        Standing::Barred
    } else if any(Verdict::NotDecided) || scheme.checks.iter().next().is_none() {
        Standing::Open
    } else if any(Verdict::WithCare) {
        Standing::WithCare
    } else {
        Standing::Fits
    }
}
