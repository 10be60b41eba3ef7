//! `assess` on the shipped examples.

use crate::edit::Edit;
use crate::run::{SEWER, example, file, jackpull, stderr, stdout};
use serde_json::Value;

const CLAY_WINS: &str = "fennbridge_mill_lane.yaml";
const PE_WINS: &str = "fennbridge_quarry_road.yaml";
/// The clay pipe of the first.
const CLAY: &str =
    "  - { material: clay, size: 10 in, certificate: en_295_7, pipe_length: 1 m, packer: { thickness: 12 mm } }\n";

#[test]
fn the_first_line_is_the_answer() {
    for (name, start) in [
        // Pilot 25.4 mm against 30 mm.
        (CLAY_WINS, "PIPE JACKING, clay 10 in: fits; governed by invert, line and grade at 0.85; with a laser\n"),
        (PE_WINS, "PULLBACK, PE4710 IPS 8 in DR 11: fits with care; governed by bore fluid, break-out at 0."),
    ] {
        let output = jackpull(&["assess", &example(name)]);
        assert_eq!(output.status.code(), Some(0), "{}", stderr(&output));
        assert!(stderr(&output).is_empty());
        let text = stdout(&output);
        assert!(text.starts_with(start), "{text}");
        for part in
            ["Governs ", "Ranking", "Checks: ", "Assumed for ", "Cautions", "Working: ", "Not checked in this version"]
        {
            assert!(text.contains(part), "{part}");
        }
    }
}

/// An answer that asks for care says why in its first line: what is on condition, and what is short of data.
#[test]
fn the_first_line_names_what_asks_for_care() {
    let page = stdout(&jackpull(&["assess", &example(PE_WINS)]));
    let (first, _) = page.split_once("\n\n").unwrap();
    let first = first.split_whitespace().collect::<Vec<_>>().join(" ");
    let (governed, care) = first.split_once("; subject to: ").unwrap_or_else(|| panic!("{first}"));
    assert!(governed.starts_with("PULLBACK, PE4710 IPS 8 in DR 11: fits with care; governed by "), "{first}");
    let (condition, data) = care.split_once("; find out: ").unwrap_or_else(|| panic!("{first}"));
    assert_eq!(data, "the bore is assumed to stand open for a week");
    // What the file does not tell of the main, by name, and plant by number.
    let report = json(&["assess", "--format", "json", &example(PE_WINS)]);
    let with_care = report["choice"]["with_care"].as_array().unwrap();
    let told = format!("pipe, pressure in service and {} more", with_care.len() - 1 - 1 - 1);
    assert_eq!(condition, told, "{first}: {with_care:?}");
    assert_eq!(report["answer"], first);
}

/// Where the nearest is barred, the first line says by what.
#[test]
fn the_first_line_names_what_bars() {
    let text = std::fs::read_to_string(example(CLAY_WINS)).unwrap();
    let output = jackpull(&["assess", &file("barred.yaml", text.edit(CLAY, "").as_bytes())]);
    assert_eq!(output.status.code(), Some(1));
    let page = stdout(&output);
    // Pilot 25.4 mm and half the bore of 315 mm, 157.5 mm, against 30 mm.
    let first = "NO SCHEME FITS; closest: pullback of PE100 315 mm SDR 11, barred by invert, line and grade at 6.10\n";
    assert!(page.starts_with(first), "{page}");
    assert!(page.lines().all(|line| line.chars().count() <= 100), "{page}");
}

/// With `--fail-on care` a scheme that only fits with care is no success; the page is the same.
#[test]
fn care_is_no_success_where_it_is_asked_so() {
    for (name, standing, code) in [(CLAY_WINS, "fits", 0), (PE_WINS, "fits with care", 1)] {
        let usual = jackpull(&["assess", "--format", "json", &example(name)]);
        assert_eq!(usual.status.code(), Some(0), "{name}: {}", stderr(&usual));
        let strict = jackpull(&["assess", "--fail-on", "care", "--format", "json", &example(name)]);
        assert_eq!(strict.status.code(), Some(code), "{name}: {}", stderr(&strict));
        assert_eq!(usual.stdout, strict.stdout);
        let report: Value = serde_json::from_slice(&strict.stdout).unwrap();
        assert_eq!(report["choice"]["standing"], standing);
    }
    // The worst of several counts.
    let both = jackpull(&["assess", "--fail-on", "care", &example(CLAY_WINS), &example(PE_WINS)]);
    assert_eq!(both.status.code(), Some(1));
}

