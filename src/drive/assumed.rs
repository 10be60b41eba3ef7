//! What the file does not give and is taken for it, and what it gives beyond what is usual: each such value is told with
//! every scheme that it concerns.

use crate::quantity::{Band, Measure, Role, Shown, UnitSystem};
use crate::source::Origin;

/// What an assumed value concerns.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Concern {
    /// The drive, whichever pipe is put in and how.
    Drive,
    /// The pilot stem, which goes before every pipe that is jacked and pulls every other.
    Stem,
    /// The ground, the same for every pipe.
    Ground,
    /// Line and grade, which a gravity sewer has to keep.
    Grade,
    /// A pipe that is jacked: its face and its friction.
    Jacking,
    /// A pipe that is pulled.
    Pull,
    /// One pipe, by its position among the candidates.
    Pipe(usize),
}

/// A value that the file does not give.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Assumed {
    /// What it concerns.
    pub concern: Concern,
    /// Path of the field that would give it.
    pub field: String,
    /// What was taken.
    pub value: AssumedValue,
    /// Where it comes from.
    pub origin: Origin,
    /// How many more stretches of ground it was taken for.
    pub alike: usize,
}

/// What was taken for a value that the file does not give.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum AssumedValue {
    /// One quantity.
    One(Shown),
    /// Low, likely and high.
    Band(Band<Shown>),
    /// Least and greatest.
    Range(Shown, Shown),
    /// Several quantities.
    List(Vec<Shown>),
    /// A word.
    Word(String),
}

impl AssumedValue {
    /// Least and greatest of a quantity, or the one that both are.
    pub(crate) fn range<Q: Measure>(low: Q, high: Q, role: Role) -> Self {
        match [low, high].map(|end| Shown::of(end, role)) {
            [low, high] if low == high => Self::One(low),
            [low, high] => Self::Range(low, high),
        }
    }

    /// Low, likely and high of a quantity.
    pub(crate) fn band<Q: Measure>(band: Band<Q>, role: Role) -> Self {
        Self::Band(band.map(|level| Shown::of(level, role)))
    }

    /// As printed.
    #[must_use]
    pub fn text(&self, system: UnitSystem) -> String {
        let text = |shown: &Shown| shown.display(system).to_string();
        match self {
            Self::One(shown) => text(shown),
            Self::Band(band) => format!("{} / {} / {}", text(&band.low), text(&band.likely), text(&band.high)),
            Self::Range(least, greatest) => format!("{} to {}", text(least), text(greatest)),
            Self::List(list) => list.iter().map(text).collect::<Vec<_>>().join(", "),
            Self::Word(word) => word.clone(),
        }
    }
}

/// A value that is possible and seldom met.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Unusual {
    /// What it concerns, and so which schemes fit with care at best.
    pub(crate) concern: Concern,
    /// Path of its field.
    pub(crate) field: String,
    /// The value.
    pub(crate) value: Shown,
    /// Least and greatest of what is usual.
    pub(crate) usual: [Shown; 2],
}

impl Unusual {
    /// As printed.
    #[must_use]
    pub fn text(&self, system: UnitSystem) -> String {
        let [least, most] = self.usual.map(|shown| shown.display(system));
        let (field, value) = (&self.field, self.value.display(system));
        format!("{field}: {value} is outside the usual {least} to {most}; what depends on it fits with care at best.")
    }
}
