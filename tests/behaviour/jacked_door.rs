//! The input door for jacked pipe: what is missing, and what is out of place.

use crate::edit::Edit;
use crate::jacked::{AREA, CONCRETE, PACKER, text};
use jackpull::{Handbook, InputError, read_drive};

pub(crate) fn faults(text: &str) -> Vec<String> {
    match read_drive(text, &Handbook::embedded()) {
        Err(InputError::Faults(faults)) => faults.iter().map(ToString::to_string).collect(),
        Err(error) => panic!("{error}"),
        Ok(_) => panic!("taken:\n{text}"),
    }
}

/// Every fault of a jacked pipe, with its field.
#[test]
fn what_is_missing_or_out_of_place_is_told() {
    let pipe = format!("{CONCRETE}, {AREA}");
    let cases: &[(&str, &str, &str)] = &[
        ("", &pipe.edit("0.25 m2", "0.4 m2"), "candidates[0].end_bearing_area: is larger than the section"),
        ("", &format!("{pipe}, wall: 80 mm"), "candidates[0].inside_diameter: contradicts outside diameter and wall"),
        (
            "",
            &format!("{}, {PACKER}", pipe.edit("0.25", "0.26")),
            "candidates[0].end_bearing_area: is larger than the ring of the packer",
        ),
        ("", &format!("{pipe}, cube_strength: 40 MPa"), "candidates[0].strength: is more than the strength on cubes"),
        ("", &format!("{pipe}, scheme: cn_annex_e"), "candidates[0].scheme: lacks the strength that it works with"),
        ("", &format!("{pipe}, scheme: jswas_a6"), "candidates[0].scheme: lacks the strength that it works with"),
        ("", &format!("{pipe}, concrete_grade: b9"), "candidates[0].concrete_grade: no grade of concrete \"b9\""),
        (
            "",
            &format!("{pipe}, cube_strength: 54 MPa, design_strength: 32.5 MPa"),
            "candidates[0].design_strength: 32.50 MPa is no design strength of this class",
        ),
        ("", &format!("{pipe}, design_strength: 23 MPa"), "candidates[0].design_strength: cannot be derived from"),
        ("", &format!("{pipe}, factor: 3"), "candidates[0].factor: does not apply to concrete pipe"),
        ("", &format!("{pipe}, sdr: 11"), "candidates[0].sdr: does not apply to concrete pipe"),
        ("", &format!("{pipe}, yield_strength: 240 MPa"), "candidates[0].yield_strength: is for steel pipe"),
        (
            "",
            &format!("{CONCRETE}, {PACKER}, joint_stress_ratio: 0.4"),
            "candidates[0].joint_stress_ratio: follows from the packer",
        ),
        (
            "",
            &format!("{CONCRETE}, packer: {{ thickness: 15 mm, outside_diameter: 1.3 m, inside_diameter: 1 m }}"),
            "candidates[0].packer.outside_diameter: is wider than the pipe",
        ),
        (
            "",
            "material: concrete, size: 1001 mm, strength: 50 MPa",
            "candidates[0].size: no concrete jacking pipe of 1001 mm",
        ),
        (
            "",
            "material: grp, size: 600 mm, strength: 80 MPa",
            "candidates[0].size: the diameters of GRP jacking pipe of 600 mm are its maker's",
        ),
        (
            "",
            "material: steel, size: 24 in, outside_diameter: 24 in",
            "candidates[0].wall: the wall of the steel pipe is missing",
        ),
        (
            "",
            "material: steel, size: 812.8 mm, steel_grade: x99",
            "candidates[0].steel_grade: no yield strength of the grade \"x99\"",
        ),
        ("", "material: steel, size: 812.8 mm, scheme: en_1916", "candidates[0].scheme: is for concrete pipe"),
        ("", "material: steel, size: 812.8 mm, factor: 1.5", "candidates[0].factor: expected a number from 2 to 20"),
        ("", "material: clay, size: 15 in, strength: 90 MPa", "candidates[0].strength: does not apply to clay pipe"),
        (
            "steering: { deviation: 3 mm }",
            "material: grp, size: 600 mm, outside_diameter: 616 mm, wall: 40 mm, end_bearing_area: 0.05 m2, strength: 80 MPa",
            "candidates[0].pipe_length: the length of one pipe is missing",
        ),
        ("steering: { wave_amplitude: 3 mm }", &pipe, "steering.wave_amplitude: says nothing without the length"),
        ("steering: { half_wave: 3 m }", &pipe, "steering.half_wave: says nothing without the amplitude"),
        (
            "steering: { joint_angle: 50 deg }",
            &pipe,
            "steering.joint_angle: expected an angle from 0.000 deg to 5.000 deg, got 50.000 deg",
        ),
        ("steering: { curve_radius: 0 m }", &pipe, "steering.curve_radius: expected a length above zero"),
    ];
    for (steering, candidate, expected) in cases {
        let found = faults(&text(steering, &[candidate]));
        assert!(found.iter().any(|fault| fault.starts_with(expected)), "{expected}: {found:?}");
    }
    // A fault of the steering is told once, however many pipes there are.
    let two = text("steering: { curve_radius: 0 m }", &[&pipe, &pipe.edit("50 MPa", "60 MPa")]);
    assert_eq!(faults(&two).len(), 1);
}
