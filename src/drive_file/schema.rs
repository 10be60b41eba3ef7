//! The drive file as the engineer writes it.

use super::jacked::{EndScheme, PackerFile, SteeringFile};
use super::pulled::{
    AnnulusFile, CollapsedBoreFile, Hole, LaydownFile, PullHeadFile, PushAssistFile, ReactionFile, ReturnsFile,
    StemRemovalFile, VacuumFile,
};
use super::site::{CrossingFile, FlowFile, LengthPriceFile, PaceFile, PitSpaceFile, SurfaceFile};
use crate::handbook::{CriterionKind, GroundClass, GroundHazard, Lubrication, Pilot, Service, Spoil, Treatment};
use crate::quantity::{
    Angle, Area, Force, FromText, Length, LineLoad, Pressure, Ratio, ThermodynamicTemperature, Time, Torque,
    UnitWeight, Velocity,
};
use crate::yaml::{Complaint, Field, FromScalar, Scalar, ToScalar, Words, key_words};
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
    pub face: Option<ForceBandFile>,
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

/// A stretch of like ground.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct StretchFile {
    /// Where it begins, measured from the launch pit; the end of the stretch before if left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<Field<Length>>,
    /// Where it ends; the last one may leave it out and then ends at the reception pit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to: Option<Field<Length>>,
    /// Class.
    pub class: Field<GroundClass>,
    /// The other ground of a mixed face.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mixed_with: Option<Field<GroundClass>>,
    /// Depth of the water table below ground here, where it is not that of the drive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub groundwater: Option<Field<OrNone<Length>>>,
    /// Standard penetration test blow count.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spt_n: Option<Field<Ratio>>,
    /// Largest stone expected; `0 mm` for none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub largest_stone: Option<Field<Length>>,
    /// What is done against water at the face, for the ground of this stretch.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub treatment: Option<Field<Treatment>>,
    /// Hazards that the class does not tell.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<Field<GroundHazard>>,
    /// Unit friction on everything in the bore, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_friction: Option<PressureBandFile>,
    /// Properties of the soil, for the friction models that are shown beside the band.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soil: Option<SoilFile>,
}

/// Properties of the soil that holds the pipe, and of the layers over it.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct SoilFile {
    /// Unit weight above water.
    pub moist: Field<UnitWeight>,
    /// Unit weight below water, water included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saturated: Option<Field<UnitWeight>>,
    /// Unit weight below water less that of water; stands in for `saturated`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub buoyant: Option<Field<UnitWeight>>,
    /// Friction angle.
    pub friction_angle: Field<Angle>,
    /// Shear modulus, for the pressure that the bore fluid may have.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shear_modulus: Option<Field<Pressure>>,
    /// Undrained strength of clay.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undrained_strength: Option<Field<Pressure>>,
    /// Cohesion that the earth load in service may count on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cohesion: Option<Field<Pressure>>,
    /// Undrained modulus of elasticity of clay.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub undrained_modulus: Option<Field<Pressure>>,
    /// Load on the surface.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surcharge: Option<Field<Pressure>>,
    /// Layers over the soil that holds the pipe, from the surface down.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub layers: Vec<LayerFile>,
}

/// A layer over the soil that holds the pipe.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct LayerFile {
    /// Thickness.
    pub thickness: Field<Length>,
    /// Unit weight above water.
    pub moist: Field<UnitWeight>,
    /// Unit weight below water, water included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saturated: Option<Field<UnitWeight>>,
    /// Unit weight below water less that of water; stands in for `saturated`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub buoyant: Option<Field<UnitWeight>>,
    /// Friction angle.
    pub friction_angle: Field<Angle>,
}

/// Low, likely and high pressure.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct PressureBandFile {
    /// Low.
    pub low: Field<Pressure>,
    /// Likely.
    pub likely: Field<Pressure>,
    /// High.
    pub high: Field<Pressure>,
}

/// Low, likely and high force.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct ForceBandFile {
    /// Low.
    pub low: Field<Force>,
    /// Likely.
    pub likely: Field<Force>,
    /// High.
    pub high: Field<Force>,
}

/// Low, likely and high torque.
#[derive(Debug, Clone, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct TorqueBandFile {
    /// Low.
    pub low: Field<Torque>,
    /// Likely.
    pub likely: Field<Torque>,
    /// High.
    pub high: Field<Torque>,
}

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
    pub reamer: Option<ForceBandFile>,
    /// Torque of the reamer. No formula for it is agreed on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reaming_torque: Option<TorqueBandFile>,
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

