//! Pits and the thrust wall, as the engineer writes them.

use super::ground::SoilFile;
use super::site::PitSpaceFile;
use crate::quantity::{Area, Length, Ratio};
use crate::yaml::{Field, key_words};
use serde::{Deserialize, Serialize};

/// A pit.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PitFile {
    /// Depth of the pipe invert below ground.
    pub invert_depth: Field<Length>,
    /// Sides, floor and crane.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub space: Option<PitSpaceFile>,
    /// Working area at the surface, pit included, lay-down of a string not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub area: Option<Field<Area>>,
    /// Ground behind the wall that takes the thrust, launch pit only; that of the first stretch if left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soil: Option<SoilFile>,
    /// The wall that takes the thrust, launch pit only.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wall: Option<WallFile>,
}

/// The wall in the launch pit that takes the thrust.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct WallFile {
    /// Width.
    pub width: Field<Length>,
    /// Height.
    pub height: Field<Length>,
    /// Depth of its top below ground.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub top_depth: Option<Field<Length>>,
    /// Depth of the axis of thrust below ground, where it is not that of the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thrust_depth: Option<Field<Length>>,
    /// Diameter of an opening in the wall at the axis of thrust.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub eye_diameter: Option<Field<Length>>,
    /// Factor for the ground beside the wall.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread: Option<Field<Ratio>>,
    /// Resistance over thrust.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub safety: Option<Field<Ratio>>,
    /// Whether the movement of the wall was checked apart.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub movement: Option<Field<Movement>>,
}

/// Whether the movement of a wall was checked apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Movement {
    /// It was not.
    #[default]
    NotChecked,
    /// It was, and the line bears it.
    Checked,
}
key_words!(Movement, "how the movement of the wall is known", {
    "not_checked" => Movement::NotChecked,
    "checked" => Movement::Checked,
});
