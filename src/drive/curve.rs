//! A line that is planned on a curve.

use super::earth::Ends;
use crate::quantity::{Length, Ratio};
use crate::source::Cited;

/// A curve that the whole of a jacked line is planned on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Curve {
    pub(crate) radius: Cited<Length>,
    /// Friction coefficient of the pipe on the outer side of the curve: at its best, and on the safe side.
    pub(crate) friction: Ends<Ratio>,
    /// Yield of welded steel over what pushing and bending may come to.
    pub(crate) steel_factor: Cited<Ratio>,
}
