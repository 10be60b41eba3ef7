//! What `assess` prints of the choice: parts of the score, how sure it is, pits of a line, proposed pipes.

use crate::edit::Edit;
use crate::run::{example, file, jackpull, stderr, stdout};
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
    let (page, json) =
        page("parts.yaml", |text| text.edit("tolerance:", "weights: [{ criterion: size, weight: 1 }]\ntolerance:"));
    for scheme in json["schemes"].as_array().unwrap().iter().filter(|scheme| !scheme["score"].is_null()) {
        let mut points = 0.0;
        for part in scheme["score"]["criteria"].as_array().unwrap() {
            let (value, weight) = (part["value"].as_f64().unwrap(), part["weight"].as_f64().unwrap());
            assert!((part["points"].as_f64().unwrap() - 100.0 * value * weight).abs() < 1e-9);
            points += 100.0 * value * weight;
            let given = part["criterion"] == "size";
            assert_eq!(part["weight_mark"], if given { "given" } else { "judgement" });
            assert_eq!(part["weight_row"].is_null(), given);
            assert!(
                page.contains(&format!("{value:.2} x {:.0} = {:.0}", 100.0 * weight, 100.0 * value * weight)),
                "{part}"
            );
        }
        assert!((points - scheme["score"]["least"].as_f64().unwrap()).abs() < 1e-9);
    }
    assert!(page.contains("Given: length and diameter."), "{page}");
}

/// An open scheme says where it would stand.
#[test]
fn an_open_scheme_says_what_to_settle() {
    let (page, json) = page("open.yaml", |text| text.edit("    largest_stone: 20 mm\n", ""));
    assert!(page.starts_with("NO SCHEME FITS"), "{page}");
    assert!(page.contains("would rank 1 at best if this is settled: ground"), "{page}");
    let open = json["schemes"].as_array().unwrap().iter().find(|scheme| scheme["standing"] == "open").unwrap();
    assert_eq!(open["if_settled"]["open"][0], "ground");
}

#[test]
fn how_sure_the_choice_is_stands_in_words_and_numbers() {
    let (page, json) = page("sure.yaml", |text| {
        text.edit("  - { material: pe100", "  - { material: clay, size: 15 in, bore: 19.2 in }\n  - { material: pe100")
    });
    assert!(page.contains("How sure the choice is"), "{page}");
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
    assert!(stone["above"]["to"].is_null() && page.contains("and above no scheme can be chosen"), "{stone}");
}

#[test]
fn the_pits_of_a_line_are_told() {
    let (page, json) = page("line.yaml", |text| text.edit("tolerance:", "line: { length: 400 m }\ntolerance:"));
    assert!(page.contains("Pits and drives of a line of 400.0 m"), "{page}");
    // 300 ft at most, so five drives.
    assert!(page.contains("pipe jacking of clay 10 in: 5 drives of 80.0 m, 6 pits"), "{page}");
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
    assert!(page.contains("proposed for an inside diameter of at least 240 mm: clay 10 in, clay 15 in, "), "{page}");
    assert!(page.contains("(proposed)"), "{page}");
    assert!(page.contains("pipe end, jacking force; its maker has to give rated_force"), "{page}");
    assert!(page.contains("not proposed: GRP and polymer concrete"), "{page}");
    assert!(page.contains("more proposed schemes stand in the JSON"), "{page}");
    let schemes = json["schemes"].as_array().unwrap();
    assert!(schemes.len() > 8 && schemes.iter().all(|scheme| scheme["proposed"] == true), "{schemes:?}");
}
