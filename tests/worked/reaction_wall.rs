//! Thrust wall: the reaction formula of pipe jacking practice (of Japanese origin, recalled), worked with stated inputs
//! by two other hands.

use crate::found::{Found, Outcome, law, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::handbook::RatioSpanRow;
use jackpull::law::Law;
use jackpull::laws::soil::LayerStress;
use jackpull::laws::wall::{ActiveCoefficient, AllowableReaction, PassiveCoefficient, PassivePressure, PassiveStrip};
use jackpull::laws::wall_fit::{PassiveMovement, WidthForThrust};
use jackpull::quantity::{Angle, Force, Length, Measure, Pressure, Ratio, UnitWeight};
use std::sync::Arc;

pages!(full_resistance_moves_a_wall_by_centimetres, no_spread_and_twice_the_thrust, clay_moves_more_than_sand);

fn row(handbook: &Handbook, key: &str) -> Result<RatioSpanRow, crate::found::Stop> {
    Ok(needed(handbook.thrust_wall()?.get(key), || key.to_owned())?.value.clone())
}

/// Full passive pressure at 2 to 5 % of the height: 60 to 150 mm for a wall of 3 m.
fn full_resistance_moves_a_wall_by_centimetres(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (share, printed) in [("2 %", "60 mm"), ("5 %", "150 mm")] {
        let law = PassiveMovement { share: q(share), height: q("3 m") };
        near(found, "movement of a wall of 3 m", law.value(), printed, "0.5 mm");
    }
    Ok(())
}

/// A design thrust of 80 % of the ultimate resistance leaves 1.25, against 1.5 to 2.0 asked for; the default is 2.0,
/// with the ground straight behind the wall.
fn no_spread_and_twice_the_thrust(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let value = |key| -> Result<Ratio, crate::found::Stop> {
        Ok(needed(row(handbook, key)?.value, || format!("the value of {key}"))?.value)
    };
    near(found, "default safety", value("safety_default")?, "2.0", "0.05");
    near(found, "default spread", value("spread_none")?, "1", "0.05");
    let safety = row(handbook, "safety")?;
    for (end, printed) in [(&safety.low, "1.5"), (&safety.high, "2.0")] {
        near(found, "safety", needed(end.as_ref(), || "an end".to_owned())?.value, printed, "0.05");
    }
    near(found, "safety of the 80 % rule", q::<Ratio>("1") / q::<Ratio>("0.8"), "1.25", "0.005");
    Ok(())
}

/// Clough and Duncan, recalled: 1 % in dense, 2 % in medium dense, 4 % in loose sand, 5 % in clay; within the 2 to 5 % of
/// the rule but for dense sand. The naval manual has less in sand.
fn clay_moves_more_than_sand(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let movement = handbook.wall_movement()?;
    let share = |key: &str| -> Result<Ratio, crate::found::Stop> {
        let row = needed(movement.get(key), || key.to_owned())?;
        Ok(needed(row.value.value.as_ref(), || key.to_owned())?.value)
    };
    for (key, printed) in [("medium_dense_sand", "2 %"), ("loose_sand", "4 %"), ("silt", "2 %"), ("lean_clay", "5 %")] {
        near(found, key, share(key)?, printed, "0.05 %");
    }
    Ok(())
}

fn passive(degrees: &str) -> Ratio {
    law(PassiveCoefficient { friction_angle: q::<Angle>(degrees) })
}

/// The ratios every textbook prints, recalled: active and passive at 20 to 45 deg.
#[test]
fn rankine_ratios_of_the_textbooks() {
    for (degrees, active, passive_ratio) in [
        ("20 deg", "0.490", "2.040"),
        ("25 deg", "0.406", "2.464"),
        ("30 deg", "0.333", "3.000"),
        ("35 deg", "0.271", "3.690"),
        ("40 deg", "0.217", "4.599"),
        ("45 deg", "0.172", "5.828"),
    ] {
        let yielding = law(ActiveCoefficient { friction_angle: q(degrees) });
        assert!((yielding - q::<Ratio>(active)).abs() <= q("0.00051"), "{degrees}: {yielding:?}");
        assert!((passive(degrees) - q::<Ratio>(passive_ratio)).abs() <= q("0.00051"), "{degrees}");
    }
}

/// Wall 3 m by 3 m, its top 4 m down.
fn wall(unit_weight: &str, degrees: &str, cohesion: &str, spread: &str) -> PassiveStrip {
    let unit_weight = q::<UnitWeight>(unit_weight);
    PassiveStrip {
        spread: q(spread),
        width: q("3 m"),
        height: q("3 m"),
        top_stress: law(LayerStress { unit_weight, thickness: q("4 m") }),
        unit_weight,
        coefficient: passive(degrees),
        cohesion: q(cohesion),
    }
}

/// The numerical integral of the same wall is 2,984.77 kN.
#[test]
fn worked_wall_by_numbers() {
    let resistance = law(wall("18 kN/m3", "30 deg", "10 kPa", "1"));
    assert!((resistance - q::<Force>("2984.77 kN")).abs() <= q("5 N"), "{resistance:?}");
}

/// 10 kPa of cohesion alone are 312 kN of it.
#[test]
fn share_of_cohesion() {
    let share = law(wall("18 kN/m3", "30 deg", "10 kPa", "1")) - law(wall("18 kN/m3", "30 deg", "0 kPa", "1"));
    assert!((share - q::<Force>("312 kN")).abs() <= q("0.5 kN"), "{share:?}");
}

/// The worked wall read backwards: 2,985 kN with a factor 2 is 1,492 kN of thrust, and that thrust asks for 3 m.
#[test]
fn worked_wall_backwards() {
    let resistance = law(wall("18 kN/m3", "30 deg", "10 kPa", "1"));
    let (safety, eye) = (q::<Ratio>("2"), Force::default());
    let thrust = law(AllowableReaction { resistance, eye, safety });
    assert!((thrust - q::<Force>("1492.4 kN")).abs() < q("0.05 kN"), "{thrust:?}");
    let printed = q::<Force>("1492.4 kN");
    let width =
        law(WidthForThrust { thrust: printed, safety, eye, width: q("5 m"), resistance: resistance * 5.0 / 3.0 });
    assert!((width - q::<Length>("3 m")).abs() < q("0.1 mm"), "{width:?}");
}

/// One level of the worked wall: 3 x 72 + 2 x 10 x 1.732 = 250.6 kPa at the top.
#[test]
fn pressure_at_the_top_of_the_worked_wall() {
    let at_top = PassivePressure { vertical_stress: q("72 kPa"), coefficient: q("3"), cohesion: q("10 kPa") };
    assert!((law(at_top) - q::<Pressure>("250.6 kPa")).abs() < q("0.05 kPa"));
    assert!((at_top.value().si() * 9.0) < law(wall("18 kN/m3", "30 deg", "10 kPa", "1")).si());
}
