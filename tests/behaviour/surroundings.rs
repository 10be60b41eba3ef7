//! Flow, grade, cover, settlement, face, pits and time through the drive file: hand sums, how they run, and what the
//! door refuses.

use crate::drives::{drive, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Absent, Check, Subject, Verdict};
use jackpull::{Handbook, Method, Scheme, assess, read_drive};
use proptest::prelude::*;
use std::f64::consts::{E, PI};

/// The shared drive with these lines more, and one soil in place of its three stretches.
fn with(lines: &str, stretch: &str) -> String {
    text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        format!("{before}ground: [{{ {stretch} }}]\n{lines}rig:{after}")
    })
}

const FIRM: &str = "class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm";
const SAND: &str = "class: medium_to_dense_sand, spt_n: 20, largest_stone: 0 mm";
const SOIL: &str = "soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg, undrained_strength: 25 kPa }";

fn schemes(text: &str) -> [Scheme; 2] {
    let drive = drive(text);
    let [clay, pe] = drive.candidates() else { panic!("two pipes") };
    [assess(&drive, clay, Method::PipeJacking), assess(&drive, pe, Method::Pullback)]
}

fn check(scheme: &Scheme, subject: Subject) -> Check {
    *scheme.checks.get(subject).unwrap_or_else(|| panic!("no {}", subject.label()))
}

/// Demand and limit, likely and high.
fn numbers(check: &Check) -> [f64; 4] {
    let (likely, high) = (check.likely().unwrap(), check.high().unwrap());
    [likely.0.si, likely.1.si, high.0.si, high.1.si]
}

/// What the file does not give is not checked.
#[test]
fn without_data_the_checks_are_absent() {
    for scheme in schemes(&text(|text| text)) {
        for subject in [
            Subject::FlowCapacity,
            Subject::SelfCleaning,
            Subject::PitUplift,
            Subject::Plug,
            Subject::PitLength,
            Subject::CraneLift,
        ] {
            assert!(scheme.checks.get(subject).is_none(), "{}", subject.label());
        }
    }
    for service in ["pressure_main", "casing"] {
        let [_, pulled] = schemes(&text(|text| text.edit("gravity_sewer", service)));
        for subject in [Subject::LeastSlope, Subject::GradeFloor, Subject::BackFall] {
            assert!(pulled.checks.get(subject).is_none(), "{service}: {}", subject.label());
        }
    }
}

/// A wave of 25.4 mm over 30 m: pi 0.0254 / 30 = 0.266 % on a line of 0.4 %; over 10 m 0.798 %, and water stands. The
/// aim of the target, 6 mm, is likely.
#[test]
fn waves_against_the_slope() {
    let [long, _] = schemes(&with("half_wave: 30 m\n", FIRM));
    let [likely, limit, high, _] = numbers(&check(&long, Subject::BackFall));
    assert_relative_eq!(likely, PI * 0.006 / 30.0, max_relative = 1e-9);
    assert_relative_eq!(high, PI * 0.0254 / 30.0, max_relative = 1e-9);
    assert_relative_eq!(limit, 0.004, max_relative = 1e-9);
    assert_eq!(check(&long, Subject::BackFall).verdict, Verdict::Within);
    assert_eq!(numbers(&check(&long, Subject::Sag))[0], 0.0);
    let [short, pulled] = schemes(&with("half_wave: 10 m\n", FIRM));
    // A screen: care, never more.
    assert_eq!(check(&short, Subject::BackFall).verdict, Verdict::WithCare);
    let cosine: f64 = 0.004 / (PI * 0.0254 / 10.0);
    let depth = 2.0 * 0.0254 * (cosine.acos().sin() - cosine.acos() * cosine);
    assert_relative_eq!(numbers(&check(&short, Subject::Sag))[2], depth, max_relative = 1e-9);
    assert_relative_eq!(numbers(&check(&short, Subject::Sag))[3], 0.0254, max_relative = 1e-9);
    // The pulled pipe lies somewhere in its bore: 25.4 mm and half of the play at the high level.
    let high = numbers(&check(&pulled, Subject::BackFall))[2];
    assert_relative_eq!(high, PI * (0.0254 + 0.1575 / 2.0) / 10.0, max_relative = 1e-9);
}

