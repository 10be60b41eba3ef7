//! Ground by class: friction, what the pilot tip meets, suitability, resistance at a head.

use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::yaml::{Field, key_words};
use serde::Deserialize;

/// How the ground is named: consistency or density and soil type, as in a borehole log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum GroundClass {
    /// Clay, SPT N below 4.
    SoftClay,
    /// Clay, N 4 to 30.
    FirmToVeryStiffClay,
    /// Clay, N over 30.
    HardClay,
    /// Silt.
    Silt,
    /// Sand, N below 10.
    LooseSand,
    /// Sand, N 10 to 50.
    MediumToDenseSand,
    /// Gravel and gravelly coarse sand.
    Gravel,
    /// Made ground.
    Fill,
    /// Rock below 20 MPa, shale.
    WeakRock,
    /// Harder rock.
    HardRock,
    /// Peat and other organic soil.
    Peat,
    /// Not known.
    #[default]
    Unknown,
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

key_words!(GroundClass, "a ground class", {
    "soft_clay" => GroundClass::SoftClay,
    "firm_to_very_stiff_clay" => GroundClass::FirmToVeryStiffClay,
    "hard_clay" => GroundClass::HardClay,
    "silt" => GroundClass::Silt,
    "loose_sand" => GroundClass::LooseSand,
    "medium_to_dense_sand" => GroundClass::MediumToDenseSand,
    "gravel" => GroundClass::Gravel,
    "fill" => GroundClass::Fill,
    "weak_rock" => GroundClass::WeakRock,
    "hard_rock" => GroundClass::HardRock,
    "peat" => GroundClass::Peat,
    "unknown" => GroundClass::Unknown,
}, meanings {
    "clay" => ["soft_clay", "firm_to_very_stiff_clay", "hard_clay"],
    "sand" => ["loose_sand", "medium_to_dense_sand"],
    "rock" => ["weak_rock", "hard_rock"],
    "till" => ["firm_to_very_stiff_clay", "hard_clay"],
    "glacial_till" => ["firm_to_very_stiff_clay", "hard_clay"],
    "boulder_clay" => ["firm_to_very_stiff_clay", "hard_clay"],
    "made_ground" => ["fill"],
});

/// Where the pipe lies with respect to the water table, or `any` in a table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum WaterSide {
    /// Whole pipe above.
    Above,
    /// Whole pipe below.
    Below,
    /// Either.
    #[default]
    Any,
}

key_words!(WaterSide, "above, below or any", {
    "above" => WaterSide::Above,
    "below" => WaterSide::Below,
    "any" => WaterSide::Any,
});

/// How the annulus is lubricated while jacking.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Lubrication {
    /// None.
    #[default]
    None,
    /// Planned, but quantity and pressure are not metered.
    NotMetered,
    /// Injected and metered over the whole length.
    Metered,
    /// Continuous, the annulus held, and the force logged; the user asserts it.
    Logged,
}

key_words!(Lubrication, "how the pipe is lubricated", {
    "none" => Lubrication::None,
    "not_metered" => Lubrication::NotMetered,
    "metered" => Lubrication::Metered,
    "logged" => Lubrication::Logged,
}, meanings {
    "bentonite" => ["not_metered", "metered"],
    "polymer" => ["not_metered", "metered"],
    "mud" => ["not_metered", "metered"],
    "yes" => ["not_metered", "metered"],
    "true" => ["not_metered", "metered"],
    "no" => ["none"],
    "false" => ["none"],
});

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

/// How the tip of the pilot stem is resisted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum TipModel {
    /// Bearing factor times undrained strength.
    Clay,
    /// Cone resistance per blow.
    #[default]
    Sand,
}

key_words!(TipModel, "clay or sand", { "clay" => TipModel::Clay, "sand" => TipModel::Sand });

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

/// How well a ground suits a method.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Rating {
    /// Usual practice.
    Suitable,
    /// Special tools or experience.
    Marginal,
    /// Not done.
    Unsuitable,
    /// Depends on something the class does not tell; the note says on what.
    #[default]
    Depends,
}

key_words!(Rating, "a suitability", {
    "suitable" => Rating::Suitable,
    "marginal" => Rating::Marginal,
    "unsuitable" => Rating::Unsuitable,
    "depends" => Rating::Depends,
});

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

/// How the soil leaves the face of an enlarging head.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Spoil {
    /// By auger.
    #[default]
    Auger,
    /// By vacuum.
    Vacuum,
    /// As slurry, through a closed machine.
    Slurry,
    /// By hand or shovel, behind an open cutting edge.
    OpenEdge,
}

key_words!(Spoil, "how the soil is removed", {
    "auger" => Spoil::Auger,
    "vacuum" => Spoil::Vacuum,
    "slurry" => Spoil::Slurry,
    "open_edge" => Spoil::OpenEdge,
});

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
