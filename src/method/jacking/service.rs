//! A rigid pipe in service: earth, water and traffic against its crushing strength.
//!
//! Earth load is that of a bore, over the deepest place of a stretch, with the mean effective weight of what lies over
//! the crown; water presses beside it; traffic counts at the least cover. Cohesion counts only where the file gives it,
//! the pipe is large and the crown is dry, and never below the column that rests on the pipe whatever holds.

use super::super::walked::Walked;
use crate::check::{Absent, Draft, Outcome, Rule, Verdict, at_least, at_most, only, rated};
use crate::conditions::vertical_stress;
use crate::drive::{Capacity, Column, Pipe, PipeInService, Place, Stretch};
use crate::handbook::Family;
use crate::law::Calc;
use crate::laws::earth_load::{CrushingStrengthNeeded, FloorColumn, FlooredLoad, PressureOnPipe};
use crate::laws::soil::MarstonLoad;
use crate::quantity::{Band, Length, LineLoad, Pressure, Ratio, Role};
use crate::source::{Cited, Equation, Origin};

const NOTE: &str = "earth, water and traffic together, in the worst stretch; no cohesion unless the file gives it";
const ORDER: &str = "the crushing strength is not given: order a pipe of at least this much; compared with the best class that is usual";
const ORDER_AND_GROUT: &str = "the crushing strength is not given: order a pipe of at least this much, and grout the annulus \
    (`candidates[].annulus: grouted`), without which no usual class bears the load";
const BARE: &str = "least wall of a bare casing; a coated one may be thinner";
const ELSEWHERE: &str =
    "least wall of American railways, a habit elsewhere: ring, deflection and collapse under the load model decide";
const WHOSE: &str =
    "thinner than the table of American railways asks, and nothing tells that its rules count: say whose do";
const THIN_ANYWHERE: &str = "less than three quarters of what American railways ask: no railway takes such a wall";
/// What American railways ask over the wall there is, from which it is too thin by any rules: our judgement.
const THIN: f64 = 4.0 / 3.0;
const NO_ROW: &str = "no table has a wall for this size under a railway: prove it as a ring and get the railway's \
    consent";
const ANYWHERE: &str = "no casing is jacked with less: it dents under the auger and in handling";
const NO_WALL: &str = "the wall of the casing is not given: no less than this";
/// Where the table of least walls ends.
const BEYOND: Equation = Equation::judged(
    "wall of a casing beyond the table",
    "not known",
    "the table of least walls ends at 72 in",
    "larger casings under a railway",
);
const UNKNOWN: &str = "needs more than the least cover of the table of live load";

pub(in super::super) fn crushing(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Some(ends) = &at.pipe.service else {
        let rigid = matches!(at.pipe.family, Family::PolymerConcrete | Family::FibreCement);
        only(rigid, "a flexible pipe bears as a ring")?;
        return Err(at.jacked().err().unwrap_or(Absent::Missing));
    };
    calc.part("pipe in service");
    let safe = loaded(calc, at, [&ends.high; 3], Stretch::heavy);
    let Some(safe) = safe else {
        return Ok(rated(Verdict::NotDecided, ends.high.strength.origin).with_note(UNKNOWN));
    };
    // What is not told at its best is no part of the working.
    let calc = &mut Calc::silent();
    let best = loaded(calc, at, [&ends.low; 3], Stretch::light);
    let check = best.map_or(safe, |best| safe.at_best(best)).with_note(NOTE);
    if ends.high.by_order {
        let asked = check.by(Rule::Required);
        return Ok(if asked.verdict() == Verdict::WithCare { asked.with_note(ORDER) } else { check });
    }
    if check.verdict() != Verdict::NotDecided || at.pipe.is_told("candidates[].crushing") {
        return Ok(check);
    }
    // Which class is ordered is for the owner, up to the best that is usual.
    let mut asked = |bedding, note| {
        let asked = loaded(calc, at, [&ends.high, &ends.low, bedding], Stretch::heavy);
        let asked = asked.map(|asked| asked.by(Rule::Required).with_note(note));
        asked.filter(|asked| asked.verdict() == Verdict::WithCare)
    };
    Ok(asked(&ends.high, ORDER).or_else(|| asked(&ends.low, ORDER_AND_GROUT)).unwrap_or(check))
}

