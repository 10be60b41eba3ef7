//! What both methods share: does the ground suit, is the drive within the published length, does the invert keep its
//! tolerance.

mod amounts;
mod clay;
mod cost;
pub(crate) mod face;
mod figures;
mod ground;
mod length;
mod line;
pub(crate) mod movement;
pub(crate) mod pits;
pub(crate) mod room;
pub(crate) mod sewer;
mod stress;
pub(crate) mod time;

pub use amounts::{Amounts, StageSpoil, amounts};
pub use cost::{CostLine, CostPlan, cost_plan};
pub use figures::{SiteFigure, site_figures};
pub(crate) use ground::{ground, ground_doubt};
pub(crate) use length::{diameter, length};
pub(crate) use line::invert;
pub use line::invert_uncertainty;
pub(crate) use movement::Moved;
pub(crate) use pits::Place;
pub use stress::{VerticalStress, resisting_stress, undrained_resisting_stress, vertical_stress};
pub use time::{StageTime, TimePlan, time_plan};

use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::quantity::Length;

/// A pipe, and how it is put in.
#[derive(Clone, Copy)]
pub(crate) struct Plan<'a> {
    pub(crate) drive: &'a Drive,
    pub(crate) pipe: &'a Pipe,
    pub(crate) method: Method,
}

impl Plan<'_> {
    fn is_jacked(&self) -> bool {
        self.method == Method::PipeJacking
    }

    /// Diameter of the ground that is opened.
    fn opened(&self) -> Length {
        let pipe = self.pipe;
        match (self.method, pipe.casing_diameter()) {
            (Method::PipeJacking, Some(casing)) => casing.max(pipe.bore.value),
            _ => pipe.bore.value.max(pipe.outside_diameter.value),
        }
    }
}

/// Why a check of line and grade is absent.
pub(crate) const NO_GRAVITY: &str = "it is no gravity sewer";
