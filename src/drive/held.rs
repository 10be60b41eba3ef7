//! Whether fluid holds a bore open in ground that runs: one rule, for the bore round a stem and for the reamed one.

use super::looked_up::looked_up;
use crate::quantity::{Length, Pressure};
use crate::source::Cited;

looked_up! {
    /// What fluid has to be over water, or over the crown where that is dry.
    FluidRule of |handbook| {
        /// Over the pressure of the water at the crown.
        over_water: Cited<Pressure> = handbook.pressure("bore.fluid_over_water")?,
        /// Over a crown without water.
        over_crown: Cited<Length> = handbook.length("bore.fluid_over_crown")?,
        /// The same where both pits are kept full at all times.
        over_crown_least: Length = handbook.length("bore.fluid_over_crown_least")?.value,
    }
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
