//! Models for clay that is loaded faster than it drains: a bore that stays open, a bore that closes on the pipe as it
//! moves, and clay closed on a pipe that stands. How far the bore closes tells which of the first two holds.

use super::place::{FrictionModel, Over, Place};
use crate::conditions::vertical_stress;
use crate::drive::Undrained;
use crate::handbook::{AdhesionRow, HandbookError};
use crate::law::{Calc, Doubted};
use crate::laws::friction::{AdhesionOverWidth, ContactForce, ContactWidth};
use crate::laws::soil::BoreClosure;
use crate::quantity::{Band, Length, LineLoad, Pressure, Ratio};
use core::f64::consts::PI;

/// Share of the overcut that may close before a bore no longer counts as open: our judgement.
const OPEN: f64 = 0.5;
/// Modulus of elasticity over shear modulus of an undrained soil: 2 (1 + nu), nu = 1/2.
const ELASTIC_OVER_SHEAR: f64 = 3.0;

/// Rows of the adhesion table by consistency, from weak to strong.
const BY_CONSISTENCY: [&str; 5] = ["navy_very_soft", "navy_soft", "navy_medium", "navy_stiff", "navy_very_stiff"];

const NO_STRENGTH: &str = "whether the clay closes on the pipe is not tested: undrained_strength is not given";
const NO_WEIGHT: &str =
    "friction in an open bore in clay is not worked out: the weight of the pipe is not given (candidates[].weight)";
const OVER_BAND: &str = "clay closed on the pipe asks for more than the high unit friction that the checks count: cut \
                         wider, keep the bore full of slurry, or give `friction`";
const NOT_JACKED: &str = "friction in an open bore in clay is worked out for a jacked pipe only";

