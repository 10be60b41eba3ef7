//! Room for pits and plant, cover and clear distances.

use crate::quantity::{Area, Length, Ratio};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// Size of a pit, or an addition to the pipe or machine.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShaftSizeRow {
    /// Jacking, launch or reception.
    pub pit: Field<Words>,
    /// Method.
    pub method: Field<Words>,
    /// Which side of the pit.
    pub side: Field<Words>,
    /// What the figure is added to; absent where it is the side itself.
    pub added_to: Option<Field<Words>>,
    /// The figure.
    pub value: Option<Field<Length>>,
    /// Low end, or the least.
    pub low: Option<Field<Length>>,
    /// High end, or the most.
    pub high: Option<Field<Length>>,
}

/// Area needed at the launch.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WorkAreaRow {
    /// Work.
    pub what: Field<Words>,
    /// Width.
    pub width: Option<Field<Length>>,
    /// Length.
    pub length: Option<Field<Length>>,
    /// Area, low end.
    pub area_low: Option<Field<Area>>,
    /// Area, high end.
    pub area_high: Option<Field<Area>>,
    /// Drives longer than this.
    pub drive_over: Option<Field<Length>>,
    /// Smallest size.
    pub size_from: Option<Field<Length>>,
    /// Largest size.
    pub size_to: Option<Field<Length>>,
}

/// Least cover.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MinimumCoverRow {
    /// Method.
    pub method: Field<Words>,
    /// Smallest diameter.
    pub diameter_from: Option<Field<Length>>,
    /// Largest diameter.
    pub diameter_to: Option<Field<Length>>,
    /// Ground it is limited to.
    pub ground: Option<Field<Words>>,
    /// Least cover.
    pub cover: Option<Field<Length>>,
    /// Least cover over outside diameter, low end.
    pub times_low: Option<Field<Ratio>>,
    /// Least cover over outside diameter, high end.
    pub times_high: Option<Field<Ratio>>,
}

/// A clear distance.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SeparationRow {
    /// Between what.
    pub what: Field<Words>,
    /// Least distance.
    pub clear: Option<Field<Length>>,
    /// Preferred distance.
    pub preferred: Option<Field<Length>>,
    /// Least distance as a multiple.
    pub times: Option<Field<Ratio>>,
    /// What it is a multiple of.
    pub times_of: Option<Field<Words>>,
}
