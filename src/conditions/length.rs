//! Length of the drive and diameter of the pipe against the published range of the method. Screens: longer drives and
//! other diameters have been built, and asked for care; how far beyond is told by the utilisation.

use super::plan::Plan;
use crate::check::{Absent, Care, Draft, Outcome, Rule, Verdict, at_least, at_most, rated};
use crate::drive::{Ends, PublishedRange};
use crate::handbook::{Guidance, Method};
use crate::quantity::Role;
use crate::source::Cited;

const LONGER: &str = "longer than a guided pilot is sighted: line and grade need proof";
const UNSTEERED: &str =
    "longer than is usual for a casing that nothing steers: it is off its line by a hundredth of its length";
const LOST: &str = "no target is read so far down a stem: put a pit between";
/// Length over the usual reach of a sighted pilot from which nobody reports to have read its target: our judgement, by jobs of
/// some 165 m at the longest.
const OUT_OF_SIGHT: f64 = 1.8;
const LONGER_DRIVE: &str = "longer than the published range of the method: line and grade need proof";
const LARGER: &str = "larger than the published range of the method: ask who has built it";
const SMALLER: &str = "smaller than the published range of the method: ask who has built it";
const NOBODY: &str = "an open shield is dug by somebody at its face, and nobody can work in a bore so narrow";
const NARROW: &str =
    "narrower than what people usually work in: short drives, with the rescue of whoever is inside planned";
const NO_INSIDE: &str = "the wall is not given, and with it the room of whoever works at the face of an open shield";
const NO_RANGE: &str = "no published range of the method is in the tables";

fn range(at: &Plan<'_>) -> Option<PublishedRange> {
    match at.method {
        Method::PipeJacking => at.pipe.jacking_range,
        Method::Pullback => at.pipe.pullback_range,
    }
}

/// Guidance of the pilot limits a pulled pipe too, since its bore follows the same guided pilot.
pub(crate) fn length(at: &Plan<'_>) -> Outcome {
    let Some(range) = range(at) else {
        return Ok(rated(Verdict::NotDecided, at.drive.length.origin).with_note(NO_RANGE));
    };
    let guided = at.drive.guided_length.filter(|guide| guide.value <= range.length.value);
    let check = at_most(Role::Distance, at.drive.length.value, guided.unwrap_or(range.length));
    let note = match guided {
        Some(_) if at.drive.guided.by == Guidance::None => UNSTEERED,
        Some(_) => LONGER,
        None => LONGER_DRIVE,
    };
    let sighted = at.is_jacked() && at.drive.stem.is_there() && at.drive.guided.by == Guidance::Laser;
    let lost = sighted && check.utilisation().is_some_and(|used| used > OUT_OF_SIGHT);
    Ok(if lost { check.by(Rule::High).with_note(LOST) } else { noted(check, note) })
}

pub(crate) fn diameter(at: &Plan<'_>) -> Outcome {
    match (entered(at), published(at)) {
        (Some(entered), Ok(published)) => Ok(entered.worse(published.as_screen())),
        (Some(entered), Err(_)) => Ok(entered),
        (None, published) => published,
    }
}

/// Whether somebody can work at the face of an open shield.
fn entered(at: &Plan<'_>) -> Option<Draft> {
    let Ends { low: least, high: usual } = at.drive.site.face.entered.filter(|_| at.is_jacked())?;
    let (pipe, diameter) = (at.pipe, at.pipe.outside_diameter.value);
    let told = pipe.jacked.as_ref().and_then(|jacked| jacked.inside_diameter);
    let inside = told.or(Some(pipe.nominal).filter(|nominal| *nominal < diameter));
    // Of a casing that goes first no more is told than its outside diameter.
    let bore = pipe.casing_diameter().or(inside);
    let check = at_least(Role::Diameter, bore.unwrap_or(diameter), least).by(Rule::High).with_note(NOBODY);
    Some(match bore {
        None => check.undecided(NO_INSIDE).settled_by(&[&["candidates[].wall"], &["candidates[].inside_diameter"]]),
        Some(bore) if bore >= least.value && bore < usual.value => check.with_care(Care::Condition, NARROW),
        Some(_) => check,
    })
}

fn published(at: &Plan<'_>) -> Outcome {
    let range = range(at).ok_or(Absent::NotApplicable(NO_RANGE))?;
    let (from, to) = range.diameters;
    let (diameter, origin) = (at.pipe.outside_diameter.value, range.length.origin);
    if let Some(least) = from.filter(|from| diameter < *from) {
        return Ok(noted(at_least(Role::Diameter, diameter, Cited::new(least, origin)), SMALLER));
    }
    let most = to.ok_or(Absent::NotApplicable("the published range has no end"))?;
    Ok(noted(at_most(Role::Diameter, diameter, Cited::new(most, origin)), LARGER))
}

fn noted(check: Draft, beyond: &'static str) -> Draft {
    if check.verdict() == Verdict::Within { check } else { check.with_note(beyond) }
}
