//! Ductile iron pipe by EN 545, against the rule of the standard for the wall of a pressure class (recalled): the hoop
//! stress at three times the allowable pressure, 40 bar for class 40, is the tensile strength of 420 N/mm2, so
//! e = p (D - e) 3 / (2 x 420), and never less than 3 mm; and against the nominal sizes, which the bore fills.

use crate::found::{Found, Outcome, holds, near, needed, pages, q};
use jackpull::Handbook;
use jackpull::quantity::Length;
use std::sync::Arc;

pages!(walls_of_class_40, a_nominal_size_is_the_bore);

/// Nominal size, mm.
const SIZES: [f64; 8] = [150.0, 200.0, 250.0, 300.0, 350.0, 400.0, 500.0, 600.0];

/// Walls are printed to 0.1 mm.
fn walls_of_class_40(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for row in &handbook.iron_pipe()?.rows {
        let share = 4.0 * 3.0 / (2.0 * 420.0);
        let wall = row.value.outside_diameter.value * (share / (1.0 + share));
        let least = q::<Length>("3 mm");
        let by_rule = if wall > least { wall } else { least };
        let text = format!("{} mm", by_rule.value * 1e3);
        near(found, &row.key, row.value.wall.value, &text, "0.06 mm");
    }
    Ok(())
}

/// Lined with 4 to 5 mm of mortar the bore is the nominal size within 4.5 %.
fn a_nominal_size_is_the_bore(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for size in SIZES {
        let row = handbook.iron_pipe()?.find(|row| (row.size.value.value * 1e3 - size).abs() < 0.1);
        let row = needed(row, || format!("DN {size}"))?.value;
        let lining = if size < 325.0 { 0.004 } else { 0.005 };
        let bore = row.outside_diameter.value.value - 2.0 * (row.wall.value.value + lining);
        holds(found, &format!("DN {size}: bore {bore}"), (bore * 1e3 / size - 1.0).abs() < 0.045);
    }
    Ok(())
}
