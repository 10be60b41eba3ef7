//! Where a stage is left standing for more than a shift: at the stops of the file, else at night.

use super::body::Body;
use crate::conditions::{Pushing, rate};
use crate::drive::{Drive, Pipe, Rests, Stem, Stretch};
use crate::handbook::Method;
use crate::quantity::{Length, Measure, Ratio};

/// A pipe of a drive, with what the file leaves out taken on the safe side or at its best.
#[derive(Clone, Copy)]
pub(super) struct Put<'a> {
    pub(super) drive: &'a Drive,
    pub(super) pipe: &'a Pipe,
    pub(super) method: Method,
    pub(super) at_best: bool,
}

impl<'a> Put<'a> {
    /// On the safe side.
    pub(super) const fn of(drive: &'a Drive, pipe: &'a Pipe, method: Method) -> Self {
        Self { drive, pipe, method, at_best: false }
    }

    /// At its best, where that may differ.
    pub(super) fn best(self) -> Option<Self> {
        let hangs = |stretch: &Stretch| stretch.stem_may_lie_open(self.method) || stretch.tip_hangs();
        let bore = self.drive.stretches.iter().any(hangs) || self.pipe.hangs_on_bore();
        let curved = self.drive.curve.is_some();
        (self.drive.stops_at_night() || bore || curved || self.drive.stem_at_best.is_some())
            .then_some(Self { at_best: true, ..self })
    }

    /// Friction coefficient and radius of the curve that a pushed pipe is planned on.
    pub(super) fn curve(self) -> Option<(Ratio, Length)> {
        let curve = self.drive.curve.as_ref().filter(|_| self.pipe.jacked.is_some())?;
        Some((if self.at_best { curve.friction.low } else { curve.friction.high }, curve.radius.value))
    }

    /// The pilot stem.
    pub(super) fn stem(self) -> &'a Stem {
        let best = self.drive.stem_at_best.as_ref().filter(|_| self.at_best);
        best.unwrap_or(&self.drive.stem)
    }
}

/// Where a stage is left standing.
#[derive(Clone, Copy)]
pub(super) enum Stands<'a> {
    Never,
    /// At these advances, in order.
    At(&'a [Length]),
    /// A night may find it at any advance.
    Anywhere,
    /// After each such advance.
    Each(Length),
}

impl Stands<'_> {
    /// The next known stop after an advance, no later than another and before the end of the drive.
    #[inline]
    pub(super) fn next(self, from: Length, to: Length, length: Length) -> Option<Length> {
        match self {
            Self::At(stops) => stops.iter().find(|stop| **stop > from).copied().filter(|stop| *stop <= to),
            Self::Each(day) => {
                let stop = day * ((from / day).si() + Rests::ROUNDING).floor() + day;
                (stop <= to && stop < length).then_some(stop)
            }
            Self::Never | Self::Anywhere => None,
        }
    }
}

/// Where a stage that pushes this body is left standing. By its slow pace a night may find it anywhere; at best each day
/// has the fast one, and a day that is enough has no night.
pub(super) fn stands(put: Put<'_>, behind: Body) -> Stands<'_> {
    let Put { drive, pipe, at_best, .. } = put;
    let Some(shifts) = drive.work.shifts_between_nights() else { return planned(drive) };
    let (pushing, slow) = match behind {
        Body::Stem => (Pushing::Pilot, drive.rests.slow.0),
        Body::Casing => (Pushing::Casing, drive.rests.slow.1),
        Body::Pipe => (Pushing::Pipe, drive.rests.slow.1),
    };
    let (low, high) = rate(drive, pipe, pushing).map_or((slow.value, slow.value), |rate| (rate.low, rate.high));
    let day = shifts.value * if at_best { high } else { low };
    if drive.length.value <= day || drive.rests.are_all(day, drive.length.value) {
        planned(drive)
    } else if at_best {
        Stands::Each(day)
    } else {
        Stands::Anywhere
    }
}

/// Where a pull is left standing: one of no more than a day is not.
pub(super) fn pull_stands(drive: &Drive) -> Stands<'_> {
    let length = drive.length.value;
    let day = drive
        .work
        .shifts_between_nights()
        .zip(drive.pull.as_ref())
        .map(|(shifts, pull)| length * (drive.work.shift() * shifts.value / pull.duration));
    match day {
        Some(day) if day < length && !drive.rests.are_all(day, length) => Stands::Anywhere,
        _ => planned(drive),
    }
}

/// The stops of the file.
fn planned(drive: &Drive) -> Stands<'_> {
    if drive.rests.planned.is_empty() { Stands::Never } else { Stands::At(&drive.rests.planned) }
}
