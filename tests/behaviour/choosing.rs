//! How schemes are ranked: standing first, then a score that does not look at who else is there.

use crate::drives::{MAIN_PE, TOLD_CLAY, drive, main, sewer, text};
use crate::edit::Edit;
use jackpull::check::Verdict;
use jackpull::choice::{Choice, CriterionKind, Ranked};
use jackpull::drive_file::DriveFile;
use jackpull::{Drive, Handbook, InputError, Standing, choose, read_drive};
use proptest::prelude::*;

const CLAY: &str = "  - { material: clay, size: 10 in }\n";
const PE: &str = "  - { material: pe100, size: 315 mm, sdr: 11 }\n";

fn label(drive: &Drive, ranked: &Ranked) -> String {
    format!("{} of {}", ranked.scheme.method.key(), drive.candidates()[ranked.candidate].label())
}

/// Name, standing, least and most of every scheme that is not excluded, in order.
fn order(drive: &Drive, choice: &Choice) -> Vec<(String, Standing, f64, f64)> {
    let scored = choice.ranked.iter().filter_map(|one| one.score.as_ref().map(|score| (one, score)));
    scored.map(|(one, score)| (label(drive, one), one.standing, score.least, score.most)).collect()
}

fn chosen(text: &str) -> (Drive, Choice) {
    let drive = drive(text);
    let choice = choose(&drive).unwrap();
    (drive, choice)
}

/// Design section on choosing: barred where the likely demand is over, open where something is not decided.
#[test]
fn standing_follows_the_worst_verdict() {
    let (_, choice) = chosen(&text(|text| text.edit("900 kN", "150 kN")));
    for ranked in choice.ranked.iter().filter(|ranked| !ranked.scheme.is_excluded()) {
        let has = |verdict| ranked.scheme.checks.iter().any(|check| check.verdict == verdict);
        let expected = match (has(Verdict::Over), has(Verdict::NotDecided), has(Verdict::WithCare)) {
            (true, ..) => Standing::Barred,
            (_, true, _) => Standing::Open,
            (_, _, true) => Standing::WithCare,
            _ => Standing::Fits,
        };
        assert_eq!(ranked.standing, expected);
    }
    assert!(choice.ranked.iter().any(|ranked| ranked.standing == Standing::Barred && ranked.score.is_some()));
}

/// An open scheme stands behind every one that can be chosen, and says where it would stand and what is open.
#[test]
fn an_open_scheme_says_where_it_would_stand() {
    let (_, choice) = chosen(&text(|text| {
        text.edit("rig:", "tolerance: 200 mm\nrig:").edit("spt_n: 20, largest_stone: 20 mm", "spt_n: 20")
    }));
    let open: Vec<&Ranked> = choice.ranked.iter().filter(|one| one.standing == Standing::Open).collect();
    assert!(!open.is_empty());
    for ranked in open {
        let settled = ranked.if_settled.as_ref().unwrap();
        assert!(!settled.open.is_empty());
        let score = ranked.score.as_ref().unwrap();
        assert!(score.least < score.most);
        let better = choice.ranked.iter().filter(|other| other.standing < Standing::Open).count();
        assert!((1..=better + choice.ranked.len()).contains(&settled.place));
        assert!(settled.place <= ranked.place);
    }
    assert!(choice.chosen().is_none());
    for ranked in choice.ranked.iter().filter(|one| one.standing != Standing::Open) {
        assert!(ranked.if_settled.is_none());
    }
}

/// 100 x weight x value is what each criterion brings, and the parts sum to the score.
#[test]
fn the_parts_make_the_score() {
    let (_, choice) = chosen(&text(|text| text));
    for score in choice.ranked.iter().filter_map(|ranked| ranked.score.as_ref()) {
        let points: f64 = score.criteria.iter().filter_map(|criterion| criterion.points()).sum();
        assert!((points - score.least).abs() < 1e-9);
        assert!((score.criteria.iter().map(|criterion| criterion.weight).sum::<f64>() - 1.0).abs() < 1e-12);
        let kinds: Vec<CriterionKind> = score.criteria.iter().map(|criterion| criterion.kind).collect();
        let told = [CriterionKind::LoadMargin, CriterionKind::Ground, CriterionKind::Grade, CriterionKind::Size];
        assert_eq!(kinds[..4], told);
    }
    // No grade where nothing flows by it: it drops out for every scheme.
    let (_, choice) = chosen(&text(|text| text.edit("gravity_sewer", "casing")));
    let of_grade = |ranked: &Ranked| {
        ranked.score.iter().flat_map(|score| &score.criteria).any(|criterion| criterion.kind == CriterionKind::Grade)
    };
    assert!(!choice.ranked.iter().any(of_grade));
}

