//! What the head is sighted by, along the bore: a beam from the launch pit goes straight, and so far and no further.

use super::plan::Plan;
use crate::check::{Absent, Care, Draft, Outcome, Verdict, Ways, at_most, rated};
use crate::drive::Curve;
use crate::handbook::Guidance;
use crate::law::{Calc, Law};
use crate::laws::guidance::Sagitta;
use crate::quantity::{Length, Role};
use crate::source::{Cited, Origin};

const NOT_SIGHTED: &str = "nothing is sighted from the launch pit";
const IN_SIGHT: &str = "the line is straight, and no longer than a laser reaches";
const CURVED: &str =
    "on the curve the beam leaves the pipe or the hollow stem; a machine is guided there by a gyro or a total station";
const UNSTEERED: &str = "nothing steers it, and a curve is steered";
const HEAD: &str = "an auger casing without a pilot has nothing to steer with: have a head that is steered in line and grade, and \
    survey it at every casing";
const FAR: &str =
    "beyond the reach of a laser in the launch pit: guided by a gyro, or by a total station that is carried forward";
const GUIDANCE: Ways = &[&["guidance"]];

/// The rise of a planned curve against what is open round the axis, and the length against the reach of a laser.
pub(crate) fn sight(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let head = at.drive.guided.by_head.filter(|_| at.is_jacked());
    let head = head.map(|origin| rated(Verdict::Within, origin).with_care(Care::Condition, HEAD));
    let check = in_sight(at, calc);
    head.map_or(check, |head| Ok(check.map_or(head, |check| check.worse(head))))
}

fn in_sight(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let (guided, curve) = (&at.drive.guided, at.drive.curve.as_ref());
    match guided.by {
        Guidance::WalkedOver => Err(Absent::NotApplicable(NOT_SIGHTED)),
        Guidance::None => {
            let radius = curve.ok_or(Absent::NotApplicable(NOT_SIGHTED))?.radius;
            let verdict = if guided.told { Verdict::Over } else { Verdict::NotDecided };
            Ok(rated(verdict, radius.origin).with_note(UNSTEERED).settled_by(GUIDANCE))
        }
        Guidance::Gyro | Guidance::TotalStation if guided.told => Err(Absent::NotApplicable(NOT_SIGHTED)),
        Guidance::Gyro | Guidance::TotalStation => {
            Ok(rated(Verdict::Within, guided.reach.origin).with_care(Care::Condition, FAR))
        }
        Guidance::Laser => {
            let (length, reach) = (at.drive.length.value, guided.reach);
            // A stem has a range of its own, to which its length is held.
            let far = guided.told && !at.drive.stem.is_there() && length > reach.value;
            let far = far.then(|| at_most(Role::Distance, length, reach).to_twice().with_note(FAR));
            let curved = curve.map(|curve| round(at, curve, calc));
            [far, curved].into_iter().flatten().reduce(Draft::worse).ok_or(Absent::NotApplicable(IN_SIGHT))
        }
    }
}

fn round(at: &Plan<'_>, curve: &Curve, calc: &mut Calc) -> Draft {
    let Plan { drive, pipe, .. } = *at;
    calc.part("line of sight in the planned curve");
    let rise = calc.law(Sagitta { length: drive.length.value, radius: curve.radius.value });
    let open = if drive.stem.is_there() {
        drive.stem.outside_diameter.value - 2.0 * drive.stem.tube.as_ref().map_or(Length::default(), |tube| tube.wall)
    } else {
        let inside = pipe.jacked.as_ref().and_then(|jacked| jacked.inside_diameter);
        pipe.casing_diameter().or(inside).unwrap_or(pipe.nominal)
    };
    let limit = Cited::new(open / 2.0, Origin::Law(&Sagitta::EQUATION));
    let check = at_most(Role::Offset, rise, limit).with_note(CURVED);
    if drive.guided.told {
        return check;
    }
    check.at_best(at_most(Role::Offset, Length::default(), limit)).settled_by(GUIDANCE)
}
