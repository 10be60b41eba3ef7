//! What a railway asks of a pipe under its tracks.

use super::plan::Plan;
use crate::check::{Care, Outcome, Verdict, only, rated};
use crate::handbook::{Family, Service};
use crate::source::{Equation, Origin};

/// The rule of railways, without a number.
const ENCASED: Equation = Equation::judged(
    "pipe under a railway",
    "in a casing",
    "practice of railways: pipelines under tracks are encased, those of plastic always; recalled beside a stored licence",
    "pipe that carries something",
);

const PLASTIC: &str = "plastic pipe under tracks needs a casing: drive one, or give what the railway permits";
const OTHER: &str = "a pipe under tracks needs a casing, unless the railway permits it without one";
const PERMITTED: &str = "without a casing, as the file says that the railway permits it";

/// A pipe without a casing round it for good, under tracks.
pub(crate) fn casing(at: &Plan<'_>) -> Outcome {
    let surface = &at.drive.site.surface;
    only(surface.railway, "no railway is given over the bore")?;
    only(at.drive.service != Service::Casing, "it is the casing itself")?;
    let plastic =
        matches!(at.pipe.family, Family::Pe | Family::Pvc | Family::PvcFused | Family::PvcRestrained | Family::Grp);
    let rule = Origin::Law(&ENCASED);
    Ok(match (surface.uncased, plastic) {
        (true, _) => rated(Verdict::Within, rule).with_care(Care::Noted, PERMITTED),
        (false, true) => rated(Verdict::Over, rule).with_note(PLASTIC),
        (false, false) => rated(Verdict::NotDecided, rule).with_note(OTHER),
    })
}