/// The check with the soil of one end, and with the load of one pipe on the strength of another in the bedding of a third;
/// `None` where traffic cannot be told.
fn loaded(
    calc: &mut Calc,
    at: &Walked<'_>,
    [load, bears, bedding]: [&PipeInService; 3],
    soil: fn(&Stretch) -> Column<'_>,
) -> Option<Draft> {
    let found = calc.doubted(|calc| worst(calc, at, [load, bears, bedding], soil)).transpose()?;
    let needed = found.map(|(needed, _)| Band::same(needed));
    let strength = found.map(|(_, strength)| Cited::new(strength, bears.strength.origin));
    Some(at_most(Role::LineWeight, needed, strength))
}

/// A steel pipe that stays under a railway, against the least wall of its size.
pub(in super::super) fn least_wall(at: &Walked<'_>) -> Outcome {
    let Capacity::Steel(end) = &at.jacked()?.pipe.capacity else {
        return Err(Absent::NotApplicable("only a casing of steel has a least wall"));
    };
    let is_told = ["candidates[].wall", "candidates[].inside_diameter"].into_iter().any(|field| at.pipe.is_told(field));
    if !at.drive.site.surface.railway {
        let least = at.jacked()?.pipe.least_wall.filter(|_| is_told);
        let least = least.ok_or(Absent::NotApplicable("no wall is told, or the casing is small"))?;
        return Ok(at_least(Role::Wall, end.wall, least).with_note(ANYWHERE));
    }
    let least = at.jacked()?.pipe.railway_wall;
    let elsewhere = at.drive.site.surface.by_load_model;
    only(least.is_some() || !elsewhere, "the table of walls is that of American railways; the load model decides")?;
    let Some(least) = least else {
        return Ok(rated(Verdict::NotDecided, Origin::Law(&BEYOND)).with_note(NO_ROW));
    };
    if is_told {
        let check = at_least(Role::Wall, end.wall, least);
        let thin = check.utilisation().is_some_and(|used| used > THIN);
        return Ok(match (elsewhere, check.by(Rule::High).verdict() == Verdict::Over && !thin) {
            (false, true) if !at.pipe.is_told("load_code") => {
                let enough = at_least(Role::Wall, least.value, least);
                check.with_note(WHOSE).at_best(enough).settled_by(&[&["load_code"]])
            }
            (false, _) => check.with_note(BARE),
            (true, _) if thin => check.with_note(THIN_ANYWHERE),
            (true, _) => check.as_screen().with_note(ELSEWHERE),
        });
    }
    Ok(at_least(Role::Wall, least.value, least).undecided(NO_WALL).settled_by(&[&["candidates[].wall"]]))
}

/// Strength that is needed and that there is, where the pipe is used most; `None` where a stretch cannot be told.
fn worst(
    calc: &mut Calc,
    at: &Walked<'_>,
    [service, bears, bedding]: [&PipeInService; 3],
    soil: fn(&Stretch) -> Column<'_>,
) -> Option<(LineLoad, LineLoad)> {
    let mut worst: Option<(LineLoad, LineLoad)> = None;
    for (stretch, place) in at.drive.stretches.iter().zip(&service.places) {
        let (column, place) = (soil(stretch), place.as_ref()?);
        let (earth_load, live_load) = loads(calc, at.pipe, service, (column, stretch.way.deepest), place);
        let ultimate = Some((bears.strength.value, bears.safety));
        for (strength, safety) in [ultimate, bears.cracked].into_iter().flatten() {
            let needed = calc.law(CrushingStrengthNeeded {
                earth_load,
                earth_bedding_factor: bedding.earth_bedding,
                live_load,
                live_bedding_factor: bedding.live_bedding,
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
fn loads(
    calc: &mut Calc,
    pipe: &Pipe,
    service: &PipeInService,
    (at, deepest): (Column<'_>, Length),
    place: &Place,
) -> (LineLoad, LineLoad) {
    let outside_diameter = pipe.outside_diameter.value;
    let depth = deepest - outside_diameter;
    let stress = vertical_stress(calc, at, depth);
    let (unit_weight, water) = (stress.effective / depth, stress.total - stress.effective);
    let (bore, lateral_friction) = (service.bore, place.lateral_friction);
    let marston = |calc: &mut Calc, depth: Length, cohesion: Pressure| {
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
    let pressed = |calc: &mut Calc, pressure, factor| calc.law(PressureOnPipe { pressure, factor, outside_diameter });
    let water = pressed(calc, water, Ratio::from(1.0));
    (earth + water, pressed(calc, place.live, place.impact))
}
