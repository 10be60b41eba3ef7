//! Figures beside the checks: nothing is judged by them, and a reader wants them.

use super::{Method, jacking};
use crate::drive::{Drive, Pipe};
use crate::quantity::Shown;
use crate::source::Origin;

/// A figure that is not a check.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// What it is.
    pub label: String,
    /// The figure.
    pub value: Shown,
    /// What it rests on.
    pub basis: Origin,
    /// What a reader must know of it.
    pub note: Option<&'static str>,
}

/// The figures of one pipe put in by one method; none for a scheme that is excluded or cannot be.
#[must_use]
pub fn figures(drive: &Drive, pipe: &Pipe, method: Method) -> Vec<Figure> {
    if pipe.bars(method).next().is_some() {
        return Vec::new();
    }
    match (method, &pipe.jacked) {
        (Method::PipeJacking, Some(jacked)) => jacking::figures::figures(drive, pipe, jacked),
        _ => Vec::new(),
    }
}
