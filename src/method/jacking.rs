//! Pipe jacking behind a guided bore: stem pushed, perhaps a casing, then the pipe.

pub(super) mod service;
pub(super) mod shove;
pub(super) mod stations;
pub(super) mod wall;

use super::scheme::Scheme;
use super::stage::{Stage, pushed};
use crate::check::{Check, Subject};
use crate::drive::{Capacity, Drive, EndArea, JackedPipe, Pipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::clay::{ConcentricEndForce, EdgeEndForce, EndAreaFromRating};
use crate::quantity::{Area, Force, Role};
use crate::source::Cited;

/// Mean over greatest stress of a joint that is just closed over its whole face: plane geometry.
const FULL_TRIANGLE: f64 = 0.5;
const GAPING: &str =
    "with the mean over the greatest stress in the joint as given; steering angles are not checked yet";
const WHOLE_FACE: &str = "the joint is taken to bear over its whole face; steering angles are not checked yet";

pub(super) fn assess<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    jacked: &JackedPipe,
    scheme: &mut Scheme,
) {
    let thrust = Doubted { value: drive.rig.thrust, doubt: None };
    let stem = super::stem::checks(calc, drive, pipe, scheme);
    let mut rig = stem.value;
    let stage = if pipe.casing.is_some() {
        let casing = pushed(calc, drive, pipe, Stage::CASING);
        scheme.checks.add(Check::at_most(Subject::CasingThrust, Role::Thrust, casing, thrust));
        rig = rig.with(casing.value, Force::max);
        scheme.pushes(casing);
        Stage::PIPE_AFTER_CASING
    } else {
        Stage::PIPE_AFTER_STEM
    };
    let jacking = pushed(calc, drive, pipe, stage);
    rig = rig.with(jacking.value, Force::max);
    scheme.pushes(jacking);
    scheme.checks.add(Check::at_most(Subject::JackingThrust, Role::Thrust, jacking, thrust));
    let capacity = end_capacity(calc, jacked);
    let check = Check::at_most(Subject::EndCapacity, Role::Thrust, jacking, capacity);
    let whole = jacked.joint.stress_ratio.value.value >= FULL_TRIANGLE;
    scheme.checks.add(check.with_note(if whole { WHOLE_FACE } else { GAPING }));
    scheme.force = Some(jacking.value);
    scheme.rig_force = Some(rig);
}

/// The stages of a jacked pipe, in order.
pub(super) fn stages(pipe: &Pipe) -> &'static [Stage] {
    if pipe.casing.is_some() {
        &[Stage::STEM, Stage::CASING, Stage::PIPE_AFTER_CASING]
    } else {
        &[Stage::STEM, Stage::PIPE_AFTER_STEM]
    }
}

/// The lesser of what the end bears in its axis and at the edge of the joint.
pub(super) fn end_capacity<R: Recorder>(calc: &mut Calc<R>, jacked: &JackedPipe) -> Doubted<Cited<Force>> {
    calc.part("end capacity of the pipe");
    calc.doubted(|calc| {
        let end_bearing_area = end_area(calc, jacked);
        match jacked.capacity {
            Capacity::Brittle { strength, factor, edge_factor } => {
                let concentric =
                    calc.law(ConcentricEndForce { end_bearing_area, strength: strength.value, factor: factor.value });
                let edge = calc.law(EdgeEndForce {
                    stress_ratio: jacked.joint.stress_ratio.value,
                    end_bearing_area,
                    strength: strength.value,
                    factor: edge_factor.value,
                });
                Cited::new(concentric.min(edge), strength.origin)
            }
        }
    })
}

fn end_area<R: Recorder>(calc: &mut Calc<R>, jacked: &JackedPipe) -> Area {
    match jacked.end_area {
        EndArea::Given(area) => area.value,
        EndArea::Rated { ratings, strength, .. } => {
            let [a, b, c] = ratings.map(|(rating, factor)| calc.law(EndAreaFromRating { rating, factor, strength }));
            a.min(b).min(c)
        }
    }
}
