//! The pilot stem while it is pushed: rig, buckling, joints.

mod bed;

use super::column::Column;
use super::either::Forces;
use super::rest::{Put, Stands, stands};
use super::rules::{CHOOSE, Gives, asked, by_jacks, or_drilled, unheld, watched};
use super::stage::{Body, peak};
use super::walked::Walked;
use crate::check::{Absent, Decides, Draft, NOTHING, Outcome, Verdict, Ways, at_most, only, required};
use crate::drive::{Drive, Pipe, Stretch, Tube};
use crate::handbook::GroundClass;
use crate::law::{Calc, Doubted};
use crate::quantity::{Band, Force, Length, Measure, Ratio, Role, Torque};
use crate::source::Cited;

const IN: &str = "buckling of the stem";
const OUT: &str = "buckling of the stem that is driven out";
const JACKS: &str = "the limit is the share of the rig's rating that jacks are planned for";
const ASKED: &str = "no stem tube is given: its buckling load must be at least this much; compared with a stem of \
    100 x 15 mm (4 x 0.6 in) with 1.0 m (3.3 ft) free in the pit";
const ASKED_OF_TOLD: &str = "the wall of the stem or its free length is not given: its buckling load must be at least \
    this much; compared with that of the stoutest stem that is usual";
const JOINTS: &str = "no joint rating is given: the joints must bear this much; compared with the highest usual \
    rating";
const TUBE: Ways = &[&["stem.outside_diameter", "stem.wall", "stem.free_length"]];
const SNAKING: &str = "where the bore stands open round it, the stem snakes, which costs line and friction before \
    anything breaks";

fn there(at: &Walked<'_>) -> Result<(), Absent> {
    only(at.drive.stem.is_there(), "there is no stem")
}

fn tube<'a>(at: &Walked<'a>) -> Result<&'a Tube, Absent> {
    there(at)?;
    at.drive.stem.tube.as_ref().ok_or(Absent::Missing)
}

/// What pushes the stem out loads it too, and after a stop harder than what pushed it in: its bed, its bore and its
/// joints. Nothing of it stands free in the pit then. Without a stop that is no more than its tip took as it went in.
fn driven_out(at: &Walked<'_>) -> Option<Forces> {
    let jacked = at.jacked().ok().filter(|_| !at.drive.stem.withdrawn)?;
    let behind = if jacked.casing.is_some() { Body::Casing } else { Body::Pipe };
    let rests = !matches!(stands(Put::of(at.drive, at.pipe, at.method), behind), Stands::Never);
    rests.then(|| by_jacks(at.drive, jacked.on_stem()))
}

/// The greatest force on it, as it goes in and as it is driven out.
fn most(at: &Walked<'_>) -> Forces {
    let worse = |one: Doubted<Band<Force>>, other| one.zip(other).map(|(one, other)| peak(one, other));
    let stem = by_jacks(at.drive, at.stem);
    driven_out(at).map_or(stem, |out| stem.with(out, worse))
}

pub(super) fn thrust(at: &Walked<'_>) -> Outcome {
    there(at)?;
    Ok(unheld((at.drive, at.method), at.stem.check(|thrust| against_rig(at, thrust, None))))
}

pub(super) fn buckling(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    there(at)?;
    let Some(tube) = &at.drive.stem.tube else {
        let usual = &at.drive.usual.stem;
        let factor = usual.factor.value;
        let load = |thrust: Band<Force>| thrust.map(|allowed| allowed * factor);
        let asked = |thrust| asked(thrust, factor, at.drive.leeway.unwatched).map(load);
        let limit = usual.buckling;
        return Ok(most(at)
            .check(|thrust| required(Role::Thrust, asked(thrust), limit))
            .with_note(if at.drive.stem.outside_diameter.is_given() { ASKED_OF_TOLD } else { ASKED })
            .settled_by(TUBE));
    };
    let origin = tube.factor.origin;
    calc.part(IN);
    let limit = calc.doubted(|calc| Cited::new(pit_and_bed(calc, at.drive, at.pipe, tube), origin));
    // The most of what the bed may be stands at the low level of the limit.
    let hangs = bed::hangs(at.drive);
    let held = |thrust: Forces, limit: Doubted<Cited<Band<Force>>>| {
        let safe = thrust.check(|thrust| at_most(Role::Thrust, thrust, limit));
        let best = limit.map(|limit| limit.map(|limit| Band::same(limit.low)));
        if hangs { safe.at_best(thrust.check(|thrust| at_most(Role::Thrust, thrust, best))) } else { safe }
    };
    let ways: Ways = if hangs { &[&["ground[].spt_n"]] } else { NOTHING };
    let check = bed::noted(held(by_jacks(at.drive, at.stem), limit), at.drive).settled_by(or_drilled(at.drive, ways));
    let Some(thrust) = driven_out(at) else { return Ok(check) };
    calc.part(OUT);
    let limit = calc.doubted(|calc| bed_force(calc, at.drive, at.pipe, tube));
    let Some(limit) = limit.transpose() else { return Ok(check) };
    let limit = limit.map(|limit| Cited::new(limit, origin));
    let out = bed::noted(held(thrust, limit), at.drive).settled_by(ways);
    Ok(check.worse(out))
}

