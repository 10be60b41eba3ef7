//! AWWA C151, ductile iron pipe by pressure class. Not opened; a sheet of pipe data prints the outside diameters in
//! thirty-seconds of an inch, the casting tolerances and the rule of the wall: twice the class and 100 psi of surge on a
//! yield strength of 42 ksi, 0.08 in of service allowance, and the tolerance; to 8 in no less than 0.25 in.

use crate::found::{Found, Outcome, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::quantity::Length;
use std::sync::Arc;

pages!(walls_of_the_least_class, the_largest_sizes_of_pvc);

/// Size, outside diameter, casting tolerance, in; least class, psi.
const SHEET: [(u32, f64, f64, f64); 17] = [
    (4, 4.8125, 0.05, 350.0),
    (6, 6.90625, 0.05, 350.0),
    (8, 9.0625, 0.05, 350.0),
    (10, 11.09375, 0.06, 350.0),
    (12, 13.1875, 0.06, 350.0),
    (14, 15.3125, 0.07, 250.0),
    (16, 17.40625, 0.07, 250.0),
    (18, 19.5, 0.07, 250.0),
    (20, 21.59375, 0.07, 250.0),
    (24, 25.8125, 0.07, 200.0),
    (30, 32.0, 0.07, 150.0),
    (36, 38.3125, 0.07, 150.0),
    (42, 44.5, 0.07, 150.0),
    (48, 50.8125, 0.08, 150.0),
    (54, 57.5625, 0.09, 150.0),
    (60, 61.625, 0.09, 150.0),
    (64, 65.65625, 0.09, 150.0),
];

fn walls_of_the_least_class(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (size, outside, tolerance, class) in SHEET {
        let nominal = q::<Length>(&format!("{size} in"));
        let row = handbook.iron_pipe_in()?.find(|row| same(row.size.value, nominal));
        let row = needed(row, || format!("{size} in"))?.value;
        near(found, &format!("{size} in"), row.outside_diameter.value, &format!("{outside} in"), "0.016 in");
        let by_rule = (2.0 * (class + 100.0) * outside / (2.0 * 42_000.0) + 0.08 + tolerance).max(0.25);
        near(found, &format!("wall of {size} in"), row.wall.value, &format!("{by_rule} in"), "0.006 in");
    }
    Ok(())
}

/// Of the diameters of iron.
fn the_largest_sizes_of_pvc(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (size, outside, ..) in SHEET.into_iter().filter(|(size, ..)| (54..=60).contains(size)) {
        let nominal = q::<Length>(&format!("{size} in"));
        let row = handbook.pvc_pipe()?.find(|row| same(row.size.value, nominal));
        let row = needed(row, || format!("{size} in"))?.value;
        near(found, &format!("{size} in"), row.outside_diameter.value, &format!("{outside} in"), "0.016 in");
    }
    Ok(())
}
