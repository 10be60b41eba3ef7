//! Pipes of every material proposed from the inside diameter: what only the maker knows leaves them open, never chosen.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::check::{Subject, Verdict};
use jackpull::choice::{Choice, Ranked};
use jackpull::handbook::Method;
use jackpull::{Drive, Handbook, Standing, choose, read_drive};
use proptest::prelude::*;

const LIST: &str = "candidates:\n  - { material: clay, size: 10 in }\n  - { material: pe100, size: 315 mm, sdr: 11 }\n";

fn proposed(lines: &str) -> (Drive, Choice) {
    let drive = read_drive(&text(|text| text.edit(LIST, lines)), &Handbook::embedded()).unwrap();
    let choice = choose(&drive).unwrap();
    (drive, choice)
}

fn of<'c>(drive: &Drive, choice: &'c Choice, start: &str, method: Method) -> Vec<&'c Ranked> {
    let named = |ranked: &&Ranked| drive.candidates()[ranked.candidate].label().starts_with(start);
    choice.ranked.iter().filter(named).filter(|ranked| ranked.scheme.method == method).collect()
}

/// Each material in the methods that its family can take.
#[test]
fn every_material_is_proposed_for_each_method_it_can_take() {
    let (drive, choice) = proposed("needed_inside_diameter: 240 mm\n");
    for (start, method) in [
        ("clay", Method::PipeJacking),
        ("concrete", Method::PipeJacking),
        ("ductile iron", Method::PipeJacking),
        ("ductile iron", Method::Pullback),
        ("PVC 10 in", Method::PipeJacking),
        ("PVC fused", Method::Pullback),
        ("PVC restrained", Method::Pullback),
        ("PE100", Method::Pullback),
        ("PE4710", Method::Pullback),
    ] {
        let found = of(&drive, &choice, start, method);
        assert!(found.iter().any(|ranked| !ranked.scheme.is_excluded()), "{start} by {method:?}");
    }
    assert!(of(&drive, &choice, "steel", Method::PipeJacking).is_empty(), "bare steel as a sewer");
    let sentence = drive.proposal(jackpull::quantity::UnitSystem::Si).unwrap();
    assert!(sentence.contains("not proposed: steel: bare steel"), "{sentence}");
    assert!(sentence.contains("; GRP and polymer concrete"), "{sentence}");
    let main = text(|text| text.edit("gravity_sewer", "pressure_main").edit(LIST, "needed_inside_diameter: 240 mm\n"));
    let drive = read_drive(&main, &Handbook::embedded()).unwrap();
    let choice = choose(&drive).unwrap();
    for method in [Method::PipeJacking, Method::Pullback] {
        let found = of(&drive, &choice, "steel", method);
        assert!(found.iter().any(|ranked| !ranked.scheme.is_excluded()), "steel by {method:?}");
    }
}

/// What the maker has to give is open, and says where the scheme would rank; nothing of it counts as a pass.
#[test]
fn what_only_the_maker_knows_is_open() {
    let (drive, choice) = proposed("needed_inside_diameter: 240 mm\n");
    let mut open = 0;
    for (start, method, subject) in [
        ("concrete", Method::PipeJacking, Subject::EndCapacity),
        ("ductile iron", Method::PipeJacking, Subject::EndCapacity),
        ("ductile iron", Method::Pullback, Subject::Tension),
        ("ductile iron", Method::Pullback, Subject::BendRadius),
        ("PVC 10 in", Method::PipeJacking, Subject::EndCapacity),
        ("PVC restrained", Method::Pullback, Subject::Tension),
    ] {
        for ranked in of(&drive, &choice, start, method) {
            let check = ranked.scheme.checks.get(subject).unwrap();
            assert_eq!(check.verdict, Verdict::NotDecided, "{start}: {subject:?}");
            // What else is over stays so.
            if ranked.scheme.checks.iter().any(|check| check.verdict == Verdict::Over) {
                assert_eq!(ranked.standing, Standing::Barred, "{start} by {method:?}");
                continue;
            }
            assert_eq!(ranked.standing, Standing::Open, "{start} by {method:?}");
            open += 1;
            let settled = ranked.if_settled.as_ref().unwrap();
            assert!(settled.open.contains(&subject), "{start}: {settled:?}");
        }
    }
    assert!(open > 2, "{open}");
}