/// Pipe material as designated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Material {
    /// Vitrified clay jacking pipe.
    #[default]
    Clay,
    /// PE 100.
    Pe100,
    /// PE 80.
    Pe80,
    /// PE4710.
    Pe4710,
    /// HDPE of older or undeclared designation (PE3408 class).
    Hdpe,
    /// MDPE (PE2406 class).
    Mdpe,
    /// Reinforced concrete jacking pipe.
    Concrete,
    /// Steel.
    Steel,
    /// Glass-reinforced plastic.
    Grp,
    /// Polymer concrete.
    PolymerConcrete,
    /// Ductile iron.
    DuctileIron,
    /// PVC.
    Pvc,
    /// PVC pressure pipe, butt-fused into a string.
    PvcFused,
    /// PVC pressure pipe with joints that hold pull.
    PvcRestrained,
}
key_words!(Material, "a pipe material", {
    "clay" => Material::Clay,
    "pe100" => Material::Pe100,
    "pe80" => Material::Pe80,
    "pe4710" => Material::Pe4710,
    "hdpe" => Material::Hdpe,
    "mdpe" => Material::Mdpe,
    "concrete" => Material::Concrete,
    "steel" => Material::Steel,
    "grp" => Material::Grp,
    "polymer_concrete" => Material::PolymerConcrete,
    "ductile_iron" => Material::DuctileIron,
    "pvc" => Material::Pvc,
    "pvc_fused" => Material::PvcFused,
    "pvc_restrained" => Material::PvcRestrained,
}, meanings {
    "vitrified_clay" => ["clay"],
    "vcp" => ["clay"],
    "rcp" => ["concrete"],
    "reinforced_concrete" => ["concrete"],
    "dip" => ["ductile_iron"],
    "iron" => ["ductile_iron"],
    "frp" => ["grp"],
    "fiberglass" => ["grp"],
    "pe" => ["pe100", "pe4710"],
    "polyethylene" => ["pe100", "pe4710"],
    "hdpe_100" => ["pe100"],
    "fpvc" => ["pvc_fused"],
});

/// Dimension series of PE pipe.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Series {
    /// ISO 4427, nominal size is the outside diameter in mm.
    #[default]
    Iso,
    /// Iron pipe sizes, nominal size in inches.
    Ips,
}
key_words!(Series, "a series of pipe sizes", { "iso" => Series::Iso, "ips" => Series::Ips });

/// Certificate of clay strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Certificate {
    /// Not known.
    #[default]
    Unknown,
    /// ASTM C1208.
    AstmC1208,
    /// EN 295-7.
    En295,
}
key_words!(Certificate, "a certificate of strength", {
    "unknown" => Certificate::Unknown,
    "astm_c1208" => Certificate::AstmC1208,
    "en_295_7" => Certificate::En295,
});

/// Crushing strength of a rigid pipe.
#[derive(Debug, Clone, PartialEq)]
pub enum CrushingFile {
    /// Force per length between three edges.
    Strength(LineLoad),
    /// Key of a row of the table `crushing_class`.
    Class(String),
}

impl Default for CrushingFile {
    fn default() -> Self {
        Self::Class(String::new())
    }
}

impl FromScalar for CrushingFile {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        match scalar {
            Scalar::Text(text) if text.starts_with(|c: char| c.is_ascii_alphabetic()) => {
                Ok(Self::Class(text.to_owned()))
            }
            other => LineLoad::from_scalar(other).map(Self::Strength).map_err(|complaint| {
                let advice = complaint.advice.clone().unwrap_or_default();
                complaint.advise(format!("{advice}, or a class such as \"en_295_160\""))
            }),
        }
    }
}

impl ToScalar for CrushingFile {
    fn to_scalar(&self) -> String {
        match self {
            Self::Strength(strength) => strength.to_text(),
            Self::Class(class) => class.clone(),
        }
    }
}

/// What is left round a rigid pipe in service.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Annulus {
    /// It is not grouted.
    #[default]
    Open,
    /// It is grouted full, specified and recorded.
    Grouted,
}
key_words!(Annulus, "what is left round the pipe", { "open" => Annulus::Open, "grouted" => Annulus::Grouted });

/// What drives over the pipe.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Traffic {
    /// Nothing.
    None,
    /// A road.
    #[default]
    Highway,
    /// A railway.
    Railway,
}
impl Traffic {
    /// What drives over ground with this on it.
    pub(crate) const fn of(over: super::Over) -> Self {
        match over {
            super::Over::Open => Self::None,
            super::Over::Road => Self::Highway,
            super::Over::Railway => Self::Railway,
        }
    }
}
key_words!(Traffic, "the traffic over the pipe", {
    "none" => Traffic::None,
    "highway" => Traffic::Highway,
    "railway" => Traffic::Railway,
});

