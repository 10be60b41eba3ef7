//! Which friction models stand for which ground, pipe and lubricant.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::method::{FrictionModel, SoilView, friction_models};

const CLAY_PIPE: &str =
    "material: clay, size: 10 in, outside_diameter: 400 mm, end_bearing_area: 0.03 m2, weight: 1.2 kN/m";
const STEEL_PIPE: &str = "material: steel, size: 12 in, wall: 10 mm, steel_grade: api_5l_b";
const MODULI: &str = "moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg";

fn view(ground: &str, soil: &str, lubrication: &str, pipe: &str) -> SoilView {
    let text = text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        let ground = format!("  - {{ {ground}, largest_stone: 0 mm, soil: {{ {soil} }} }}\n");
        format!("{before}ground:\n{ground}rig:{after}")
            .edit("groundwater: 5.5 m", "groundwater: none")
            .edit("material: clay, size: 10 in", pipe)
            .edit("lubrication: metered", &format!("lubrication: {lubrication}"))
    });
    let drive = drive(&text);
    friction_models(&drive, &drive.candidates()[0]).unwrap().remove(0)
}

fn named<'a>(view: &'a SoilView, name: &str) -> Option<&'a FrictionModel> {
    view.models.iter().find(|model| model.name.starts_with(name))
}

fn levels(model: &FrictionModel) -> [f64; 3] {
    [model.friction.low.value, model.friction.likely.value, model.friction.high.value].map(|pascals| pascals / 1e3)
}

/// Silt with sand shows what sand with silt shows; the table gives the worse of 5 to 20 and of 25 to 45 kPa.
#[test]
fn a_mixed_face_shows_the_models_of_both_its_grounds() {
    let one = view("class: silt, spt_n: 8, mixed_with: loose_sand", MODULI, "none", CLAY_PIPE);
    let other = view("class: loose_sand, spt_n: 8, mixed_with: silt", MODULI, "none", CLAY_PIPE);
    assert_eq!(one.models, other.models);
    let alone = |class: &str| view(&format!("class: {class}, spt_n: 8"), MODULI, "none", CLAY_PIPE);
    for alone in [alone("silt"), alone("loose_sand")] {
        assert!(alone.notes.is_empty());
        for model in &alone.models {
            let mixed = named(&one, model.name).unwrap();
            let worse = levels(mixed).iter().zip(levels(model)).skip(1).all(|(mixed, alone)| *mixed >= alone);
            assert!(worse, "{}: {:?} and {:?}", model.name, mixed.friction, model.friction);
        }
    }
    assert_eq!(levels(named(&one, "contractors").unwrap()), [5.0, 35.0, 45.0]);
    assert!(one.notes[0].starts_with("a mixed face"), "{:?}", one.notes);
}

/// Clay with sand: the models of sand, and those of clay; gravel has no row in the table, which is said.
#[test]
fn a_mixed_face_of_clay_and_sand_has_the_models_of_clay_too() {
    let soil = format!("{MODULI}, undrained_strength: 25 kPa, undrained_modulus: 10 MPa");
    let pipe = format!("{CLAY_PIPE}, bore: 440 mm");
    for ground in [
        "class: gravel, spt_n: 12, mixed_with: firm_to_very_stiff_clay",
        "class: firm_to_very_stiff_clay, spt_n: 12, mixed_with: gravel",
    ] {
        let view = view(ground, &soil, "metered", &pipe);
        assert!(named(&view, "closed clay").is_some() && named(&view, "ATV").is_some(), "{ground}");
        assert_eq!(levels(named(&view, "GB 50268 table").unwrap()), [3.0, 4.0, 5.0]);
        assert!(view.notes.iter().any(|note| note.contains("speaks of the other alone")), "{:?}", view.notes);
    }
}

/// GB 50268 in clayey soil: 3 to 5 kPa on concrete, 3 to 4 on steel; 3 to 5 under a full sleeve, which a log shows.
#[test]
fn the_chinese_code_goes_by_pipe_and_by_sleeve() {
    let at = |lubrication, pipe| view("class: firm_to_very_stiff_clay, spt_n: 12", MODULI, lubrication, pipe);
    let of = |view: &SoilView, name: &str| named(view, name).map(levels);
    let steel = at("metered", STEEL_PIPE);
    assert_eq!(of(&steel, "GB 50268 table, steel"), Some([3.0, 3.5, 4.0]));
    assert!(of(&steel, "GB 50268 table, concrete").is_none() && of(&steel, "GB 50268, full sleeve").is_none());
    let logged = at("logged", STEEL_PIPE);
    assert_eq!(of(&logged, "GB 50268, full sleeve of slurry, steel"), Some([3.0, 4.0, 5.0]));
    let clay = at("logged", CLAY_PIPE);
    assert_eq!(of(&clay, "GB 50268 table, concrete"), Some([3.0, 4.0, 5.0]));
    assert_eq!(of(&clay, "GB 50268, full sleeve of slurry, concrete"), Some([3.0, 4.0, 5.0]));
    // In any ground, also where the table has no row.
    let gravel = view("class: gravel, spt_n: 20", MODULI, "logged", CLAY_PIPE);
    assert!(of(&gravel, "GB 50268, full sleeve").is_some() && of(&gravel, "GB 50268 table").is_none());
}

/// The form of the open shield is without lubricant.
#[test]
fn the_open_shield_is_dry() {
    let at = |lubrication| {
        let view = view("class: medium_to_dense_sand, spt_n: 20", MODULI, lubrication, CLAY_PIPE);
        named(&view, "Japanese open-shield form").unwrap().clone()
    };
    assert!(at("none").in_range);
    for lubrication in ["not_metered", "metered", "logged"] {
        let model = at(lubrication);
        assert!(!model.in_range && model.note.contains("does not hold here"), "{lubrication}");
    }
}
