//! A pipe to choose from, as the engineer writes it.

use super::jacked::{EndScheme, PackerFile};
use super::site::LengthPriceFile;
use crate::quantity::{Angle, Area, Force, FromText, Length, LineLoad, Pressure, Ratio};
use crate::yaml::{Complaint, Field, FromScalar, Scalar, ToScalar, Words, key_words};
use serde::{Deserialize, Serialize};

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
