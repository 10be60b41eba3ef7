//! Worked examples of pit bases and inflow: C. Venkatramaiah, Geotechnical Engineering, p. 593 (author recalled), the
//! examples before 14.17 and 14.17; NPTEL, course on soil mechanics, chapter 5, example 2; a textbook problem on a
//! pumped well answered on a study-help site (name left out on purpose).

use crate::found::{Found, Outcome, law, near, pages, q};
use jackpull::Handbook;
use jackpull::laws::inflow::InflowUnconfined;
use jackpull::laws::pit_base::{BaseUplift, BearingFactorSkempton};
use jackpull::quantity::Pressure;
use std::sync::Arc;

pages!(bearing_factor_at_the_surface, example_14_17, base_that_broke_under_6_m_of_water, pumped_well);

/// Width over length 0.5 at the surface: 5.5; 50 kPa gives 275 kPa.
fn bearing_factor_at_the_surface(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let factor = law(BearingFactorSkempton { depth: q("0 m"), width: q("1 m"), length: q("2 m") });
    near(found, "bearing factor at the surface", factor, "5.5", "0.0001");
    near(found, "bearing pressure", factor * q::<Pressure>("50 kPa"), "275 kPa", "0.5 kPa");
    Ok(())
}

/// 1 m by 2 m, 2 m deep, 50 kPa: 7.7 and 385 kPa.
fn example_14_17(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let factor = law(BearingFactorSkempton { depth: q("2 m"), width: q("1 m"), length: q("2 m") });
    near(found, "bearing factor 2 m deep", factor, "7.7", "0.0001");
    near(found, "bearing pressure", factor * q::<Pressure>("50 kPa"), "385 kPa", "0.5 kPa");
    Ok(())
}

/// 10.5 m of clay of 2 t/m3, dug to 7.5 m, broke: the water below stood 6 m over its top, at a factor of just 1.
fn base_that_broke_under_6_m_of_water(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let thickness = q::<jackpull::quantity::Length>("10.5 m") - q("7.5 m");
    let safety = law(BaseUplift { unit_weight: q("2 tf/m3"), thickness, water_pressure: q("6 tf/m2") });
    near(found, "safety when it broke", safety, "1", "0.0001");
    Ok(())
}

/// 14.05 m of water, k 1.4e-4 m/s: lowered by 9.52 m at 10 m and by 4.81 m at 27.70 m, 0.028 m3/s are pumped.
fn pumped_well(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let flow = law(InflowUnconfined {
        permeability: q("0.00014 m/s"),
        far_depth: q("9.24 m"),
        near_depth: q("4.53 m"),
        far_radius: q("27.70 m"),
        near_radius: q("10 m"),
    });
    near(found, "flow of the well", flow, "0.028 m3/s", "0.0005 m3/s");
    Ok(())
}
