//! Whether a casing takes the pipe that is laid in it afterwards: room round it, and room for its own grade.

use super::plan::Plan;
use crate::check::{Absent, Outcome, Rule, Verdict, at_least, at_most, only, rated};
use crate::drive::Carrier;
use crate::handbook::Service;
use crate::quantity::{Length, Role};
use crate::source::{Cited, Equation, Origin};

/// How far a carrier can be set off the axis of its casing.
const SETTING: Equation = Equation::judged(
    "carrier set to its own grade",
    "e <= (D - d) / 2",
    "a carrier touches its casing at half of the play round it",
    "carrier on spacers of different heights",
);

const NO_CASING: &str = "it is no casing";
const HABIT: &str = "one railway's requirement round carrier joints; usual practice elsewhere";
const RAILWAY: &str = "what one railway asks for round the joints of a carrier";
const NO_GRADE: &str = "the carrier is no gravity sewer";
const SET: &str = "line error of the casing, against half of the play round the carrier: spacers of different \
    heights bring it to grade; survey the casing before ordering them";

/// The carrier and the play round it in this pipe; none where the bore of the pipe is not known.
fn play(at: &Plan<'_>) -> Result<(Carrier, Option<Length>), Absent> {
    only(at.drive.service == Service::Casing, NO_CASING)?;
    let carrier = at.drive.site.carrier.ok_or(Absent::Missing)?;
    let outside = at.pipe.outside_diameter.value;
    let inside = if at.is_jacked() {
        at.pipe.jacked.as_ref().and_then(|jacked| jacked.inside_diameter)
    } else {
        at.pipe.pulled.as_ref().map(|pulled| outside - 2.0 * pulled.wall())
    };
    Ok((carrier, inside.map(|inside| inside - carrier.outside_diameter.value)))
}

/// Room round the carrier: a railway's rule under its tracks, elsewhere a habit. No casing takes what is larger than it.
pub(crate) fn clearance(at: &Plan<'_>) -> Outcome {
    let (carrier, play) = play(at)?;
    let Some(play) = play else { return Ok(rated(Verdict::NotDecided, carrier.outside_diameter.origin)) };
    let check = at_least(Role::Diameter, play, carrier.spare);
    let check =
        if at.drive.site.surface.railway { check.with_note(RAILWAY) } else { check.by(Rule::Screen).with_note(HABIT) };
    Ok(if play <= Length::default() { check.by(Rule::High) } else { check })
}

/// Error of the line that the casing was driven on, against what the play round the carrier mends.
pub(crate) fn grade(at: &Plan<'_>) -> Outcome {
    let (carrier, play) = play(at)?;
    only(carrier.on_grade, NO_GRADE)?;
    let rule = Origin::Law(&SETTING);
    let Some(play) = play else { return Ok(rated(Verdict::NotDecided, rule)) };
    let guided = &at.drive.guided;
    let limit = Cited::new((play / 2.0).max(Length::default()), rule);
    let check = at_most(Role::Offset, guided.error.value, limit).with_note(SET);
    Ok(match guided.at_best {
        Some(best) => check.at_best(at_most(Role::Offset, best, limit).with_note(SET)).settled_by(&[&["guidance"]]),
        None => check,
    })
}
