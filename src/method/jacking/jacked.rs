//! The forces on a casing and on a pipe that are pushed.

use super::capacity::end_limits;
use super::joint::{self, Turned};
use super::stations;
use crate::drive::{Casing, JackedPipe};
use crate::law::{Calc, Doubted};
use crate::method::either::{Either, Forces};
use crate::method::rest::Put;
use crate::method::stage::{Pushed, Stage, pushed};

/// The forces on a casing and on the pipe, and how far the joints of the pipe turn.
pub(in crate::method) struct Jacked<'a> {
    pub(in crate::method) pipe: &'a JackedPipe,
    pub(in crate::method) casing: Option<(&'a Casing, Either<Doubted<Pushed>>)>,
    pub(super) pushed: Either<Doubted<Pushed>>,
    /// Jacking stations at work.
    pub(super) stations: Option<stations::Layout>,
    /// Greatest angle at a joint, likely and high.
    pub(super) angle: Doubted<Turned>,
}

/// A stage on the safe side of what is not told, and at its best, which no working shows.
pub(in crate::method) fn both(calc: &mut Calc, put: Put<'_>, stage: Stage) -> Either<Doubted<Pushed>> {
    let best = put.best().map(|best| pushed(&mut Calc::silent(), best, stage));
    Either { safe: pushed(calc, put, stage), best }
}

impl<'a> Jacked<'a> {
    pub(in crate::method) fn walk(calc: &mut Calc, put: Put<'a>, jacked: &'a JackedPipe) -> Self {
        let casing = put.pipe.casing.as_ref().map(|casing| (casing, both(calc, put, Stage::CASING)));
        let stage = Stage::of_pipe(put.drive, put.pipe);
        let pushed = both(calc, put, stage);
        calc.part("angle at the joints");
        let angle = calc.doubted(|calc| joint::turned(calc, put.pipe, jacked));
        let laid = put.drive.stations.thrust.and_then(|_| {
            let left = put.drive.leeway.watched;
            let end = end_limits(&mut Calc::silent(), jacked, angle, left).in_spite_of_doubt().high.value;
            stations::layout(put, end, &pushed.safe.in_spite_of_doubt()).ok()
        });
        let worked = |put: Put<'a>, pushed: Doubted<Pushed>| match &laid {
            Some(layout) => pushed.map(|whole| stations::at_work(put, layout, whole)),
            None => pushed,
        };
        let best = pushed.best.zip(put.best()).map(|(pushed, put)| worked(put, pushed));
        let pushed = Either { safe: worked(put, pushed.safe), best };
        Self { pipe: jacked, casing, pushed, stations: laid, angle }
    }

    /// Force that pushes the pipe.
    pub(in crate::method) fn thrust(&self) -> Forces {
        self.pushed.map(|pushed| pushed.map(|force| force.on_rig))
    }

    /// Force that pushes the casing.
    pub(in crate::method) fn casing_thrust(&self) -> Option<Forces> {
        self.casing.map(|(_, pushed)| pushed.map(|pushed| pushed.map(|force| force.on_rig)))
    }

    /// Force on the stem as it is driven out.
    pub(in crate::method) fn on_stem(&self) -> Forces {
        let driving = self.casing.map_or(self.pushed, |(_, pushed)| pushed);
        driving.map(|pushed| pushed.map(|force| force.on_ahead))
    }
}
