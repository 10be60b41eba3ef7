//! A flexible pipe while it is pushed, empty: groundwater and lubricant press on its ring, and nothing holds it yet. A
//! casing before a pipe has the water alone.

use super::grout::afloat;
use super::in_place::InPlace;
use super::section::Section;
use crate::check::{Absent, Care, Draft, NOTHING, Outcome, Rule, Subject, Verdict, Ways, at_most, only};
use crate::drive::{Drive, Pipe, SteelEnd};
use crate::law::{Calc, Doubted};
use crate::laws::collapse::{OvalityFactor, ThinRing};
use crate::laws::soil::{LayerStress, water_density, water_unit_weight};
use crate::quantity::{Band, Length, MassDensity, Pressure, Ratio, Role};

const RING: &str = "empty, with nothing that holds its ring: groundwater, and lubricant over it";
const HOLD: &str = "no pressure of the lubricant is given: hold it within the limit, by gauge, until the annulus is grouted \
    or has drained";
const UNTOLD: &str = "lubricant pumped as hard as is usual may press it in: give lubricant_pressure";
const CASING: &str = "the casing, empty, under the groundwater";

/// The worse of the pipe, where it is flexible, and of a casing before it.
pub(super) fn check(calc: &mut Calc, drive: &Drive, pipe: &Pipe, ring: Option<InPlace>) -> Outcome {
    let tube = pipe.casing.as_ref().and_then(|casing| casing.tube.as_deref());
    only(ring.is_some() || tube.is_some(), "the pipe is rigid: see its crushing strength")?;
    let head = drive.stretches.iter().map(|stretch| stretch.way.head()).fold(Length::default(), Length::max);
    let is_wet = head > Length::default();
    let ring = ring.filter(|_| is_wet || drive.lubricant.is_some());
    let tube = tube.filter(|_| is_wet);
    calc.part("collapse while it is pushed");
    let water = calc.law(LayerStress { unit_weight: water_unit_weight(), thickness: head });
    let own = ring.map(|ring| of_pipe(calc, drive, ring, water));
    let before = tube.map(|tube| {
        let wet = (Band::same(water), water_density());
        let check = under(calc, drive, steel(&tube.section), wet).with_note(CASING);
        match &tube.best {
            Some(best) => {
                let best = under(&mut Calc::silent(), drive, steel(best), wet);
                check.at_best(best).settled_by(&[&["candidates[].casing_wall"]])
            }
            None => check.settled_by(NOTHING),
        }
    });
    let worse = [own, before].into_iter().flatten().reduce(Draft::worse);
    worse.ok_or(Absent::NotApplicable("neither water nor lubricant presses on it"))
}

/// The ring of a steel tube.
fn steel(tube: &SteelEnd) -> InPlace {
    let SteelEnd { outside_diameter, wall, modulus, .. } = *tube;
    let (section, none) = (Section { outside_diameter, wall }, Ratio::default());
    let share = Doubted::sure(Ratio::from(1.0));
    InPlace { section, wall, bore: outside_diameter, modulus, share, poisson: none, ovality: none }
}

/// Where nobody tells the pressure of the lubricant, what is usual; where that may be too much, holding it is a condition.
fn of_pipe(calc: &mut Calc, drive: &Drive, ring: InPlace, water: Pressure) -> Draft {
    let Some(lubricant) = drive.lubricant else {
        return under(calc, drive, ring, (Band::same(water), water_density())).with_note(RING).settled_by(NOTHING);
    };
    let mut pressed = |demand| under(calc, drive, ring, (demand, lubricant.density)).with_note(RING);
    if let Some(told) = lubricant.told {
        return pressed(Band::same(water.max(told.value))).settled_by(NOTHING);
    }
    // What is not told to be lubricated likely is not.
    let likely = if drive.lubrication_told { water + lubricant.likely } else { water };
    let ways: Ways = if drive.lubrication_told { &[&["lubricant_pressure"]] } else { &[&["lubrication"]] };
    let usual = pressed(Band { low: water, likely, high: lubricant.held(water).value });
    if usual.verdict() <= Verdict::WithCare {
        return usual;
    }
    let held = pressed(Band { low: water, likely, high: likely });
    if held.verdict() == Verdict::Within {
        return held.with_care(Care::Condition, HOLD);
    }
    usual.with_note(UNTOLD).at_best(pressed(Band::same(water))).settled_by(ways)
}

/// A pressure outside against what the ring bears for as long as the lubricant stands.
fn under(calc: &mut Calc, drive: &Drive, ring: InPlace, (demand, density): (Band<Pressure>, MassDensity)) -> Draft {
    let share = Subject::CollapseWhilePushed.decides().share(&drive.leeway);
    let limit = calc.doubted(|calc| {
        let ovality = afloat(calc, drive, ring, density);
        let ovality_factor = calc.law(OvalityFactor { ovality });
        let Section { outside_diameter, wall } = ring.section;
        let (modulus, poisson, dimension_ratio) = (ring.modulus, ring.poisson, outside_diameter / wall);
        let collapse = calc.law(ThinRing { modulus, poisson, dimension_ratio, ovality_factor });
        drive.in_service.collapse_factor.map(|factor| Band::same(collapse / factor))
    });
    at_most(Role::Pressure, demand, limit).by(Rule::Likely(share))
}
