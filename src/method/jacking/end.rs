//! Checks of the pipe end, of the angle at its joints, and of a free length.

use super::capacity::{EndLimit, end_limit};
use super::jacked::Jacked;
use super::steel;
use crate::check::{Absent, Check, Outcome, at_most};
use crate::drive::{Capacity, EndArea, JackedPipe, RingKind};
use crate::law::{Calc, Recorder};
use crate::method::walked::Walked;
use crate::quantity::{Angle, Band, Role};

/// Mean over greatest stress of a joint that is just closed over its whole face: plane geometry.
const FULL_TRIANGLE: f64 = 0.5;
const GAPING: &str = "with the mean over the greatest stress in the joint as given";
const WHOLE_FACE: &str =
    "joint angle assumed no more than full-face contact: give packer and steering to have it worked out";
const WORKED_OUT: &str = "with the packer, new or crushed, at the greatest force and the greatest angle together, on the \
                          safe side; contact beyond the packer is not modelled";
const ASK_THE_MAKER: &str = "at this joint angle nothing is passed: ask the pipe maker for the force at it";
const NOT_PASSED: &str = "at this joint angle nothing is passed without the packer: give it";
const TURNED: &str =
    "the joint angle is given and the packer is not: taken to bear over its whole face, which may gape";
const SPIGOT: &str =
    "the end is taken as the spigot less the bore: chamfer and packer leave less; get the area from the pipe maker";
const LOOSER: &str = "the default scheme is tighter than the one asked for: leave scheme out to use it";
const SECTION: &str = "along the axis: an eccentric weld, bending on a curve and ground load are not in it";
const LARGE: &str = "more than is advised at a joint under thrust";
const MAKER: &str = "the pipe maker's force; ask the maker for the joint angle it holds at";

pub(in crate::method) fn capacity<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let jacked = at.jacked()?;
    let limit = end_limit(calc, jacked.pipe, jacked.angle);
    let check = at_most(Role::Thrust, jacked.thrust(), limit.map(|limit| limit.force));
    let EndLimit { factor, tighter, .. } = limit.in_spite_of_doubt();
    let check = check.with_factor(factor);
    Ok(judged(check, jacked.pipe, jacked.angle.in_spite_of_doubt(), tighter))
}

pub(in crate::method) fn angle(at: &Walked<'_>) -> Outcome {
    let Jacked { pipe, angle, .. } = at.jacked()?;
    let angle = angle.transpose().ok_or(Absent::Missing)?;
    let warning = pipe.joint.steering.warning;
    let check = at_most(Role::JointAngle, angle.map(Band::same), warning);
    Ok(if angle.in_spite_of_doubt() > warning.value { check.with_note(LARGE) } else { check })
}

pub(in crate::method) fn column<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let jacked = at.jacked()?;
    let Capacity::Steel(end) = &jacked.pipe.capacity else {
        return Err(Absent::NotApplicable("only steel is looked at as a column"));
    };
    let free = jacked.pipe.free.ok_or(Absent::Missing)?;
    calc.part("pipe in the pit as a column");
    let limit = calc.doubted(|calc| steel::free_length(calc, end, &free));
    Ok(at_most(Role::Thrust, jacked.thrust(), limit).with_note(steel::FREE))
}

/// What the reader must know of the capacity, the gravest first.
fn judged(check: Check<()>, jacked: &JackedPipe, turned: Option<Angle>, tighter: bool) -> Check<()> {
    let steering = &jacked.joint.steering;
    let unknown = turned.filter(|_| jacked.joint.packer.is_none());
    if unknown.is_some_and(|angle| angle >= steering.warning.value) {
        let rated = matches!(jacked.capacity, Capacity::Rated);
        return check.undecided(if rated { ASK_THE_MAKER } else { NOT_PASSED });
    }
    if tighter {
        return check.as_caution(LOOSER);
    }
    if matches!(jacked.end_area, EndArea::Ring { kind: RingKind::Spigot, .. }) {
        return check.as_caution(SPIGOT);
    }
    match jacked.capacity {
        Capacity::Steel(_) => check.with_note(SECTION),
        Capacity::Rated => check.with_note(MAKER),
        _ if jacked.joint.packer.is_some() => check.with_note(WORKED_OUT),
        _ if unknown.is_some_and(|angle| angle > steering.least.value) => check.as_caution(TURNED),
        _ if jacked.joint.stress_ratio.value.value >= FULL_TRIANGLE => check.with_note(WHOLE_FACE),
        _ => check.with_note(GAPING),
    }
}
