//! `assess --format crew`: the page for the crew, against sums by hand and against the report.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stdout};
use serde_json::Value;

const MILL_LANE: &str = "fennbridge_mill_lane.yaml";
const EXAMPLES: [&str; 3] = [MILL_LANE, "fennbridge_quarry_road.yaml", "fennbridge_kiln_bank.yaml"];

fn mill_lane(name: &str, change: impl FnOnce(String) -> String) -> String {
    file(name, change(std::fs::read_to_string(example(MILL_LANE)).unwrap()).as_bytes())
}

fn page(arguments: &[&str]) -> String {
    stdout(&jackpull(&[&["assess", "--format", "crew"], arguments].concat()))
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Clay, 3, 8 and 20 kPa on a stem of 100 mm: times pi 0.942, 2.513 and 6.283 kN/m, and 0.26 kN/m of steel on 1 % adds
/// 0.003. Pipe 60 of 1 m ends where the drive does.
#[test]
fn the_page_by_hand() {
    let text = page(&[&example(MILL_LANE)]);
    assert!(text.starts_with("PIPE JACKING, clay 10 in: fits; "), "{text}");
    let words = words(&text);
    for part in [
        "from 0.0 m to 60.0 m: 0.945 kN/m / 2.516 kN/m / 6.286 kN/m",
        "pilot stem pushed, from the launch pit, by stem sections of 1.00 m (our judgement)",
        "pipe pushed behind the stem, from the launch pit, by pipe sections of 1.00 m (given)",
        "60 60.0 m 206.8 kN 403.0 kN",
        "Never above 600.0 kN: pilot stem, joint under thrust (stem.joint_thrust, given); the rig can give more: \
            set it to this.",
        "the stem 1.10 (likely) to 1.30 (high), the pipe 1.20 (likely) to 1.40 (high). No stop is counted above.",
    ] {
        assert!(words.contains(part), "{part} in {text}");
    }
    assert!(!words.contains("after a stop"), "{text}");
}

/// Forces of the last stage are those of the report, in the units asked for alone, and it all stands on one page in a small type.
#[test]
fn the_page_agrees_with_the_report() {
    for name in EXAMPLES {
        for units in ["si", "us"] {
            let text = page(&["--units", units, &example(name)]);
            assert!(text.lines().count() <= 80 && text.lines().all(|line| line.chars().count() <= 100), "{text}");
            let report = jackpull(&["assess", "--format", "json", "--units", units, &example(name)]);
            let report: Value = serde_json::from_slice(&report.stdout).unwrap();
            let first = &report["schemes"][0];
            let last = first["stages"].as_array().unwrap().last().unwrap()["points"].as_array().unwrap();
            let high = last.iter().map(|point| point["on_rig"]["high"]["value"].as_f64().unwrap()).fold(0.0, f64::max);
            assert!(text.contains(&format!("{high:.1} ")), "{high} in {text}");
            let other: &[&str] =
                if units == "us" { &[" kN", " MPa", " kPa", " m ", " mm"] } else { &[" kip", " psi", " ft", " lbf"] };
            // The name of a pipe is no length.
            let figures: String = text.split("polymer concrete 400 mm").collect();
            for unit in other {
                assert!(!figures.contains(unit), "{unit} in {text}");
            }
        }
    }
}

/// Pistons of 0.02 m2 at 0.95: 19 kN a MPa. 403.0 kN are 21.21 MPa, the 600 kN of the joints 31.58.
#[test]
fn the_gauge_is_read() {
    let path = mill_lane("crew_gauge.yaml", |text| {
        text.edit("pull: 500 kN }", "pull: 500 kN, cylinder_area: 20000 mm2, efficiency: 0.95 }")
    });
    let text = words(&page(&[&path]));
    assert!(text.contains("403.0 kN 21.21 MPa"), "{text}");
    assert!(text.contains("Never above 600.0 kN (31.58 MPa on the gauge): pilot stem, joint under thrust"), "{text}");
}

/// Without a length of the pipe it is counted by that of the handbook, 2 m. Work by shifts stands at night: the friction
/// of the pipe is then 1.2 times the likely one. What the joints of the stem bear is asked for as much as the high force.
#[test]
fn what_is_not_told_is_taken_on_the_safe_side() {
    let path = mill_lane("crew_untold.yaml", |text| {
        text.edit("pipe_length: 1 m, ", "")
            .edit("work: { round_the_clock: true }", "")
            .edit(", joint_thrust: 600 kN", "")
    });
    let text = page(&[&path]);
    let words = words(&text);
    assert!(words.contains("pipe sections of 2.00 m (published)"), "{text}");
    let last = text.lines().rfind(|line| line.trim_start().starts_with("30 ")).unwrap();
    let forces: Vec<f64> = last.split_whitespace().filter_map(|word| word.parse().ok()).collect();
    // Head 15 kN; 3 kPa on 338.1 mm over 60 m 191.2 kN, the rest is the weight on the grade.
    let (moving, after) = (forces[2], forces[4]);
    assert!((after - moving - 0.2 * 191.2).abs() < 0.15, "{last}");
    let never = text.lines().find(|line| line.contains("Never above")).unwrap();
    let high = never.split_whitespace().nth(2).unwrap();
    assert!(never.contains("joint under thrust (not given; asked to"), "{text}");
    assert!(text.lines().any(|line| line.trim_end().ends_with(&format!("{high} kN"))), "{text}");
}

/// What is barred is built by nobody, and what is not decided by nobody yet.
#[test]
fn there_is_no_page_of_what_is_barred() {
    let barred = mill_lane("crew_barred.yaml", |text| text.edit("largest_stone: 20 mm", "largest_stone: 400 mm"));
    let output = jackpull(&["assess", "--format", "crew", &barred]);
    assert_eq!(output.status.code(), Some(1));
    let text = stdout(&output);
    assert!(text.starts_with("NO SCHEME FITS; ") && text.contains("No page for the crew: "), "{text}");
    assert!(!text.contains("stop and ask"), "{text}");
    let open = mill_lane("crew_open.yaml", |text| text.edit("    largest_stone: 20 mm\n", ""));
    let text = page(&[&open]);
    assert!(text.starts_with("NOT DECIDED: ") && text.contains("\nNot decided: for planning only"), "{text}");
}

/// The joints are asked for the high thrust, 552.2 kN; the tube for a buckling load of 1.25 times that, 690.2 kN, what is
/// left of its factor.
#[test]
fn what_is_asked_of_a_stem_is_what_the_sentence_says() {
    let kiln_bank = example("fennbridge_kiln_bank.yaml");
    let text = words(&page(&[&kiln_bank]));
    assert!(
        text.contains("Never above 552.2 kN: pilot stem, joint under thrust (not given; asked to bear this)"),
        "{text}"
    );
    assert!(text.contains("pilot stem, buckling 690.2 kN"), "{text}");
    let report = words(&stdout(&jackpull(&["assess", &kiln_bank])));
    let asked = "pilot stem, buckling: 690.2 kN; no stem tube is given: its buckling load must be at least this much";
    assert!(report.contains(asked), "{report}");
}

/// A bit cuts the ground: nothing is pushed aside, and nothing heaves.
#[test]
fn a_drilled_pilot_is_called_so() {
    let quarry_road = std::fs::read_to_string(example("fennbridge_quarry_road.yaml")).unwrap();
    let pushed = file("crew_pushed.yaml", quarry_road.edit("pilot: drilled", "pilot: displacement").as_bytes());
    let (pushed, drilled) = (page(&[&pushed]), page(&[&example("fennbridge_quarry_road.yaml")]));
    assert!(pushed.contains("displacing pilot") && pushed.contains("pilot stem pushed, from"), "{pushed}");
    assert!(!drilled.contains("displacing pilot") && drilled.contains("pilot stem drilled in, from"), "{drilled}");
}
