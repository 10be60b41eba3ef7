//! What `assess` prints of the choice: parts of the score, how sure it is, pits of a line, proposed pipes.

use crate::edit::Edit;
use crate::run::{SEWER, example, file, jackpull, stderr, stdout};
use serde_json::Value;

const CLAY_WINS: &str = "fennbridge_mill_lane.yaml";

fn page(name: &str, change: impl FnOnce(String) -> String) -> (String, Value) {
    let text = change(std::fs::read_to_string(example(CLAY_WINS)).unwrap());
    let path = file(name, text.as_bytes());
    let output = jackpull(&["assess", &path]);
    assert!(stderr(&output).is_empty(), "{}", stderr(&output));
    let page = stdout(&output);
    assert!(page.lines().all(|line| line.chars().count() <= 100), "{page}");
    let json = serde_json::from_slice(&jackpull(&["assess", "--format", "json", &path]).stdout).unwrap();
    (page.split_whitespace().collect::<Vec<_>>().join(" "), json)
}

#[test]
fn every_part_of_a_score_is_told() {
    let (page, json) = page("parts.yaml", |text| {
        text.edit("tolerance:", "weights: [{ criterion: size, weight: 1 }]\ntolerance:")
            .edit("material: pe100, size: 315 mm, sdr: 11", "material: pvc_restrained, size: 12 in, sdr: 18")
    });
    let mut parts = Vec::new();
    for scheme in json["schemes"].as_array().unwrap().iter().filter(|scheme| !scheme["score"].is_null()) {
        let (mut points, mut open) = (0.0, 0.0);
        for part in scheme["score"]["criteria"].as_array().unwrap() {
            let weight = part["weight"].as_f64().unwrap();
            let given = part["criterion"] == "size";
            assert_eq!(part["weight_mark"], if given { "given" } else { "judgement" });
            assert_eq!(part["weight_row"].is_null(), given);
            // What is not decided may be worth nothing or the whole weight.
            let Some(value) = part["value"].as_f64() else {
                assert!(
                    part["points"].is_null() && page.contains(&format!("not known yet (weight {:.0})", 100.0 * weight)),
                    "{part}"
                );
                open += 100.0 * weight;
                continue;
            };
            assert!((part["points"].as_f64().unwrap() - 100.0 * value * weight).abs() < 1e-9);
            points += 100.0 * value * weight;
            assert!(
                page.contains(&format!("{value:.2} x {:.0} = {:.0}", 100.0 * weight, 100.0 * value * weight)),
                "{part}"
            );
        }
        let of_the_whole = |key: &str| scheme["score"][key].as_f64().unwrap();
        assert!((points - of_the_whole("least")).abs() < 1e-9 && (points + open - of_the_whole("most")).abs() < 1e-9);
        parts.push(open > 0.0);
    }
    // What the joint of the pulled pipe bears its maker has to tell, so its load is open.
    assert_eq!(parts, [false, true]);
    assert!(page.contains("Weights given: length and diameter."), "{page}");
}

/// An open scheme says where it would stand, and what to write.
#[test]
fn an_open_scheme_says_what_to_settle() {
    let (page, json) = page("open.yaml", |text| text.edit("    largest_stone: 20 mm\n", ""));
    let line = "NOT DECIDED: pipe jacking of clay 10 in could fit; write ground[].largest_stone Drive";
    assert!(page.starts_with(line), "{page}");
    assert!(page.contains("would rank first once this is settled: ground"), "{page}");
    let open = json["schemes"].as_array().unwrap().iter().find(|scheme| scheme["standing"] == "not decided").unwrap();
    assert_eq!(open["if_settled"]["open"][0], "ground");
}

/// A drive that is not decided prints the lines to write: every field, what it is, an example and the check it settles.
#[test]
fn an_open_drive_prints_what_to_write() {
    let written = std::fs::read_to_string(example(CLAY_WINS)).unwrap();
    let text = written.clone().edit("    largest_stone: 20 mm\n", "");
    let path = file("to_write.yaml", text.as_bytes());
    let output = jackpull(&["assess", &path]);
    assert_eq!(output.status.code(), Some(1), "{}", stderr(&output));
    let page = stdout(&output);
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    let ways = [["ground[].largest_stone"]];
    let line = "NOT DECIDED: pipe jacking of clay 10 in could fit; write ground[].largest_stone Drive";
    assert!(page.starts_with(line), "{page}");
    let (_, write) = page.split_once(" Write ").unwrap();
    let (write, _) = write.split_once(" Ranking ").unwrap();
    for field in ways.iter().flatten() {
        assert!(write.contains(&format!("{field}: ")), "{field} is not in: {write}");
    }
    assert!(write.contains("(settles ground)"), "{write}");
    let json: Value = serde_json::from_slice(&jackpull(&["assess", "--format", "json", &path]).stdout).unwrap();
    let told = &json["schemes"][0]["if_settled"]["write"][0];
    assert_eq!(told["ways"], serde_json::json!(ways));
    assert_eq!(told["settles"][0], "ground");
    // Written, they settle it.
    let settled = jackpull(&["assess", &file("written.yaml", written.as_bytes())]);
    assert_eq!(settled.status.code(), Some(0), "{}", stdout(&settled));
    assert!(stdout(&settled).starts_with("PIPE JACKING, clay 10 in: fits"));
}

