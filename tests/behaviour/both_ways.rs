//! Pipe that can be jacked and pulled: what is given of it decides what is looked at.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::check::Subject;
use jackpull::{Method, choose};

const CLAY: &str = "  - { material: clay, size: 10 in }\n";

/// Methods that a pipe beside the shared PE pipe is looked at by.
fn methods(pipe: &str, change: fn(String) -> String) -> Vec<Method> {
    let drive = drive(&text(|text| change(text.edit(CLAY, &format!("  - {{ {pipe} }}\n")))));
    let ranked = choose(&drive).unwrap().ranked;
    let mut methods: Vec<Method> =
        ranked.iter().filter(|ranked| ranked.candidate == 0).map(|ranked| ranked.scheme.method).collect();
    methods.sort_by_key(|method| *method == Method::Pullback);
    methods
}

fn same(text: String) -> String {
    text
}

const BOTH: [Method; 2] = [Method::PipeJacking, Method::Pullback];
const STEEL: &str = "material: steel, size: 12 in, wall: 10 mm, steel_grade: api_5l_b";
const IRON: &str = "material: ductile_iron, size: 12 in, wall: 8 mm";

#[test]
fn steel_is_looked_at_as_it_is_given() {
    assert_eq!(methods(STEEL, same), BOTH);
    assert_eq!(methods(&format!("{STEEL}, free_length: 3 m"), same), [Method::PipeJacking]);
    assert_eq!(methods(&format!("{STEEL}, ovality: 0.5 %"), same), [Method::Pullback]);
    assert_eq!(methods("material: steel, size: 12 in, steel_grade: api_5l_b", same), [Method::Pullback]);
    let without_pull = |text: String| {
        text.edit("pull: { duration: 6 h, pipe_temperature: 25 degC }\n", "")
            .edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "")
    };
    assert_eq!(methods(STEEL, without_pull), [Method::PipeJacking]);
}

/// A size in millimetres is the same pipe: 18 in is 457.2 mm. Where nothing is to be pulled, a casing of the table has
/// its wall, which is listed; a size that no table has is told with those that there are.
#[test]
fn a_casing_is_put_in_as_any_steel_pipe() {
    let casing = |more: &str| format!("material: steel, size: 457.2 mm, steel_grade: a139_b{more}");
    assert_eq!(methods(&casing(""), same), [Method::Pullback]);
    assert_eq!(methods(&casing(", wall: 10 mm"), same), BOTH);
    assert_eq!(methods(&casing(", wall: 10 mm").edit("457.2 mm", "18 in"), same), BOTH);
    let alone = text(|text| {
        text.edit("pull: { duration: 6 h, pipe_temperature: 25 degC }\n", "")
            .edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "")
            .edit(CLAY, &format!("  - {{ {} }}\n", casing("")))
    });
    let drive = drive(&alone);
    let wall = drive.assumed().iter().find(|assumed| assumed.field == "candidates[0].wall");
    let jackpull::drive::AssumedValue::One(wall) = wall.unwrap().value else { panic!("{wall:?}") };
    assert_eq!(wall.display(jackpull::quantity::UnitSystem::Si).to_string(), "7.9 mm");
    let text = text(|text| text.edit(CLAY, &format!("  - {{ {} }}\n", casing("").edit("457.2 mm", "505 mm"))));
    let refused = jackpull::read_drive(&text, &jackpull::Handbook::embedded()).unwrap_err().to_string();
    let part = "candidates[0].size: no steel pipe of 505 mm in the table (there are 100 mm, 4 in, 4.5 in, 150 mm, 6 in, 168.3 mm,";
    assert!(refused.contains(part) && refused.contains(" 68 in, 1800 mm, 72 in; "), "{refused}");
}

#[test]
fn iron_is_looked_at_as_its_joints_are_rated() {
    let (thrust, pull) = (", rated_force: 900 kN", ", joint_pull: 200 kN, joint_deflection: 2 deg, pipe_length: 6 m");
    assert_eq!(methods(&format!("{IRON}{thrust}"), same), [Method::PipeJacking]);
    assert_eq!(methods(&format!("{IRON}{pull}"), same), [Method::Pullback]);
    assert_eq!(methods(&format!("{IRON}{thrust}{pull}"), same), BOTH);
}

/// The bore rule is for what is pulled: jacked, the same pipe follows close behind its head.
#[test]
fn a_jacked_pipe_has_no_annulus_of_a_pulled_one() {
    let wide = |text: String| text.edit("rig:", "tolerance: 300 mm\nrig:");
    let drive = drive(&text(|text| wide(text).edit(CLAY, &format!("  - {{ {STEEL} }}\n"))));
    let pipe = &drive.candidates()[0];
    let invert = |method| {
        let check = *jackpull::assess(&drive, pipe, method).checks.get(Subject::Invert).unwrap();
        check.high().unwrap().0.si
    };
    // Accuracy of the pilot alone, 1 in.
    assert!((invert(Method::PipeJacking) - 0.0254).abs() < 1e-9);
    assert!(invert(Method::Pullback) > 0.1);
}
