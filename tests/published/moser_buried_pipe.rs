//! A. P. Moser, Buried Pipe Design, pages 22, 35 and 259 of the book (read in a page copy), with the load coefficient of a
//! jacked pipe worked out for the recalled K mu of Marston and Spangler by two other hands.

use crate::found::{Found, Outcome, holds, law, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::handbook::RatioSpanRow;
use jackpull::law::Law;
use jackpull::laws::soil::MarstonLoad;
use jackpull::quantity::{Length, Pressure, Ratio, UnitWeight};
use jackpull::source::Cited;
use std::sync::Arc;

pages!(
    load_coefficient,
    bedding_factors_of_jacked_pipe,
    safety_at_the_crack,
    ends_of_the_impact_bands,
    figures_for_cohesion,
    crushing_of_clay_pipe,
);

fn span<'a>(row: Option<Cited<&'a RatioSpanRow>>, key: &str) -> Result<&'a RatioSpanRow, crate::found::Stop> {
    Ok(needed(row, || key.to_owned())?.value)
}

fn value(row: &RatioSpanRow) -> Result<Ratio, crate::found::Stop> {
    Ok(needed(row.value.as_ref(), || row.what.value.0.clone())?.value)
}

/// Table 5.5, least crushing strength of clay pipe by ASTM C700, extra strength, lb/ft.
fn crushing_of_clay_pipe(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const PRINTED: [(u32, u32); 14] = [
        (6, 2000),
        (8, 2200),
        (10, 2400),
        (12, 2600),
        (15, 2900),
        (18, 3300),
        (21, 3850),
        (24, 4400),
        (27, 4700),
        (30, 5000),
        (33, 5500),
        (36, 6000),
        (39, 6600),
        (42, 7000),
    ];
    for (size, printed) in PRINTED {
        let nominal = q::<Length>(&format!("{size} in"));
        let row = handbook.clay_crushing()?.find(|row| same(row.size.value, nominal));
        let strength = needed(row, || format!("{size} in"))?.value.strength.value;
        near(found, &format!("clay {size} in"), strength, &format!("{printed} plf"), "0.5 plf");
    }
    holds(found, "every row is printed", handbook.clay_crushing()?.rows.len() == PRINTED.len());
    Ok(())
}

/// K mu, the figure it was worked with, and C at a depth of 1, 2, 4, 6, 8, 10 bores and without end, printed to 0.001.
const COEFFICIENTS: [(&str, &str, [&str; 7]); 5] = [
    ("granular", "0.1924", ["0.830", "1.395", "2.041", "2.340", "2.479", "2.543", "2.599"]),
    ("sand_and_gravel", "0.165", ["0.852", "1.464", "2.221", "2.612", "2.814", "2.919", "3.030"]),
    ("saturated_topsoil", "0.150", ["0.864", "1.504", "2.329", "2.782", "3.031", "3.167", "3.333"]),
    ("clay", "0.130", ["0.881", "1.560", "2.487", "3.038", "3.366", "3.560", "3.846"]),
    ("saturated_clay", "0.110", ["0.898", "1.618", "2.660", "3.331", "3.763", "4.042", "4.545"]),
];

/// The coefficient read back from a load without cohesion.
fn coefficient(bores: &str, lateral_friction: Ratio) -> Ratio {
    let (unit_weight, bore) = (q::<UnitWeight>("19 kN/m3"), q::<Length>("0.6 m"));
    let depth = bore * q::<Ratio>(bores);
    law(MarstonLoad { unit_weight, bore, depth, lateral_friction, cohesion: q("0 kPa") }) / (unit_weight * bore * bore)
}

