//! Recommended Standards for Wastewater Facilities (Ten States Standards), chapter 33: 2.0 ft/s in the full pipe at n
//! 0.013. Recalled; the slopes of exactly 2.0 ft/s were worked out by an independent hand with Manning's equation.

use crate::found::{Found, Outcome, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::hydraulics::SlopeForVelocity;
use jackpull::laws::part_full::{HydraulicRadius, WettedAngle};
use jackpull::quantity::{Length, Ratio};
use std::sync::Arc;

pages!(slope_of_two_feet_a_second,);

/// Size, and slope of 2.0 ft/s in %.
const ROWS: [(&str, &str); 13] = [
    ("8 in", "0.334"),
    ("10 in", "0.248"),
    ("12 in", "0.194"),
    ("14 in", "0.158"),
    ("15 in", "0.144"),
    ("16 in", "0.133"),
    ("18 in", "0.113"),
    ("21 in", "0.092"),
    ("24 in", "0.077"),
    ("27 in", "0.066"),
    ("30 in", "0.057"),
    ("36 in", "0.045"),
    ("42 in", "0.037"),
];

fn full(size: Length) -> Length {
    let wetted_angle = WettedAngle { depth_ratio: q("1") }.value();
    HydraulicRadius { inside_diameter: size, wetted_angle }.value()
}

fn roughness(handbook: &Handbook) -> Result<Ratio, crate::found::Stop> {
    let row = handbook.manning_n()?.find(|row| row.material.value.0 == "any, gravity sewer");
    Ok(needed(row, || "roughness of any gravity sewer".to_owned())?.value.n.value)
}

fn slope_of_two_feet_a_second(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let roughness = roughness(handbook)?;
    let row = handbook.tractive_stress()?.find(|row| row.what.value.0 == "self-cleaning velocity, pipe full");
    let row = needed(row, || "self-cleaning velocity".to_owned())?.value;
    let velocity = needed(row.velocity.as_ref(), || "a velocity".to_owned())?.value;
    near(found, "self-cleaning velocity", velocity, "2.0 ft/s", "0.05 ft/s");
    for (size, slope) in ROWS {
        let got = SlopeForVelocity { velocity, hydraulic_radius: full(q(size)), roughness }.value();
        // The figure of 16 in was rounded twice: 0.13247, 0.1325, 0.133.
        near(found, &format!("slope of 2.0 ft/s, {size}"), got, &format!("{slope} %"), "0.00055 %");
    }
    Ok(())
}
