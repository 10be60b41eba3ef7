//! What `assess` prints of the thrust wall, of stations, of the shove plan and of a pipe in service.

use crate::edit::Edit;
use crate::run::{file, jackpull, stdout};
use serde_json::Value;

const DRIVE: &str = "\
service: gravity_sewer
length: 60 m
launch:
  invert_depth: 4.20 m
  soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg }
reception: { invert_depth: 3.96 m }
groundwater: 5.5 m
lubrication: metered
stops: [{ at: 30 m }]
ground:
  - { to: 25 m, class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 20 mm, SOIL }
  - { class: medium_to_dense_sand, spt_n: 20, largest_stone: 20 mm, SOIL }
rig: { thrust: 600 kN, pull: 500 kN, cylinder_area: 30000 mm2 }
candidates:
  - { material: clay, size: 10 in, pipe_length: 1 m, crushing: en_295_160 }
";

fn path(name: &str, change: impl FnOnce(String) -> String) -> String {
    let soil = "soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg }";
    file(name, change(DRIVE.edit_all("SOIL", soil)).as_bytes())
}

fn json(path: &str) -> Value {
    serde_json::from_slice(&jackpull(&["assess", "--format", "json", path]).stdout).unwrap()
}

#[test]
fn the_page_tells_wall_stations_plan_and_service() {
    for units in ["si", "us"] {
        let page = stdout(&jackpull(&["assess", "--units", units, &path(&format!("works_{units}.yaml"), |text| text)]));
        assert!(page.lines().all(|line| line.chars().count() <= 100), "{page}");
        let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
        for part in [
            "thrust wall needed ",
            "jacking stations not possible: ",
            "Shove plan: pipes at which something changes",
            "pipe in service, crushing",
            "traffic: highway",
        ] {
            assert!(page.contains(part), "{part} in {page}");
        }
        assert!(!page.contains("strength of a rigid pipe in service"), "{page}");
    }
}

/// All pipes of the plan are in the JSON; the text has those at which something changes.
#[test]
fn the_json_holds_the_whole_plan() {
    let path = path("works_plan.yaml", |text| text);
    let report = json(&path);
    let scheme = &report["schemes"][0];
    let plan = scheme["shove_plan"].as_array().unwrap();
    assert_eq!(plan.len(), 60);
    for (index, pipe) in plan.iter().enumerate() {
        assert_eq!(pipe["pipe"], index + 1);
        let value = |view: &Value| view["value"].as_f64().unwrap();
        let force = value(&pipe["force"]["likely"]);
        // 30,000 mm2 at 0.95: 28.5 kN a MPa.
        assert!((force / 28.5 / value(&pipe["gauge"]["likely"]) - 1.0).abs() < 1e-9, "{pipe}");
        assert!(value(&pipe["stop"]) <= value(&pipe["force"]["high"]));
    }
    let needed = &scheme["wall_needed"];
    assert_eq!(needed["width"], needed["height"]);
    assert_eq!(needed["row"], "thrust_wall/safety_default");
    assert_eq!(scheme["stations"]["places"], Value::Array(vec![]));
    assert_eq!(scheme["stations"]["mark"], "common_practice");

    let page = stdout(&jackpull(&["assess", &path]));
    let (_, table) = page.split_once("all pipes are in the JSON\n").unwrap();
    let rows: Vec<&str> = table.lines().skip(2).take_while(|line| !line.is_empty()).collect();
    let numbers: Vec<&str> = rows.iter().map(|row| row.split_whitespace().next().unwrap()).collect();
    // The first, the end of the first ground, the stop, the last.
    assert_eq!(numbers, ["1", "25", "30", "60"], "{table}");
}

/// A wall that is given is checked, and no other is sized.
#[test]
fn a_wall_that_is_given_is_not_sized() {
    let path = path("works_wall.yaml", |text| {
        text.edit("reception:", "  wall: { width: 3 m, height: 3 m, movement: checked }\nreception:")
    });
    let report = json(&path);
    let scheme = &report["schemes"][0];
    assert!(scheme["wall_needed"].is_null());
    let subjects: Vec<&str> =
        scheme["checks"].as_array().unwrap().iter().map(|check| check["subject"].as_str().unwrap()).collect();
    assert!(subjects.contains(&"thrust wall") && subjects.contains(&"thrust wall, level"), "{subjects:?}");
    assert!(!subjects.contains(&"thrust wall, movement"), "{subjects:?}");
    assert!(!report["not_checked"].to_string().contains("launch.wall"));
}

/// Each model says what part of its stretch it speaks of, and those that every stretch has are summed.
#[test]
fn friction_models_say_where_they_stand() {
    let path = path("works_models.yaml", |text| text);
    let page = stdout(&jackpull(&["assess", &path]));
    assert!(page.lines().all(|line| line.chars().count() <= 100), "{page}");
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        "mean over the stretch (coefficients fitted",
        "any place, depth is not in it (",
        "friction on the whole pipe by the models that every stretch has, greatest at the far end: Terzaghi silo",
    ] {
        assert!(page.contains(part), "{part} in {page}");
    }
    let report = json(&path);
    let scheme = &report["schemes"][0];
    assert_eq!(scheme["soil"][0]["models"][0]["over"], "mean over the stretch");
    let forces = scheme["model_forces"].as_array().unwrap();
    let names: Vec<_> = forces.iter().filter_map(|force| force["model"].as_str()).collect();
    let expected =
        ["Terzaghi silo with fitted coefficients", "pipe jacking association silo", "GB 50268 table, concrete pipe"];
    assert_eq!(names, expected);
}

/// Clay that closes on the pipe is named, with what it asks over the band, and what is missing to tell is said.
#[test]
fn clay_that_closes_is_told() {
    let clay = |more: &str| {
        let soil = format!("20 mm, soil: {{ undrained_strength: 25 kPa{more}, moist");
        move |text: String| text.edit_all("20 mm, soil: { moist", &soil)
    };
    let path_of = |name: &str, more: &str| path(name, clay(more));
    let told = path_of("works_clay_told.yaml", ", undrained_modulus: 3 MPa");
    let page = stdout(&jackpull(&["assess", &told])).split_whitespace().collect::<Vec<_>>().join(" ");
    let untold = path_of("works_clay_untold.yaml", "");
    let report = json(&untold);
    let notes = report["schemes"][0]["soil"][0]["notes"].to_string();
    assert!(page.contains("closed clay, adhesion on the whole pipe: 24.00 kPa / 25.00 kPa / 25.00 kPa"), "{page}");
    assert!(notes.contains("undrained_modulus is not given"), "{notes}");
    // The check says so already.
    let checks = report["schemes"][0]["checks"].as_array().unwrap();
    assert!(checks.iter().any(|check| check["subject"] == "clay, closing on the pipe"), "{checks:?}");
    assert!(!report["schemes"][0]["not_given"].to_string().contains("closed clay on the pipe"));
}
