//! Whether a casing takes the pipe that is laid in it afterwards: room round it, and room for its own grade; and whether a
//! railway asks for one.

use super::plan::Plan;
use crate::check::{Absent, Care, Outcome, Verdict, at_least, at_most, only, rated};
use crate::drive::Carrier;
use crate::handbook::{Family, Service};
use crate::quantity::{Band, Length, Role};
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
const TIGHT: &str = "no carrier is drawn in with less play than its joints and skids take";
const NO_GRADE: &str = "the carrier is no gravity sewer";
const SET: &str = "line error of the casing, and half of what the carrier falls beside it, against half of the play round \
    the carrier: spacers of different heights bring it to grade; survey the casing before ordering them";
const FLAT: &str =
    "the casing falls less than a sewer needs, and its carrier with it unless it is set to a grade of its own";

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

/// Room round the carrier: a railway's rule under its tracks, elsewhere a habit. No casing takes what leaves its joints less than
/// half of that.
pub(crate) fn clearance(at: &Plan<'_>) -> Outcome {
    let (carrier, play) = play(at)?;
    let Some(play) = play else { return Ok(rated(Verdict::NotDecided, carrier.outside_diameter.origin)) };
    let check = at_least(Role::Diameter, play, carrier.spare);
    if at.drive.site.surface.railway {
        return Ok(check.with_note(RAILWAY));
    }
    let check = check.to_twice();
    Ok(check.with_note(if check.verdict() == Verdict::Over { TIGHT } else { HABIT }))
}

/// Error of the line that the casing was driven on, against what the play round the carrier mends.
pub(crate) fn grade(at: &Plan<'_>) -> Outcome {
    let (carrier, play) = play(at)?;
    let (own_slope, is_open) = carrier.own_slope.ok_or(Absent::NotApplicable(NO_GRADE))?;
    let rule = Origin::Law(&SETTING);
    let Some(play) = play else { return Ok(rated(Verdict::NotDecided, rule)) };
    let guided = &at.drive.guided;
    let limit = Cited::new((play / 2.0).max(Length::default()), rule);
    // It touches its casing below at one end and above at the other.
    let falls = own_slope * at.drive.length.value / 2.0;
    let set = |error: Band<Length>| at_most(Role::Offset, error.map(|error| error + falls), limit).with_note(SET);
    let check = match guided.at_best {
        Some(best) => set(guided.error.value).at_best(set(best)).settled_by(&[&["guidance"]]),
        None => set(guided.error.value),
    };
    Ok(if is_open { check.undecided(FLAT).settled_by(&[&["carrier.grade"]]) } else { check })
}

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
