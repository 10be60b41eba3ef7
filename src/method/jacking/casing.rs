//! A casing that is pushed behind the stem: its section, its free length in the pit, its joints.

use super::steel;
use crate::check::{Check, Subject};
use crate::drive::{Casing, CasingTube};
use crate::law::{Calc, Doubted, Recorder};
use crate::method::scheme::Scheme;
use crate::quantity::{Band, Force, Role};

/// The pipe that pushes the casing out never loads it more than the frame that pushed it in: the stem is gone.
pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    casing: &Casing,
    thrust: Doubted<Band<Force>>,
    scheme: &mut Scheme,
) {
    if let Some(CasingTube { section, free, .. }) = casing.tube.as_deref() {
        calc.part("strength of the casing");
        let limit = calc.doubted(|calc| steel::limit(calc, section));
        scheme.checks.add(Check::at_most(Subject::CasingSection, Role::Thrust, thrust, limit));
        if let Some(free) = free {
            calc.part("casing in the pit as a column");
            let limit = calc.doubted(|calc| steel::free_length(calc, section, free));
            let check = Check::at_most(Subject::CasingColumn, Role::Thrust, thrust, limit);
            scheme.checks.add(check.with_note(steel::FREE));
        }
    }
    if let Some(rating) = casing.joint_thrust {
        let rating = Doubted { value: rating, doubt: None };
        scheme.checks.add(Check::at_most(Subject::CasingJoint, Role::Thrust, thrust, rating));
    }
}
