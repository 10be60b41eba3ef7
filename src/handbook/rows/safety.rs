//! Excavation, air and butt fusion.

use crate::quantity::{Length, Ratio, Time};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// An excavation rule in one number.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExcavationRow {
    /// The rule.
    pub rule: Field<Words>,
    /// Depth, height or distance.
    pub length: Option<Field<Length>>,
    /// Duration.
    pub time: Option<Field<Time>>,
}

/// Waiting time after a butt fusion.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JointCoolingRow {
    /// What is waited for.
    pub what: Field<Words>,
    /// Duration.
    pub time: Field<Time>,
    /// Wall thickness that the duration is for each time.
    pub per_wall: Option<Field<Length>>,
}

/// Butt fusion joints made.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FusionRateRow {
    /// Smallest pipe size.
    pub size_from: Option<Field<Length>>,
    /// Largest pipe size.
    pub size_to: Field<Length>,
    /// Joints, low end.
    pub joints_low: Field<Ratio>,
    /// Joints, high end.
    pub joints_high: Field<Ratio>,
    /// In what time.
    pub per: Field<Words>,
}
