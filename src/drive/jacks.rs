//! Jacks beyond their thrust: gauge, and stations along the pipe.

use crate::quantity::{Area, Force, Length, Ratio};
use crate::source::Cited;

/// What turns a force into a reading of the gauge.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Gauge {
    pub(crate) cylinder_area: Area,
    pub(crate) efficiency: Ratio,
}

/// How intermediate jacking stations are placed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct StationRules {
    /// Thrust of one, where the file gives it.
    pub(crate) thrust: Option<Force>,
    /// Share of that at which the first is put in, and each further one.
    pub(crate) first: Cited<Ratio>,
    pub(crate) next: Cited<Ratio>,
    /// Share at which they are put to work.
    pub(crate) start: Cited<Ratio>,
    /// Share of the main jacks to design for.
    pub(crate) main: Cited<Ratio>,
    /// Least inside diameter that people enter.
    pub(crate) entry: Cited<Length>,
}
