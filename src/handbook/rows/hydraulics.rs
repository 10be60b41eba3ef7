//! Slopes, roughness and self-cleaning of gravity sewers.

use crate::quantity::{Length, Pressure, Ratio, Velocity};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// Least slope by size.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SewerMinSlopeRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Least slope.
    pub slope: Field<Ratio>,
}

/// Manning roughness.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ManningRow {
    /// Pipe material.
    pub material: Field<Words>,
    /// Roughness.
    pub n: Field<Ratio>,
    /// Low end of the printed range.
    pub low: Option<Field<Ratio>>,
    /// High end of the printed range.
    pub high: Option<Field<Ratio>>,
}

/// Stress or velocity for self-cleaning.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TractiveStressRow {
    /// What it is.
    pub what: Field<Words>,
    /// Sizes below this.
    pub size_below: Option<Field<Length>>,
    /// Stress on the invert.
    pub stress: Option<Field<Pressure>>,
    /// Velocity.
    pub velocity: Option<Field<Velocity>>,
}

/// Accepted sag or error of position.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SagLimitRow {
    /// What it is.
    pub what: Field<Words>,
    /// Smallest size.
    pub size_from: Option<Field<Length>>,
    /// Largest size.
    pub size_to: Option<Field<Length>>,
    /// The length.
    pub value: Option<Field<Length>>,
    /// Low end.
    pub low: Option<Field<Length>>,
    /// High end, or the most.
    pub high: Option<Field<Length>>,
    /// As a share of the diameter.
    pub of_diameter: Option<Field<Ratio>>,
}
