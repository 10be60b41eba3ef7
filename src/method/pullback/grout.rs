//! A pulled pipe of PVC or metal under liquid grout, empty, before anything holds it.

use super::in_place::InPlace;
use super::service::{grout_pressure, ring_of_other};
use crate::check::{Check, Subject};
use crate::drive::{Barrel, Drive, Grout, Pipe, Pull, PulledPipe};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::deflection::BuoyantDeflection;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Band, Measure, Pressure, Ratio, Role};
use uom::si::f64::Acceleration;

const PLASTIC: &str = "likely with the modulus of short loads, high with that of years; the heat of setting grout is not \
                       counted beyond the temperature of the pull";
const METAL: &str = "as an elastic ring, without what its lining adds";

/// The pressure of the grout against the ring alone.
pub(super) fn of_other<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    pulled: &PulledPipe,
    pull: &Pull,
    grout: Grout,
) -> Option<Check> {
    let ring = ring_of_other(calc, pipe, pulled, pull)?;
    calc.part("collapse while the annulus is grouted");
    let pressure = calc.doubted(|calc| grout_pressure(calc, drive, pipe, grout));
    let moduli = moduli(calc, pulled, ring.modulus);
    let resistance = calc.doubted(|calc| moduli.value.map(|modulus| resists(calc, drive, pull, ring, modulus, grout)));
    let limit = pull.collapse_factor.map(|factor| resistance.value.map(|resistance| resistance / factor));
    let limit = Doubted { value: limit, doubt: resistance.doubt.or(moduli.doubt) };
    let check = Check::at_most_by_level(Subject::CollapseInGrout, Role::Pressure, pressure, limit);
    Some(check.with_note(if pulled.is_plastic() { PLASTIC } else { METAL }))
}

/// Modulus by level of the load: of metal one, of PVC those of the pull.
fn moduli<R: Recorder>(calc: &mut Calc<R>, pulled: &PulledPipe, of_metal: Pressure) -> Doubted<Band<Pressure>> {
    let pvc = match pulled {
        PulledPipe::Pvc(pvc) => Some(&**pvc),
        PulledPipe::Jointed(jointed) => match &jointed.barrel {
            Barrel::Pvc(pvc) => Some(pvc),
            Barrel::Iron { .. } => None,
        },
        PulledPipe::Pe(_) | PulledPipe::Steel(_) => None,
    };
    match pvc {
        Some(pvc) => super::pvc::moduli(calc, pvc),
        None => Doubted::sure(Band::same(of_metal)),
    }
}

/// What the ring bears out of round as it is delivered, and as it goes by its own buoyancy.
fn resists<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pull: &Pull,
    ring: InPlace,
    modulus: Pressure,
    grout: Grout,
) -> Pressure {
    let (outside_diameter, wall) = (ring.section.outside_diameter, ring.section.wall);
    let unit_weight = grout.density * Acceleration::from_si(STANDARD_GRAVITY);
    let afloat = calc.law(BuoyantDeflection { unit_weight, outside_diameter, wall, modulus });
    let ovality: Ratio = (ring.ovality + afloat).max(pull.ovality);
    InPlace { modulus, ..ring }.collapse(calc, drive.in_service.unsupported.value, ovality)
}
