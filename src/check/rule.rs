//! Which level of a demand decides, and how far past its limit the high one may be.

use crate::drive::Leeway;
use crate::quantity::{Measure, Ratio};

/// Who decides on a check: the table of checks says it, or the check where it depends on the pipe.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Rule {
    /// The high level: what fails without warning, ground loss, the property of others, limits without a factor.
    High,
    /// The likely level; the high one may be past the limit up to this share of it.
    Likely(Ratio),
    /// As likely, for a force that is read while it acts and that can be stopped below the limit: what threatens is
    /// that the drive stalls, so that beyond the share nothing is decided until the file says what is done then.
    Watched(Ratio),
    /// A habit, which asks for care; past twice the limit at the likely level nothing is decided.
    Screen,
    /// What the contractor brings, against what is usual: a line of the specification, with care. Above what is usual
    /// nothing is decided, above twice of it at best it is over.
    Required,
}

impl Rule {
    /// A screen or a requirement that is past this many times its limit is outside all experience: our judgement.
    pub(super) const PAST_ALL: f64 = 2.0;
}

/// What is to be left of a safety factor at the high level, as the table of checks names it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Decides {
    High,
    /// The high level of what rules, ground and geometry say of the line: told before any force.
    Place,
    /// The factor in the limit; what nobody can watch or undo.
    Likely(f64),
    /// The factor in the limit; a force that is read while it acts.
    Watched(f64),
    /// The factor in the limit; a wall or plate that the line is set on.
    SetOn(f64),
    /// No factor in the limit; a survey reads it, and passing it hurts nobody at once.
    Surveyed,
    /// Up to this share of the limit at the high level, whatever factor is in it.
    UpTo(f64),
    Screen,
}

impl Decides {
    /// The share of its limit that a high demand may reach.
    pub(crate) fn share(self, leeway: &Leeway) -> Ratio {
        match self.rule(leeway) {
            Rule::Likely(share) | Rule::Watched(share) => share,
            Rule::High | Rule::Screen | Rule::Required => Ratio::from_si(1.0),
        }
    }

    pub(crate) fn rule(self, leeway: &Leeway) -> Rule {
        let share = |factor: f64, left: Ratio| {
            let most = leeway.most.value.max(1.0);
            Ratio::from_si((factor / left.value).clamp(1.0, most))
        };
        match self {
            Self::High | Self::Place => Rule::High,
            Self::Likely(factor) => Rule::Likely(share(factor, leeway.unwatched)),
            Self::Watched(factor) => Rule::Watched(share(factor, leeway.watched)),
            Self::SetOn(factor) => Rule::Likely(share(factor, leeway.set_on)),
            Self::Surveyed => Rule::Likely(leeway.surveyed),
            Self::UpTo(share) => Rule::Likely(Ratio::from_si(share)),
            Self::Screen => Rule::Screen,
        }
    }
}
