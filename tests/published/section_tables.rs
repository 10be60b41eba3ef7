//! Part-full circular pipes printed elsewhere: the geometric elements of V. T. Chow, Open-Channel Hydraulics, 1959, Table
//! 2-1, in a reproduction to six digits that names it; a shared worksheet on Manning flow, read in a stored copy;
//! problem 7.9 of the Scilab textbook companion 2159, whose code prints no answer (its inputs were worked by an
//! independent hand).

use crate::found::{Found, Outcome, law, near, pages, q};
use jackpull::Handbook;
use jackpull::laws::hydraulics::{Flow, ManningVelocity, SlopeForVelocity};
use jackpull::laws::part_full::{FlowArea, HydraulicRadius, WettedAngle};
use jackpull::quantity::{Area, Length, Measure, Ratio, VolumeRate};
use std::sync::Arc;

pages!(elements_of_a_circle, worksheet_8_in_at_70_percent, worksheet_4_in_half_full, semicircle_of_1_5_m);

fn section(inside_diameter: Length, depth_ratio: Ratio) -> (Area, Length) {
    let wetted_angle = law(WettedAngle { depth_ratio });
    (law(FlowArea { inside_diameter, wetted_angle }), law(HydraulicRadius { inside_diameter, wetted_angle }))
}

/// Depth ratio, area over D², radius over D, perimeter over D.
const ELEMENTS: [(&str, &str, &str, &str); 8] = [
    ("0.05", "0.014681", "0.032551", "0.451027"),
    ("0.10", "0.040875", "0.063520", "0.643501"),
    ("0.15", "0.073875", "0.092878", "0.795399"),
    ("0.55", "0.442616", "0.264886", "1.670964"),
    ("0.60", "0.492028", "0.277644", "1.772154"),
    ("0.65", "0.540418", "0.288148", "1.875489"),
    ("0.70", "0.587230", "0.296235", "1.982313"),
    ("0.75", "0.631852", "0.301687", "2.094395"),
];

fn elements_of_a_circle(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (depth_ratio, area, radius, perimeter) in ELEMENTS {
        let (got_area, got_radius) = section(q("1 m"), q(depth_ratio));
        // The last digits of the reproduction are one off here and there.
        near(found, &format!("area at {depth_ratio}"), got_area, &format!("{area} m2"), "0.000002 m2");
        near(found, &format!("radius at {depth_ratio}"), got_radius, &format!("{radius} m"), "0.000002 m");
        near(
            found,
            &format!("perimeter at {depth_ratio}"),
            got_area / got_radius,
            &format!("{perimeter} m"),
            "0.000001 m",
        );
    }
    Ok(())
}

/// Inside diameter 203.2 mm, 70 %: 0.0242 m2, 0.4028 m, 0.060195 m.
fn worksheet_8_in_at_70_percent(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (area, radius) = section(q("203.2 mm"), q("70 %"));
    near(found, "area, 70 %", area, "0.0242 m2", "0.00005 m2");
    near(found, "perimeter, 70 %", area / radius, "0.4028 m", "0.00005 m");
    near(found, "radius, 70 %", radius, "0.060195 m", "0.0000005 m");
    Ok(())
}

/// Inside diameter 101.6 mm, half full: 0.0041 m2, 0.1596 m, 0.0254 m.
fn worksheet_4_in_half_full(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (area, radius) = section(q("101.6 mm"), q("50 %"));
    near(found, "area, half full", area, "0.0041 m2", "0.00005 m2");
    near(found, "perimeter, half full", area / radius, "0.1596 m", "0.00005 m");
    near(found, "radius, half full", radius, "0.0254 m", "0.00005 m");
    Ok(())
}

/// D 1.5 m half full, 0.3 m3/s, n 0.02: 1.705e-4, 1 in 5864.
fn semicircle_of_1_5_m(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (area, hydraulic_radius) = section(q("1.5 m"), q("50 %"));
    let velocity = q::<VolumeRate>("0.3 m3/s") / area;
    let slope = law(SlopeForVelocity { velocity, hydraulic_radius, roughness: q("0.02") });
    near(found, "slope", slope, "0.0001705", "0.00000005");
    near(found, "one in", Ratio::from_si(1.0) / slope, "5864", "0.5");
    let velocity = law(ManningVelocity { hydraulic_radius, slope: q("0.0001705"), roughness: q("0.02") });
    near(found, "flow", law(Flow { area, velocity }), "0.3 m3/s", "0.0005 m3/s");
    Ok(())
}