#[test]
fn text_is_no_wider_than_100_columns() {
    for name in [CLAY_WINS, PE_WINS] {
        for units in ["si", "us"] {
            let output = jackpull(&["assess", "--units", units, &example(name)]);
            for line in stdout(&output).lines() {
                assert!(line.chars().count() <= 100, "{name}, {units}: {line}");
            }
        }
    }
}

/// Pipes that differ in what is given of them have long names, and are told apart on the page.
#[test]
fn long_names_fit_the_page() {
    let text = std::fs::read_to_string(example(CLAY_WINS)).unwrap();
    let variant = "certificate: unknown, factor: 3.25, joint_stress_ratio: 0.45, casing: 16.5 in, weight: 1.234 kN/m";
    let both = format!("{CLAY}  - {{ material: clay, size: 10 in, {variant} }}\n");
    let text = text.edit(CLAY, &both).edit("\nrig:", "\npilot: displacement\nrig:");
    let page = stdout(&jackpull(&["assess", &file("variants.yaml", text.as_bytes())]));
    assert!(page.lines().all(|line| line.chars().count() <= 100), "{page}");
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    let long =
        "clay 10 in, weight 1.234 kN/m, certificate unknown, factor 3.25, joint stress ratio 0.45, casing 16.5 in";
    assert!(page.contains(&format!("pipe jacking of {long}: barred")), "{page}");
    let short = "clay 10 in, certificate en_295_7, pipes of 1.0 m, packer 12 mm";
    assert!(page.contains(&format!("pipe jacking of {short}: fits")), "{page}");
}

#[test]
fn the_same_file_gives_the_same_bytes() {
    for format in ["text", "json"] {
        let run = || jackpull(&["assess", "--format", format, &example(CLAY_WINS)]).stdout;
        assert_eq!(run(), run());
    }
}

fn json(arguments: &[&str]) -> Value {
    let output = jackpull(arguments);
    serde_json::from_slice(&output.stdout).unwrap()
}

#[test]
fn json_has_every_field() {
    let report = json(&["assess", "--format", "json", &example(CLAY_WINS)]);
    let has = |value: &Value, keys: &[&str]| {
        for key in keys {
            assert!(value.get(key).is_some(), "{key} is not in {value}");
        }
    };
    has(&report, &["version", "crate_version", "drive", "drive_digest", "units", "choice", "schemes", "not_checked"]);
    has(&report["choice"], &["method", "pipe", "standing", "score", "reason"]);
    assert_eq!(report["choice"]["method"], "pipe jacking");
    assert!(report["drive_digest"].as_str().unwrap().starts_with("sha256:"));
    let schemes = report["schemes"].as_array().unwrap();
    assert_eq!(schemes.len(), 4, "two pipes by two methods");
    for scheme in schemes {
        has(scheme, &["method", "pipe", "standing", "excluded", "score", "force", "checks", "assumed", "cautions"]);
        let barred_at_once = !scheme["excluded"].as_array().unwrap().is_empty();
        assert_eq!(barred_at_once, scheme["checks"].as_array().unwrap().is_empty());
        assert_eq!(barred_at_once, scheme["force"].is_null());
        for excluded in scheme["excluded"].as_array().unwrap() {
            has(excluded, &["reason", "source"]);
        }
        for check in scheme["checks"].as_array().unwrap() {
            let keys =
                ["subject", "demand", "limit", "sense", "utilisation", "verdict", "source", "at", "mark", "note"];
            has(check, &keys);
            assert!(!check["source"].as_str().unwrap().is_empty());
            let marks = ["published", "second_hand", "memory", "common_practice", "judgement", "given"];
            assert!(marks.contains(&check["mark"].as_str().unwrap()));
            if let Some(demand) = check["demand"].as_object() {
                let (demand, limit) = (demand["value"].as_f64().unwrap(), check["limit"]["value"].as_f64().unwrap());
                let utilisation = check["utilisation"].as_f64().unwrap();
                let ratio = if check["sense"] == "at most" { demand / limit } else { limit / demand };
                assert!((utilisation - ratio).abs() < 1e-9);
            }
        }
        for assumed in scheme["assumed"].as_array().unwrap() {
            has(assumed, &["field", "value", "source", "at", "mark"]);
        }
    }
}

