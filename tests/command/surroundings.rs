//! What is printed of flow, cover, settlement, pits and time, as text and as JSON.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stderr, stdout};
use serde_json::Value;

const LINES: &str = "\
half_wave: 40 m
design_flow: { min: 6 L/s, max: 20 L/s }
surface: { over: road, allowed_settlement: 20 mm }
crossings: [{ at: 30 m, depth: 1.5 m, kind: water main, allowed_settlement: 15 mm, allowed_slope: 1 % },
  { at: 50 m, depth: 1.2 m, beside: 3 m, kind: gas main, allowed_settlement: 10 mm, allowed_slope: 1 % }]
pace: { pilot: 30 m, jacking: 12 m, pits: 4, set_up: 2, recovery: 1, shift_price: 4000, programme: 20, budget: 90000 }
";

/// Tests run side by side: each has a file of its own.
fn path(name: &str) -> String {
    let text = std::fs::read_to_string(example("fennbridge_mill_lane.yaml")).unwrap();
    let text = text.edit(
        "  invert_depth: 4.20 m\n",
        "  invert_depth: 4.20 m\n  space: { length: 6 m, width: 3 m, crane: 40 kN }\n",
    );
    let text = text.edit(
        "spt_n: 14",
        "spt_n: 14\n    soil: { moist: 19 kN/m3, friction_angle: 25 deg, undrained_strength: 60 kPa }",
    );
    // The lines have their own word on what lies over the bore.
    let told = "surface: { over: road }\ncrossings: []                   # services located: none is crossed\n";
    let text = text.edit(told, "");
    file(name, format!("{text}{LINES}").as_bytes())
}

#[test]
fn the_text_tells_checks_figures_and_what_is_not_given() {
    for units in ["si", "us"] {
        let output = jackpull(&["assess", "--units", units, &path("surroundings_text.yaml")]);
        assert_eq!(output.status.code(), Some(0), "{}", stderr(&output));
        let page = stdout(&output);
        for part in [
            "Ground movement, pits and time: pipe jacking of clay 10 in",
            "settlement, crossings[0], water main",
            "settlement, crossings[1], gas main",
            "pits dug and shored, shifts",
            "soil in the ground, pipe pushed",
            "cost, shifts",
            "cost in all",
            "time, programme",
            "time on site",
            "back-fall",
            "flow, self-cleaning",
            "clear distance, services",
            "face, stability number",
            "pit base, heave",
            "crane lift",
            "excavation, if jacked: displacing pilot, auger",
            "not given, so not checked: ",
        ] {
            assert!(page.contains(part), "{part}\n{page}");
        }
        assert!(page.lines().all(|line| line.chars().count() <= 100), "{page}");
    }
}

#[test]
fn the_json_holds_the_same() {
    let output = jackpull(&["assess", "--format", "json", &path("surroundings_json.yaml")]);
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    let first = &report["schemes"][0];
    let subjects: Vec<&str> =
        first["checks"].as_array().unwrap().iter().map(|check| check["subject"].as_str().unwrap()).collect();
    for subject in ["least slope", "standing water", "cover", "settlement, services", "launch pit, width"] {
        assert!(subjects.contains(&subject), "{subject}: {subjects:?}");
    }
    let figures = first["site_figures"].as_array().unwrap();
    let sum = figures.iter().find(|figure| figure["what"] == "shifts in all").unwrap();
    assert_eq!((sum["topic"].as_str(), sum["values"]["likely"]["value"].as_f64()), (Some("time"), Some(14.0)));
    let not_given = first["not_given"].as_array().unwrap();
    assert!(not_given.iter().any(|item| item.as_str().unwrap().starts_with("uplift")), "{not_given:?}");
    let cost = figures.iter().find(|figure| figure["what"] == "cost in all").unwrap();
    assert_eq!((cost["topic"].as_str(), cost["values"]["likely"]["value"].as_f64()), (Some("cost"), Some(56_000.0)));
    // What rests on judgement alone says so.
    let pulled = &report["schemes"][1];
    let sum =
        pulled["site_figures"].as_array().unwrap().iter().find(|figure| figure["what"] == "shifts in all").unwrap();
    assert!(!sum["values"].is_null());
    let cautions = pulled["cautions"].as_array().unwrap();
    let judged = |text: &str| text.starts_with("Time: no source was found for") && text.contains("ramp and laydown");
    assert!(cautions.iter().any(|caution| judged(caution.as_str().unwrap())), "{cautions:?}");
}

/// Water over an open casing in sand asks for a plug; a closed face and lowered water ask for none.
#[test]
fn a_plug_that_is_not_given_is_told() {
    let plug = |spoil: &str, treatment: &str| {
        let text = format!(
            "service: casing\nlength: 60 m\nlaunch: {{ invert_depth: 4 m }}\ngrade: 0 %\ngroundwater: 2 m\n\
             lubrication: metered\n{spoil}ground: [{{ class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm{treatment} }}]\n\
             rig: {{ thrust: 900 kN, pull: 500 kN }}\ncandidates: [{{ material: clay, size: 10 in }}]\n"
        );
        let output = jackpull(&["assess", "--format", "json", &file("plug.yaml", text.as_bytes())]);
        let report: Value = serde_json::from_slice(&output.stdout).unwrap();
        let first = &report["schemes"][0];
        assert_eq!(first["method"], "pipe jacking");
        let verdict = |check: &Value| check["verdict"].as_str().unwrap().to_owned();
        let check = first["checks"].as_array().unwrap().iter().find(|check| check["subject"] == "soil plug");
        let asks = first["if_settled"]["write"].as_array().unwrap().iter();
        let fields = asks.filter(|ask| ask["settles"].as_array().unwrap().contains(&"soil plug".into()));
        (check.map(verdict), fields.map(|ask| ask["ways"][0][0].as_str().unwrap().to_owned()).collect::<Vec<_>>())
    };
    assert_eq!(plug("", ""), (Some("not decided".to_owned()), vec!["ground[].treatment".to_owned()]));
    assert_eq!(plug("spoil: slurry\n", ""), (None, vec![]));
    assert_eq!(plug("", ", treatment: dewatered"), (None, vec![]));
}
