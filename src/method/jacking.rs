//! Pipe jacking behind a guided bore: stem pushed, perhaps a casing, then the pipe.

mod capacity;
mod casing;
mod end;
pub(super) mod figures;
mod joint;
pub(super) mod service;
pub(super) mod shove;
pub(super) mod stations;
mod steel;
pub(super) mod wall;

use super::scheme::Scheme;
use super::stage::{Stage, peak, pushed};
use super::stem::{against_rig, torque};
use crate::check::Subject;
use crate::drive::{Drive, JackedPipe, Pipe};
use crate::law::{Calc, Recorder};

pub(super) fn assess<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    jacked: &JackedPipe,
    scheme: &mut Scheme,
) {
    let stem = super::stem::checks(calc, drive, pipe, scheme);
    scheme.checks.add_some(torque(Subject::AugerTorque, drive.rig.auger_torque, drive.rig.torque));
    let mut rig = stem;
    let jacking = if let Some(casing) = &pipe.casing {
        let casing_in = pushed(calc, drive, pipe, Stage::CASING);
        let thrust = casing_in.map(|force| force.on_rig);
        scheme.checks.add(against_rig(drive, Subject::CasingThrust, thrust));
        casing::in_the_pit(calc, casing, thrust, scheme);
        super::stem::driven_out(calc, drive, pipe, casing_in.map(|force| force.on_ahead), scheme);
        rig = rig.zip(thrust).map(|(rig, thrust)| peak(rig, thrust));
        scheme.pushes(thrust);
        let pipe_in = pushed(calc, drive, pipe, Stage::PIPE_AFTER_CASING);
        let most = thrust.zip(pipe_in).map(|(thrust, pipe_in)| peak(thrust, pipe_in.on_ahead));
        casing::checks(calc, casing, most, scheme);
        pipe_in.map(|force| force.on_rig)
    } else {
        let pipe_in = pushed(calc, drive, pipe, Stage::PIPE_AFTER_STEM);
        super::stem::driven_out(calc, drive, pipe, pipe_in.map(|force| force.on_ahead), scheme);
        pipe_in.map(|force| force.on_rig)
    };
    scheme.pushes(jacking);
    scheme.checks.add(against_rig(drive, Subject::JackingThrust, jacking));
    end::checks(calc, pipe, jacked, jacking, scheme);
    scheme.force = Some(jacking.in_spite_of_doubt());
    let rig = rig.zip(jacking).map(|(rig, jacking)| peak(rig, jacking));
    scheme.rig_force = Some(rig.in_spite_of_doubt());
}

/// The stages of a jacked pipe, in order.
pub(super) fn stages(pipe: &Pipe) -> &'static [Stage] {
    if pipe.casing.is_some() {
        &[Stage::STEM, Stage::CASING, Stage::PIPE_AFTER_CASING]
    } else {
        &[Stage::STEM, Stage::PIPE_AFTER_STEM]
    }
}
