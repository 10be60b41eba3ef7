//! What the forces leave out because the file does not tell it: no check says so.

use super::scheme::Scheme;
use crate::check::{Need, Subject};
use crate::drive::{Drive, Stretch};
use crate::handbook::{GroundClass, Method};

const CLAY: Need = Need {
    what: "closed clay on the pipe",
    ways: &[&["ground[].soil.undrained_strength", "ground[].soil.undrained_modulus"]],
};
/// The area of the jacks says nothing where no pipe is told by its length.
const GAUGE: Need = Need { what: "readings of the gauge, shove by shove", ways: &[&["candidates[].pipe_length"]] };
const LAYDOWN: Need = Need { what: "room for the string, taken in one piece", ways: &[&["pull.laydown"]] };

/// What the forces of a scheme leave out.
pub fn left_out(drive: &Drive, scheme: &Scheme) -> impl Iterator<Item = Need> {
    let method = scheme.method;
    let one_piece = method == Method::Pullback && drive.pull.is_some_and(|pull| pull.works.laydown.is_none());
    // Where a check says so, it is said.
    let is_said = scheme.checks.get(Subject::ClayCloses).is_some();
    let clay = (!is_said && drive.stretches.iter().any(is_untold_clay)).then_some(CLAY);
    let unread = drive.gauge.is_some() && drive.candidates.iter().all(|pipe| pipe.segment.is_none());
    let gauge = (method == Method::PipeJacking && unread).then_some(GAUGE);
    clay.into_iter().chain(gauge).chain(one_piece.then_some(LAYDOWN))
}

/// Clay of which the file does not tell whether it closes on a pipe.
fn is_untold_clay(stretch: &Stretch) -> bool {
    let undrained = stretch.earth.heavy.undrained;
    stretch.has(GroundClass::is_clay) && undrained.is_none_or(|undrained| undrained.modulus.is_none())
}
