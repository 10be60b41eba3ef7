//! How far past its limit the high demand of a check may be.

use crate::quantity::Ratio;

/// What must be left of the safety factor in a limit at the high level, and the most that a check may be past it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Leeway {
    /// Left where a force is read while it acts and can be stopped below the limit.
    pub(crate) watched: Ratio,
    /// Left of what nobody can watch or undo.
    pub(crate) unwatched: Ratio,
    /// Left of a wall or plate that the line is set on.
    pub(crate) set_on: Ratio,
    /// The most a limit of use may be passed, which a survey reads and which hurts nobody at once.
    pub(crate) surveyed: Ratio,
    /// Times its limit that a force may be which is held below it, and freed where the drive stalls.
    pub(crate) held: Ratio,
    /// The most any limit may be passed.
    pub(crate) most: Ratio,
}
