//! The shove plan: what each pipe is expected to ask of the jacks, and where to stop and ask.

use super::super::along::Point;
use super::super::profile::profile;
use super::super::scheme::Scheme;
use crate::check::Subject;
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::law::Law;
use crate::laws::gauge::GaugePressure;
use crate::quantity::{Band, Force, Length, Measure, Pressure, Ratio};

/// One pipe of the shove plan.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Shove {
    /// Which pipe, from 1.
    pub number: usize,
    /// Advance at which it begins and ends.
    pub extent: (Length, Length),
    /// Least low, greatest likely and high force on the main jacks while it is pushed.
    pub force: Band<Force>,
    /// Force at which to stop and ask.
    pub stop: Force,
    /// What sets it.
    pub stop_by: StopBy,
    /// The same on the gauge of the jacks.
    pub gauge: Option<(Band<Pressure>, Pressure)>,
    /// Whether something changes here: ground, a planned stop, what sets the stop; the first and the last pipe too.
    pub changes: bool,
}

/// What sets the force at which to stop and ask.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum StopBy {
    /// The high end of what is expected.
    Expected,
    /// The thrust of the rig.
    Rig,
    /// The end of the pipe.
    PipeEnd,
    /// The thrust wall.
    Wall,
}

impl StopBy {
    /// As printed.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Expected => "more than expected",
            Self::Rig => "rig",
            Self::PipeEnd => "pipe end",
            Self::Wall => "thrust wall",
        }
    }
}

/// The shove plan of a jacked pipe, pipe by pipe; empty where the length of a pipe is not given.
#[must_use]
pub fn shove_plan(drive: &Drive, pipe: &Pipe, scheme: &Scheme) -> Vec<Shove> {
    let Some(segment) = pipe.segment.filter(|_| scheme.method == Method::PipeJacking) else { return Vec::new() };
    let stages = profile(drive, pipe, Method::PipeJacking);
    let Some(last) = stages.last() else { return Vec::new() };
    // The margin of the jacks is for planning: while they push, their whole rating is where they stop.
    let rig = (drive.rig.thrust.value, StopBy::Rig);
    let others = [(Subject::EndCapacity, StopBy::PipeEnd), (Subject::ThrustWall, StopBy::Wall)];
    let others = others.into_iter().filter_map(|(subject, by)| {
        // What is only asked for sets no force.
        let (_, limit) = scheme.checks.get(subject).filter(|check| !check.is_required())?.high()?;
        Some((Force::from_si(limit.si), by))
    });
    let capacity = std::iter::once(rig).chain(others).min_by(|one, other| one.0.si().total_cmp(&other.0.si()));
    let length = drive.length.value;
    let mut plan: Vec<Shove> = Vec::new();
    let mut from = Length::default();
    while from < length {
        let number = plan.len() + 1;
        // Counted, not summed, so that no rounding gathers; a sliver at the end belongs to the last pipe.
        #[expect(clippy::cast_precision_loss, reason = "a drive has at most a few thousand pipes")]
        let end = segment * (number as f64);
        let to = if length - end < segment * SLIVER { length } else { end };
        let force = within(&last.points, from, to);
        let (stop, stop_by) = match capacity {
            Some((limit, by)) if limit < force.high => (limit, by),
            _ => (force.high, StopBy::Expected),
        };
        let gauge = drive.gauge.map(|gauge| {
            let read = |force| {
                let (cylinder_area, efficiency) = (gauge.cylinder_area, gauge.efficiency);
                GaugePressure { force, efficiency, cylinder_area }.value()
            };
            (force.map(read), read(stop))
        });
        let inside = |at: Length| from < at && at <= to;
        let ground = drive.stretches.iter().any(|stretch| stretch.to < length && inside(stretch.to));
        let rests = drive.rests.planned.iter().any(|stop| inside(*stop));
        let other = plan.last().is_none_or(|before| before.stop_by != stop_by);
        let changes = other || ground || rests || to >= length;
        plan.push(Shove { number, extent: (from, to), force, stop, stop_by, gauge, changes });
        from = to;
    }
    plan
}

/// Part of a pipe that is not worth a row of its own: rounding of the user's figures.
const SLIVER: f64 = 1e-6;

/// The force between two advances: linear between the points, and exact at them.
fn within(points: &[Point], from: Length, to: Length) -> Band<Force> {
    let mut found: Option<Band<Force>> = None;
    let mut meet = |force: Band<Force>| {
        let so_far = found.unwrap_or(force);
        found = Some(Band {
            low: so_far.low.min(force.low),
            likely: so_far.likely.max(force.likely),
            high: so_far.high.max(force.high),
        });
    };
    for point in points.iter().filter(|point| from <= point.advance && point.advance <= to) {
        meet(point.on_rig);
    }
    for (before, after) in points.iter().zip(points.iter().skip(1)) {
        for at in [from, to] {
            if before.advance < at && at < after.advance {
                let share: Ratio = (at - before.advance) / (after.advance - before.advance);
                meet(before.on_rig.with(after.on_rig, |one, other| one + share * (other - one)));
            }
        }
    }
    found.unwrap_or_default()
}