/// 10 in at 0.4 %, n 0.013: R = 0.0635 m, v = 0.7743 m/s, Q = 39.24 L/s full.
#[test]
fn flow_in_the_full_pipe() {
    let full = (0.0635_f64).powf(2.0 / 3.0) * 0.004_f64.sqrt() / 0.013 * PI / 4.0 * 0.254 * 0.254;
    assert!((full - 0.039_2).abs() < 0.0001, "{full}");
    for (most, verdict) in [("39.1 L/s", Verdict::Within), ("39.4 L/s", Verdict::Over)] {
        let [jacked, _] = schemes(&with(&format!("design_flow: {{ max: {most} }}\n"), FIRM));
        let capacity = check(&jacked, Subject::FlowCapacity);
        assert_relative_eq!(numbers(&capacity)[1], full, max_relative = 1e-6);
        assert_eq!(capacity.verdict, verdict);
    }
    // Half full carries half: R is that of the full pipe, 1000 g R S = 2.49 Pa.
    let half = format!("design_flow: {{ min: {} L/s }}\n", full * 500.0);
    let [jacked, _] = schemes(&with(&half, FIRM));
    let [stress, need, ..] = numbers(&check(&jacked, Subject::SelfCleaning));
    assert_relative_eq!(stress, 9_806.65 * 0.0635 * 0.004, max_relative = 1e-6);
    assert_eq!(need, 1.0);
    // A trickle does not clean; more than the pipe holds is in doubt.
    let [trickle, _] = schemes(&with("design_flow: { min: 0.05 L/s }\n", FIRM));
    assert_eq!(check(&trickle, Subject::SelfCleaning).verdict, Verdict::WithCare);
    let [flood, _] = schemes(&with("design_flow: { min: 60 L/s }\n", FIRM));
    assert_eq!(check(&flood, Subject::SelfCleaning).verdict, Verdict::NotDecided);
}

/// The pulled pipe of 315 mm in a bore of 472.5 mm, axis at 3.96 m less 157.5 mm, sand above water: the whole annulus and
/// 2 % of the bore through a trough of 0.2 times the depth.
#[test]
fn settlement_by_hand() {
    let limits = "surface: { allowed_settlement: 100 mm, allowed_slope: 5 % }\n";
    let [_, pulled] = schemes(&with(limits, SAND));
    let axis = 3.96 - 0.1575;
    let (whole, pipe) = (PI / 4.0 * 0.4725_f64.powi(2), PI / 4.0 * 0.315_f64.powi(2));
    let width = 0.2 * axis;
    let deepest = (0.02 * whole + (whole - pipe)) / ((2.0 * PI).sqrt() * width);
    let got = numbers(&check(&pulled, Subject::SurfaceSettlement));
    assert_relative_eq!(got[2], deepest, max_relative = 1e-9);
    assert_relative_eq!(
        numbers(&check(&pulled, Subject::SurfaceSlope))[2],
        deepest / width / E.sqrt(),
        max_relative = 1e-9
    );
    let width = 0.25 * axis;
    let likely = (0.015 * whole + (whole - pipe)) / ((2.0 * PI).sqrt() * width);
    assert_relative_eq!(got[0], likely, max_relative = 1e-9);
    // Ground without a trough decides nothing.
    let [_, unknown] = schemes(&with(limits, "class: unknown"));
    assert_eq!(check(&unknown, Subject::SurfaceSettlement).verdict, Verdict::NotDecided);
}

/// A main 2 m deep at 30 m, invert 4.08 m there: the nearer to the bore, the narrower and deeper the trough.
#[test]
fn services_are_nearer_than_the_surface() {
    let service =
        "crossings: [{ at: 30 m, depth: 2 m, kind: water main, allowed_settlement: 500 mm, clearance: 1 m }]\n";
    let surface = "surface: { allowed_settlement: 500 mm }\n";
    let [jacked, pulled] = schemes(&with(&format!("{service}{surface}"), SAND));
    for scheme in [&jacked, &pulled] {
        let deep = numbers(&check(scheme, Subject::ServiceSettlement))[2];
        assert!(deep > numbers(&check(scheme, Subject::SurfaceSettlement))[2]);
    }
    let clear = numbers(&check(&pulled, Subject::ServiceClearance));
    assert_relative_eq!(clear[0], 4.08 - 0.1575 - 2.0 - 0.23625, max_relative = 1e-9);
    assert_relative_eq!(clear[2], clear[0] - 0.0254, max_relative = 1e-9);
    // A service in the way of the bore is over, whoever asks for what.
    let [_, met] = schemes(&with("crossings: [{ at: 30 m, depth: 3.9 m }]\n", SAND));
    assert_eq!(check(&met, Subject::ServiceClearance).verdict, Verdict::Over);
    let [_, near] = schemes(&with("crossings: [{ at: 30 m, depth: 3 m }]\n", SAND));
    assert_eq!(check(&near, Subject::ServiceClearance).verdict, Verdict::WithCare);
}

