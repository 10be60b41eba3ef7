//! What both methods share: does the ground suit, is the drive within the published length, does the invert keep its
//! tolerance.

mod amounts;
mod clay;
mod cost;
mod face;
mod figures;
mod ground;
mod length;
mod line;
mod movement;
mod pits;
mod room;
mod sewer;
mod stress;
mod time;

pub use amounts::{Amounts, StageSpoil, amounts};
pub use cost::{CostLine, CostPlan, cost_plan};
pub use face::asks_for_plug;
pub use figures::{SiteFigure, site_figures};
pub use ground::{ground, ground_doubt};
pub use length::range;
pub use line::{invert, invert_uncertainty};
pub use stress::{VerticalStress, resisting_stress, undrained_resisting_stress, vertical_stress};
pub use time::{StageTime, TimePlan, time_plan};

use crate::check::Checks;
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::law::{Calc, Recorder};
use crate::quantity::Length;

/// Adds the checks of flow, grade, cover, ground movement, face and pits. Those that need what the file does not give
/// are absent.
pub fn surroundings<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    sewer::checks(calc, drive, pipe, method, checks);
    room::checks(calc, drive, pipe, method, checks);
    movement::checks(calc, drive, pipe, method, checks);
    face::checks(calc, drive, pipe, method, checks);
    pits::checks(calc, drive, pipe, method, checks);
    time::check(drive, pipe, method, checks);
}

/// Diameter of the ground that is opened.
fn opened(pipe: &Pipe, method: Method) -> Length {
    match (method, pipe.casing_diameter()) {
        (Method::PipeJacking, Some(casing)) => casing.max(pipe.bore.value),
        _ => pipe.bore.value.max(pipe.outside_diameter.value),
    }
}
