//! Unit friction by ground of United Kingdom contractors, as in the Pipe Jacking Association's guide of 1995 and the
//! CIRIA review of 1983 (recalled, also quoted in Thomson, Pipejacking and Microtunnelling, 1993), and two figures that
//! bound a small guided drive: a clay pipe project in Houston (trade article, September 2008, vol. 63 no. 9, read) and
//! silo pressure with full soil friction, worked out here again.

use crate::found::{Found, Outcome, between, friction, holds, near, pages, q};
use jackpull::Handbook;
use jackpull::handbook::{FrictionBandRow, GroundClass, Lubrication, WaterSide};
use jackpull::law::Law;
use jackpull::laws::thrust::FrictionForce;
use jackpull::quantity::{Length, Measure, Pressure};
use std::sync::Arc;

pages!(
    top_of_the_table,
    wet_sand,
    houston_clay_pipe_project,
    silo_with_full_friction_above_water,
    silo_with_full_friction_below_water,
);

fn dry(handbook: &Handbook, ground: GroundClass, water: WaterSide) -> Result<FrictionBandRow, crate::found::Stop> {
    friction(handbook, ground, water, Lubrication::None)
}

/// Firm clay 5 to 20, silt 5 to 20, dry loose sand 25 to 45, fill up to 45 kPa.
fn top_of_the_table(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (ground, water, printed) in [
        (GroundClass::FirmToVeryStiffClay, WaterSide::Any, "20 kPa"),
        (GroundClass::Silt, WaterSide::Above, "20 kPa"),
        (GroundClass::Silt, WaterSide::Below, "20 kPa"),
        (GroundClass::LooseSand, WaterSide::Above, "45 kPa"),
        (GroundClass::Fill, WaterSide::Any, "45 kPa"),
    ] {
        near(found, &format!("high in {}", ground.key()), dry(handbook, ground, water)?.high.value, printed, "0.5 kPa");
    }
    Ok(())
}

/// Wet sand 10 to 15 kPa.
fn wet_sand(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for ground in [GroundClass::LooseSand, GroundClass::MediumToDenseSand] {
        let row = dry(handbook, ground, WaterSide::Below)?;
        between(found, &format!("likely in {}, below water", ground.key()), row.likely.value, "10 kPa", "15 kPa");
    }
    Ok(())
}

/// 92 m in stiff firm clay with a frame of 100 tons, 890 kN: at most 8.6 kPa on 0.36 m and 10.3 kPa on 0.30 m, if frame
/// and longest drive went together.
fn houston_clay_pipe_project(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (outside_diameter, printed) in [("0.36 m", "8.6 kPa"), ("0.30 m", "10.3 kPa")] {
        let per_pascal =
            FrictionForce { unit_friction: q("1 Pa"), outside_diameter: q(outside_diameter), length: q("92 m") };
        let bound = Pressure::from_si(890_000.0 / per_pascal.value().si());
        near(found, &format!("bound on {outside_diameter}"), bound, printed, "0.05 kPa");
    }
    let row = dry(handbook, GroundClass::FirmToVeryStiffClay, WaterSide::Any)?;
    holds(found, "likely in stiff clay is within the bound", row.likely.value <= q("8.6 kPa"));
    Ok(())
}

/// Mean friction on a pipe under Terzaghi's silo: width D (1 + 2 tan(45 - phi/2)), K 1, no cohesion; mean ring pressure
/// 0.65 of crown pressure and half a diameter of soil; sand of 32 deg under 4 m.
fn silo(outside_diameter: &str, unit_weight: f64) -> Pressure {
    let (d, cover, phi) = (q::<Length>(outside_diameter).si(), 4.0, 32_f64.to_radians());
    let width = d * (1.0 + 2.0 * (std::f64::consts::FRAC_PI_4 - phi / 2.0).tan());
    let slope = 2.0 * phi.tan();
    let crown = width * unit_weight / slope * (1.0 - (-slope * cover / width).exp());
    Pressure::from_si(0.65 * (crown + unit_weight * d / 2.0) * phi.tan())
}

/// 18 kN/m3: 4.0 kPa on 0.25 m to 9.5 kPa on 0.60 m.
fn silo_with_full_friction_above_water(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (small, large) = (silo("0.25 m", 18_000.0), silo("0.60 m", 18_000.0));
    near(found, "silo friction on 0.25 m", small, "4.0 kPa", "0.05 kPa");
    near(found, "silo friction on 0.60 m", large, "9.5 kPa", "0.06 kPa");
    let medium = dry(handbook, GroundClass::MediumToDenseSand, WaterSide::Above)?.low.value;
    near(found, "low in medium sand is that of the smallest bore", medium, "4.0 kPa", "0.5 kPa");
    let loose = dry(handbook, GroundClass::LooseSand, WaterSide::Above)?.low.value;
    holds(found, "low in dry loose sand is within the silo's range", small <= loose && loose <= large);
    Ok(())
}

/// Buoyant, 9.5 kN/m3: 2.1 to 5.0 kPa.
fn silo_with_full_friction_below_water(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    near(found, "silo friction on 0.25 m", silo("0.25 m", 9_500.0), "2.1 kPa", "0.05 kPa");
    near(found, "silo friction on 0.60 m", silo("0.60 m", 9_500.0), "5.0 kPa", "0.05 kPa");
    for ground in [GroundClass::LooseSand, GroundClass::MediumToDenseSand] {
        let low = dry(handbook, ground, WaterSide::Below)?.low.value;
        between(found, &format!("low in {}, below water", ground.key()), low, "2.1 kPa", "5.0 kPa");
    }
    Ok(())
}