const OPEN: &str = "surface: { over: open }\n";

/// 18 kN/m3, axis at 4.2 m less half of the pipe, 25 kPa: about 2.9; an unsupported face is warned of over 3.
#[test]
fn face_in_clay() {
    for (strength, verdict) in [("25 kPa", Verdict::Within), ("20 kPa", Verdict::WithCare), ("15 kPa", Verdict::Over)] {
        let soil = SOIL.edit("25 kPa", strength);
        let [jacked, _] = schemes(&with(OPEN, &format!("{FIRM}, {soil}")));
        let face = check(&jacked, Subject::FaceStability);
        assert_eq!(face.verdict, verdict, "{strength}: {:?}", numbers(&face));
        let [_, refuse, _, warn] = numbers(&face);
        assert_eq!((refuse, warn), (4.0, 3.0));
    }
    // Without a strength the blow count tells it: 4.4 kPa a blow, 125 pcf by the class.
    let [jacked, pulled] = schemes(&with(OPEN, &FIRM.edit("spt_n: 12", "spt_n: 6")));
    let [by_blows, ..] = numbers(&check(&jacked, Subject::FaceStability));
    let axis = 4.2 - 0.338 / 2.0;
    assert_relative_eq!(by_blows, 125.0 * 157.087_46 * axis / (6.0 * 4_400.0), max_relative = 2e-2);
    // What is called firm has 25 kPa at the least.
    let [jacked, _] = schemes(&with(OPEN, &FIRM.edit("spt_n: 12", "spt_n: 4")));
    let [firm, ..] = numbers(&check(&jacked, Subject::FaceStability));
    assert_relative_eq!(firm, 125.0 * 157.087_46 * axis / 25_000.0, max_relative = 2e-2);
    assert!(pulled.checks.get(Subject::FaceStability).is_none());
    let [soft, _] = schemes(&with(OPEN, "class: soft_clay, spt_n: 1, largest_stone: 0 mm"));
    // 5 kPa at the least and 25 at the most: one blow says little.
    assert_eq!(check(&soft, Subject::FaceStability).verdict, Verdict::NotDecided);
    // A road presses with 10 kPa on it, and so where nothing is told of what lies over the bore.
    let [road, open, untold] = ["surface: { over: road }\n", OPEN, ""].map(|over| {
        let [jacked, _] = schemes(&with(over, &format!("{FIRM}, {SOIL}")));
        numbers(&check(&jacked, Subject::FaceStability))[0]
    });
    assert_relative_eq!(road - open, 10.0 / 25.0, max_relative = 1e-9);
    assert_relative_eq!(untold, road);
    // A closed face has no such number.
    let text = with(&format!("{OPEN}spoil: slurry\n"), &format!("{FIRM}, {SOIL}"));
    assert!(schemes(&text)[0].checks.get(Subject::FaceStability).is_none());
}

/// Pit of 3 by 5 m, floor at 4.5 m: N_c = 5 (1 + 0.2 x 0.6) (1 + 0.2 x 1.5) = 7.28, over 18 x 4.5 kPa and 20 kPa
/// beside it.
#[test]
fn base_of_a_pit() {
    let pit = |more: &str| {
        with("", &format!("{FIRM}, {SOIL}"))
            .edit(
                "launch: { invert_depth: 4.20 m }",
                &format!(
                    "launch: {{ invert_depth: 4.20 m, space: {{ length: 5 m, width: 3 m, floor_depth: 4.5 m{more} }} }}"
                ),
            )
            .edit(
                "reception: { invert_depth: 3.96 m }",
                "reception: { invert_depth: 3.96 m, space: { length: 5 m, width: 3 m, floor_depth: 4.3 m } }",
            )
    };
    let [jacked, pulled] = schemes(&pit(", tight_soil: 3 m, water_pressure: 50 kPa, crane: 2 kN"));
    for scheme in [&jacked, &pulled] {
        let heave = check(scheme, Subject::PitHeave);
        assert_relative_eq!(numbers(&heave)[0], 7.28 * 25.0 / 101.0, max_relative = 1e-9);
        assert_eq!(heave.verdict, Verdict::Within);
        // 3 m of 20 kN/m3 over 50 kPa: 1.2, between 1.1 and 1.25; uplift gives no warning.
        let uplift = check(scheme, Subject::PitUplift);
        assert_relative_eq!(numbers(&uplift)[0], 1.2, max_relative = 1e-9);
        assert_eq!(uplift.verdict, Verdict::Over);
    }
    let [length, need, ..] = numbers(&check(&jacked, Subject::PitLength));
    assert_eq!((length, need), (5.0, 3.5));
    assert_eq!(check(&jacked, Subject::PitLength).verdict, Verdict::Within);
    assert_eq!(check(&jacked, Subject::CraneLift).verdict, Verdict::Over);
    // The rods of the stem come out there, taken to be as long as the longest usual pipe.
    let [length, need, ..] = numbers(&check(&pulled, Subject::PitLength));
    assert_eq!((length, need), (5.0, 3.5));
}