/// A joint as strong as the pipe is the best there is: over with it is over.
#[test]
fn over_at_its_best_is_barred() {
    let deep = text(|text| {
        let text =
            text.edit(LIST, "needed_inside_diameter: 240 mm\n").edit("invert_depth: 4.20 m", "invert_depth: 14.20 m");
        text.edit("reception: { invert_depth: 3.96 m }", "reception: { invert_depth: 13.96 m }")
            .edit("pipe_temperature: 25 degC", "pipe_temperature: 25 degC, fluid_level: 0 m, contents: empty")
    });
    let drive = read_drive(&deep, &Handbook::embedded()).unwrap();
    let choice = choose(&drive).unwrap();
    let found = of(&drive, &choice, "PVC fused 10 in DR 25", Method::Pullback);
    assert!(!found.is_empty());
    for ranked in found {
        // Thin pipe collapses at any joint factor.
        assert_eq!(ranked.scheme.checks.get(Subject::Collapse).unwrap().verdict, Verdict::Over);
        assert_eq!(ranked.standing, Standing::Barred);
    }
}

/// A proposed pipe meets every check of the same pipe in the file.
#[test]
fn a_proposed_pipe_meets_the_checks_of_a_listed_one() {
    let (listed, by_list) = proposed(LIST);
    let (drive, choice) = proposed("needed_inside_diameter: 240 mm\n");
    for (label, method) in [("clay 10 in", Method::PipeJacking), ("PE100 315 mm SDR 11", Method::Pullback)] {
        let one = of(&listed, &by_list, label, method)[0];
        let other = of(&drive, &choice, label, method)[0];
        assert_eq!(one.scheme, other.scheme, "{label}");
    }
}

/// In the file itself the same pipe without its maker's figure waits for it.
#[test]
fn a_listed_pipe_without_the_figure_waits_for_it() {
    for (pipe, figure) in [
        ("material: ductile_iron, size: 250 mm", "candidates[].joint_pull"),
        ("material: ductile_iron, size: 250 mm, joint_pull: 200 kN", "candidates[].joint_deflection"),
    ] {
        let text = text(|text| text.edit(LIST, &format!("candidates: [{{ {pipe} }}]\n")));
        let choice = choose(&read_drive(&text, &Handbook::embedded()).unwrap()).unwrap();
        let pulled = choice.ranked.iter().find(|ranked| ranked.scheme.method == Method::Pullback).unwrap();
        assert!(!pulled.standing.can_be_chosen(), "{pipe}");
        let asked = pulled.scheme.checks.iter().filter(|check| check.verdict == Verdict::NotDecided);
        assert!(asked.flat_map(|check| check.settled_by).any(|way| way.contains(&figure)), "{pipe}");
    }
    // Metric iron has its diameter and wall in the table; its joint is the maker's.
    let text = text(|text| {
        let pipe =
            "material: ductile_iron, size: 250 mm, joint_pull: 200 kN, joint_deflection: 3 deg, pipe_length: 6 m";
        text.edit(LIST, &format!("candidates: [{{ {pipe} }}]\n"))
    });
    let drive = read_drive(&text, &Handbook::embedded()).unwrap();
    assert!((drive.candidates()[0].outside_diameter().value - 0.274).abs() < 1e-9);
    assert_eq!(drive.candidates()[0].label(), "ductile iron 250 mm");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever the need: no open scheme is chosen, scores run least to most, and every pipe is wide enough by name.
    #[test]
    fn no_open_scheme_is_chosen(need in 150.0..900.0_f64) {
        let (drive, choice) = proposed(&format!("needed_inside_diameter: {need} mm\n"));
        if let Some(first) = choice.chosen() {
            prop_assert!(first.scheme.checks.iter().all(|check| check.verdict != Verdict::NotDecided));
        }
        for ranked in &choice.ranked {
            let score = ranked.score.as_ref();
            prop_assert!(score.is_none_or(|score| score.least <= score.most));
            prop_assert!(drive.candidates()[ranked.candidate].outside_diameter().value * 1e3 >= need);
        }
    }
}
