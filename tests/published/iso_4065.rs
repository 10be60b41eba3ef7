//! ISO 4065, thermoplastics pipes, universal wall thickness table, 1996 and 2018. Front pages read in stored copies
//! ("higher values shall be taken from the R 10 series"); the rule of the wall recalled. The walls of MS 1058 part 2,
//! 2005, a national standard for PE pipe, were read in a stored copy of its tables, which say that they are rounded up
//! from ISO 4065; those of SDR 21 and 26 to dn 200 in a stored copy of the German table and in a seller's copy of the ISO
//! table.

use crate::found::{Found, Outcome, near, needed, pages, q, same};
use jackpull::Handbook;
use jackpull::quantity::{Length, Ratio};
use std::sync::Arc;

pages!(calculated_wall, ms_1058_part_2_2005_wall_table, walls_of_sdr_21_and_26, walls_of_a_network_package);

/// Outside diameters, mm.
const SIZES: [u32; 22] =
    [90, 110, 125, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500, 560, 630, 710, 800, 900, 1000, 1200];

fn wall(handbook: &Handbook, dn: u32, sdr: &str) -> Result<Length, crate::found::Stop> {
    let (size, ratio) = (q::<Length>(&format!("{dn} mm")), q::<Ratio>(sdr));
    let row = handbook.pe_iso4427()?.find(|row| same(row.size.value, size) && same(row.sdr.value, ratio));
    Ok(needed(row, || format!("{dn} mm, SDR {sdr}"))?.value.wall.value)
}

/// e = dn / (2 S + 1) rounded up to 0.1 mm, where S is the exact preferred number: 5 stands for 10^0.7 and 8 for
/// 10^0.9, so the ratio is 11.02 or 16.89 and not the rounded name of the series.
fn calculated_wall(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    /// Known gap: these walls lie up to 0.005 mm below the calculated one, so the standard does not round up a rest
    /// that small.
    const REST: f64 = 0.005;
    const SMALL_REST: [(&str, &[u32]); 7] = [
        ("6", &[250, 400, 450]),
        ("11", &[355]),
        ("17", &[125, 250]),
        ("21", &[250, 355]),
        ("26", &[110]),
        ("33", &[180]),
        ("41", &[90, 180, 225, 315, 450, 630, 900]),
    ];
    /// Recalled thinner than calculated.
    const THINNER: [(&str, u32, f64); 3] = [("11", 1000, 0.6), ("13.6", 1000, 1.0), ("17", 1200, 0.5)];
    for (sdr, exponent, greatest) in [
        ("6", 0.4, 450),
        ("7.4", 0.5, 630),
        ("9", 0.6, 800),
        ("11", 0.7, 1000),
        ("13.6", 0.8, 1200),
        ("17", 0.9, 1200),
        ("21", 1.0, 1200),
        ("26", 1.1, 1200),
        ("33", 1.2, 1200),
        ("41", 1.3, 1200),
    ] {
        for dn in SIZES.into_iter().filter(|dn| *dn <= greatest) {
            let calculated = f64::from(dn) / (2.0 * 10_f64.powf(exponent) + 1.0);
            let wall = wall(handbook, dn, sdr)?.value * 1e3;
            let up = wall - calculated;
            let thinner = THINNER.iter().find(|(of, size, _)| (*of, *size) == (sdr, dn)).map(|(.., most)| *most);
            if !(-thinner.unwrap_or(REST)..0.1).contains(&up) {
                found.push(format!("{dn} mm SDR {sdr}: wall {wall} mm, calculated {calculated:.3} mm"));
            }
            if (up < 0.0)
                != (SMALL_REST.iter().any(|(of, small)| *of == sdr && small.contains(&dn)) || thinner.is_some())
            {
                found.push(format!("{dn} mm SDR {sdr}: the rest of {up:.4} mm is no longer where it was"));
            }
        }
    }
    Ok(())
}

/// Walls from dn 90 up, mm; 0 is not printed, or misprinted (500 mm SDR 17 has 27.7, with a greatest wall of 32.8).
fn printed_walls(found: &mut Found, handbook: &Handbook, sdr: &str, walls: &[f64]) -> Outcome {
    for (dn, printed) in SIZES.into_iter().zip(walls).filter(|(_, printed)| **printed > 0.0) {
        near(found, &format!("{dn} mm SDR {sdr}"), wall(handbook, dn, sdr)?, &format!("{printed} mm"), "0.05 mm");
    }
    Ok(())
}

/// Least walls of MS 1058-2.
fn ms_1058_part_2_2005_wall_table(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const WALLS: [(&str, [f64; 16]); 6] = [
        ("6", [0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 33.3, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0]),
        ("7.4", [12.3, 15.1, 17.1, 19.2, 21.9, 24.6, 27.4, 30.8, 34.2, 38.3, 43.1, 48.5, 54.7, 61.5, 0.0, 0.0]),
        ("9", [10.1, 12.3, 14.0, 15.7, 17.9, 20.1, 22.4, 25.2, 27.9, 31.3, 35.2, 39.7, 44.7, 50.3, 55.8, 0.0]),
        ("11", [8.2, 10.0, 11.4, 12.7, 14.6, 16.4, 18.2, 20.5, 22.7, 25.4, 28.6, 32.2, 36.3, 40.9, 45.4, 50.8]),
        ("13.6", [6.7, 8.1, 9.2, 10.3, 11.8, 13.3, 14.7, 16.6, 18.4, 20.6, 23.2, 26.1, 29.4, 33.1, 36.8, 41.2]),
        ("17", [5.4, 6.6, 7.4, 8.3, 9.5, 10.7, 11.9, 13.4, 14.8, 16.6, 18.7, 21.1, 23.7, 26.7, 0.0, 33.2]),
    ];
    WALLS.iter().try_for_each(|(sdr, walls)| printed_walls(found, handbook, sdr, walls))
}

/// dn 90 to 200.
fn walls_of_sdr_21_and_26(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    printed_walls(found, handbook, "21", &[4.3, 5.3, 6.0, 6.7, 7.7, 8.6, 9.6])?;
    printed_walls(found, handbook, "26", &[3.5, 4.2, 4.8, 5.4, 6.2, 6.9, 7.7])
}

/// PE 100 SDR 17 in the data of an open package for gas and water networks: inside diameters, mm.
fn walls_of_a_network_package(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (dn, inside) in [(500, 440.6), (560, 493.6), (630, 555.2), (710, 625.8), (800, 705.2), (900, 793.4)] {
        let wall = wall(handbook, dn, "17")?;
        near(found, &format!("{dn} mm SDR 17"), wall, &format!("{} mm", (f64::from(dn) - inside) / 2.0), "0.05 mm");
    }
    Ok(())
}
