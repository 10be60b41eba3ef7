//! The advice of a fault has an example of its field, in the units of the file.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::{Handbook, read_drive};

/// The example is one of the field, in the units of the file.
#[test]
fn the_example_is_one_of_the_field() {
    let told = |from: &str, to: &str| {
        let text = text(|text| text.edit(from, to));
        read_drive(&text, &Handbook::embedded()).unwrap_err().to_string()
    };
    let feet = |from: &str, to: &str| {
        let text = text(|text| text.edit("length: 60 m", "length: 200 ft # 60 m").edit(from, to));
        read_drive(&text, &Handbook::embedded()).unwrap_err().to_string()
    };
    for (from, to, si, us) in [
        ("invert_depth: 4.20 m", "invert_depth: 4.2", "4.2 m", "14 ft"),
        ("groundwater: 5.5 m", "groundwater: low", "4.2 m\", \"none\" or \"unknown", "14 ft\", \"none\" or \"unknown"),
        ("rig:", "tolerance: 25\nrig:", "25 mm", "1 in"),
        ("spt_n: 12", "spt_n: twelve", "12", "12"),
        ("sdr: 11", "sdr: eleven", "11", "11"),
        ("sdr: 11", "wall: thick", "12 mm", "0.5 in"),
        ("size: 10 in", "size: 10", "300 mm", "12 in"),
        ("size: 10 in", "size: 10 in, weight: heavy", "1.2 kN/m", "80 lbf/ft"),
        ("rig:", "weights: [{ criterion: grade, weight: much }]\nrig:", "3", "3"),
        ("thrust: 900 kN", "thrust: 900 kPa", "900 kN", "100 tonf_us"),
        ("25 degC", "25", "25 degC", "77 degF"),
        // Found when values are put together.
        ("size: 10 in", "size: 10 in, casing: -1 mm", "450 mm", "18 in"),
        ("spt_n: 12", "spt_n: -12", "12", "12"),
    ] {
        for (message, wanted) in [(told(from, to), si), (feet(from, to), us)] {
            let in_the_unit_of_the_value = to.contains("-1 mm");
            let wanted = if in_the_unit_of_the_value { si } else { wanted };
            assert!(message.contains(&format!("(write for example \"{wanted}\"")), "{to}, {wanted}: {message}");
        }
    }
}

/// What was meant is no example, though it be written like one.
#[test]
fn a_writing_that_is_told_is_left_as_it_is() {
    let text = text(|text| text.edit("length: 60 m", "length: 300\'"));
    let told = read_drive(&text, &Handbook::embedded()).unwrap_err().to_string();
    assert!(told.contains("(write \"300 ft\") at line 2"), "{told}");
}
