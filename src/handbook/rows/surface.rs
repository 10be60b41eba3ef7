//! Settlement above the bore and traffic on it. Volume loss, trough width and closure are ratio spans.

use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// Straight line of trough width over depth of the axis.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TroughFitRow {
    /// Soil.
    pub soil: Field<Words>,
    /// Width per depth.
    pub slope: Field<Ratio>,
    /// Width at no depth.
    pub offset: Field<Length>,
    /// Smallest depth of the axis it is valid for.
    pub depth_from: Field<Length>,
    /// Largest depth of the axis it is valid for.
    pub depth_to: Field<Length>,
}

/// Traffic pressure by cover.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LiveLoadRow {
    /// Design load.
    pub load: Field<Words>,
    /// Cover.
    pub cover: Field<Length>,
    /// Pressure at the pipe.
    pub pressure: Field<Pressure>,
    /// Whether impact is included.
    pub impact: Field<Words>,
}

/// Wheels of a design truck.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WheelLoadRow {
    /// Design load.
    pub load: Field<Words>,
    /// Weight on one wheel.
    pub wheel: Field<Force>,
    /// Number of wheels.
    pub wheels: Field<Ratio>,
    /// Shorter side of the print.
    pub width: Field<Length>,
    /// Longer side of the print.
    pub length: Field<Length>,
    /// Distance between wheels.
    pub spacing: Field<Length>,
}

/// Impact factor by cover.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ImpactFactorRow {
    /// Highway or railway.
    pub load: Field<Words>,
    /// Smallest cover.
    pub cover_from: Field<Length>,
    /// Largest cover.
    pub cover_to: Option<Field<Length>>,
    /// Factor on the load.
    pub factor: Field<Ratio>,
}
