//! A demand against a limit: typed at the door, erased inside.

mod levels;
mod made;
mod outcome;
mod rests_on;
mod rule;
mod subject;
mod table;

pub use levels::{Levels, Limit};
pub use made::{Case, Check, Draft, at_least, at_most, rated, required};
pub use outcome::{Absent, Checks};
pub(crate) use outcome::{Outcome, only};
pub(crate) use rule::Decides;
pub use rule::Rule;
pub(crate) use subject::{CLASS, NOTHING};
pub use subject::{Need, Subject, Ways};
pub(crate) use table::checks;

use crate::source::{labelled, printed};

printed!(Subject: label);

labelled! {
    /// How a check came out, the worst last.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
    pub enum Verdict {
        /// The high demand is within the limit.
        Within = "within",
        /// The likely demand is within the limit, and the high one is past it by no more than its [`Rule`] allows; or
        /// something else asks for care: see [`Care`].
        WithCare = "with care",
        /// Something needed to judge is unknown, or an equation was used outside its range.
        NotDecided = "not decided",
        /// The likely demand is over the limit, or the high one by more than its [`Rule`] allows.
        Over = "over",
    }

    /// Why a check asks for care.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
    pub enum Care {
        /// The high demand is past the limit by less than its rule allows.
        Narrow = "narrow",
        /// It rests on plant or workmanship that the contractor has to bring.
        Condition = "on condition",
        /// A habit is not kept.
        Screen = "screen",
        /// It rests on something that the file does not tell.
        Data = "short of data",
        /// What its note says.
        Noted = "see its note",
    }

    /// Which side of the limit is safe.
    #[derive(Debug, Clone, Copy, PartialEq, Eq)]
    pub enum Sense {
        /// The demand must not exceed the limit.
        AtMost = "at most",
        /// The supply must not fall below the need.
        AtLeast = "at least",
    }
}

impl Sense {
    /// What stands between a demand and its limit.
    #[cfg(feature = "report")]
    pub(crate) const fn of(self) -> &'static str {
        match self {
            Self::AtMost => "of",
            Self::AtLeast => "against at least",
        }
    }
}
