//! The figures of a sheet, a file each: every number in them is one of the report.

mod bore;
mod drawing;
mod forces;
mod limits;
mod long_section;
mod score;
mod trough;

pub(super) use drawing::escaped;
pub use drawing::{Drawing, Figure, Scale};

use super::contents::{Report, is_looked_at};
use crate::quantity::UnitSystem;
use drawing::View;

/// Those of the scheme that leads, as far as there is something to draw.
pub(super) fn figures(report: &Report<'_>, system: UnitSystem) -> Vec<Figure> {
    let Report { drive, choice, .. } = *report;
    let Some(first) = choice.ranked.first().filter(|first| is_looked_at(first)) else { return Vec::new() };
    let view = View { drive, choice, first, system };
    let all = [
        long_section::draw(&view),
        Some(bore::draw(&view)),
        score::draw(&view),
        forces::draw(&view),
        limits::draw(&view),
        trough::draw(&view),
    ];
    all.into_iter().flatten().collect()
}
