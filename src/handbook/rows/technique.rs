//! Techniques of opening the ground: pilot, head, how soil leaves it, and how the bore is kept to its line.

use crate::quantity::Length;
use crate::yaml::{Words, key_words};

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

    /// How the soil leaves the face of an enlarging head.
    pub enum Spoil: "how the soil is removed" {
        /// By auger.
        #[default]
        Auger = "auger",
        /// By vacuum.
        Vacuum = "vacuum",
        /// As slurry, through a closed machine.
        Slurry = "slurry",
        /// By hand or shovel, behind an open cutting edge.
        OpenEdge = "open_edge",
    }
    meanings {
        "microtunnel" => ["slurry"],
        "microtunneling" => ["slurry"],
        "microtunnelling" => ["slurry"],
        "microtunnel_machine" => ["slurry"],
        "mtbm" => ["slurry"],
        "slurry_machine" => ["slurry"],
        "slurry_shield" => ["slurry"],
        "epb" => ["slurry", "auger"],
        "tbm" => ["slurry", "open_edge"],
        "open_shield" => ["open_edge"],
        "hand" => ["open_edge"],
        "hand_dug" => ["open_edge"],
        "hand_mining" => ["open_edge"],
        "auger_boring" => ["auger"],
        "jack_and_bore" => ["auger"],
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

    /// How a bore is kept to its line.
    pub enum Guidance: "how the bore is kept to its line" {
        /// By a laser or a theodolite on a target in the head, which is steered.
        #[default]
        Laser = "laser",
        /// By a gyrocompass in the head, and a water level.
        Gyro = "gyro",
        /// By a total station that is carried forward in the pipe.
        TotalStation = "total_station",
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
        /// Blows that a pilot is pushed through, before a pipe that is pulled.
        PushedPilot = "pushed_pilot",
    }

    /// How the tip of a pilot resists.
    pub enum Tip: "how the tip of a pilot resists" {
        /// As a cone, by blows or strength.
        #[default]
        Cone = "cone",
        /// By the thrust on its bit.
        Bit = "bit",
    }

    /// How an enlarging head resists.
    pub enum Head: "how an enlarging head resists" {
        /// By a pressure on what it cuts, behind an auger.
        #[default]
        Auger = "auger",
        /// The same, where soil is sucked away.
        Vacuum = "vacuum",
        /// By the pressure in a closed face.
        Slurry = "slurry",
        /// On its edge.
        Edge = "edge",
    }

    /// What the line of a bore is as good as, where it is read in the bore.
    pub enum Steered: "what a line is as good as" {
        /// A head that is steered itself.
        #[default]
        Machine = "machine",
        /// A pilot that is pushed.
        Pushed = "pushed",
        /// A pilot that is drilled.
        Drilled = "drilled",
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
        /// What rates the pilot before a pipe that is pulled.
        pulled: may RatedBy,
        /// Row of the stem that goes before it.
        stem: may Words,
        /// How the tip of that stem resists.
        tip: may Tip,
        /// How the head resists.
        face: must Head,
        /// Row of how much wider than the pipe the head cuts, by which ground settles.
        overcut: must Words,
        /// How far its line may be off.
        line: must Steered,
        /// Row of the angle at the joints of pipes behind it.
        joint: must Words,
        /// Row of its lengths and diameters.
        range: must Words,
        /// Row of what is put in in a shift.
        pace: must Words,
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

impl Guidance {
    /// Whether the head is steered by what is read in the bore itself.
    pub(crate) const fn is_steered(self) -> bool {
        matches!(self, Self::Laser | Self::Gyro | Self::TotalStation)
    }

    /// Whether it needs no line of sight from the launch pit to the head.
    pub(crate) const fn turns_corners(self) -> bool {
        matches!(self, Self::Gyro | Self::TotalStation)
    }
}
