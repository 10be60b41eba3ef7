//! Drive x pipe x method: the forces of each stage, and the checks they meet. No heap, no input or output.

mod along;
mod assess;
mod body;
mod column;
mod either;
mod figure;
mod figures;
mod front;
mod jacking;
mod left_out;
mod models;
mod not_given;
mod profile;
mod pullback;
mod rest;
mod rules;
mod scheme;
mod sheet;
mod shove;
mod stage;
mod stem;
mod walked;

pub use crate::handbook::Method;
pub use along::{Gain, Point, StageProfile};
pub use assess::{assess, explain, is_offered};
pub use body::{Body, Stage};
pub use figure::Figure;
pub use figures::figures;
pub use jacking::stations::{PlacedStations, Stations, stations};
pub use jacking::wall::{WallNeeded, wall_needed};
pub use left_out::left_out;
pub use models::{FrictionModel, ModelForce, Over, SoilView, friction_models, model_forces};
pub use profile::{moving, profile, pushes};
pub use scheme::Scheme;
pub use sheet::{Sheet, Step};
pub use shove::{Bound, Shove, StopBy, bound, gauge, shove_plan, shoves};
