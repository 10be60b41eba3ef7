//! Ductile iron pipe by EN 545, against the rule of the standard for the wall of a pressure class (recalled): the hoop
//! stress at three times the allowable pressure, 40 bar for class 40, is the tensile strength of 420 N/mm2, so
//! e = p (D - e) 3 / (2 x 420), and never less than 3 mm; above DN 1000 class 25; and against the nominal sizes, which the
//! bore fills.

use crate::found::{Found, Outcome, holds, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::quantity::Length;
use std::sync::Arc;

pages!(walls_of_a_class, a_nominal_size_is_the_bore, nominal_walls, linings);

/// Nominal size, mm.
const SIZES: [f64; 19] = [
    100.0, 125.0, 150.0, 200.0, 250.0, 300.0, 350.0, 400.0, 500.0, 600.0, 700.0, 800.0, 900.0, 1000.0, 1100.0, 1200.0,
    1400.0, 1500.0, 1600.0,
];

/// Walls are printed to 0.1 mm.
fn walls_of_a_class(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for row in &handbook.iron_pipe()?.rows {
        let pressure = if row.value.size.value > q::<Length>("1001 mm") { 2.5 } else { 4.0 };
        let share = pressure * 3.0 / (2.0 * 420.0);
        let wall = row.value.outside_diameter.value * (share / (1.0 + share));
        let least = q::<Length>("3 mm");
        let by_rule = if wall > least { wall } else { least };
        let text = format!("{} mm", by_rule.value * 1e3);
        near(found, &row.key, row.value.wall.value, &text, "0.06 mm");
    }
    Ok(())
}

/// Lined with 4 to 6 mm of mortar the bore is the nominal size within 4.5 %.
fn a_nominal_size_is_the_bore(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for size in SIZES {
        let row = handbook.iron_pipe()?.find(|row| (row.size.value.value * 1e3 - size).abs() < 0.1);
        let row = needed(row, || format!("DN {size}"))?.value;
        let lining = if size < 325.0 {
            0.004
        } else if size < 650.0 {
            0.005
        } else {
            0.006
        };
        let bore = row.outside_diameter.value.value - 2.0 * (row.wall.value.value + lining);
        holds(found, &format!("DN {size}: bore {bore}"), (bore * 1e3 / size - 1.0).abs() < 0.045);
    }
    Ok(())
}

/// Nominal and least walls of class 40 to DN 300 and of class 30 above, as another maker's table prints them, to 0.1 mm.
fn nominal_walls(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (allowance, by_size) = (handbook.length("iron.wall_allowance")?, handbook.ratio("iron.wall_by_size")?);
    for (size, least, nominal) in [
        ("150 mm", "3.0 mm", "4.5 mm"),
        ("200 mm", "3.1 mm", "4.7 mm"),
        ("250 mm", "3.9 mm", "5.5 mm"),
        ("300 mm", "4.6 mm", "6.2 mm"),
        ("350 mm", "4.7 mm", "6.3 mm"),
        ("400 mm", "4.8 mm", "6.5 mm"),
        ("500 mm", "5.6 mm", "7.5 mm"),
        ("600 mm", "6.7 mm", "8.7 mm"),
    ] {
        let wall = q::<Length>(least) + allowance.value + by_size.value * q::<Length>(size);
        near(found, size, wall, nominal, "0.11 mm");
    }
    Ok(())
}

/// By ISO 4179 (recalled) the lining is nowhere below 2.5 mm to DN 300, 3 mm to DN 600 and 3.5 mm to DN 1200, some 0.6 of
/// the nominal one.
fn linings(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (key, least) in
        [("iron.lining_to_300", 2.5e-3), ("iron.lining_to_600", 3.0e-3), ("iron.lining_to_1200", 3.5e-3)]
    {
        let share = least / handbook.length(key)?.value.value;
        holds(found, &format!("{key}: least over nominal {share}"), (0.55..=0.7).contains(&share));
    }
    Ok(())
}
