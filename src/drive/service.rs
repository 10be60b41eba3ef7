//! What a rigid pipe bears in service.

use crate::quantity::{Length, LineLoad, Pressure, Ratio};
use crate::source::Cited;

/// A rigid pipe in service: its crushing strength, and what asks for it along the drive.
#[derive(Debug, Clone)]
pub struct PipeInService {
    /// Ultimate strength between three edges.
    pub(crate) strength: Cited<LineLoad>,
    /// Factor on it.
    pub(crate) safety: Ratio,
    /// Strength at the first crack, where the class has one, and the factor on it.
    pub(crate) cracked: Option<(LineLoad, Ratio)>,
    pub(crate) earth_bedding: Ratio,
    pub(crate) live_bedding: Ratio,
    /// Column that rests on the pipe whatever the cohesion, over the bore.
    pub(crate) floor_bores: Ratio,
    /// Least outside diameter at which cohesion counts.
    pub(crate) cohesion_from: Length,
    /// One a stretch; none where the cover is less than the table of live load has.
    pub(crate) places: Vec<Option<Place>>,
}

/// What loads the pipe in one stretch, beside the soil of the stretch.
#[derive(Debug, Clone, Copy)]
pub struct Place {
    /// Side pressure times friction of the ground over the pipe.
    pub(crate) lateral_friction: Ratio,
    /// Pressure of traffic at the least cover.
    pub(crate) live: Pressure,
    /// Impact on it.
    pub(crate) impact: Ratio,
}
