//! What the pull asks of the site: room for the ramp, the face of the launch pit, ground that falls on the pipe.

use super::pulled::Pulled;
use super::section::NO_RAMP;
use crate::check::{Absent, Outcome, Verdict, at_most};
use crate::drive::Pull;
use crate::law::{Calc, Recorder};
use crate::laws::pull_rules::GroundLoadPull;
use crate::laws::ramp::{RampLength, ShortestRamp};
use crate::method::walked::Walked;
use crate::quantity::{Angle, Band, Length, Role};

const UPPER_BOUND: &str = "upper bound: the whole column of soil on the length that the file names";
const TOO_LONG: &str = "the ramp does not fit: a deeper trench, a smaller pipe, or strings joined in the pit";
pub(in crate::method) fn collapsed<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let Pulled { pull, on_pipe, strength, .. } = at.pulled()?;
    let collapsed = pull.works.collapsed.ok_or(Absent::Missing)?;
    calc.part("ground on the pipe");
    let loaded = calc.doubted(|calc| {
        let outside_diameter = at.pipe.outside_diameter.value;
        let load = calc.law(GroundLoadPull {
            unit_weight: collapsed.unit_weight,
            cover: (collapsed.depth - outside_diameter).max(Length::default()),
            outside_diameter,
            collapsed_length: collapsed.length,
            friction: collapsed.friction,
        });
        calc.take(*on_pipe).peak().map(|pull| pull + load)
    });
    Ok(at_most(Role::Pull, loaded, strength.borne.straight).with_note(UPPER_BOUND))
}

pub(in crate::method) fn reaction(at: &Walked<'_>) -> Outcome {
    let pulled = at.pulled()?;
    let reaction = pulled.pull.works.reaction.ok_or(Absent::Missing)?;
    let pressure = pulled.all().map(|rig| rig.map(|force| force / reaction.area));
    Ok(at_most(Role::Pressure, pressure, reaction.allowable))
}

pub(in crate::method) fn ramp_room<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let Pulled { pull, strength, .. } = at.pulled()?;
    let radius = strength.borne.radius.ok_or(Absent::NotApplicable(NO_RAMP))?;
    let room = pull.works.ramp_room.ok_or(Absent::Missing)?;
    calc.part("ramp");
    let length = calc.doubted(|calc| {
        let radius = calc.take(radius);
        Band::same(ramp(calc, pull, radius))
    });
    let check = at_most(Role::Distance, length, room);
    let fits = check.verdict == Verdict::Within;
    Ok(if fits { check } else { check.with_note(TOO_LONG) })
}

/// Length of the ramp from the ground down to the invert at the reception pit.
pub(super) fn ramp<R: Recorder>(calc: &mut Calc<R>, pull: &Pull, radius: Length) -> Length {
    let (depth, angle) = (pull.works.ramp_depth, pull.ramp);
    // A shallow ramp is two arcs that meet before they have turned that far.
    let arcs = 2.0 * radius * (1.0 - angle.cos().value);
    if depth >= arcs && angle > Angle::default() {
        calc.law(RampLength { depth, radius, angle })
    } else {
        calc.law(ShortestRamp { depth, radius })
    }
}
