//! A planned curve: what it adds to the force, and what it does to steel that is welded to one.

use super::super::either::{Either, Forces};
use super::super::rules::{by_held_jacks, by_jacks};
use super::super::stage::{Pushed, peak};
use super::super::walked::Walked;
use crate::check::{Absent, Draft, Outcome, at_most};
use crate::drive::{Capacity, Curve, SteelEnd};
use crate::law::{Calc, Doubted};
use crate::laws::packer::RingArea;
use crate::laws::pe::BendingStress;
use crate::quantity::{Band, Force, Role};

const STRAIGHT: &str = "the line is straight";
const JOINTED: &str = "the pipes turn at their joints";
const BENT: &str =
    "stress of the push and of the bend of the planned curve; steel that is welded to one does not turn at its joints";

/// Push and bend in the wall of a welded pipe, and of a casing before it.
pub(in crate::method) fn bending(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let jacked = at.jacked()?;
    let curve = at.drive.curve.as_ref().ok_or(Absent::NotApplicable(STRAIGHT))?;
    calc.part("steel in the planned curve");
    let pipe = match &jacked.pipe.capacity {
        Capacity::Steel(end) => {
            Some(of(curve, calc, Either { safe: end, best: None }, by_held_jacks(at.drive, jacked.thrust())))
        }
        _ => None,
    };
    let casing = jacked.casing.and_then(|(casing, pushed)| {
        let tube = casing.tube.as_deref()?;
        let most = |thrust: Doubted<Pushed>, out: Doubted<Pushed>| {
            thrust.zip(out).map(|(thrust, out)| peak(thrust.on_rig, out.on_ahead))
        };
        let section = Either { safe: &tube.section, best: tube.best.as_ref() };
        Some(of(curve, calc, section, by_jacks(at.drive, pushed.with(jacked.pushed, most))))
    });
    [pipe, casing].into_iter().flatten().reduce(Draft::worse).ok_or(Absent::NotApplicable(JOINTED))
}

fn of(curve: &Curve, calc: &mut Calc, section: Either<&SteelEnd>, thrust: Forces) -> Draft {
    let Either { safe, best } = section.zip(thrust);
    let safe = stressed(curve, calc, safe);
    best.map_or(safe, |best| safe.at_best(stressed(curve, &mut Calc::silent(), best)))
}

fn stressed(curve: &Curve, calc: &mut Calc, (end, thrust): (&SteelEnd, Doubted<Band<Force>>)) -> Draft {
    let SteelEnd { outside_diameter, wall, modulus, .. } = *end;
    let stress = calc.doubted(|calc| {
        let radius = curve.radius.value;
        let bent = calc.law(BendingStress { modulus, outside_diameter, radius });
        let area = calc.law(RingArea { outside_diameter, inside_diameter: outside_diameter - 2.0 * wall });
        calc.take(thrust).map(|thrust| thrust / area + bent)
    });
    let limit = curve.steel_factor.map(|factor| end.yield_strength.value / factor);
    at_most(Role::Strength, stress, limit).with_note(BENT)
}
