//! How well ground suits the techniques that the matrix of suitability has no column for, and what hazards add.

use super::classes::{GroundClass, Rating, WaterSide};
use crate::quantity::{Length, Ratio};
use crate::yaml::key_words;

key_words! {
    /// How the pilot makes its way.
    pub enum Pilot: "how the pilot makes its way" {
        /// Ground is pushed aside.
        #[default]
        Displacement = "displacement",
        /// A bit opens the bore, guided by light through the stem.
        Drilled = "drilled",
        /// A bit opens the bore, located from the surface.
        WalkedOver = "walked_over",
        /// No pilot goes before.
        None = "none",
    }

    /// How ground is made ready against water at the face.
    pub enum Treatment: "a treatment of the ground" {
        /// The water table is lowered below the invert while the bore is open.
        #[default]
        Dewatered = "dewatered",
        /// Grout closes the pores round the bore.
        Grouted = "grouted",
    }

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

    /// A technique of guided boring without a column in the matrix.
    pub enum GuidedTechnique: "a technique of guided boring" {
        /// The pilot is drilled, an auger follows.
        #[default]
        Drilled = "drilled",
        /// The pilot is drilled and cleared by vacuum through its stem: nothing holds its bore but the ground.
        OpenStem = "open_stem",
        /// A vacuum clears the enlarging head.
        Vacuum = "vacuum",
    }
}

rows! {
    /// Suitability of one ground for one technique of guided boring.
    GuidedSuitabilityRow {
        /// Technique.
        technique: must GuidedTechnique,
        /// Ground.
        ground: must GroundClass,
        /// Water.
        water: must WaterSide,
        /// Smallest SPT N (inclusive).
        n_from: may Ratio,
        /// Largest SPT N (exclusive).
        n_below: may Ratio,
        /// Largest largest stone (inclusive).
        stone_to: may Length,
        /// Rating.
        rating: must Rating,
    }

    /// What a hazard leaves of a technique. A column that is not there has no rating.
    GroundHazardRow {
        /// Hazard.
        hazard: must GroundHazard,
        /// Guided bore with a displacing pilot and an auger.
        jacking: may Rating,
        /// Cased auger bore without a pilot.
        auger: may Rating,
        /// Slurry machine.
        slurry: may Rating,
        /// Open shield.
        open_shield: may Rating,
        /// Pullback with reaming.
        pullback: may Rating,
        /// Pullback of a gravity line, where it is another.
        pullback_gravity: may Rating,
    }
}
