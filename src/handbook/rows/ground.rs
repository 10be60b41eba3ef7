//! How well ground suits the techniques that the matrix of suitability has no column for, and what hazards add.

use super::classes::{GroundClass, Rating, WaterSide};
use crate::quantity::{Length, Ratio};
use crate::yaml::{Field, key_words};
use serde::Deserialize;

key_words! {
    /// How the pilot makes its way.
    pub enum Pilot: "how the pilot makes its way" {
        /// Ground is pushed aside.
        #[default]
        Displacement = "displacement",
        /// A bit opens the bore.
        Drilled = "drilled",
    }
}

key_words! {
    /// How ground is made ready against water at the face.
    pub enum Treatment: "a treatment of the ground" {
        /// The water table is lowered below the invert while the bore is open.
        #[default]
        Dewatered = "dewatered",
        /// Grout closes the pores round the bore.
        Grouted = "grouted",
    }
}

key_words! {
    /// What the class of the ground does not tell.
    pub enum GroundHazard: "a hazard of the ground" {
        /// Soil and rock in one face; follows from the classes.
        MixedFaceRock = "mixed_face_rock",
        /// Piles, walls, rubble, old pipes.
        #[default]
        Obstructions = "obstructions",
        /// Clay that swells.
        Swelling = "swelling",
        /// Clay that loses its strength when it is disturbed.
        Sensitive = "sensitive",
        /// Water under pressure below a tight layer.
        Artesian = "artesian",
        /// Karst or other voids.
        Karst = "karst",
        /// Contaminated ground or water.
        Contaminated = "contaminated",
    }
}

key_words! {
    /// A technique of guided boring without a column in the matrix.
    pub enum GuidedTechnique: "a technique of guided boring" {
        /// The pilot is drilled, an auger follows.
        #[default]
        Drilled = "drilled",
        /// A vacuum clears the enlarging head.
        Vacuum = "vacuum",
    }
}

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
