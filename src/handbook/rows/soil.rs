//! Properties of the ground by blow count, density, consistency and class.

use super::classes::{GroundClass, TipModel};
use crate::quantity::{Angle, Pressure, Ratio, UnitWeight};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// Granular ground by density. An end that the source leaves open is not there.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SoilGranularRow {
    /// The publication the row belongs to; sets are not mixed.
    pub set: Field<Words>,
    /// Density.
    pub density: Field<Words>,
    /// Relative density, low end.
    pub dr_low: Option<Field<Ratio>>,
    /// Relative density, high end.
    pub dr_high: Option<Field<Ratio>>,
    /// Smallest SPT N (inclusive).
    pub n_from: Option<Field<Ratio>>,
    /// Largest SPT N (exclusive).
    pub n_below: Option<Field<Ratio>>,
    /// Friction angle, low end.
    pub phi_low: Option<Field<Angle>>,
    /// Friction angle, high end.
    pub phi_high: Option<Field<Angle>>,
    /// Moist unit weight, low end.
    pub moist_low: Option<Field<UnitWeight>>,
    /// Moist unit weight, high end.
    pub moist_high: Option<Field<UnitWeight>>,
    /// Submerged unit weight, low end; buoyant, with water already taken off.
    pub submerged_low: Option<Field<UnitWeight>>,
    /// Submerged unit weight, high end.
    pub submerged_high: Option<Field<UnitWeight>>,
}

/// Undrained strength per SPT blow, as a stress or over atmospheric pressure.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StrengthFromNRow {
    /// Soil the rule is for.
    pub soil: Field<Words>,
    /// Plasticity index of the point.
    pub plasticity: Option<Field<Ratio>>,
    /// Largest plasticity index (exclusive).
    pub plasticity_below: Option<Field<Ratio>>,
    /// Strength per blow, low end.
    pub low: Option<Field<Pressure>>,
    /// Strength per blow, high end or only value.
    pub high: Option<Field<Pressure>>,
    /// Strength per blow over atmospheric pressure.
    pub over_atmosphere: Option<Field<Ratio>>,
}

/// Cone resistance per blow at the tip of a displacement pilot, and the blow counts it is driven in.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PilotConeRow {
    /// Clay or sand.
    pub tip: Field<TipModel>,
    /// Cone resistance per SPT blow, low end.
    pub per_blow_low: Option<Field<Pressure>>,
    /// Cone resistance per SPT blow, high end.
    pub per_blow_high: Option<Field<Pressure>>,
    /// Most SPT blows for easy driving (inclusive).
    pub blows_comfortable: Option<Field<Ratio>>,
    /// Most SPT blows for driving at all (inclusive).
    pub blows_most: Option<Field<Ratio>>,
}

/// Modulus of horizontal subgrade reaction of sand, per depth.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SandBeddingRow {
    /// Density.
    pub density: Field<Words>,
    /// Least SPT blows (inclusive).
    pub blows_from: Field<Ratio>,
    /// Dry or moist.
    pub moist: Field<UnitWeight>,
    /// Under water.
    pub submerged: Field<UnitWeight>,
    /// Low end of the printed range over the value.
    pub low_share: Field<Ratio>,
}

/// Unit weight of natural ground.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SoilWeightRow {
    /// Ground.
    pub ground: Field<GroundClass>,
    /// Moist, low.
    pub moist_low: Field<UnitWeight>,
    /// Moist, likely.
    pub moist_likely: Field<UnitWeight>,
    /// Moist, high.
    pub moist_high: Field<UnitWeight>,
    /// Buoyant, low; water is already taken off.
    pub buoyant_low: Field<UnitWeight>,
    /// Buoyant, likely.
    pub buoyant_likely: Field<UnitWeight>,
    /// Buoyant, high.
    pub buoyant_high: Field<UnitWeight>,
}

/// What a stability number means.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StabilityNumberRow {
    /// `behaviour` for the bands of the literature, `open_face` for the rule on an open face.
    pub set: Field<Words>,
    /// Smallest number (inclusive).
    pub from: Option<Field<Ratio>>,
    /// Largest number (exclusive).
    pub below: Option<Field<Ratio>>,
    /// What happens, or `warn` and `refuse`.
    pub verdict: Field<Words>,
}
