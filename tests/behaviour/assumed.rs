//! Each assumed value is told with the schemes that it concerns, and with no other.

use crate::drives::{STEM, drive, text};
use crate::edit::Edit;
use jackpull::Method;
use jackpull::drive::Concern;

/// Fields that are told as assumed for a pipe of the shared drive put in by a method.
fn fields(pipe: usize, method: Method, change: fn(String) -> String) -> Vec<String> {
    let drive = drive(&text(change));
    drive.assumed_for(pipe, method).map(|assumed| assumed.field.clone()).collect()
}

fn same(text: String) -> String {
    text
}

/// The pilot goes before both pipes: the one that is pushed behind it, and the one that it pulls.
#[test]
fn the_pilot_is_told_with_every_pipe_that_follows_it() {
    for (pipe, method) in [(0, Method::PipeJacking), (1, Method::Pullback)] {
        let told = |change| fields(pipe, method, change).iter().any(|field| field == "pilot");
        assert!(told(same), "{method}");
        assert!(!told(|text| text.edit("rig:", "pilot: displacement\nrig:")), "{method}");
    }
}

#[test]
fn what_concerns_one_method_or_one_pipe_is_told_with_no_other() {
    let untold = |text: String| text.edit(&format!("{STEM}\n"), "");
    let (jacked, pulled) = (fields(0, Method::PipeJacking, untold), fields(1, Method::Pullback, untold));
    let has = |list: &[String], part: &str| list.iter().any(|field| field.contains(part));
    for part in ["spoil", "face: pressure on the cut ring", "unit_friction, jacked pipe", "candidates[0]"] {
        assert!(has(&jacked, part) && !has(&pulled, part), "{part}");
    }
    for part in ["pull.welds", "pull.stress_edition", "pull: model factor on the high pull", "candidates[1]"] {
        assert!(has(&pulled, part) && !has(&jacked, part), "{part}");
    }
    for part in ["stem.outside_diameter", "tolerance", "unit_friction, stem and casing"] {
        assert!(has(&jacked, part) && has(&pulled, part), "{part}");
    }
}

/// A water main keeps no grade.
#[test]
fn the_tolerance_is_told_of_a_sewer_alone() {
    let main = |text: String| text.edit("gravity_sewer", "pressure_main");
    for (pipe, method) in [(0, Method::PipeJacking), (1, Method::Pullback)] {
        assert!(
            !fields(pipe, method, main).iter().any(|field| [
                "tolerance",
                "guidance",
                "error of the pilot at the far end"
            ]
            .contains(&field.as_str()))
        );
    }
    let drive = drive(&text(same));
    let grade: Vec<&str> =
        drive.assumed().iter().filter(|it| it.concern == Concern::Grade).map(|it| it.field.as_str()).collect();
    assert_eq!(grade, ["tolerance", "guidance", "error of the pilot at the far end"]);
}
