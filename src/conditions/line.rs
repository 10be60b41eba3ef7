//! Invert against its tolerance.

use super::plan::{NO_GRAVITY, Plan};
use crate::check::{Outcome, Rule, at_least, at_most, only};
use crate::handbook::{Method, Service};
use crate::quantity::{Band, Length, Role};
use crate::source::Cited;

/// Play on the diameter that is left round the pipe, in which it lies at the bottom or floats to the crown until it is
/// grouted: less what spacers take of it, and of a jacked line only what the accuracy of installed lines does not hold.
pub(super) fn play(plan: &Plan<'_>) -> Length {
    let Plan { drive, pipe, method } = *plan;
    let around = match (method, pipe.casing_diameter()) {
        (Method::PipeJacking, Some(casing)) => casing.max(pipe.bore.value),
        (Method::PipeJacking, None) => pipe.cut(),
        _ => pipe.bore.value,
    };
    let held = match method {
        Method::PipeJacking => drive.overcut_in_accuracy,
        Method::Pullback => 2.0 * drive.annulus.spacer,
    };
    (around - pipe.outside_diameter.value - held).max(Length::default())
}

/// How far the invert may be from the design line: the error of the pilot, and likely half, at the high level all of the
/// play that is left round the pipe.
#[must_use]
pub fn invert_uncertainty(plan: &Plan<'_>) -> Band<Length> {
    let (error, play) = (plan.drive.pilot_error.value, play(plan));
    Band { low: error.low, likely: error.likely + play / 2.0, high: error.high + play }
}

/// A pilot that may be off by too much, and likely is not, is surveyed before the pipe goes in: what it is held to is the
/// tolerance less the play.
pub(crate) fn invert(at: &Plan<'_>) -> Outcome {
    let Plan { drive, method, .. } = *at;
    only(drive.service == Service::GravitySewer, NO_GRAVITY)?;
    let (error, limit) = (invert_uncertainty(at), drive.tolerance);
    let (held_to, likely) = (limit.value - play(at), drive.pilot_error.map(|error| error.likely));
    let in_doubt = error.likely <= limit.value && error.high > limit.value;
    if in_doubt && drive.stem.is_there() && held_to >= likely.value {
        return Ok(at_least(Role::Offset, held_to, likely).by(Rule::Required).with_note(SURVEYED));
    }
    let annulus = &drive.annulus;
    let note = match (method, annulus.spacer > Length::default(), annulus.grouted) {
        (Method::Pullback, true, _) => SPACED,
        (Method::Pullback, false, true) => GROUTED,
        _ => LEFT,
    };
    let against = |limit: Cited<Length>| at_most(Role::Offset, error, limit).with_note(note);
    let check = against(limit);
    Ok(match drive.loosest_tolerance {
        Some(loosest) => check.at_best(against(loosest)).settled_by(&[&["tolerance"]]),
        None => check,
    })
}

const SURVEYED: &str = "survey the pilot before the pipe goes in, and go on only where it keeps the tolerance less the \
                        play round the pipe, told here beside its likely error";
const LEFT: &str =
    "error of the pilot, and the play round the pipe until it is grouted, half of it at the likely level";
const GROUTED: &str = "error of the pilot and the play: in liquid grout the pipe floats, and sets where it is";
const SPACED: &str = "error of the pilot and what the spacers leave of the play";
