//! US Army Corps of Engineers, CPAR-GL-98-1, 1998: fluid pressure by cavity expansion (recalled), with the limit of
//! strain of the Dutch pipeline standard (recalled). The two cases are worked by another hand, which puts the printed
//! radii beside the weight of the ground.

use crate::found::{Found, Outcome, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::fracture::{CavityPressure, FluidPressureLimit, StrainLimitedRadius};
use jackpull::quantity::{Length, Pressure, Ratio};
use std::sync::Arc;

pages!(sand_with_the_printed_radius, clay_with_the_printed_radius, sand_with_the_limits_of_strain, capped_pressures);

fn limit(handbook: &Handbook, key: &str) -> Result<Ratio, crate::found::Stop> {
    Ok(needed(handbook.fluid_pressure_limit()?.get(key), || key.to_owned())?.value.value)
}

/// Sand of 19 kN/m3, 6 m to the axis, 30 kPa of water, 32 deg, 4 MPa, a bore of 0.30 m.
fn sand(plastic_radius: Length) -> CavityPressure {
    CavityPressure {
        effective_stress: q("84 kPa"),
        pore_pressure: q("30 kPa"),
        friction_angle: q("32 deg"),
        cohesion: q("0 kPa"),
        shear_modulus: q("4 MPa"),
        bore_radius: q("0.15 m"),
        plastic_radius,
    }
}

/// Clay of 19 kN/m3, 6 m, undrained strength 40 kPa, in total stress.
fn clay(plastic_radius: Length) -> CavityPressure {
    CavityPressure {
        effective_stress: q("114 kPa"),
        pore_pressure: q("0 kPa"),
        friction_angle: q("0 deg"),
        cohesion: q("40 kPa"),
        ..sand(plastic_radius)
    }
}

/// 616 kPa with two thirds of the cover, 5.4 times the overburden; without any radius 640 kPa.
fn sand_with_the_printed_radius(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let pressure = sand(q("4 m"));
    near(found, "sand, two thirds of the cover", pressure.value(), "616 kPa", "0.5 kPa");
    near(found, "the same over the overburden", pressure.value() / q::<Pressure>("114 kPa"), "5.4", "0.05");
    near(found, "sand, no limit of the radius", sand(q("1000000 m")).value(), "640 kPa", "0.5 kPa");
    Ok(())
}

/// 329 kPa with half of the cover, by the form without friction and by the general one at 0.01 deg alike.
fn clay_with_the_printed_radius(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let radius = q("3 m");
    for angle in ["0 deg", "0.01 deg"] {
        let pressure = CavityPressure { friction_angle: q(angle), ..clay(radius) };
        near(found, &format!("clay at {angle}"), pressure.value(), "329 kPa", "0.5 kPa");
    }
    near(found, "clay over the overburden", clay(radius).value() / q::<Pressure>("114 kPa"), "2.9", "0.05");
    Ok(())
}

/// 2 %: 0.28 m and 227 kPa; 5 %: 0.45 m and 296 kPa.
fn sand_with_the_limits_of_strain(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (name, strain, radius, pressure) in [
        ("the low strain", limit(handbook, "strain_low")?, "0.28 m", "227 kPa"),
        ("the high strain", q("5 %"), "0.45 m", "296 kPa"),
    ] {
        let plastic = StrainLimitedRadius {
            bore_radius: q("0.15 m"),
            strain,
            effective_stress: q("84 kPa"),
            friction_angle: q("32 deg"),
            cohesion: q("0 kPa"),
            shear_modulus: q("4 MPa"),
        };
        near(found, &format!("radius by {name}"), plastic.value(), radius, "0.005 m");
        near(found, &format!("pressure by {name}"), sand(plastic.value()).value(), pressure, "0.5 kPa");
    }
    Ok(())
}

/// Half of 616 is 308 kPa still and passes a blow-out: the weight of the ground, 114 kPa, is the limit; so in the clay,
/// where 329 over 1.5 is 219. A weak cavity counts before the cap.
fn capped_pressures(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (cavity, margin, divided, uncapped) in
        [("616 kPa", "margin_sand", "308 kPa", "45 kPa"), ("329 kPa", "margin_other", "219 kPa", "60 kPa")]
    {
        let safety = limit(handbook, margin)?;
        near(found, &format!("cavity over {margin}"), q::<Pressure>(cavity) / safety, divided, "0.5 kPa");
        let cap = limit(handbook, "cap_total_stress")?;
        let allowed = FluidPressureLimit { cavity: q(cavity), safety, cap, total_stress: q("114 kPa") };
        near(found, &format!("capped, {cavity}"), allowed.value(), "114 kPa", "0.5 kPa");
        let weak = FluidPressureLimit { cavity: q("90 kPa"), ..allowed };
        near(found, "a weak cavity counts", weak.value(), uncapped, "0.5 kPa");
    }
    Ok(())
}
