//! Pipes of one kind and size that differ in what is given of them.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::{Handbook, InputError, read_drive};

const CLAY: &str = "  - { material: clay, size: 10 in }\n";
const PE: &str = "  - { material: pe100, size: 315 mm, sdr: 11 }\n";

fn with(clay: &[&str], pe: &[&str]) -> String {
    let list = |line: &str, more: &[&str]| -> String {
        more.iter().map(|more| line.edit(" }", &format!("{more} }}"))).collect()
    };
    text(|text| text.edit(CLAY, &list(CLAY, clay)).edit(PE, &list(PE, pe)))
}

#[test]
fn variants_of_one_pipe_are_told_apart() {
    let text = with(
        &[
            "",
            ", certificate: en_295_7",
            ", casing: 16 in",
            ", casing: 18 in, factor: 3.5",
            ", casing: 18 in, casing_wall: 8 mm",
            ", casing: 18 in, casing_wall: 8 mm, casing_free_length: 3 m, casing_joint_thrust: 900 kN",
        ],
        &[
            "",
            ", bore: 500 mm",
            ", bore: 500 mm, ovality: 4 %",
            ", bore: 500.1 mm, passes: [300 mm, 400 mm]",
            ", outside_diameter: 316 mm",
        ],
    );
    let drive = drive(&text);
    let labels: Vec<&str> = drive.candidates().iter().map(|pipe| pipe.label()).collect();
    let expected = [
        "clay 10 in",
        "clay 10 in, certificate en_295_7",
        "clay 10 in, casing 16 in",
        "clay 10 in, factor 3.5, casing 18 in",
        "clay 10 in, casing 18 in, casing wall 8 mm",
        "clay 10 in, casing 18 in, casing wall 8 mm, casing free 3.0 m, casing joint 900.0 kN",
        "PE100 315 mm SDR 11",
        "PE100 315 mm SDR 11, bore 500 mm",
        "PE100 315 mm SDR 11, ovality 4.00 %, bore 500 mm",
        "PE100 315 mm SDR 11, bore 500.1 mm, passes 300 mm and 400 mm",
        "PE100 315 mm SDR 11, OD 316 mm",
    ];
    assert_eq!(labels, expected);
}

/// A size is told in inches where it is one; a strength in the units of the file.
#[test]
fn strengths_are_told_in_the_units_of_the_file() {
    let file = with(&["", ", crushing: 5 kN/m"], &[""]);
    let second = |file: &str| drive(file).candidates()[1].label().to_owned();
    assert_eq!(second(&file), "clay 10 in, crushing 5.000 kN/m");
    let feet = file.edit("length: 60 m", "length: 196.85 ft").edit("to: 60 m,", "to: 196.85 ft,");
    assert_eq!(second(&feet), "clay 10 in, crushing 342.6 lbf/ft");
}

/// What all have alike is not repeated, and what rounds to the same text is told apart by its place.
#[test]
fn names_are_no_longer_than_needed() {
    let text = with(
        &[", certificate: en_295_7, factor: 3.5", ", certificate: en_295_7"],
        &[", bore: 500 mm", ", bore: 500.001 mm", ", series: iso, bore: 500 mm"],
    );
    let drive = drive(&text);
    let labels: Vec<&str> = drive.candidates().iter().map(|pipe| pipe.label()).collect();
    let expected = [
        "clay 10 in, factor 3.5",
        "clay 10 in",
        "PE100 315 mm SDR 11",
        "PE100 315 mm SDR 11, candidates[3]",
        "PE100 315 mm SDR 11, candidates[4]",
    ];
    assert_eq!(labels, expected);
}

/// The same pipe twice is a slip, in whatever units; the place is that of the second, also after a faulty one.
#[test]
fn the_same_pipe_twice_is_refused() {
    let text = with(&[", certificate: wrong", "", ", factor: 3.5"], &["", ", bore: 500 mm", ", bore: 0.5 m"]);
    let text = text.edit("certificate: wrong", "outside_diameter: 1 m");
    let Err(InputError::Faults(faults)) = read_drive(&text, &Handbook::embedded()) else { panic!("taken") };
    let found: Vec<String> = faults.iter().map(ToString::to_string).collect();
    assert_eq!(found.len(), 2, "{found:?}");
    assert!(found[0].starts_with("candidates[0].end_bearing_area: "), "{found:?}");
    let twice = "candidates[5]: PE100 315 mm SDR 11 is among the candidates twice at line 21";
    assert!(found[1].starts_with(twice), "{found:?}");
}
