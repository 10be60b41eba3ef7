//! When people work, what is left standing for more than a shift, and how much harder it moves on.

use super::Stretch;
use super::looked_up::readable;
use crate::handbook::GroundClass;
use crate::quantity::{Band, Force, Length, Ratio, Time};
use crate::source::Cited;

/// Times the friction of what stood, likely and high.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Restart {
    pub(crate) likely: Ratio,
    pub(crate) high: Ratio,
}

impl Restart {
    /// The friction as what stood begins to move.
    #[inline]
    pub(crate) fn of(self, friction: Band<Force>) -> Band<Force> {
        Band { low: friction.low, likely: friction.likely * self.likely, high: friction.high * self.high }
    }

    fn or_harder(self, other: Self) -> Self {
        Self { likely: self.likely.max(other.likely), high: self.high.max(other.high) }
    }
}

/// The same by ground.
#[derive(Debug, Clone, Copy)]
pub(crate) struct RestartByGround {
    pub(crate) clay: Restart,
    pub(crate) granular: Restart,
    pub(crate) rock: Restart,
}

impl RestartByGround {
    /// Ground that no row tells of holds as clay does.
    fn in_class(&self, class: GroundClass) -> Restart {
        match class {
            GroundClass::LooseSand | GroundClass::MediumToDenseSand | GroundClass::Gravel => self.granular,
            GroundClass::WeakRock | GroundClass::HardRock => self.rock,
            GroundClass::SoftClay
            | GroundClass::FirmToVeryStiffClay
            | GroundClass::HardClay
            | GroundClass::Silt
            | GroundClass::Fill
            | GroundClass::Peat
            | GroundClass::Unknown => self.clay,
        }
    }

    /// In a stretch; of a mixed face the harder.
    pub(crate) fn along(&self, stretch: &Stretch) -> Restart {
        let own = self.in_class(stretch.class);
        stretch.mixed_with.map_or(own, |other| own.or_harder(self.in_class(other)))
    }
}

/// Stops that the file plans, and what any stop does.
#[derive(Debug, Clone)]
pub(crate) struct Rests {
    /// In order.
    pub(crate) planned: Vec<Length>,
    pub(crate) stem: Restart,
    /// A casing is not lubricated.
    pub(crate) casing: RestartByGround,
    pub(crate) pipe: RestartByGround,
    /// Times the high friction after one breakdown, where work goes on round the clock.
    #[cfg_attr(not(feature = "report"), expect(dead_code, reason = "told in the report alone"))]
    pub(crate) breakdown: Cited<Ratio>,
    /// Least advance in a shift where no rate is known: of the pilot, and of what is pushed behind it.
    pub(crate) slow: (Cited<Length>, Cited<Length>),
}

impl Rests {
    /// A day that ends where a stop is gets as far.
    pub(crate) const ROUNDING: f64 = 1e-9;

    /// Whether the stops of the file are all that there are: none is further from the next than a day gets.
    pub(crate) fn are_all(&self, day: Length, length: Length) -> bool {
        let mut from = Length::default();
        let mut reached = |to: Length| to - core::mem::replace(&mut from, to) <= day * (1.0 + Self::ROUNDING);
        !self.planned.is_empty() && self.planned.iter().copied().all(&mut reached) && reached(length)
    }

    /// Of a pipe along the whole drive, the hardest.
    pub(crate) fn of_pipe(&self, stretches: &[Stretch]) -> Restart {
        let along = stretches.iter().map(|stretch| self.pipe.along(stretch));
        along.reduce(Restart::or_harder).unwrap_or(self.pipe.clay)
    }
}

/// When people work.
#[derive(Debug, Clone, Copy)]
pub struct Work {
    pub(crate) shift: Cited<Time>,
    pub(crate) shifts_a_day: Cited<Ratio>,
    /// Whether a stage is worked through to its end.
    pub(crate) round_the_clock: bool,
}

readable! {
    Work:
    /// Length of a shift.
    shift: Time = |it| it.shift.value;
    /// Shifts between two nights; `None` where the work goes through them.
    shifts_between_nights: Option<Cited<Ratio>> = |it| (!it.round_the_clock).then_some(it.shifts_a_day);
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
