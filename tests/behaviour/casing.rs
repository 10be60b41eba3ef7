//! A casing that goes in before the pipe: its section, its free length in the pit, its joints.

use crate::drives::{STEM, drive, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Subject, Verdict};
use jackpull::{Method, Scheme, assess};
use std::f64::consts::PI;

/// One ground, so that no scheme for mixed ground is added.
fn cased(more: &str) -> Scheme {
    let drive = drive(&text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        format!("{before}ground:\n  - {{ class: silt, spt_n: 14, largest_stone: 0 mm }}\nrig:{after}")
            .edit("size: 10 in }", &format!("size: 10 in, casing: 406 mm{more} }}"))
            .edit("thrust: 900 kN", "thrust: 9 MN")
    }));
    assess(&drive, &drive.candidates()[0], Method::PipeJacking)
}

fn limit(scheme: &Scheme, subject: Subject) -> f64 {
    scheme.checks.get(subject).unwrap().high().unwrap().1.si
}

/// A casing behind the pilot is driven out by the pipe: it may be as wide as that, 338 mm, and asks for no room inside.
#[test]
fn a_casing_that_is_driven_out_is_as_wide_as_the_pipe() {
    let of = |casing: &str| {
        let text =
            text(|text| text.edit("size: 10 in }", &format!("size: 10 in, casing: {casing}, casing_wall: 8 mm }}")));
        jackpull::read_drive(&text, &jackpull::Handbook::embedded()).map_err(|error| error.to_string())
    };
    for casing in ["338 mm", "350 mm"] {
        assert!(of(casing).is_ok(), "{casing}: {:?}", of(casing).err());
    }
    assert!(of("330 mm").unwrap_err().contains("casing: is smaller than clay 10 in"));
}

fn area() -> f64 {
    PI * (0.406 - 0.008) * 0.008
}

/// A wall that is not told is the least of the table for its size, 0.219 in at 16 in, of 30 ksi over 3, and its column and
/// its welds are asked for; beyond 72 in no table has a wall, and all three are missing.
#[test]
fn a_casing_that_is_not_told_is_the_least_of_its_size() {
    let bare = cased("");
    let wall = 0.219 * 0.0254;
    let section = PI * (0.406 - wall) * wall * 30e3 * 6_894.757_293_168 / 3.0;
    assert_relative_eq!(limit(&bare, Subject::CasingSection), section, max_relative = 1e-6);
    assert!(bare.checks.get(Subject::CasingSection).unwrap().best().unwrap().1.si > 2.0 * section);
    for subject in [Subject::CasingColumn, Subject::CasingJoint] {
        assert!(bare.checks.get(subject).unwrap().is_required(), "{subject:?}");
    }
}

/// 406 mm x 8 mm, D/t 51, is compact (API RP 2A: up to 60), so that the yield over 3 decides and not 0.6 of the local
/// stress: the default of a jacked steel pipe. With the yield of grade A, 30 ksi, and with 355 MPa.
#[test]
fn the_section_bears_its_yield_over_the_factor() {
    let (taken, given) = (cased(", casing_wall: 8 mm"), cased(", casing_wall: 8 mm, casing_yield_strength: 355 MPa"));
    assert_relative_eq!(
        limit(&given, Subject::CasingSection) / limit(&taken, Subject::CasingSection),
        355e6 / 30e3 / 6_894.757_293_168,
        max_relative = 1e-9
    );
    assert_relative_eq!(limit(&given, Subject::CasingSection) / area(), 355e6 / 3.0, max_relative = 1e-9);
    let factor = cased(", casing_wall: 8 mm, casing_yield_strength: 355 MPa, casing_factor: 2");
    assert_relative_eq!(limit(&factor, Subject::CasingSection) / area(), 355e6 / 2.0, max_relative = 1e-9);
    let likely = |subject| given.checks.get(subject).unwrap().likely().unwrap().0.si;
    assert_relative_eq!(likely(Subject::CasingSection), likely(Subject::CasingThrust), max_relative = 1e-12);
}

/// AISC 360 E3 on 3 m and 30 m with one end free (2.1), 29,000 ksi, over 1.67; round section not slender.
#[test]
fn the_free_length_is_a_column() {
    let fy = 355e6;
    let at = |length: f64| {
        let radius = (0.406_f64.powi(2) + 0.39_f64.powi(2)).sqrt() / 4.0;
        let elastic = PI.powi(2) * 29e6 * 6_894.757_293_168 / (2.1 * length / radius).powi(2);
        let critical = if fy / elastic <= 2.25 { 0.658_f64.powf(fy / elastic) * fy } else { 0.877 * elastic };
        critical * area() / 1.67
    };
    for length in [3.0, 30.0] {
        let more = format!(", casing_wall: 8 mm, casing_yield_strength: 355 MPa, casing_free_length: {length} m");
        assert_relative_eq!(limit(&cased(&more), Subject::CasingColumn), at(length), max_relative = 1e-6);
    }
}

