//! Edits of a drive file.

use crate::drive_file::{DriveFile, PitFile, PullFile, StopFile, StretchFile, WaterTable};
use crate::handbook::Lubrication;
use crate::quantity::{Length, Measure, Ratio, Time};

/// The drive at another length: stretches, stops and depths along it keep their share.
pub(super) fn set_length(file: &mut DriveFile, length: Length) {
    let share = (length / file.length.value).si();
    (file.length, file.line) = (length.into(), None);
    for stretch in &mut file.ground {
        for end in [&mut stretch.from, &mut stretch.to].into_iter().flatten() {
            end.value *= share;
        }
    }
    for stop in &mut file.stops {
        stop.at.value *= share;
    }
    for depth in &mut file.depths {
        depth.at.value *= share;
    }
    for crossing in file.crossings.iter_mut().flatten() {
        crossing.at.value *= share;
    }
}

/// The largest stone the file tells of.
pub(super) fn largest_stone(file: &DriveFile) -> Option<Length> {
    file.ground.iter().filter_map(|stretch| stretch.largest_stone.as_ref()).map(|field| field.value).reduce(Length::max)
}

/// With another largest stone: smaller ones grow to it only if it is larger than the largest, and larger ones shrink to
/// it only if it is smaller. Where nothing is told of stones nothing changes.
pub(super) fn set_stone(file: &mut DriveFile, stone: Length) {
    let Some(largest) = largest_stone(file) else { return };
    for told in file.ground.iter_mut().filter_map(|stretch| stretch.largest_stone.as_mut()) {
        told.value = if stone > largest { stone } else { told.value.min(stone) };
    }
}

/// Depth of the water table in m, that of the deepest invert where there is none; `None` where every stretch has its own.
pub(super) fn water(file: &DriveFile) -> Option<f64> {
    if file.ground.iter().all(|stretch| stretch.groundwater.is_some()) {
        return None;
    }
    match file.groundwater.value {
        WaterTable::None => Some(depths(file)[1].si()),
        WaterTable::Unknown => None,
        WaterTable::At(depth) => Some(depth.si()),
    }
}

/// With the friction of the tables for a dry drive all along: what the file says of it was said of a lubricated one.
pub(super) fn without_lubrication(file: &DriveFile) -> DriveFile {
    let mut file = DriveFile { lubrication: Some(Lubrication::None.into()), lubricant_pressure: None, ..file.clone() };
    for stretch in &mut file.ground {
        stretch.unit_friction = None;
    }
    file
}

/// Least and greatest invert depth that the file tells of.
pub(super) fn depths(file: &DriveFile) -> [Length; 2] {
    let launch = file.launch.depth().unwrap_or_default();
    let reception = file.reception.as_ref().and_then(PitFile::depth);
    let all = || reception.into_iter().chain(file.depths.iter().map(|depth| depth.invert_depth.value));
    [all().fold(launch, Length::min), all().fold(launch, Length::max)]
}

/// A drive of a line in one ground: of this length, all of it at one depth and in one stretch's ground. Where the file
/// has stops, one at its end; services lie where they lie, and are left to the drive that crosses them.
pub(super) fn one_drive(
    file: &DriveFile,
    ground: &StretchFile,
    depth: Length,
    length: Length,
    grade: Ratio,
) -> DriveFile {
    let share = length / file.length.value;
    let launch = PitFile { invert_depth: Some(depth.into()), ..file.launch.clone() };
    // Ground and wall of a pit are told of the launch pit only.
    let mut reception = launch.clone();
    (reception.soil, reception.wall) = (None, None);
    DriveFile {
        length: length.into(),
        launch,
        reception: Some(reception),
        grade: Some(grade.into()),
        depths: Vec::new(),
        stops: if file.stops.is_empty() { Vec::new() } else { vec![StopFile { at: length.into() }] },
        crossings: file.crossings.as_ref().map(|_| Vec::new()),
        // What tells a drive that is possible from one that is not is its standing, which no weight changes.
        weights: Vec::new(),
        line: None,
        ground: vec![StretchFile { from: None, to: None, ..ground.clone() }],
        // A longer pull takes longer; a given rate tells so itself.
        pull: file.pull.clone().map(|pull| PullFile {
            duration: pull.duration.as_ref().map(|field| (field.value * share.max(Ratio::from_si(1.0))).into()),
            ..pull
        }),
        ..file.clone()
    }
}

/// Duration of the pull as the file gives it, or by its rate.
pub(super) fn duration(file: &DriveFile) -> Option<Time> {
    let pull = file.pull.as_ref()?;
    let by_rate = pull.rate.as_ref().map(|rate| file.length.value / rate.value);
    pull.duration.as_ref().map(|field| field.value).or(by_rate).filter(|time| time.si() > 0.0)
}