/// By hand: 60 m against 300 ft, 91.44 m, is 0.656; zero at twice, so 1 - 0.656/2 = 0.672.
#[test]
fn the_value_of_length_by_hand() {
    let (_, choice) = chosen(&text(|text| text));
    let first = choice.ranked.iter().find_map(|ranked| ranked.score.as_ref()).unwrap();
    let size = first.criteria.iter().find(|criterion| criterion.kind == CriterionKind::Size).unwrap();
    approx::assert_relative_eq!(size.value.unwrap(), 1.0 - 60.0 / 91.44 / 2.0, max_relative = 1e-12);
}

fn with_weights(list: &[(CriterionKind, f64)]) -> String {
    let items: Vec<String> =
        list.iter().map(|(kind, weight)| format!("{{ criterion: {}, weight: {weight} }}", kind.key())).collect();
    text(|text| text.edit("candidates:", &format!("weights: [{}]\ncandidates:", items.join(", "))))
}

/// A weight of the file takes the place of the table's, which is printed as given.
#[test]
fn the_file_can_weigh_otherwise() {
    let (_, choice) = chosen(&with_weights(&[(CriterionKind::Grade, 0.0), (CriterionKind::LoadMargin, 3.0)]));
    let score = choice.ranked.iter().find_map(|ranked| ranked.score.as_ref()).unwrap();
    let weight = |kind| score.criteria.iter().find(|criterion| criterion.kind == kind).unwrap().weight;
    // Ground 0.20 and length 0.10 of the table stay.
    approx::assert_relative_eq!(weight(CriterionKind::LoadMargin), 3.0 / 3.3, max_relative = 1e-9);
    assert_eq!(weight(CriterionKind::Grade), 0.0);
}

#[test]
fn faulty_weights_are_refused_with_their_place() {
    let fault = |list: &str, service: &str| {
        let text = text(|text| {
            text.edit("candidates:", &format!("weights: [{list}]\ncandidates:")).edit("gravity_sewer", service)
        });
        match read_drive(&text, &Handbook::embedded()) {
            Err(InputError::Faults(faults)) => faults[0].to_string(),
            other => panic!("{other:?}"),
        }
    };
    let sewer = "gravity_sewer";
    for (list, service, start) in [
        (
            "{ criterion: grade, weight: -1 }",
            sewer,
            "weights[0].weight: expected a plain number or a percentage of zero or more",
        ),
        (
            "{ criterion: grad, weight: 1 }",
            sewer,
            "weights[0].criterion: expected a criterion of the score, got \"grad\"",
        ),
        (
            "{ criterion: grade, weight: 1 }, { criterion: grade, weight: 2 }",
            sewer,
            "weights[1].criterion: grade has a weight already",
        ),
        ("{ criterion: grade, weight: 1 }", "casing", "weights[0].criterion: only a gravity sewer is valued"),
        (
            "{ criterion: load_margin, weight: 0 }, { criterion: ground, weight: 0 }, { criterion: size, weight: 0 }, \
             { criterion: grade, weight: 0 }",
            sewer,
            "weights: the criteria that apply all weigh nothing",
        ),
    ] {
        let found = fault(list, service);
        assert!(found.starts_with(start) && found.contains(" at line "), "{start}: {found}");
    }
}

/// The same pipe by its wall.
const TWIN: &str = "  - { material: pe100, size: 180 mm, wall: 16.4 mm }\n";

/// Two pipes alike in everything share a place, whichever stands first in the file.
#[test]
fn equals_share_their_place() {
    let (_, choice) = chosen(&main(|text| text.edit(MAIN_PE, &format!("{MAIN_PE}{TWIN}"))));
    let places: Vec<usize> =
        choice.ranked.iter().filter(|one| one.standing == Standing::WithCare).map(|one| one.place).collect();
    assert_eq!(places, [1, 1]);
    assert_eq!(choice.ranked[2].place, 3);
}