#[test]
fn several_files_make_a_json_array_and_the_worst_exit_code() {
    let many = json(&["assess", "--format", "json", &example(CLAY_WINS), &example(PE_WINS)]);
    assert_eq!(many.as_array().unwrap().len(), 2);
    let faulty = file("faulty.yaml", b"length: 3\n");
    let output = jackpull(&["assess", &example(CLAY_WINS), &faulty]);
    assert_eq!(output.status.code(), Some(2));
    assert!(stdout(&output).starts_with("PIPE JACKING"));
    assert!(stderr(&output).contains("faulty.yaml"));
}

/// A thrust that no stage can do with: assessed, none fits.
#[test]
fn no_scheme_is_exit_code_1() {
    let text = std::fs::read_to_string(example(CLAY_WINS)).unwrap().edit("thrust: 900 kN", "thrust: 20 kN");
    let path = file("weak_rig.yaml", text.as_bytes());
    let output = jackpull(&["assess", &path]);
    assert_eq!(output.status.code(), Some(1));
    assert!(stdout(&output).starts_with("NO SCHEME FITS"));
    let report = json(&["assess", "--format", "json", &path]);
    assert!(report["choice"].is_null());
    assert!(report["reason"].as_str().unwrap().contains("thrust"));
}

/// Units of the output change the print, not the answer.
#[test]
fn us_units_print_the_same_answer() {
    let si = json(&["assess", "--format", "json", "--units", "si", &example(PE_WINS)]);
    let us = json(&["assess", "--format", "json", "--units", "us", &example(PE_WINS)]);
    assert_eq!(si["choice"]["score"]["least"], us["choice"]["score"]["least"]);
    let pull = |report: &Value| report["schemes"][0]["force"]["high"]["value"].as_f64().unwrap();
    assert!((pull(&si) / 4.448_221_615_260_5 / pull(&us) - 1.0).abs() < 1e-9);
    assert_eq!(us["schemes"][0]["force"]["high"]["unit"], "kip");
    // The file is written in feet.
    assert_eq!(json(&["assess", "--format", "json", &example(PE_WINS)]), us);
}

/// A user's factor is used, and wears the mark of a given value.
#[test]
fn a_table_of_the_users_is_laid_over() {
    let table = file(
        "our_factor.yaml",
        b"id: practice_ratio\ntitle: our factor\nrows:\n  - { key: clay.factor, value: \"4.0\" }\n",
    );
    let limit = |arguments: &[&str]| {
        let report = json(arguments);
        let scheme =
            report["schemes"].as_array().unwrap().iter().find(|scheme| scheme["method"] == "pipe jacking").unwrap();
        let check =
            scheme["checks"].as_array().unwrap().iter().find(|check| check["subject"] == "pipe end, jacking force");
        let factor =
            scheme["assumed"].as_array().unwrap().iter().find(|assumed| assumed["field"] == "candidates[0].factor");
        (check.unwrap()["limit"]["value"].as_f64().unwrap(), factor.unwrap()["mark"].as_str().unwrap().to_owned())
    };
    let (usual, usual_mark) = limit(&["assess", "--format", "json", &example(CLAY_WINS)]);
    let (ours, our_mark) = limit(&["assess", "--format", "json", "--tables", &table, &example(CLAY_WINS)]);
    assert!((ours / usual - 3.0 / 4.0).abs() < 1e-9);
    assert_eq!((usual_mark.as_str(), our_mark.as_str()), ("judgement", "given"));
}

