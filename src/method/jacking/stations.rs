//! Intermediate jacking stations: how many, where, and what they leave for the wall.

use super::super::front::head;
use super::super::rest::{Put, Stands, stands};
use super::super::scheme::Scheme;
use super::super::stage::{Body, Pushed, Stage, peak, pushed};
use crate::check::Subject;
use crate::drive::{Drive, Part, Pipe, Rubbed, Stretch};
use crate::handbook::Method;
use crate::law::{Calc, Law};
use crate::laws::stations::{Run, StationCount, StationDistance, StationStart, ThrustThroughTail, reach, shortest_run};
use crate::laws::thrust::{CurveFactor, WeightAlongGrade};
use crate::quantity::{Band, Force, Length, LineLoad, Measure, Ratio};
use core::f64::consts::PI;

/// What stations can do for a jacked pipe.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Stations {
    /// The main jacks and the pipe end do it alone.
    NotNeeded,
    /// People cannot enter the pipe: inside diameter, and the least.
    TooSmall(Length, Length),
    /// The file does not give the thrust of a station.
    NotGiven,
    /// Not even stations push it: face and what is pushed out ahead leave nothing for the pipe.
    NoUse,
    /// So many, each with its distance behind the face at the end of the drive.
    Placed(PlacedStations),
}

/// Stations that push a drive.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct PlacedStations {
    /// Distances behind the face, from the face on.
    pub places: Vec<Length>,
    /// What one may push: the lesser of its thrust and of the pipe end.
    pub capacity: Force,
    /// Thrust of the main jacks at which they are put to work.
    pub start: Force,
    /// What reaches the wall at the end of the drive while the hindmost pushes; all of it while it enters the bore.
    pub on_wall: Force,
}

/// Most stations that are looked for.
const MOST: f64 = 100.0;

/// The sections that stations cut a drive into, by the high force.
#[derive(Debug, Clone, Copy)]
pub(in crate::method) struct Layout {
    /// Of the station next to the face, and of each further one.
    first: Length,
    next: Length,
    /// Distance of the hindmost station behind the face at the end of the drive.
    hindmost: Length,
    number: Ratio,
    /// What one station may push.
    capacity: Force,
    /// What the main jacks may push.
    main: Force,
}

impl Layout {
    /// Distance from one station to the next, where there are several.
    pub(super) fn apart(&self) -> Option<Length> {
        (self.number > Ratio::from(1.0)).then_some(self.next)
    }
}

/// Stations by the high force along the drive; `None` for a scheme without a jacked pipe.
#[must_use]
pub fn stations(drive: &Drive, pipe: &Pipe, scheme: &Scheme) -> Option<Stations> {
    pipe.jacked.as_ref()?;
    let limit = |subject| scheme.checks.get(subject).and_then(|check| check.high()).map(|(_, limit)| limit.si);
    let end = Force::from_si(limit(Subject::EndCapacity)?);
    let put = Put::of(drive, pipe, Method::PipeJacking);
    let whole = pushed(&mut Calc::silent(), put, Stage::of_pipe(drive, pipe)).in_spite_of_doubt();
    Some(match layout(put, end, &whole) {
        Ok(layout) => Stations::Placed(placed(put, &layout)),
        Err(none) => none,
    })
}

/// Where stations are, if the drive needs them and the file tells their thrust; else why there are none.
pub(in crate::method) fn layout(put: Put<'_>, end: Force, whole: &Pushed) -> Result<Layout, Stations> {
    let Put { drive, pipe, .. } = put;
    let (rules, length) = (&drive.stations, drive.length.value);
    let main = (rules.main.value * drive.rig.thrust.value).min(end);
    if whole.on_rig.high <= main {
        return Err(Stations::NotNeeded);
    }
    if pipe.nominal < rules.entry.value {
        return Err(Stations::TooSmall(pipe.nominal, rules.entry.value));
    }
    let capacity = rules.thrust.ok_or(Stations::NotGiven)?.min(end);
    // Rounded down to whole pipes, never up.
    let whole_pipes = |section: Option<Length>| {
        let section = section.unwrap_or(length).min(length);
        pipe.segment.map_or(section, |segment| segment * (section / segment).value.floor())
    };
    let first = rules.first.value * capacity - (front(put).high + whole.on_ahead.high);
    if !(first > Force::default()) {
        return Err(Stations::NoUse);
    }
    let along = |ahead| runs(put, ahead, |friction| friction.high);
    let shortest = |force| shortest_run(|| along(true), || along(false), force);
    let first = whole_pipes(shortest(first));
    let next = whole_pipes(shortest(rules.next.value * capacity));
    let last = reach(along(true), main).unwrap_or(length);
    let count = StationCount { drive: length, alone: Length::default(), first, next, last };
    let number = count.value();
    if !(count.in_range() && number <= Ratio::from(MOST)) {
        return Err(Stations::NoUse);
    }
    let hindmost = StationDistance { station: number, first, next }.value();
    // The section of the hindmost one may be what is left of the drive, and then the main jacks push all that they can.
    let hindmost = if hindmost < length { hindmost } else { (length - last).max(first) };
    Ok(Layout { first, next, hindmost, number, capacity, main })
}

