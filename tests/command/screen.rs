//! `screen`: what a few facts say.

use crate::run::{file, jackpull, stderr, stdout};
use serde_json::Value;

const FACTS: [&str; 7] = ["screen", "--pipe", "clay 10 in", "--length", "300ft", "--soil", "stiff clay"];

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn screened(more: &[&str]) -> String {
    let output = jackpull(&[&FACTS[..], more].concat());
    assert!(stderr(&output).is_empty(), "{}", stderr(&output));
    flat(&stdout(&output))
}

/// Four facts are enough for both methods, and nothing is chosen of them, whatever the pipe, the ground and the words.
#[test]
fn four_facts_choose_nothing() {
    let page = screened(&[]);
    assert!(page.starts_with("NOT DECIDED: pipe jacking of clay 10 in could fit"), "{page}");
    for part in [
        "Pipe jacking of clay 10 in: not decided, could fit with care. ",
        "Pullback of clay 10 in: barred. ",
        "Against Clay pipe has push-on joints that carry no pull",
        "grade 1 %, service gravity_sewer, lubrication metered, pull.rate 30 ft/h",
        "invert 10.0 ft deep, no water; invert 20.0 ft deep, no water; invert 10.0 ft deep, water 3.0 ft down",
        "launch pit, length",
        "ground[].largest_stone: ",
    ] {
        assert!(page.contains(part), "{part}\n{page}");
    }
    // A concrete pipe of which only its maker knows the force is asked for it, and not refused.
    for (pipe, soil, service, asked) in [
        ("RCP 24 in", "medium dense sand", "sewer", "candidates[].rated_force: "),
        ("PE100 dn 315 SDR11", "firm clay", "main", "room to lay out a string of 80.0 m"),
        ("steel 24 in, wall 12.7 mm, grade a139_b", "gravel", "casing", "a rig of at least "),
        ("vitrified clay 12\"", "made ground", "storm sewer", "pipe end, jacking force "),
        ("PE4710 12 inch DR 11", "Hard Rock", "pressure main", "to leave beyond the pits "),
    ] {
        let more = ["--pipe", pipe, "--length", "80 m", "--soil", soil, "--service", service, "--depth", "4 m"];
        let output = jackpull(&[&["screen"], &more[..]].concat());
        let page = flat(&stdout(&output));
        assert!(
            page.starts_with("NOT DECIDED: ") || page.starts_with("NO SCHEME FITS"),
            "{pipe}: {page}{}",
            stderr(&output)
        );
        assert!(page.contains(asked), "{pipe}: {page}");
        assert_eq!(output.status.code(), Some(0), "{pipe}");
    }
}

/// Material and size in either order, in the words of the trade; a long drive is flatter where nobody tells the grade, and
/// steel of no grade is the weakest.
#[test]
fn words_of_the_trade_are_understood() {
    let said = |pipe: &str| {
        let output = jackpull(&["screen", "--pipe", pipe, "--length", "300 ft", "--soil", "stiff clay"]);
        assert!(stderr(&output).is_empty(), "{pipe}: {}", stderr(&output));
        flat(&stdout(&output))
    };
    let plain = said("clay 10 in");
    for pipe in ["10 in clay", "10 in VCP", "10\" VCP", "10-inch clay pipe", "VCP jacking pipe 10 in"] {
        assert_eq!(said(pipe), plain, "{pipe}");
    }
    assert_eq!(said("DN 300 clay"), said("clay DN300"));
    assert_eq!(said("C900 PVC 8 in DR 18"), said("PVC 8 in DR 18"));
    assert_eq!(said("fusible PVC 8 in DR 18"), said("PVC_fused 8 in DR 18"));
    let casing = said("steel casing 24 in wall 0.5 in");
    assert!(casing.contains("service casing, steel_grade a139_a, lubrication metered"), "{casing}");
    assert_eq!(said("24 in steel casing wall 0.5 in"), casing);
    // Half of 3 m over 290 m is 0.517 %, half of 10 ft over 900 ft 0.556 %.
    for (length, grade) in [("290 m", "grade 0.51 %"), ("900 ft", "grade 0.55 %"), ("300 ft", "grade 1 %")] {
        let output = jackpull(&["screen", "--pipe", "clay 10 in", "--length", length, "--soil", "stiff clay"]);
        let page = flat(&stdout(&output));
        assert!(page.contains(grade), "{page}");
    }
}

