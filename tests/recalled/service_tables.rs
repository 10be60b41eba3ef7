//! Tables of load and strength in service, as other texts have them, recalled: the Handbook of Steel Drainage & Highway
//! Construction Products (AISI), highway and railway pressures by cover, which AWWA M11 repeats; ASTM C76M, D-loads in
//! SI; EN 295-1, crushing strength by size and class.

use crate::found::{Found, Outcome, near, needed, pages};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::earth_load::{RingBreaks, StrengthOfClass};
use jackpull::quantity::{FromText, Length, Measure};
use std::sync::Arc;

pages!(
    traffic_by_cover,
    railway_by_newmark,
    impact_bands_meet,
    d_loads_in_si,
    crushing_strength_of_clay_by_size,
    strength_of_clay_that_is_jacked,
);

/// AISI, live loads including impact: cover in feet, pressure in pounds per square foot.
fn traffic_by_cover(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let highway = [(1, 1800), (2, 800), (3, 600), (4, 400), (5, 250), (6, 200), (7, 176), (8, 100)];
    let railway = [(2, 3800), (5, 2400), (8, 1600), (10, 1100), (12, 800)];
    let rows = handbook.live_load()?.rows.iter().filter(|row| row.value.load.value.0 == "H-20").count();
    if rows != highway.len() {
        found.push(format!("H-20: {rows} rows"));
    }
    presses(handbook, found, "h20", &highway, "2 psf")?;
    presses(handbook, found, "e80", &railway, "2 psf")
}

fn presses(handbook: &Arc<Handbook>, found: &mut Found, load: &str, printed: &[(i32, i32)], within: &str) -> Outcome {
    for (feet, pressure) in printed {
        let key = format!("{load}_{feet}_ft");
        let row = needed(handbook.live_load()?.get(&key), || key.clone())?.value;
        near(found, &key, row.cover.value, &format!("{feet} ft"), "0.1 ft");
        near(found, &key, row.pressure.value, &format!("{pressure} psf"), within);
    }
    Ok(())
}

/// Newmark's stress under the corner of a loaded rectangle, four corners of which meet under the middle of 20 by 8 ft with
/// four axles of 80 kip, 2,000 psf; before and behind a strip of 8 ft with 1,000 psf, of which (alpha + sin alpha)/pi
/// arrives: at 20 ft 309 + 248 - 155 = 403 psf.
fn railway_by_newmark(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let by_hand = [(16, 525), (18, 457), (20, 403), (24, 322), (30, 245), (40, 172)];
    for (feet, pressure) in by_hand {
        let (m, n): (f64, f64) = (10.0 / f64::from(feet), 4.0 / f64::from(feet));
        let (sum, product) = (m * m + n * n, m * m * n * n);
        let root = 2.0 * m * n * (sum + 1.0).sqrt();
        let corner = root / (sum + 1.0 + product) * (sum + 2.0) / (sum + 1.0) + root.atan2(sum + 1.0 - product);
        let loaded = corner / std::f64::consts::PI;
        let alpha = 2.0 * n.atan();
        let strip = (alpha + alpha.sin()) / std::f64::consts::PI;
        let got = 2000.0 * loaded + 1000.0 * (strip - loaded);
        if (got - f64::from(pressure)).abs() > 0.6 {
            found.push(format!("{feet} ft: {got} psf for {pressure}"));
        }
    }
    presses(handbook, found, "e80", &by_hand, "6 psf")
}

/// Moser, Table 2.5: 0 to 1, 1 to 2, 2 to 3 and over 3 ft.
fn impact_bands_meet(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.impact_factor()?;
    for (key, from) in [
        ("highway_to_1_ft", "0 ft"),
        ("highway_1_to_2_ft", "1 ft"),
        ("highway_2_to_3_ft", "2 ft"),
        ("highway_over_3_ft", "3 ft"),
    ] {
        let row = needed(table.get(key), || key.to_owned())?.value;
        near(found, key, row.cover_from.value, from, "0.1 ft");
    }
    Ok(())
}

/// C76M: 40, 50, 65, 100 and 140 N/m/mm at the crack, 60, 75, 100, 150 and 175 ultimate, rounded from the older units.
fn d_loads_in_si(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.crushing_class()?;
    for (key, cracked, ultimate) in [
        ("c76_i", "40 kPa", "60 kPa"),
        ("c76_ii", "50 kPa", "75 kPa"),
        ("c76_iii", "65 kPa", "100 kPa"),
        ("c76_iv", "100 kPa", "150 kPa"),
        ("c76_v", "140 kPa", "175 kPa"),
    ] {
        let row = needed(table.get(key), || key.to_owned())?.value;
        let at_crack = needed(row.cracked.as_ref(), || key.to_owned())?.value;
        near(found, key, at_crack, cracked, "7 kPa");
        near(found, key, row.ultimate.value, ultimate, "7 kPa");
    }
    Ok(())
}

/// DN 200: 32, 40 and 48 kN/m in classes 160, 200 and 240; DN 400: 38 in class 95, 48 in class 120, 64 in class 160.
fn crushing_strength_of_clay_by_size(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let table = handbook.crushing_class()?;
    for (key, size, printed) in [
        ("en_295_160", "200 mm", "32 kN/m"),
        ("en_295_200", "200 mm", "40 kN/m"),
        ("en_295_240", "200 mm", "48 kN/m"),
        ("en_295_95", "400 mm", "38 kN/m"),
        ("en_295_120", "400 mm", "48 kN/m"),
        ("en_295_160", "400 mm", "64 kN/m"),
        // Concrete by EN 1916: an association of its makers has 120 times the nominal size over 1,000.
        ("en_1916_120", "600 mm", "72 kN/m"),
    ] {
        let class_load = needed(table.get(key), || key.to_owned())?.value.ultimate.value;
        let strength = StrengthOfClass { class_load, size: Length::from_text(size).unwrap_or_default() };
        near(found, &format!("{key}, {size}"), strength.value(), printed, "0.5 kN/m");
    }
    Ok(())
}

/// Tables of makers, recalled: 80 kN/m at DN 200 and 276 mm outside, 110 at DN 250 and 360 mm, 120 at DN 300 and 406 mm, 160
/// at DN 400 and 556 mm. No less than these, and no more than half as much again. With the form of EN 295-3,
/// f = 0.3 T (3 d + 5 t)/t2, the wall of DN 300 bears 15 x 53 x 53/(0.3 x 1,165) = 120.6.
fn strength_of_clay_that_is_jacked(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let strength = handbook.pressure("clay.bending")?.value;
    for (bore, outside, recalled) in [(0.2, 0.276, 80e3), (0.25, 0.36, 110e3), (0.3, 0.406, 120e3), (0.4, 0.556, 160e3)]
    {
        let [outside_diameter, wall] = [outside, (outside - bore) / 2.0].map(Length::from_si);
        let over = RingBreaks { strength, outside_diameter, wall }.value().si() / recalled;
        if !(1.0..1.5).contains(&over) {
            found.push(format!("DN {}: {over} of what makers have", bore * 1e3));
        }
        let by_test = 15e6 * wall.si() * wall.si() / (0.3 * (3.0 * bore + 5.0 * wall.si()));
        let thin = RingBreaks { strength, outside_diameter, wall }.value().si() / by_test;
        if !(1.0..1.13).contains(&thin) {
            found.push(format!("DN {}: {thin} of the form of the test", bore * 1e3));
        }
    }
    Ok(())
}