/// A pipe to choose from.
#[derive(Debug, Clone, PartialEq, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub struct CandidateFile {
    /// Material.
    pub material: Field<Material>,
    /// Nominal size, as in the table of the series.
    pub size: Field<Length>,
    /// Series of a PE pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub series: Option<Field<Series>>,
    /// Dimension ratio of a PE pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sdr: Option<Field<Ratio>>,
    /// Outside diameter, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside_diameter: Option<Field<Length>>,
    /// Inside diameter, instead of the wall or the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside_diameter: Option<Field<Length>>,
    /// Minimum wall, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wall: Option<Field<Length>>,
    /// Weight per length of a jacking pipe, instead of the table.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weight: Option<Field<LineLoad>>,
    /// End bearing area of a jacking pipe, instead of the one behind its rating.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_bearing_area: Option<Field<Area>>,
    /// Ovality of a PE pipe as delivered: deviation over mean diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ovality: Option<Field<Ratio>>,
    /// Certificate of strength of a clay pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub certificate: Option<Field<Certificate>>,
    /// Safety factor on uniform stress of a clay pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub factor: Option<Field<Ratio>>,
    /// Mean over greatest stress in the joint of a jacking pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_stress_ratio: Option<Field<Ratio>>,
    /// Length of one pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pipe_length: Option<Field<Length>>,
    /// Strength in compression: of concrete on cylinders, of GRP along the pipe, of polymer concrete.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strength: Option<Field<Pressure>>,
    /// Cube strength of concrete, of its class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cube_strength: Option<Field<Pressure>>,
    /// Design strength of concrete or steel, for the scheme that asks for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design_strength: Option<Field<Pressure>>,
    /// Least yield strength of steel, instead of a grade.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub yield_strength: Option<Field<Pressure>>,
    /// Grade of steel, a key of the table `steel_grade`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steel_grade: Option<Field<Words>>,
    /// Grade of concrete, as in the table `concrete_strength`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub concrete_grade: Option<Field<Words>>,
    /// Scheme of the end capacity of concrete or steel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scheme: Option<Field<EndScheme>>,
    /// Greatest jacking force that the pipe maker allows, all factors in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rated_force: Option<Field<Force>>,
    /// The packer in the joints of a jacked pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub packer: Option<PackerFile>,
    /// How far the end of a jacking pipe may be out of square, across its diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_squareness: Option<Field<Length>>,
    /// Length of a jacked steel pipe that nothing holds, in the pit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub free_length: Option<Field<Length>>,
    /// Strength of a fused PVC joint over that of the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_factor: Option<Field<Ratio>>,
    /// Pull that a restrained joint may take, by its maker.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_pull: Option<Field<Force>>,
    /// Pressure rating of a restrained joint whose maker gives no pull.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_pressure: Option<Field<Pressure>>,
    /// What deflection leaves of the pull by `joint_pressure`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_deflection_factor: Option<Field<Ratio>>,
    /// Deflection that a restrained joint may take, by its maker.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_deflection: Option<Field<Angle>>,
    /// Outside diameter of the joint of a pulled pipe, where it is wider than the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint_diameter: Option<Field<Length>>,
    /// Outside diameter of a casing pushed behind the stem before the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing: Option<Field<Length>>,
    /// Wall of that casing, for its weight and its strength.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing_wall: Option<Field<Length>>,
    /// Yield strength of that casing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing_yield_strength: Option<Field<Pressure>>,
    /// Safety factor on that strength.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing_factor: Option<Field<Ratio>>,
    /// Length of that casing that nothing holds, in the launch pit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing_free_length: Option<Field<Length>>,
    /// Thrust that the joints of that casing may take.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub casing_joint_thrust: Option<Field<Force>>,
    /// Final bore round the pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore: Option<Field<Length>>,
    /// Strength of a rigid pipe between three edges in the test of crushing, or its class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub crushing: Option<Field<CrushingFile>>,
    /// What is left round a rigid pipe in service.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub annulus: Option<Field<Annulus>>,
    /// Bores of the reaming passes before the one that brings the pipe, from the smallest; `[]` for none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub passes: Option<Vec<Field<Length>>>,
    /// Price of the pipe, in the user's money: of every pipe listed, or of none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<LengthPriceFile>,
}

/// A quantity or the word `none`.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum OrNone<Q> {
    /// There is none.
    #[default]
    None,
    /// There is this.
    Some(Q),
}

impl<Q: FromText + Default> FromScalar for OrNone<Q> {
    fn from_scalar(scalar: Scalar<'_>) -> Result<Self, Complaint> {
        match scalar {
            Scalar::Text("none") => Ok(Self::None),
            other => Q::from_scalar(other).map(Self::Some).map_err(|complaint| {
                let advice = complaint.advice.clone().unwrap_or_default();
                complaint.advise(format!("{advice}, or \"none\""))
            }),
        }
    }
}

impl<Q: FromText> ToScalar for OrNone<Q> {
    fn to_scalar(&self) -> String {
        match self {
            Self::None => "none".to_owned(),
            Self::Some(quantity) => quantity.to_text(),
        }
    }
}