/// The least rig is the high force over the 80 % of its rating that jacks are planned with; the force is that of the same
/// drive, assessed.
#[test]
fn the_least_rig_is_told() {
    let drive = "service: gravity_sewer
length: 300 ft
launch: { invert_depth: 10 ft }
grade: 1 %
groundwater: none
lubrication: metered
ground: [{ class: firm_to_very_stiff_clay }]
rig: { thrust: 8000 kN, pull: 8000 kN }
pull: { rate: 30 ft/h, pipe_temperature: 77 degF }
candidates: [{ material: clay, size: 10 in }]
";
    let assessed = jackpull(&["assess", "--format", "json", &file("screened.yaml", drive.as_bytes())]);
    let report: Value = serde_json::from_slice(&assessed.stdout).unwrap();
    let checks = report["schemes"][0]["checks"].as_array().unwrap();
    let thrusts = checks.iter().filter(|check| check["subject"].as_str().unwrap().starts_with("thrust, "));
    let high = thrusts.map(|check| check["demand"]["value"].as_f64().unwrap()).fold(0.0, f64::max);
    let page = screened(&["--water", "none", "--depth", "10 ft", "--grade", "1 %"]);
    assert!(page.contains(&format!("a rig of at least {:.1} kip thrust; ", high / 0.8)), "{high}\n{page}");
    assert!(page.contains("Looked at invert 10.0 ft deep, no water Taken"), "{page}");
}

/// What bars a scheme in some of the cases is told with them; what bars it in all of them bars it.
#[test]
fn what_bars_is_told_with_its_case() {
    let case = |pipe: &str, length: &str, soil: &str| {
        let output = jackpull(&["screen", "--pipe", pipe, "--length", length, "--soil", soil]);
        (flat(&stdout(&output)), output.status.code())
    };
    // Loose sand rubs more where it is dry.
    let (page, code) = case("clay 10 in", "120 m", "loose sand");
    let dry = "Against pipe end, jacking force at ";
    assert!(page.contains(dry), "{page}");
    assert!(page.contains(" (with invert 3.00 m deep, no water; with invert 6.00 m deep, no water) Open "), "{page}");
    assert!(page.starts_with("NOT DECIDED: pipe jacking of clay 10 in could fit with care"), "{page}");
    assert_eq!(code, Some(0));
    // 500 ft through loose sand are too much for a pipe of 10 in anywhere.
    let (page, code) = case("clay 10 in", "500 ft", "loose sand");
    assert!(page.starts_with("NO SCHEME FITS; closest: pipe jacking of clay 10 in, barred by pipe end, "), "{page}");
    assert_eq!(code, Some(1));
}

/// Words that are not understood are refused with what was probably meant, all of them at once.
#[test]
fn words_that_are_not_understood_are_refused() {
    let output = jackpull(&[
        "screen",
        "--pipe",
        "clayy 10 in",
        "--pipe",
        "clay",
        "--length",
        "300",
        "--soil",
        "sand",
        "--service",
        "gas",
    ]);
    assert_eq!((output.status.code(), output.stdout.len()), (Some(2), 0));
    let told = flat(&stderr(&output));
    for part in [
        "pipe: expected a pipe material, got \"clayy\"",
        "did you mean \"clay\"?",
        "pipe: expected a pipe with its size, got \"clay\"",
        "length: expected a length, got 300 without a unit",
        "soil: expected a ground class, got \"sand\"",
        "did you mean \"loose_sand\" or \"medium_to_dense_sand\"?",
        "service: expected ",
    ] {
        assert!(told.contains(part), "{part}\n{told}");
    }
    let output = jackpull(&["screen", "--pipe", "clay 11 in", "--length", "300 ft", "--soil", "stiff clay"]);
    assert!(stderr(&output).contains("no clay jacking pipe of 11 in"), "{}", stderr(&output));
}

/// The file that is written is assessed as it stands, at the worst depth and water, with the rig that was asked for; a file
/// that is there is left alone.
#[test]
fn the_file_that_is_written_goes_on() {
    let path = file("from_screen.yaml", b"");
    std::fs::remove_file(&path).unwrap();
    let page = screened(&["--write", &path]);
    let text = std::fs::read_to_string(&path).unwrap();
    for part in [
        "invert_depth: 20 ft",
        "groundwater: 3 ft",
        "length: 300ft",
        "class: firm_to_very_stiff_clay",
        "\n# stem.outside_diameter: ",
    ] {
        assert!(text.contains(part), "{part}\n{text}");
    }
    let output = jackpull(&["assess", "--format", "json", &path]);
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    assert!(
        report["answer"].as_str().unwrap().starts_with("NOT DECIDED: pipe jacking of clay 10 in"),
        "{}",
        report["answer"]
    );
    let checks = report["schemes"][0]["checks"].as_array().unwrap();
    let thrust = checks.iter().find(|check| check["subject"] == "thrust, pilot stem").unwrap();
    let used = thrust["utilisation"].as_f64().unwrap();
    assert!(used > 0.99 && used <= 1.0, "{used}\n{page}");
    let again = jackpull(&[&FACTS[..], &["--write", &path]].concat());
    assert_eq!(again.status.code(), Some(2));
    assert!(stderr(&again).contains("cannot be written"), "{}", stderr(&again));
    assert_eq!(std::fs::read_to_string(&path).unwrap(), text);
}
