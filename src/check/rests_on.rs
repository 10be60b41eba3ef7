//! How far what enters a check can be traced, beside its limit: the weakest mark of the values of the tables.

use super::{Check, Subject};
use crate::handbook::Handbook;
use crate::source::Mark;

impl Subject {
    /// The weakest mark of the values of the tables that enter it, whatever of them the file replaces. A test moves every
    /// value of a weaker mark and sees what moves.
    #[must_use]
    pub const fn rests_on(self) -> Mark {
        match self {
            // What the file tells, against what it tells, and ranges that are printed.
            Self::StemTorque
            | Self::AugerTorque
            | Self::TailGrip
            | Self::PitLength
            | Self::PitWidth
            | Self::JackStroke => Mark::Published,
            Self::FlowCapacity | Self::LeastSlope | Self::SelfCleaning | Self::LeastWall => Mark::Memory,
            Self::GradeFloor | Self::ServiceClearance | Self::Diameter | Self::Length => Mark::CommonPractice,
            _ => Mark::Judgement,
        }
    }
}

impl Check {
    /// The weakest mark of all that enters it: its limit, the factor in it, and what else is taken from the tables.
    #[must_use]
    pub fn mark(&self, handbook: &Handbook) -> Mark {
        let of = |origin| handbook.reference(origin).mark;
        let limit = self.factor.map_or(of(self.basis), |factor| of(self.basis).weaker(of(factor)));
        limit.weaker(self.subject.rests_on())
    }
}
