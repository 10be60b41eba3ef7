//! What a rigid pipe bears in service, by the test between three edges.

use crate::quantity::{Length, LineLoad, Pressure};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// Crushing strength by class: force per length of pipe over its diameter.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CrushingClassRow {
    /// Standard.
    pub standard: Field<Words>,
    /// Class.
    pub class: Field<Words>,
    /// At a crack of 0.01 in.
    pub cracked: Option<Field<Pressure>>,
    /// Ultimate.
    pub ultimate: Field<Pressure>,
}

/// Crushing strength by nominal size.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ClayCrushingRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Least force per length.
    pub strength: Field<LineLoad>,
}
