//! The most that is usual of plant that the file does not tell: what can be asked for without a word of the contractor.

use crate::quantity::{Force, Length, Ratio};
use crate::source::Cited;

/// What is usual.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Usual {
    pub(crate) stem: UsualStem,
    /// Side of a square thrust wall, where the width of the pit is not told.
    pub(crate) wall: Cited<Length>,
    /// Depth of the floor of a pit below the invert, where it is not told.
    pub(crate) floor: Length,
    /// Its height over the depth of the floor.
    pub(crate) wall_share: Cited<Ratio>,
}

/// A stout pilot stem.
#[derive(Debug, Clone, Copy)]
pub(crate) struct UsualStem {
    /// What its free length in the pit may be pushed with.
    pub(crate) buckling: Cited<Force>,
    /// The factor in it.
    pub(crate) factor: Cited<Ratio>,
    /// What its joints may be pushed with.
    pub(crate) joint: Cited<Force>,
}
