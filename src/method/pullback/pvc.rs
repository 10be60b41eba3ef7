//! What a fused PVC pipe bears: pull and bending always share one strength.

use super::force::{OnPipe, PullOnPipe, Pulling};
use super::pressed::{self, Ring};
use super::section::{self, Bend, Borne, Section, Strength, bent, has_ramp, on_ramp};
use crate::check::at_most;
use crate::conditions::carried::at_temperature;
use crate::drive::{Creep, Pull, PvcPipe};
use crate::law::{Calc, Doubted};
use crate::laws::pe::ModulusAtDuration;
use crate::laws::pull_limits::PvcPullStress;
use crate::quantity::{Band, Pressure, Ratio, Role, Time};
use crate::source::{Cited, Origin};

pub(super) fn of(calc: &mut Calc, at: Pulling<'_>, pvc: &PvcPipe, on_pipe: &OnPipe) -> Strength {
    let Pulling { pipe, pull, .. } = at;
    let section = Section::scored(calc, pipe.outside_diameter.value, pvc.wall.value, pull);
    calc.part("allowable tension");
    let stress = allowable(calc, pvc);
    let tension = section::tension(calc, section, stress, Ratio::from(1.0));
    let bend = bend(calc, section, pvc, pull, stress);
    let borne = Borne::of(calc, section, pull, tension, (stress, Doubted::sure(pvc.modulus)), bend);
    let strength = Strength::of(borne, at_most(Role::Pull, on_pipe.map(PullOnPipe::in_wall), tension));
    bends(calc, (section, pvc, pvc.bend_ratio.origin), pull, on_pipe, (stress, bend), strength)
}

/// With tension and bending, the radius, and collapse of a barrel with its bend.
pub(super) fn bends(
    calc: &mut Calc,
    (section, pvc, radius_by): (Section, &PvcPipe, Origin),
    pull: &Pull,
    on_pipe: &OnPipe,
    (stress, bend): (Doubted<Cited<Pressure>>, Option<Doubted<Bend>>),
    strength: Strength,
) -> Strength {
    let ramp = on_ramp(calc, section, on_pipe, bend);
    let (poisson, ovality) = (pvc.poisson, pvc.ovality);
    let soft = calc.doubted(|calc| modulus(calc, pvc, pull.load_duration));
    let ring = Ring { section, modulus: soft.map(Band::same), poisson, ovality, bend, allowable: stress };
    Strength {
        with_bending: bent(bend, |_| at_most(Role::Strength, ramp, stress)),
        radius: bent(bend, |bend| Bend::check(bend, pull, radius_by)),
        inside: pressed::inside(calc, section, pull, stress),
        collapse: ring.collapse(calc, pull, on_pipe, ramp),
        ..strength
    }
}

/// Stress that pull and bend may reach together.
pub(super) fn allowable(calc: &mut Calc, pvc: &PvcPipe) -> Doubted<Cited<Pressure>> {
    calc.doubted(|calc| {
        let temperature_factor = temperature_factor(calc, pvc);
        pvc.tensile.map(|tensile| {
            let (safety, joint_factor) = (pvc.safety, pvc.joint_factor.value);
            calc.law(PvcPullStress { tensile, safety, temperature_factor, joint_factor })
        })
    })
}

/// Strength at the temperature of the pull over that of the table.
pub(super) fn temperature_factor(calc: &mut Calc, pvc: &PvcPipe) -> Ratio {
    at_temperature(calc, pvc.temperature)
}

/// The bend of the ramp, if there is one.
pub(super) fn bend(
    calc: &mut Calc,
    section: Section,
    pvc: &PvcPipe,
    pull: &Pull,
    stress: Doubted<Cited<Pressure>>,
) -> Option<Doubted<Bend>> {
    has_ramp(pull).then(|| {
        calc.part("tension and bending on the ramp");
        let smallest = pvc.bend_ratio.value * section.outside_diameter;
        calc.doubted(|calc| Bend::of(calc, section, smallest, Doubted::sure(pvc.modulus), pull, stress))
    })
}

/// Modulus under a load that stands so long, at the temperature of the pull. Stiffness falls less with temperature than
/// strength does: its factor is on the safe side. Cold is not credited.
pub(super) fn modulus(calc: &mut Calc, pvc: &PvcPipe, duration: Time) -> Pressure {
    after(calc, pvc.creep, duration) * temperature_factor(calc, pvc).min(Ratio::from(1.0))
}

/// Modulus under a load that stands so long.
pub(super) fn after(calc: &mut Calc, creep: Creep, duration: Time) -> Pressure {
    let ((duration_before, modulus_before), (duration_after, modulus_after)) = (creep.short, creep.long);
    calc.law(ModulusAtDuration { duration, duration_before, modulus_before, duration_after, modulus_after })
}
