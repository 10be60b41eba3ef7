//! Intermediate jacking stations: how many, where, and what they leave for the wall.

use super::super::front::head;
use super::super::rest::{Put, Stands, stands};
use super::super::scheme::Scheme;
use super::super::stage::{Body, pushed};
use crate::check::Subject;
use crate::drive::{Drive, Pipe, Rubbed, Stretch};
use crate::law::{Calc, Law, Silent};
use crate::laws::stations::{Run, StationCount, StationDistance, StationStart, ThrustThroughTail, reach, shortest_run};
use crate::laws::thrust::WeightAlongGrade;
use crate::quantity::{Force, Length, LineLoad, Measure, Ratio};
use core::f64::consts::PI;

/// What stations can do for a jacked pipe.
#[derive(Debug, Clone, PartialEq)]
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

/// Stations by the high force along the drive; `None` for a scheme without a jacked pipe.
#[must_use]
pub fn stations(drive: &Drive, pipe: &Pipe, scheme: &Scheme) -> Option<Stations> {
    let force = scheme.force.filter(|_| pipe.jacked.is_some())?;
    let limit = |subject| scheme.checks.get(subject).and_then(|check| check.high()).map(|(_, limit)| limit.si);
    let end = Force::from_si(limit(Subject::EndCapacity)?);
    let rules = &drive.stations;
    let main = (rules.main.value * drive.rig.thrust.value).min(end);
    Some(if force.high <= main {
        Stations::NotNeeded
    } else if pipe.nominal < rules.entry.value {
        Stations::TooSmall(pipe.nominal, rules.entry.value)
    } else {
        match rules.thrust {
            Some(thrust) => placed(drive, pipe, thrust.min(end), main),
            None => Stations::NotGiven,
        }
    })
}

/// Friction along the drive, at the high level or the low one, and the weight uphill.
fn runs(drive: &Drive, pipe: &Pipe, high: bool) -> Vec<Run> {
    let climb = pipe.jacked_weight().map_or(LineLoad::default(), |pipe_weight| {
        let length = drive.length.value;
        WeightAlongGrade { pipe_weight, length, rise: drive.grade.value }.value() / length
    });
    let rests = high && !matches!(stands(Put::of(drive, pipe), Body::Pipe), Stands::Never);
    let bore = pipe.height();
    let parts = drive
        .stretches
        .iter()
        .flat_map(|stretch| stretch.way.parts(bore, stretch.from, stretch.to).map(move |part| (stretch, part)));
    let run = |(stretch, (from, to)): (&Stretch, (Length, Length))| {
        let band = stretch.friction_at(Rubbed::Pipe(pipe.open_round(), false), (from + to) / 2.0, bore);
        let restart = if rests { drive.rests.pipe.along(stretch).high } else { Ratio::from(1.0) };
        let friction = restart * (if high { band.high } else { band.low }) * (PI * pipe.outside_diameter.value);
        Run { length: to - from, friction: if high { friction + climb } else { friction } }
    };
    parts.map(run).collect()
}

/// Face and what is pushed out ahead, at their highest.
fn ahead(drive: &Drive, pipe: &Pipe) -> Force {
    let mut calc = Calc::new(Silent);
    let Some(stage) = super::stages(drive, pipe).last() else { return Force::default() };
    let most = pushed(&mut calc, Put::of(drive, pipe), *stage).in_spite_of_doubt().on_ahead.high;
    let guided = pipe.casing_diameter().unwrap_or(drive.stem.outside_diameter.value);
    let cut = pipe.cut().max(pipe.outside_diameter.value);
    let faces = drive.stretches.iter().map(|stretch| head(&mut calc, drive.face, cut, guided, stretch).high);
    faces.fold(Force::default(), Force::max) + most
}

fn placed(drive: &Drive, pipe: &Pipe, capacity: Force, main: Force) -> Stations {
    let (rules, length) = (&drive.stations, drive.length.value);
    let along = runs(drive, pipe, true);
    // Rounded down to whole pipes, never up.
    let whole = |section: Option<Length>| {
        let section = section.unwrap_or(length).min(length);
        pipe.segment.map_or(section, |segment| segment * (section / segment).value.floor())
    };
    let first = rules.first.value * capacity - ahead(drive, pipe);
    if !(first > Force::default()) {
        return Stations::NoUse;
    }
    let first = whole(shortest_run(&along, first));
    let next = whole(shortest_run(&along, rules.next.value * capacity));
    let last = reach(&along, main).unwrap_or(length);
    let count = StationCount { drive: length, alone: Length::default(), first, next, last };
    let number = count.value();
    if !(count.in_range() && number <= Ratio::from(MOST)) {
        return Stations::NoUse;
    }
    let mut places = Vec::new();
    let mut station = Ratio::from(1.0);
    while station <= number {
        places.push(StationDistance { station, first, next }.value());
        station += Ratio::from(1.0);
    }
    let tail = length - places.last().copied().unwrap_or_default();
    let mut left = tail;
    let mut tail_friction = Force::default();
    for run in runs(drive, pipe, false) {
        let part = run.length.min(left).max(Length::default());
        tail_friction += run.friction * part;
        left -= part;
    }
    let utilisation = rules.start.value;
    Stations::Placed(PlacedStations {
        places,
        capacity,
        start: StationStart { utilisation, station_capacity: capacity, main_capacity: main }.value(),
        on_wall: ThrustThroughTail { station_thrust: capacity, tail_friction }.value(),
    })
}
