//! Invert against its tolerance.

use super::plan::{NO_GRAVITY, Plan};
use crate::check::{Outcome, at_most, only};
use crate::handbook::{Method, Service};
use crate::quantity::{Length, Role};

/// How far the invert may be from the design line: the accuracy of the pilot, and the annulus that is left round the
/// pipe, in which it lies at the bottom or floats to the crown until it is grouted, less what spacers take of it. A
/// pipe pushed close behind the stem leaves none.
#[must_use]
pub fn invert_uncertainty(plan: &Plan<'_>) -> Length {
    let Plan { drive, pipe, method } = *plan;
    let around = match (method, pipe.casing_diameter()) {
        (Method::PipeJacking, Some(casing)) => casing.max(pipe.bore.value),
        (Method::PipeJacking, None) => pipe.cut(),
        _ => pipe.bore.value,
    };
    let spacers = match method {
        Method::PipeJacking => Length::default(),
        Method::Pullback => 2.0 * drive.annulus.spacer,
    };
    drive.pilot_accuracy.value + (around - pipe.outside_diameter.value - spacers)
}

/// A screen for gravity sewers: grouting, spacers and survey can settle what it asks care for.
pub(crate) fn invert(at: &Plan<'_>) -> Outcome {
    let Plan { drive, method, .. } = *at;
    only(drive.service == Service::GravitySewer, NO_GRAVITY)?;
    let check = at_most(Role::Offset, invert_uncertainty(at), drive.tolerance);
    let annulus = &drive.annulus;
    Ok(check.with_note(match (method, annulus.spacer > Length::default(), annulus.grouted) {
        (Method::Pullback, true, _) => SPACED,
        (Method::Pullback, false, true) => GROUTED,
        _ => LEFT,
    }))
}

const LEFT: &str = "accuracy of the pilot and the annulus left round the pipe, until it is grouted";
const GROUTED: &str = "accuracy of the pilot and the annulus: in liquid grout the pipe floats, and sets where it is";
const SPACED: &str = "accuracy of the pilot and what the spacers leave of the annulus";
