//! The columns of each table. The type of a column is the check of its unit.

mod pipes;

pub use pipes::*;

mod methods;

pub use methods::*;

mod surface;

pub use surface::*;

mod service;

pub use service::*;

mod safety;

pub use safety::*;

mod pits;

pub use pits::*;

mod hydraulics;

pub use hydraulics::*;

mod soil;

pub use soil::*;

mod friction;

pub use friction::*;

mod bore;

pub use bore::*;

mod pulled;

pub use pulled::*;

mod score;

pub use score::*;

mod ground;

pub use ground::*;

use crate::quantity::{Angle, Force, Length, LineLoad, MassDensity, Pressure, Ratio, ThermodynamicTemperature, Time};
use crate::yaml::{Field, Words, key_words};
use serde::Deserialize;

/// A bibliography entry.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SourceRow {
    /// Authors or body, and title.
    pub title: Field<Words>,
    /// Publisher.
    pub publisher: Field<Words>,
    /// Edition or year.
    pub edition: Field<Words>,
    /// Standard, handbook, paper, agency document, guidance, or own.
    pub kind: Field<Words>,
    /// How it was consulted.
    pub consulted: Field<Words>,
}

/// A vitrified clay jacking pipe. The end bearing area is computed from the ratings.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClayPipeRow {
    /// Nominal size; not the true bore.
    pub size: Field<Length>,
    /// Average outside diameter.
    pub outside_diameter: Field<Length>,
    /// Weight per length.
    pub weight: Field<LineLoad>,
    /// Allowable jacking force printed at factor 2.5.
    pub rated_at_2_5: Field<Force>,
    /// Allowable jacking force printed at factor 3.0.
    pub rated_at_3_0: Field<Force>,
    /// Allowable jacking force printed at factor 3.5.
    pub rated_at_3_5: Field<Force>,
    /// Compressive strength the ratings rest on.
    pub rating_strength: Field<Pressure>,
}

/// A PE pipe of a series that lists walls.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PeWallRow {
    /// Nominal outside diameter.
    pub size: Field<Length>,
    /// Standard dimension ratio.
    pub sdr: Field<Ratio>,
    /// Minimum wall.
    pub wall: Field<Length>,
}

/// A PE pipe of a series whose wall is outside diameter over dimension ratio.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PeOutsideRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Outside diameter.
    pub outside_diameter: Field<Length>,
}

/// What a PE material designation stands for in the tables that use other designations.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PeMaterialRow {
    /// Density.
    pub density: Field<MassDensity>,
    /// Short-term tensile yield strength at 73 degF.
    pub tensile_yield: Field<Pressure>,
    /// Column of American pull stress tables.
    pub american: Field<Words>,
    /// Column of the German pull stress sheet, or `none`.
    pub german: Field<Words>,
    /// Modulus column that is safe against collapse.
    pub soft: Field<Words>,
    /// Modulus column that is safe for bending stress.
    pub stiff: Field<Words>,
}

/// Allowable pull stress by edition, material and duration.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PullStressRow {
    /// The edition the row belongs to; editions are never mixed in one row.
    pub edition: Field<Words>,
    /// Material column of that edition.
    pub material: Field<Words>,
    /// Longest duration the stress is for.
    pub up_to: Field<Time>,
    /// The stress.
    pub stress: Field<Pressure>,
    /// Pipe temperature the stress is for.
    pub at: Field<ThermodynamicTemperature>,
}

/// A factor by duration.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DurationFactorRow {
    /// The edition the factor belongs to.
    pub edition: Field<Words>,
    /// Longest duration.
    pub up_to: Field<Time>,
    /// The factor.
    pub factor: Field<Ratio>,
}

/// Apparent modulus by material and duration of load.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ModulusRow {
    /// Material column.
    pub material: Field<Words>,
    /// Duration of the load.
    pub duration: Field<Time>,
    /// The modulus at 73 degF.
    pub modulus: Field<Pressure>,
}

/// A multiplier by pipe temperature.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TemperatureFactorRow {
    /// The set the point belongs to.
    pub set: Field<Words>,
    /// Pipe temperature.
    pub at: Field<ThermodynamicTemperature>,
    /// The multiplier.
    pub factor: Field<Ratio>,
}

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

/// Final bore of a pulled pipe.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoreRuleRow {
    /// Smallest outside diameter the rule is for (inclusive).
    pub od_from: Option<Field<Length>>,
    /// Largest outside diameter (exclusive).
    pub od_below: Option<Field<Length>>,
    /// Times the outside diameter.
    pub times: Field<Ratio>,
    /// Plus this.
    pub plus: Field<Length>,
}

/// A way of putting a pipe into a guided bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Method {
    /// Rigid segments pushed in from the launch pit behind the stem.
    #[default]
    PipeJacking,
    /// A long pipe pulled back behind a reamer that makes the new bore larger than the pilot bore.
    Pullback,
}
key_words!(Method, "a method", { "pipe jacking" => Method::PipeJacking, "pullback" => Method::Pullback });

/// Published range of a method.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MethodLimitRow {
    /// Method.
    pub method: Field<Method>,
    /// Smallest outside diameter (inclusive).
    pub od_from: Option<Field<Length>>,
    /// Largest outside diameter (inclusive).
    pub od_to: Option<Field<Length>>,
    /// Longest drive.
    pub length: Field<Length>,
    /// How soil leaves the head, where the row is for that alone.
    pub spoil: Option<Field<Spoil>>,
}

/// Family of a pipe material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Family {
    /// Vitrified clay.
    #[default]
    Clay,
    /// Polyethylene.
    Pe,
    /// Reinforced concrete.
    Concrete,
    /// Steel.
    Steel,
    /// Glass-reinforced plastic.
    Grp,
    /// Polymer concrete.
    PolymerConcrete,
    /// Ductile iron.
    DuctileIron,
    /// PVC.
    Pvc,
    /// PVC, fused into a string.
    PvcFused,
    /// PVC with restrained joints.
    PvcRestrained,
}
key_words!(Family, "a pipe family", {
    "clay" => Family::Clay,
    "pe" => Family::Pe,
    "concrete" => Family::Concrete,
    "steel" => Family::Steel,
    "grp" => Family::Grp,
    "polymer_concrete" => Family::PolymerConcrete,
    "ductile_iron" => Family::DuctileIron,
    "pvc" => Family::Pvc,
    "pvc_fused" => Family::PvcFused,
    "pvc_restrained" => Family::PvcRestrained,
});

/// What the pipe will carry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Service {
    /// Part-full gravity flow.
    #[default]
    GravitySewer,
    /// Under internal pressure.
    PressureMain,
    /// A casing for a carrier pipe laid later.
    Casing,
}
key_words!(Service, "a service", {
    "gravity_sewer" => Service::GravitySewer,
    "pressure_main" => Service::PressureMain,
    "casing" => Service::Casing,
});

/// A pipe family that a method or a service excludes.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExclusionRow {
    /// Family.
    pub family: Field<Family>,
    /// Method it cannot be put in by.
    pub method: Option<Field<Method>>,
    /// Service it cannot bear.
    pub service: Option<Field<Service>>,
    /// Why, in one sentence.
    pub reason: Field<Words>,
}

/// One ratio.
pub type RatioRow = Field<Ratio>;
/// One pressure.
pub type PressureRow = Field<Pressure>;
/// One length.
pub type LengthRow = Field<Length>;
/// One duration.
pub type DurationRow = Field<Time>;
/// One angle.
pub type AngleRow = Field<Angle>;
