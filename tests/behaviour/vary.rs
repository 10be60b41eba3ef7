//! One input changed alone, and the pits of a longer line: both go through the same door as the file.

use crate::drives::{TOLD_CLAY, main, sewer};
use crate::edit::Edit;
use jackpull::choice::Choice;
use jackpull::drive_file::DriveFile;
use jackpull::handbook::Method;
use jackpull::quantity::{Length, Measure};
use jackpull::vary::{Input, InputTurns, Outcome, PitLimit, pits, turns, unlubricated};
use jackpull::{Drive, Handbook, Standing, choose, read_drive};

/// A sewer in three like stretches of clay, told in full, with a PE pipe beside the clay one.
fn clay(change: impl FnOnce(String) -> String) -> String {
    sewer(|text| {
        let stretch = |to: &str| {
            format!("  - {{ to: {to} m, class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }}\n")
        };
        let ground = [25, 40, 60].map(|to| stretch(&to.to_string())).concat();
        let text = text
            .edit("  - { class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }\n", &ground)
            .edit(TOLD_CLAY, &format!("{TOLD_CLAY}{PE}"))
            .edit("joint_thrust: 600 kN", "joint_thrust: 1000 kN")
            .edit("wall: { width: 2.6 m, height: 2.6 m", "wall: { width: 5 m, height: 3.6 m");
        change(text)
    })
}

const PE: &str = "  - { material: pe100, size: 315 mm, sdr: 11 }\n";

fn all(text: &str) -> Vec<InputTurns> {
    turns(&DriveFile::read(text).unwrap(), &Handbook::embedded()).unwrap().unwrap()
}

fn outcome(text: &str) -> Outcome {
    let choice = choose(&read_drive(text, &Handbook::embedded()).unwrap()).unwrap();
    choice.chosen().map_or(Outcome::Nothing, |first| Outcome::Chosen(first.candidate, first.scheme.method))
}

/// Written into the file, the value found turns the choice to what was said, and a little before it does not.
#[test]
fn a_turn_is_found_again_through_the_file() {
    let base = clay(|text| text);
    let now = outcome(&base);
    assert_eq!(now, Outcome::Chosen(0, Method::PipeJacking));
    let found = all(&base);
    let of = |input| found.iter().find(|turns| turns.input == input).unwrap();

    let longer = of(Input::Length).above.unwrap();
    let with_length = |metres: f64| {
        let stretches = [25.0, 40.0, 60.0].map(|to| to * metres / 60.0);
        base.edit("length: 60 m", &format!("length: {metres} m"))
            .edit("to: 25 m", &format!("to: {} m", stretches[0]))
            .edit("to: 40 m", &format!("to: {} m", stretches[1]))
            .edit("to: 60 m", &format!("to: {} m", stretches[2]))
    };
    assert_eq!(outcome(&with_length(longer.at.si)), longer.to);
    assert_eq!(outcome(&with_length(longer.at.si * 0.999)), now);

    let stone = of(Input::Stone).above.unwrap();
    let with_stone = |metres: f64| base.edit_all("largest_stone: 20 mm", &format!("largest_stone: {metres} m"));
    assert_eq!(outcome(&with_stone(stone.at.si)), stone.to);
    assert_ne!(stone.to, now);
    assert_eq!(outcome(&with_stone(stone.at.si * 0.99)), now);
}

/// A pull of a PE pipe alone: how long it may take and how warm the pipe may be.
#[test]
fn duration_and_temperature_turn_a_pull() {
    let pull = main(|text| text);
    let found = all(&pull);
    let of = |input| found.iter().find(|turns| turns.input == input).unwrap();
    let hot = of(Input::Temperature).above.unwrap();
    let with = |celsius: f64| outcome(&pull.edit("20 degC", &format!("{celsius} degC")));
    let celsius = hot.at.si - 273.15;
    assert_eq!((with(celsius + 0.01), with(celsius - 0.1)), (hot.to, Outcome::Chosen(0, Method::Pullback)));
    let long = of(Input::Duration).above.unwrap();
    let with = |hours: f64| outcome(&pull.edit("duration: 5 h", &format!("duration: {hours} h")));
    let hours = long.at.si / 3600.0;
    assert_eq!((with(hours * 1.0001), with(hours * 0.99)), (long.to, Outcome::Chosen(0, Method::Pullback)));
}

/// The least thrust that still pushes, and what is chosen with a smaller rig; without lubrication as if the file planned
/// none.
#[test]
fn a_smaller_rig_and_no_lubrication_turn_the_choice() {
    let base = clay(|text| text);
    let rig = |thrust: f64| base.edit("rig: { thrust: 900 kN", &format!("rig: {{ thrust: {thrust} N"));
    let thrust = all(&base).into_iter().find(|turns| turns.input == Input::Thrust).unwrap();
    let small = all(&rig(1.1 * 206e3)).into_iter().find(|turns| turns.input == Input::Thrust).unwrap();
    let turn = small.below.or(thrust.below).unwrap();
    assert_eq!(outcome(&rig(turn.at.si)), turn.to);
    assert_ne!(outcome(&rig(turn.at.si * 1.01)), turn.to);

    let without = |text: &str| unlubricated(&DriveFile::read(text).unwrap(), &Handbook::embedded()).unwrap();
    let base = rig(340e3);
    let dry = base.edit("lubrication: metered", "lubrication: none");
    assert_eq!(without(&base), Some(outcome(&dry)));
    assert_ne!(without(&base), Some(outcome(&base)));
    assert_eq!(without(&dry), None);
}

