//! Pressure of a main in service, surge included, against what its wall or its maker allows.

use super::plan::Plan;
use crate::check::{Absent, Care, Draft, Outcome, Verdict, at_most, only, rated};
use crate::drive::{BY_ITS_MAKER, Carries, FactorPoints};
use crate::handbook::{Method, Service};
use crate::law::{Calc, Doubted};
use crate::laws::deflection::ScoredWall;
use crate::laws::inside_pressure::{PressureByBarlow, PressureByRatio};
use crate::laws::pull_limits::FactorAtTemperature;
use crate::quantity::{Length, Pressure, Ratio, Role};
use crate::source::Cited;

const TOLD: &str = "surge included; the lesser of class and wall at ground temperature, of a deep score less its share";
const SURGES: &str = "with the surges of the file, each against what the lesser of class and wall allows beside it, at ground \
    temperature";
const UNTOLD: &str = "no pressure is given: the main carries the limit at most, surge included; give service_pressure";
const UNKNOWN: &str = "only the maker knows what the pipe carries: give candidates[].pressure_class";

/// What the main is asked to carry, against what it may: as its class, and with each surge that the file tells.
pub(crate) fn in_service(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    only(at.drive.service == Service::PressureMain, "it is no pressure main")?;
    let carries = at.pipe.carries.as_deref().ok_or(Absent::Missing)?;
    let asked = at.drive.in_service.pressure;
    calc.part("pressure in service");
    let Some(own) = own(calc, at, carries) else {
        let unknown = rated(Verdict::Within, BY_ITS_MAKER).settled_by(&[&["candidates[].pressure_class"]]);
        return Ok(match asked {
            Some(_) => unknown.undecided(UNKNOWN),
            None => unknown.with_care(Care::Condition, UNKNOWN),
        });
    };
    let pressure = asked.map_or(Pressure::default(), |asked| asked.value);
    let check = |surge: Pressure, over_class: Ratio| -> Draft {
        let limit = own.map(|own| {
            let own = own.map(|class| class * over_class);
            carries.joint.filter(|joint| joint.value < own.value).unwrap_or(own)
        });
        at_most(Role::Pressure, pressure + surge, limit)
    };
    let surges = at.drive.in_service.surge.into_iter().zip(carries.with_surge);
    let told = surges.filter_map(|(surge, over_class)| Some(check(surge?, over_class)));
    let has_surge = at.drive.in_service.surge.iter().any(Option::is_some);
    let check = told.fold(check(Pressure::default(), Ratio::from(1.0)), Draft::worse);
    Ok(match asked {
        Some(_) => check.with_note(if has_surge { SURGES } else { TOLD }),
        None => check.with_care(Care::Condition, UNTOLD).settled_by(&[&["service_pressure"]]),
    })
}

/// What the pipe itself may carry; none where nobody has said.
fn own(calc: &mut Calc, at: &Plan<'_>, carries: &Carries) -> Option<Doubted<Cited<Pressure>>> {
    let outside_diameter = at.pipe.outside_diameter.value;
    // A pull scores plastic; metal has its coating for it.
    let plastic = at.pipe.pulled.as_ref().filter(|pulled| at.method == Method::Pullback && pulled.is_plastic());
    let depth_share = plastic.map_or(Ratio::default(), |_| carries.deep_score);
    let scored = |calc: &mut Calc, wall: Length| {
        if depth_share > Ratio::default() { calc.law(ScoredWall { wall, depth_share }) } else { wall }
    };
    let factor = |calc: &mut Calc| carries.temperature.map_or(Ratio::from(1.0), |points| at_temperature(calc, points));
    let class = carries.class.map(|class| {
        calc.doubted(|calc| {
            let left = plastic.map_or(Ratio::from(1.0), |pulled| {
                let ratio = |wall: Length| wall / (outside_diameter - wall);
                ratio(scored(calc, pulled.wall())) / ratio(pulled.wall())
            });
            let left = left * factor(calc);
            class.map(|class| class * left)
        })
    });
    let wall = carries.wall.map(|held| {
        calc.doubted(|calc| {
            let wall = scored(calc, held.wall);
            held.stress.map(|stress| match held.on_outside {
                true => calc.law(PressureByBarlow { stress, outside_diameter, wall }),
                false => {
                    let stress = stress * factor(calc);
                    calc.law(PressureByRatio { stress, outside_diameter, wall })
                }
            })
        })
    });
    let lesser = |one: Cited<Pressure>, other: Cited<Pressure>| if other.value < one.value { other } else { one };
    let both = [class, wall].into_iter().flatten();
    both.reduce(|one, other| one.zip(other).map(|(one, other)| lesser(one, other)))
}

/// Factor of a table at a temperature between two of its rows.
pub(crate) fn at_temperature(calc: &mut Calc, points: FactorPoints) -> Ratio {
    calc.law(FactorAtTemperature {
        temperature: points.at,
        below: points.below.0,
        factor_below: points.below.1,
        above: points.above.0,
        factor_above: points.above.1,
    })
}
