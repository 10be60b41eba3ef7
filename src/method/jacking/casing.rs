//! A casing that is pushed behind the stem: its section, its free length in the pit, its joints.

use super::{free, steel};
use crate::check::{Absent, Decides, Outcome, at_most, required};
use crate::drive::{Casing, CasingTube, SteelEnd};
use crate::law::{Calc, Doubted};
use crate::method::either::{Either, Forces};
use crate::method::rules::{Gives, by_jacks, watched};
use crate::method::stage::{Pushed, peak};
use crate::method::stem::against_rig;
use crate::method::walked::Walked;
use crate::quantity::{Band, Force, Measure, Role};

const WELDED: &str = "no joint rating is given: weld the joints all round, to the full strength of the section";

fn casing<'a>(at: &Walked<'a>) -> Result<(&'a Casing, Either<Doubted<Pushed>>), Absent> {
    at.jacked()?.casing.ok_or(Absent::NotApplicable("there is no casing"))
}

fn tube<'a>(at: &Walked<'a>) -> Result<&'a CasingTube, Absent> {
    casing(at)?.0.tube.as_deref().ok_or(Absent::Missing)
}

/// Force of the frame.
fn pushes(at: &Walked<'_>) -> Result<Forces, Absent> {
    Ok(casing(at)?.1.map(|pushed| pushed.map(|force| force.on_rig)))
}

/// The greatest thrust on it, as it goes in and as the pipe pushes it out, which after a stop may be more.
fn most(at: &Walked<'_>) -> Result<Forces, Absent> {
    let worse = |thrust: Doubted<Band<Force>>, out| {
        thrust.zip(out).map(|(thrust, out): (_, Pushed)| peak(thrust, out.on_ahead))
    };
    Ok(by_jacks(at.drive, pushes(at)?.with(at.jacked()?.pushed, worse)))
}

pub(in crate::method) fn thrust(at: &Walked<'_>) -> Outcome {
    Ok(pushes(at)?.check(|thrust| against_rig(at, thrust, None)))
}

pub(in crate::method) fn section(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let tube = tube(at)?;
    calc.part("strength of the casing");
    let limit = calc.doubted(|calc| steel::limit(calc, &tube.section));
    let best = tube.best.as_ref().map(|best| calc.doubted(|calc| steel::limit(calc, best)));
    let share = Decides::Watched(tube.section.yield_factor.value.si()).share(&at.drive.leeway);
    let sides = most(at)?.zip(Either { safe: limit, best });
    Ok(sides.check(|(thrust, limit)| {
        let most = limit.in_spite_of_doubt().value * share;
        watched((at.drive, at.pipe), at_most(Role::Thrust, thrust, limit), share, Gives::Body(most))
    }))
}

/// The thrust of the frame on the length that nothing holds.
pub(in crate::method) fn column(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let tube = tube(at)?;
    calc.part("casing in the pit as a column");
    let check = free::column(at, calc, &tube.section, &tube.free, by_jacks(at.drive, pushes(at)?));
    Ok(check.settled_by(&[&["candidates[].casing_free_length"]]))
}

pub(in crate::method) fn joint(at: &Walked<'_>) -> Outcome {
    let (casing, thrust) = (casing(at)?.0, most(at)?);
    if let Some(rating) = casing.joint_thrust {
        return Ok(thrust.check(|thrust| at_most(Role::Thrust, thrust, rating)));
    }
    // A weld all round bears what the section does at yield: where the section is too weak, it is the section that is over.
    let tube = tube(at)?;
    let at_yield = |section: &SteelEnd| {
        let force = steel::section(&mut Calc::silent(), section) * section.yield_strength.value;
        section.yield_strength.map(|_| force)
    };
    let welds = Either { safe: at_yield(&tube.section), best: tube.best.as_ref().map(at_yield) };
    let high = |thrust: Doubted<Band<Force>>| thrust.map(|thrust| Band::same(thrust.high));
    let sides = thrust.zip(welds);
    Ok(sides
        .check(|(thrust, welds)| required(Role::Thrust, high(thrust), welds))
        .with_note(WELDED)
        .settled_by(&[&["candidates[].casing_joint_thrust"]]))
}
