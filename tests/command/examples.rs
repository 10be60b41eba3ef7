//! The example programs run.

use crate::run::{example, jackpull, stdout};

#[path = "../../examples/built_in_code.rs"]
mod built_in_code;

#[test]
fn a_drive_is_built_in_code() {
    built_in_code::main().unwrap();
}

#[path = "../../examples/one_law.rs"]
mod one_law;

#[test]
fn one_law_is_taken_alone() {
    one_law::main().unwrap();
}

#[path = "../../examples/own_table.rs"]
mod own_table;

#[test]
fn a_table_of_an_agency_is_laid_over() {
    own_table::main().unwrap();
}

#[path = "../../examples/read_result.rs"]
#[allow(dead_code, reason = "the test calls what `main` calls")]
mod read_result;

#[test]
fn a_result_is_read_by_another_program() {
    let json = stdout(&jackpull(&["assess", "--format", "json", &example("fennbridge_mill_lane.yaml")]));
    let mut summary = Vec::new();
    read_result::summary(&json, &mut summary).unwrap();
    let summary = String::from_utf8(summary).unwrap();
    assert!(summary.starts_with("PIPE JACKING, clay 10 in: fits;"), "{summary}");
    assert!(summary.contains("\npipe jacking of clay 10 in: fits; past the limit: \n"), "{summary}");
    let pulled = "\npullback of PE100 315 mm SDR 11: barred; past the limit: ";
    let (_, past) = summary.split_once(pulled).unwrap();
    assert!(past.lines().next().unwrap().contains("invert, line and grade"), "{summary}");
}

#[path = "../../examples/published_limits/main.rs"]
#[allow(dead_code, reason = "the test calls what `main` calls")]
mod published_limits;

#[test]
fn the_published_limits_are_printed_as_text_and_as_a_table() {
    for (is_markdown, lines) in [(false, ["Worked pulls", "Jobs"]), (true, ["## Worked pulls", "## Jobs"])] {
        let mut printed = Vec::new();
        assert!(published_limits::print(&mut printed, is_markdown).unwrap(), "a figure is outside its tolerance");
        let printed = String::from_utf8(printed).unwrap();
        for line in lines {
            assert!(printed.lines().any(|printed| printed == line), "{line}\n{printed}");
        }
    }
}

/// A topic that a reviewer could not run alone.
#[test]
fn each_topic_has_a_program_of_its_own() {
    for topic in &published_limits::book::TOPICS {
        let path = format!("{}/examples/{}.rs", env!("CARGO_MANIFEST_DIR"), topic.name);
        let program = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
        for words in [
            format!("cargo run --release --example {}\n", topic.name),
            format!("book::print::alone(&book::{}::TOPIC)", topic.name),
        ] {
            assert!(program.contains(&words), "{path}: {words}");
        }
    }
}

/// A law and a row that are ours, a strength behind the eight sizes of its table, and a row of which a tenth is not enough.
#[test]
fn the_coverage_tells_what_notices_each_law_and_row_and_what_none_does() {
    let mut printed = Vec::new();
    published_limits::coverage::print(&mut printed).unwrap();
    let printed = String::from_utf8(printed).unwrap();
    for line in [
        "law weight along the grade, up or down (our judgement): open: no page from outside notices a tenth more",
        "law silo pressure (recalled, not re-read): noticed: tests/worked/pressure_models.rs, page predicted_over_measured",
        "row concrete_strength/jswas_50_mean (published, second hand): noticed: tests/published/jswas_a6.rs, page \
         ratings_are_area_times_stress; ",
        "row concrete_strength/gb_c40_design (recalled, not re-read): noticed at twice: stress: twice is noticed, a tenth is not",
        "row work_area/guided_launch (our judgement): open: area_high: our judgement, no published figure",
    ] {
        assert!(printed.lines().any(|told| told.starts_with(line)), "{line}\n{printed}");
    }
    let laws = printed.lines().filter(|line| line.starts_with("law ")).count();
    assert_eq!(laws, jackpull::laws::equations().count());
    let counts: Vec<&str> =
        printed.lines().filter(|line| line.starts_with("laws: ") || line.starts_with("rows: ")).collect();
    assert_eq!(counts.len(), 2, "{counts:?}");
}

#[path = "../../examples/guide_figures.rs"]
#[allow(dead_code, reason = "the test calls what `main` calls")]
mod guide_figures;

/// `cargo run --example guide_figures` draws them anew.
#[test]
fn the_figures_of_the_guide_are_as_the_laws_draw_them() {
    for figure in guide_figures::figures() {
        let path = format!("{}/src/guide/figures/{}.svg", env!("CARGO_MANIFEST_DIR"), figure.name);
        assert_eq!(std::fs::read_to_string(&path).unwrap(), figure.svg, "{path}");
    }
}
