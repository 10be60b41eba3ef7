//! The drive file as the engineer writes it.

use super::band::{BandFile, OrNone};
use super::candidate::{CandidateFile, Traffic};
use super::ground::StretchFile;
use super::jacked::SteeringFile;
use super::pit::PitFile;
use super::pull::PullFile;
use super::pulled::{AnnulusFile, VacuumFile};
use super::rig::{RigFile, StemFile};
use super::site::{CrossingFile, FlowFile, PaceFile, SurfaceFile};
use crate::handbook::{CriterionKind, Lubrication, Pilot, Service, Spoil};
use crate::quantity::{Force, Length, Ratio};
use crate::yaml::{Field, Words};
use serde::{Deserialize, Serialize};

/// One drive, from its launch pit to its reception pit, and the pipes to choose from.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct DriveFile {
    /// What the drive is called in the report.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<Field<Words>>,
    /// What the pipe carries.
    pub service: Field<Service>,
    /// From pit wall to pit wall, along the pipe.
    pub length: Field<Length>,
    /// Where stem and jacking pipe are pushed from.
    pub launch: PitFile,
    /// Where the stem comes out and a pulled pipe goes in. May be left out where `grade` is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reception: Option<PitFile>,
    /// Rise from the launch pit to the reception pit over the length; negative when the drive falls.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grade: Option<Field<Ratio>>,
    /// Depth of the invert between the pits, where the surface is not even.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub depths: Vec<DepthFile>,
    /// Depth of the water table below ground, or `none`.
    pub groundwater: Field<OrNone<Length>>,
    /// Lubrication of a jacked pipe.
    pub lubrication: Field<Lubrication>,
    /// The ground from launch to reception.
    pub ground: Vec<StretchFile>,
    /// Where what moves is planned to stand for more than a shift.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stops: Vec<StopFile>,
    /// The machine in the launch pit.
    pub rig: RigFile,
    /// The pilot stem.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stem: Option<StemFile>,
    /// How soil is removed at an enlarging head.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spoil: Option<Field<Spoil>>,
    /// How the pilot makes its way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pilot: Option<Field<Pilot>>,
    /// Thickness of the edge that cuts, where an open edge does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cutting_edge: Option<Field<Length>>,
    /// Resistance at the enlarging head, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub face: Option<BandFile<Force>>,
    /// How far the joints of a jacked pipe turn.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steering: Option<SteeringFile>,
    /// Needed for pipes that are pulled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pull: Option<PullFile>,
    /// Tolerance of the invert, either way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<Field<Length>>,
    /// Flow that a gravity sewer is built for. Its greatest gives the inside diameter needed where no pipe is named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design_flow: Option<FlowFile>,
    /// Distance from a high spot of a waving invert to the next low one, gravity sewers only.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub half_wave: Option<Field<Length>>,
    /// The surface over the bore.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surface: Option<SurfaceFile>,
    /// Services that the bore crosses.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub crossings: Vec<CrossingFile>,
    /// Length of whole soil kept in the mouth of a casing against ground water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plug: Option<Field<Length>>,
    /// How far the work gets in a shift, and what a shift costs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pace: Option<PaceFile>,
    /// What drives over the pipe in service.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub traffic: Option<Field<Traffic>>,
    /// What becomes of the annulus round a pulled pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub annulus: Option<AnnulusFile>,
    /// Vacuum that a pressure main may see in service.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vacuum: Option<VacuumFile>,
    /// The line that the drive is a part of, where it is longer than one drive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line: Option<LineFile>,
    /// Weights of the criteria of the score, in place of those of the table.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub weights: Vec<WeightFile>,
    /// Inside diameter needed: pipes of every material are proposed beside those listed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub needed_inside_diameter: Option<Field<Length>>,
    /// Depth over diameter at the greatest design flow, where it gives the inside diameter needed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design_depth: Option<Field<Ratio>>,
    /// The pipes to choose from; may be left out where pipes are proposed.
    #[serde(default)]
    pub candidates: Vec<CandidateFile>,
}

/// A line of several drives.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct LineFile {
    /// From its first pit to its last.
    pub length: Field<Length>,
}

/// How much one criterion of the score counts.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct WeightFile {
    /// Criterion.
    pub criterion: Field<CriterionKind>,
    /// Weight, on any scale: only the proportions count.
    pub weight: Field<Ratio>,
}

/// Depth of the pipe invert at one place between the pits.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct DepthFile {
    /// Distance from the launch pit.
    pub at: Field<Length>,
    /// Depth of the pipe invert below ground.
    pub invert_depth: Field<Length>,
}

/// A stop of more than a shift.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct StopFile {
    /// How far what moves has come then: from the launch pit when pushed, from the reception pit when pulled.
    pub at: Field<Length>,
}
