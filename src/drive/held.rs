//! Whether fluid holds a bore open in ground that runs: one rule, for the bore round a stem and for the reamed one.

use crate::quantity::{Length, Pressure};
use crate::source::Cited;

/// What fluid has to be over water, or over the crown where that is dry.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FluidRule {
    /// Over the pressure of the water at the crown.
    pub(crate) over_water: Cited<Pressure>,
    /// Over a crown without water.
    pub(crate) over_crown: Cited<Length>,
    /// The same where both pits are kept full at all times.
    pub(crate) over_crown_least: Length,
}

/// How fluid holds a bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Held {
    /// It stands no higher than the water, or hardly over a crown that is dry.
    Not,
    /// It stands over the water, or over a crown that is dry, by less than it ought to.
    Barely,
    /// It holds it.
    Well,
}

impl FluidRule {
    /// Fluid and water over the crown, as they stand and as they press.
    pub(crate) fn holds(&self, (fluid, water): (Length, Length), (pressure, pore): (Pressure, Pressure)) -> Held {
        let dry = Length::default();
        if water <= dry {
            return if fluid >= self.over_crown.value {
                Held::Well
            } else if fluid >= self.over_crown_least {
                Held::Barely
            } else {
                Held::Not
            };
        }
        if fluid <= water {
            Held::Not
        } else if pressure < pore + self.over_water.value {
            Held::Barely
        } else {
            Held::Well
        }
    }
}
