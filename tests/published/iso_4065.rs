//! ISO 4065, thermoplastics pipes, universal wall thickness table, 1996 and 2018. Front pages read in stored copies
//! ("higher values shall be taken from the R 10 series"); the rule of the wall recalled. The walls of MS 1058 part 2,
//! 2005, a national standard for PE pipe, were read in a stored copy of its tables, which say that they are rounded up
//! from ISO 4065.

use crate::found::{Found, Outcome, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::quantity::{Length, Ratio};
use std::sync::Arc;

pages!(calculated_wall, ms_1058_part_2_2005_wall_table);

const SIZES: [&str; 10] =
    ["110 mm", "125 mm", "140 mm", "160 mm", "180 mm", "200 mm", "225 mm", "250 mm", "280 mm", "315 mm"];

fn wall(handbook: &Handbook, size: &str, sdr: &str) -> Result<Length, crate::found::Stop> {
    let (dn, ratio) = (q::<Length>(size), q::<Ratio>(sdr));
    let row = handbook.pe_iso4427()?.find(|row| same(row.size.value, dn) && same(row.sdr.value, ratio));
    Ok(needed(row, || format!("{size}, SDR {sdr}"))?.value.wall.value)
}

/// e = dn / (2 S + 1) rounded up to 0.1 mm, where S is the exact preferred number: 5 stands for 10^0.7 and 8 for
/// 10^0.9, so the ratio is 11.02 or 16.89 and not the rounded name of the series.
fn calculated_wall(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// Known gap: at SDR 17 the walls of dn 125 and dn 250 lie 0.002 and 0.005 mm below the calculated one, so the
    /// standard does not round up a rest that small.
    const REST: f64 = 0.005;
    for (sdr, exponent) in [("11", 0.7), ("17", 0.9)] {
        for size in SIZES {
            let calculated = (q::<Length>(size) / (2.0 * 10_f64.powf(exponent) + 1.0)).value * 1e3;
            let wall = wall(handbook, size, sdr)?.value * 1e3;
            let up = wall - calculated;
            if !(-REST..0.1).contains(&up) {
                found.push(format!("{size} SDR {sdr}: wall {wall} mm, calculated {calculated:.3} mm"));
            }
            let gap = sdr == "17" && ["125 mm", "250 mm"].contains(&size);
            if (up < 0.0) != gap {
                found.push(format!("{size} SDR {sdr}: the rest of {up:.4} mm is no longer where it was"));
            }
        }
    }
    Ok(())
}

/// Least walls of MS 1058-2.
fn ms_1058_part_2_2005_wall_table(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const WALLS: [(&str, [f64; 10]); 2] = [
        ("11", [10.0, 11.4, 12.7, 14.6, 16.4, 18.2, 20.5, 22.7, 25.4, 28.6]),
        ("17", [6.6, 7.4, 8.3, 9.5, 10.7, 11.9, 13.4, 14.8, 16.6, 18.7]),
    ];
    for (sdr, printed) in &WALLS {
        for (size, printed) in SIZES.iter().zip(printed) {
            near(found, &format!("{size} SDR {sdr}"), wall(handbook, size, sdr)?, &format!("{printed} mm"), "0.05 mm");
        }
    }
    Ok(())
}