/// The rating against the greatest thrust on the casing, which is that of the frame behind it.
#[test]
fn a_weak_joint_is_over() {
    let high = |scheme: &Scheme| scheme.checks.get(Subject::CasingThrust).unwrap().high().unwrap().0.si;
    let thrust = high(&cased(""));
    let verdict = |rating: f64| {
        let scheme = cased(&format!(", casing_joint_thrust: {rating} N"));
        scheme.checks.get(Subject::CasingJoint).unwrap().verdict
    };
    assert_eq!(verdict(thrust * 0.999), Verdict::Over);
    assert_eq!(verdict(thrust * 1.001), Verdict::Within);
}

/// Nothing is pushed harder than the jacks can: joints for 900 kN bear all that those of 900 kN give.
#[test]
fn the_jacks_give_no_more() {
    let scheme = |rig: &str| {
        let more = ", casing_joint_thrust: 900 kN";
        let drive = drive(&text(|text| {
            text.edit("thrust: 900 kN", rig).edit("size: 10 in }", &format!("size: 10 in, casing: 406 mm{more} }}"))
        }));
        assess(&drive, &drive.candidates()[0], Method::PipeJacking)
    };
    let joint = |scheme: &Scheme| *scheme.checks.get(Subject::CasingJoint).unwrap();
    assert_eq!(joint(&scheme("thrust: 900 kN")).high().unwrap().0.si, 900e3);
    assert_eq!(joint(&scheme("thrust: 900 kN")).verdict, Verdict::Within);
    assert_eq!(joint(&scheme("thrust: 9 MN")).verdict, Verdict::Over);
}

/// What pushes the casing out loads it no more than what pushed it in.
#[test]
fn the_pipe_behind_loads_it_no_more() {
    for grade in ["0.4 %", "3 %", "-3 %"] {
        let text = text(|text| {
            text.edit("reception: { invert_depth: 3.96 m }\n", &format!("grade: {grade}\n"))
                .edit("launch: { invert_depth: 4.20 m }", "launch: { invert_depth: 7 m }")
                .edit("size: 10 in }", "size: 10 in, casing: 406 mm, casing_wall: 8 mm }")
        });
        let drive = drive(&text);
        let stages = jackpull::method::profile(&drive, &drive.candidates()[0], Method::PipeJacking);
        let pushed_in = stages[1].points.iter().map(|point| point.on_rig.high.value).fold(0.0, f64::max);
        // As the pipe begins to push, all that is in the bore is the casing.
        let own = stages[2].points.first().unwrap().on_rig.high.value;
        assert!(own <= pushed_in * (1.0 + 1e-12), "{grade}: {own} and {pushed_in}");
    }
}

/// After a stop it does: 60 m of silt at 20 kPa high, the casing wholly in the bore but for the first metre that the pipe
/// has taken, 1.5 times its friction; and so does what drives out the stem without a casing.
#[test]
fn a_stop_while_it_is_driven_out_loads_it_more() {
    let at = |more: &str| {
        let drive = drive(&text(|text| {
            let (before, rest) = text.split_once("ground:\n").unwrap();
            let (_, after) = rest.split_once("rig:").unwrap();
            let silt = "class: silt, spt_n: 14, largest_stone: 0 mm, unit_friction: { low: 20 kPa, likely: 20 kPa, high: 20 kPa }";
            format!("{before}ground: [{{ {silt} }}]\nstops: [{{ at: 1 m }}]\nrig:{after}")
                .edit("reception: { invert_depth: 3.96 m }", "grade: 0 %")
                .edit("lubrication: metered", "lubrication: none")
                .edit("thrust: 900 kN", "thrust: 9 MN")
                .edit(STEM, "stem: { outside_diameter: 100 mm, joint_thrust: 900 kN }")
                .edit("size: 10 in }", &format!("size: 10 in{more} }}"))
        }));
        assess(&drive, &drive.candidates()[0], Method::PipeJacking)
    };
    let demand = |scheme: &Scheme, subject| scheme.checks.get(subject).unwrap().high().unwrap().0.si;
    let around = |diameter: f64| PI * diameter * 20e3;
    let cased = at(", casing: 406 mm, casing_joint_thrust: 9 MN");
    assert_relative_eq!(demand(&cased, Subject::CasingJoint), 1.5 * 59.0 * around(0.406), max_relative = 1e-9);
    assert!(demand(&cased, Subject::CasingThrust) < demand(&cased, Subject::CasingJoint));
    assert_relative_eq!(demand(&at(""), Subject::StemJoint), 1.3 * 59.0 * around(0.1), max_relative = 1e-9);
}
