//! What both methods share: does the ground suit, is the drive within the published length, does the invert keep its
//! tolerance.

mod amounts;
pub(crate) mod carried;
pub(crate) mod carrier;
mod cost;
pub(crate) mod face;
pub(crate) mod face_support;
mod figures;
mod ground;
mod into_bore;
mod length;
mod line;
pub(crate) mod movement;
pub(crate) mod pits;
mod plan;
pub(crate) mod room;
pub(crate) mod sewer;
mod sight;
mod stress;
pub(crate) mod time;
pub(crate) mod weight;

pub use amounts::{Amounts, StageSpoil, amounts};
pub use cost::{CostLine, CostPlan, cost_plan};
pub use figures::{SiteFigure, Topic, site_figures};
pub(crate) use ground::{ground, ground_doubt, usual};
pub(crate) use into_bore::{closes, stands};
pub(crate) use length::{diameter, length};
pub use line::invert_uncertainty;
pub(crate) use line::{invert, is_held_by_spacers};
pub(crate) use movement::Moves;
pub use movement::trough;
pub(crate) use pits::Place;
pub(crate) use plan::NO_GRAVITY;
pub use plan::Plan;
pub(crate) use sight::sight;
pub use stress::{VerticalStress, resisting_stress, undrained_resisting_stress, vertical_stress};
pub(crate) use time::{Pushing, rate};
pub use time::{StageTime, TimePlan, time_plan};
