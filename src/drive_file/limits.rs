//! What is taken for a slip of unit or digit in any drive, in SI units.

/// Steepest slope of a drive on grade, either way.
pub(super) const STEEPEST: f64 = 0.5;
/// Longest drive that is taken: twice the longest that pipe was jacked without a pit between, some 2.5 km. What is longer
/// is a slip of unit or digit.
pub(super) const LONGEST: f64 = 5_000.0;
/// Deepest invert that is taken: pits for pipe of these sizes are seldom dug below 30 m.
pub(super) const DEEPEST: f64 = 60.0;
