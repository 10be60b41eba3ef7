//! A flexible pipe under liquid grout, empty or full of water, before anything holds it: the pressure of the grout against the ring alone,
//! out of round as it is delivered and as it goes by its own buoyancy.

use super::in_place::InPlace;
use crate::check::{Absent, Outcome, at_most, only};
use crate::drive::{Drive, Ends, Grout, ModulusPoints};
use crate::law::Calc;
use crate::laws::deflection::BuoyantDeflection;
use crate::laws::outside_pressure::NetOutsidePressure;
use crate::laws::soil::gravity;
use crate::quantity::{Band, MassDensity, Pressure, Ratio, Role, Time};

pub(super) const PE: &str = "the heat of setting grout softens PE; no more than the temperature of the pull is counted";
pub(super) const PVC: &str = "at the modulus of the time the grout sets in; its heat is not counted";
pub(super) const METAL: &str = "as an elastic ring, without what its lining adds";

/// Which end of what is not told.
pub(super) type End = fn(Ends<ModulusPoints>) -> ModulusPoints;

/// The pressure at the lowest place of the bore, against what a ring with the modulus of the time that grout sets in bears.
pub(super) fn check(
    calc: &mut Calc,
    drive: &Drive,
    ring: InPlace,
    note: &'static str,
    modulus: impl Fn(&mut Calc, Time, End) -> Pressure,
) -> Outcome {
    only(!drive.annulus.open, "the annulus stays open")?;
    let grout = drive.annulus.grout.ok_or(Absent::Missing)?;
    calc.part("collapse while the annulus is grouted");
    let mut judged = |grout: Grout, end: End| {
        let pressure = calc.doubted(|calc| Band::same(stands(calc, drive, ring, grout)));
        let limit = calc.doubted(|calc| {
            let ring = InPlace { modulus: modulus(calc, grout.sets_in, end), ..ring };
            drive.in_service.collapse_factor.map(|factor| Band::same(resists(calc, drive, ring, grout) / factor))
        });
        at_most(Role::Pressure, pressure, limit)
    };
    let check = judged(grout.high, |points| points.high).with_note(note);
    Ok(if drive.annulus.grout_told { check } else { check.at_best(judged(grout.low, |points| points.low)) })
}

/// Liquid grout stands in the bore from its lowest to its highest place, at its pressure; what weighs the pipe down stands
/// in it from invert to invert.
fn stands(calc: &mut Calc, drive: &Drive, ring: InPlace, grout: Grout) -> Pressure {
    let climb = drive.length.value * drive.grade.value.sin().abs();
    calc.law(NetOutsidePressure {
        density: grout.density,
        height: ring.bore + climb,
        added: grout.pressure,
        inside: drive.annulus.ballast * gravity() * climb,
    })
}

/// Pressure at which the ring collapses.
fn resists(calc: &mut Calc, drive: &Drive, ring: InPlace, grout: Grout) -> Pressure {
    let ovality = afloat(calc, drive, ring, grout.density);
    ring.collapse(calc, drive.in_service.unsupported.value, ovality)
}

/// How far a ring is out of round that floats in a fluid of this density.
pub(super) fn afloat(calc: &mut Calc, drive: &Drive, ring: InPlace, density: MassDensity) -> Ratio {
    let (outside_diameter, wall) = (ring.section.outside_diameter, ring.section.wall);
    let unit_weight = density * gravity();
    let law = BuoyantDeflection { unit_weight, outside_diameter, wall, modulus: ring.modulus };
    let afloat = calc.law(law);
    (ring.ovality + afloat).max(drive.in_service.ovality_at_first)
}
