//! Techniques of opening a bore: what goes first, what rates them, and how they keep their line.

use super::Spoil;
use crate::quantity::Length;
use crate::yaml::{Words, key_words};

key_words! {
    /// How a bore is kept to its line.
    pub enum Guidance: "how the bore is kept to its line" {
        /// By a laser or a theodolite on a target in the head, which is steered.
        #[default]
        Laser = "laser",
        /// By locating the head from the surface.
        WalkedOver = "walked_over",
        /// Not at all: it goes where it was set up to go.
        None = "none",
    }

    /// What goes through the ground before the head.
    pub enum Before: "what goes before the head" {
        /// Nothing.
        #[default]
        Nothing = "nothing",
        /// A pilot that is pushed.
        Displacement = "displacement",
        /// A pilot that is drilled.
        Drilled = "drilled",
    }

    /// A column of ratings of the ground.
    pub enum RatedBy: "a column of the tables of suitability" {
        /// Displacing pilot, auger behind.
        #[default]
        DisplacingPilot = "displacing_pilot",
        /// Drilled pilot.
        DrilledPilot = "drilled_pilot",
        /// Drilled pilot cleared by vacuum through its stem.
        OpenStem = "open_stem",
        /// Cased auger.
        Auger = "auger",
        /// Head cleared by vacuum.
        Vacuum = "vacuum",
        /// Slurry machine.
        Slurry = "slurry",
        /// Open shield.
        OpenShield = "open_shield",
    }
}

rows! {
    /// A technique.
    TechniqueRow {
        /// What clears the head.
        spoil: must Spoil,
        /// What goes before it.
        before: must Before,
        /// As printed.
        words: must Words,
        /// What rates the pilot, and a head that no column rates apart from it.
        pilot: may RatedBy,
        /// What rates the head.
        head: may RatedBy,
        /// Row of the stem that goes before it.
        stem: may Words,
        /// How its line is kept where the file does not say it, on the safe side.
        guidance: must Guidance,
        /// And at best.
        guidance_best: must Guidance,
    }

    /// A pilot stem of which the file tells nothing.
    PilotStemRow {
        /// Outside diameter, wide end.
        diameter: must Length,
        /// Slender end.
        diameter_least: must Length,
        /// How much wider its head is.
        head_wider: must Length,
    }
}