/// A tie within the method is told beside the rival of the other method.
#[test]
fn a_tie_is_told_as_a_tie() {
    for list in [format!("{MAIN_PE}{TWIN}"), format!("{TWIN}{MAIN_PE}")] {
        let (_, choice) = chosen(&main(|text| text.edit(MAIN_PE, &list)));
        assert_eq!((choice.ranked[0].place, choice.ranked[1].place), (1, 1), "{}", choice.reason);
        assert!(choice.reason.contains(" scores about the same"), "{}", choice.reason);
    }
    // The same beside a rival of the other method.
    let bore = |bore: &str| TOLD_CLAY.to_owned().edit(" }\n", &format!(", bore: {bore} }}\n"));
    let (_, choice) = chosen(&sewer(|text| {
        let list = format!("{}{}{PE}", bore("14 in"), bore("355.7 mm"));
        text.edit("30 mm", "60 mm").edit(TOLD_CLAY, &list)
    }));
    assert_eq!((choice.ranked[0].place, choice.ranked[1].place), (1, 1), "{}", choice.reason);
    assert!(choice.reason.contains(" scores about the same"), "{}", choice.reason);
}

/// Where standing is the same, the sentence names what decided and what speaks for the other.
#[test]
fn the_sentence_names_two_criteria_and_the_other_argument() {
    // The smaller pipe asks for less force, and in a bore so wide its line is less certain.
    let (_, choice) = chosen(&sewer(|text| {
        let wide = TOLD_CLAY.to_owned().edit(" }\n", ", bore: 15 in }\n");
        let large = TOLD_CLAY.to_owned().edit("10 in", "15 in");
        text.edit("invert_depth: 3.60 m", "invert_depth: 3.00 m")
            .edit("over: road", "over: open")
            .edit("30 mm", "60 mm")
            .edit("900 kN", "800 kN")
            .edit("2.6 m, height: 2.6 m", "6 m, height: 3.8 m")
            .edit(TOLD_CLAY, &format!("{wide}{large}"))
    }));
    let sentence = &choice.reason;
    assert!(sentence.contains("; it leads ") && sentence.contains(" of the score's 100 points"), "{sentence}");
    assert!(sentence.contains("; the other scores ") && sentence.contains(" more on "), "{sentence}");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Nothing open is ever chosen, and nothing barred.
    #[test]
    fn what_is_open_or_barred_is_never_chosen(
        thrust in 50.0..2000.0_f64, pull in 20.0..900.0_f64, stone in prop::option::of(0.0..200.0_f64), n in 5.0..29.0_f64,
        water in 0.5..8.0_f64, celsius in 0.0..60.0_f64,
    ) {
        let stone = stone.map_or(String::new(), |stone| format!(", largest_stone: {stone} mm"));
        let text = text(|text| {
            text.edit("spt_n: 12, largest_stone: 20 mm", &format!("spt_n: {n}{stone}"))
                .edit("900 kN", &format!("{thrust} kN")).edit("500 kN", &format!("{pull} kN"))
                .edit("5.5 m", &format!("{water} m")).edit("25 degC", &format!("{celsius} degC"))
        });
        if let Ok(drive) = read_drive(&text, &Handbook::embedded()) {
            let choice = choose(&drive).unwrap();
            if let Some(chosen) = choice.chosen() {
                let fine = |verdict| matches!(verdict, Verdict::Within | Verdict::WithCare);
                prop_assert!(chosen.scheme.checks.iter().all(|check| fine(check.verdict)));
            }
            for score in choice.ranked.iter().filter_map(|ranked| ranked.score.as_ref()) {
                let unknown = score.criteria.iter().filter(|criterion| criterion.value.is_none());
                let unknown: f64 = unknown.map(|criterion| 100.0 * criterion.weight).sum();
                prop_assert!((score.most - score.least - unknown).abs() < 1e-9);
                prop_assert!(0.0 <= score.least && score.most <= 100.0 + 1e-9);
            }
        }
    }

    /// Weights scaled alike change nothing.
    #[test]
    fn weights_scaled_alike_change_nothing(weights in prop::array::uniform4(0.05..1.0_f64), times in 0.01..100.0_f64) {
        use CriterionKind::{Grade, Ground, LoadMargin, Size};
        let list = |times: f64| [LoadMargin, Ground, Grade, Size].into_iter().zip(weights.map(|w| w * times)).collect::<Vec<_>>();
        let (one, its) = chosen(&with_weights(&list(1.0)));
        let (other, scaled) = chosen(&with_weights(&list(times)));
        for (a, b) in order(&one, &its).iter().zip(order(&other, &scaled)) {
            prop_assert_eq!((&a.0, a.1), (&b.0, b.1));
            prop_assert!((a.2 - b.2).abs() < 1e-9 && (a.3 - b.3).abs() < 1e-9);
        }
    }

    /// A scheme worse in everything changes no order and no score; nor does the order of the file.
    #[test]
    fn a_worse_scheme_changes_no_other(bore in 480.0..700.0_f64, first in any::<bool>()) {
        // The same pipe in a wider bore: further off its line, and no load is less.
        let worse = format!("  - {{ material: pe100, size: 315 mm, sdr: 11, bore: {bore} mm }}\n");
        let both = text(|text| text);
        let more = text(|text| {
            let list = if first { format!("{worse}{PE}{CLAY}") } else { format!("{CLAY}{PE}{worse}") };
            text.edit(&format!("{CLAY}{PE}"), &list)
        });
        let (drive, choice) = chosen(&both);
        let (more_drive, more) = chosen(&more);
        let named: Vec<_> = order(&drive, &choice);
        let kept: Vec<_> =
            order(&more_drive, &more).into_iter().filter(|one| !one.0.contains("bore")).collect();
        prop_assert_eq!(named.len(), 2);
        prop_assert_eq!(kept.len(), 2);
        for (a, b) in named.iter().zip(&kept) {
            prop_assert_eq!((&a.0.split(',').next(), a.1), (&b.0.split(',').next(), b.1));
            prop_assert_eq!((a.2, a.3), (b.2, b.3));
        }
    }

    /// Whatever makes one criterion worse never raises a score.
    #[test]
    fn what_makes_it_worse_never_raises_a_score(times in 1.0..3.0_f64, longer in 0.0..60.0_f64, tighter in 0.2..1.0_f64) {
        // What the rig leans on bears it well: a weaker one leans less.
        let wall = "invert_depth: 4.20 m, wall: { width: 6 m, height: 4 m, movement: checked }";
        let face = "25 degC, reaction: { area: 9 m2, allowable_pressure: 400 kPa }";
        let base = text(|text| text.edit("rig:", "tolerance: 60 mm\nrig:").edit("25 degC", face))
            .edit("invert_depth: 4.20 m", wall);
        let scores = |text: &str| -> Vec<(String, f64)> {
            let (drive, choice) = chosen(text);
            let mut scores: Vec<_> = order(&drive, &choice).into_iter().map(|one| (one.0, one.2)).collect();
            scores.sort_by(|a, b| a.0.cmp(&b.0));
            scores
        };
        let before = scores(&base);
        let weaker = base.edit("900 kN", &format!("{} kN", 900.0 / times)).edit("500 kN", &format!("{} kN", 500.0 / times));
        let length = 60.0 + longer;
        let long = base.edit("length: 60 m", &format!("length: {length} m")).edit("to: 60 m", &format!("to: {length} m"));
        let tight = base.edit("60 mm", &format!("{} mm", 60.0 * tighter));
        for worse in [weaker, long, tight] {
            for (a, b) in before.iter().zip(scores(&worse)) {
                prop_assert_eq!(&a.0, &b.0);
                prop_assert!(b.1 <= a.1 + 1e-9, "{} rose from {} to {}", a.0, a.1, b.1);
            }
        }
    }
}

