//! Pipe jacking behind a guided bore: stem pushed, perhaps a casing, then the pipe.

pub(super) mod auger;
pub(super) mod behind;
mod capacity;
pub(super) mod casing;
pub(super) mod curve;
pub(super) mod end;
pub(super) mod figures;
mod free;
pub(super) mod jacked;
mod joint;
pub(super) mod service;
pub(super) mod stations;
mod steel;
pub(super) mod wall;

use super::stem::against_rig;
use super::walked::Walked;
use crate::check::Outcome;

pub(super) fn thrust(at: &Walked<'_>) -> Outcome {
    Ok(at.jacked()?.thrust().check(|thrust| against_rig(at, thrust, at.drive.rig.held_to)))
}
