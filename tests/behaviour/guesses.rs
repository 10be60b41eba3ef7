//! What the door guesses was meant: the word of the trade, never one that turns the ground about.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::{Handbook, read_drive};

/// The message for one value in place of another.
fn told(from: &str, to: &str) -> String {
    let text = text(|text| text.edit(from, to));
    read_drive(&text, &Handbook::embedded()).unwrap_err().to_string()
}

const CLASS: (&str, &str) = ("class: firm_to_very_stiff_clay", "class: ");

#[test]
fn a_near_word_is_named() {
    let material = ("material: clay", "material: ");
    let steel = "material: steel, size: 10 in, wall: 8 mm, steel_grade: ";
    let clays = "\"soft_clay\" or \"firm_to_very_stiff_clay\" or \"hard_clay\"";
    for ((from, key), read, guess) in [
        (CLASS, "soft_caly", "\"soft_clay\""),
        (CLASS, "slit", "\"silt\""),
        (CLASS, "sand", "\"loose_sand\" or \"medium_to_dense_sand\""),
        (CLASS, "silty sand", "\"loose_sand\" or \"medium_to_dense_sand\""),
        (CLASS, "soft sand", "\"loose_sand\" or \"medium_to_dense_sand\""),
        (CLASS, "till", "\"firm_to_very_stiff_clay\" or \"hard_clay\""),
        (CLASS, "London clay", clays),
        (CLASS, "gumbo", clays),
        (CLASS, "river gravel", "\"gravel\""),
        (CLASS, "marl", "\"weak_rock\" or \"hard_clay\" or \"firm_to_very_stiff_clay\""),
        (("lubrication: metered", "lubrication: "), "bentonite", "\"not_metered\" or \"metered\""),
        (("lubrication: metered", "lubrication: "), "true", "\"not_metered\" or \"metered\""),
        (material, "vitrifed clay", "\"clay\""),
        (("material: clay, size: 10 in", steel), "api_5l_x43", "\"api_5l_x42\""),
    ] {
        let message = told(from, &format!("{key}{read}"));
        assert!(message.contains(&format!("(did you mean {guess}? ")), "{read}: {message}");
    }
}

/// A word of the trade that stands for one key alone, the key written otherwise, or as many of its words as no other key
/// has, is read as that key: the file is then as good as with it.
#[test]
fn a_word_that_can_mean_one_key_alone_is_read() {
    for ((from, key), read, word) in [
        (CLASS, "stiff clay", "firm_to_very_stiff_clay"),
        (CLASS, "Firm-Clay", "firm_to_very_stiff_clay"),
        (CLASS, "dense sand", "medium_to_dense_sand"),
        (CLASS, "shale", "weak_rock"),
        (CLASS, "made ground", "fill"),
        (("service: gravity_sewer", "service: "), "Gravity Sewer", "gravity_sewer"),
        (("service: gravity_sewer", "service: "), "sewer", "gravity_sewer"),
        (("material: clay", "material: "), "VCP", "clay"),
        (("size: 10 in", "size: "), "NPS 10", "10 in"),
        (("size: 10 in", "size: "), "dn254", "254 mm"),
        (("groundwater: 5.5 m", "groundwater: "), "not encountered", "none"),
    ] {
        let with = |word: &str| {
            let text = text(|text| text.edit(from, &format!("{key}{word}")));
            let drive = read_drive(&text, &Handbook::embedded());
            format!("{:?}", drive.map(|drive| drive.assumed().to_vec()).map_err(|error| error.to_string()))
        };
        let said = with(read);
        assert_eq!(said, with(word), "{read}");
        assert!(!said.contains("expected"), "{said}");
    }
}

/// Half a name is no name: what it says besides would be lost.
#[test]
fn a_word_of_another_ground_is_never_read() {
    for read in ["soft sand", "hard silt", "stiff sand", "loose clay", "blue clay", "hard", "dense", "stiff"] {
        let message = told(CLASS.0, &format!("class: {read}"));
        assert!(message.contains("expected a ground class"), "{read}: {message}");
    }
}

/// A value in place of a block: the block as it begins, in the units of the file.
#[test]
fn a_block_is_shown_as_it_begins() {
    for (from, to, begun) in [
        ("rig: { thrust: 900 kN, pull: 500 kN }", "rig: 900 kN", "`{ thrust: 900 kN, pull: 900 kN }`"),
        ("launch: { invert_depth: 4.20 m }", "launch: 4.20 m", "`{ invert_depth: 4.2 m }`"),
        ("service: gravity_sewer", "service: gravity_sewer\nsurface: street", "`{ over: open,"),
    ] {
        let message = told(from, to);
        assert!(message.contains(begun), "{message}");
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
