//! Pipe jacking behind a guided bore: stem pushed, perhaps a casing, then the pipe.

mod capacity;
pub(super) mod casing;
pub(super) mod end;
pub(super) mod figures;
mod joint;
pub(super) mod service;
pub(super) mod shove;
pub(super) mod stations;
mod steel;
pub(super) mod wall;

use super::stage::{Pushed, Stage, pushed};
use super::stem::{against_rig, torque};
use super::walked::Walked;
use crate::check::{Absent, Outcome};
use crate::drive::{Casing, Drive, JackedPipe, Pipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::quantity::{Angle, Band, Force};

/// The forces on a casing and on the pipe, and how far the joints of the pipe turn.
pub(super) struct Jacked<'a> {
    pub(super) pipe: &'a JackedPipe,
    pub(super) casing: Option<(&'a Casing, Doubted<Pushed>)>,
    pushed: Doubted<Pushed>,
    /// Greatest angle at a joint, where anything is known of it.
    angle: Doubted<Option<Angle>>,
}

impl<'a> Jacked<'a> {
    pub(super) fn walk<R: Recorder>(
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
    pub(super) fn thrust(&self) -> Doubted<Band<Force>> {
        self.pushed.map(|force| force.on_rig)
    }

    /// Force that pushes the casing.
    pub(super) fn casing_thrust(&self) -> Option<Doubted<Band<Force>>> {
        self.casing.map(|(_, force)| force.map(|force| force.on_rig))
    }

    /// Force on the stem as it is driven out.
    pub(super) fn on_stem(&self) -> Doubted<Band<Force>> {
        self.casing.map_or(self.pushed, |(_, force)| force).map(|force| force.on_ahead)
    }
}

pub(super) fn thrust(at: &Walked<'_>) -> Outcome {
    Ok(against_rig(at, at.jacked()?.thrust()))
}

pub(super) fn auger_torque(at: &Walked<'_>) -> Outcome {
    at.jacked()?;
    let rating = at.drive.rig.torque.ok_or(Absent::NotApplicable("the rig is not rated for torque"))?;
    torque(at.drive.rig.auger_torque, rating)
}

/// The stages of a jacked pipe, in order.
pub(super) fn stages(pipe: &Pipe) -> &'static [Stage] {
    if pipe.casing.is_some() {
        &[Stage::STEM, Stage::CASING, Stage::PIPE_AFTER_CASING]
    } else {
        &[Stage::STEM, Stage::PIPE_AFTER_STEM]
    }
}
