//! The columns of each table. The type of a column is the check of its unit.

mod pipes;

pub use pipes::*;

mod methods;

pub use methods::*;

mod surface;

pub use surface::*;

mod service;

pub use service::*;

mod safety;

pub use safety::*;

mod pits;

pub use pits::*;

mod hydraulics;

pub use hydraulics::*;

mod soil;

pub use soil::*;

mod friction;

pub use friction::*;

mod bore;

pub use bore::*;

mod pulled;

pub use pulled::*;

mod score;

pub use score::*;

mod ground;

pub use ground::*;

mod pe;

pub use pe::*;

mod classes;

pub use classes::*;

use crate::quantity::{Angle, Force, Length, LineLoad, Pressure, Ratio, Time};
use crate::yaml::{Field, Words, key_words};
use serde::Deserialize;

/// A bibliography entry.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SourceRow {
    /// Authors or body, and title.
    pub title: Field<Words>,
    /// Publisher.
    pub publisher: Field<Words>,
    /// Edition or year.
    pub edition: Field<Words>,
    /// Standard, handbook, paper, agency document, guidance, or own.
    pub kind: Field<Words>,
    /// How it was consulted.
    pub consulted: Field<Words>,
}

/// A vitrified clay jacking pipe. The end bearing area is computed from the ratings.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClayPipeRow {
    /// Nominal size; not the true bore.
    pub size: Field<Length>,
    /// Average outside diameter.
    pub outside_diameter: Field<Length>,
    /// Weight per length.
    pub weight: Field<LineLoad>,
    /// Allowable jacking force printed at factor 2.5.
    pub rated_at_2_5: Field<Force>,
    /// Allowable jacking force printed at factor 3.0.
    pub rated_at_3_0: Field<Force>,
    /// Allowable jacking force printed at factor 3.5.
    pub rated_at_3_5: Field<Force>,
    /// Compressive strength the ratings rest on.
    pub rating_strength: Field<Pressure>,
}

/// Final bore of a pulled pipe.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoreRuleRow {
    /// Smallest outside diameter the rule is for (inclusive).
    pub od_from: Option<Field<Length>>,
    /// Largest outside diameter (exclusive).
    pub od_below: Option<Field<Length>>,
    /// Times the outside diameter.
    pub times: Field<Ratio>,
    /// Plus this.
    pub plus: Field<Length>,
}

key_words! {
    /// A way of putting a pipe into a guided bore.
    pub enum Method: "a method" {
        /// Rigid segments pushed in from the launch pit behind the stem.
        #[default]
        PipeJacking = "pipe jacking",
        /// A long pipe pulled back behind a reamer that makes the new bore larger than the pilot bore.
        Pullback = "pullback",
    }
}

crate::source::printed!(Method: key);

/// Published range of a method.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MethodLimitRow {
    /// Method.
    pub method: Field<Method>,
    /// Smallest outside diameter (inclusive).
    pub od_from: Option<Field<Length>>,
    /// Largest outside diameter (inclusive).
    pub od_to: Option<Field<Length>>,
    /// Longest drive.
    pub length: Field<Length>,
    /// How soil leaves the head, where the row is for that alone.
    pub spoil: Option<Field<Spoil>>,
}

key_words! {
    /// Family of a pipe material.
    pub enum Family: "a pipe family" {
        /// Vitrified clay.
        #[default]
        Clay = "clay",
        /// Polyethylene.
        Pe = "pe",
        /// Reinforced concrete.
        Concrete = "concrete",
        /// Steel.
        Steel = "steel",
        /// Glass-reinforced plastic.
        Grp = "grp",
        /// Polymer concrete.
        PolymerConcrete = "polymer_concrete",
        /// Ductile iron.
        DuctileIron = "ductile_iron",
        /// PVC.
        Pvc = "pvc",
        /// PVC, fused into a string.
        PvcFused = "pvc_fused",
        /// PVC with restrained joints.
        PvcRestrained = "pvc_restrained",
    }
}

key_words! {
    /// What the pipe will carry.
    pub enum Service: "a service" {
        /// Part-full gravity flow.
        #[default]
        GravitySewer = "gravity_sewer",
        /// Under internal pressure.
        PressureMain = "pressure_main",
        /// A casing for a carrier pipe laid later.
        Casing = "casing",
    }
    meanings {
        "water_main" => ["pressure_main"],
        "force_main" => ["pressure_main"],
        "rising_main" => ["pressure_main"],
        "gas_main" => ["pressure_main"],
        "storm_sewer" => ["gravity_sewer"],
        "storm_drain" => ["gravity_sewer"],
        "culvert" => ["gravity_sewer"],
        "sleeve" => ["casing"],
    }
}

/// A pipe family that a method or a service excludes.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExclusionRow {
    /// Family.
    pub family: Field<Family>,
    /// Method it cannot be put in by.
    pub method: Option<Field<Method>>,
    /// Service it cannot bear.
    pub service: Option<Field<Service>>,
    /// Why, in one sentence.
    pub reason: Field<Words>,
}

/// One ratio.
pub type RatioRow = Field<Ratio>;
/// One pressure.
pub type PressureRow = Field<Pressure>;
/// One length.
pub type LengthRow = Field<Length>;
/// One duration.
pub type DurationRow = Field<Time>;
/// One angle.
pub type AngleRow = Field<Angle>;
