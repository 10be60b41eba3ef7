//! Settlement above the bore and traffic on it. Volume loss, trough width and closure are ratio spans.

use crate::quantity::{Length, Pressure, Ratio};
use crate::yaml::{Field, Words};
use serde::Deserialize;

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