/// What the file does not tell is left out; a range ends where its values make no drive.
#[test]
fn only_what_the_file_tells_is_changed() {
    let no_pull = clay(|text| text.edit("pull: { duration: 6 h, pipe_temperature: 25 degC }\n", "").edit(PE, ""));
    let inputs: Vec<Input> = all(&no_pull).iter().map(|turns| turns.input).collect();
    assert_eq!(inputs, [Input::Friction, Input::Length, Input::Stone, Input::Water, Input::Thrust]);
    let uphill = clay(|text| text.edit("reception: { invert_depth: 3.60 m }", "grade: 3 %"));
    let length = all(&uphill).into_iter().find(|turns| turns.input == Input::Length).unwrap();
    // 4.20 m at 3 % comes out of the ground after 140 m; the bore sooner.
    let end = length.above.map_or(length.range.1.si, |turn| turn.at.si);
    assert!(end < 140.0 && end > 60.0, "{length:?}");
}

fn line(change: impl FnOnce(String) -> String) -> (Drive, Choice, Vec<jackpull::vary::Pits>) {
    let text = clay(change);
    let (file, handbook) = (DriveFile::read(&text).unwrap(), Handbook::embedded());
    let drive = file.resolve(&handbook).unwrap();
    let choice = choose(&drive).unwrap();
    let pits = pits(&file, &handbook, &drive, &choice).unwrap();
    (drive, choice, pits)
}

/// 400 m by drives of at most 300 ft, 91.44 m: five of 80 m. Without `line` nothing is said.
#[test]
fn a_line_is_shared_out_by_the_published_length() {
    let (_, choice, found) = line(|text| text.edit("rig:", "line: { length: 400 m }\nrig:"));
    let jacked = found.iter().find(|pits| choice.ranked[pits.ranked].scheme.method == Method::PipeJacking).unwrap();
    assert!(matches!(jacked.limit, PitLimit::Published(_)), "{jacked:?}");
    let (drives, spacing) = jacked.drives.unwrap();
    assert_eq!(drives, 5);
    approx::assert_relative_eq!(spacing.si(), 80.0);
    approx::assert_relative_eq!(jacked.longest.si(), 91.44, max_relative = 1e-9);
    assert!(jacked.standing.can_be_chosen());
    assert!(line(|text| text).2.is_empty());
}

/// Where a force stops it sooner, the check is named, and the drives are shorter, never over.
#[test]
fn a_line_is_shared_out_by_a_check() {
    let (_, choice, found) = line(|text| {
        text.edit("rig:", "line: { length: 400 m }\nrig:")
            .edit("lubrication: metered", "lubrication: none")
            .edit("rig: { thrust: 900 kN", "rig: { thrust: 1500 kN")
    });
    let jacked = found.iter().find(|pits| choice.ranked[pits.ranked].scheme.method == Method::PipeJacking).unwrap();
    assert_eq!(jacked.limit, PitLimit::Check(jackpull::check::Subject::EndCapacity));
    let (drives, spacing) = jacked.drives.unwrap();
    assert!(jacked.longest < Length::from_si(91.44) && spacing <= jacked.longest);
    assert!(f64::from(drives - 1) * jacked.longest.si() < 400.0, "no more drives than needed");
    assert_eq!(jacked.standing, Standing::WithCare);
    let end = *jacked.worst.unwrap().checks.get(jackpull::check::Subject::EndCapacity).unwrap();
    assert!(end.utilisation().unwrap() > 1.0 && end.likely_utilisation().unwrap() < 1.0);
}

/// In ground that suits no drive there is none.
#[test]
fn no_drive_in_ground_that_suits_none() {
    let (_, _, found) = line(|text| {
        text.edit("rig:", "line: { length: 400 m }\nrig:").edit_all("largest_stone: 20 mm", "largest_stone: 400 mm")
    });
    let jacked = found.iter().find(|pits| pits.worst.as_ref().is_none_or(|worst| worst.method == Method::PipeJacking));
    let jacked = jacked.unwrap();
    assert_eq!((jacked.drives, jacked.limit), (None, PitLimit::Never(jackpull::check::Subject::Ground)));
}

#[test]
fn a_line_shorter_than_its_drive_is_refused() {
    let text = clay(|text| text.edit("rig:", "line: { length: 50 m }\nrig:"));
    let error = read_drive(&text, &Handbook::embedded()).unwrap_err().to_string();
    assert!(error.starts_with("line.length: is shorter than the drive") && error.contains(" at line "), "{error}");
}

