//! Metres a shift, shifts of the work beside the bore, and prices.

use super::looked_up::looked_up;
use crate::quantity::{Band, Length, Ratio, Time, Volume};
use crate::source::{Cited, Origin};

/// Metres a shift, shifts of the work beside the bore, and prices.
#[derive(Debug, Clone)]
pub(crate) struct Pace {
    pub(crate) pilot: Option<Rate>,
    pub(crate) casing: Option<Rate>,
    pub(crate) reaming: Option<Rate>,
    pub(crate) jacking: Option<Rate>,
    /// Pipe that pushes out a casing.
    pub(crate) behind_casing: Option<Rate>,
    pub(crate) pullback: Option<Rate>,
    /// True where the rate of the pipe in clay holds the pilot too.
    pub(crate) pilot_in_pipe: bool,
    /// Rates of a guided bore in clay, which go before those above for pipe of their sizes.
    pub(crate) clay: ClayPace,
    /// Share of the clear rate that is planned with: low and high.
    pub(crate) planned: (Ratio, Cited<Ratio>),
    pub(crate) shift_length: Cited<Time>,
    pub(crate) shifts: WorkShifts,
    pub(crate) fusion: Vec<FusionPace>,
    /// Length of one pipe of a string.
    pub(crate) stick: Cited<Length>,
    pub(crate) programme: Option<Cited<Ratio>>,
    pub(crate) prices: Prices,
}

looked_up! {
    /// Shifts of the work beside the bore.
    WorkShifts: Copy of |handbook, both_pits: Cited<Band<Ratio>>| {
        /// Both pits.
        pits: Cited<Band<Ratio>> = both_pits,
        set_up: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("set_up")?,
        ramp: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("ramp")?,
        /// One joint.
        weld: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("weld")?,
        restrained_joint: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("restrained_joint")?,
        grouting: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("grouting")?,
        recovery: Cited<Band<Ratio>> = handbook.stage_shifts()?.levels("recovery")?,
    }
}

/// Fused joints a shift, up to a size of pipe.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FusionPace {
    pub(crate) size_to: Length,
    pub(crate) low: Ratio,
    pub(crate) high: Ratio,
    pub(crate) origin: Origin,
}

/// Prices in the user's money; none is ever assumed.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct Prices {
    pub(crate) shift: Option<Cited<Ratio>>,
    pub(crate) setup: Option<Cited<Ratio>>,
    pub(crate) pit: Option<Cited<Ratio>>,
    pub(crate) spoil: Option<Priced<Volume>>,
    pub(crate) grout: Option<Priced<Volume>>,
    /// Whether the file prices the pipes it lists.
    pub(crate) pipes: bool,
    pub(crate) budget: Option<Cited<Ratio>>,
}

/// Price of an amount.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Priced<Q> {
    pub(crate) price: Cited<Ratio>,
    pub(crate) per: Q,
}

/// Recalled rates of a guided bore in clay, where the file gives none and clears the soil by auger.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct ClayPace {
    pub(crate) pilot: Option<SizedRate>,
    pub(crate) jacking: Option<SizedRate>,
}

/// A rate for some sizes of pipe.
#[derive(Debug, Clone, Copy)]
pub(crate) struct SizedRate {
    pub(crate) sizes: (Length, Length),
    pub(crate) rate: Rate,
}

impl SizedRate {
    /// The rate, for pipe of a size that it is for.
    pub(crate) fn of(&self, size: Length) -> Option<Rate> {
        (self.sizes.0 <= size && size <= self.sizes.1).then_some(self.rate)
    }
}

/// Length put in a shift.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Rate {
    pub(crate) low: Length,
    pub(crate) high: Length,
    pub(crate) origin: Origin,
}
