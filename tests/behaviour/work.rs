//! What the file tells of the work: shifts, what holds the jacks, water at the pits, level of the bore fluid.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::drive::IfStalled;
use jackpull::quantity::{FromText, Ratio, Time};
use jackpull::{Handbook, read_drive};

fn with(lines: &str) -> String {
    text(|text| text.edit("work: { round_the_clock: true }\n", "").edit("rig:", &format!("{lines}rig:")))
}

/// A day of the work is one shift of eight hours where nothing is told; three of eight leave no night.
#[test]
fn nights_are_what_the_shifts_leave() {
    let one = Ratio::from_text("1").unwrap();
    for (lines, hours, between) in [
        ("", "8 h", Some(one)),
        ("work: { shift_length: 10 h }\n", "10 h", Some(one)),
        ("pace: { shift_length: 10 h }\n", "10 h", Some(one)),
        ("work: { shift_length: 10 h }\npace: { shift_length: 10 h }\n", "10 h", Some(one)),
        ("work: { shifts_a_day: 2 }\n", "8 h", Some(one + one)),
        ("work: { shifts_a_day: 3 }\n", "8 h", None),
        ("work: { round_the_clock: true }\n", "8 h", None),
        ("work: { round_the_clock: false }\n", "8 h", Some(one)),
    ] {
        let drive = drive(&with(lines));
        let work = drive.work();
        assert_eq!(work.shift(), Time::from_text(hours).unwrap(), "{lines}");
        assert_eq!(work.shifts_between_nights().map(|shifts| shifts.value), between, "{lines}");
    }
}

/// An empty list says that there are none; no list says nothing.
#[test]
fn no_services_is_not_the_same_as_silence() {
    assert!(!drive(&with("")).crossings_are_told());
    assert!(drive(&with("crossings: []\n")).crossings_are_told());
    assert!(drive(&with("crossings: [{ at: 30 m, depth: 1.2 m }]\n")).crossings_are_told());
    let written = jackpull::DriveFile::read(&with("crossings: []\n")).unwrap().to_yaml().unwrap();
    assert!(drive(&written).crossings_are_told(), "{written}");
}

#[test]
fn what_is_done_where_it_stalls_is_read() {
    let stalled = |lines: &str| drive(&with(lines)).if_stalled();
    assert_eq!(stalled(""), None);
    assert_eq!(stalled("if_stalled: rescue_pit\n"), Some(IfStalled::RescuePit));
    assert_eq!(stalled("if_stalled: second_lubrication\n"), Some(IfStalled::SecondLubrication));
}

#[test]
fn what_cannot_be_of_the_work_is_a_fault() {
    let fault = |text: &str| match read_drive(text, &Handbook::embedded()) {
        Err(error) => error.to_string(),
        Ok(_) => panic!("taken:\n{text}"),
    };
    for (lines, wanted) in [
        (
            "work: { shift_length: 9 h }\npace: { shift_length: 8 h }\n",
            "work.shift_length: is not that of `pace.shift_length` (give it once)",
        ),
        ("work: { shifts_a_day: 4 }\n", "work.shifts_a_day: expected a plain number or a percentage from 1 to 3"),
        ("work: { round_the_clock: often }\n", "work.round_the_clock: expected true or false, got often"),
        (
            "work: { shift_length: 12 h, shifts_a_day: 3 }\n",
            "work.shifts_a_day: makes more than a day of its shifts (see shift_length)",
        ),
        ("if_stalled: stations\n", "if_stalled: needs the thrust of a station"),
    ] {
        let told = fault(&with(lines));
        assert!(told.contains(wanted), "{wanted}: {told}");
    }
    let held = text(|text| text.edit("pull: 500 kN }", "pull: 500 kN, held_to: 901 kN }"));
    assert!(fault(&held).contains("rig.held_to: is more than the rig thrusts (see rig.thrust)"), "{}", fault(&held));
    let toe = text(|text| text.edit("invert_depth: 4.20 m", "invert_depth: 4.20 m, wall_toe_depth: 4 m"));
    assert!(fault(&toe).contains("launch.wall_toe_depth: is above the floor of the pit"), "{}", fault(&toe));
}
