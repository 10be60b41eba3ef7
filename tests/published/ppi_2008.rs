//! Plastics Pipe Institute, Handbook of Polyethylene Pipe, second edition, 2008. Chapter 3, appendix B, p. 99 read in
//! part in an agency's copy (both unit columns); chapter 12 recalled, its arithmetic checked against the digits that
//! were recalled with it.

use crate::found::{Found, Outcome, close, modulus, multiplier, near, pages, pull_stress, q, ratio};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::pe::{MinimumBendRadius, ModulusAtDuration, ModulusAtTemperature};
use jackpull::quantity::{Length, MassDensity, Pressure, Ratio, ThermodynamicTemperature};
use std::sync::Arc;

pages!(
    table_b_1_1_in_megapascals,
    table_b_1_1_a_row_left_out_comes_back,
    table_b_2_1_classes_of_density,
    table_b_1_2_at_100_degf,
    table_b_1_2_is_even,
    chapter_12_stress_is_three_percent_strain,
    densities_beside_that_of_the_river_crossing,
    river_crossing_smallest_radius,
    slurry_of_chapter_12_example_1,
    annular_pressure_in_kilopascals,
);

/// The table prints both units; rows that were not legible have no twin.
fn table_b_1_1_in_megapascals(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// Half of the last digit, and a little more: 62,000 psi are 427.47 MPa, printed 428.
    const HALF_A_DIGIT: &str = "0.53 MPa";
    const MEGAPASCALS: [(&str, [&str; 3]); 6] = [
        ("0.5 h", ["428 MPa", "538 MPa", "565 MPa"]),
        ("2 h", ["393 MPa", "490 MPa", "510 MPa"]),
        ("12 h", ["331 MPa", "414 MPa", "434 MPa"]),
        ("100 h", ["290 MPa", "359 MPa", "379 MPa"]),
        ("1 year", ["207 MPa", "262 MPa", "276 MPa"]),
        ("50 year", ["152 MPa", "193 MPa", "200 MPa"]),
    ];
    for (duration, printed) in &MEGAPASCALS {
        for (material, printed) in ["pe2xxx", "pe3xxx", "pe4xxx"].iter().zip(printed) {
            let got = modulus(handbook, material, duration)?;
            near(found, &format!("modulus, {material}, {duration}"), got, printed, HALF_A_DIGIT);
        }
    }
    Ok(())
}

/// Linear in the logarithm of time between its neighbours, each printed row comes back.
fn table_b_1_1_a_row_left_out_comes_back(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// The curve is not quite straight: at 12 h of PE2XXX the line is 2.4 % above the row.
    const CURVED: f64 = 0.025;
    for class in ["pe2xxx", "pe3xxx", "pe4xxx"] {
        for [before, at, after] in [["1 h", "2 h", "10 h"], ["10 h", "12 h", "24 h"], ["1000 h", "1 year", "10 year"]] {
            let line = ModulusAtDuration {
                duration: q(at),
                duration_before: q(before),
                modulus_before: modulus(handbook, class, before)?,
                duration_after: q(after),
                modulus_after: modulus(handbook, class, after)?,
            };
            let off = (line.value() / modulus(handbook, class, at)?).value - 1.0;
            if !(off.abs() <= CURVED) {
                found.push(format!("{class}, {at}: the line from {before} to {after} is off by {off:.3}"));
            }
        }
    }
    Ok(())
}

/// Short-term moduli of the three classes, 100,000, 125,000 and 130,000 psi (recalled; the middle one works back from
/// Table 5.1 of Najafi 2010): creep keeps their ratios.
fn table_b_2_1_classes_of_density(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// Moduli are printed to 1,000 psi, that is to 2 % of the smallest, and the classes do not creep quite alike.
    const ROUNDING: f64 = 0.03;
    for duration in ["0.5 h", "1 h", "2 h", "10 h", "12 h", "24 h", "100 h", "1000 h", "1 year", "10 year", "50 year"] {
        let middle = modulus(handbook, "pe3xxx", duration)?;
        let low = modulus(handbook, "pe2xxx", duration)? / middle;
        let high = modulus(handbook, "pe4xxx", duration)? / middle;
        close(found, &format!("PE2XXX over PE3XXX, {duration}"), low, "0.80", ROUNDING);
        close(found, &format!("PE4XXX over PE3XXX, {duration}"), high, "1.04", ROUNDING);
    }
    Ok(())
}

/// Moduli of 73 degF taken over to 38 degC (100 degF) are too high by 37 %: the reciprocal of 0.73. At the base
/// temperature of the table there is nothing to correct.
fn table_b_1_2_at_100_degf(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let cold = q::<Pressure>("57500 psi");
    let warm = ModulusAtTemperature {
        modulus: cold,
        temperature: q("100 degF"),
        below: q("100 degF"),
        factor_below: multiplier(handbook, "modulus_ppi", "100 degF")?,
        above: q("110 degF"),
        factor_above: multiplier(handbook, "modulus_ppi", "110 degF")?,
    };
    let too_high = cold / warm.value() - q::<Ratio>("1");
    near(found, "modulus taken over from 73 degF", too_high, "37 %", "0.5 %");
    // 73.4 degF is 23 degC, as the heading of the appendix has it.
    let base = multiplier(handbook, "modulus_ppi", "23 degC")?;
    near(found, "multiplier at the base temperature", base, "1", "0.005");
    Ok(())
}

