//! `handbook`: what is in the tables, and where each value comes from.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stderr, stdout};

fn page(arguments: &[&str]) -> String {
    let output = jackpull(&[&["handbook"], arguments].concat());
    assert_eq!(output.status.code(), Some(0), "{}", stderr(&output));
    let page = stdout(&output);
    for line in page.lines() {
        assert!(line.chars().count() <= 100, "{line}");
    }
    page
}

#[test]
fn every_table_is_listed() {
    let page = page(&[]);
    for table in jackpull::Handbook::TABLES {
        assert!(page.lines().any(|line| line.starts_with(&format!("{table} "))), "{table}");
    }
}

#[test]
fn every_table_is_printed_with_all_its_rows() {
    let handbook = jackpull::Handbook::embedded();
    for table in jackpull::Handbook::TABLES {
        let page = page(&[table]);
        for (_, key, _) in handbook.citations().unwrap().iter().filter(|(of, ..)| of == table) {
            assert!(page.lines().any(|line| line == format!("{table}/{key}")), "{table}/{key}");
        }
    }
}

#[test]
fn a_row_is_printed_with_the_digits_of_the_book() {
    let page = page(&["--row", "pe_pull_stress/f1962_1999_hdpe_12_h"]);
    for part in ["stress 1150 psi", "source   astm_f1962_1999: ", "(recalled, not re-read)", "used by  "] {
        assert!(page.contains(part), "{part}\n{page}");
    }
}

/// For programs: each table with all its rows, each row with what the page says of it.
#[test]
fn the_handbook_is_told_to_programs() {
    let told = |arguments: &[&str]| -> serde_json::Value {
        let output = jackpull(&[&["handbook", "--format", "json"], arguments].concat());
        assert_eq!(output.status.code(), Some(0), "{}", stderr(&output));
        serde_json::from_str(&stdout(&output)).unwrap()
    };
    let handbook = jackpull::Handbook::embedded();
    let tables = told(&[]);
    assert_eq!(tables.as_array().unwrap().len(), jackpull::Handbook::TABLES.len());
    for table in tables.as_array().unwrap() {
        let rows = handbook.rows_of(table["table"].as_str().unwrap()).unwrap();
        assert_eq!(table["rows"], rows.len(), "{table}");
    }
    let row = &told(&["--row", "pe_pull_stress/f1962_1999_hdpe_12_h"])[0];
    assert_eq!((&row["columns"]["stress"], &row["mark"]), (&"1150 psi".into(), &"memory".into()), "{row}");
    assert_eq!(
        told(&["--row", "practice_ratio/pull.model_factor"])[0]["columns"],
        serde_json::json!({ "value": "1.5" })
    );
    let found = told(&["pe_pull_stress", "--find", "gw_321"]);
    let found = found.as_array().unwrap();
    assert!(!found.is_empty() && found.len() < handbook.rows_of("pe_pull_stress").unwrap().len());
    let own = b"id: pe_pull_stress\ntitle: own\nrows:\n  - key: f1962_1999_hdpe_12_h\n    value: \
        { edition: astm_f1962_1999, material: hdpe, up_to: 12 h, stress: 1000 psi, at: 73 degF }\n";
    let table = file("told.yaml", own);
    let laid = &told(&["--tables", &table, "--row", "pe_pull_stress/f1962_1999_hdpe_12_h"])[0];
    assert_eq!((&laid["replaces"]["stress"], &laid["mark"]), (&"1150 psi".into(), &"given".into()), "{laid}");
}

#[test]
fn text_is_found_in_values_sources_and_notes() {
    let found = page(&["--find", "GW_321"]);
    assert!(found.contains("pe_duration_factor/gw_321_over_20_h") && found.contains("pe_pull_stress/"));
    assert!(!page(&["pe_pull_stress", "--find", "gw_321"]).contains("pe_duration_factor"));
}

#[test]
fn what_is_not_there_is_exit_code_2() {
    for arguments in
        [["handbook", "no_such_table"], ["handbook", "--row=clay_pipe/no_such_row"], ["handbook", "--find=zzzz"]]
    {
        let output = jackpull(&arguments);
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        assert!(stderr(&output).starts_with("error: "));
    }
}

/// A name that is not there is answered with the near one, where there is one, and with how to find it.
#[test]
fn a_name_that_is_not_there_is_answered_with_the_near_one() {
    for (arguments, told) in [
        (
            ["clay_pip", ""],
            "error: there is no table \"clay_pip\"\n  = did you mean \"clay_pipe\"? `jackpull handbook` lists the tables, \
             --find TEXT looks in all\n",
        ),
        (
            ["practice-ratio", ""],
            "error: there is no table \"practice-ratio\"\n  = did you mean \"practice_ratio\"? `jackpull handbook` lists the \
             tables, --find TEXT looks in all\n",
        ),
        (
            ["xyzzy", ""],
            "error: there is no table \"xyzzy\"\n  = `jackpull handbook` lists the tables, --find TEXT looks in all\n",
        ),
        (
            ["--row", "practice_ratio/clay.factr"],
            "error: the table \"practice_ratio\" has no row \"clay.factr\"\n  = did you mean \"clay.factor\"? `jackpull \
             handbook practice_ratio` prints its rows\n",
        ),
        (
            ["--row", "practise_ratio/clay.factor"],
            "error: there is no table \"practise_ratio\"\n  = did you mean \"practice_ratio\"? `jackpull handbook` lists the \
             tables, --find TEXT looks in all\n",
        ),
        (
            ["--row", "clay.factor"],
            "error: there is no row \"clay.factor\"\n  = did you mean \"practice_ratio/clay.factor\"? write TABLE/KEY\n",
        ),
        (["--row", "xyzzy"], "error: there is no row \"xyzzy\"\n  = write TABLE/KEY\n"),
        (
            ["clay_pipe/10_in", ""],
            "error: there is no table \"clay_pipe/10_in\"\n  = --row clay_pipe/10_in prints a row\n",
        ),
    ] {
        let arguments = arguments.iter().filter(|argument| !argument.is_empty());
        let output = jackpull(&["handbook"].iter().chain(arguments).copied().collect::<Vec<_>>());
        assert_eq!(output.status.code(), Some(2));
        assert!(output.stdout.is_empty());
        assert_eq!(stderr(&output), told);
    }
}

