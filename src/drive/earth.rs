//! The soil over a bore: what the file tells of it, and both ends by class of what it does not.

use crate::quantity::{Angle, Length, Pressure, Ratio, UnitWeight};
use crate::source::Cited;

/// The least and the most that something may be; alike where the file tells it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Ends<T> {
    /// The least.
    pub low: T,
    /// The most.
    pub high: T,
}

impl<T> Ends<T> {
    /// By the rows of both.
    pub(crate) fn read<E>(
        [low, high]: [&'static str; 2],
        row: impl Fn(&'static str) -> Result<Cited<T>, E>,
    ) -> Result<Ends<Cited<T>>, E> {
        Ok(Ends { low: row(low)?, high: row(high)? })
    }

    /// The values of both, by their rows.
    pub(crate) fn values<E>(
        rows: [&'static str; 2],
        row: impl Fn(&'static str) -> Result<Cited<T>, E>,
    ) -> Result<Self, E> {
        let rows = Self::read(rows, row)?;
        Ok(Self { low: rows.low.value, high: rows.high.value })
    }

    /// Of both by reference.
    pub(crate) fn each<U>(&self, of: impl Fn(&T) -> U) -> Ends<U> {
        Ends { low: of(&self.low), high: of(&self.high) }
    }
}

impl Ends<Ratio> {
    /// The ends of a row, cited as its high one.
    pub(crate) fn spanned((low, high): (Ratio, Cited<Ratio>)) -> Cited<Self> {
        high.map(|high| Self { low, high })
    }
}

impl<T: Copy> Ends<T> {
    pub(crate) const fn same(one: T) -> Self {
        Self { low: one, high: one }
    }

    pub(crate) fn map<U>(self, mut change: impl FnMut(T) -> U) -> Ends<U> {
        Ends { low: change(self.low), high: change(self.high) }
    }

    pub(crate) fn with<U, V>(self, other: Ends<U>, join: impl Fn(T, U) -> V) -> Ends<V> {
        Ends { low: join(self.low, other.low), high: join(self.high, other.high) }
    }
}

/// The soil round the bore in a stretch. What a check takes of it is the end that is adverse to it, and the other to see
/// whether the check hangs on it.
#[derive(Debug, Clone)]
pub(crate) struct Earth {
    /// Whether the file tells the soil of the stretch.
    pub(crate) told: bool,
    /// As heavy as it may be, with the friction that a load counts on.
    pub(crate) heavy: Soil,
    /// As light as it may be, with the friction that a resistance counts on.
    pub(crate) light: Soil,
    /// Undrained strength of the clay in the face, where there is some.
    pub(crate) strength: Option<Strength>,
    /// Shear modulus at the bore; none of ground that may have any.
    pub(crate) shear_modulus: Option<Ends<Pressure>>,
    /// Modulus with which the ground holds a ring, before anything is known of what stands between.
    pub(crate) native_modulus: Ends<Pressure>,
}

impl Earth {
    /// The soil as a resistance, with its clay at its weakest.
    pub(crate) fn resisting(&self) -> Soil {
        let undrained = self.strength.map(|strength| Undrained { strength: strength.ends.low, modulus: None });
        Soil { undrained: self.light.undrained.or(undrained), ..self.light.clone() }
    }

    /// The soil as a resistance at its best, with its clay at its strongest; none of soil that the file tells.
    pub(crate) fn resisting_at_best(&self) -> Option<Soil> {
        let undrained = self.strength.map(|strength| Undrained { strength: strength.ends.high, modulus: None });
        (!self.told).then(|| Soil { undrained, ..self.heavy.clone() })
    }
}

/// Undrained strength of clay.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Strength {
    /// Weakest where the strength holds, strongest where it resists.
    pub(crate) ends: Ends<Pressure>,
    /// What tells it.
    pub(crate) by: StrengthBy,
}

/// What tells a strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum StrengthBy {
    /// The file.
    File,
    /// The blow count.
    Blows,
    /// The blow counts of the class: the file tells none.
    Class,
    /// The blow count of the weaker of two clays: the file's own strength is more than that one can have.
    OtherClay,
}

impl StrengthBy {
    /// The note of a check, by what tells its strength.
    pub(crate) const fn note(self, [file, blows, other]: [&'static str; 3]) -> &'static str {
        match self {
            Self::File => file,
            Self::Blows | Self::Class => blows,
            Self::OtherClay => other,
        }
    }
}

/// Soil above a stretch of pipe.
#[derive(Debug, Clone)]
pub(crate) struct Soil {
    /// From the surface down; never empty, and the last one holds the pipe.
    pub(crate) layers: Vec<Layer>,
    pub(crate) surcharge: Pressure,
    /// Cohesion that the file lets the earth load count on.
    pub(crate) cohesion: Option<Pressure>,
    /// Shear modulus at the pipe, of the file.
    pub(crate) shear_modulus: Option<Pressure>,
    /// Undrained clay at the pipe, of the file.
    pub(crate) undrained: Option<Undrained>,
}

/// A layer of soil. Its buoyant unit weight is the saturated one less that of water.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Layer {
    /// Depth of its lower side; infinite for the ground that holds the pipe.
    pub(crate) bottom: Length,
    pub(crate) moist: UnitWeight,
    pub(crate) saturated: UnitWeight,
    pub(crate) friction_angle: Angle,
}

/// Clay loaded faster than it drains.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Undrained {
    pub(crate) strength: Pressure,
    pub(crate) modulus: Option<Pressure>,
}

/// Soil and the water in it, at one place.
#[derive(Debug, Clone, Copy)]
pub struct Column<'a> {
    pub(crate) soil: &'a Soil,
    /// Depth of the water table, if there is one.
    pub(crate) table: Option<Length>,
}

impl Soil {
    /// The ground that holds the pipe.
    pub(crate) fn at_pipe(&self) -> Option<&Layer> {
        self.layers.last()
    }
}
