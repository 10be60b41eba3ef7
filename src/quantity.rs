//! The physical quantities of this crate, and the one door between quantities and text.
//!
//! Quantities are `uom` types holding SI values. The crate `uom` is used as a type system only: reading and
//! printing go through [`mod@unit`], whose factors are exact products of the definitions (foot 0.3048 m, pound
//! 0.453 592 37 kg, standard gravity 9.806 65 m/s²).

pub mod parse;
pub mod shown;
pub mod unit;
mod writing;

pub use parse::{FromText, QuantityError};
pub use shown::{Role, Shown, UnitSystem};
pub use uom::si::f64::{
    Angle, Area, DynamicViscosity, Force, Length, LinearMassDensity, Mass, MassDensity, Pressure, Ratio,
    ThermodynamicTemperature, Time, Velocity, Volume, VolumeRate,
};

use core::marker::PhantomData;
use uom::si::{Dimension, ISQ, Quantity, SI};
use uom::typenum::{Integer, N1, N2, P1, P2, P4, Z0};

/// A quantity held in SI base units, of any dimension.
pub type Si<D> = Quantity<D, SI<f64>, f64>;
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
/// The exponents of length, mass, time and temperature, and a mark that keeps angles and thermodynamic
/// temperatures apart from plain numbers and temperature differences.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dim {
    /// Exponent of length.
    pub length: i8,
    /// Exponent of mass.
    pub mass: i8,
    /// Exponent of time.
    pub time: i8,
    /// Exponent of thermodynamic temperature.
    pub temperature: i8,
    /// 1 for a plane angle, which is not a plain number here.
    pub angle: i8,
}

impl Dim {
    /// The dimension of a plain number.
    pub const NONE: Self = Self { length: 0, mass: 0, time: 0, temperature: 0, angle: 0 };

    /// Whether both are the same, at compile time.
    #[must_use]
    pub const fn is(self, other: Self) -> bool {
        self.length == other.length
            && self.mass == other.mass
            && self.time == other.time
            && self.temperature == other.temperature
            && self.angle == other.angle
    }

    /// Exponents in the order length, mass, time, temperature.
    #[must_use]
    pub const fn of(length: i8, mass: i8, time: i8, temperature: i8) -> Self {
        Self { length, mass, time, temperature, angle: 0 }
    }

    /// This dimension times `other` to the power `exponent`; `None` when an exponent leaves the range of `i8`.
    #[must_use]
    pub fn times(self, other: Self, exponent: i8) -> Option<Self> {
        let one = |own: i8, its: i8| its.checked_mul(exponent).and_then(|more| own.checked_add(more));
        Some(Self {
            length: one(self.length, other.length)?,
            mass: one(self.mass, other.mass)?,
            time: one(self.time, other.time)?,
            temperature: one(self.temperature, other.temperature)?,
            angle: one(self.angle, other.angle)?,
        })
    }
}

/// What `uom` calls the kind of a quantity, as far as this crate tells kinds apart.
pub trait KindTag {
    /// 1 for a plane angle.
    const ANGLE: i8 = 0;
    /// True for temperatures on a scale with an offset (°C, °F).
    const ABSOLUTE: bool = false;
}
impl KindTag for dyn uom::Kind {}
impl KindTag for dyn uom::si::marker::AngleKind {
    const ANGLE: i8 = 1;
}
impl KindTag for dyn uom::si::marker::TemperatureKind {
    const ABSOLUTE: bool = true;
}

/// A quantity whose dimension this crate can read and print.
pub trait Measure: Copy {
    /// The dimension.
    const DIM: Dim;
    /// True for temperatures on a scale with an offset.
    const ABSOLUTE: bool;
    /// The value in SI base units.
    fn si(self) -> f64;
    /// The quantity of that many SI base units.
    fn from_si(value: f64) -> Self;
}

impl<D> Measure for Si<D>
where
    D: Dimension + ?Sized,
    D::Kind: KindTag,
{
    const DIM: Dim = Dim {
        length: D::L::I8,
        mass: D::M::I8,
        time: D::T::I8,
        temperature: D::Th::I8,
        angle: <D::Kind as KindTag>::ANGLE,
    };
    const ABSOLUTE: bool = <D::Kind as KindTag>::ABSOLUTE;

    fn si(self) -> f64 {
        self.value
    }

    fn from_si(value: f64) -> Self {
        Self { dimension: PhantomData, units: PhantomData, value }
    }
}

/// Low, likely and high value of one thing.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
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
    #[must_use]
    pub const fn same(value: T) -> Self {
        Self { low: value, likely: value, high: value }
    }

    /// Each level through `change`.
    #[must_use]
    pub fn map<U>(self, mut change: impl FnMut(T) -> U) -> Band<U> {
        Band { low: change(self.low), likely: change(self.likely), high: change(self.high) }
    }

    /// Level by level with another band.
    #[must_use]
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
    #[must_use]
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
