//! What became of each check: made in some drive, told where the file leaves out what it needs, in the order of the table.

use crate::edit::Edit;
use jackpull::check::{Absent, Check, Subject};
use jackpull::drive::Pipe;
use jackpull::drive_file::fields::Spec;
use jackpull::{Handbook, Method, Scheme, assess, read_drive};
use std::collections::BTreeSet;
use std::sync::Arc;

/// A sewer that gives all that a check may need.
const FULL: &str = "
service: gravity_sewer
length: 60 m
launch: { invert_depth: 4.2 m, area: 200 m2, wall: { width: 3 m, height: 3 m }, space: { length: 8 m, width: 4 m, crane: 100 kN, tight_soil: 2 m, water_pressure: 40 kPa } }
reception: { invert_depth: 4 m, area: 150 m2, space: { length: 8 m, width: 4 m } }
groundwater: 3 m
lubrication: metered
half_wave: 20 m
design_flow: { min: 4 L/s, max: 25 L/s }
surface: { over: road, allowed_settlement: 20 mm, allowed_slope: 0.2 % }
crossings: [{ at: 35 m, depth: 1.2 m, kind: water main, allowed_settlement: 25 mm, allowed_slope: 0.3 %, clearance: 0.5 m }]
plug: 3 m
pace: { programme: 40, pilot: 20 m, casing: 10 m, reaming: 20 m, jacking: 10 m, pullback: 60 m }
ground:
  - { to: 30 m, class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm, soil: { moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 25 deg, undrained_strength: 60 kPa, undrained_modulus: 10 MPa } }
  - { class: loose_sand, spt_n: 8, largest_stone: 0 mm, soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg, shear_modulus: 5 MPa } }
rig: { thrust: 900 kN, pull: 500 kN, stroke: 3 m, torque: 8 kN*m, auger_torque: { low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m } }
stem: { outside_diameter: 114 mm, head_diameter: 150 mm, wall: 8 mm, free_length: 2 m, joint_thrust: 400 kN, joint_pull: 450 kN, joint_torque: 5 kN*m, torque: { low: 1 kN*m, likely: 1 kN*m, high: 2 kN*m } }
steering: { deviation: 10 mm }
pull:
  duration: 6 h
  pipe_temperature: 25 degC
  ramp_room: 80 m
  reaming_torque: { low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m }
  push_assist: { force: 10 kN, free_length: 2 m, grip_rating: 20 kN }
  pull_head: { rating: 500 kN, weak_link: 60 kN }
  collapsed_bore: { length: 2 m, unit_weight: 20 kN/m3 }
  reaction: { area: 4 m2, allowable_pressure: 200 kPa }
annulus: { filling: grouted, grout_density: 1500 kg/m3, grout_pressure: 20 kPa, grout_sets_in: 12 h }
candidates:
  - { material: clay, size: 10 in, pipe_length: 2 m, crushing: 60 kN/m }
  - { material: clay, size: 10 in, casing: 508 mm, casing_wall: 10 mm, casing_yield_strength: 235 MPa, casing_free_length: 2 m, casing_joint_thrust: 600 kN }
  - { material: steel, size: 406.4 mm, outside_diameter: 406.4 mm, wall: 10 mm, factor: 2, free_length: 3 m }
  - { material: pe100, size: 315 mm, sdr: 11 }
  - { material: pvc_fused, size: 12 in, sdr: 18, joint_factor: 0.9, passes: [200 mm, 300 mm] }
  - { material: steel, size: 12 in, wall: 9.5 mm, yield_strength: 240 MPa }
";