/// A pipe longer than the stroke of the jacks is pushed with a spacer: a habit, which asks for care and never bars.
#[test]
fn a_pipe_longer_than_the_stroke_asks_for_care() {
    let pipe = |length: &str| with("", SAND).edit("size: 10 in", &format!("size: 10 in, pipe_length: {length}"));
    let stroke = |length| schemes(&pipe(length).edit("thrust:", "stroke: 2.5 m, thrust:"))[0];
    assert_eq!(check(&stroke("2.5 m"), Subject::JackStroke).verdict, Verdict::Within);
    let longer = check(&stroke("3 m"), Subject::JackStroke);
    assert!(longer.verdict == Verdict::WithCare && longer.is_failed_screen());
    assert_relative_eq!(longer.utilisation().unwrap(), 3.0 / 2.5, max_relative = 1e-12);
    let [jacked, pulled] = schemes(&pipe("3 m"));
    assert_eq!(jacked.checks.outcome(Subject::JackStroke), Err(Absent::Missing));
    assert!(matches!(pulled.checks.outcome(Subject::JackStroke), Err(Absent::NotApplicable(_))));
}

/// Thomson (1993): width of the pipe and 2 m at the launch; our own half metre a side and more at the reception, where
/// the last reamer comes in; pieces of 6 m that are joined in the pit; areas of ours.
#[test]
fn room_at_both_ends() {
    let ends = |more: &str| {
        let text = with("", SAND)
            .edit("launch: { invert_depth: 4.20 m }", "launch: { invert_depth: 4.20 m, area: 200 m2 }")
            .edit(
                "reception: { invert_depth: 3.96 m }",
                "reception: { invert_depth: 3.96 m, area: 90 m2, space: { length: 7 m, width: 2.3 m } }",
            );
        assert!(text.contains("area: 200 m2") && text.contains("area: 90 m2"));
        text.edit("pull: { duration", &format!("pull: {{ {more}duration"))
    };
    let in_pit = "laydown: { length: 6 m, joint_time: 20 min, place: pit }, ";
    let [jacked, pulled] = schemes(&ends(in_pit));
    let bore = 1.5 * 0.315;
    let width = numbers(&check(&pulled, Subject::ReceptionWidth));
    assert_eq!(width[0], 2.3);
    assert_relative_eq!(width[1], bore + 1.0, max_relative = 1e-9);
    assert_eq!(check(&pulled, Subject::ReceptionWidth).verdict, Verdict::Within);
    let [there, need, ..] = numbers(&check(&pulled, Subject::ReceptionLength));
    assert_eq!((there, need), (7.0, 6.5));
    assert_eq!(numbers(&check(&jacked, Subject::ReceptionLength))[1], 2.5);
    // A string that comes down a ramp is a matter of the room for the ramp.
    let [_, string] = schemes(&ends(""));
    assert!(string.checks.get(Subject::ReceptionLength).is_none());
    for (scheme, launch, reception) in
        [(&jacked, [100.0, 250.0], [50.0, 150.0]), (&pulled, [120.0, 300.0], [100.0, 250.0])]
    {
        let [there, need, _, most] = numbers(&check(scheme, Subject::LaunchArea));
        assert_eq!((there, [need, most]), (200.0, launch));
        let [there, need, _, most] = numbers(&check(scheme, Subject::ReceptionArea));
        assert_eq!((there, [need, most]), (90.0, reception));
    }
    // Too little by habit asks for care and bars nothing.
    assert_eq!(check(&pulled, Subject::ReceptionArea).verdict, Verdict::WithCare);
}

