//! A casing that is pushed behind the stem: its section, its free length in the pit, its joints.

use super::steel;
use crate::check::{Check, Subject};
use crate::drive::Casing;
use crate::law::{Calc, Doubted, Recorder};
use crate::method::scheme::Scheme;
use crate::quantity::{Band, Force, Role};

/// The thrust of the frame on the length that nothing holds.
pub(super) fn in_the_pit<R: Recorder>(
    calc: &mut Calc<R>,
    casing: &Casing,
    thrust: Doubted<Band<Force>>,
    scheme: &mut Scheme,
) {
    let Some((tube, free)) = casing.tube.as_deref().and_then(|tube| Some((tube, tube.free?))) else { return };
    calc.part("casing in the pit as a column");
    let limit = calc.doubted(|calc| steel::free_length(calc, &tube.section, &free));
    let check = Check::at_most(Subject::CasingColumn, Role::Thrust, thrust, limit);
    scheme.checks.add(check.with_note(steel::FREE));
}

/// The greatest thrust on it, as it goes in and as the pipe pushes it out, which after a stop may be more.
pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    casing: &Casing,
    thrust: Doubted<Band<Force>>,
    scheme: &mut Scheme,
) {
    if let Some(tube) = casing.tube.as_deref() {
        calc.part("strength of the casing");
        let limit = calc.doubted(|calc| steel::limit(calc, &tube.section));
        scheme.checks.add(Check::at_most(Subject::CasingSection, Role::Thrust, thrust, limit));
    }
    if let Some(rating) = casing.joint_thrust {
        scheme.checks.add(Check::at_most(Subject::CasingJoint, Role::Thrust, thrust, rating));
    }
}
