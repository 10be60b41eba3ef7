//! Unit friction by published models, shown beside the band and never used for capacity: in the measured drives no
//! pressure explains any of the scatter, and dividing by one widens it. Each model is a named set; the coefficients
//! belong to the set and to no other. A model that rests on depth gives the exact mean over its stretch; one that cannot
//! stands for the deepest place, and says so.

mod along;
mod clay;
mod code;
mod silo;
mod total;

pub use total::{ModelForce, model_forces};

use crate::conditions::{VerticalStress, vertical_stress};
use crate::drive::{Drive, Pipe, Soil, Stretch};
use crate::handbook::{GroundClass, HandbookError, Lubrication};
use crate::law::{Calc, Doubted, Silent};
use crate::quantity::{Band, Length, LineLoad, Pressure, Ratio};
use core::iter;

/// What part of its stretch a model speaks of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Over {
    /// The exact mean along the stretch.
    Mean,
    /// The deepest place, on the safe side.
    Deepest,
    /// Any place: depth is not in the model.
    Any,
}

impl Over {
    /// In words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Mean => "mean over the stretch",
            Self::Deepest => "deepest place",
            Self::Any => "any place, depth is not in it",
        }
    }
}

/// Unit friction by one model in one stretch.
#[derive(Debug, Clone, PartialEq)]
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
    fn of(name: &'static str, over: Over, friction: Doubted<Band<Pressure>>, note: &'static str) -> Self {
        Self { name, over, in_range: friction.doubt().is_none(), friction: friction.in_spite_of_doubt(), note }
    }
}

/// What the soil of one stretch says.
#[derive(Debug, Clone, PartialEq)]
pub struct SoilView {
    /// Position of the stretch.
    pub stretch: usize,
    /// Stress at the crown of the pipe in the deepest place; `None` below water without a saturated unit weight.
    pub at_crown: Option<VerticalStress>,
    /// The models.
    pub models: Vec<FrictionModel>,
    /// What a reader must know of all of them, and which could not be worked out.
    pub notes: Vec<&'static str>,
}

/// The models of every stretch whose soil the file tells.
///
/// # Errors
/// If the table of coefficients is malformed or lacks a row.
pub fn friction_models(drive: &Drive, pipe: &Pipe) -> Result<Vec<SoilView>, HandbookError> {
    let coefficients = Coefficients::of(drive)?;
    let mut views = Vec::new();
    for (stretch, ground) in drive.stretches.iter().enumerate() {
        let Some(soil) = &ground.soil else { continue };
        let diameter = pipe.outside_diameter.value;
        let crown = (soil.depths.1 - diameter).max(Length::default());
        let pieces = along::pieces(soil, diameter);
        let weight = pipe.jacked_weight();
        let place = Place { drive, ground, soil, pipe, diameter, pieces, weight, coefficients: &coefficients };
        let calc = &mut Calc::new(Silent);
        let (mut models, mut notes) = (Vec::new(), Vec::new());
        notes.extend(ground.mixed_with.map(|_| MIXED));
        silo::models(calc, &place, &mut models);
        clay::models(calc, &place, &mut models, &mut notes)?;
        code::models(&place, &mut models, &mut notes)?;
        views.push(SoilView { stretch, at_crown: vertical_stress(calc, soil, crown), models, notes });
    }
    Ok(views)
}

/// Said of a mixed face.
const MIXED: &str = "a mixed face: the models of both its grounds are shown, each with the one soil that the file gives \
                     for the stretch";

const fn is_granular(class: GroundClass) -> bool {
    matches!(class, GroundClass::LooseSand | GroundClass::MediumToDenseSand | GroundClass::Gravel)
}

/// Where a model is asked.
struct Place<'a> {
    drive: &'a Drive,
    ground: &'a Stretch,
    soil: &'a Soil,
    pipe: &'a Pipe,
    diameter: Length,
    /// Depth of the crown along the stretch.
    pieces: Vec<along::Piece>,
    /// Weight of the pipe, where it is known.
    weight: Option<LineLoad>,
    coefficients: &'a Coefficients,
}

impl Place<'_> {
    /// Whether a ground of the face is granular.
    fn is_granular(&self) -> bool {
        self.holds(is_granular)
    }

    /// Whether a ground of the face is of a kind.
    fn holds(&self, kind: impl Fn(GroundClass) -> bool) -> bool {
        self.classes().any(kind)
    }

    /// The grounds of the face: two in a mixed one.
    fn classes(&self) -> impl Iterator<Item = GroundClass> {
        iter::once(self.ground.class).chain(self.ground.mixed_with)
    }

    /// Diameter that is cut, where it is wider than the pipe. A bore by rule is that of a pull.
    fn cut(&self) -> Option<Length> {
        let bore = if self.pipe.jacked.is_some() { self.pipe.cut() } else { self.pipe.bore.value };
        (bore > self.diameter).then_some(bore)
    }

    fn is_lubricated(&self) -> bool {
        self.drive.lubrication != Lubrication::None
    }

    /// Water stands over the invert in some place.
    fn is_wet(&self) -> bool {
        self.soil.water_depth.is_some_and(|water| water < self.soil.depths.1)
    }

    /// In some place it does not.
    fn is_partly_dry(&self) -> bool {
        self.soil.water_depth.is_none_or(|water| water >= self.soil.depths.0)
    }
}

/// Coefficients of the sets.
struct Coefficients {
    fitted: Band<Ratio>,
    floor: (Pressure, Pressure),
    lateral: Ratio,
    /// Added to the diameter before the width of the Japanese column is worked out.
    japanese_allowance: Length,
    /// Side over vertical pressure, and wall friction angle over friction angle, of the German column.
    german: (Ratio, Ratio),
}

impl Coefficients {
    fn of(drive: &Drive) -> Result<Self, HandbookError> {
        let ratio = |key| drive.handbook.ratio(key).map(|ratio| ratio.value);
        let pressure = |key| drive.handbook.pressure(key).map(|pressure| pressure.value);
        let sets = drive.handbook.friction_model_set()?;
        let set = |key| sets.get(key).map(|row| row.value);
        let missing = |key: &str| HandbookError::NoRow { table: "friction_model_set", wanted: key.to_owned() };
        let allowance = set("japan").and_then(|row| row.width_allowance.as_ref());
        let german = set("atv_a_161").and_then(|row| row.lateral.as_ref().zip(row.wall_over_phi.as_ref()));
        let german = german.ok_or_else(|| missing("atv_a_161"))?;
        Ok(Self {
            japanese_allowance: allowance.ok_or_else(|| missing("japan"))?.value,
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