/// Pipes proposed: the next size up and one more of every material, marked, assessed like the user's own.
#[test]
fn pipes_are_proposed_from_the_inside_diameter() {
    let proposing = |line: &str| {
        let text = text(|text| text.edit(&format!("candidates:\n{CLAY}{PE}"), line));
        (DriveFile::read(&text).unwrap().candidates.len(), chosen(&text))
    };
    let (own, (drive, choice)) = proposing("needed_inside_diameter: 9.5 in\n");
    assert_eq!(own, 0);
    let labels: Vec<&str> = drive.candidates().iter().map(|pipe| pipe.label()).collect();
    // 9.5 in is 241 mm: PE100 of 315 mm SDR 11 is 315 - 2.12 x 28.6 = 254 mm inside, 280 mm only 226 mm.
    for wanted in ["clay 10 in", "clay 12 in", "PE100 315 mm SDR 11", "PE100 280 mm SDR 17", "PE4710 IPS 12 in DR 11"] {
        assert!(labels.contains(&wanted), "{wanted}: {labels:?}");
    }
    assert!(!labels.contains(&"clay 8 in") && !labels.contains(&"PE100 280 mm SDR 11"), "{labels:?}");
    assert!((0..labels.len()).all(|index| drive.is_proposed(index)));
    assert_eq!(choice.ranked.len(), 2 * labels.len());
    // Beside pipes of the file, which stay first and are not proposed again.
    let (_, (drive, _)) = proposing(&format!("needed_inside_diameter: 9.5 in\ncandidates:\n{CLAY}{PE}"));
    assert!(!drive.is_proposed(0) && !drive.is_proposed(1) && drive.is_proposed(2));
    assert_eq!(drive.candidates().iter().filter(|pipe| pipe.label() == "clay 10 in").count(), 1);
}

