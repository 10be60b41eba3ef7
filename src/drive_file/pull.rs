//! How a pipe is pulled, as the engineer writes it.

use super::band::BandFile;
use super::pulled::{
    CollapsedBoreFile, Hole, LaydownFile, PullHeadFile, PushAssistFile, ReactionFile, ReturnsFile, StemRemovalFile,
};
use crate::quantity::{Angle, Force, Length, Pressure, Ratio, ThermodynamicTemperature, Time, Torque, Velocity};
use crate::yaml::{Field, key_words};
use serde::{Deserialize, Serialize};

/// Contents of a pipe while it is pulled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Contents {
    /// Air.
    #[default]
    Empty,
    /// Water.
    Water,
    /// The fluid of the bore.
    Slurry,
}
key_words!(Contents, "the contents of the pipe", {
    "empty" => Contents::Empty,
    "water" => Contents::Water,
    "slurry" => Contents::Slurry,
});

/// What carries the string outside the bore.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Support {
    /// The ground.
    #[default]
    Ground,
    /// Rollers.
    Rollers,
}
key_words!(Support, "what carries the string", { "ground" => Support::Ground, "rollers" => Support::Rollers });

/// How sure the welds of a string are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Welds {
    /// Not known.
    #[default]
    Unknown,
    /// Butt fusion with records.
    Documented,
}
key_words!(Welds, "how the welds are known", { "unknown" => Welds::Unknown, "documented" => Welds::Documented });

/// Which table of pull stress governs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum StressEdition {
    /// The least of all that apply.
    #[default]
    Tightest,
    /// ASTM F1962, 1999 to 2011.
    F1962First,
    /// ASTM F1962-22.
    F1962Second,
    /// Handbook of PE Pipe, second edition.
    Ppi,
    /// ASTM F1804.
    F1804,
    /// DVGW GW 321.
    Gw321,
}
key_words!(StressEdition, "an edition of pull stress", {
    "tightest" => StressEdition::Tightest,
    "astm_f1962_1999" => StressEdition::F1962First,
    "astm_f1962_2022" => StressEdition::F1962Second,
    "ppi_2008" => StressEdition::Ppi,
    "astm_f1804" => StressEdition::F1804,
    "gw_321" => StressEdition::Gw321,
});

/// How a pipe is pulled.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PullFile {
    /// From first to last movement, stops included. Either this or `rate`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub duration: Option<Field<Time>>,
    /// Mean pull rate, stops included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate: Option<Field<Velocity>>,
    /// Mean temperature of the pipe wall.
    pub pipe_temperature: Field<ThermodynamicTemperature>,
    /// Contents while pulled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub contents: Option<Field<Contents>>,
    /// What carries the string outside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub string_on: Option<Field<Support>>,
    /// Slope of the ramp from laydown into the reception pit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ramp_angle: Option<Field<Angle>>,
    /// Radius of the string on the ramp.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bend_radius: Option<Field<Length>>,
    /// Length of the string beyond the length of the drive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub excess_length: Option<Field<Length>>,
    /// How long the bore fluid stands on the pipe, from its first entry until the annulus is grouted or drained.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fluid_stands_for: Option<Field<Time>>,
    /// Welds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub welds: Option<Field<Welds>>,
    /// Which table of pull stress governs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stress_edition: Option<Field<StressEdition>>,
    /// Resistance at the reamer, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reamer: Option<BandFile<Force>>,
    /// Torque of the reamer. No formula for it is agreed on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reaming_torque: Option<BandFile<Torque>>,
    /// A machine at the reception pit that pushes the tail of the string while it is pulled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub push_assist: Option<PushAssistFile>,
    /// What the bore is while the pipe comes in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hole: Option<Field<Hole>>,
    /// Drag of the bore fluid on the outside area of the pipe, instead of a pressure in the annulus.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_drag: Option<Field<Pressure>>,
    /// Pressure held inside the pipe during the pull.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside_pressure: Option<Field<Pressure>>,
    /// A length of bore that may fall on the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub collapsed_bore: Option<CollapsedBoreFile>,
    /// Deepest score that the pipe may take from the bore, over its wall.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub score: Option<Field<Ratio>>,
    /// Pull head and weak link.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pull_head: Option<PullHeadFile>,
    /// Room for the string.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub laydown: Option<LaydownFile>,
    /// Stops for the rods of the stem.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stem_removal: Option<StemRemovalFile>,
    /// Length along the drive that pit and trench leave for the ramp.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ramp_room: Option<Field<Length>>,
    /// What the rig leans on while it pulls.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reaction: Option<ReactionFile>,
    /// Flow of the bore fluid.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub returns: Option<ReturnsFile>,
    /// Temperature of the ground round the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground_temperature: Option<Field<ThermodynamicTemperature>>,
}
