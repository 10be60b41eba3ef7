//! A pulled pipe under liquid grout, empty, before anything holds it: the pressure of the grout against the ring alone,
//! out of round as it is delivered and as it goes by its own buoyancy.

use super::in_place::InPlace;
use super::pvc;
use super::strength::{Cold, modulus};
use crate::check::{Absent, Outcome, at_most, only};
use crate::drive::{Drive, Grout, Made, ModulusPoints, Pipe, Pull, PulledPipe};
use crate::law::{Calc, Recorder};
use crate::laws::collapse::{CriticalPressure, OvalityFactor};
use crate::laws::deflection::BuoyantDeflection;
use crate::laws::outside_pressure::NetOutsidePressure;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Band, Measure, Pressure, Ratio, Role};
use uom::si::f64::Acceleration;

const PE: &str = "the heat of setting grout softens PE; no more than the temperature of the pull is counted";
const PLASTIC: &str = "likely with the modulus of short loads, high with that of years; the heat of setting grout is not \
                       counted beyond the temperature of the pull";
const METAL: &str = "as an elastic ring, without what its lining adds";

pub(super) fn check<R: Recorder>(
    calc: &mut Calc<R>,
    (drive, pipe, pull): (&Drive, &Pipe, &Pull),
    pulled: &PulledPipe,
    ring: InPlace,
) -> Outcome {
    only(!drive.annulus.open, "the annulus stays open")?;
    let grout = drive.annulus.grout.ok_or(Absent::Missing)?;
    let (points, note) = match pulled.made() {
        Made::Pe(pe) => (Some(pe.times.grout.ok_or(Absent::Missing)?), PE),
        Made::Pvc(_) => (None, PLASTIC),
        Made::Iron(_) | Made::Steel(_) => (None, METAL),
    };
    calc.part("collapse while the annulus is grouted");
    let mut judged = |grout: Grout, points: Option<ModulusPoints>| {
        let pressure = calc.doubted(|calc| Band::same(stands(calc, drive, pipe, grout)));
        let limit = calc.doubted(|calc| {
            let limit = resists(calc, (drive, pull), pulled, ring, (grout, points));
            pull.collapse_factor.map(|factor| limit.map(|resistance| resistance / factor))
        });
        at_most(Role::Pressure, pressure, limit)
    };
    let check = judged(grout.high, points.map(|points| points.high)).with_note(note);
    Ok(if drive.annulus.grout_told { check } else { check.at_best(judged(grout.low, points.map(|points| points.low))) })
}

/// Liquid grout stands in the bore from its lowest to its highest place, at its pressure.
fn stands<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, grout: Grout) -> Pressure {
    let climb = drive.length.value * drive.grade.value.sin().abs();
    calc.law(NetOutsidePressure {
        density: grout.density,
        height: pipe.bore.value + climb,
        added: grout.pressure,
        inside: Pressure::default(),
    })
}

/// What the ring bears by level of the load: PE at its modulus while the grout sets, PVC at those of the pull, metal at one.
fn resists<R: Recorder>(
    calc: &mut Calc<R>,
    (drive, pull): (&Drive, &Pull),
    pulled: &PulledPipe,
    ring: InPlace,
    (grout, points): (Grout, Option<ModulusPoints>),
) -> Band<Pressure> {
    let (outside_diameter, wall) = (ring.section.outside_diameter, ring.section.wall);
    let unit_weight = grout.density * Acceleration::from_si(STANDARD_GRAVITY);
    let oval = |calc: &mut Calc<R>, modulus| -> Ratio {
        let afloat = calc.law(BuoyantDeflection { unit_weight, outside_diameter, wall, modulus });
        (ring.ovality + afloat).max(pull.ovality)
    };
    let moduli = match pulled.made() {
        Made::Pe(_) => {
            let Some(points) = points else { return Band::default() };
            let modulus = modulus(calc, &points, pull, grout.sets_in, Cold::NotCredited);
            let ovality = oval(calc, modulus);
            let ovality_factor = calc.law(OvalityFactor { ovality });
            let (poisson, dimension_ratio, tension_factor) = (ring.poisson, outside_diameter / wall, Ratio::from(1.0));
            let law = CriticalPressure { modulus, poisson, dimension_ratio, ovality_factor, tension_factor };
            return Band::same(calc.law(law));
        }
        Made::Pvc(pvc) => {
            let moduli = pvc::moduli(calc, pvc);
            calc.take(moduli)
        }
        Made::Iron(_) | Made::Steel(_) => Band::same(ring.modulus),
    };
    moduli.map(|modulus| {
        let ovality = oval(calc, modulus);
        InPlace { modulus, ..ring }.collapse(calc, drive.in_service.unsupported.value, ovality)
    })
}
