//! When people work: what stands over a night asks for more to move on.

use crate::quantity::{Ratio, Time};
use crate::source::Cited;

/// When people work.
#[derive(Debug, Clone, Copy)]
pub struct Work {
    pub(crate) shift: Cited<Time>,
    pub(crate) shifts_a_day: Cited<Ratio>,
    /// Whether a stage is worked through to its end.
    pub(crate) round_the_clock: bool,
}

impl Work {
    /// Length of a shift.
    #[must_use]
    pub const fn shift(&self) -> Time {
        self.shift.value
    }

    /// Shifts between two nights; `None` where the work goes through them.
    #[must_use]
    pub fn shifts_between_nights(&self) -> Option<Cited<Ratio>> {
        (!self.round_the_clock).then_some(self.shifts_a_day)
    }
}

/// What is done where the rig cannot push on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[non_exhaustive]
pub enum IfStalled {
    /// A pit is dug over the head.
    #[default]
    RescuePit,
    /// Jacking stations are put to work.
    Stations,
    /// A second lubrication frees the string.
    SecondLubrication,
}
