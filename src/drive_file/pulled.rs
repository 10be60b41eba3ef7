//! Blocks of the drive file that only a pulled pipe needs.

use crate::quantity::{
    Area, DynamicViscosity, Force, Length, MassDensity, Pressure, Ratio, Time, UnitWeight, VolumeRate,
};
use crate::yaml::{Field, key_words};
use serde::{Deserialize, Serialize};

/// What the bore is while the pipe comes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Hole {
    /// Full of drilling fluid.
    #[default]
    Fluid,
    /// Cleared by vacuum, dry, and standing open: the user asserts it.
    DryAndStable,
}
key_words!(Hole, "what the bore is", { "fluid" => Hole::Fluid, "dry_and_stable" => Hole::DryAndStable });

/// Where the string is put together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Place {
    /// On the ground, from where it comes down a ramp.
    #[default]
    Ground,
    /// Pipe by pipe in the reception pit, without a ramp.
    Pit,
}
key_words!(Place, "where the string is put together", { "ground" => Place::Ground, "pit" => Place::Pit });

/// Room for the string.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct LaydownFile {
    /// Longest string that can lie outside, or the length of one pipe that goes into the pit.
    pub length: Field<Length>,
    /// Where the strings are joined.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<Field<Place>>,
    /// How long the pull stands for each joint made during it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_time: Option<Field<Time>>,
}

/// How the pull stands while a rod of the stem is taken out.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct StemRemovalFile {
    /// Length of one rod.
    pub every: Field<Length>,
    /// How long the pull stands for it.
    pub takes: Field<Time>,
}

/// A length of bore that may fall on the pipe.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct CollapsedBoreFile {
    /// Length of pipe that the ground lies on.
    pub length: Field<Length>,
    /// Unit weight of the ground over it, water included.
    pub unit_weight: Field<UnitWeight>,
    /// Friction of the pipe in soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction: Option<Field<Ratio>>,
}

/// What the rig leans on while it pulls.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct ReactionFile {
    /// Area of the plate against the face of the launch pit.
    pub area: Field<Area>,
    /// Pressure that the ground behind it is allowed.
    pub allowable_pressure: Field<Pressure>,
}

/// Flow of the drilling fluid with what it carries.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct ReturnsFile {
    /// Flow pumped.
    pub flow: Field<VolumeRate>,
    /// Plastic viscosity, cuttings included.
    pub plastic_viscosity: Field<DynamicViscosity>,
    /// Yield point, cuttings included.
    pub yield_point: Field<Pressure>,
}

/// What becomes of the annulus.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Filling {
    /// Left as it is.
    #[default]
    Open,
    /// Grouted.
    Grouted,
}
key_words!(Filling, "what becomes of the annulus", { "open" => Filling::Open, "grouted" => Filling::Grouted });

/// The annulus round a pulled pipe.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct AnnulusFile {
    /// What becomes of it.
    pub filling: Field<Filling>,
    /// Height of spacers on the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spacers: Option<Field<Length>>,
    /// Density of the grout.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grout_density: Option<Field<MassDensity>>,
    /// Pressure at which the grout comes in, over its own column.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grout_pressure: Option<Field<Pressure>>,
    /// How long the grout stays liquid.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grout_sets_in: Option<Field<Time>>,
    /// Volume of grout over that of the annulus.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grout_waste: Option<Field<Ratio>>,
    /// Whether hardened grout all round will be proved.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub proof: Option<Field<Proof>>,
    /// Modulus of soil reaction of what stands round the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soil_modulus: Option<Field<Pressure>>,
}

/// How far the grout is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Proof {
    /// Not proved.
    #[default]
    None,
    /// By volume, pressure and samples along the whole length.
    Proved,
}
key_words!(Proof, "how the grout is proved", { "none" => Proof::None, "proved" => Proof::Proved });

/// Vacuum in a pressure main.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct VacuumFile {
    /// Below the atmosphere.
    pub pressure: Field<Pressure>,
    /// How long it lasts.
    pub lasts: Field<Time>,
}

/// The pull head and the link that parts before the pipe does.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PullHeadFile {
    /// Rating of pull head and swivel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rating: Option<Field<Force>>,
    /// Load at which the weak link parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weak_link: Option<Field<Force>>,
}

/// A machine that pushes the tail of the string.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PushAssistFile {
    /// Greatest force that it is set to.
    pub force: Field<Force>,
    /// Longest length of string without support between its grip and the mouth of the bore.
    pub free_length: Field<Length>,
    /// Rating of the grip.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grip_rating: Option<Field<Force>>,
}
