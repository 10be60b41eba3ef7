//! Models for clay that is loaded faster than it drains: a bore that stays open, and clay closed on the pipe.

use super::{FrictionModel, Over, Place};
use crate::conditions::vertical_stress;
use crate::drive::Undrained;
use crate::handbook::HandbookError;
use crate::law::{Calc, Silent};
use crate::laws::friction::{AdhesionOverWidth, ContactForce, ContactWidth};
use crate::laws::soil::BoreClosure;
use crate::quantity::{Band, Length, Measure, Pressure, Ratio};
use core::f64::consts::PI;

/// Share of the overcut that may close before a bore no longer counts as open: judgement, after an independent check.
const OPEN: f64 = 0.5;
/// Modulus of elasticity over shear modulus of an undrained soil: 2 (1 + nu), nu = 1/2.
const ELASTIC_OVER_SHEAR: f64 = 3.0;

pub(super) fn models(
    calc: &mut Calc<Silent>,
    place: &Place<'_>,
    models: &mut Vec<FrictionModel>,
) -> Result<(), HandbookError> {
    let Some(undrained) = place.soil.undrained.filter(|_| !place.is_granular()) else { return Ok(()) };
    models.extend(open_bore(calc, place, undrained)?);
    models.push(closed(calc, place, undrained)?);
    Ok(())
}

/// Clay on the whole circumference of a pipe that stands: an accident, not the drive.
fn closed(calc: &mut Calc<Silent>, place: &Place<'_>, undrained: Undrained) -> Result<FrictionModel, HandbookError> {
    let table = place.drive.handbook.adhesion()?;
    let missing = || HandbookError::NoRow { table: "adhesion", wanted: "stalled".to_owned() };
    let row = table.get("stalled").ok_or_else(missing)?.value;
    let (low, high) = (row.low.value, row.high.value);
    let levels = Band { low, likely: (low + high) / 2.0, high };
    let friction = calc.doubted(|calc| {
        levels.map(|adhesion| {
            calc.law(AdhesionOverWidth {
                adhesion: adhesion.min(undrained.strength),
                contact_width: PI * place.diameter,
                outside_diameter: place.diameter,
            })
        })
    });
    Ok(FrictionModel::of(
        "clay closed on a pipe that stands",
        Over::Any,
        friction,
        "an accident of its own, not in the band: a stalled drive in clay; adhesion no more than the undrained strength",
    ))
}

/// A pipe that slides on the bottom, or under the crown, of a bore that stays open.
fn open_bore(
    calc: &mut Calc<Silent>,
    place: &Place<'_>,
    undrained: Undrained,
) -> Result<Option<FrictionModel>, HandbookError> {
    let bore = place.pipe.bore.value;
    let (Some(modulus), Some(pipe_weight)) = (undrained.modulus, place.weight) else { return Ok(None) };
    if bore <= place.diameter {
        return Ok(None);
    }
    let gravity = place.drive.handbook.ratio("pull.fluid_clean")?.value;
    let fluid_gravity = if place.is_lubricated() { gravity } else { Ratio::default() };
    let axis = place.soil.depths.1 - place.diameter / 2.0;
    let overburden = vertical_stress(calc, place.soil, axis).map(|stress| stress.total);
    let mut closes = Length::from_si(f64::INFINITY);
    let friction = calc.doubted(|calc| {
        if let Some(overburden) = overburden {
            closes = calc.law(BoreClosure {
                overburden,
                undrained_strength: undrained.strength,
                shear_modulus: modulus / ELASTIC_OVER_SHEAR,
                bore_radius: bore / 2.0,
            });
        }
        let contact_force = calc.law(ContactForce { pipe_weight, outside_diameter: place.diameter, fluid_gravity });
        let contact_width =
            calc.law(ContactWidth { contact_force, bore, outside_diameter: place.diameter, ground_modulus: modulus });
        let adhesion: Pressure = undrained.strength;
        Band::same(calc.law(AdhesionOverWidth { adhesion, contact_width, outside_diameter: place.diameter }))
    });
    let overcut = (bore - place.diameter) / 2.0;
    let open = closes < overcut * OPEN;
    let note = if open {
        "the bore closes less than half of the overcut, at once; never for capacity: a pipe that sags, swelling and time \
         are left out"
    } else {
        "does not hold here: the bore closes half of the overcut or more, or its stress is not known"
    };
    let model = FrictionModel::of(
        "open bore in clay, full strength on the width in contact",
        // Depth only tells whether it holds.
        Over::Deepest,
        friction,
        note,
    );
    Ok(Some(FrictionModel { in_range: model.in_range && open, ..model }))
}