/// ttp_2010, Table 1.5: a guided pilot to 30 in, a slurry machine from 12 to 136 in and 1,500 ft. Beyond it the check asks
/// for care that grows with the diameter, and bars nothing.
#[test]
fn diameter_against_the_published_range() {
    let scheme = |lines: &str, size: &str| {
        let pipe = format!(
            "candidates:\n  - {{ material: clay, size: {size}, outside_diameter: {size}, \
             end_bearing_area: 0.02 m2, weight: 5 kN/m }}\n"
        );
        let text = with(lines, FIRM);
        let text = format!("{}{pipe}", text.split("candidates:").next().unwrap());
        let drive = drive(&text);
        assess(&drive, &drive.candidates()[0], Method::PipeJacking)
    };
    let used = |scheme: &Scheme| check(scheme, Subject::Diameter).utilisation().unwrap();
    let inch = 25.4;
    for (size, verdict) in [(700.0, Verdict::Within), (800.0, Verdict::WithCare), (1500.0, Verdict::WithCare)] {
        let scheme = scheme("", &format!("{size} mm"));
        assert_eq!(check(&scheme, Subject::Diameter).verdict, verdict, "{size}");
        assert_relative_eq!(used(&scheme), size / (30.0 * inch), max_relative = 1e-9);
        assert_eq!(numbers(&check(&scheme, Subject::Length))[1], 300.0 * 0.3048);
    }
    let small = scheme("spoil: slurry\n", "250 mm");
    assert_relative_eq!(used(&small), 12.0 * inch / 250.0, max_relative = 1e-9);
    assert_eq!(check(&small, Subject::Diameter).verdict, Verdict::WithCare);
    assert_eq!(check(&scheme("spoil: slurry\n", "800 mm"), Subject::Diameter).verdict, Verdict::Within);
}

/// Room counts in the score once both areas are known, by the tightest place.
#[test]
fn room_counts_where_it_is_known() {
    use jackpull::choice::CriterionKind;
    let areas = |launch: &str, reception: &str| {
        with("", SAND)
            .edit("launch: { invert_depth: 4.20 m }", &format!("launch: {{ invert_depth: 4.20 m{launch} }}"))
            .edit("reception: { invert_depth: 3.96 m }", &format!("reception: {{ invert_depth: 3.96 m{reception} }}"))
    };
    let part = |text: &str, method: Method| {
        let choice = jackpull::choose(&drive(text)).unwrap();
        let ranked = choice.ranked.iter().find(|ranked| ranked.scheme.method == method).unwrap();
        let score = ranked.score.as_ref().unwrap();
        score.criteria.iter().find(|part| part.kind == CriterionKind::Area).map(|part| part.value)
    };
    for method in [Method::PipeJacking, Method::Pullback] {
        assert!(part(&areas(", area: 200 m2", ""), method).is_none());
    }
    let both = areas(", area: 400 m2", ", area: 200 m2");
    assert_relative_eq!(part(&both, Method::PipeJacking).unwrap().unwrap(), 0.75, max_relative = 1e-9);
    assert_relative_eq!(part(&both, Method::Pullback).unwrap().unwrap(), 0.5, max_relative = 1e-9);
    let none = areas(", area: 400 m2", ", area: 90 m2");
    assert_eq!(part(&none, Method::Pullback).unwrap(), Some(0.0));
}

/// 1.8 m of head, buoyant 10.19 kN/m3, 30 deg: the plug boils at a gradient of 1.04 and slides, at 0.54 of 30 deg on
/// smooth steel (Potyondy 1961), at 0.302: it has to be 1.5 and 2 heads over the lesser. Dewatered ground asks for none.
#[test]
fn plug_against_water() {
    let soil = "soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg }";
    let text = with("plug: 10 m\n", &format!("{SAND}, groundwater: 2.4 m, {soil}"));
    let plug = check(&schemes(&text)[0], Subject::Plug);
    let critical = (20_000.0 - 9_806.65) / 9_806.65 * (0.54 * 30.0_f64).to_radians().tan();
    let [there, need, _, most] = numbers(&plug);
    assert_eq!(there, 10.0);
    assert_relative_eq!(need, 1.5 * 1.8 / critical, max_relative = 1e-9);
    assert_relative_eq!(most, 2.0 * 1.8 / critical, max_relative = 1e-9);
    // Between the two factors: ground that runs gives no warning.
    assert_eq!(plug.verdict, Verdict::Over);
    let dry = with("plug: 10 m\n", &format!("{SAND}, groundwater: 2.4 m, treatment: dewatered, {soil}"));
    assert!(schemes(&dry)[0].checks.get(Subject::Plug).is_none());
}

