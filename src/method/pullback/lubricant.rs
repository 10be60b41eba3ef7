//! Pressure of the lubricant round a pipe that is pushed, at the crown of its bore, against what the ground there bears,
//! place by place. Rock bears more than any lubricant.

use super::break_out::{SPARE_TO_BE_SURE, hold, leaves, spare};
use crate::check::{Absent, Care, Draft, Outcome, only};
use crate::conditions::{Plan, VerticalStress, vertical_stress};
use crate::drive::Column;
use crate::handbook::GroundClass;
use crate::law::{Calc, Doubted};
use crate::method::walked::Walked;
use crate::quantity::{Pressure, Ratio};
use crate::source::Cited;

const TOLD: &str = "lubricant at the crown of the bore, against the weight of the ground";
const USUAL: &str = "no pressure of the lubricant is given: what it likely needs over the ground water, at the crown of the bore, against \
                     the weight of the ground, which bears it as hard pumped as is usual too";
const HARD: &str = "lubricant as hard pumped as is usual would break out: give lubricant_pressure";
const HOLD: &str = "no pressure of the lubricant is given: hold it within the limit at the least cover, by gauge, and stop where the \
                    surface rises or lubricant comes up";
const GAUGED: &str = "more than the weight of the ground, which firm clay bears by its strength: hold it within the limit by gauge \
                      and watch the surface";

/// The place where the lubricant comes closest to what the ground bears.
pub(in crate::method) fn check(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Plan { drive, pipe, .. } = **at;
    only(at.is_jacked(), "the pipe is not pushed")?;
    let lubricant = drive.lubricant.ok_or(Absent::NotApplicable("the pipe is not lubricated"))?;
    calc.part("break-out of the lubricant");
    let crown = (pipe.outside_diameter.value + at.opened()) / 2.0;
    let (rule, surface) = (&drive.site.break_out, &drive.site.surface);
    let touchy = surface.guarded && !surface.stream;
    let one = Ratio::from(1.0);
    // What comes up under tracks or on a runway is found by what runs there: there a gauge leaves twice as much.
    let spare = if touchy { Ratio::from(SPARE_TO_BE_SURE) } else { spare(drive, rule) };
    let soils = drive.places().filter(|(stretch, _)| !stretch.is_all(GroundClass::is_rock));
    let checks = soils.map(|(stretch, (_, invert))| {
        let mut stress = |column: Column<'_>| calc.doubted(|calc| vertical_stress(calc, column, invert - crown));
        let (light, heavy) = (stress(stretch.light()), stress(stretch.heavy()));
        let is_firm = stretch.is_all(|class| class.is_clay() && class != GroundClass::SoftClay);
        let most = if is_firm { rule.cap_firm_clay } else { rule.cap };
        let bears =
            |stress: Doubted<VerticalStress>, cap: Cited<Ratio>| (stress.map(|stress| cap.value * stress.total), cap);
        let (weak, strong) = (bears(light, rule.cap), bears(heavy, most));
        let passes = |pressure: Doubted<Pressure>, spare| leaves(pressure, weak.0, spare);
        if let Some(told) = lubricant.told {
            let told = Doubted::sure(told.value);
            let gauged = bears(light, most);
            if !passes(told, one) && !touchy && leaves(told, gauged.0, spare) {
                return hold(told, gauged).with_care(Care::Condition, GAUGED);
            }
            return hold(told, weak).with_note(TOLD).at_best(hold(told, strong)).settled_by(&[&["ground[].soil"]]);
        }
        let water = light.map(|stress| stress.total - stress.effective);
        let over = |pressure| water.map(|water| water + pressure);
        let (likely, usual) = (over(lubricant.likely), over(lubricant.most.value));
        if passes(usual, one) {
            return hold(likely, weak).with_note(USUAL);
        }
        // How hard it is pumped is for who pumps it, down to the ground water that it keeps out; but under tracks as is likely.
        let held = [Some(likely), (!touchy).then_some(water)];
        match held.into_iter().flatten().find(|pressure| passes(*pressure, spare)) {
            Some(held) => hold(held, weak).with_care(Care::Condition, HOLD),
            None => {
                hold(usual, weak).with_note(HARD).at_best(hold(water, strong)).settled_by(&[&["lubricant_pressure"]])
            }
        }
    });
    checks.reduce(Draft::worse).ok_or(Absent::NotApplicable("it is pushed through rock"))
}
