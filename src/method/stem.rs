//! The pilot stem while it is pushed: rig, buckling, joints.

mod bed;

use super::column::Column;
use super::jacking::jacked::Jacked;
use super::walked::Walked;
use crate::check::{Absent, Check, Outcome, at_most, only};
use crate::drive::{Drive, Pipe, Tube};
use crate::law::{Calc, Doubted, Recorder};
use crate::quantity::{Band, Force, Length, Role, Torque};
use crate::source::Cited;

const IN: &str = "buckling of the stem";
const OUT: &str = "buckling of the stem that is driven out";
const JACKS: &str = "likely against the whole rating, high against the share of it that jacks are designed for";
const SNAKING: &str = "where the bore stands open round the stem: it snakes, which costs line and friction before it \
                       breaks anything";

fn there(at: &Walked<'_>) -> Result<(), Absent> {
    only(at.drive.stem.is_there(), "there is no stem")
}

fn tube<'a>(at: &Walked<'a>) -> Result<&'a Tube, Absent> {
    there(at)?;
    at.drive.stem.tube.as_ref().ok_or(Absent::Missing)
}

/// What pushes the stem out loads it too, and after a stop harder than what pushed it in: its bed, its bore and its
/// joints. Nothing of it stands free in the pit then. Without a stop that is no more than its tip took as it went in.
fn driven_out(at: &Walked<'_>) -> Option<Doubted<Band<Force>>> {
    at.jacked().ok().filter(|_| !at.drive.stops.is_empty()).map(Jacked::on_stem)
}

pub(super) fn thrust(at: &Walked<'_>) -> Outcome {
    there(at)?;
    Ok(against_rig(at, at.stem))
}

pub(super) fn buckling<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let tube = tube(at)?;
    let origin = tube.factor.origin;
    calc.part(IN);
    let limit = calc.doubted(|calc| Cited::new(pit_and_bed(calc, at.drive, at.pipe, tube), origin));
    let check = bed::noted(at_most(Role::Thrust, at.stem, limit), at.drive);
    let Some(thrust) = driven_out(at) else { return Ok(check) };
    calc.part(OUT);
    let limit = calc.doubted(|calc| bed_force(calc, at.drive, at.pipe, tube));
    let Some(limit) = limit.transpose() else { return Ok(check) };
    let limit = limit.map(|limit| Cited::new(limit, origin));
    Ok(check.worse(bed::noted(at_most(Role::Thrust, thrust, limit), at.drive)))
}

/// A screen: the bore of a pilot head that is larger than the stem may or may not stand open.
pub(super) fn snaking<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let tube = tube(at)?;
    let clearance = (at.drive.stem.head - at.drive.stem.outside_diameter.value) / 2.0;
    only(clearance > Length::default(), "the bore is no wider than the stem")?;
    let weight = at.drive.stem.weight.ok_or(Absent::Missing)?;
    let mut under = |part, thrust| {
        calc.part(part);
        let limit = calc.doubted(|calc| {
            Cited::new(column(calc, at.drive, tube).snaking(calc, weight, clearance), tube.factor.origin)
        });
        at_most(Role::Thrust, thrust, limit).with_note(SNAKING)
    };
    let check = under(IN, at.stem);
    Ok(driven_out(at).map_or(check, |thrust| check.worse(under(OUT, thrust))))
}

pub(super) fn joint(at: &Walked<'_>) -> Outcome {
    there(at)?;
    let rating = at.drive.stem.joint_thrust.ok_or(Absent::Missing)?;
    let check = at_most(Role::Thrust, at.stem, rating);
    Ok(driven_out(at).map_or(check, |thrust| check.worse(at_most(Role::Thrust, thrust, rating))))
}

pub(super) fn turned(at: &Walked<'_>) -> Outcome {
    there(at)?;
    torque(at.drive.stem.torque, rated_torque(at)?)
}

/// What the weaker of rig and stem turns.
pub(super) fn rated_torque(at: &Walked<'_>) -> Result<Cited<Torque>, Absent> {
    let rating = at.drive.rig.torque_through(&at.drive.stem);
    rating.ok_or(Absent::NotApplicable("neither rig nor joint is rated for torque"))
}

/// A thrust against the rig: the likely one against its whole rating, the high one against the share of it that jacks
/// are designed for.
pub(super) fn against_rig(at: &Walked<'_>, thrust: Doubted<Band<Force>>) -> Check<()> {
    let share = at.drive.stations.main.value;
    let limit = at.drive.rig.thrust.map(|whole| Band { low: whole, likely: whole, high: share * whole });
    at_most(Role::Thrust, thrust, limit).with_note(JACKS)
}

/// A torque of the file against a rating of the file.
pub(super) fn torque(torque: Option<Band<Torque>>, rating: Cited<Torque>) -> Outcome {
    Ok(at_most(Role::Torque, torque.ok_or(Absent::Missing)?, rating))
}

/// What may be pushed, by level: the softest ground counts at the high level.
fn pit_and_bed<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, tube: &Tube) -> Band<Force> {
    let pit = Band::same(column(calc, drive, tube).free(calc, tube.free_length, tube.end_factor));
    bed_force(calc, drive, pipe, tube).map_or(pit, |bed| pit.with(bed, Force::min))
}

/// What the bed lets through, by level; none where rock holds it.
fn bed_force<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, tube: &Tube) -> Option<Band<Force>> {
    let bed = bed::softest(calc, drive, pipe, tube)?;
    let stem = column(calc, drive, tube);
    Some(bed.map(|bedding| stem.bedded(calc, bedding)))
}

fn column<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, tube: &Tube) -> Column {
    Column::of(calc, tube.modulus, drive.stem.outside_diameter.value, tube.wall, tube.factor.value)
}