/// The report names every table of the user's, used or not.
#[test]
fn tables_laid_over_are_named() {
    let one = file("one_table.yaml", b"id: practice_ratio\ntitle: a\nrows: [{ key: clay.factor, value: 4 }]\n");
    let two = file("two_table.yaml", b"id: ream_step\ntitle: b\nrows: []\n");
    let report = json(&["assess", "--format", "json", "--tables", &two, "--tables", &one, &example(CLAY_WINS)]);
    let named = |view: &Value| {
        let text = |key: &str| view[key].as_str().unwrap().to_owned();
        (text("table"), text("file"))
    };
    let tables: Vec<_> = report["tables"].as_array().unwrap().iter().map(named).collect();
    assert_eq!(tables, [("ream_step".to_owned(), two.clone()), ("practice_ratio".to_owned(), one.clone())]);
    let page = stdout(&jackpull(&["assess", "--tables", &two, "--tables", &one, &example(CLAY_WINS)]));
    // Without any space: a long name is broken at the width of the page.
    let bare = |text: &str| text.split_whitespace().collect::<String>();
    let line = format!("tables laid over: {two} (ream_step), {one} (practice_ratio)");
    assert!(bare(&page).contains(&bare(&line)), "{page}");
    let plain = json(&["assess", "--format", "json", &example(CLAY_WINS)]);
    assert_eq!(plain["tables"], Value::Array(vec![]));
    assert!(!stdout(&jackpull(&["assess", &example(CLAY_WINS)])).contains("tables laid over"));
}

/// A scheme lists what it uses: no face of a jacked pipe for one that is pulled.
#[test]
fn a_scheme_lists_what_it_assumes_and_no_more() {
    let report = json(&["assess", "--format", "json", &example(CLAY_WINS)]);
    let fields = |method: &str| -> Vec<String> {
        let schemes = report["schemes"].as_array().unwrap();
        let scheme = schemes.iter().find(|scheme| scheme["method"] == method && !scheme["force"].is_null()).unwrap();
        let assumed = scheme["assumed"].as_array().unwrap();
        assumed.iter().map(|assumed| assumed["field"].as_str().unwrap().to_owned()).collect()
    };
    let (jacked, pulled) = (fields("pipe jacking"), fields("pullback"));
    let of_the_face = |field: &&String| field.starts_with("face") || *field == "spoil";
    assert_eq!(jacked.iter().filter(of_the_face).count(), 3, "{jacked:?}");
    assert_eq!(pulled.iter().filter(of_the_face).count(), 0, "{pulled:?}");
    assert!(pulled.iter().any(|field| field.starts_with("pull.reamer")));
    assert!(pulled.iter().any(|field| field.starts_with("pilot tip")), "the stem of a pulled pipe is pushed too");
    assert!(jacked.contains(&"error of the pilot at the far end".to_owned()));
    let casing = std::fs::read_to_string(example(CLAY_WINS)).unwrap().edit("gravity_sewer", "casing");
    let casing = casing.edit("tolerance: 30 mm                # of the invert, either way\n", "");
    let casing = jackpull(&["assess", "--format", "json", &file("casing.yaml", casing.as_bytes())]);
    assert!(
        !stdout(&casing).contains("error of the pilot"),
        "a casing is checked for its grade where the file gives a tolerance"
    );
}

