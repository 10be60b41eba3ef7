//! What a quantity is to this crate: a value in SI base units and its dimension.

use core::marker::PhantomData;
use uom::si::{Dimension, Quantity, SI};
use uom::typenum::Integer;

/// A quantity held in SI base units, of any dimension.
pub type Si<D> = Quantity<D, SI<f64>, f64>;

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
