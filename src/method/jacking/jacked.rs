//! The forces on a casing and on a pipe that are pushed.

use super::joint;
use crate::drive::{Casing, Drive, JackedPipe, Pipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::method::stage::{Pushed, Stage, pushed};
use crate::quantity::{Angle, Band, Force};

/// The forces on a casing and on the pipe, and how far the joints of the pipe turn.
pub(in crate::method) struct Jacked<'a> {
    pub(in crate::method) pipe: &'a JackedPipe,
    pub(in crate::method) casing: Option<(&'a Casing, Doubted<Pushed>)>,
    pub(super) pushed: Doubted<Pushed>,
    /// Greatest angle at a joint, where anything is known of it.
    pub(super) angle: Doubted<Option<Angle>>,
}

impl<'a> Jacked<'a> {
    pub(in crate::method) fn walk<R: Recorder>(
        calc: &mut Calc<R>,
        drive: &'a Drive,
        pipe: &'a Pipe,
        jacked: &'a JackedPipe,
    ) -> Self {
        let casing = pipe.casing.as_ref().map(|casing| (casing, pushed(calc, drive, pipe, Stage::CASING)));
        let stage = if casing.is_some() { Stage::PIPE_AFTER_CASING } else { Stage::PIPE_AFTER_STEM };
        let pushed = pushed(calc, drive, pipe, stage);
        calc.part("angle at the joints");
        let angle = calc.doubted(|calc| Some(joint::angle(calc, pipe, jacked)?.value));
        Self { pipe: jacked, casing, pushed, angle }
    }

    /// Force that pushes the pipe.
    pub(in crate::method) fn thrust(&self) -> Doubted<Band<Force>> {
        self.pushed.map(|force| force.on_rig)
    }

    /// Force that pushes the casing.
    pub(in crate::method) fn casing_thrust(&self) -> Option<Doubted<Band<Force>>> {
        self.casing.map(|(_, force)| force.map(|force| force.on_rig))
    }

    /// Force on the stem as it is driven out.
    pub(in crate::method) fn on_stem(&self) -> Doubted<Band<Force>> {
        self.casing.map_or(self.pushed, |(_, force)| force).map(|force| force.on_ahead)
    }
}
