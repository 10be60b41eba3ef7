//! Whether a scheme may be chosen at all, whatever its score; and a scheme in its place.

use super::score::Score;
use crate::check::{Absent, CLASS, Check, Subject, Verdict};
use crate::drive::Pipe;
use crate::method::Scheme;
use crate::source::labelled;
use std::sync::Arc;

labelled! {
    /// Whether a scheme may be chosen, best first; the ranking goes by this before the score.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum Standing {
        /// Every check is within.
        Fits = "fits",
        /// No check is over or open; at least one asks for care.
        WithCare = "fits with care",
        /// A check that is needed is not decided or was not made; it can never be chosen.
        Open = "not decided",
        /// A check is over, or the pipe cannot be put in this way or bear the service.
        Barred = "barred",
    }
}

impl Standing {
    /// Fits, or fits with care.
    #[must_use]
    pub const fn can_be_chosen(self) -> bool {
        matches!(self, Self::Fits | Self::WithCare)
    }

    /// The standing of a scheme; one without any check is open, and so is one whose needed check is missing.
    #[must_use]
    pub fn of(scheme: &Scheme) -> Self {
        let any = |verdict| scheme.checks.iter().any(|check| check.verdict == verdict);
        if scheme.is_excluded() || any(Verdict::Over) {
            Self::Barred
        } else if not_decided(scheme).next().is_some() || scheme.checks.iter().next().is_none() {
            Self::Open
        } else if any(Verdict::WithCare) {
            Self::WithCare
        } else {
            Self::Fits
        }
    }

    /// What an open scheme would stand at, if all that is not decided came out at its best, and whether every check of it
    /// was made so and passes; `None` for any other.
    pub(super) fn if_settled(scheme: &Scheme) -> Option<(Self, bool)> {
        let is_open = Self::of(scheme) == Self::Open && not_decided(scheme).next().is_some();
        let at_best = |subject| scheme.checks.get(subject).and_then(Check::passes_at_best);
        let is_shown = not_decided(scheme).all(|subject| at_best(subject).is_some());
        // Ground that is unknown is no better than the same ground known.
        let unknown = |check: &Check| check.verdict == Verdict::NotDecided && check.settled_by == CLASS;
        let care = scheme.checks.get(Subject::Ground).is_some_and(unknown)
            || scheme.checks.iter().any(|check| check.verdict == Verdict::WithCare)
            || not_decided(scheme).any(|subject| at_best(subject) == Some(Verdict::WithCare));
        is_open.then_some((if care { Self::WithCare } else { Self::Fits }, is_shown))
    }
}

/// What is not decided of a scheme: checks that came out so, and needed ones that were not made.
pub fn not_decided(scheme: &Scheme) -> impl Iterator<Item = Subject> {
    Subject::ALL.iter().copied().filter(|subject| match scheme.checks.outcome(*subject) {
        Ok(check) => check.verdict == Verdict::NotDecided,
        Err(Absent::Missing) => subject.is_needed(),
        Err(Absent::NotApplicable(_)) => false,
    })
}

/// Where an open scheme would stand at best: all that is not decided within, every unknown criterion at its best.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct IfSettled {
    /// Its place.
    pub place: usize,
    /// Its standing.
    pub standing: Standing,
    /// Whether every check that is not decided was made at its best and passes so; else it may yet fail.
    pub is_shown: bool,
    /// What is not decided.
    pub open: Vec<Subject>,
}

/// One scheme in the ranking.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Ranked {
    /// The pipe.
    pub pipe: Arc<Pipe>,
    /// Its position among the candidates of the drive.
    pub candidate: usize,
    /// The scheme; apart, since its checks are many and a ranking moves them about.
    pub scheme: Box<Scheme>,
    /// Its standing.
    pub standing: Standing,
    /// Its score; absent where the scheme is excluded before any number.
    pub score: Option<Score>,
    /// Its place, from 1. Schemes of one standing whose scores are equal as printed share it.
    pub place: usize,
    /// Where it would stand at best, if it is open.
    pub if_settled: Option<IfSettled>,
}

/// The ranking, and what is chosen.
#[derive(Debug, Clone)]
pub struct Choice {
    /// Best first: by standing, of what is open by the lines it asks for, then by the least the score can be.
    pub ranked: Vec<Ranked>,
    /// Why the first is first, or why none is chosen, in one sentence.
    pub reason: String,
}

impl Choice {
    /// The scheme chosen: the first, if it fits or fits with care.
    #[must_use]
    pub fn chosen(&self) -> Option<&Ranked> {
        self.ranked.first().filter(|first| first.standing.can_be_chosen())
    }
}
