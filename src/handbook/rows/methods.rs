//! What the methods are used for, how far they reach and how well they hold line and grade.

use crate::quantity::{Force, Length, Ratio};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// A ratio as one value or a span; what the source leaves out is absent.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RatioSpanRow {
    /// What the ratio is.
    pub what: Field<Words>,
    /// Case or ground that it is for.
    pub case: Option<Field<Words>>,
    /// What it is a share of.
    pub of: Option<Field<Words>>,
    /// The value, or the mean where there is a span too.
    pub value: Option<Field<Ratio>>,
    /// Low end, or the least where there is no high end.
    pub low: Option<Field<Ratio>>,
    /// High end, or the most where there is no low end.
    pub high: Option<Field<Ratio>>,
}

/// Range of a method as printed.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MethodRangeRow {
    /// Method.
    pub method: Field<Words>,
    /// Smallest diameter.
    pub diameter_from: Option<Field<Length>>,
    /// Largest diameter.
    pub diameter_to: Option<Field<Length>>,
    /// Shortest usual drive.
    pub length_from: Option<Field<Length>>,
    /// Longest usual drive.
    pub length_to: Option<Field<Length>>,
    /// Largest depth.
    pub depth_to: Option<Field<Length>>,
    /// Accuracy, plus or minus.
    pub accuracy: Option<Field<Length>>,
    /// Accuracy, plus or minus, as a share of the length.
    pub accuracy_share: Option<Field<Ratio>>,
    /// Typical use.
    pub typical_use: Option<Field<Words>>,
}

/// A pipe material listed for a method.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MethodMaterialRow {
    /// Method.
    pub method: Field<Words>,
    /// Material.
    pub material: Field<Words>,
}

/// How usual a method is for a service; not what it is able to do.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ServiceSuitabilityRow {
    /// Method.
    pub method: Field<Words>,
    /// Service or application.
    pub service: Field<Words>,
    /// How the table ranks it.
    pub standing: Field<Words>,
}

/// Tolerance or error of line and grade, plus or minus.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LineToleranceRow {
    /// Method.
    pub method: Field<Words>,
    /// Whether it is asked for, reached or a locating error.
    pub kind: Field<Words>,
    /// Smallest nominal size.
    pub size_from: Option<Field<Length>>,
    /// Largest nominal size.
    pub size_to: Option<Field<Length>>,
    /// Length of drive it is for.
    pub drive: Option<Field<Length>>,
    /// Sideways.
    pub line: Option<Field<Length>>,
    /// In level.
    pub grade: Option<Field<Length>>,
    /// Where the source does not say in which direction.
    pub either: Option<Field<Length>>,
    /// Low end, as a share.
    pub share_low: Option<Field<Ratio>>,
    /// High end, as a share.
    pub share_high: Option<Field<Ratio>>,
    /// What it is a share of.
    pub share_of: Option<Field<Words>>,
}

/// A limit or figure of pilot-tube boring.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PilotLimitRow {
    /// What it is.
    pub what: Field<Words>,
    /// The length.
    pub value: Option<Field<Length>>,
    /// Low end of a length.
    pub low: Option<Field<Length>>,
    /// High end of a length.
    pub high: Option<Field<Length>>,
    /// SPT N below this.
    pub blows_below: Option<Field<Ratio>>,
    /// Force.
    pub force: Option<Field<Force>>,
}

/// Length put in per shift or day.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProductionRateRow {
    /// Method and conditions.
    pub method: Field<Words>,
    /// The length.
    pub value: Option<Field<Length>>,
    /// Low end.
    pub low: Option<Field<Length>>,
    /// High end.
    pub high: Option<Field<Length>>,
    /// Smallest nominal size of pipe that it is for.
    pub size_from: Option<Field<Length>>,
    /// Largest nominal size of pipe that it is for.
    pub size_to: Option<Field<Length>>,
    /// Shift or day.
    pub per: Field<Words>,
}

/// Shifts for one piece of work beside the bore.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StageShiftsRow {
    /// The work.
    pub what: Field<Words>,
    /// Shifts, low.
    pub low: Field<Ratio>,
    /// Shifts, likely.
    pub likely: Field<Ratio>,
    /// Shifts, high.
    pub high: Field<Ratio>,
    /// Depth that they are for each time.
    pub per_length: Option<Field<Length>>,
}
