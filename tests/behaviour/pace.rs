//! Time by stages, quantities and cost: hand sums, what they do to the score, and what the door refuses.

use crate::drives::{drive, put_in, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Subject, Verdict};
use jackpull::choice::{Choice, Criterion, CriterionKind, Ranked};
use jackpull::conditions::{amounts, cost_plan, site_figures, time_plan};
use jackpull::{Drive, Handbook, Method, assess, choose, read_drive};
use proptest::prelude::*;
use std::f64::consts::PI;

/// The shared drive with a pace, and with no pass before the one that brings the PE pipe.
fn with(pace: &str) -> String {
    text(|text| {
        text.edit("candidates:", &format!("{pace}candidates:")).edit("sdr: 11 }", "sdr: 11, bore: 450 mm, passes: [] }")
    })
}

fn chosen(text: &str) -> (Drive, Choice) {
    let drive = drive(text);
    let choice = choose(&drive).unwrap();
    (drive, choice)
}

fn of(choice: &Choice, method: Method) -> &Ranked {
    choice.ranked.iter().find(|one| one.scheme.method == method && one.score.is_some()).unwrap()
}

fn criterion(choice: &Choice, method: Method, kind: CriterionKind) -> Option<Criterion> {
    let score = of(choice, method).score.as_ref().unwrap();
    score.criteria.iter().find(|criterion| criterion.kind == kind).copied()
}

/// 60 m at 30 m a shift and at 12 m, 2 and 5; pits 4, setting up 2, recovery 1: 14. By the week at half: 4 and 10, so 21.
#[test]
fn time_from_the_file_by_hand() {
    let drive = drive(&with("pace: { pilot: 30 m, jacking: 12 m, pits: 4, set_up: 2, recovery: 1 }\n"));
    let plan = time_plan(&put_in(&drive, &drive.candidates()[0], Method::PipeJacking));
    let shifts = plan.shifts.unwrap();
    assert_relative_eq!(shifts.likely.value, 14.0, max_relative = 1e-12);
    assert_relative_eq!(shifts.high.value, 21.0, max_relative = 1e-12);
    assert_eq!(plan.stages.iter().flatten().count(), 5);
}

/// Without a pace: pits 4.20 m and 3.96 m deep, 0.8 and 0.6 shifts a metre, 5.736; setting up 2; 60 m of pilot at 15 m,
/// 4; ramp 1; a pull of 6 h in a shift of 8 h, 0.75; recovery 1. The high one by the high rows, the pilot and the pull
/// planned at half: 14.34 + 4 + 8 + 3 + 1.5 + 3.
#[test]
fn time_of_a_pull_by_hand() {
    let drive = drive(&with(""));
    let plan = time_plan(&put_in(&drive, &drive.candidates()[1], Method::Pullback));
    let shifts = plan.shifts.unwrap();
    assert_relative_eq!(shifts.low.value, 2.052 + 1.0 + 1.5 + 0.5 + 0.75 + 0.5, max_relative = 1e-9);
    assert_relative_eq!(shifts.likely.value, 14.486, max_relative = 1e-9);
    assert_relative_eq!(shifts.high.value, 33.84, max_relative = 1e-9);
    // Five pipes of 12 m and what is longer than the drive: the joints are told beside, and not summed.
    let joints = plan.stages.iter().flatten().find(|stage| stage.beside).unwrap();
    assert!(joints.shifts.is_some());
    // A longer shift, and a rate of the user's, take their place.
    let drive = self::drive(&with("pace: { shift_length: 12 h }\n"));
    let shifts = time_plan(&put_in(&drive, &drive.candidates()[1], Method::Pullback)).shifts.unwrap();
    assert_relative_eq!(shifts.likely.value, 14.486 - 0.25, max_relative = 1e-9);
    let drive = self::drive(&with("pace: { pullback: 20 m }\n"));
    let shifts = time_plan(&put_in(&drive, &drive.candidates()[1], Method::Pullback)).shifts.unwrap();
    assert_relative_eq!(shifts.likely.value, 14.486 - 0.75 + 3.0, max_relative = 1e-9);
}

