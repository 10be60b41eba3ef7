//! Pressure of a main in service, surge included, against what its wall or its maker allows.

use super::plan::Plan;
use crate::check::{Absent, Care, Check, Outcome, Verdict, at_most, only, rated};
use crate::drive::{BY_ITS_MAKER, CarriedBy, Carries, FactorPoints, Pull};
use crate::handbook::{Method, Service};
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::deflection::ScoredWall;
use crate::laws::inside_pressure::{PressureByBarlow, PressureByRatio};
use crate::laws::pull_limits::FactorAtTemperature;
use crate::quantity::{Length, Pressure, Ratio, Role};
use crate::source::Cited;

const TOLD: &str = "surge included; the class of the pipe at ground temperature, less an allowance for scores from \
    the pull";
const UNTOLD: &str = "no pressure is given: the main carries the limit at most, surge included; give service_pressure";
const UNKNOWN: &str = "only the maker knows what the pipe carries: give candidates[].pressure_class";

/// What the main is asked to carry, against what it may.
pub(crate) fn in_service<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    only(at.drive.service == Service::PressureMain, "it is no pressure main")?;
    let carries = at.pipe.carries.as_deref().ok_or(Absent::Missing)?;
    let asked = at.drive.in_service.pressure;
    calc.part("pressure in service");
    // A pull scores plastic; metal has its coating for it.
    let pulled = at.drive.pull.as_ref().filter(|_| at.method == Method::Pullback);
    let pulled = pulled.filter(|_| at.pipe.pulled.as_ref().is_some_and(|pulled| pulled.is_plastic()));
    let [safe, best] = [false, true].map(|best| may_carry(calc, at, carries, pulled.map(|pull| score(pull, best))));
    let (Some(safe), Some(best)) = (safe, best) else {
        let unknown = rated(Verdict::Within, BY_ITS_MAKER).settled_by(&[&["candidates[].pressure_class"]]);
        return Ok(match asked {
            Some(_) => unknown.undecided(UNKNOWN),
            None => unknown.with_care(Care::Condition, UNKNOWN),
        });
    };
    let check = |limit| -> Check<()> { at_most(Role::Pressure, asked.map_or(Pressure::default(), |p| p.value), limit) };
    let check = check(safe).at_best(check(best)).settled_by(&[&["pull.score"]]);
    Ok(match asked {
        Some(_) => check.with_note(TOLD),
        None => check.with_care(Care::Condition, UNTOLD).settled_by(&[&["service_pressure"]]),
    })
}

const fn score(pull: &Pull, best: bool) -> Ratio {
    if best { pull.works.score_at_best.value } else { pull.works.score.value }
}

/// What the pipe may carry with such a score in its wall; none where nobody has said.
fn may_carry<R: Recorder>(
    calc: &mut Calc<R>,
    at: &Plan<'_>,
    carries: &Carries,
    score: Option<Ratio>,
) -> Option<Doubted<Cited<Pressure>>> {
    let outside_diameter = at.pipe.outside_diameter.value;
    let scored = |calc: &mut Calc<R>, wall: Length| match score {
        Some(depth_share) => calc.law(ScoredWall { wall, depth_share }),
        None => wall,
    };
    let own = match carries.by {
        CarriedBy::Unknown => return None,
        CarriedBy::Class(class) => calc.doubted(|calc| {
            let wall = at.pipe.pulled.as_ref().map(|pulled| pulled.wall());
            let left = wall.map_or(Ratio::from(1.0), |wall| {
                let left = scored(calc, wall);
                let ratio = |wall: Length| wall / (outside_diameter - wall);
                ratio(left) / ratio(wall)
            });
            class.map(|class| class * left)
        }),
        CarriedBy::Wall { stress, wall, metal: true } => {
            calc.doubted(|calc| stress.map(|stress| calc.law(PressureByBarlow { stress, outside_diameter, wall })))
        }
        CarriedBy::Wall { stress, wall, metal: false } => calc.doubted(|calc| {
            let factor = carries.temperature.map_or(Ratio::from(1.0), |points| at_temperature(calc, points));
            let wall = scored(calc, wall);
            stress.map(|stress| calc.law(PressureByRatio { stress: stress * factor, outside_diameter, wall }))
        }),
    };
    Some(match carries.joint {
        Some(joint) => own.map(|own| if joint.value < own.value { joint } else { own }),
        None => own,
    })
}

/// Factor of a table at a temperature between two of its rows.
pub(crate) fn at_temperature<R: Recorder>(calc: &mut Calc<R>, points: FactorPoints) -> Ratio {
    calc.law(FactorAtTemperature {
        temperature: points.at,
        below: points.below.0,
        factor_below: points.below.1,
        above: points.above.0,
        factor_above: points.above.1,
    })
}
