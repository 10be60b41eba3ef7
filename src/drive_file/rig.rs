//! Rig and pilot stem, as the engineer writes them.

use super::band::{OrNone, TorqueBandFile};
use crate::quantity::{Area, Force, Length, Ratio, Torque};
use crate::yaml::Field;
use serde::{Deserialize, Serialize};

/// The machine in the launch pit.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct RigFile {
    /// Greatest thrust.
    pub thrust: Field<Force>,
    /// Greatest pull.
    pub pull: Field<Force>,
    /// Greatest torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque: Option<Field<Torque>>,
    /// Torque of the auger while casing or pipe is pushed; needs `torque`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub auger_torque: Option<TorqueBandFile>,
    /// Piston area of all main jacks, for readings of their gauge.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cylinder_area: Option<Field<Area>>,
    /// Force of the jacks over pressure times area.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub efficiency: Option<Field<Ratio>>,
    /// Thrust of an intermediate jacking station.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub station_thrust: Option<Field<Force>>,
}

/// The pilot stem.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct StemFile {
    /// Outside diameter, or `none` for a bore without a stem.
    pub outside_diameter: Field<OrNone<Length>>,
    /// Diameter of the pilot head, where it is larger than the stem.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub head_diameter: Option<Field<Length>>,
    /// Wall of the stem, for weight and buckling.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wall: Option<Field<Length>>,
    /// Longest length of stem without support in the launch pit; with `wall`, buckling is checked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub free_length: Option<Field<Length>>,
    /// Rating of a joint under thrust.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_thrust: Option<Field<Force>>,
    /// Rating of a joint under pull.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_pull: Option<Field<Force>>,
    /// Rating of a joint under torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_torque: Option<Field<Torque>>,
    /// Torque while the stem is pushed; needs `joint_torque` or that of the rig.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque: Option<TorqueBandFile>,
}
