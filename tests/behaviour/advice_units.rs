//! Advice is in the units of the file.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::{Handbook, read_drive};

/// What is told of a file with a change, its length in feet.
fn told(from: &str, to: &str) -> String {
    let text = text(|text| text.edit("length: 60 m", "length: 196.85039370078741 ft").edit(from, to));
    match read_drive(&text, &Handbook::embedded()) {
        Err(error) => error.to_string(),
        Ok(_) => panic!("taken: {text}"),
    }
}

#[test]
fn a_value_that_is_advised_is_in_the_units_of_the_file() {
    let steering = "steering: { wave_amplitude: 0.5 in }\nrig:";
    for (from, to, advice) in [
        ("rig:", steering, "(add `half_wave: 30 ft`)"),
        ("size: 10 in", "size: 10 in, casing: 20 in, casing_free_length: 6 ft", "(add `casing_wall: 0.5 in`)"),
        ("pull: 500 kN", "pull: 500 kN, efficiency: 0.9", "(add `cylinder_area: 90 in2`)"),
    ] {
        let message = told(from, to);
        assert!(message.contains(advice), "{advice}: {message}");
    }
    // In metres it stays as it is.
    let text = text(|text| text.edit("size: 10 in", "size: 10 in, casing: 508 mm, casing_free_length: 2 m"));
    let message = read_drive(&text, &Handbook::embedded()).unwrap_err().to_string();
    assert!(message.contains("(add `casing_wall: 10 mm`)"), "{message}");
}
