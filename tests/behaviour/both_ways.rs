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

/// A size that the tables have as a jacking casing alone is jacked, and the report says so; a field of a pull is refused
/// with the size in the unit of the file.
#[test]
fn a_casing_size_is_jacked_where_nothing_is_for_a_pull() {
    let casing = |more: &str| format!("material: steel, size: 457.2 mm, steel_grade: a139_b{more}");
    assert_eq!(methods(&casing(""), same), [Method::PipeJacking]);
    assert_eq!(methods(&casing(", wall: 10 mm"), same), [Method::PipeJacking]);
    assert_eq!(methods(&casing(", wall: 10 mm, outside_diameter: 457.2 mm"), same), BOTH);
    let text = |more: &str| text(|text| text.edit(CLAY, &format!("  - {{ {} }}\n", casing(more))));
    let assumed = format!("{:?}", drive(&text("")).assumed());
    assert!(assumed.contains("jacked alone: the tables have its size as a jacking casing"), "{assumed}");
    for (size, told) in [("457.2 mm", "457.2 mm"), ("18 in", "18 in"), ("500 mm", "500 mm")] {
        let text = text(", ovality: 0.5 %").edit("457.2 mm", size);
        let refused = jackpull::read_drive(&text, &jackpull::Handbook::embedded()).unwrap_err().to_string();
        let part = format!("candidates[0].size: no iron pipe size {told} in the table");
        assert!(refused.contains(&part) && refused.contains("casings of 457.2 mm, 660.4 mm"), "{refused}");
    }
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
    let drive = drive(&text(|text| text.edit(CLAY, &format!("  - {{ {STEEL} }}\n"))));
    let pipe = &drive.candidates()[0];
    let invert = |method| {
        let check = *jackpull::assess(&drive, pipe, method).checks.get(Subject::Invert).unwrap();
        check.high().unwrap().0.si
    };
    // Accuracy of the pilot alone, 1 in.
    assert!((invert(Method::PipeJacking) - 0.0254).abs() < 1e-9);
    assert!(invert(Method::Pullback) > 0.1);
}