/// How far a bore closes, at once, against its overcut on the radius.
#[derive(Clone, Copy)]
enum Closes {
    /// By less than the share that still leaves it open.
    Little,
    /// By more, but not by all of the overcut.
    InPart,
    /// By the overcut or more.
    All,
    /// Not tested, and why.
    Untold(&'static str),
}

pub(super) fn models(
    calc: &mut Calc,
    place: &Place<'_>,
    models: &mut Vec<FrictionModel>,
    notes: &mut Vec<&'static str>,
) -> Result<(), HandbookError> {
    let Some(undrained) = place.soil.undrained.filter(|_| place.holds(|class| !class.is_granular())) else {
        if place.soil.undrained.is_none() && place.holds(|class| class.is_clay()) {
            notes.push(NO_STRENGTH);
        }
        return Ok(());
    };
    let closes = closes(calc, place, undrained);
    if let Closes::Untold(why) = closes {
        notes.push(why);
    }
    match (place.cut().zip(undrained.modulus), place.weight) {
        (Some((bore, modulus)), Some(weight)) => {
            models.push(open_bore(calc, place, undrained, closes, (bore, modulus, weight))?);
        }
        (Some(_), None) => notes.push(if place.pipe.jacked.is_some() { NO_WEIGHT } else { NOT_JACKED }),
        (None, _) => {}
    }
    let closed = closed(calc, place, undrained, closes)?;
    if matches!(closes, Closes::All) && closed.friction.high > place.ground.pipe_friction.worse.high {
        notes.push(OVER_BAND);
    }
    models.push(closed);
    models.push(stalled(calc, place, undrained)?);
    Ok(())
}

/// At the deepest place, where it closes most.
fn closes(calc: &mut Calc, place: &Place<'_>, undrained: Undrained) -> Closes {
    let Some(modulus) = undrained.modulus else {
        return Closes::Untold("whether the clay closes on the pipe is not tested: undrained_modulus is not given");
    };
    let Some(bore) = place.cut() else {
        return Closes::Untold(
            "whether the clay closes on the pipe is not tested: the overcut is not given (candidates[].bore)",
        );
    };
    let axis = (place.ground.way.deepest - place.diameter / 2.0).max(Length::default());
    let stress = vertical_stress(calc, place.at(), axis);
    let closure = calc.doubted(|calc| {
        calc.law(BoreClosure {
            overburden: stress.total,
            undrained_strength: undrained.strength,
            shear_modulus: modulus / ELASTIC_OVER_SHEAR,
            bore_radius: bore / 2.0,
        })
    });
    let overcut = (bore - place.diameter) / 2.0;
    // Beyond the range of the law the clay flows.
    match closure.if_sure() {
        Some(closure) if closure < overcut * OPEN => Closes::Little,
        Some(closure) if closure < overcut => Closes::InPart,
        _ => Closes::All,
    }
}

/// Adhesion on the whole circumference, never more than the strength of the clay.
fn all_round(calc: &mut Calc, place: &Place<'_>, undrained: Undrained, row: &AdhesionRow) -> Doubted<Band<Pressure>> {
    let (low, high) = (row.low.value, row.high.value);
    let levels = Band { low, likely: (low + high) / 2.0, high };
    calc.doubted(|calc| {
        levels.map(|adhesion| {
            calc.law(AdhesionOverWidth {
                adhesion: adhesion.min(undrained.strength),
                contact_width: PI * place.diameter,
                outside_diameter: place.diameter,
            })
        })
    })
}

/// Clay that has closed on the pipe while it is driven: adhesion by consistency.
fn closed(
    calc: &mut Calc,
    place: &Place<'_>,
    undrained: Undrained,
    closes: Closes,
) -> Result<FrictionModel, HandbookError> {
    let table = place.drive.handbook.adhesion()?;
    let mut found = None;
    for key in BY_CONSISTENCY {
        let row = table.row(key)?.value;
        let within = row.strength_to.as_ref().is_some_and(|to| undrained.strength <= to.value);
        found = Some((row, within));
        if within {
            break;
        }
    }
    let (row, within) = found.ok_or_else(|| table.lacks(BY_CONSISTENCY[0]))?;
    let friction = all_round(calc, place, undrained, row);
    let (holds, note) = match closes {
        Closes::All => (
            true,
            "the bore closes by the overcut or more, so that the clay is on the whole pipe during the drive; adhesion by \
             consistency, no more than the undrained strength; recalled; nothing that holds the bore up is counted",
        ),
        Closes::InPart => (
            true,
            "the bore closes by half of the overcut or more, not by all of it: the most that clay on a part of the pipe \
             can do; adhesion by consistency, recalled",
        ),
        Closes::Untold(_) => (
            true,
            "holds where the bore closes by the overcut or more, which is not tested here; adhesion by consistency, no \
             more than the undrained strength; recalled",
        ),
        Closes::Little => (false, "does not hold here: the bore closes by less than half of the overcut"),
    };
    // Depth only tells whether it holds.
    let model = FrictionModel::of("closed clay, adhesion on the whole pipe", Over::Deepest, friction, note);
    Ok(FrictionModel { in_range: model.in_range && holds && within, ..model })
}

/// Clay on the whole circumference of a pipe that stands: an accident, not the drive.
fn stalled(calc: &mut Calc, place: &Place<'_>, undrained: Undrained) -> Result<FrictionModel, HandbookError> {
    let row = place.drive.handbook.adhesion()?.row("stalled")?.value;
    let friction = all_round(calc, place, undrained, row);
    Ok(FrictionModel::of(
        "clay closed on a pipe that stands",
        Over::Any,
        friction,
        "an accident of its own, not in the band: a stalled drive in clay; adhesion no more than the undrained strength",
    ))
}

/// A pipe that slides on the bottom, or under the crown, of a bore that stays open.
fn open_bore(
    calc: &mut Calc,
    place: &Place<'_>,
    undrained: Undrained,
    closes: Closes,
    (bore, modulus, pipe_weight): (Length, Pressure, LineLoad),
) -> Result<FrictionModel, HandbookError> {
    let gravity = place.drive.handbook.ratio("pull.fluid_clean")?.value;
    let fluid_gravity = if place.is_lubricated() { gravity } else { Ratio::default() };
    let friction = calc.doubted(|calc| {
        let contact_force = calc.law(ContactForce { pipe_weight, outside_diameter: place.diameter, fluid_gravity });
        let contact_width =
            calc.law(ContactWidth { contact_force, bore, outside_diameter: place.diameter, ground_modulus: modulus });
        let adhesion: Pressure = undrained.strength;
        Band::same(calc.law(AdhesionOverWidth { adhesion, contact_width, outside_diameter: place.diameter }))
    });
    let open = matches!(closes, Closes::Little);
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
    Ok(FrictionModel { in_range: model.in_range && open, ..model })
}