/// Grout, and a casing with the pipe behind it, are stages of their own.
#[test]
fn more_work_is_more_stages() {
    let plan = |text: &str, index: usize, method| {
        let drive = drive(text);
        time_plan(&put_in(&drive, &drive.candidates()[index], method))
    };
    let has = |plan: &jackpull::conditions::TimePlan, what: &str| {
        plan.stages.iter().flatten().any(|stage| stage.what == what)
    };
    let grouted = with("annulus: { filling: grouted }\n");
    assert!(has(&plan(&grouted, 1, Method::Pullback), "annulus grouted"));
    assert!(!has(&plan(&with(""), 1, Method::Pullback), "annulus grouted"));
    let cased = with("").edit("size: 10 in }", "size: 10 in, casing: 500 mm }");
    let cased = plan(&cased, 0, Method::PipeJacking);
    assert!(has(&cased, "casing") && has(&cased, "pipe pushed behind the casing"));
    assert!(cased.shifts.unwrap().likely > plan(&with(""), 0, Method::PipeJacking).shifts.unwrap().likely);
}

/// 14 shifts at 1000, 500 to set up, two pits at 2000, 60 m at 90 for 3 m: 14,000 + 500 + 4,000 + 1,800.
#[test]
fn cost_by_hand() {
    let pace = "pace: { pilot: 30 m, jacking: 12 m, pits: 4, set_up: 2, recovery: 1, shift_price: 1000, setup_price: 500, \
                pit_price: 2000 }\n";
    let priced = with(pace)
        .edit("size: 10 in }", "size: 10 in, price: { price: 90, per: 3 m } }")
        .edit("passes: [] }", "passes: [], price: { price: 50, per: 1 m } }");
    let drive = drive(&priced);
    let pipe = &drive.candidates()[0];
    let cost = cost_plan(&put_in(&drive, pipe, Method::PipeJacking));
    assert_relative_eq!(cost.sum.unwrap().likely.value, 20_300.0, max_relative = 1e-12);
    assert_eq!(cost.lines.len(), 4);
    assert!(site_figures(&put_in(&drive, pipe, Method::PipeJacking)).iter().any(|figure| figure.what == "cost in all"));
    // Spoil by the cubic metre in the ground: what the ring from the stem to the bore holds, at 40 for a cubic metre.
    let spoil = self::drive(&with("pace: { shift_price: 1000, spoil_price: { price: 40, per: 1 m3 } }\n"));
    let pipe = &spoil.candidates()[1];
    let soil = PI / 4.0 * (0.45_f64.powi(2) - 0.1_f64.powi(2)) * 60.0;
    assert_relative_eq!(amounts(&put_in(&spoil, pipe, Method::Pullback)).soil().value, soil, max_relative = 1e-9);
    let lines = cost_plan(&put_in(&spoil, pipe, Method::Pullback)).lines;
    assert_relative_eq!(lines[1].cost.unwrap().likely.value, 40.0 * soil, max_relative = 1e-9);
    // Grout with its waste, in the annulus of a grouted pipe alone.
    let text = with(
        "annulus: { filling: grouted, grout_waste: 1.2 }\npace: { shift_price: 1, grout_price: { price: 100, per: 2 m3 } }\n",
    );
    let grouted = self::drive(&text);
    let lines = cost_plan(&put_in(&grouted, &grouted.candidates()[1], Method::Pullback)).lines;
    let grout = 1.2 * PI / 4.0 * (0.45_f64.powi(2) - 0.315_f64.powi(2)) * 60.0;
    assert_relative_eq!(lines[1].cost.unwrap().likely.value, 50.0 * grout, max_relative = 1e-9);
    assert_eq!(cost_plan(&put_in(&grouted, &grouted.candidates()[0], Method::PipeJacking)).lines.len(), 1);
    // No price is invented.
    let plain = self::drive(&with(""));
    let cost = cost_plan(&put_in(&plain, &plain.candidates()[0], Method::PipeJacking));
    assert!(cost.lines.is_empty() && cost.sum.is_none());
}

