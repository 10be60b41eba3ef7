//! Whether the bore stands for a pipe that goes in after the stem is out, and whether clay closes on any that is pushed.

use super::plan::Plan;
use crate::check::{Care, Draft, Outcome, Rule, Verdict, Ways, at_least, only, rated, required};
use crate::drive::{BoreState, OpenRound, Stretch};
use crate::handbook::GroundClass;
use crate::laws::soil::water_unit_weight;
use crate::quantity::{Length, Pressure, Role};
use crate::source::{Equation, Origin};

/// What a bore without anything in it is held to.
const EMPTY: Equation = Equation::judged(
    "bore from which the stem is drawn before the pipe goes in",
    "stands over its whole length, by class, strength, depth, water and play",
    "one fall blocks an empty bore, and no force mends it",
    "intact clay and sound rock, which a log must tell",
);

const GROUT: &str = "survey the bore and clean it, put the pipe in and grout round it within two days, held down to its line; a bore that \
                     water enters is cased";
const TOO_WIDE: &str = "the pipe with its joints is wider than the bore";
const TIGHT: &str = "play on the radius: a pipe with less jams, and grout does not get round it";
const SOCKETS: &str = "its sockets may be wider than the bore: give their outside diameter";
const PARTLY: &str =
    "the bore may close or ravel on a part of its length: leave the stem in until the pipe pushes it out";
const FALLS: &str = "the bore does not stand without the stem: leave it in until the pipe pushes it out";
const NOT_TOLD: &str = "the ground is not given, and whether the bore stands without the stem depends on it";
const FRICTION: &str = "with the friction given, nothing is assumed of how the bore stands: leave unit_friction out";

/// The worst stretch decides.
pub(crate) fn stands(at: &Plan<'_>) -> Outcome {
    only(at.goes_into_empty_bore(), "the stem is not drawn out before the pipe goes in")?;
    let rule = Origin::Law(&EMPTY);
    let over = || rated(Verdict::Over, rule).with_note(FALLS);
    let one = |stretch: &Stretch| -> Draft {
        match at.pipe.bore_in(stretch) {
            Some(BoreState::Stands) => rated(Verdict::Within, rule).with_care(Care::Condition, GROUT),
            Some(BoreState::Partly | BoreState::Held) => {
                let settling: Ways = if stretch.is_all(GroundClass::is_rock) {
                    &[&["ground[].hazards"]]
                } else {
                    &[&["ground[].soil.undrained_strength"], &["stem.head_diameter"]]
                };
                rated(Verdict::NotDecided, rule).with_note(PARTLY).settled_by(settling)
            }
            None if stretch.friction_given => {
                rated(Verdict::NotDecided, rule).with_note(FRICTION).settled_by(&[&["ground[].unit_friction"]])
            }
            None if stretch.class() == GroundClass::Unknown => {
                rated(Verdict::NotDecided, rule).with_note(NOT_TOLD).settled_by(&[&["ground[].class"]])
            }
            Some(BoreState::Closed) | None => over(),
        }
    };
    let worst = at.drive.stretches.iter().map(one).reduce(Draft::worse);
    Ok(worst.unwrap_or_else(over).worse(play(at)))
}

/// Play on the radius of the widest part of the pipe in the bore: a pipe that is wider does not go in.
fn play(at: &Plan<'_>) -> Draft {
    let play = (at.pipe.cut() - at.pipe.widest.value) / 2.0;
    let check = at_least(Role::Offset, play, at.drive.least_play).settled_by(&[&["stem.head_diameter"]]);
    if play <= Length::default() {
        return check.by(Rule::High).with_note(TOO_WIDE);
    }
    let check = check.by(Rule::Screen).with_note(TIGHT);
    if at.pipe.has_sockets_untold() {
        return check.undecided(SOCKETS).settled_by(&[&["candidates[].joint_diameter"]]);
    }
    check
}

/// What clay round a jacked pipe is held to.
const KEPT: Equation = Equation::judged(
    "clay round a jacked pipe",
    "kept off the pipe: it closes by no more than half of the play with the least strength, stiffness and overcut, and without \
     pressure in the lubricant",
    "clay closed on a pipe lets nothing slide between them",
    "clay that is loaded faster than it drains",
);
const MAY_CLOSE_ON_TOLD: &str = "the clay may close on the pipe in the bore as given: keep it off by lubricant under \
    pressure, this much all along the pipe where it is metered";
const MAY_CLOSE: &str = "the clay may close on the pipe: overcut enough (`candidates[].bore`), or keep it off by \
    lubricant under pressure, this much all along the pipe where it is metered";
const WATCHED: &str = "lubricant keeps this much off all along the pipe; as weak and as soft as the clay may be it closes harder on the pipe \
    than lubricant is usually pumped: cut the bore wider, keep pumping and do not stop, and log the force";
/// What tells whether lubricant keeps it off.
const HELD: Ways =
    &[&["ground[].soil.undrained_strength"], &["lubricant_pressure"], &["ground[].soil.undrained_modulus"]];
const RUBS: &str = "the clay may close on the pipe: it is counted to rub all round it";
const CLOSED: &str = "the clay closes on the pipe whatever is done: it then rubs as without lubricant, and after a \
    night with the strength of the clay itself";

/// Whether clay closes on a jacked pipe.
pub(crate) fn closes(at: &Plan<'_>) -> Outcome {
    only(at.is_jacked(), "the pipe is not pushed")?;
    let round = &at.pipe.open;
    let closed = round.iter().any(|round| round.safe.is_some_and(|(state, _)| state == BoreState::Closed));
    only(
        closed || round.iter().any(|round| round.kept_off.is_some() && !round.stands()),
        "no clay that may close on the pipe",
    )?;
    let check = rated(Verdict::Within, Origin::Law(&KEPT));
    let may = if at.pipe.bore_is_told() { MAY_CLOSE_ON_TOLD } else { MAY_CLOSE };
    if closed {
        return Ok(check.with_care(Care::Noted, CLOSED));
    }
    if !at.drive.lubrication.is_watched() {
        return Ok(check.with_care(Care::Noted, RUBS));
    }
    // The band of watched lubricant is that of a bore which is kept open.
    let of = |(round, stretch): (&OpenRound, &Stretch)| {
        let needed = round.kept_off.filter(|_| !round.stands())?;
        let held = at.drive.lubricant?.held(water_unit_weight() * stretch.way.head());
        let against = |pressure: Pressure| required(Role::Pressure, pressure, held);
        let check = against(needed.high).at_best(against(needed.low.max(Pressure::default())));
        // Stiff as it likely is it is kept off; where it is not the force tells, and the bore is cut wider.
        let is_watched = needed.high > held.value && needed.likely <= held.value;
        let likely = || against(needed.likely.max(Pressure::default()));
        Some(if is_watched { likely().with_note(WATCHED) } else { check.with_note(may) })
    };
    let worst = round.iter().zip(&at.drive.stretches).filter_map(of).reduce(Draft::worse);
    Ok(worst.unwrap_or_else(|| check.with_note(may)).settled_by(HELD))
}