/// What is left out, the subjects that it makes go missing, and the pipe and way that show it.
const LEFT_OUT: &[(&str, &str, &[Subject])] = &[
    (", wall: 8 mm, free_length: 2 m", "", &[Subject::StemSnaking]),
    (", torque: { low: 1 kN*m, likely: 1 kN*m, high: 2 kN*m }", "", &[Subject::StemTorque]),
    (", auger_torque: { low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m }", "", &[Subject::AugerTorque]),
    (
        ", casing: 508 mm, casing_wall: 10 mm, casing_yield_strength: 235 MPa, casing_free_length: 2 m, casing_joint_thrust: 600 kN",
        ", casing: 1900 mm",
        &[Subject::CasingSection, Subject::CasingColumn, Subject::CasingJoint],
    ),
    (", grip_rating: 20 kN", "", &[Subject::TailGrip]),
    ("  collapsed_bore: { length: 2 m, unit_weight: 20 kN/m3 }\n", "", &[Subject::CollapsedBore]),
    (
        "annulus: { filling: grouted, grout_density: 1500 kg/m3, grout_pressure: 20 kPa, grout_sets_in: 12 h }\n",
        "",
        &[Subject::CollapseInGrout],
    ),
    ("  reaming_torque: { low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m }\n", "", &[Subject::ReamingTorque]),
    (", wall: { width: 3 m, height: 3 m }", "", &[Subject::WallLevel]),
    (", max: 25 L/s", "", &[Subject::FlowCapacity]),
    ("min: 4 L/s, ", "", &[Subject::SelfCleaning]),
    (
        ", space: { length: 8 m, width: 4 m, crane: 100 kN, tight_soil: 2 m, water_pressure: 40 kPa }",
        "",
        &[Subject::PitUplift, Subject::PitLength, Subject::PitWidth, Subject::CraneLift],
    ),
    (", space: { length: 8 m, width: 4 m } }", " }", &[Subject::ReceptionLength, Subject::ReceptionWidth]),
    (", crane: 100 kN", "", &[Subject::CraneLift]),
    (", stroke: 3 m", "", &[Subject::JackStroke]),
    (", tight_soil: 2 m, water_pressure: 40 kPa", "", &[Subject::PitUplift]),
    (", area: 200 m2", "", &[Subject::LaunchArea]),
    (", area: 150 m2", "", &[Subject::ReceptionArea]),
    ("programme: 40, ", "", &[Subject::Programme]),
];

/// Made whatever the file leaves out, on the safe side; what it needs settles it.
const ALWAYS: &[Subject] = &[
    Subject::StemPull,
    Subject::SurfaceSettlement,
    Subject::SurfaceSlope,
    Subject::ServiceSettlement,
    Subject::ServiceSlope,
    Subject::BackFall,
    Subject::Sag,
    Subject::Cover,
    Subject::ServiceClearance,
    Subject::PitHeave,
    Subject::Collapse,
    Subject::CollapseInService,
    Subject::Vacuum,
    Subject::Deflection,
    Subject::BreakOut,
    Subject::FaceStability,
    Subject::RailwayCasing,
    Subject::PullHead,
    Subject::WeakLink,
    Subject::WeakLinkPull,
    Subject::PullReaction,
    Subject::RampRoom,
    Subject::ThrustWall,
    Subject::WallMovement,
    Subject::Crushing,
    Subject::SurfaceSettlement,
    Subject::SurfaceSlope,
    Subject::ServiceSettlement,
    Subject::ServiceSlope,
];

/// Of those, what a short file has no cause for.
const SELDOM: [Subject; 5] = [
    Subject::WeakLinkPull,
    Subject::RailwayCasing,
    Subject::SurfaceSlope,
    Subject::ServiceSettlement,
    Subject::ServiceSlope,
];

const SHORT: &str = "
service: pressure_main
length: 60 m
launch: { invert_depth: 4 m }
grade: 0 %
groundwater: none
lubrication: none
ground: [{ class: firm_to_very_stiff_clay }]
rig: { thrust: 900 kN, pull: 500 kN }
pull: { duration: 6 h, pipe_temperature: 20 degC }
candidates:
  - { material: pe100, size: 315 mm, sdr: 11 }
  - { material: clay, size: 10 in }
";