/// 8 in full at 0.40 % and n 0.013 runs at 2.19 ft/s (the table of minimum slopes), which is 0.764 ft3/s.
#[test]
fn the_diameter_for_a_flow() {
    let text = text(|text| {
        text.edit(&format!("candidates:\n{CLAY}{PE}"), "design_flow: { max: 0.764 ft3/s }\ndesign_depth: 100 %\n")
    });
    let needed = drive(&text).needed_inside_diameter().unwrap();
    assert!((needed.value / (8.0 * 0.0254) - 1.0).abs() < 0.005, "{needed:?}");
    // Half full carries half as much: wider by 2^(3/8).
    let half = drive(&text.edit("design_depth: 100 %\n", "")).needed_inside_diameter().unwrap();
    approx::assert_relative_eq!((half / needed).value, 2.0_f64.powf(0.375), max_relative = 1e-9);
}

#[test]
fn what_cannot_be_proposed_is_refused_with_its_place() {
    let fault = |line: &str, change: fn(String) -> String| {
        let text = change(text(|text| text.edit(&format!("candidates:\n{CLAY}{PE}"), line)));
        match read_drive(&text, &Handbook::embedded()) {
            Err(InputError::Faults(faults)) => faults[0].to_string(),
            other => panic!("{other:?}"),
        }
    };
    let same = |text| text;
    for (line, change, start) in [
        ("", same as fn(String) -> String, "candidates: expected at least one pipe to choose from"),
        ("needed_inside_diameter: 0 mm\n", same, "needed_inside_diameter: expected a length above zero"),
        (
            "needed_inside_diameter: 4 m\n",
            same,
            "needed_inside_diameter: no pipe can be proposed: clay in inches: no size",
        ),
        ("needed_inside_diameter: 300 mm\ndesign_depth: 0.5\n", same, "design_depth: is for a design_flow.max"),
        (
            "design_flow: { max: 5 L/s }\ndesign_depth: 120 %\n",
            same,
            "design_depth: expected a plain number or a percentage from 0.05 to 1",
        ),
        ("design_flow: { max: 5 L/s }\n", |text| text.edit("gravity_sewer", "casing"), "design_flow.max: is for"),
        (
            "design_flow: { max: 5 L/s }\n",
            |text| text.edit("3.96 m", "4.20 m"),
            "design_flow.max: nothing flows in a level sewer",
        ),
    ] {
        let found = fault(line, change);
        assert!(found.starts_with(start) && found.contains(" at line "), "{start}: {found}");
    }
    // Without how it is pulled no PE pipe is proposed; clay is.
    let text = text(|text| {
        text.edit(&format!("candidates:\n{CLAY}{PE}"), "needed_inside_diameter: 9.5 in\n")
            .edit("pull: { duration: 6 h, pipe_temperature: 25 degC }\n", "")
    });
    let drive = drive(&text);
    assert!(drive.candidates().iter().all(|pipe| !pipe.label().starts_with("PE")));
}

/// Movement counts once the file limits it: 1 less the greatest share of a limit, and a tighter limit never helps.
#[test]
fn movement_counts_where_it_is_limited() {
    use jackpull::check::Subject;
    let (_, free) = chosen(&text(|text| text));
    let kinds = |choice: &Choice| {
        let score = choice.ranked.first().unwrap().score.as_ref().unwrap();
        score.criteria.iter().map(|criterion| criterion.kind).collect::<Vec<_>>()
    };
    assert!(!kinds(&free).contains(&CriterionKind::Movement));
    let at = |limit: &str| {
        let (_, choice) =
            chosen(&text(|text| format!("{text}surface: {{ over: open, allowed_settlement: {limit} }}\n")));
        assert!(kinds(&choice).contains(&CriterionKind::Movement));
        let schemes = choice.ranked.iter().filter_map(|ranked| {
            let criteria = &ranked.score.as_ref()?.criteria;
            let value = criteria.iter().find(|criterion| criterion.kind == CriterionKind::Movement)?.value?;
            let share = ranked.scheme.checks.get(Subject::SurfaceSettlement)?.likely_utilisation()?;
            Some((ranked.candidate, value, share))
        });
        schemes.collect::<Vec<_>>()
    };
    let (wide, tight) = (at("200 mm"), at("100 mm"));
    assert!(!wide.is_empty());
    for (candidate, value, share) in &wide {
        assert!((value - (1.0 - share).clamp(0.0, 1.0)).abs() < 1e-12);
        let other = tight.iter().find(|(other, ..)| other == candidate).unwrap();
        assert!(other.1 <= *value);
    }
}