/// A screen in soft ground: the bore of a pilot head that is larger than the stem may or may not stand open.
pub(super) fn snaking(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let tube = tube(at)?;
    let soft = |class| matches!(class, GroundClass::SoftClay | GroundClass::LooseSand);
    only(at.drive.stretches.iter().any(|stretch| stretch.has(soft)), "the ground holds the stem on its line")?;
    let clearance = (at.drive.stem.head - at.drive.stem.outside_diameter.value) / 2.0;
    only(clearance > Length::default(), "the bore is no wider than the stem")?;
    let weight = at.drive.stem.weight.ok_or(Absent::Missing)?;
    let mut under = |part, thrust: Forces| {
        calc.part(part);
        let limit = calc.doubted(|calc| {
            Cited::new(column(calc, at.drive, tube).snaking(calc, weight, clearance), tube.factor.origin)
        });
        thrust.check(|thrust| at_most(Role::Thrust, thrust, limit).as_screen()).with_note(SNAKING)
    };
    let check = under(IN, by_jacks(at.drive, at.stem));
    Ok(driven_out(at).map_or(check, |thrust| check.worse(under(OUT, thrust))))
}

pub(super) fn joint(at: &Walked<'_>) -> Outcome {
    there(at)?;
    if let Some(rating) = at.drive.stem.joint_thrust {
        // Jacks are held to what the joints of the stem bear, as to what the pipe does.
        let held = |thrust| {
            let check = at_most(Role::Thrust, thrust, rating);
            watched((at.drive, at.pipe), check, Ratio::from(1.0), Gives::Body(rating.value))
        };
        let check = most(at).check(held);
        if check.verdict() <= Verdict::WithCare {
            return Ok(check);
        }
        let hangs = at.drive.stretches.iter().any(Stretch::tip_hangs);
        let ways: Ways = if hangs { &[&["ground[].spt_n"]] } else { NOTHING };
        return Ok(check.settled_by(or_drilled(at.drive, ways)));
    }
    let high = |thrust: Doubted<Band<Force>>| thrust.map(|thrust| Band::same(thrust.high));
    let usual = at.drive.usual.stem.joint;
    Ok(most(at)
        .check(|thrust| required(Role::Thrust, high(thrust), usual))
        .with_note(JOINTS)
        .settled_by(&[&["stem.outside_diameter", "stem.joint_thrust"]]))
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

/// A thrust against the share of the rig's rating that jacks are designed for, and what they are held to where that is less.
/// The frame itself holds at its rating.
pub(super) fn against_rig(at: &Walked<'_>, thrust: Doubted<Band<Force>>, held_to: Option<Cited<Force>>) -> Draft {
    let main = at.drive.stations.main.value;
    if held_to.is_none() && !at.drive.rig.thrust.is_given() {
        let asked = thrust.map(|thrust| thrust.map(|thrust| thrust / main));
        return required(Role::Thrust, asked, at.drive.rig.thrust).with_note(CHOOSE).settled_by(&[&["rig.thrust"]]);
    }
    let rated = at.drive.rig.thrust.map(|whole| main * whole);
    let limit = held_to.filter(|held| held.value < rated.value).unwrap_or(rated);
    let share = Decides::Watched(1.0 / main.si()).share(&at.drive.leeway);
    watched((at.drive, at.pipe), at_most(Role::Thrust, thrust, limit).with_note(JACKS), share, Gives::Rig)
}

/// A torque of the file against a rating of the file.
pub(super) fn torque(torque: Option<Band<Torque>>, rating: Cited<Torque>) -> Outcome {
    Ok(at_most(Role::Torque, torque.ok_or(Absent::Missing)?, rating))
}

/// What may be pushed, by level: the softest ground counts at the high level.
fn pit_and_bed(calc: &mut Calc, drive: &Drive, pipe: &Pipe, tube: &Tube) -> Band<Force> {
    let pit = Band::same(column(calc, drive, tube).free(calc, tube.free_length, tube.end_factor));
    bed_force(calc, drive, pipe, tube).map_or(pit, |bed| pit.with(bed, Force::min))
}

/// What the bed lets through, by level; none where rock holds it.
fn bed_force(calc: &mut Calc, drive: &Drive, pipe: &Pipe, tube: &Tube) -> Option<Band<Force>> {
    let bed = bed::softest(calc, drive, pipe, tube)?;
    let stem = column(calc, drive, tube);
    Some(bed.map(|bedding| stem.bedded(calc, bedding)))
}

fn column(calc: &mut Calc, drive: &Drive, tube: &Tube) -> Column {
    Column::of(calc, tube.modulus, drive.stem.outside_diameter.value, tube.wall, tube.factor.value)
}