/// No second print of the multipliers was found, but each is recalled, and together they run evenly: none
/// is off the straight line through its neighbours by more than 2.5 %, which is a misprint's size away.
fn table_b_1_2_is_even(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const AT: [&str; 17] = [
        "-20 degF",
        "-10 degF",
        "0 degF",
        "10 degF",
        "20 degF",
        "30 degF",
        "40 degF",
        "50 degF",
        "60 degF",
        "73.4 degF",
        "80 degF",
        "90 degF",
        "100 degF",
        "110 degF",
        "120 degF",
        "130 degF",
        "140 degF",
    ];
    const OFF_THE_LINE: f64 = 0.025;
    let mut points = Vec::new();
    for at in AT {
        let temperature = q::<ThermodynamicTemperature>(at).value;
        points.push((temperature, multiplier(handbook, "modulus_ppi", at)?.value));
    }
    let last = points.len() - 1;
    for (place, at) in AT.iter().enumerate() {
        // At the ends the line is drawn on from the two next.
        let (a, b) = match place {
            0 => (points[1], points[2]),
            _ if place == last => (points[last - 2], points[last - 1]),
            _ => (points[place - 1], points[place + 1]),
        };
        let (temperature, factor) = points[place];
        let line = a.1 + (b.1 - a.1) * (temperature - a.0) / (b.0 - a.0);
        if !((factor / line - 1.0).abs() <= OFF_THE_LINE) {
            found.push(format!("multiplier at {at}: {factor} is off the line of its neighbours, {line:.3}"));
        }
    }
    Ok(())
}

/// The table of chapter 12 is 3 % strain times the modulus of chapter 3 times 0.6.
fn chapter_12_stress_is_three_percent_strain(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// The stresses are rounded to 50 psi.
    const ROUNDING: f64 = 0.023;
    /// PE2XXX at 24 h was recalled as 800 where the rule gives 828 psi, a known gap.
    const GAP: f64 = 0.036;
    for (material, class) in [("mdpe", "pe2xxx"), ("hdpe", "pe3xxx"), ("pe4710", "pe4xxx")] {
        for up_to in ["0.5 h", "1 h", "12 h", "24 h"] {
            let (stress, _) = pull_stress(handbook, "ppi_2008", material, up_to)?;
            let rule = 0.03 * 0.6 * modulus(handbook, class, up_to)?;
            let off = (rule / stress).value - 1.0;
            let allowed = if (material, up_to) == ("mdpe", "24 h") { GAP } else { ROUNDING };
            if !(off.abs() <= allowed) {
                found.push(format!("pull stress, {material}, {up_to}: the rule gives {:.3} of it", off + 1.0));
            }
        }
    }
    let gap = 0.018 * modulus(handbook, "pe2xxx", "24 h")?;
    near(found, "the rule at the gap", gap, "828 psi", "0.5 psi");
    Ok(())
}

/// The pipe of the theoretical river crossing, appendix B of chapter 12.
fn outside_diameter() -> Length {
    q("24 in")
}
/// Water of 0.0361 lb/in3, and the density ratio 0.95 of the pipe.
fn water() -> MassDensity {
    q("0.0361 lb/in3")
}

/// The pipe of the example weighs 0.95 of its water.
fn densities_beside_that_of_the_river_crossing(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// Densities of PE differ by 0.01 from that of the example.
    const OTHER_RESIN: f64 = 0.0115;
    for row in &handbook.pe_material()?.rows {
        close(found, &format!("density of {}", row.key), row.value.density.value, "0.034295 lb/in3", OTHER_RESIN);
    }
    Ok(())
}

/// The radii are checked against 40 diameters, 80 ft.
fn river_crossing_smallest_radius(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let radius = MinimumBendRadius {
        outside_diameter: outside_diameter(),
        ratio: ratio(handbook, "pe.bend_radius")?,
        temperature: q("23 degC"),
        cold_factor: ratio(handbook, "pe.bend_cold")?,
    };
    near(found, "smallest radius", radius.value(), "80 ft", "0.5 ft");
    Ok(())
}

/// Example 1 has slurry of 75 lb/ft3. Likely slurry is lighter than that one and no lighter than 8.6 lb/gal.
fn slurry_of_chapter_12_example_1(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let clean = water() * ratio(handbook, "pull.fluid_clean")?;
    crate::found::between(found, "clean slurry", clean, "8.6 lb/gal_us", "75 lb/ft3");
    let light = q::<MassDensity>("1000 kg/m3") * ratio(handbook, "pull.fluid_light")?;
    close(found, "lightest fluid, fresh water", light, "62.4 lb/ft3", 0.001);
    Ok(())
}

/// Recommended pressures 4 to 8 psi, in the metric column 28 to 55 kPa.
fn annular_pressure_in_kilopascals(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let low = handbook.pressure("pull.annular_low")?.value;
    near(found, "low pressure in the annulus", low, "28 kPa", "0.5 kPa");
    Ok(())
}