/// A laid-over row shows both values, in the handbook and in the report.
#[test]
fn a_replaced_row_shows_both_values() {
    let table = file(
        "agency.yaml",
        b"id: practice_ratio\ntitle: agency\nrows:\n  - { key: clay.factor, value: \"3.5\", source: agency manual, locator: section 5 }\n",
    );
    let row = page(&["--tables", &table, "--row", "practice_ratio/clay.factor"]);
    // Without any space: a long name is broken at the width of the page.
    let bare = |text: &str| text.split_whitespace().collect::<String>();
    let row = bare(&row);
    for part in ["value    3.5", "replaces 3.0", "agency.yaml: citing agency manual, section 5 (given)"] {
        assert!(row.contains(&bare(part)), "{part}\n{row}");
    }
    let report = bare(&stdout(&jackpull(&["assess", "--tables", &table, &example("fennbridge_mill_lane.yaml")])));
    let part = format!("practice_ratio/clay.factor: {table}, citing agency manual, section 5 (given), in place of 3.0");
    assert!(report.contains(&bare(&part)), "{report}");
}

/// A row of the user's is the user's, whatever book and mark it claims.
#[test]
fn a_row_that_claims_a_book_is_given_by_its_file() {
    let table = file(
        "claims.yaml",
        b"id: practice_ratio\ntitle: ours\nmark: published\nsource: astm_f1962_1999\nrows:\n  - { key: clay.factor, value: 3.5, mark: published, locator: Table 1 }\n",
    );
    let output = jackpull(&["assess", "--format", "json", "--tables", &table, &example("fennbridge_mill_lane.yaml")]);
    let report: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    let checks = report["schemes"][0]["checks"].as_array().unwrap();
    let end = checks.iter().find(|check| check["subject"] == "pipe end, jacking force").unwrap();
    let factor = &end["factor"];
    assert_eq!((&factor["mark"], &factor["source"]), (&"given".into(), &table.as_str().into()));
    assert_eq!(factor["at"], "citing astm_f1962_1999, Table 1");
    let page = page(&["--tables", &table, "--row", "practice_ratio/clay.factor"]);
    assert!(page.contains("(given)") && !page.contains("(published)"), "{page}");
    // Nor does it count among those that were read.
    let published = |page: &str| -> Vec<String> {
        let line = page.lines().find(|line| line.starts_with("practice_ratio ")).unwrap();
        line.split_whitespace().take(4).map(ToOwned::to_owned).collect()
    };
    assert_eq!(published(&self::page(&["--tables", &table])), published(&self::page(&[])));
}

/// A pipe series of the user's is chosen like one of the book.
#[test]
fn an_added_series_is_used() {
    let table = file(
        "series.yaml",
        b"id: pe_iso4427\ntitle: our maker's extra walls\nrows:\n  - { key: ours, value: { size: 315 mm, sdr: 15, wall: 21.0 mm }, locator: data sheet }\n",
    );
    let text = std::fs::read_to_string(example("fennbridge_mill_lane.yaml")).unwrap().edit("sdr: 11", "sdr: 15");
    let drive = file("our_series.yaml", text.as_bytes());
    assert_eq!(jackpull(&["assess", &drive]).status.code(), Some(2), "no such wall in the book");
    let output = jackpull(&["assess", "--tables", &table, &drive]);
    assert_eq!(output.status.code(), Some(0), "{}", stderr(&output));
    assert!(stdout(&output).contains("pullback of PE100 315 mm SDR 15"));
}

/// What a table that is laid over changes is told on the first page: both values, and a row that goes before the book's.
#[test]
fn what_a_table_changes_is_told_under_the_drive() {
    let loose = file("loose.yaml", b"id: practice_ratio\ntitle: ours\nrows: [{ key: clay.factor, value: \"2.5\" }]\n");
    let added = file(
        "added.yaml",
        b"id: pe_iso4427\ntitle: ours\nrows:\n  - { key: ours, value: { size: 315 mm, sdr: 13.6, wall: 23.2 mm } }\n",
    );
    let page =
        stdout(&jackpull(&["assess", "--tables", &loose, "--tables", &added, &example("fennbridge_mill_lane.yaml")]));
    let (first, _) = page.split_once("Ranking").unwrap();
    let first = first.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        "practice_ratio, clay.factor: 2.5 in place of 3.0",
        "pe_iso4427, ours: size 315 mm, sdr 13.6, wall 23.2 mm, a new row that goes before those of the handbook",
    ] {
        assert!(first.contains(part), "{part}: {first}");
    }
    let plain = stdout(&jackpull(&["assess", &example("fennbridge_mill_lane.yaml")]));
    assert!(!plain.contains("in place of 3.0") && !plain.contains("a new row that goes before"));
}