/// The force with the stations at work: the greatest that any of them and the main jacks push, each its own section where
/// the friction is greatest. While a section enters the bore the main jacks push it.
pub(in crate::method) fn at_work(put: Put<'_>, layout: &Layout, whole: Pushed) -> Pushed {
    let most = parts(put, true)
        .fold(Band::default(), |most: Band<LineLoad>, (_, friction)| most.with(friction, LineLoad::max));
    let over = |section: Length| most.map(|friction| friction * section);
    let curve = put.curve().map_or(Ratio::from(1.0), |(friction, radius)| {
        CurveFactor { friction, length: put.drive.length.value, radius }.value()
    });
    let first = front(put).with(over(layout.first), |front, friction| front + friction);
    let next = if layout.number > Ratio::from(1.0) { over(layout.next) } else { Band::default() };
    let last = over(put.drive.length.value - layout.hindmost);
    let ahead = whole.on_ahead;
    let pushed = peak(peak(first, next), last).map(|force| force * curve).with(ahead, |force, ahead| force + ahead);
    Pushed { on_rig: pushed.with(whole.on_rig, Force::min), ..whole }
}

/// Length, and friction and weight uphill of a metre of pipe, part by part from the shaft on or towards it; after a stop
/// where it may stand.
fn parts(put: Put<'_>, ahead: bool) -> impl Iterator<Item = (Length, Band<LineLoad>)> {
    let Put { drive, pipe, .. } = put;
    let climb = pipe.jacked_weight().map_or(LineLoad::default(), |pipe_weight| {
        let length = drive.length.value;
        WeightAlongGrade { pipe_weight, length, rise: drive.grade.value }.value() / length
    });
    let rests = !matches!(stands(put, Body::Pipe), Stands::Never);
    let (bore, round) = (pipe.height(), PI * pipe.outside_diameter.value);
    let last = drive.stretches.len().saturating_sub(1);
    let order = (0..drive.stretches.len()).map(move |index| if ahead { index } else { last - index });
    let stretches = order.filter_map(|index| drive.stretches.get(index));
    let parts = stretches.flat_map(move |stretch| {
        let (from, to) = if ahead { (stretch.from, stretch.to) } else { (stretch.to, stretch.from) };
        stretch.way.parts(bore, from, to).map(move |part| (stretch, part))
    });
    parts.map(move |(stretch, part): (&Stretch, Part)| {
        let friction = stretch.friction(Rubbed::Pipe(&pipe.open, put.at_best), part.water);
        let friction = friction.map(|friction| friction * round);
        let restart = drive.rests.pipe.along(stretch);
        let Band { low, likely, high } = friction;
        let (likely, high) = if rests { (likely * restart.likely, high * restart.high) } else { (likely, high) };
        (part.length(), Band { low, likely: likely + climb, high: high + climb })
    })
}

/// The same at one level.
fn runs(put: Put<'_>, ahead: bool, level: impl Fn(Band<LineLoad>) -> LineLoad) -> impl Iterator<Item = Run> {
    parts(put, ahead).map(move |(length, friction)| Run { length, friction: level(friction) })
}

/// What resists at the head, where it is greatest.
fn front(put: Put<'_>) -> Band<Force> {
    let Put { drive, pipe, .. } = put;
    let mut calc = Calc::silent();
    // The bore that a stem was drawn out of is there.
    if Stage::of_pipe(drive, pipe) == Stage::PIPE_ALONE {
        return Band::default();
    }
    let guided = pipe.casing_diameter().unwrap_or(drive.stem.outside_diameter.value);
    let cut = pipe.cut().max(pipe.outside_diameter.value);
    let faces = drive.stretches.iter().map(|stretch| head(&mut calc, drive.face, cut, guided, stretch));
    faces.fold(Band::default(), peak)
}

fn placed(put: Put<'_>, layout: &Layout) -> PlacedStations {
    let rules = &put.drive.stations;
    let Layout { first, next, hindmost, number, capacity, main } = *layout;
    let mut places = Vec::new();
    let mut station = Ratio::from(1.0);
    while station <= number {
        places.push(StationDistance { station, first, next }.value().min(hindmost));
        station += Ratio::from(1.0);
    }
    let mut left = put.drive.length.value - hindmost;
    let mut tail_friction = Force::default();
    for run in runs(put, true, |friction| friction.low) {
        let part = run.length.min(left).max(Length::default());
        tail_friction += run.friction * part;
        left -= part;
    }
    let utilisation = rules.start.value;
    PlacedStations {
        places,
        capacity,
        start: StationStart { utilisation, station_capacity: capacity, main_capacity: main }.value(),
        on_wall: ThrustThroughTail { station_thrust: capacity, tail_friction }.value(),
    }
}
