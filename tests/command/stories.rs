//! The drives of `examples` come out as the comment at their top tells it.

use crate::edit::Edit;
use crate::run::{SEWER, example, file, jackpull, stdout};

/// The first paragraph of the page, and the exit code.
fn says(name: &str) -> (String, Option<i32>) {
    let output = jackpull(&["assess", &example(name)]);
    let page = stdout(&output);
    let (first, _) = page.split_once("\n\n").unwrap();
    (first.replace('\n', " "), output.status.code())
}

#[test]
fn each_drive_comes_out_as_its_story_tells() {
    for (name, story, code) in [
        ("mill_lane", "PIPE JACKING, clay 10 in: fits; governed by invert, line and grade at 0.85", 0),
        (
            "kiln_bank",
            "PIPE JACKING, polymer concrete 400 mm: fits with care; governed by settlement, surface at 0.89",
            0,
        ),
        (
            "quarry_road",
            "PULLBACK, PE4710 IPS 8 in DR 11: fits with care; governed by bore fluid, break-out at 0.61",
            0,
        ),
        (
            "sallow_junction",
            "PIPE JACKING, steel 24 in, wall 0.5 in: fits with care; governed by slope, surface at 0.79",
            0,
        ),
        ("tarn_head", "PIPE JACKING, clay 10 in: fits with care; governed by invert, line and grade at 0.67", 0),
        ("osier_road", "NO SCHEME FITS; closest: pipe jacking of clay 10 in, barred by pipe end, jacking force", 1),
    ] {
        let (first, exit) = says(&format!("fennbridge_{name}.yaml"));
        assert!(first.starts_with(story), "{name}: {first}");
        assert_eq!(exit, Some(code), "{name}");
    }
}

/// What the hand calculations beside the drives come to, in the line of the check.
#[test]
fn hand_calculations_meet_the_checks() {
    for (name, check, numbers) in [
        ("mill_lane", "invert, line and grade", "25 mm 30 mm"),
        ("kiln_bank", "settlement, surface", "11.6 mm 13.0 mm"),
        ("quarry_road", "bore fluid, break-out", "2.4 psi 3.9 psi"),
        ("sallow_junction", "slope, surface", "0.158 % 0.200 %"),
        ("tarn_head", "invert, line and grade", "20 mm 30 mm"),
        ("osier_road", "pipe end, jacking force", "236.4 kip 300.0 kip 81.8 kip"),
    ] {
        let page = stdout(&jackpull(&["assess", &example(&format!("fennbridge_{name}.yaml"))]));
        let line = page.lines().find(|line| line.starts_with(&format!("{check}  "))).unwrap();
        let line = line.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(line.contains(numbers), "{name}: {line}");
    }
}

/// The page that the README shows is the page.
#[test]
fn the_readme_shows_the_page() {
    let readme = include_str!("../../README.md");
    let (_, block) = readme.split_once("```text\n").unwrap();
    let (shown, _) = block.split_once("```").unwrap();
    let page = stdout(&jackpull(&["assess", &example("fennbridge_mill_lane.yaml")]));
    assert!(page.starts_with(shown), "{page}");
}

/// Words that the guide sets in italics begin a line of some page.
#[test]
fn the_guide_names_what_stands_on_the_pages() {
    let mut texts: Vec<String> = vec![SEWER.edit(", largest_stone: 20 mm", "")];
    let names = ["mill_lane", "quarry_road"].map(|name| example(&format!("fennbridge_{name}.yaml")));
    texts.extend(names.map(|path| std::fs::read_to_string(path).unwrap()));
    let pages: Vec<String> = texts
        .iter()
        .enumerate()
        .map(|(place, text)| stdout(&jackpull(&["assess", &file(&format!("guide_{place}.yaml"), text.as_bytes())])))
        .collect();
    let mut named = 0;
    for page in ["evidence", "files", "jacking", "pullback", "report"] {
        let path = format!("{}/src/guide/{page}.md", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(path).unwrap();
        // Neither code nor what is set in bold.
        let plain: String = text.split('`').step_by(2).collect();
        let plain: String = plain.split("**").step_by(2).collect();
        let is_name = |word: &&str| {
            word.starts_with(|first: char| first.is_ascii_uppercase())
                && word.chars().all(|c| c.is_ascii_alphabetic() || c == ' ')
        };
        for word in plain.split('*').filter(is_name) {
            named += 1;
            let stands = pages.iter().any(|page| page.lines().any(|line| line.starts_with(word)));
            assert!(stands, "{page}: {word}");
        }
    }
    assert!(named >= 9, "{named}");
}