#[test]
fn how_sure_the_choice_is_stands_in_words_and_numbers() {
    let (page, json) = page("sure.yaml", |text| {
        text.edit("  - { material: pe100", "  - { material: clay, size: 15 in, bore: 19.2 in }\n  - { material: pe100")
    });
    assert!(page.contains("How firm the choice is"), "{page}");
    let sure = &json["sure"];
    let shares = sure["within_standing"]["shares"].as_array().unwrap();
    assert!((shares.iter().map(|share| share["share"].as_f64().unwrap()).sum::<f64>() - 1.0).abs() < 1e-9);
    let inputs = sure["inputs"].as_array().unwrap();
    assert_eq!(inputs.len(), 8);
    for turns in inputs {
        assert!(page.contains(turns["input"].as_str().unwrap()), "{turns}");
        let (from, to) = (turns["from"]["value"].as_f64().unwrap(), turns["to"]["value"].as_f64().unwrap());
        for side in ["below", "above"].map(|side| &turns[side]).into_iter().filter(|side| !side.is_null()) {
            let at = side["at"]["value"].as_f64().unwrap();
            assert!(from <= at && at <= to, "{turns}");
        }
    }
    let stone = inputs.iter().find(|turns| turns["input"] == "largest stone").unwrap();
    let told = format!("nothing fits at {:.0} mm or more", stone["above"]["at"]["value"].as_f64().unwrap());
    assert!(stone["above"]["to"].is_null() && page.contains(&told), "{stone}");
}

#[test]
fn the_pits_of_a_line_are_told() {
    let line = |text: String| text.edit("tolerance:", "line: { length: 400 m }\ntolerance:");
    let (told, json) = page("line.yaml", |text| line(text).edit("joint_thrust: 600 kN", "joint_thrust: 150 kN"));
    assert!(told.contains("Pits and drives of a line of 400.0 m"), "{told}");
    // The jacks are held to joints of the stem for 150 kN, of which the likely force leaves a sixth: 8 kPa on 100 mm are
    // 2.51 kN/m, and the tip takes 12; so (125 - 12) / 2.51 = 45 m at most, and nine drives.
    let part =
        "pipe jacking of clay 10 in: 9 drives of 44.4 m, 10 pits; the longest drive is 45.0 m, set by pilot stem";
    assert!(told.contains(part), "{told}");
    let jacked = &json["line"]["schemes"][0];
    assert_eq!((&jacked["drives"], &jacked["set_by"]), (&9.into(), &"pilot stem, joint under thrust".into()));
    // With joints for more it is the published 300 ft.
    let (told, json) = page("line_stout.yaml", line);
    assert!(
        told.contains("5 drives of 80.0 m, 6 pits; the longest drive is 91.4 m, set by published length"),
        "{told}"
    );
    let jacked = &json["line"]["schemes"][0];
    assert_eq!((&jacked["drives"], &jacked["set_by"]), (&5.into(), &"published length".into()));
    assert_eq!(jacked["source"]["source"], "ttp_2010");
}

#[test]
fn proposed_pipes_are_said_to_be() {
    let (page, json) = page("proposed.yaml", |text| {
        let (before, _) = text.split_once("candidates:").unwrap();
        format!("{before}needed_inside_diameter: 240 mm\n")
    });
    assert!(page.contains("proposed for an inside diameter of at least 240 mm: clay 10 in, clay 12 in, "), "{page}");
    assert!(page.contains("(proposed)"), "{page}");
    assert!(page.contains("pipe end, jacking force; needs rated_force from its maker"), "{page}");
    // The next size of clay bears what stalls in the smaller one; what the maker of another has to give is what to write.
    assert!(page.starts_with("PIPE JACKING, clay 12 in: fits with care"), "{page}");
    assert!(page.contains("not proposed: steel: bare steel is no sewer pipe"), "{page}");
    assert!(
        page.contains("; GRP and polymer concrete: outside diameter, wall and strength are each maker's"),
        "{page}"
    );
    assert!(page.contains("more proposed schemes are in the JSON"), "{page}");
    let schemes = json["schemes"].as_array().unwrap();
    assert!(schemes.len() > 8 && schemes.iter().all(|scheme| scheme["proposed"] == true), "{schemes:?}");
}

/// What a material alone bars is told in the first line.
#[test]
fn the_first_line_tells_why_a_pipe_is_out_of_question() {
    let path = file("clay_main.yaml", SEWER.edit("gravity_sewer", "pressure_main").as_bytes());
    let page = stdout(&jackpull(&["assess", &path])).split_whitespace().collect::<Vec<_>>().join(" ");
    let first = "NO SCHEME FITS; closest: pipe jacking of clay 10 in, barred: ";
    let why = page.strip_prefix(first).unwrap_or_else(|| panic!("{page}"));
    assert!(why.split(" Drive ").next().unwrap().len() > 20, "{page}");
}
