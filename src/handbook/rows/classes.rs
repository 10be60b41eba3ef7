//! Ground by class: friction, what the pilot tip meets, suitability, resistance at a head.

use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::yaml::{Field, key_words};
use serde::Deserialize;

key_words! {
    /// How the ground is named: consistency or density and soil type, as in a borehole log.
    pub enum GroundClass: "a ground class" {
        /// Clay, SPT N below 4.
        SoftClay = "soft_clay",
        /// Clay, N 4 to 30.
        FirmToVeryStiffClay = "firm_to_very_stiff_clay",
        /// Clay, N over 30.
        HardClay = "hard_clay",
        /// Silt.
        Silt = "silt",
        /// Sand, N below 10.
        LooseSand = "loose_sand",
        /// Sand, N 10 to 50.
        MediumToDenseSand = "medium_to_dense_sand",
        /// Gravel and gravelly coarse sand.
        Gravel = "gravel",
        /// Made ground.
        Fill = "fill",
        /// Rock below 20 MPa, shale.
        WeakRock = "weak_rock",
        /// Harder rock.
        HardRock = "hard_rock",
        /// Peat and other organic soil.
        Peat = "peat",
        /// Not known.
        #[default]
        Unknown = "unknown",
    }
    meanings {
        "clay" => ["soft_clay", "firm_to_very_stiff_clay", "hard_clay"],
        "sand" => ["loose_sand", "medium_to_dense_sand"],
        "rock" => ["weak_rock", "hard_rock"],
        "till" => ["firm_to_very_stiff_clay", "hard_clay"],
        "glacial_till" => ["firm_to_very_stiff_clay", "hard_clay"],
        "boulder_clay" => ["firm_to_very_stiff_clay", "hard_clay"],
        "made_ground" => ["fill"],
    }
}

impl GroundClass {
    /// Whether it is clay.
    #[must_use]
    pub const fn is_clay(self) -> bool {
        matches!(self, Self::SoftClay | Self::FirmToVeryStiffClay | Self::HardClay)
    }

    /// Whether it is rock.
    #[must_use]
    pub const fn is_rock(self) -> bool {
        matches!(self, Self::WeakRock | Self::HardRock)
    }
}

key_words! {
    /// Where the pipe lies with respect to the water table, or `any` in a table.
    pub enum WaterSide: "above, below or any" {
        /// Whole pipe above.
        Above = "above",
        /// Whole pipe below.
        Below = "below",
        /// Either.
        #[default]
        Any = "any",
    }
}

key_words! {
    /// How the annulus is lubricated while jacking.
    pub enum Lubrication: "how the pipe is lubricated" {
        /// None.
        #[default]
        None = "none",
        /// Planned, but quantity and pressure are not metered.
        NotMetered = "not_metered",
        /// Injected and metered over the whole length.
        Metered = "metered",
        /// Continuous, the annulus held, and the force logged; the user asserts it.
        Logged = "logged",
    }
    meanings {
        "bentonite" => ["not_metered", "metered"],
        "polymer" => ["not_metered", "metered"],
        "mud" => ["not_metered", "metered"],
        "yes" => ["not_metered", "metered"],
        "true" => ["not_metered", "metered"],
        "no" => ["none"],
        "false" => ["none"],
    }
}

/// Unit friction over the whole outside area.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FrictionBandRow {
    /// Ground.
    pub ground: Field<GroundClass>,
    /// Water.
    pub water: Field<WaterSide>,
    /// Lubrication: `none`, `metered` or `logged`; *not metered* is put together from the first two.
    pub lubrication: Field<Lubrication>,
    /// Low.
    pub low: Field<Pressure>,
    /// Likely.
    pub likely: Field<Pressure>,
    /// High.
    pub high: Field<Pressure>,
}

key_words! {
    /// How the tip of the pilot stem is resisted.
    pub enum TipModel: "clay or sand" {
        /// Bearing factor times undrained strength.
        Clay = "clay",
        /// Cone resistance per blow.
        #[default]
        Sand = "sand",
    }
}

/// SPT blow counts of a ground class.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GroundClassRow {
    /// Class.
    pub ground: Field<GroundClass>,
    /// Lowest N of the class.
    pub n_low: Field<Ratio>,
    /// Middle N.
    pub n_likely: Field<Ratio>,
    /// Highest N.
    pub n_high: Field<Ratio>,
    /// Which tip resistance applies.
    pub tip: Field<TipModel>,
}

key_words! {
    /// How well a ground suits a method.
    pub enum Rating: "a suitability" {
        /// Usual practice.
        Suitable = "suitable",
        /// Special tools or experience.
        Marginal = "marginal",
        /// Not done.
        Unsuitable = "unsuitable",
        /// Depends on something the class does not tell; the note says on what.
        #[default]
        Depends = "depends",
    }
}

/// Ground suitability by method.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SuitabilityRow {
    /// Ground.
    pub ground: Field<GroundClass>,
    /// Water.
    pub water: Field<WaterSide>,
    /// Smallest water head over the invert (exclusive), if the row is limited so.
    pub head_over: Option<Field<Length>>,
    /// Largest water head over the invert (inclusive).
    pub head_to: Option<Field<Length>>,
    /// Smallest SPT N (inclusive).
    pub n_from: Option<Field<Ratio>>,
    /// Largest SPT N (exclusive).
    pub n_below: Option<Field<Ratio>>,
    /// Smallest largest stone (exclusive).
    pub stone_over: Option<Field<Length>>,
    /// Largest largest stone (inclusive).
    pub stone_to: Option<Field<Length>>,
    /// Smallest outside diameter (inclusive), if the row is limited so.
    pub od_from: Option<Field<Length>>,
    /// Largest outside diameter (exclusive).
    pub od_below: Option<Field<Length>>,
    /// Pilot-tube guided jacking with a displacement pilot.
    pub jacking: Field<Rating>,
    /// Pullback with reaming.
    pub pullback: Field<Rating>,
    /// Pullback of a gravity line, where it is another.
    pub pullback_gravity: Option<Field<Rating>>,
    /// Cased and steered auger bore without a pilot; absent where no rating is known, as the next two.
    pub auger: Option<Field<Rating>>,
    /// Slurry machine.
    pub slurry: Option<Field<Rating>>,
    /// Pipe jacking behind an open shield.
    pub open_shield: Option<Field<Rating>>,
}

key_words! {
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
}

/// Resistance at an enlarging head.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FaceRow {
    /// How the soil is removed.
    pub spoil: Field<Spoil>,
    /// Low pressure on the cut area.
    pub low: Field<Pressure>,
    /// Likely pressure on the cut area.
    pub likely: Field<Pressure>,
    /// High pressure on the cut area.
    pub high: Field<Pressure>,
    /// Least force, low.
    pub least_low: Field<Force>,
    /// Least force, likely.
    pub least_likely: Field<Force>,
    /// Least force, high.
    pub least_high: Field<Force>,
}
