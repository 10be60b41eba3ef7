//! How long and how deep a drive the door takes, and that a fault of the length is not told of everything along it.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::{Handbook, InputError, read_drive};

/// The faults of the shared file with each text in place of the other.
fn faults(changes: &[(&str, &str)]) -> Vec<String> {
    let text = text(|text| changes.iter().fold(text, |text, (from, to)| text.edit(from, to)));
    match read_drive(&text, &Handbook::embedded()) {
        Err(InputError::Faults(faults)) => faults.iter().map(ToString::to_string).collect(),
        Err(error) => panic!("{error}"),
        Ok(_) => Vec::new(),
    }
}

#[test]
fn a_drive_too_long_or_too_deep_is_a_slip() {
    let level = ("invert_depth: 3.96 m", "invert_depth: 59 m");
    for (changes, wanted) in [
        (
            vec![("4.20 m", "420 m"), level],
            "launch.invert_depth: expected a length from 0.30 m to 60.00 m, got 420.00 m",
        ),
        (
            vec![("4.20 m", "1400 ft"), level],
            "launch.invert_depth: expected a length from 1.0 ft to 196.9 ft, got 1400.0 ft",
        ),
        (
            vec![("3.96 m", "60.1 m"), ("4.20 m", "60 m")],
            "reception.invert_depth: expected a length from 0.30 m to 60.00 m",
        ),
        (
            vec![("groundwater:", "grade: 0 %\ndepths: [{ at: 30 m, invert_depth: 80 m }]\ngroundwater:")],
            "depths[0].invert_depth: expected a length from 0.30 m to 60.00 m, got 80.00 m",
        ),
        (vec![("length: 60 m", "length: 2601 m")], "length: expected a length from 3.0 m to 2600.0 m, got 2601.0 m"),
        (
            vec![("length: 60 m", "length: 60 m\nline: { length: 1e308 m }")],
            "line.length: expected a length of at most 100000.0 m",
        ),
        (
            vec![("reception: { invert_depth: 3.96 m }", "grade: -30 %"), ("4.20 m", "50 m")],
            "grade: with this grade the reception pit is 68.00 m deep, more than 60.00 m",
        ),
    ] {
        let found = faults(&changes);
        assert!(found.len() == 1 && found[0].starts_with(wanted), "{wanted}: {found:?}");
    }
    assert_eq!(faults(&[("4.20 m", "60 m"), ("3.96 m", "60 m")]), [""; 0]);
}

/// One slip, one fault.
#[test]
fn a_fault_is_told_once() {
    let pipe = "size: 315 mm, sdr: 11";
    for (changes, wanted) in [
        (vec![("length: 60 m", "length: -60 m")], "length: expected a length above zero, got -60.0 m"),
        (vec![("length: 60 m", "length: 0 ft")], "length: expected a length above zero, got 0 ft"),
        (vec![("length: 60 m", "length: 1e308 m")], "length: expected a length from 3.0 m to 2600.0 m"),
        (vec![("length: 60 m", "length: 3 m"), ("metered\n", "metered\nline: { length: 400 m }\n")], ""),
        (
            vec![
                ("length: 60 m", "length: 0 m"),
                ("metered\n", "metered\nstops: [{ at: 50 m }]\nline: { length: 400 m }\n"),
            ],
            "length: expected a length above zero",
        ),
        (vec![("spt_n: 12", "spt_n: -3")], "ground[0].spt_n: expected a plain number or a percentage of zero or more"),
        (vec![("size: 10 in", "size: -10 in")], "candidates[0].size: expected a length above zero, got -10.00 in"),
        (
            vec![(pipe, "size: 315 mm, sdr: 12.3")],
            "candidates[1].sdr: no ISO 4427 pipe of 315 mm SDR 12.3 in the table (there are 6, 7.4, 9, 11, 13.6, 17, 21, 26, 33, 41; for another give wall)",
        ),
        (
            vec![(pipe, "size: 316 mm, sdr: 11")],
            "candidates[1].size: no ISO 4427 pipe of 316 mm in the table (there are ",
        ),
        (
            vec![(pipe, "size: 315 mm, sdr: 99")],
            "candidates[1].sdr: expected a plain number or a percentage from 5 to 50, got 99",
        ),
        (vec![("length: 60 m", "length:")], "length: expected a length, got nothing (write for example "),
        (vec![("service: gravity_sewer", "service: ~")], "service: expected a service, got nothing (write one of: "),
        (
            vec![("spt_n: 12", "unit_friction: { low: 5 kPa, likely: -8 kPa, high: 20 kPa }")],
            "ground[0].unit_friction.likely: expected a pressure or stress of zero or more",
        ),
    ] {
        let found = faults(&changes);
        if wanted.is_empty() {
            assert!(found.len() > 1, "a length that is read is held against the ground: {found:?}");
        } else {
            assert!(found.len() == 1 && found[0].starts_with(wanted), "{wanted}: {found:?}");
        }
    }
}
