//! Recommended Standards for Wastewater Facilities (Ten States Standards), chapter 33: least slopes for 2.0 ft/s in the
//! full pipe at n 0.013. Recalled; two US city codes that copy it were read, and their misprints left out. Velocities at
//! these slopes, and the slopes of exactly 2.0 ft/s, were worked out by an independent hand with Manning's equation.

use crate::found::{Found, Outcome, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::hydraulics::{ManningVelocity, SlopeForVelocity};
use jackpull::laws::part_full::{HydraulicRadius, WettedAngle};
use jackpull::quantity::{Length, Ratio};
use std::sync::Arc;

pages!(velocity_at_each_slope, slope_of_two_feet_a_second, a_misprint_fails_its_own_rule);

/// Size, slope printed as ft per 100 ft, velocity full, slope of 2.0 ft/s; slopes in %.
const ROWS: [(&str, &str, &str, &str); 13] = [
    ("8 in", "0.40", "2.19 ft/s", "0.334"),
    ("10 in", "0.28", "2.13 ft/s", "0.248"),
    ("12 in", "0.22", "2.13 ft/s", "0.194"),
    ("14 in", "0.17", "2.07 ft/s", "0.158"),
    ("15 in", "0.15", "2.04 ft/s", "0.144"),
    ("16 in", "0.14", "2.06 ft/s", "0.133"),
    ("18 in", "0.12", "2.06 ft/s", "0.113"),
    ("21 in", "0.10", "2.08 ft/s", "0.092"),
    ("24 in", "0.08", "2.04 ft/s", "0.077"),
    ("27 in", "0.067", "2.02 ft/s", "0.066"),
    ("30 in", "0.058", "2.01 ft/s", "0.057"),
    ("36 in", "0.046", "2.02 ft/s", "0.045"),
    ("42 in", "0.037", "2.01 ft/s", "0.037"),
];

fn full(size: Length) -> Length {
    let wetted_angle = WettedAngle { depth_ratio: q("1") }.value();
    HydraulicRadius { inside_diameter: size, wetted_angle }.value()
}

fn roughness(handbook: &Handbook) -> Result<Ratio, crate::found::Stop> {
    let row = handbook.manning_n()?.find(|row| row.material.value.0 == "any, gravity sewer");
    Ok(needed(row, || "roughness of any gravity sewer".to_owned())?.value.n.value)
}

fn velocity_at_each_slope(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let roughness = roughness(handbook)?;
    for (size, slope, velocity, _) in ROWS {
        let row = handbook.sewer_min_slope()?.find(|row| row.size.value == q(size));
        let row = needed(row, || format!("least slope of {size}"))?.value;
        near(found, &format!("least slope of {size}"), row.slope.value, &format!("{slope} %"), "0.0001 %");
        let hydraulic_radius = full(row.size.value);
        let got = ManningVelocity { hydraulic_radius, slope: row.slope.value, roughness }.value();
        near(found, &format!("velocity full of {size}"), got, velocity, "0.005 ft/s");
    }
    Ok(())
}

fn slope_of_two_feet_a_second(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let roughness = roughness(handbook)?;
    let row = handbook.tractive_stress()?.find(|row| row.what.value.0 == "self-cleaning velocity, pipe full");
    let row = needed(row, || "self-cleaning velocity".to_owned())?.value;
    let velocity = needed(row.velocity.as_ref(), || "a velocity".to_owned())?.value;
    near(found, "self-cleaning velocity", velocity, "2.0 ft/s", "0.05 ft/s");
    for (size, _, _, slope) in ROWS {
        let got = SlopeForVelocity { velocity, hydraulic_radius: full(q(size)), roughness }.value();
        // The figure of 16 in was rounded twice: 0.13247, 0.1325, 0.133.
        near(found, &format!("slope of 2.0 ft/s, {size}"), got, &format!("{slope} %"), "0.00055 %");
    }
    Ok(())
}

/// One city code prints 0.20 for 10 in: 1.80 ft/s, below its own 2 ft/s.
fn a_misprint_fails_its_own_rule(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let roughness = roughness(handbook)?;
    let got = ManningVelocity { hydraulic_radius: full(q("10 in")), slope: q("0.20 %"), roughness }.value();
    near(found, "velocity at the misprint", got, "1.80 ft/s", "0.005 ft/s");
    Ok(())
}
