//! What a fused PVC pipe bears: pull and bending always share one strength.

use super::force::PullOnPipe;
use super::section::{Bend, Borne, Ring, Section, has_ramp, on_ramp};
use crate::check::{Check, Subject};
use crate::drive::{Pipe, Pull, PvcPipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::pe::AllowableTension;
use crate::laws::pull_limits::{FactorAtTemperature, PvcPullStress, TensionBesideBend};
use crate::method::scheme::Scheme;
use crate::quantity::{Band, Pressure, Ratio, Role};
use crate::source::Cited;

pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    pvc: &PvcPipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    scheme: &mut Scheme,
) -> Borne {
    let section = Section::scored(calc, pipe.outside_diameter.value, pvc.wall.value, pull);
    let Section { outside_diameter, wall } = section;
    let peak = on_pipe.map(PullOnPipe::peak);
    calc.part("allowable tension");
    let stress = allowable(calc, pvc);
    let tension = calc.doubted(|calc| {
        let weld_factor = Ratio::from(1.0);
        stress.value.map(|stress| calc.law(AllowableTension { stress, outside_diameter, wall, weld_factor }))
    });
    let tension = Doubted { value: tension.value, doubt: stress.doubt.or(tension.doubt) };
    scheme.checks.add(Check::at_most(Subject::Tension, Role::Pull, peak, tension));

    let bend = bent(calc, section, pvc, pull, stress);
    let ramp = on_ramp(calc, section, on_pipe, bend);
    if let Some(bend) = bend {
        scheme.checks.add(Check::at_most(Subject::TensionAndBending, Role::Strength, ramp, stress));
        scheme.checks.add(Bend::check(bend, pull, Cited::new(bend.value.smallest, pvc.bend_ratio.origin)));
    }
    let radius = bend.map(|bend| bend.value.radius);
    let ring = ring(calc, section, pvc, radius, stress);
    if let Some(check) = ring.collapse(calc, pull, on_pipe, ramp) {
        scheme.checks.add(check.with_note(BOTH_MODULI));
    }
    let beside_bend = match bend {
        Some(bend) => calc.doubted(|calc| {
            let (allowable, modulus, radius) = (stress.value.value, pvc.modulus, bend.value.radius);
            calc.law(TensionBesideBend { allowable, modulus, outside_diameter, wall, radius })
        }),
        None => tension.map(|tension| tension.value),
    };
    Borne { straight: tension, beside_bend, radius }
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
    let points = pvc.temperature;
    calc.law(FactorAtTemperature {
        temperature: points.at,
        below: points.below.0,
        factor_below: points.below.1,
        above: points.above.0,
        factor_above: points.above.1,
    })
}

/// The bend of the ramp, if there is one.
pub(super) fn bent<R: Recorder>(
    calc: &mut Calc<R>,
    section: Section,
    pvc: &PvcPipe,
    pull: &Pull,
    stress: Doubted<Cited<Pressure>>,
) -> Option<Doubted<Bend>> {
    has_ramp(pull).then(|| {
        calc.part("tension and bending on the ramp");
        let smallest = pvc.bend_ratio.value * section.outside_diameter;
        calc.doubted(|calc| Bend::of(calc, section, smallest, pvc.modulus, pull, stress.value.value))
    })
}

pub(super) fn ring<R: Recorder>(
    calc: &mut Calc<R>,
    section: Section,
    pvc: &PvcPipe,
    radius: Option<crate::quantity::Length>,
    stress: Doubted<Cited<Pressure>>,
) -> Ring {
    let modulus = moduli(calc, pvc);
    Ring {
        section,
        modulus,
        poisson: pvc.poisson,
        ovality: pvc.ovality,
        radius,
        allowable: stress.map(|stress| stress.value),
    }
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