#[test]
fn what_is_always_made_is_made_of_a_short_file() {
    let schemes = [schemes(SHORT), schemes(&SHORT.edit("pressure_main", "gravity_sewer"))].concat();
    for subject in ALWAYS.iter().filter(|subject| !SELDOM.contains(subject)) {
        assert!(schemes.iter().any(|scheme| scheme.checks.get(*subject).is_some()), "{subject:?}");
    }
}

/// All schemes of a drive, by the order of its pipes.
fn schemes(text: &str) -> Vec<Scheme> {
    let drive = read_drive(text, &Handbook::embedded()).unwrap_or_else(|error| panic!("{error:?}\n{text}"));
    let ways = |pipe: &Arc<Pipe>| [Method::PipeJacking, Method::Pullback].map(|method| assess(&drive, pipe, method));
    drive.candidates().iter().flat_map(ways).collect()
}

/// A main in place of the sewer, with what only a main has.
fn main() -> String {
    let text = FULL.edit("gravity_sewer", "pressure_main").edit("half_wave: 20 m\n", "");
    text.edit("design_flow: { min: 4 L/s, max: 25 L/s }\n", "vacuum: { pressure: 80 kPa, lasts: 1 h }\n")
}

const CARRIER: &str = "carrier: { service: gravity_sewer, outside_diameter: 110 mm }\n";

/// A casing in place of the sewer, with what is laid in it.
fn casing() -> String {
    let flow = "design_flow: { min: 4 L/s, max: 25 L/s }\n";
    FULL.edit("gravity_sewer", "casing").edit("half_wave: 20 m\n", "").edit(flow, CARRIER)
}

/// The subject and the place of the scheme of every check that is missing.
fn missing(schemes: &[Scheme]) -> BTreeSet<(usize, usize)> {
    let absent = |(place, scheme): (usize, &Scheme)| {
        let of = |subject: &&Subject| scheme.checks.outcome(**subject) == Err(Absent::Missing);
        Subject::ALL.iter().filter(of).map(|subject| (*subject as usize, place)).collect::<Vec<_>>()
    };
    schemes.iter().enumerate().flat_map(absent).collect()
}

#[test]
fn every_check_is_made_somewhere() {
    let seldom = FULL.edit("thrust: 900 kN", "thrust: 9 MN");
    let railway = FULL.edit("over: road", "over: railway");
    // A stem that is out before the pipe goes in.
    let stem = "pilot: drilled\nstem: { outside_diameter: 254 mm, head_diameter: 400 mm, withdrawn: true }\nrig:";
    let alone = SHORT
        .edit("pressure_main", "gravity_sewer")
        .edit("rig:", stem)
        .edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "");
    // And one that a winch pulls in.
    let winch = "\n  hole: dry_and_stable\n  winch: { rating: 100 kN }\n";
    let by_winch = SHORT.edit("pressure_main", "gravity_sewer").edit("rig:", stem).edit(
        "pull: { duration: 6 h, pipe_temperature: 20 degC }\n",
        &format!("pull:\n  duration: 6 h\n  pipe_temperature: 20 degC{winch}"),
    );
    let curved = FULL.edit("deviation: 10 mm", "curve_radius: 900 m");
    let slurry = FULL
        .edit("half_wave:", "spoil: slurry\nhalf_wave:")
        .edit("plug: 3 m\n", "")
        .edit(", auger_torque: { low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m }", "");
    let untold = FULL.edit(", auger_torque: { low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m }", "");
    let held = FULL.edit("pull:\n", "pull:\n  inside_pressure: 50 kPa\n");
    let stations = SHORT
        .edit("pressure_main", "casing")
        .edit("rig: { thrust: 900 kN", "spoil: slurry\nrig: { station_thrust: 3 MN, thrust: 9 MN")
        .edit("length: 60 m", "length: 250 m")
        .edit("stiff_clay }", "stiff_clay, unit_friction: { low: 1 kPa, likely: 2 kPa, high: 10 kPa } }")
        .edit("material: clay, size: 10 in", "material: concrete, size: 1500 mm, rated_force: 9 MN");
    let files =
        [FULL, &stations, &main(), &casing(), &seldom, &railway, &alone, &by_winch, &curved, &slurry, &untold, &held];
    let schemes: Vec<Scheme> = files.into_iter().flat_map(schemes).collect();
    let made: BTreeSet<usize> =
        schemes.iter().flat_map(|scheme| scheme.checks.iter().map(|check| check.subject as usize)).collect();
    for subject in Subject::ALL {
        assert!(made.contains(&(*subject as usize)), "{subject:?} is never made");
    }
}

