//! The casing that goes in before the pipe.

use super::capacity::{FreeLength, SteelEnd};
use crate::quantity::{Force, Length, LineLoad};
use crate::source::Cited;

/// A temporary steel casing that is pushed behind the stem and that the pipe pushes out.
#[derive(Debug, Clone)]
pub(crate) struct Casing {
    pub(crate) outside_diameter: Length,
    /// What its wall tells; none where neither file nor table knows it.
    pub(crate) tube: Option<Box<CasingTube>>,
    /// Rating of its joints under thrust.
    pub(crate) joint_thrust: Option<Cited<Force>>,
}

/// Weight and section of a casing.
#[derive(Debug, Clone)]
pub(crate) struct CasingTube {
    pub(crate) weight: LineLoad,
    pub(crate) section: SteelEnd,
    /// The same with wall and yield at their best, where the file leaves them out.
    pub(crate) best: Option<SteelEnd>,
    /// The length that nothing holds, in the launch pit.
    pub(crate) free: FreeLength,
}
