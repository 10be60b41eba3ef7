//! Pressure of liquid grout at the crown of the bore, in its lowest place the column up to the highest, against what the
//! ground there bears.

use super::break_out::{hold, leaves, spare};
use crate::check::{Absent, Care, Draft, Outcome, Ways, only};
use crate::conditions::{Plan, vertical_stress};
use crate::drive::{Column, Grout};
use crate::law::Calc;
use crate::laws::outside_pressure::NetOutsidePressure;
use crate::method::walked::Walked;
use crate::quantity::{Length, Pressure, Ratio};

const TOLD: &str = "grout from the highest place of the bore down, at its pressure there, against the weight of the ground; in lifts \
                    the column is less";
const HOLD: &str = "no grout is given: keep its pressure at the crown within the limit, in lifts, by gauge";
const UNTOLD: &str = "heavy grout pumped hard would lift the ground: give grout_density and grout_pressure";

const DATA: Ways = &[&["annulus.grout_density", "annulus.grout_pressure"]];

/// The place where the grout comes closest to what the ground bears.
pub(in crate::method) fn check(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Plan { drive, pipe, .. } = **at;
    only(!drive.annulus.open, "the annulus stays open")?;
    // What follows a pipe that is pushed fills its overcut without pressure, unless the file gives one.
    only(!at.is_jacked() || drive.annulus.grout_told, "no grout is given for the annulus of a pipe that is pushed")?;
    let grout = drive.annulus.grout.ok_or(Absent::NotApplicable("nothing says that the annulus is grouted"))?;
    calc.part("pressure of the grout on the ground");
    let slope = drive.grade.value.tan();
    let crown = (pipe.outside_diameter.value + at.opened()) / 2.0;
    let highest = (slope * drive.length.value).max(Length::default());
    let rule = &drive.site.break_out;
    let touchy = drive.site.surface.guarded;
    let spare = spare(drive, rule);
    let checks = drive.places().map(|(stretch, (along, invert))| {
        let mut presses = |grout: Grout| {
            let height = highest - slope * along;
            let law = NetOutsidePressure {
                density: grout.density,
                height,
                added: grout.pressure,
                inside: Pressure::default(),
            };
            calc.doubted(|calc| calc.law(law))
        };
        let (most, least) = (presses(grout.high), presses(grout.low));
        let mut bears = |column: Column<'_>| {
            calc.doubted(|calc| rule.cap.value * vertical_stress(calc, column, invert - crown).total)
        };
        let (weak, strong) = (bears(stretch.light()), bears(stretch.heavy()));
        let hold = |pressure, limit| hold(pressure, (limit, rule.cap));
        let passes = |pressure, spare| leaves(pressure, weak, spare);
        if drive.annulus.grout_told || passes(most, Ratio::from(1.0)) {
            return hold(most, weak).with_note(TOLD).at_best(hold(least, strong)).settled_by(&[&["ground[].soil"]]);
        }
        if !touchy && passes(least, spare) {
            return hold(least, weak).with_care(Care::Condition, HOLD).settled_by(DATA);
        }
        hold(most, weak).with_note(UNTOLD).at_best(hold(least, strong)).settled_by(DATA)
    });
    checks.reduce(Draft::worse).ok_or(Absent::Missing)
}
