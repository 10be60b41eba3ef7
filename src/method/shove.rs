//! A stage piece by piece: what each pipe or rod is expected to ask of the rig, and where to stop and ask.

use super::along::{Point, SLIVER, StageProfile};
use super::body::Body;
use super::profile::profile;
use super::scheme::Scheme;
use crate::check::{Absent, Subject};
use crate::drive::{Drive, Gauge, Pipe};
use crate::handbook::Method;
use crate::law::Law;
use crate::laws::gauge::GaugePressure;
use crate::quantity::{Band, Force, Length, Measure, Pressure, Ratio, Role};
use crate::source::{Equation, Origin};

/// One pipe that is pushed in, or one rod of the stem that is pushed in or comes out.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Shove {
    /// Which one, from 1.
    pub number: usize,
    /// Advance at which it begins and ends.
    pub extent: (Length, Length),
    /// Least low, greatest likely and high force on the rig meanwhile.
    pub force: Band<Force>,
    /// Force at which to stop and ask.
    pub stop: Force,
    /// What sets it.
    pub stop_by: StopBy,
    /// The same on the gauge of the jacks, where they push.
    pub gauge: Option<(Band<Pressure>, Pressure)>,
    /// Whether something changes here: ground, a planned stop, what sets the stop; the first and the last one too.
    pub changes: bool,
}

/// What sets the force at which to stop and ask.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum StopBy {
    /// The high end of what is expected.
    Expected,
    /// The rating of the rig.
    Rig,
    /// What the file holds the jacks to.
    Held,
    /// The limit of a check.
    Limit(Subject),
    /// What the file does not tell, and is asked for as much as the high force.
    Asked(Subject),
}

impl StopBy {
    /// For programs: it stays what it is where the words are changed.
    #[must_use]
    pub fn code(self) -> String {
        match self {
            Self::Expected => "expected".to_owned(),
            Self::Rig => "rig".to_owned(),
            Self::Held => "held".to_owned(),
            Self::Limit(subject) | Self::Asked(subject) => subject.code(),
        }
    }

    /// As printed.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Expected => "more than expected",
            Self::Rig => "rig",
            Self::Held => "jacks held",
            Self::Limit(Subject::EndCapacity) => "pipe end",
            Self::Limit(subject) | Self::Asked(subject) => subject.label(),
        }
    }
}

/// What no force that is read at the rig may pass in a stage.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Bound {
    /// The force.
    pub force: Force,
    /// What bears no more.
    pub by: StopBy,
    /// Where that comes from.
    pub origin: Origin,
}

/// The least of what bears the force at the rig in a stage. What the file does not tell bears no more than it is asked
/// for: the high force.
#[must_use]
pub fn bound(drive: &Drive, scheme: &Scheme, profile: &StageProfile) -> Bound {
    let (stage, rig) = (profile.stage, &drive.rig);
    // The margin of the jacks is for planning: while they push, their whole rating is where they stop.
    let (rated, subject, subjects): (_, _, &[Subject]) = match (stage.behind, stage.pulls) {
        (_, true) => match drive.pull.as_ref().and_then(|pull| pull.winch) {
            Some(winch) => (winch, Subject::WinchPull, &[]),
            None => (rig.pull, Subject::RigPull, &[Subject::StemPull]),
        },
        (Body::Stem, _) => {
            (rig.thrust, Subject::StemThrust, &[Subject::StemJoint, Subject::StemBuckling, Subject::ThrustWall])
        }
        (Body::Casing, _) => (
            rig.thrust,
            Subject::CasingThrust,
            &[Subject::CasingSection, Subject::CasingColumn, Subject::CasingJoint, Subject::ThrustWall],
        ),
        (Body::Pipe, _) => {
            (rig.thrust, Subject::JackingThrust, &[Subject::EndCapacity, Subject::PipeColumn, Subject::ThrustWall])
        }
    };
    let held = rig.held_to.filter(|_| stage.behind == Body::Pipe && !stage.pulls);
    let held = held.map(|held| Bound { force: held.value, by: StopBy::Held, origin: held.origin });
    let high = profile.points.iter().map(|point| point.on_rig.high).fold(Force::default(), Force::max);
    let asked = |subject| Bound { force: high, by: StopBy::Asked(subject), origin: Origin::Law(&HIGH_FORCE) };
    let is_told = rated.is_given();
    let rated = Bound { force: rated.value, by: StopBy::Rig, origin: rated.origin };
    let rated = if is_told { rated } else { asked(subject) };
    let limits = subjects.iter().filter_map(|subject| match scheme.checks.outcome(*subject) {
        Ok(check) if check.is_required() => Some(asked(*subject)),
        Ok(check) => {
            let (_, limit) = check.high().filter(|(_, limit)| matches!(limit.role, Role::Thrust | Role::Pull))?;
            Some(Bound { force: Force::from_si(limit.si), by: StopBy::Limit(*subject), origin: check.basis })
        }
        Err(Absent::Missing) => Some(asked(*subject)),
        Err(Absent::NotApplicable(_)) => None,
    });
    held.into_iter().chain(limits).fold(rated, |least, other| if other.force < least.force { other } else { least })
}