/// 9.07 m3 in the ring from 0.1 m to 0.45 m; 25 m of clay swell by 40 %, 15 m of silt by 25 %, 20 m of sand by 12 %: 1.269 in
/// the mean, and half as much water: 16.05 m3, nine tanks of 2 m3, each of which costs 40 min of a shift of 8 h.
#[test]
fn tanks_of_spoil_by_hand() {
    let drive = drive(&with("clearing: { tank: 2 m3, water: 50 %, emptying: 40 min }\n"));
    let pulled = put_in(&drive, &drive.candidates()[1], Method::Pullback);
    let soil = PI / 4.0 * (0.45_f64.powi(2) - 0.1_f64.powi(2)) * 60.0;
    let loosened = (25.0 * 1.4 + 15.0 * 1.25 + 20.0 * 1.12) / 60.0;
    assert_relative_eq!(soil * (loosened + 0.5), 16.05, max_relative = 1e-3);
    assert_relative_eq!(amounts(&pulled).tanks.unwrap().value.value, 9.0);
    let stands = time_plan(&pulled).stages.into_iter().flatten().find(|stage| stage.what.contains("emptied")).unwrap();
    assert_relative_eq!(stands.shifts.unwrap().likely.value, 9.0 * 40.0 / 480.0, max_relative = 1e-12);
    // Without its time no shifts are counted, without a tank no tanks.
    let carried = self::drive(&with("clearing: { tank: 2 m3 }\n"));
    let pulled = put_in(&carried, &carried.candidates()[1], Method::Pullback);
    assert_relative_eq!(amounts(&pulled).tanks.unwrap().value.value, (soil * loosened / 2.0).ceil());
    assert!(time_plan(&pulled).stages.iter().flatten().all(|stage| !stage.what.contains("emptied")));
    let plain = self::drive(&with(""));
    assert!(amounts(&put_in(&plain, &plain.candidates()[1], Method::Pullback)).tanks.is_none());
}

/// 14 of 20 shifts leave 0.3, a cost of 14,000 of 56,000 leaves 0.75; none counts without its programme or budget.
#[test]
fn the_values_by_hand() {
    let pace = |more: &str| {
        with(&format!(
            "pace: {{ pilot: 30 m, jacking: 12 m, pits: 4, set_up: 2, recovery: 1, shift_price: 1000{more} }}\n"
        ))
    };
    let (_, choice) = chosen(&pace(", programme: 20, budget: 56000"));
    let value = |kind| criterion(&choice, Method::PipeJacking, kind).unwrap().value.unwrap();
    assert_relative_eq!(value(CriterionKind::Time), 0.3, max_relative = 1e-9);
    assert_relative_eq!(value(CriterionKind::Cost), 0.75, max_relative = 1e-9);
    let (_, choice) = chosen(&pace(""));
    for kind in [CriterionKind::Time, CriterionKind::Cost] {
        assert!(criterion(&choice, Method::PipeJacking, kind).is_none());
        assert!(criterion(&choice, Method::Pullback, kind).is_none());
    }
    // A programme that is not kept earns nothing, asks for care, and bars nobody.
    let (_, choice) = chosen(&pace(", programme: 10"));
    assert_eq!(criterion(&choice, Method::PipeJacking, CriterionKind::Time).unwrap().value, Some(0.0));
    let check = *of(&choice, Method::PipeJacking).scheme.checks.get(Subject::Programme).unwrap();
    assert_eq!(check.verdict, Verdict::WithCare);
    let (_, choice) = chosen(&pace(", programme: 22"));
    let check = *of(&choice, Method::PipeJacking).scheme.checks.get(Subject::Programme).unwrap();
    assert_eq!(check.verdict, Verdict::Within);
    // The file weighs it as it likes.
    let weighed =
        pace(", programme: 20").edit("candidates:", "weights: [{ criterion: time, weight: 0.8 }]\ncandidates:");
    let (_, choice) = chosen(&weighed);
    // 0.25 load, 0.20 ground, 0.25 grade and 0.10 length beside it.
    assert_relative_eq!(
        criterion(&choice, Method::PipeJacking, CriterionKind::Time).unwrap().weight,
        0.5,
        max_relative = 1e-9
    );
}

