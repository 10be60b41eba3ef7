//! The bore: drilling fluid, reaming steps, overcut and clearance.

use crate::quantity::{Length, MassDensity, Pressure, Ratio};
use crate::yaml::{Field, Words, key_words};
use serde::Deserialize;

/// Drilling fluid by guide. A column that is not there is another row's subject.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrillingFluidRow {
    /// Mass density.
    pub density: Option<Field<MassDensity>>,
    /// Specific gravity, low end.
    pub gravity_low: Option<Field<Ratio>>,
    /// Specific gravity, high end.
    pub gravity_high: Option<Field<Ratio>>,
    /// Drag on the outside area of the pipe.
    pub drag: Option<Field<Pressure>>,
    /// Coefficient of friction of the pipe on bore, ground or rollers.
    pub friction: Option<Field<Ratio>>,
    /// Load factor on friction.
    pub load_factor: Option<Field<Ratio>>,
}

/// Volume of drilling fluid over volume of soil.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FluidDemandRow {
    /// Soil.
    pub soil: Field<Words>,
    /// Least ratio.
    pub low: Field<Ratio>,
    /// High end, if one is printed.
    pub high: Option<Field<Ratio>>,
}

/// Size of a reaming step, as a ratio or as a length.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ReamStepRow {
    /// Where the habit applies.
    pub ground: Field<Words>,
    /// Reamer diameter over the bore before it, low end.
    pub ratio_low: Option<Field<Ratio>>,
    /// Reamer diameter over the bore before it, high end.
    pub ratio_high: Option<Field<Ratio>>,
    /// Growth in diameter, low end.
    pub step_low: Option<Field<Length>>,
    /// Growth in diameter, high end.
    pub step_high: Option<Field<Length>>,
}

key_words! {
    /// What an overcut counts on.
    pub enum Across: "radius or diameter" {
        /// The radius: the gap on one side.
        #[default]
        Radius = "radius",
        /// The diameter: bore less pipe.
        Diameter = "diameter",
    }
}

/// Overcut of a jacked or enlarged bore. Where only `high` is there, the source prints one value.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HoleOvercutRow {
    /// Method.
    pub method: Field<Words>,
    /// Radius or diameter.
    pub across: Field<Across>,
    /// `typical`, or `most` for a limit.
    pub usage: Field<Words>,
    /// Low end.
    pub low: Option<Field<Length>>,
    /// High end.
    pub high: Field<Length>,
    /// Smallest outside diameter (inclusive).
    pub od_from: Option<Field<Length>>,
    /// Largest outside diameter (inclusive).
    pub od_to: Option<Field<Length>>,
}
