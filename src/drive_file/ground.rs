//! Stretches of ground, as the engineer writes them.

use super::band::{BandFile, OrNone};
use crate::handbook::{GroundClass, GroundHazard, Treatment};
use crate::quantity::{Angle, Length, Pressure, Ratio, UnitWeight};
use crate::yaml::Field;
use serde::{Deserialize, Serialize};

/// A stretch of like ground.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct StretchFile {
    /// Where it begins, measured from the launch pit; the end of the stretch before if left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<Field<Length>>,
    /// Where it ends; the last one may leave it out and then ends at the reception pit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to: Option<Field<Length>>,
    /// Class.
    pub class: Field<GroundClass>,
    /// The other ground of a mixed face.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mixed_with: Option<Field<GroundClass>>,
    /// Depth of the water table below ground here, where it is not that of the drive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub groundwater: Option<Field<OrNone<Length>>>,
    /// Standard penetration test blow count.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spt_n: Option<Field<Ratio>>,
    /// Largest stone expected; `0 mm` for none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub largest_stone: Option<Field<Length>>,
    /// What is done against water at the face, for the ground of this stretch.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub treatment: Option<Field<Treatment>>,
    /// Hazards that the class does not tell.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<Field<GroundHazard>>,
    /// Unit friction on everything in the bore, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_friction: Option<BandFile<Pressure>>,
    /// Properties of the soil, for the friction models that are shown beside the band.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soil: Option<SoilFile>,
}

/// Properties of the soil that holds the pipe, and of the layers over it.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct SoilFile {
    /// Unit weight above water.
    pub moist: Field<UnitWeight>,
    /// Unit weight below water, water included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saturated: Option<Field<UnitWeight>>,
    /// Unit weight below water less that of water; stands in for `saturated`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub buoyant: Option<Field<UnitWeight>>,
    /// Friction angle.
    pub friction_angle: Field<Angle>,
    /// Shear modulus, for the pressure that the bore fluid may have.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shear_modulus: Option<Field<Pressure>>,
    /// Undrained strength of clay.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undrained_strength: Option<Field<Pressure>>,
    /// Cohesion that the earth load in service may count on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cohesion: Option<Field<Pressure>>,
    /// Undrained modulus of elasticity of clay.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undrained_modulus: Option<Field<Pressure>>,
    /// Load on the surface.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surcharge: Option<Field<Pressure>>,
    /// Layers over the soil that holds the pipe, from the surface down.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub layers: Vec<LayerFile>,
}

/// A layer over the soil that holds the pipe.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct LayerFile {
    /// Thickness.
    pub thickness: Field<Length>,
    /// Unit weight above water.
    pub moist: Field<UnitWeight>,
    /// Unit weight below water, water included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saturated: Option<Field<UnitWeight>>,
    /// Unit weight below water less that of water; stands in for `saturated`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub buoyant: Option<Field<UnitWeight>>,
    /// Friction angle.
    pub friction_angle: Field<Angle>,
}