/// 1.2 km by drives of at most 91.44 m: 14 of 85.714 m. The worst ground is silt, whose high friction is 8 kPa where
/// lubrication is metered: pi 0.338138 m x 85.714 m x 8 kPa = 728.4 kN, 20 kN at the head, and 0.949 kN/m of pipe up
/// 1 % of it, 0.8 kN: 749.2 kN on an end that bears 691.2 kN, that is 1.084. A pull takes longer as the drive is longer.
#[test]
fn the_worst_drive_of_a_line_by_hand() {
    let (_, choice, found) = line(|text| {
        text.edit("rig:", "line: { length: 1.2 km }\nrig:").edit("duration: 6 h", "duration: 11 h").edit(
            "  - { to: 40 m, class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }\n",
            "  - { to: 40 m, class: silt, spt_n: 14, largest_stone: 0 mm }\n",
        )
    });
    let of = |method| found.iter().find(|pits| choice.ranked[pits.ranked].scheme.method == method).unwrap();
    let jacked = of(Method::PipeJacking);
    assert_eq!(jacked.drives.unwrap().0, 14);
    let worst = jacked.worst.unwrap();
    let end = worst.checks.get(jackpull::check::Subject::EndCapacity).unwrap();
    approx::assert_relative_eq!(end.utilisation().unwrap(), 1.084, max_relative = 1e-3);
    assert_eq!(worst.governing().unwrap().subject, jackpull::check::Subject::EndCapacity);
    assert_eq!(jacked.standing, Standing::of(&worst));
}

/// A main of 1 km by drives of 85 m and more: at the pace of 90 m in 11 h one of 100 m takes 12.2 h, beyond the 12 h of a
/// step of the table, and the stress allowed falls with it.
#[test]
fn a_longer_pull_takes_longer() {
    let text = main(|text| {
        text.edit("rig:", "line: { length: 1000 m }\nrig:")
            .edit("duration: 5 h", "duration: 11 h")
            .edit("length: 90 m", "length: 80 m")
    });
    let (file, handbook) = (DriveFile::read(&text).unwrap(), Handbook::embedded());
    let drive = file.resolve(&handbook).unwrap();
    let choice = choose(&drive).unwrap();
    let found = pits(&file, &handbook, &drive, &choice).unwrap();
    let pulled = found.iter().find(|pits| choice.ranked[pits.ranked].scheme.method == Method::Pullback).unwrap();
    let worst = pulled.worst.unwrap();
    assert_eq!(worst.method, Method::Pullback);
    assert!(pulled.drives.unwrap().1.si() > 80.0 * 12.0 / 11.0, "{:?}", pulled.drives);
    let tension = |scheme: &jackpull::method::Scheme| {
        scheme.checks.get(jackpull::check::Subject::Tension).unwrap().high().unwrap().1.si
    };
    assert!(tension(&worst) < tension(&choice.ranked[pulled.ranked].scheme));
}

/// Services are left to the drive that crosses them, and a weight of their movement keeps no drive from being looked at.
#[test]
fn a_weight_of_movement_leaves_the_pits_alone() {
    let with = |weights: &'static str| {
        line(move |text| {
            let crossing = "crossings: [{ at: 30 m, depth: 1.2 m, allowed_settlement: 20 mm }]";
            text.edit("crossings: []", crossing).edit("rig:", &format!("line: {{ length: 400 m }}\n{weights}rig:"))
        })
    };
    let (.., plain) = with("");
    let (.., weighed) = with("weights: [{ criterion: movement, weight: 1 }]\n");
    assert!(plain.iter().any(|pits| pits.drives.is_some()));
    assert_eq!(
        plain.iter().map(|pits| pits.drives).collect::<Vec<_>>(),
        weighed.iter().map(|pits| pits.drives).collect::<Vec<_>>()
    );
}

/// A friction that the file gives was said of a lubricated pipe: without lubrication the tables tell it, the stem stays as
/// dry as it was, and nothing is ever easier.
#[test]
fn a_given_friction_is_none_of_a_dry_pipe() {
    let given = "largest_stone: 20 mm, unit_friction: { low: 1 kPa, likely: 2 kPa, high: 3 kPa }";
    let base = clay(|text| {
        text.edit_all("largest_stone: 20 mm", given).edit("rig: { thrust: 900 kN", "rig: { thrust: 500 kN")
    });
    let without = |text: &str| unlubricated(&DriveFile::read(text).unwrap(), &Handbook::embedded()).unwrap();
    let tables = base.edit_all(given, "largest_stone: 20 mm").edit("lubrication: metered", "lubrication: none");
    assert_eq!(outcome(&base), Outcome::Chosen(0, Method::PipeJacking));
    assert_eq!(without(&base), Some(outcome(&tables)));
    assert_ne!(without(&base), Some(outcome(&base)));
}

/// A table that is nobody's is not looked for.
#[test]
fn water_of_each_stretch_is_not_that_of_the_file() {
    let own = clay(|text| text.edit_all("largest_stone: 20 mm", "largest_stone: 20 mm, groundwater: 4 m"));
    assert!(all(&own).iter().all(|turns| turns.input != Input::Water));
}
