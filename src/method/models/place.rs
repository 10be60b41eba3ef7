//! What a model is asked, and what it answers.

use super::along;
use crate::conditions::VerticalStress;
use crate::drive::{Column, Drive, Pipe, Soil, Stretch};
use crate::handbook::{GroundClass, HandbookError, Lubrication};
use crate::law::Doubted;
use crate::quantity::{Band, Length, LineLoad, Pressure, Ratio};
use crate::source::labelled;
use core::iter;

labelled! {
    /// What part of its stretch a model speaks of.
    #[derive(Debug, Clone, Copy, PartialEq, Eq)]
    #[non_exhaustive]
    pub enum Over {
        /// The exact mean along the stretch.
        Mean = "mean over the stretch",
        /// The deepest place, on the safe side.
        Deepest = "deepest place",
        /// Any place: depth is not in the model.
        Any = "any place, depth is not in it",
    }
}

/// Unit friction by one model in one stretch.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct FrictionModel {
    /// Name of the set.
    pub name: &'static str,
    /// What part of the stretch it speaks of.
    pub over: Over,
    /// Unit friction.
    pub friction: Band<Pressure>,
    /// False where a law of it was used outside its range.
    pub in_range: bool,
    /// What a reader must know.
    pub note: &'static str,
}

impl FrictionModel {
    pub(super) fn of(name: &'static str, over: Over, friction: Doubted<Band<Pressure>>, note: &'static str) -> Self {
        Self { name, over, in_range: friction.doubt().is_none(), friction: friction.in_spite_of_doubt(), note }
    }
}

/// What the soil of one stretch says.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct SoilView {
    /// Position of the stretch.
    pub stretch: usize,
    /// Stress at the crown of the pipe in the deepest place.
    pub at_crown: VerticalStress,
    /// The models.
    pub models: Vec<FrictionModel>,
    /// What a reader must know of all of them, and which could not be worked out.
    pub notes: Vec<&'static str>,
}

/// Where a model is asked.
pub(super) struct Place<'a> {
    pub(super) drive: &'a Drive,
    pub(super) ground: &'a Stretch,
    pub(super) soil: &'a Soil,
    pub(super) pipe: &'a Pipe,
    pub(super) diameter: Length,
    /// Depth of the crown along the stretch.
    pub(super) pieces: Vec<along::Piece>,
    /// Weight of the pipe, where it is known.
    pub(super) weight: Option<LineLoad>,
    pub(super) coefficients: &'a Coefficients,
}

impl Place<'_> {
    /// The soil with its water.
    pub(super) fn at(&self) -> Column<'_> {
        Column { soil: self.soil, table: self.ground.way.table }
    }

    /// Whether a ground of the face is granular.
    pub(super) fn is_granular(&self) -> bool {
        self.holds(GroundClass::is_granular)
    }

    /// Whether a ground of the face is of a kind.
    pub(super) fn holds(&self, kind: impl Fn(GroundClass) -> bool) -> bool {
        self.classes().any(kind)
    }

    /// The grounds of the face: two in a mixed one.
    pub(super) fn classes(&self) -> impl Iterator<Item = GroundClass> {
        iter::once(self.ground.class).chain(self.ground.mixed_with)
    }

    /// Diameter that is cut, where it is wider than the pipe. A bore by rule is that of a pull.
    pub(super) fn cut(&self) -> Option<Length> {
        let bore = if self.pipe.jacked.is_some() { self.pipe.cut() } else { self.pipe.bore.value };
        (bore > self.diameter).then_some(bore)
    }

    pub(super) fn is_lubricated(&self) -> bool {
        self.drive.lubrication != Lubrication::None
    }

    /// Water stands over the invert in some place.
    pub(super) fn is_wet(&self) -> bool {
        self.ground.way.is_wet()
    }

    /// In some place it does not.
    pub(super) fn is_partly_dry(&self) -> bool {
        self.ground.way.table.is_none_or(|table| table >= self.ground.way.shallowest)
    }
}

/// Coefficients of the sets.
pub(super) struct Coefficients {
    pub(super) fitted: Band<Ratio>,
    pub(super) floor: (Pressure, Pressure),
    pub(super) lateral: Ratio,
    /// Added to the diameter before the width of the Japanese column is worked out.
    pub(super) japanese_allowance: Length,
    /// Side over vertical pressure, and wall friction angle over friction angle, of the German column.
    pub(super) german: (Ratio, Ratio),
}

impl Coefficients {
    pub(super) fn of(drive: &Drive) -> Result<Self, HandbookError> {
        let ratio = |key| drive.handbook.ratio(key).map(|ratio| ratio.value);
        let pressure = |key| drive.handbook.pressure(key).map(|pressure| pressure.value);
        let sets = drive.handbook.friction_model_set()?;
        let set = |key| sets.get(key).map(|row| row.value);
        let allowance = set("japan").and_then(|row| row.width_allowance.as_ref());
        let german = set("atv_a_161").and_then(|row| row.lateral.as_ref().zip(row.wall_over_phi.as_ref()));
        let german = german.ok_or_else(|| sets.lacks("atv_a_161"))?;
        Ok(Self {
            japanese_allowance: allowance.ok_or_else(|| sets.lacks("japan"))?.value,
            german: (german.0.value, german.1.value),
            fitted: Band {
                low: ratio("model.fitted_low")?,
                likely: ratio("model.fitted_likely")?,
                high: ratio("model.fitted_high")?,
            },
            floor: (pressure("friction.floor_likely")?, pressure("friction.floor_high")?),
            lateral: ratio("model.lateral")?,
        })
    }
}