/// The text tells what every scheme assumes, each thing once.
#[test]
fn the_text_tells_the_assumptions_of_every_scheme() {
    let page = stdout(&jackpull(&["assess", &example(CLAY_WINS)]));
    let flat = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let (_, assumed) = page.split_once("Assumed for pipe jacking of clay 10 in\n").unwrap();
    let (assumed, _) = assumed.split_once("\nWorking: ").unwrap();
    let (first, second) = assumed.split_once("More assumed for pullback of PE100 315 mm SDR 11\n").unwrap();
    let (first, second) = (flat(first), flat(second));
    let report = json(&["assess", "--format", "json", &example(CLAY_WINS)]);
    let mut told = 0;
    for scheme in report["schemes"].as_array().unwrap() {
        let pulled = scheme["method"] == "pullback";
        for assumed in scheme["assumed"].as_array().unwrap() {
            let field = assumed["field"].as_str().unwrap();
            // A value of one pipe is told by the name of the pipe.
            let field = field.split_once("].").filter(|_| field.starts_with("candidates[")).map_or(field, |own| own.1);
            let field = field.split_once("]: ").filter(|_| field.starts_with("candidates[")).map_or(field, |own| own.1);
            let line = format!("{field}: {}", assumed["value"].as_str().unwrap());
            let line = flat(&line);
            assert!(first.contains(&line) || pulled && second.contains(&line), "{line} is not told in:\n{page}");
            assert!(!(first.contains(&line) && second.contains(&line)), "{line} is told twice in:\n{page}");
            told += 1;
        }
    }
    assert!(told > 30, "{told}");
}

/// What the text tells, the JSON holds as well.
#[test]
fn json_is_no_poorer_than_the_text() {
    let report = json(&["assess", "--format", "json", &example(CLAY_WINS)]);
    let page = stdout(&jackpull(&["assess", &example(CLAY_WINS)]));
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    let list = |view: &Value| view.as_array().unwrap().clone();
    let facts = list(&report["facts"]);
    assert!(facts.len() >= 3, "{facts:?}");
    assert!(facts.iter().all(|fact| page.contains(fact.as_str().unwrap())), "{facts:?}");
    let governed = &report["choice"]["governed_by"];
    let (subject, utilisation) = (governed["subject"].as_str().unwrap(), governed["utilisation"].as_f64().unwrap());
    assert!(page.contains(&format!("governed by {subject} at {utilisation:.2}")), "{governed}");
    assert_eq!(report["choice"]["with_care"], Value::Array(vec![]));

    for check in list(&report["schemes"]).iter().flat_map(|scheme| list(&scheme["checks"])) {
        let value = |key: &str| check[key]["value"].as_f64();
        match (value("likely_demand"), value("likely_limit"), check["likely_utilisation"].as_f64()) {
            (Some(demand), Some(limit), Some(utilisation)) => {
                let ratio = if check["sense"] == "at most" { demand / limit } else { limit / demand };
                assert!((utilisation - ratio).abs() < 1e-9, "{check}");
            }
            (None, None, None) => {}
            other => panic!("{other:?} in {check}"),
        }
    }

    let assumed = list(&report["schemes"][0]["assumed"]);
    let factor = assumed.iter().find(|assumed| assumed["field"] == "candidates[0].factor").unwrap();
    assert_eq!(factor["row"], "practice_ratio/clay.factor");

    let working = list(&report["working"]);
    assert!(working.len() > 10);
    for step in &working {
        for key in ["part", "name", "form", "source", "at", "mark", "valid"] {
            assert!(!step[key].as_str().unwrap().is_empty(), "{key} in {step}");
        }
        assert!(step["in_range"].as_bool().unwrap());
        assert!(page.contains(step["form"].as_str().unwrap()), "{step}");
        for value in list(&step["inputs"]).iter().map(|input| &input["value"]).chain([&step["result"]]) {
            assert!(value["value"].is_f64() && value["unit"].is_string(), "{step}");
        }
        let inputs = list(&step["inputs"]);
        assert!(!inputs.is_empty() && inputs.iter().all(|input| input["name"].is_string()), "{step}");
    }
    let area = working.iter().find(|step| step["name"] == "end bearing area behind a rating").unwrap();
    assert_eq!((&area["result"]["unit"], &area["mark"]), (&"mm2".into(), &"published".into()));
}