/// The grounds that a pipe may lie in have a row each.
fn load_coefficient(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let rows = handbook.marston_friction()?;
    for (key, lateral_friction, printed) in COEFFICIENTS {
        if !["granular", "saturated_topsoil"].contains(&key) {
            near(found, key, needed(rows.get(key), || key.to_owned())?.value.value, lateral_friction, "0.0005");
        }
        for (bores, printed) in ["1", "2", "4", "6", "8", "10", "100000"].iter().zip(printed) {
            let got = coefficient(bores, q(lateral_friction));
            near(found, &format!("C of {key} at {bores} bores"), got, printed, "0.00051");
        }
    }
    Ok(())
}

/// Design manual of the concrete pipe association, recalled: 3 with grout all round, 1.9 with small voids, which is no
/// more than the best trench without concrete. No live load factor above that of the earth of class C.
fn bedding_factors_of_jacked_pipe(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let rows = handbook.bedding_factor()?;
    near(found, "grouted", value(span(rows.get("jacked_grouted"), "jacked_grouted")?)?, "3", "0.05");
    let loose = value(span(rows.get("jacked_not_grouted"), "jacked_not_grouted")?)?;
    near(found, "not grouted", loose, "1.9", "0.05");
    holds(found, "no better than class B, p. 81", loose <= q("1.9"));
    let live = needed(span(rows.get("live_default"), "live_default")?.high.as_ref(), || "the live load".to_owned())?;
    near(found, "live load", live.value, "1.5", "0.05");
    Ok(())
}

/// On the load at the crack there is no safety, recalled.
fn safety_at_the_crack(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let crack = value(span(handbook.earth_load_factor()?.get("crack_safety"), "crack_safety")?)?;
    near(found, "on the load at the crack", crack, "1.0", "0.05");
    Ok(())
}

/// p. 35.
fn ends_of_the_impact_bands(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, to) in [("highway_to_1_ft", "1 ft"), ("highway_1_to_2_ft", "2 ft"), ("highway_2_to_3_ft", "3 ft")] {
        let row = &needed(handbook.impact_factor()?.get(key), || key.to_owned())?.value;
        near(found, key, needed(row.cover_to.as_ref(), || key.to_owned())?.value, to, "0.05 ft");
    }
    Ok(())
}

/// Cohesion of half the unit weight times the bore leaves no load: 2.9, 3.8 and 5.7 kPa at 0.30, 0.40 and 0.60 m and
/// 19 kN/m3. The warning at a quarter is where the law is in doubt. The floor is a column of 1.5 to 2 bores, cohesion
/// counts from 1 m of diameter.
fn figures_for_cohesion(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let factors = handbook.earth_load_factor()?;
    let warning = q::<Ratio>("0.25");
    for (bore, cancels) in [("0.30 m", "2.9 kPa"), ("0.40 m", "3.8 kPa"), ("0.60 m", "5.7 kPa")] {
        let at = |share: Ratio| {
            let unit_weight = q::<UnitWeight>("19 kN/m3");
            let bore = q::<Length>(bore);
            let cohesion: Pressure = share * (unit_weight * bore);
            MarstonLoad { unit_weight, bore, depth: q("6 m"), lateral_friction: q("0.130"), cohesion }
        };
        near(found, &format!("cohesion that cancels at {bore}"), at(2.0 * warning).cohesion, cancels, "0.051 kPa");
        holds(found, "and nothing is left", at(2.0 * warning).value() <= q("0.001 N/m"));
        holds(found, "half is left at the warning", same(at(warning).value(), at(q("0")).value() / 2.0));
        holds(found, "no doubt below the warning", at(0.99 * warning).in_range());
        holds(found, "doubt above the warning", !at(1.01 * warning).in_range());
    }
    let floor = span(factors.get("floor_column"), "floor_column")?;
    for (end, printed) in [(&floor.low, "1.5"), (&floor.high, "2")] {
        near(found, "floor", needed(end.as_ref(), || "an end".to_owned())?.value, printed, "0.05");
    }
    let from = needed(handbook.earth_load_length()?.get("cohesion_from"), || "a length".to_owned())?.value.value;
    near(found, "cohesion counts from", from, "1 m", "0.05 m");
    Ok(())
}