/// What is asked for in place of what is not told.
const HIGH_FORCE: Equation = Equation::judged(
    "force that untold plant is asked for",
    "F = the greatest high force of the stage",
    "what is asked for bears the high force and is pushed with no more",
    "any stage",
);

/// A force of the jacks on their gauge; `None` where the file does not tell their area.
#[must_use]
pub fn gauge(drive: &Drive, force: Force) -> Option<Pressure> {
    drive.gauge.map(|jacks| reading(jacks, force))
}

fn reading(jacks: Gauge, force: Force) -> Pressure {
    GaugePressure { force, efficiency: jacks.efficiency, cylinder_area: jacks.cylinder_area }.value()
}

/// The shove plan of a jacked pipe, pipe by pipe; empty where the length of a pipe is not given.
#[must_use]
pub fn shove_plan(drive: &Drive, pipe: &Pipe, scheme: &Scheme) -> Vec<Shove> {
    let Some(segment) = pipe.segment.filter(|_| scheme.method == Method::PipeJacking) else { return Vec::new() };
    let stages = profile(drive, pipe, Method::PipeJacking);
    stages.last().map_or_else(Vec::new, |last| shoves(drive, scheme, last, segment))
}

/// A stage by pieces of a length.
#[must_use]
pub fn shoves(drive: &Drive, scheme: &Scheme, profile: &StageProfile, piece: Length) -> Vec<Shove> {
    let stage = profile.stage;
    let most = bound(drive, scheme, profile);
    let length = drive.length.value;
    let from_start = |place: Length| if stage.pulls { length - place } else { place };
    let mut plan: Vec<Shove> = Vec::new();
    let mut from = Length::default();
    while from < length {
        let number = plan.len() + 1;
        // Counted, not summed, so that no rounding gathers; a sliver at the end belongs to the last piece.
        #[expect(clippy::cast_precision_loss, reason = "a drive has at most a few thousand pieces")]
        let end = piece * (number as f64);
        let to = if length - end < piece * SLIVER { length } else { end };
        let force = within(&profile.points, from, to);
        let (stop, stop_by) =
            if most.force < force.high { (most.force, most.by) } else { (force.high, StopBy::Expected) };
        let jacks = drive.gauge.filter(|_| !stage.pulls);
        let gauge = jacks.map(|jacks| (force.map(|force| reading(jacks, force)), reading(jacks, stop)));
        let inside = |place: Length| from < from_start(place) && from_start(place) <= to;
        let ground = drive.stretches.iter().any(|stretch| stretch.to < length && inside(stretch.to));
        let rests = drive.rests.planned.iter().any(|stop| inside(*stop));
        let other = plan.last().is_none_or(|before| before.stop_by != stop_by);
        let changes = other || ground || rests || to >= length;
        plan.push(Shove { number, extent: (from, to), force, stop, stop_by, gauge, changes });
        from = to;
    }
    plan
}

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
