//! How well ground suits the techniques that the matrix of suitability has no column for, and what hazards add.

use super::classes::{GroundClass, Rating, WaterSide};
use crate::quantity::{Length, Ratio};
use crate::yaml::{Field, key_words};
use serde::Deserialize;

/// How the pilot makes its way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Pilot {
    /// Ground is pushed aside.
    #[default]
    Displacement,
    /// A bit opens the bore.
    Drilled,
}
key_words!(Pilot, "how the pilot makes its way", {
    "displacement" => Pilot::Displacement,
    "drilled" => Pilot::Drilled,
});

/// How ground is made ready against water at the face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Treatment {
    /// The water table is lowered below the invert while the bore is open.
    #[default]
    Dewatered,
    /// Grout closes the pores round the bore.
    Grouted,
}
key_words!(Treatment, "a treatment of the ground", {
    "dewatered" => Treatment::Dewatered,
    "grouted" => Treatment::Grouted,
});

/// What the class of the ground does not tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum GroundHazard {
    /// Soil and rock in one face; follows from the classes.
    MixedFaceRock,
    /// Piles, walls, rubble, old pipes.
    #[default]
    Obstructions,
    /// Clay that swells.
    Swelling,
    /// Clay that loses its strength when it is disturbed.
    Sensitive,
    /// Water under pressure below a tight layer.
    Artesian,
    /// Karst or other voids.
    Karst,
    /// Contaminated ground or water.
    Contaminated,
}
key_words!(GroundHazard, "a hazard of the ground", {
    "mixed_face_rock" => GroundHazard::MixedFaceRock,
    "obstructions" => GroundHazard::Obstructions,
    "swelling" => GroundHazard::Swelling,
    "sensitive" => GroundHazard::Sensitive,
    "artesian" => GroundHazard::Artesian,
    "karst" => GroundHazard::Karst,
    "contaminated" => GroundHazard::Contaminated,
});

/// A technique of guided boring without a column in the matrix.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum GuidedTechnique {
    /// The pilot is drilled, an auger follows.
    #[default]
    Drilled,
    /// A vacuum clears the enlarging head.
    Vacuum,
}
key_words!(GuidedTechnique, "a technique of guided boring", {
    "drilled" => GuidedTechnique::Drilled,
    "vacuum" => GuidedTechnique::Vacuum,
});

/// Suitability of one ground for one technique of guided boring.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GuidedSuitabilityRow {
    /// Technique.
    pub technique: Field<GuidedTechnique>,
    /// Ground.
    pub ground: Field<GroundClass>,
    /// Water.
    pub water: Field<WaterSide>,
    /// Smallest SPT N (inclusive).
    pub n_from: Option<Field<Ratio>>,
    /// Largest SPT N (exclusive).
    pub n_below: Option<Field<Ratio>>,
    /// Largest largest stone (inclusive).
    pub stone_to: Option<Field<Length>>,
    /// Rating.
    pub rating: Field<Rating>,
}

/// What a hazard leaves of a technique. A column that is not there has no rating.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GroundHazardRow {
    /// Hazard.
    pub hazard: Field<GroundHazard>,
    /// Guided bore with a displacing pilot and an auger.
    pub jacking: Option<Field<Rating>>,
    /// Cased auger bore without a pilot.
    pub auger: Option<Field<Rating>>,
    /// Slurry machine.
    pub slurry: Option<Field<Rating>>,
    /// Open shield.
    pub open_shield: Option<Field<Rating>>,
    /// Pullback with reaming.
    pub pullback: Option<Field<Rating>>,
    /// Pullback of a gravity line, where it is another.
    pub pullback_gravity: Option<Field<Rating>>,
}