#[test]
fn checks_are_told_in_the_order_of_the_table() {
    for scheme in schemes(FULL).iter().filter(|scheme| scheme.force.is_some()) {
        let places: Vec<usize> = scheme.checks.iter().map(|check| check.subject as usize).collect();
        assert!(places.is_sorted() && places.len() > 30, "{places:?}");
    }
}

/// What is left out makes its checks go missing, and each is told with the fields that settle it; nothing else is new.
#[test]
fn what_a_file_leaves_out_is_told() {
    let full = missing(&schemes(FULL));
    let mut told: BTreeSet<usize> = BTreeSet::new();
    let cased = casing();
    let left_out = LEFT_OUT.iter().map(|(from, to, subjects)| (FULL, from, to, *subjects));
    let carried: &[Subject] = &[Subject::CarrierRoom, Subject::CarrierGrade];
    for (whole, from, to, subjects) in left_out.chain([(cased.as_str(), &CARRIER, &"", carried)]) {
        let schemes = schemes(&whole.edit(from, to));
        let full = if whole == FULL { &full } else { &missing(&self::schemes(whole)) };
        let new: BTreeSet<usize> = missing(&schemes).difference(full).map(|(subject, _)| *subject).collect();
        let expected: BTreeSet<usize> = subjects.iter().map(|subject| *subject as usize).collect();
        let is_shared = from.contains("space") || from.contains("wall: { w") || from.contains("crossings");
        if is_shared {
            assert!(expected.iter().all(|place| new.contains(place)), "{from}: {new:?} for {expected:?}");
        } else {
            assert_eq!(new, expected, "{from}");
        }
        for subject in subjects {
            let need = subject.need().unwrap_or_else(|| panic!("{subject:?} needs nothing"));
            let is_told = |scheme: &Scheme| {
                let absent = scheme.checks.outcome(*subject) == Err(Absent::Missing);
                // What is asked for as much as the drive needs is told with that.
                let asks = |check: &Check| check.is_required() && check.subject.need() == Some(need);
                let times = scheme.checks.missing().iter().filter(|other| **other == need).count();
                absent && times + usize::from(scheme.checks.iter().any(asks)) == 1
            };
            assert!(schemes.iter().any(is_told), "{from}: {subject:?} is not told once");
        }
        told.extend(expected);
    }
    for subject in Subject::ALL {
        let is_told = told.contains(&(*subject as usize));
        let asks = subject.need().is_some() && !ALWAYS.contains(subject);
        assert_eq!(is_told, asks, "{subject:?} is never missing, or needs nothing and is");
    }
}

/// A check that does not apply says why.
#[test]
fn what_does_not_apply_says_why() {
    let drive = read_drive(FULL, &Handbook::embedded()).unwrap();
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    assert_eq!(scheme.checks.outcome(Subject::RigPull), Err(Absent::NotApplicable("the pipe is not pulled")));
    assert_eq!(scheme.checks.outcome(Subject::CasingThrust), Err(Absent::NotApplicable("there is no casing")));
}

/// What settles a check is told by fields that the drive file has.
#[test]
fn every_need_names_fields_of_the_file() {
    for need in Subject::ALL.iter().filter_map(|subject| subject.need()) {
        for field in need.ways.iter().copied().flatten() {
            let spec = Spec::at(field).unwrap_or_else(|| panic!("{}: no field {field}", need.what));
            assert!(field.ends_with(spec.key) && !spec.doc.is_empty());
        }
    }
}
