//! A demand against a limit: typed at the door, erased inside.

mod levels;
mod made;
mod outcome;
mod rests_on;
mod rule;
mod subject;
mod table;

pub use levels::{Levels, Limit};
pub use made::{Case, Check, at_least, at_most, rated, required};
pub use outcome::{Absent, Checks};
pub(crate) use outcome::{Outcome, only};
pub(crate) use rule::Decides;
pub use rule::Rule;
pub(crate) use subject::NOTHING;
pub use subject::{Need, Subject, Ways};
pub(crate) use table::checks;

use crate::source::printed;

printed!(Verdict: label, Care: label, Sense: label, Subject: label);

/// How a check came out, the worst last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// The high demand is within the limit.
    Within,
    /// The likely demand is within the limit, and the high one is past it by no more than its [`Rule`] allows; or
    /// something else asks for care: see [`Care`].
    WithCare,
    /// Something needed to judge is unknown, or an equation was used outside its range.
    NotDecided,
    /// The likely demand is over the limit, or the high one by more than its [`Rule`] allows.
    Over,
}

impl Verdict {
    /// As printed and as written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Within => "within",
            Self::WithCare => "with care",
            Self::NotDecided => "not decided",
            Self::Over => "over",
        }
    }
}

/// Why a check asks for care.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Care {
    /// The high demand is past the limit by less than its rule allows.
    Narrow,
    /// It rests on plant or workmanship that the contractor has to bring.
    Condition,
    /// A habit is not kept.
    Screen,
    /// It rests on something that the file does not tell.
    Data,
    /// What its note says.
    Noted,
}

impl Care {
    /// As printed and as written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Narrow => "narrow",
            Self::Condition => "on condition",
            Self::Screen => "screen",
            Self::Data => "short of data",
            Self::Noted => "see its note",
        }
    }
}

/// Which side of the limit is safe.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The demand must not exceed the limit.
    AtMost,
    /// The supply must not fall below the need.
    AtLeast,
}

impl Sense {
    /// As written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::AtMost => "at most",
            Self::AtLeast => "at least",
        }
    }

    /// What stands between a demand and its limit.
    #[cfg(feature = "report")]
    pub(crate) const fn of(self) -> &'static str {
        match self {
            Self::AtMost => "of",
            Self::AtLeast => "against at least",
        }
    }
}
