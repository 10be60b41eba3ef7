//! ASTM F2619/F2619M, high-density polyethylene line pipe. Not opened; walls of DR 11 read in the data of an open
//! general engineering package. The pull forces are worked by another hand for a stress of 1,150 psi
//! (the 6 in one also recalled from the handbook of PE pipe, 1.31e4 lb); diameters of steel line pipe of the same
//! nominal sizes read in the same package.

use crate::found::{Found, Outcome, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::pe::AllowableTension;
use jackpull::quantity::Length;
use std::sync::Arc;

pages!(pull_force_at_1150_psi, walls_of_dr_11, steel_of_the_same_size);

const SIZES: [&str; 5] = ["4 in", "6 in", "8 in", "10 in", "12 in"];

fn outside_diameter(handbook: &Handbook, size: &str) -> Result<Length, crate::found::Stop> {
    let nominal = q::<Length>(size);
    let row = handbook.pe_ips()?.find(|row| same(row.size.value, nominal));
    Ok(needed(row, || format!("iron pipe size {size}"))?.value.outside_diameter.value)
}

/// Pounds at 1,150 psi by dimension ratio; a dash of the table is 0.
fn pull_force_at_1150_psi(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const DIMENSION_RATIOS: [f64; 5] = [9.0, 11.0, 13.5, 17.0, 21.0];
    const POUNDS: [[u32; 5]; 5] = [
        [7_226, 6_046, 5_018, 4_050, 3_318],
        [15_661, 13_105, 0, 8_779, 7_191],
        [26_544, 22_212, 18_434, 14_879, 12_189],
        [41_235, 34_505, 28_636, 23_115, 18_935],
        [58_006, 48_538, 40_282, 0, 26_635],
    ];
    for (size, pounds) in SIZES.iter().zip(POUNDS) {
        let outside_diameter = outside_diameter(handbook, size)?;
        for (dimension_ratio, pounds) in DIMENSION_RATIOS.iter().zip(pounds) {
            if pounds == 0 {
                continue;
            }
            let force = AllowableTension {
                stress: q("1150 psi"),
                outside_diameter,
                wall: outside_diameter / *dimension_ratio,
                weld_factor: q("1"),
            };
            let what = format!("IPS {size} DR {dimension_ratio}");
            near(found, &what, force.value(), &format!("{pounds} lbf"), "0.5 lbf");
        }
    }
    Ok(())
}

fn walls_of_dr_11(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (size, printed) in [("4 in", "0.409 in"), ("6 in", "0.602 in"), ("8 in", "0.784 in")] {
        let wall = outside_diameter(handbook, size)? / 11.0;
        near(found, &format!("wall of {size} DR 11"), wall, printed, "0.0005 in");
    }
    Ok(())
}

/// Steel pipe, to 12 in in inches, above as the standard has it in millimetres.
fn steel_of_the_same_size(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const LARGE: [(u32, u32); 13] = [
        (16, 406),
        (18, 457),
        (20, 508),
        (22, 559),
        (24, 610),
        (26, 660),
        (28, 711),
        (30, 762),
        (32, 813),
        (34, 864),
        (42, 1067),
        (48, 1219),
        (54, 1372),
    ];
    for (size, printed) in LARGE {
        let size = format!("{size} in");
        let outside = outside_diameter(handbook, &size)?;
        near(found, &format!("diameter of {size}"), outside, &format!("{printed} mm"), "0.5 mm");
    }
    for (size, printed) in [("14 in", "355.6 mm"), ("36 in", "914 mm")] {
        near(found, &format!("diameter of {size}"), outside_diameter(handbook, size)?, printed, "0.5 mm");
    }
    let steel = ["4.500 in", "6.625 in", "8.625 in", "10.75 in", "12.75 in"];
    for (size, printed) in SIZES.iter().zip(steel) {
        near(found, &format!("diameter of {size}"), outside_diameter(handbook, size)?, printed, "0.005 in");
    }
    Ok(())
}
