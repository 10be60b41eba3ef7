//! The physical quantities of this crate, and the one door between quantities and text.
//!
//! Quantities are `uom` types holding SI values. The crate `uom` is used as a type system only: reading and
//! printing go through [`mod@unit`], whose factors are exact products of the definitions (foot 0.3048 m, pound
//! 0.453 592 37 kg, standard gravity 9.806 65 m/s²).

mod measure;
pub mod parse;
mod short;
pub mod shown;
pub mod unit;
mod writing;

pub use measure::{Dim, KindTag, Measure, Si};
pub use parse::{FromText, Misread, QuantityError};
pub use short::*;
pub use shown::{Role, Shown};
pub use unit::UnitSystem;
pub use uom;
pub use uom::si::f64::{
    Angle, Area, DynamicViscosity, Force, Length, LinearMassDensity, Mass, MassDensity, Pressure, Ratio,
    ThermodynamicTemperature, Time, Velocity, Volume, VolumeRate,
};

use uom::si::ISQ;
use uom::typenum::{N1, N2, P1, P2, P4, Z0};

/// Weight per volume, force/length³ (not a mass density).
pub type UnitWeight = Si<ISQ<N2, P1, N2, Z0, Z0, Z0, Z0>>;
/// Force per length of pipe.
pub type LineLoad = Si<ISQ<Z0, P1, N2, Z0, Z0, Z0, Z0>>;
/// Second moment of area, length⁴.
pub type SecondMomentOfArea = Si<ISQ<P4, Z0, Z0, Z0, Z0, Z0, Z0>>;
/// Moment of a force about an axis.
pub type Torque = Si<ISQ<P2, P1, N2, Z0, Z0, Z0, Z0>>;
/// Change of length per length and temperature.
pub type ThermalExpansion = Si<ISQ<Z0, Z0, Z0, Z0, N1, Z0, Z0>>;

/// Low, likely and high value of one thing.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
#[must_use]
pub struct Band<T> {
    /// For comparison with measurements only; never used for capacity.
    pub low: T,
    /// The value used to rank.
    pub likely: T,
    /// The value a check must pass to be *within*.
    pub high: T,
}

impl<T: Copy> Band<T> {
    /// The same value three times.
    pub const fn same(value: T) -> Self {
        Self { low: value, likely: value, high: value }
    }

    /// Each level through `change`.
    #[inline]
    pub fn map<U>(self, mut change: impl FnMut(T) -> U) -> Band<U> {
        Band { low: change(self.low), likely: change(self.likely), high: change(self.high) }
    }

    /// Both of each level.
    #[inline]
    pub fn zip<U: Copy>(self, other: Band<U>) -> Band<(T, U)> {
        self.with(other, |one, other| (one, other))
    }

    /// Level by level with another band.
    #[inline]
    pub fn with<U: Copy, V>(self, other: Band<U>, mut join: impl FnMut(T, U) -> V) -> Band<V> {
        Band {
            low: join(self.low, other.low),
            likely: join(self.likely, other.likely),
            high: join(self.high, other.high),
        }
    }
}

impl<Q: Measure> Band<Q> {
    /// The band of what may be either of two: the lower low, the higher likely and high. The middle of the whole range
    /// would lie below the likely value of the harder one.
    pub fn or_harder(self, other: Self) -> Self {
        let lower = |one: Q, other: Q| Q::from_si(one.si().min(other.si()));
        let higher = |one: Q, other: Q| Q::from_si(one.si().max(other.si()));
        Self {
            low: lower(self.low, other.low),
            likely: higher(self.likely, other.likely),
            high: higher(self.high, other.high),
        }
    }
}
