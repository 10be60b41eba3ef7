//! What a fused PVC pipe bears: pull and bending always share one strength.

use super::force::PullOnPipe;
use super::section::{Bend, Borne, Ring, Section, has_ramp, on_ramp};
use crate::check::{Check, Subject};
use crate::drive::{Pipe, Pull, PvcPipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::pe::AllowableTension;
use crate::laws::pull_limits::{FactorAtTemperature, PvcPullStress, TensionBesideBend};
use crate::method::scheme::Scheme;
use crate::quantity::{Pressure, Ratio, Role};
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
    let ring = ring(section, pvc, radius, stress);
    if let Some(check) = ring.collapse(calc, pull, peak, ramp) {
        scheme.checks.add(check.with_note(SHORT_TERM));
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

const SHORT_TERM: &str = "with the modulus of short loads: no table of PVC stiffness by time was found";

/// Stress that pull and bend may reach together.
pub(super) fn allowable<R: Recorder>(calc: &mut Calc<R>, pvc: &PvcPipe) -> Doubted<Cited<Pressure>> {
    calc.doubted(|calc| {
        let points = pvc.temperature;
        let temperature_factor = calc.law(FactorAtTemperature {
            temperature: points.at,
            below: points.below.0,
            factor_below: points.below.1,
            above: points.above.0,
            factor_above: points.above.1,
        });
        pvc.tensile.map(|tensile| {
            let (safety, joint_factor) = (pvc.safety, pvc.joint_factor.value);
            calc.law(PvcPullStress { tensile, safety, temperature_factor, joint_factor })
        })
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

pub(super) fn ring(
    section: Section,
    pvc: &PvcPipe,
    radius: Option<crate::quantity::Length>,
    stress: Doubted<Cited<Pressure>>,
) -> Ring {
    Ring {
        section,
        modulus: Doubted { value: pvc.modulus, doubt: None },
        poisson: pvc.poisson,
        ovality: pvc.ovality,
        radius,
        allowable: stress.map(|stress| stress.value),
    }
}
