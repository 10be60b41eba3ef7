//! The sentence that says why.

use crate::drives::{MAIN_PE, drive, main, sewer};
use crate::edit::Edit;
use jackpull::{Standing, choose};

/// The first scheme's standing, and the sentence.
fn reason(text: &str) -> (Standing, String) {
    let choice = choose(&drive(text)).unwrap();
    (choice.ranked[0].standing, choice.reason)
}

/// A first scheme that asks for care says where and why; one that fits has nothing to say.
#[test]
fn what_asks_for_care_is_named() {
    let (standing, sentence) = reason(&main(|text| text));
    assert_eq!(standing, Standing::WithCare);
    assert!(sentence.contains("; subject to: pipe, pressure in service and 8 more; "), "{sentence}");
    // That the bore stands is the log's word, which has yet to say so.
    assert!(sentence.contains("; find out: the bore is assumed to stand open"), "{sentence}");
    let (standing, sentence) = reason(&sewer(|text| text));
    assert_eq!(standing, Standing::Fits, "{sentence}");
    assert!(
        !["subject to", "find out", "conditions", "high end over", "beyond usual practice"]
            .iter()
            .any(|care| sentence.contains(care))
    );
}

/// A first scheme that is open says what to write, one that is barred what is in the way, each cause once.
#[test]
fn what_is_in_the_way_is_named() {
    let (standing, sentence) = reason(&sewer(|text| {
        text.edit("firm_to_very_stiff_clay", "gravel").edit(", spt_n: 14", "").edit(", largest_stone: 20 mm", "")
    }));
    assert_eq!(standing, Standing::Open, "{sentence}");
    assert!(sentence.contains("could fit") && sentence.contains("; write "), "{sentence}");
    let (standing, sentence) =
        reason(&sewer(|text| text.edit("900 kN", "80 kN").edit("rig:", "pilot: displacement\nrig:")));
    assert_eq!(standing, Standing::Barred, "{sentence}");
    assert_eq!(sentence.matches("thrust, pipe").count(), 1, "{sentence}");
}

/// A lead below half a point is none, and no claim of equality either.
#[test]
fn scores_close_together_are_about_the_same() {
    let twin = "  - { material: pe100, size: 180 mm, wall: 16.4 mm }\n";
    let (_, sentence) = reason(&main(|text| text.edit(MAIN_PE, &format!("{MAIN_PE}{twin}"))));
    assert!(sentence.ends_with("pullback of PE100 180 mm, wall ratio 11.0 scores about the same"), "{sentence}");
}
