//! What both methods share: does the ground suit, is the drive within the published length.

mod ground;
mod length;

pub use ground::ground;
pub use length::length;
