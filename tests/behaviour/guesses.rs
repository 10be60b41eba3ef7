//! What the door guesses was meant: the word of the trade, never one that turns the ground about.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::{Handbook, read_drive};

/// The message for one value in place of another.
fn told(from: &str, to: &str) -> String {
    let text = text(|text| text.edit(from, to));
    read_drive(&text, &Handbook::embedded()).unwrap_err().to_string()
}

#[test]
fn a_near_word_is_named() {
    let class = ("class: firm_to_very_stiff_clay", "class: ");
    let material = ("material: clay", "material: ");
    for ((from, key), read, guess) in [
        (class, "stiff clay", "\"firm_to_very_stiff_clay\""),
        (class, "Stiff-Clay", "\"firm_to_very_stiff_clay\""),
        (class, "firm clay", "\"firm_to_very_stiff_clay\""),
        (class, "dense sand", "\"medium_to_dense_sand\""),
        (class, "Soft Clay", "\"soft_clay\""),
        (class, "soft_caly", "\"soft_clay\""),
        (class, "slit", "\"silt\""),
        (class, "sand", "\"loose_sand\" or \"medium_to_dense_sand\""),
        (class, "till", "\"firm_to_very_stiff_clay\" or \"hard_clay\""),
        (("service: gravity_sewer", "service: "), "water main", "\"pressure_main\""),
        (("service: gravity_sewer", "service: "), "sewer", "\"gravity_sewer\""),
        (("lubrication: metered", "lubrication: "), "bentonite", "\"not_metered\" or \"metered\""),
        (("lubrication: metered", "lubrication: "), "true", "\"not_metered\" or \"metered\""),
        (material, "vitrified clay", "\"clay\""),
        (material, "PE 100", "\"pe100\""),
        (material, "HDPE 100", "\"pe100\""),
        (material, "ductile iron", "\"ductile_iron\""),
        (
            ("material: clay, size: 10 in", "material: steel, size: 10 in, wall: 8 mm, steel_grade: "),
            "X42",
            "\"api_5l_x42\"",
        ),
        (
            ("material: clay, size: 10 in", "material: steel, size: 10 in, casing: 400 mm, wall: 8 mm, steel_grade: "),
            "x42",
            "\"api_5l_x42\"",
        ),
    ] {
        let message = told(from, &format!("{key}{read}"));
        assert!(message.contains(&format!("(did you mean {guess}? ")), "{read}: {message}");
    }
}

/// Half a name is no name: what it says besides would be lost.
#[test]
fn a_word_of_another_ground_is_no_guess() {
    for read in
        ["soft sand", "hard silt", "stiff sand", "loose clay", "blue clay", "very soft clay", "soft rock", "marl"]
    {
        let message = told("class: firm_to_very_stiff_clay", &format!("class: {read}"));
        assert!(message.contains("expected a ground class") && !message.contains("did you mean"), "{read}: {message}");
    }
}

/// Keys go by the same guess.
#[test]
fn a_near_key_is_named() {
    for (from, to, guess) in [
        ("length: 60 m", "lenght: 60 m", "length"),
        ("lubrication: metered", "lubricant: metered", "lubrication"),
        ("invert_depth: 4.20 m", "invert: 4.20 m", "invert_depth"),
        ("rig: {", "Rig: {", "rig"),
        ("pipe_temperature: 25", "pipe temperature: 25", "pipe_temperature"),
    ] {
        let message = told(from, to);
        assert!(message.contains(&format!("did you mean \"{guess}\"? ")), "{to}: {message}");
    }
}
