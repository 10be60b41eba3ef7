//! Dimension series against a general-purpose package, and derived figures against their parents.
//!
//! `dimensions_peer.json`: the package `fluids` 1.3.1 (PyPI), module `fluids.piping`, made by
//! `.ci/peers/dimensions.py`; it carries ASTM F2619 in iron pipe sizes and AWWA C900 and C905 in mm.

use approx::assert_relative_eq;
use jackpull::Handbook;
use jackpull::handbook::{Row, SizeOutsideRow};
use jackpull::quantity::Length;
use serde_json::Value;
use std::f64::consts::PI;

/// Size in inches, outside diameter and wall in mm, of a series of the fixture.
fn peer(series: &str) -> Vec<[f64; 3]> {
    let fixture: Value = serde_json::from_str(include_str!("dimensions_peer.json")).unwrap();
    let rows = fixture[series].as_array().unwrap();
    let column = |row: &Value, name: &str| row[name].as_f64().unwrap();
    rows.iter().map(|row| [column(row, "size"), column(row, "outside"), column(row, "wall")]).collect()
}

fn inches(length: Length) -> f64 {
    length.value / 0.0254
}

fn found(series: &[[f64; 3]], size: Length) -> [f64; 3] {
    *series.iter().find(|[nominal, ..]| (nominal - inches(size)).abs() < 1e-6).unwrap()
}

#[test]
fn iron_pipe_sizes_of_pe_agree() {
    let series = peer("pe_ips_dr_11");
    let handbook = Handbook::embedded();
    let mut compared = 0;
    for row in &handbook.pe_ips().unwrap().rows {
        // The stored series ends at 36 in.
        if inches(row.value.size.value) > 36.5 {
            continue;
        }
        compared += 1;
        let [_, outside, wall] = found(&series, row.value.size.value);
        let own = row.value.outside_diameter.value.value * 1e3;
        // The package holds thousandths of an inch in mm.
        assert!((own - outside).abs() < 0.0005 * 25.4, "{}: {own} and {outside}", row.key);
        // Its walls of DR 11 are rounded to a thousandth of an inch.
        assert!((own / 11.0 - wall).abs() < 0.001 * 25.4, "{}: {} and {wall}", row.key, own / 11.0);
    }
    assert_eq!(compared, 17);
}

/// The package holds the diameters of ASME B36.10M in whole or tenths of a millimetre.
#[test]
fn steel_sizes_agree() {
    let series = peer("steel_standard_wall");
    let handbook = Handbook::embedded();
    let rows = handbook.steel_pipe().unwrap();
    // The package ends at 48 in.
    let held = |row: &&Row<SizeOutsideRow>| row.key.starts_with("nps_") && inches(row.value.size.value) < 48.5;
    let named = rows.rows.iter().filter(held);
    let mut compared = 0;
    for row in named {
        let [_, outside, _] = found(&series, row.value.size.value);
        let own = row.value.outside_diameter.value.value * 1e3;
        assert!((own - outside).abs() < 0.5, "{}: {own} and {outside}", row.key);
        compared += 1;
    }
    assert_eq!(compared, 23);
}

#[test]
fn cast_iron_sizes_of_pvc_agree() {
    let series = [peer("pvc_c900"), peer("pvc_c905")].concat();
    let handbook = Handbook::embedded();
    let mut compared = 0;
    for row in &handbook.pvc_pipe().unwrap().rows {
        // The stored series of DR 18 end at 30 in.
        if inches(row.value.size.value) > 30.5 {
            continue;
        }
        let [_, outside, wall] = found(&series, row.value.size.value);
        let own = row.value.outside_diameter.value.value * 1e3;
        // The package holds tenths of a millimetre.
        assert!((own - outside).abs() <= 0.05 + 1e-9, "{}: {own} and {outside}", row.key);
        assert!((own / 18.0 - wall).abs() < 0.03, "{}: {} and {wall}", row.key, own / 18.0);
        compared += 1;
    }
    assert!(compared >= 10);
}

/// Mass over barrel volume is concrete: 2,453 to 2,477 kg/m3 on all fifteen rows (recomputed from the city data).
#[test]
fn concrete_pipe_weighs_what_its_barrel_does() {
    let handbook = Handbook::embedded();
    let rows = &handbook.concrete_pipe().unwrap().rows;
    assert_eq!(rows.len(), 15);
    for row in rows {
        let (size, wall) = (row.value.size.value.value, row.value.wall.value.value);
        let volume = PI * (size + wall) * wall * row.value.length.value.value;
        let density = row.value.mass.value.value / volume;
        assert!((2_452.5..2_477.5).contains(&density), "{}: {density}", row.key);
    }
}

/// Steel of 7.85 t/m3, masses printed to three figures.
#[test]
fn steel_casings_weigh_what_their_section_does() {
    let handbook = Handbook::embedded();
    for row in &handbook.steel_casing_pipe().unwrap().rows {
        let (outside, wall) = (row.value.outside_diameter.value.value, row.value.wall.value.value);
        let mass = PI * (outside - wall) * wall * 7_850.0;
        assert_relative_eq!(mass, row.value.mass_per_length.value.value, max_relative = 0.5 / 87.5);
    }
}
