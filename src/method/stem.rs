//! The pilot stem while it is pushed: rig, buckling, joints.

mod bed;

use super::scheme::Scheme;
use super::stage::{Stage, pushed};
use crate::check::{Check, Subject};
use crate::drive::{Drive, Pipe, Tube};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::stem::{BucklingAllowed, EmbeddedBuckling, EulerBuckling, OpenBoreBuckling, TubeStiffness};
use crate::quantity::{Band, Force, Length, Role, Torque};
use crate::source::Cited;

const JACKS: &str = "likely against the whole rating, high against the share of it that jacks are designed for";
const SNAKING: &str = "where the bore stands open round the stem: it snakes, which costs line and friction before it \
                       breaks anything";

/// Adds the checks of the stem and returns the force that pushes it.
pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    scheme: &mut Scheme,
) -> Doubted<Band<Force>> {
    let thrust = pushed(calc, drive, pipe, Stage::STEM).map(|force| force.on_rig);
    scheme.pushes(thrust);
    if !drive.stem.is_there() {
        return thrust;
    }
    scheme.checks.add(against_rig(drive, Subject::StemThrust, thrust));
    if let Some(tube) = &drive.stem.tube {
        calc.part("buckling of the stem");
        let limit = calc.doubted(|calc| Cited::new(buckling(calc, drive, pipe, tube), tube.factor.origin));
        let check = Check::at_most_by_level(Subject::StemBuckling, Role::Thrust, thrust, limit);
        scheme.checks.add(bed::noted(check, drive));
        scheme.checks.add_some(snaking(calc, drive, tube, thrust));
    }
    if let Some(rating) = drive.stem.joint_thrust {
        scheme.checks.add(Check::at_most(Subject::StemJoint, Role::Thrust, thrust, rating));
    }
    scheme.checks.add_some(torque(Subject::StemTorque, drive.stem.torque, drive.rig.torque_through(&drive.stem)));
    thrust
}

/// What pushes the stem out loads it too, and after a stop harder than what pushed it in: its bed, its bore and its
/// joints. Nothing of it stands free in the pit then.
pub(super) fn driven_out<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    thrust: Doubted<Band<Force>>,
    scheme: &mut Scheme,
) {
    // Without a stop that is no more than its tip took as it went in.
    if !drive.stem.is_there() || drive.stops.is_empty() {
        return;
    }
    if let Some(tube) = &drive.stem.tube {
        calc.part("buckling of the stem that is driven out");
        let bed = calc.doubted(|calc| bed_force(calc, drive, pipe, tube));
        if let Some(bed) = bed.transpose() {
            let limit = bed.map(|bed| Cited::new(bed, tube.factor.origin));
            let check = Check::at_most_by_level(Subject::StemBuckling, Role::Thrust, thrust, limit);
            scheme.checks.add_worse(bed::noted(check, drive));
        }
        if let Some(check) = snaking(calc, drive, tube, thrust) {
            scheme.checks.add_worse(check);
        }
    }
    if let Some(rating) = drive.stem.joint_thrust {
        scheme.checks.add_worse(Check::at_most(Subject::StemJoint, Role::Thrust, thrust, rating));
    }
}

/// A thrust against the rig: the likely one against its whole rating, the high one against the share of it that jacks
/// are designed for.
pub(super) fn against_rig(drive: &Drive, subject: Subject, thrust: Doubted<Band<Force>>) -> Check {
    let limit =
        drive.rig.thrust.map(|whole| Band { low: whole, likely: whole, high: drive.stations.main.value * whole });
    Check::at_most_by_level(subject, Role::Thrust, thrust, limit).with_note(JACKS)
}

/// A torque of the file against a rating of the file.
pub(super) fn torque(subject: Subject, torque: Option<Band<Torque>>, rating: Option<Cited<Torque>>) -> Option<Check> {
    Some(Check::at_most(subject, Role::Torque, torque?, rating?))
}

/// What may be pushed, by level: the softest ground counts at the high level.
fn buckling<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, tube: &Tube) -> Band<Force> {
    let outside_diameter = drive.stem.outside_diameter.value;
    let second_moment = calc.law(TubeStiffness { outside_diameter, wall: tube.wall });
    let (modulus, free_length, end_factor) = (tube.modulus, tube.free_length, tube.end_factor);
    let pit = calc.law(EulerBuckling { modulus, second_moment, free_length, end_factor });
    let pit = Band::same(calc.law(BucklingAllowed { buckling: pit, factor: tube.factor.value }));
    bed_force(calc, drive, pipe, tube).map_or(pit, |bed| pit.with(bed, Force::min))
}

/// What the bed lets through, by level; none where rock holds it.
fn bed_force<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, tube: &Tube) -> Option<Band<Force>> {
    let outside_diameter = drive.stem.outside_diameter.value;
    let modulus = tube.modulus;
    let bed = bed::softest(calc, drive, pipe, tube)?;
    let second_moment = calc.law(TubeStiffness { outside_diameter, wall: tube.wall });
    let force = bed.map(|bedding| calc.law(EmbeddedBuckling { bedding, modulus, second_moment }));
    Some(force.map(|buckling| calc.law(BucklingAllowed { buckling, factor: tube.factor.value })))
}

/// A screen: the bore of a pilot head that is larger than the stem may or may not stand open.
fn snaking<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, tube: &Tube, thrust: Doubted<Band<Force>>) -> Option<Check> {
    let outside_diameter = drive.stem.outside_diameter.value;
    let clearance = (drive.stem.head - outside_diameter) / 2.0;
    let weight = drive.stem.weight.filter(|_| clearance > Length::default())?;
    let limit = calc.doubted(|calc| {
        let second_moment = calc.law(TubeStiffness { outside_diameter, wall: tube.wall });
        let buckling = calc.law(OpenBoreBuckling { modulus: tube.modulus, second_moment, weight, clearance });
        Cited::new(calc.law(BucklingAllowed { buckling, factor: tube.factor.value }), tube.factor.origin)
    });
    let check = Check::at_most(Subject::StemSnaking, Role::Thrust, thrust, limit).as_screen();
    Some(check.with_note(SNAKING))
}
