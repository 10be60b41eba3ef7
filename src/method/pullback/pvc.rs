//! What a fused PVC pipe bears: pull and bending always share one strength.

use super::force::PullOnPipe;
use super::pressed::{self, Ring, pressed_note};
use super::section::{self, Bend, Borne, Section, Strength, bent, has_ramp, on_ramp};
use crate::check::at_most;
use crate::conditions::carried::at_temperature;
use crate::drive::{Pipe, Pull, PvcPipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::pull_limits::PvcPullStress;
use crate::quantity::{Band, Pressure, Ratio, Role};
use crate::source::{Cited, Origin};

pub(super) fn of<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pvc: &PvcPipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
) -> Strength {
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
pub(super) fn bends<R: Recorder>(
    calc: &mut Calc<R>,
    (section, pvc, radius_by): (Section, &PvcPipe, Origin),
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    (stress, bend): (Doubted<Cited<Pressure>>, Option<Doubted<Bend>>),
    strength: Strength,
) -> Strength {
    let ramp = on_ramp(calc, section, on_pipe, bend);
    let (poisson, ovality) = (pvc.poisson, pvc.ovality);
    let ring = Ring { section, modulus: moduli(calc, pvc), poisson, ovality, bend, allowable: stress };
    let collapse = ring.collapse(calc, pull, on_pipe, ramp);
    Strength {
        with_bending: bent(bend, |_| at_most(Role::Strength, ramp, stress)),
        radius: bent(bend, |bend| Bend::check(bend, pull, radius_by)),
        inside: pressed::inside(calc, section, pull, stress),
        collapse: collapse.map(|check| check.with_note(pressed_note(pull, BOTH_MODULI))),
        ..strength
    }
}

pub(super) const BOTH_MODULI: &str =
    "likely with the modulus of short loads, high with that of years: no table of PVC stiffness by time was found";

/// Stress that pull and bend may reach together.
pub(super) fn allowable<R: Recorder>(calc: &mut Calc<R>, pvc: &PvcPipe) -> Doubted<Cited<Pressure>> {
    calc.doubted(|calc| {
        let temperature_factor = temperature_factor(calc, pvc);
        pvc.tensile.map(|tensile| {
            let (safety, joint_factor) = (pvc.safety, pvc.joint_factor.value);
            calc.law(PvcPullStress { tensile, safety, temperature_factor, joint_factor })
        })
    })
}

/// Strength at the temperature of the pull over that of the table.
pub(super) fn temperature_factor<R: Recorder>(calc: &mut Calc<R>, pvc: &PvcPipe) -> Ratio {
    at_temperature(calc, pvc.temperature)
}

/// The bend of the ramp, if there is one.
pub(super) fn bend<R: Recorder>(
    calc: &mut Calc<R>,
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

/// Modulus of short loads, and at the high level that of years. Stiffness falls less with temperature than strength
/// does: its factor is on the safe side. Cold is not credited.
pub(super) fn moduli<R: Recorder>(calc: &mut Calc<R>, pvc: &PvcPipe) -> Doubted<Band<Pressure>> {
    let warm = calc.doubted(|calc| temperature_factor(calc, pvc).min(Ratio::from(1.0)));
    warm.map(|warm| {
        let (short, long) = (pvc.modulus * warm, pvc.modulus_long * warm);
        Band { low: short, likely: short, high: long }
    })
}
