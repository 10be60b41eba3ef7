//! Excavation, air and butt fusion.

use crate::quantity::{Angle, Length, Ratio, Time};
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

/// Steepest slope of an excavation.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExcavationSlopeRow {
    /// Soil type.
    pub soil: Field<Words>,
    /// Horizontal over vertical.
    pub run: Field<Ratio>,
    /// Angle from the level.
    pub angle: Field<Angle>,
    /// Depth up to which it may be used.
    pub depth_to: Field<Length>,
    /// Longest time it may stand.
    pub time: Option<Field<Time>>,
}

/// Limit of a gas.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AirLimitRow {
    /// Gas.
    pub gas: Field<Words>,
    /// What it is a share of.
    pub of: Field<Words>,
    /// Least share.
    pub low: Option<Field<Ratio>>,
    /// Largest share.
    pub high: Option<Field<Ratio>>,
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
