//! ASME B36.10M, steel pipe. Not opened; its outside diameters in millimetres read in the data of an open general
//! engineering package. European sizes (recalled) are the same pipes. 35 Ill. Adm. Code 604, table A, read, prints
//! 6.625, 8.625, 10.75 and 12.75 in for steel water pipe.

use crate::found::{Found, Outcome, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::quantity::Length;
use std::sync::Arc;

pages!(outside_diameters, european_sizes, a_public_water_code);

fn outside_diameter(handbook: &Handbook, size: &str) -> Result<Length, crate::found::Stop> {
    let nominal = q::<Length>(size);
    let row = handbook.steel_pipe()?.find(|row| same(row.size.value, nominal));
    Ok(needed(row, || format!("steel pipe {size}"))?.value.outside_diameter.value)
}

/// The standard rounds its millimetres from 18 in up.
fn outside_diameters(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let printed = [
        114.3, 168.3, 219.1, 273.0, 323.8, 355.6, 406.4, 457.0, 508.0, 559.0, 610.0, 660.0, 711.0, 762.0, 813.0, 864.0,
        914.0, 965.0, 1016.0, 1067.0, 1118.0, 1168.0, 1219.0,
    ];
    let sizes = [4, 6, 8, 10].into_iter().chain((12..=48).step_by(2));
    for size in [52, 54, 56, 60, 64, 66, 68, 72] {
        let size = format!("{size} in");
        near(found, &size, outside_diameter(handbook, &size)?, &size, "0.5 mm");
    }
    for (size, printed) in sizes.zip(printed) {
        let size = format!("{size} in");
        let got = outside_diameter(handbook, &size)?;
        near(found, &size, got, &format!("{printed} mm"), "0.5 mm");
    }
    Ok(())
}

/// By their outside diameter: those of 4, 6, 8, 10 and 12 in.
fn european_sizes(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (size, inches) in [
        ("114.3 mm", "4.5 in"),
        ("168.3 mm", "6.625 in"),
        ("219.1 mm", "8.625 in"),
        ("273 mm", "10.75 in"),
        ("323.9 mm", "12.75 in"),
    ] {
        near(found, size, outside_diameter(handbook, size)?, inches, "0.1 mm");
    }
    Ok(())
}

fn a_public_water_code(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (size, printed) in [("6 in", "6.625 in"), ("8 in", "8.625 in"), ("10 in", "10.75 in"), ("12 in", "12.75 in")] {
        near(found, size, outside_diameter(handbook, size)?, printed, "0.0005 in");
    }
    Ok(())
}