/// Our rates are for soil: in rock a stage without a rate leaves the time open for that scheme alone, and its score runs.
#[test]
fn a_scheme_of_unknown_time_is_scored_least_to_most() {
    let pace = "pace: { pilot: 20 m, pullback: 40 m, programme: 40, shift_price: 1000, budget: 90000 }\n";
    let (drive, choice) = chosen(&with(pace).edit("class: silt, spt_n: 14", "class: weak_rock"));
    let known = |method| criterion(&choice, method, CriterionKind::Time).unwrap();
    assert!(known(Method::Pullback).value.is_some());
    for kind in [CriterionKind::Time, CriterionKind::Cost] {
        let jacked = criterion(&choice, Method::PipeJacking, kind).unwrap();
        assert!(jacked.value.is_none());
        let score = of(&choice, Method::PipeJacking).score.as_ref().unwrap();
        assert!(score.most - score.least >= 100.0 * jacked.weight - 1e-9);
    }
    assert_eq!(known(Method::Pullback).weight, known(Method::PipeJacking).weight);
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    assert!(scheme.checks.get(Subject::Programme).is_none());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    /// Slower work, a shorter programme, dearer shifts or a smaller budget never raise a value.
    #[test]
    fn what_makes_it_worse_never_raises_a_value(
        rate in 5.0..60.0_f64, slower in 0.2..1.0_f64, programme in 5.0..80.0_f64, shorter in 0.2..1.0_f64,
        price in 100.0..9000.0_f64, dearer in 1.0..4.0_f64, budget in 1e4..1e6_f64, less in 0.2..1.0_f64,
    ) {
        let values = |rate: f64, programme: f64, price: f64, budget: f64| {
            let pace = format!(
                "pace: {{ pilot: {rate} m, jacking: {rate} m, pullback: {rate} m, programme: {programme}, \
                 shift_price: {price}, budget: {budget} }}\n"
            );
            let (_, choice) = chosen(&with(&pace));
            [Method::PipeJacking, Method::Pullback].map(|method| {
                let value = |kind| criterion(&choice, method, kind).unwrap().value.unwrap();
                let score = of(&choice, method).score.as_ref().unwrap().least;
                [value(CriterionKind::Time), value(CriterionKind::Cost), score]
            })
        };
        let before = values(rate, programme, price, budget);
        for after in [
            values(rate * slower, programme, price, budget),
            values(rate, programme * shorter, price, budget),
            values(rate, programme, price * dearer, budget),
            values(rate, programme, price, budget * less),
        ] {
            for (before, after) in before.iter().flatten().zip(after.iter().flatten()) {
                prop_assert!(after <= &(before + 1e-9));
                prop_assert!(*after >= 0.0);
            }
        }
    }
}

#[test]
fn what_cannot_be_is_refused_at_its_place() {
    for (text, wanted) in [
        (with("pace: { programme: 0 }\n"), "pace.programme: expected a plain number or a percentage above zero"),
        (with("pace: { pits: -1 }\n"), "pace.pits: expected a plain number or a percentage of zero or more"),
        (with("pace: { shift_length: 0 h }\n"), "pace.shift_length: expected a duration above zero"),
        (with("pace: { budget: 90000 }\n"), "pace.budget: means nothing without the price of a shift"),
        (with("pace: { spoil_price: { price: 0, per: 1 m3 } }\n"), "pace.spoil_price.price: expected"),
        (with("pace: { grout_price: { price: 9, per: 0 m3 } }\n"), "pace.grout_price.per: expected"),
        (with("pace: { grout_price: { price: 9, per: 1 m } }\n"), "pace.grout_price.per: expected"),
        (with("pace: { programm: 9 }\n"), "programme"),
        (with("").edit("passes: [] }", "passes: [], price: { price: 9, per: 1 m } }"), "price every pipe of the list"),
        (
            with("")
                .edit("passes: [] }", "passes: [], price: { price: 9, per: 1 m } }")
                .edit("size: 10 in }", "size: 10 in, price: { price: 0, per: 1 m } }"),
            "candidates[0].price.price: expected",
        ),
    ] {
        let error = read_drive(&text, &Handbook::embedded()).expect_err(wanted).to_string();
        assert!(error.contains(wanted) && error.contains("line"), "{wanted}: {error}");
    }
}

/// A weight of what cannot be valued is refused, with what it needs.
#[test]
fn weights_of_what_is_not_told_are_refused() {
    for (criterion, needs) in [
        ("cost", "pace.budget"),
        ("time", "pace.programme"),
        ("area", "launch.area"),
        ("movement", "surface.allowed_settlement"),
    ] {
        let text = crate::drives::text(|text| {
            text.edit("candidates:", &format!("weights: [{{ criterion: {criterion}, weight: 1 }}]\ncandidates:"))
        });
        let refused = jackpull::read_drive(&text, &jackpull::Handbook::embedded()).unwrap_err().to_string();
        assert!(refused.contains("weights[0].criterion") && refused.contains(needs), "{refused}");
    }
}

/// Our shifts of a pit are those of soil: in rock nothing is known but what the file says.
#[test]
fn a_pit_in_rock_takes_what_the_file_says() {
    let plan = |pace: &str| {
        let rock = "class: weak_rock, unit_friction: { low: 2 kPa, likely: 5 kPa, high: 9 kPa }";
        let text = with(pace).edit("class: firm_to_very_stiff_clay", rock);
        let drive = drive(&text);
        let plan = time_plan(&put_in(&drive, &drive.candidates()[0], Method::PipeJacking));
        plan.stages.iter().flatten().find(|stage| stage.what.starts_with("pits")).unwrap().shifts
    };
    assert!(plan("").is_none());
    assert_relative_eq!(plan("pace: { pits: 9 }\n").unwrap().likely.value, 9.0);
}
