//! What takes the thrust behind the launch pit.

use super::earth::{Column, Soil};
use crate::quantity::{Length, Ratio};
use crate::source::Cited;

/// The ground behind the launch pit, and the wall that leans on it.
#[derive(Debug, Clone)]
pub(crate) struct Reaction {
    /// Ground behind the wall. Load on the surface is not counted on.
    pub(crate) soil: Soil,
    /// Depth of the water table, if there is one.
    pub(crate) table: Option<Length>,
    /// Depth of the pipe invert below ground.
    pub(crate) invert: Length,
    /// Factor for the ground beside the wall.
    pub(crate) spread: Ratio,
    /// Resistance over thrust.
    pub(crate) safety: Cited<Ratio>,
    /// Movement at full resistance over the height of the wall.
    pub(crate) movement: Cited<Ratio>,
    /// The wall; none where it is still to be designed.
    pub(crate) wall: Option<ThrustWall>,
    /// Clay bears by its strength for as long as a drive takes, and not the lesser of that and drained ground.
    pub(crate) short: bool,
    /// The same in the ground at its best, where the file gives none of it.
    pub(crate) best: Option<Box<Reaction>>,
}

impl Reaction {
    /// The soil with its water.
    pub(crate) const fn column(&self) -> Column<'_> {
        Column { soil: &self.soil, table: self.table }
    }
}

/// The wall that takes the thrust.
#[derive(Debug, Clone, Copy)]
pub(crate) struct ThrustWall {
    pub(crate) width: Length,
    pub(crate) height: Length,
    /// Depth of its top; none where it stands half its height over the axis of thrust.
    pub(crate) top: Option<Length>,
    /// Depth of the axis of thrust; none where it is that of the pipe.
    pub(crate) thrust: Option<Length>,
    /// Diameter of an opening at the axis of thrust; 0 for none.
    pub(crate) eye: Length,
    /// The file says that its movement was checked apart.
    pub(crate) movement_checked: bool,
}
