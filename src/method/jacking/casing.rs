//! A casing that is pushed behind the stem: its section, its free length in the pit, its joints.

use super::steel;
use crate::check::{Absent, Outcome, at_most};
use crate::drive::{Casing, CasingTube};
use crate::law::{Calc, Doubted, Recorder};
use crate::method::stage::{Pushed, peak};
use crate::method::stem::against_rig;
use crate::method::walked::Walked;
use crate::quantity::{Band, Force, Role};

fn casing<'a>(at: &Walked<'a>) -> Result<(&'a Casing, Doubted<Pushed>), Absent> {
    at.jacked()?.casing.ok_or(Absent::NotApplicable("there is no casing"))
}

fn tube<'a>(at: &Walked<'a>) -> Result<&'a CasingTube, Absent> {
    casing(at)?.0.tube.as_deref().ok_or(Absent::Missing)
}

/// Force of the frame.
fn pushes(at: &Walked<'_>) -> Result<Doubted<Band<Force>>, Absent> {
    Ok(casing(at)?.1.map(|force| force.on_rig))
}

/// The greatest thrust on it, as it goes in and as the pipe pushes it out, which after a stop may be more.
fn most(at: &Walked<'_>) -> Result<Doubted<Band<Force>>, Absent> {
    Ok(pushes(at)?.zip(at.jacked()?.pushed).map(|(thrust, out)| peak(thrust, out.on_ahead)))
}

pub(in crate::method) fn thrust(at: &Walked<'_>) -> Outcome {
    Ok(against_rig(at, pushes(at)?))
}

pub(in crate::method) fn section<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let tube = tube(at)?;
    calc.part("strength of the casing");
    let limit = calc.doubted(|calc| steel::limit(calc, &tube.section));
    Ok(at_most(Role::Thrust, most(at)?, limit))
}

/// The thrust of the frame on the length that nothing holds.
pub(in crate::method) fn column<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let tube = tube(at)?;
    let free = tube.free.ok_or(Absent::Missing)?;
    calc.part("casing in the pit as a column");
    let limit = calc.doubted(|calc| steel::free_length(calc, &tube.section, &free));
    Ok(at_most(Role::Thrust, pushes(at)?, limit).with_note(steel::FREE))
}

pub(in crate::method) fn joint(at: &Walked<'_>) -> Outcome {
    let rating = casing(at)?.0.joint_thrust.ok_or(Absent::Missing)?;
    Ok(at_most(Role::Thrust, most(at)?, rating))
}