/// What has to be built and ordered is told beside the checks, in text and in JSON, with what it rests on.
#[test]
fn figures_are_told_beside_the_checks() {
    let report = json(&["assess", "--format", "json", &example(PE_WINS)]);
    let pulled = report["schemes"]
        .as_array()
        .unwrap()
        .iter()
        .find(|scheme| scheme["method"] == "pullback" && !scheme["force"].is_null())
        .unwrap();
    let figures = pulled["figures"].as_array().unwrap();
    let page = stdout(&jackpull(&["assess", &example(PE_WINS)]));
    let flat = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for label in
        ["weak link, set at most to", "ramp, length along the drive", "spoil, loose", "to leave beyond the pits"]
    {
        let figure = figures.iter().find(|figure| figure["label"] == label).unwrap_or_else(|| panic!("{figures:#?}"));
        assert!(figure["value"]["value"].as_f64().unwrap() > 0.0, "{figure}");
        assert!(figure["in_range"].as_bool().unwrap(), "{figure}");
        assert!(!figure["source"].as_str().unwrap().is_empty() && !figure["mark"].as_str().unwrap().is_empty());
        assert!(flat.contains(label), "{label} is not told in:\n{page}");
    }
    // What a check would need is told where it is absent; what stands as a requirement is not.
    let missing = pulled["not_given"].as_array().unwrap();
    let is_missing = |what: &str| missing.iter().any(|item| item.as_str().unwrap().starts_with(what));
    assert!(is_missing("bore that may fall on the pipe (pull.collapsed_bore)"), "{missing:?}");
    assert!(!is_missing("setting of the weak link"), "{missing:?}");
    let link = pulled["checks"].as_array().unwrap().iter().find(|check| check["subject"] == "weak link, setting");
    assert_eq!(link.unwrap()["verdict"], "with care");
}

/// A screen that the likely demand fails is told from a check that only the high one fails.
#[test]
fn a_failed_screen_is_told_as_one() {
    let text = std::fs::read_to_string(example(CLAY_WINS)).unwrap();
    let path = file("screen.yaml", text.edit(CLAY, "").as_bytes());
    let report = json(&["assess", "--format", "json", &path]);
    let checks: Vec<&Value> =
        report["schemes"].as_array().unwrap().iter().flat_map(|one| one["checks"].as_array().unwrap()).collect();
    let mut failed = 0;
    for check in &checks {
        let past = check["likely_utilisation"].as_f64().is_some_and(|used| used > 1.0);
        assert_eq!(check["screen"], Value::Bool(past && check["verdict"] == "with care"), "{check}");
        failed += usize::from(check["screen"] == true);
    }
    assert!(failed > 0);
    let page = stdout(&jackpull(&["assess", &path]));
    // Over a pulled pipe more cover is usual than there is.
    let line = page.lines().find(|line| line.starts_with("cover ")).unwrap();
    assert!(line.ends_with("with care *"), "{line}");
    assert!(page.contains("* a screen: the likely demand is past usual practice"));
}

/// The first page tells what governs with its mark, on what it holds and what has to be found out, before the ranking.
#[test]
fn the_first_page_tells_on_what_it_holds() {
    let text = SEWER.edit("1500 kN", "1200 kN") + "pilot: drilled\nspoil: vacuum\nsurface: { over: road }\n";
    let path = file("first_page.yaml", text.as_bytes());
    let page = stdout(&jackpull(&["assess", &path]));
    let (first, rest) = page.split_once("\nRanking\n").unwrap();
    let one_line = first.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        "Governs pipe end, jacking force: ",
        "Only if ",
        "pilot stem, buckling: ",
        "the joints must bear this much",
        "Find out ",
        "clear distance, services: no services are given",
        "unit friction: nothing fits if it is ",
        "Watch ground: ",
        "Missing not given, so not checked: ",
    ] {
        assert!(one_line.contains(part), "{part}\n{first}");
    }
    assert!(first.lines().count() <= 60, "{first}");
    // Cautions stand behind the checks.
    let at = |part: &str| rest.find(part).unwrap_or_else(|| panic!("{part}"));
    assert!(at("Checks: ") < at("\nCautions\n"));
}
