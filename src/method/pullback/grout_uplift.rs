//! What liquid grout lifts a pulled pipe with, less its weight and its ballast, against the ground over it. Where only its
//! spacers keep a sewer on its line they have to hold that down.

use crate::check::{Absent, Care, Draft, Outcome, Ways, at_most, only};
use crate::conditions::{Plan, is_held_by_spacers, vertical_stress, weight};
use crate::drive::{Column, Grout};
use crate::law::Calc;
use crate::laws::pull::NetWeightInFluid;
use crate::method::walked::Walked;
use crate::quantity::{Band, LineLoad, Ratio, Role};

const FLOATS: &str = "the weight of the ground over its width holds it";
const HOLD_DOWN: &str = "spacers have to hold the pipe down against this much, and to hand it to the crown of the bore: water in the \
                         pipe takes some of it (`annulus.ballast`), and grout in lifts, the first no higher than floats it, the rest";

const DATA: Ways = &[&["annulus.grout_density", "annulus.grout_pressure"], &["ground[].soil"]];

/// The place with the least ground over the pipe.
pub(in crate::method) fn check(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Plan { drive, pipe, .. } = **at;
    at.pulled()?;
    let pulled = pipe.pulled.as_ref().ok_or(Absent::Missing)?;
    only(!drive.annulus.open, "the annulus stays open")?;
    let grout = drive.annulus.grout.ok_or(Absent::NotApplicable("nothing says that the annulus is grouted"))?;
    calc.part("uplift in liquid grout");
    let outside_diameter = pipe.outside_diameter.value;
    let pipe_weight = weight::of_pulled(calc, pipe, pulled, Ratio::from(1.0));
    let mut lifts = |grout: Grout| {
        let (fluid_density, contents_density) = (grout.density, drive.annulus.ballast);
        let wall = pulled.wall();
        let law = NetWeightInFluid { pipe_weight, outside_diameter, wall, fluid_density, contents_density };
        calc.doubted(|calc| Band::same((-calc.law(law)).max(LineLoad::default())))
    };
    let (most, least) = (lifts(grout.high), lifts(grout.low));
    only(most.in_spite_of_doubt().high > LineLoad::default(), "the pipe sinks in its grout")?;
    let rule = &drive.site.break_out;
    let crown = (outside_diameter + at.opened()) / 2.0;
    let checks = drive.places().map(|(stretch, (_, invert))| {
        let mut over = |column: Column<'_>| {
            let held = calc.doubted(|calc| outside_diameter * vertical_stress(calc, column, invert - crown).total);
            held.map(|held| rule.cap.map(|_| held))
        };
        let (light, heavy) = (over(stretch.light()), over(stretch.heavy()));
        let check = at_most(Role::LineWeight, most, light).with_note(FLOATS);
        check.at_best(at_most(Role::LineWeight, least, heavy)).settled_by(DATA)
    });
    let check = checks.reduce(Draft::worse).ok_or(Absent::Missing)?;
    Ok(if is_held_by_spacers(at) { check.with_care(Care::Condition, HOLD_DOWN) } else { check })
}
