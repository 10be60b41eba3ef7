//! Whether a scheme may be chosen at all, whatever its score.

use crate::check::{Subject, Verdict};
use crate::method::Scheme;
use crate::source::printed;

printed!(Standing: label);

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

    /// The standing of a scheme; one without any check is open.
    #[must_use]
    pub fn of(scheme: &Scheme) -> Self {
        let any = |verdict| scheme.checks.iter().any(|check| check.verdict == verdict);
        if scheme.is_excluded() || any(Verdict::Over) {
            Self::Barred
        } else if any(Verdict::NotDecided) || scheme.checks.iter().next().is_none() {
            Self::Open
        } else if any(Verdict::WithCare) {
            Self::WithCare
        } else {
            Self::Fits
        }
    }

    /// What an open scheme would stand at, if all that is not decided came out within; `None` for any other.
    pub(super) fn if_settled(scheme: &Scheme) -> Option<Self> {
        let any = |verdict| scheme.checks.iter().any(|check| check.verdict == verdict);
        let open = Self::of(scheme) == Self::Open && any(Verdict::NotDecided);
        open.then_some(if any(Verdict::WithCare) { Self::WithCare } else { Self::Fits })
    }
}

/// Where an open scheme would stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct IfSettled {
    /// Its place at best: all that is not decided within, and every unknown criterion at its best.
    pub place: usize,
    /// What is not decided.
    pub open: Vec<Subject>,
}
