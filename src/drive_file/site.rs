//! What the engineer writes of flow, surface, crossed services, pits and pace of the work. All of it may be left out.

use super::fields::fields;
use crate::quantity::{Force, Length, Pressure, Ratio, Time, Velocity, Volume, VolumeRate};
use crate::yaml::{Field, Words, key_words};
use serde::{Deserialize, Serialize};

/// Flow that a gravity sewer is built for.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct FlowFile {
    /// Flow that must keep it clean: the least peak of a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub min: Option<Field<VolumeRate>>,
    /// Greatest flow.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max: Option<Field<VolumeRate>>,
    /// Manning roughness, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub roughness: Option<Field<Ratio>>,
}

impl super::DriveFile {
    /// Greatest flow that the sewer is built for.
    pub(crate) fn greatest_flow(&self) -> Option<&Field<VolumeRate>> {
        self.design_flow.as_ref()?.max.as_ref()
    }
}

/// What lies over the bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Over {
    /// Nothing that has a rule of its own.
    #[default]
    Open,
    /// A road.
    Road,
    /// A railway.
    Railway,
}
key_words!(Over, "what lies over the bore", {
    "open" => Over::Open,
    "road" => Over::Road,
    "railway" => Over::Railway,
});

/// The surface over the bore.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct SurfaceFile {
    /// What lies over the bore.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over: Option<Field<Over>>,
    /// Settlement that its owner allows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub allowed_settlement: Option<Field<Length>>,
    /// Slope of the settled surface that its owner allows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub allowed_slope: Option<Field<Ratio>>,
}

/// A service that the bore crosses, or that runs beside it.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct CrossingFile {
    /// Distance from the launch pit.
    pub at: Field<Length>,
    /// Depth below ground of the side that faces the bore.
    pub depth: Field<Length>,
    /// How far beside the axis of the bore that side lies, for a service that runs along it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beside: Option<Field<Length>>,
    /// What it is, in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kind: Option<Field<Words>>,
    /// Settlement that its owner allows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub allowed_settlement: Option<Field<Length>>,
    /// Slope that its owner allows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub allowed_slope: Option<Field<Ratio>>,
    /// Clear distance to the bore that its owner asks for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clearance: Option<Field<Length>>,
}

/// What is known of a pit beyond its depth.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PitSpaceFile {
    /// Length along the drive, inside the shoring.
    pub length: Field<Length>,
    /// Width, inside the shoring.
    pub width: Field<Length>,
    /// Depth of the floor below ground, where it is deeper than the invert.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub floor_depth: Option<Field<Length>>,
    /// Tight soil left under the floor, over ground with water under pressure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tight_soil: Option<Field<Length>>,
    /// Water pressure at the foot of the tight soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water_pressure: Option<Field<Pressure>>,
    /// Permeability of water-bearing ground that the pit stands in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub permeability: Option<Field<Velocity>>,
    /// Depth below ground of the tight base under that ground.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tight_base_depth: Option<Field<Length>>,
    /// What the crane lifts at the radius of the pit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub crane: Option<Field<Force>>,
}

/// How far the work gets in a shift, by the contractor, and what a shift costs.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PaceFile {
    /// Pilot stem.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pilot: Option<Field<Length>>,
    /// Casing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing: Option<Field<Length>>,
    /// One reaming pass.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reaming: Option<Field<Length>>,
    /// Pipe pushed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub jacking: Option<Field<Length>>,
    /// Pipe pulled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pullback: Option<Field<Length>>,
    /// Price of one shift, in the user's money.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shift_price: Option<Field<Ratio>>,
    /// Price of setting up and leaving.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setup_price: Option<Field<Ratio>>,
    /// Length of a shift.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shift_length: Option<Field<Time>>,
    /// Shifts to dig and shore both pits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pits: Option<Field<Ratio>>,
    /// Shifts to set up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub set_up: Option<Field<Ratio>>,
    /// Shifts to grout the annulus.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grouting: Option<Field<Ratio>>,
    /// Shifts to recover the tools and clear the site.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub recovery: Option<Field<Ratio>>,
    /// Shifts that the programme leaves for the whole of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub programme: Option<Field<Ratio>>,
    /// Price of one pit, in the user's money.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pit_price: Option<Field<Ratio>>,
    /// Price of spoil carried away, measured in the ground.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spoil_price: Option<VolumePriceFile>,
    /// Price of grout.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grout_price: Option<VolumePriceFile>,
    /// What the work may cost, in the user's money.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub budget: Option<Field<Ratio>>,
}

/// Price by volume, in the user's money.
#[derive(Debug, Clone, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct VolumePriceFile {
    /// Price.
    pub price: Field<Ratio>,
    /// Of this volume.
    pub per: Field<Volume>,
}

fields! {
    /// Price of a pipe by length, in the user's money.
    #[derive(PartialEq)]
    LengthPriceFile at "candidates[].price." {
        /// Price.
        price: must<Ratio> as Ratio, AboveZero, ["250", "250"];
        /// Of this length.
        per: must<Length> as Distance, AboveZero, ["60 m", "200 ft"];
    }
}
