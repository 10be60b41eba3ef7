//! Techniques: one row each, which names all that goes by it.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::check::Subject;
use jackpull::handbook::Handbook;
use jackpull::quantity::{Measure, feet};
use jackpull::{Drive, Method, Scheme, assess, read_drive};
use std::sync::Arc;

/// What a technique names is there.
#[test]
fn each_row_names_rows_that_are_there() {
    let book = Handbook::embedded();
    let rows = &book.technique().unwrap().rows;
    assert_eq!(rows.len(), 12);
    for row in rows {
        let (key, named) = (row.key.as_str(), &row.value);
        if let Some(stem) = &named.stem {
            assert!(book.pilot_stem().unwrap().get(&stem.value.0).is_some(), "{key}");
        }
        assert!(book.hole_overcut().unwrap().get(&named.overcut.value.0).is_some(), "{key}");
        assert!(book.joint_angle().unwrap().get(&named.joint.value.0).is_some(), "{key}");
        assert!(book.method_limit().unwrap().get(&named.range.value.0).is_some(), "{key}");
        assert!(book.production_rate().unwrap().get(&named.pace.value.0).is_some(), "{key}");
        // A pilot has a stem, a tip, and a rating of its own.
        let pilot = named.before.value != jackpull::handbook::Before::Nothing;
        assert_eq!([named.stem.is_some(), named.tip.is_some(), named.pilot.is_some()], [pilot; 3], "{key}");
    }
}

fn jacked(drive: &Drive) -> Scheme {
    assess(drive, &drive.candidates()[0], Method::PipeJacking)
}

/// A user's row of the technique of the drive turns all that goes by it: a head that sucks has 50 kPa in place of 100 kPa on
/// the same ring, joints turn by 0.3 deg in place of 0.2 deg, and 1,600 ft are the longest in place of 1,500 ft.
#[test]
fn a_technique_laid_over_turns_what_goes_by_it() {
    let book = Handbook::embedded();
    let file = text(|text| {
        text.edit("stem: { outside_diameter: 100 mm, head_diameter: 100 mm }", "spoil: slurry\npilot: none")
            .edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "")
            .edit("pull: { duration: 6 h, pipe_temperature: 25 degC }\n", "")
    });
    let row = "key: slurry, value: { spoil: slurry, before: nothing, words: ours, head: slurry, face: vacuum, \
               overcut: guided_stable, line: machine, joint: open, range: open_shield, pace: jacking_machine, \
               guidance: laser, guidance_best: laser }";
    let ours = |row: &str| format!("id: technique\ntitle: ours\nrows: [{{ {row} }}]\n");
    let laid = |row: &str| Arc::new(book.with_overlay("ours.yaml", &ours(row)).unwrap());
    let (plain, ours) = (read_drive(&file, &book).unwrap(), read_drive(&file, &laid(row)).unwrap());
    let high = |drive: &Drive, subject| jacked(drive).checks.get(subject).unwrap().high().unwrap();
    let limit = |drive: &Drive| high(drive, Subject::Length).1.si;
    assert!((limit(&plain) - feet(1500.0).si()).abs() < 1e-9 && (limit(&ours) - feet(1600.0).si()).abs() < 1e-9);
    let angle = |drive: &Drive| high(drive, Subject::JointAngle).0.si;
    assert!(angle(&ours) > angle(&plain));
    let force = |drive: &Drive| jacked(drive).force.unwrap().high.si();
    assert!(force(&ours) < force(&plain));
    assert_eq!(ours.technique(), "ours");
    // A row that is not there is no silent default.
    let missing = read_drive(&file, &laid(&row.edit("range: open_shield", "range: none_such"))).unwrap_err();
    assert!(missing.to_string().contains("none_such"), "{missing}");
}

/// Behind a head that nothing guides joints turn by 0.3 deg, whether the file writes that there is no stem or leaves the stem
/// out: left out, it was 0.1 deg.
#[test]
fn a_stem_that_is_left_out_guides_nothing() {
    const STEM: &str = "stem: { outside_diameter: 100 mm, head_diameter: 100 mm }\n";
    let angle = |stem: &str| {
        let file = text(|text| {
            text.edit(STEM, &format!("pilot: none\nspoil: vacuum\n{stem}"))
                .edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "")
                .edit("pull: { duration: 6 h, pipe_temperature: 25 degC }\n", "")
        });
        let drive = read_drive(&file, &Handbook::embedded()).unwrap_or_else(|faults| panic!("{faults}"));
        jacked(&drive).checks.get(Subject::JointAngle).unwrap().high().unwrap().0.si
    };
    let (left_out, none) = (angle(""), angle("stem: { outside_diameter: none }\n"));
    assert!((left_out - none).abs() < 1e-12, "{left_out} {none}");
}

/// Machines that no value names are read where they can mean one thing, and pointed at where they can mean two.
#[test]
fn machines_by_their_names() {
    let read = |spoil: &str| {
        let file = text(|text| text.edit("candidates:", &format!("spoil: {spoil}\ncandidates:")));
        read_drive(&file, &Handbook::embedded()).map(|drive| drive.technique().to_owned())
    };
    assert_eq!(read("microtunnelling").unwrap(), read("slurry").unwrap());
    assert_eq!(read("hand dug").unwrap(), read("open_edge").unwrap());
    let two = read("tbm").unwrap_err().to_string();
    assert!(two.contains("did you mean \"slurry\" or \"open_edge\"?"), "{two}");
}
