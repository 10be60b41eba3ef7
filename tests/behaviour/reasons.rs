//! The sentence that says why.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::{Standing, choose};

const CLAY: &str = "  - { material: clay, size: 10 in }\n";
const PE: &str = "  - { material: pe100, size: 315 mm, sdr: 11 }\n";

fn reason(change: impl FnOnce(String) -> String) -> (Standing, String) {
    let choice = choose(&drive(&text(change))).unwrap();
    (choice.ranked[0].standing, choice.reason)
}

/// A first scheme that asks for care says where.
#[test]
fn what_asks_for_care_is_named() {
    let wide = |text: String| text.edit("rig:", "tolerance: 30 mm\nrig:");
    let (standing, sentence) = reason(|text| wide(text).edit(CLAY, ""));
    assert_eq!(standing, Standing::WithCare);
    // Pilot 25.4 mm and half the bore of 315 mm, 157.5 mm, against 30 mm.
    assert!(sentence.contains("; with care: "), "{sentence}");
    assert!(sentence.contains("invert, line and grade at 6.10"), "{sentence}");
    let (standing, sentence) = reason(|text| {
        wide(text).edit("silt", "firm_to_very_stiff_clay").edit("medium_to_dense_sand", "firm_to_very_stiff_clay")
    });
    assert_eq!(standing, Standing::Fits, "{sentence}");
    assert!(!sentence.contains("; with care"), "{sentence}");
}

/// A lead below half a point is none, and no claim of equality either.
#[test]
fn scores_close_together_are_about_the_same() {
    let twin = "  - { material: pe100, size: 315 mm, wall: 28.6 mm }\n";
    let (_, sentence) = reason(|text| text.edit(CLAY, "").edit(PE, &format!("{PE}{twin}")));
    assert!(sentence.ends_with("pullback of PE100 315 mm, wall ratio 11.0 scores about the same"), "{sentence}");
}
