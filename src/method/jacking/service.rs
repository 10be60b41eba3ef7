//! A rigid pipe in service: earth, water and traffic against its crushing strength.
//!
//! Earth load is that of a bore, over the deepest place of a stretch, with the mean effective weight of what lies over
//! the crown; water presses beside it; traffic counts at the least cover. Cohesion counts only where the file gives it,
//! the pipe is large and the crown is dry, and never below the column that rests on the pipe whatever holds.

use super::super::walked::Walked;
use crate::check::{Absent, Outcome, Verdict, at_most, rated};
use crate::conditions::vertical_stress;
use crate::drive::{Column, Drive, Pipe, PipeInService, Place};
use crate::law::{Calc, Recorder};
use crate::laws::earth_load::{CrushingStrengthNeeded, FloorColumn, FlooredLoad, PressureOnPipe};
use crate::laws::soil::MarstonLoad;
use crate::quantity::{Band, Length, LineLoad, Pressure, Ratio, Role};
use crate::source::Cited;

const NOTE: &str =
    "earth, water and traffic together, of the stretch that asks for most; no cohesion but the file's own";
const UNKNOWN: &str = "needs more than the least cover of the table of live load";

pub(in super::super) fn crushing<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let Some(service) = &at.pipe.service else {
        return Err(at.jacked().err().unwrap_or(Absent::Missing));
    };
    calc.part("pipe in service");
    let found = calc.doubted(|calc| worst(calc, at.drive, at.pipe, service));
    let Some(found) = found.transpose() else {
        return Ok(rated(Verdict::NotDecided, service.strength.origin).with_note(UNKNOWN));
    };
    let needed = found.map(|(needed, _)| Band::same(needed));
    let strength = found.map(|(_, strength)| Cited::new(strength, service.strength.origin));
    Ok(at_most(Role::LineWeight, needed, strength).with_note(NOTE))
}

/// Strength that is needed and that there is, where the pipe is used most; `None` where a stretch cannot be told.
fn worst<R: Recorder>(
    calc: &mut Calc<R>,
    drive: &Drive,
    pipe: &Pipe,
    service: &PipeInService,
) -> Option<(LineLoad, LineLoad)> {
    let mut worst: Option<(LineLoad, LineLoad)> = None;
    for (stretch, place) in drive.stretches.iter().zip(&service.places) {
        let (at, place) = (stretch.heavy(), place.as_ref()?);
        let (earth_load, live_load) = loads(calc, pipe, service, (at, stretch.way.deepest), place);
        let ultimate = Some((service.strength.value, service.safety));
        for (strength, safety) in [ultimate, service.cracked].into_iter().flatten() {
            let needed = calc.law(CrushingStrengthNeeded {
                earth_load,
                earth_bedding_factor: service.earth_bedding,
                live_load,
                live_bedding_factor: service.live_bedding,
                safety,
            });
            if worst.is_none_or(|(most, than)| needed / strength > most / than) {
                worst = Some((needed, strength));
            }
        }
    }
    worst
}

/// Earth with water, and traffic.
fn loads<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    service: &PipeInService,
    (at, deepest): (Column<'_>, Length),
    place: &Place,
) -> (LineLoad, LineLoad) {
    let outside_diameter = pipe.outside_diameter.value;
    let depth = deepest - outside_diameter;
    let stress = vertical_stress(calc, at, depth);
    let (unit_weight, water) = (stress.effective / depth, stress.total - stress.effective);
    let (bore, lateral_friction) = (pipe.bore.value, place.lateral_friction);
    let marston = |calc: &mut Calc<R>, depth: Length, cohesion: Pressure| {
        calc.law(MarstonLoad { unit_weight, bore, depth, lateral_friction, cohesion })
    };
    let dry_and_large = water <= Pressure::default() && outside_diameter >= service.cohesion_from;
    let earth = match at.soil.cohesion.filter(|_| dry_and_large) {
        Some(cohesion) => {
            let column = calc.law(FloorColumn { depth, bore, bores: service.floor_bores });
            let (load, floor) = (marston(calc, depth, cohesion), marston(calc, column, Pressure::default()));
            calc.law(FlooredLoad { load, floor })
        }
        None => marston(calc, depth, Pressure::default()),
    };
    let pressed =
        |calc: &mut Calc<R>, pressure, factor| calc.law(PressureOnPipe { pressure, factor, outside_diameter });
    let water = pressed(calc, water, Ratio::from(1.0));
    (earth + water, pressed(calc, place.live, place.impact))
}