/// Cover of a drilled line counts under a road only, and where nobody tells what lies there; a railway has its own. In open
/// ground it is 0.6 m, or the bore.
#[test]
fn cover_by_what_lies_over_the_bore() {
    let cover = |lines: &str| schemes(&with(lines, FIRM))[1].checks.get(Subject::Cover).copied();
    assert_relative_eq!(numbers(&cover("surface: { over: open }\n").unwrap())[1], 0.6, max_relative = 1e-9);
    // 315 mm lies over 12 in: 12 ft.
    assert_relative_eq!(numbers(&cover("").unwrap())[1], 12.0 * 0.3048, max_relative = 1e-9);
    assert_relative_eq!(numbers(&cover("surface: { over: road }\n").unwrap())[1], 12.0 * 0.3048, max_relative = 1e-9);
    assert_relative_eq!(numbers(&cover("surface: { over: railway }\n").unwrap())[1], 5.5 * 0.3048, max_relative = 1e-9);
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(48) })]
    /// More annulus, less depth or a tighter limit never make settlement look better.
    #[test]
    fn settlement_runs_the_right_way(bore in 330.0..600.0_f64, more in 1.0..200.0_f64, depth in 3.0..8.0_f64, deeper in 0.1..3.0_f64) {
        let deepest = |bore: f64, depth: f64| {
            let text = with("surface: { allowed_settlement: 500 mm }\n", SAND)
                .edit("sdr: 11 }", &format!("sdr: 11, bore: {bore} mm }}"))
                .edit("4.20 m", &format!("{depth} m"))
                .edit("3.96 m", &format!("{} m", depth - 0.24))
                .edit("groundwater: 5.5 m", "groundwater: none");
            numbers(&check(&schemes(&text)[1], Subject::SurfaceSettlement))[2]
        };
        prop_assert!(deepest(bore + more, depth) > deepest(bore, depth));
        prop_assert!(deepest(bore, depth + deeper) < deepest(bore, depth));
    }
}

#[test]
fn what_cannot_be_is_refused_at_its_place() {
    let launch = |space: &str| {
        with("", FIRM).edit(
            "launch: { invert_depth: 4.20 m }",
            &format!("launch: {{ invert_depth: 4.20 m, space: {{ length: 5 m, width: 3 m, {space} }} }}"),
        )
    };
    let pressure = |lines: &str| with(lines, FIRM).edit("gravity_sewer", "pressure_main");
    for (text, wanted) in [
        (with("crossings: [{ at: 70 m, depth: 2 m }]\n", FIRM), "beyond the drive"),
        (with("crossings: [{ at: 30 m, depth: 0 m }]\n", FIRM), "above zero"),
        (with("design_flow: { min: 20 L/s, max: 10 L/s }\n", FIRM), "more than the greatest flow"),
        (with("design_flow: { min: 20 L/s, roughness: 0.13 }\n", FIRM), "from 0.005 to 0.05"),
        (pressure("half_wave: 10 m\n"), "is for gravity sewers"),
        (pressure("design_flow: { max: 10 L/s }\n"), "is for gravity sewers"),
        (with("surface: { allowed_slope: -1 % }\n", FIRM), "above zero"),
        (with("surface: { over: rod }\n", FIRM), "did you mean \"road\"?"),
        (with("pace: { pilot: 0 m }\n", FIRM), "above zero"),
        (launch("floor_depth: 4 m"), "above the invert"),
        (launch("tight_soil: 3 m"), "add `water_pressure"),
        (launch("water_pressure: 30 kPa"), "add `tight_soil"),
        (launch("permeability: 1e-5 m/s"), "add `tight_base_depth"),
        (launch("tight_base_depth: 9 m"), "add `permeability"),
        (launch("permeability: 1e-5 m/s, tight_base_depth: 3 m"), "above the floor"),
    ] {
        let error = read_drive(&text, &Handbook::embedded()).expect_err(wanted).to_string();
        assert!(error.contains(wanted) && error.contains("line"), "{wanted}: {error}");
    }
}
