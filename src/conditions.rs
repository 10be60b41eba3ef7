//! What both methods share: does the ground suit, is the drive within the published length, does the invert keep its
//! tolerance.

mod ground;
mod length;
mod line;
mod stress;

pub use ground::{ground, ground_doubt};
pub use length::length;
pub use line::{invert, invert_uncertainty};
pub use stress::{VerticalStress, vertical_stress};
