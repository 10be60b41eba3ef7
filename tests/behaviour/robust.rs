//! How far a choice depends on the weights.

use crate::drives::{drive, text};
use jackpull::Standing;
use jackpull::choice::robust::{Contest, Count, robustness};
use jackpull::choice::{Choice, Criterion};
use jackpull::choose;
use proptest::prelude::*;

/// A choice among schemes that all fit, with these values of the first criteria; the rest weigh nothing.
fn choice(weights: &[f64], values: &[&[f64]]) -> Choice {
    let choice = choose(&drive(&text(|text| text))).unwrap();
    let like = choice.ranked.iter().find(|ranked| ranked.score.is_some()).unwrap();
    let of = |values: &&[f64]| {
        let mut one = like.clone();
        one.standing = Standing::Fits;
        let score = one.score.as_mut().unwrap();
        let parts = score.criteria.iter().take(weights.len()).zip(weights).zip(*values);
        score.criteria =
            parts.map(|((old, weight), value)| Criterion { weight: *weight, value: Some(*value), ..*old }).collect();
        one
    };
    Choice { ranked: values.iter().map(of).collect(), reason: String::new() }
}

fn contest(weights: &[f64], values: &[&[f64]]) -> Contest {
    robustness(&choice(weights, values)).unwrap().within_standing
}

/// The exact share of two, with these differences.
fn ahead(differences: &[f64]) -> f64 {
    let weights = vec![1.0; differences.len()];
    let zero = vec![0.0; differences.len()];
    let found = contest(&weights, &[differences, &zero]);
    assert_eq!(found.count, Count::Exact);
    assert!((found.shares[0].1 + found.shares[1].1 - 1.0).abs() < 1e-12);
    found.shares[0].1
}

/// By plane geometry: the part of a segment or triangle on one side of a line.
#[test]
fn shares_of_a_segment_and_a_triangle() {
    let near = |got: f64, expected: f64| assert!((got - expected).abs() < 1e-12, "{got} against {expected}");
    // Two weights: w1 > 3 w2 on w1 + w2 = 1 is w1 > 3/4.
    near(ahead(&[1.0, -3.0]), 0.25);
    // Three: w1 > w2 whatever w3 is half; w1 > w2 + w3 cuts off a corner of half the sides, a quarter.
    near(ahead(&[1.0, -1.0, 0.0]), 0.5);
    near(ahead(&[1.0, -1.0, -1.0]), 0.25);
    // 2 w1 > w2 + w3 is w1 > 1/3: a corner of two thirds of the sides.
    near(ahead(&[2.0, -1.0, -1.0]), 4.0 / 9.0);
    near(ahead(&[0.2, 0.0, 0.1]), 1.0);
    near(ahead(&[-0.2, 0.0, -0.1]), 0.0);
    near(ahead(&[0.0, 0.0]), 0.5);
}

/// A third scheme that is worse than both in everything wins nothing, so the sampled shares are those of the two.
#[test]
fn samples_agree_with_the_exact_share() {
    let weights = [0.25; 4];
    let (one, other, worst) = ([0.9, 0.2, 0.4, 0.7], [0.5, 0.6, 0.3, 0.8], [0.1; 4]);
    let exact = contest(&weights, &[&one, &other]).shares[0].1;
    let sampled = contest(&weights, &[&one, &other, &worst]);
    let Count::Sampled(samples) = sampled.count else { panic!("{:?}", sampled.count) };
    let error = (exact * (1.0 - exact) / f64::from(samples)).sqrt();
    assert!((sampled.shares[0].1 - exact).abs() < 4.0 * error, "{:?} against {exact}", sampled.shares);
    assert_eq!(sampled.shares[2].1, 0.0);
    assert!((sampled.shares.iter().map(|share| share.1).sum::<f64>() - 1.0).abs() < 1e-9);
    // A lopsided pair, which other ways of drawing weights get wrong: w1 > 3 w2 under a quarter of all weightings.
    let lopsided = contest(&[0.5, 0.5], &[&[1.0, 0.0], &[0.7, 0.9], &[0.1, 0.0]]);
    assert!((lopsided.shares[0].1 - 0.25).abs() < 4.0 * (0.25 * 0.75 / f64::from(samples)).sqrt(), "{lopsided:?}");
    // The same at every run; three alike share alike.
    assert_eq!(sampled, contest(&weights, &[&one, &other, &worst]));
    let alike = contest(&weights, &[&one, &one, &one]);
    assert!(alike.shares.iter().all(|share| (share.1 - 1.0 / 3.0).abs() < 1e-9));
    // Equals need no shift at all: the choice turns at the touch of a weight, or at none.
    assert!(alike.shift.is_none_or(|shift| shift.moved == 0.0));
}

/// By hand: a lead of 0.5 x 0.4 - 0.5 x 0.2 = 0.1; each unit moved takes 0.6 off, so 1/6 turns it.
#[test]
fn the_least_shift_by_hand() {
    let found = contest(&[0.5, 0.5], &[&[0.9, 0.3], &[0.5, 0.5]]).shift.unwrap();
    assert!((found.moved - 1.0 / 6.0).abs() < 1e-12);
    assert_eq!(found.to, 1);
    assert!(contest(&[0.5, 0.5], &[&[0.9, 0.5], &[0.5, 0.5]]).shift.is_none(), "better in everything");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// After the shift both score alike, and no other weighting that near turns the choice.
    #[test]
    fn no_weighting_nearer_turns_it(
        raw in prop::array::uniform4(0.05..1.0_f64), one in prop::array::uniform4(0.0..1.0_f64),
        other in prop::array::uniform4(0.0..1.0_f64), tried in prop::collection::vec(prop::array::uniform4(0.0..1.0_f64), 200),
    ) {
        let unit = |raw: [f64; 4]| raw.map(|w| w / raw.iter().sum::<f64>());
        let weights = unit(raw);
        let leads = |w: &[f64; 4], one: [f64; 4], other: [f64; 4]| -> f64 {
            w.iter().zip(one.iter().zip(other)).map(|(w, (a, b))| w * (a - b)).sum()
        };
        let (one, other) = if leads(&weights, one, other) < 0.0 { (other, one) } else { (one, other) };
        let lead = |w: &[f64; 4]| leads(w, one, other);
        prop_assume!(lead(&weights) > 0.0);
        let found = contest(&weights, &[&one, &other]).shift;
        let turned = tried.iter().map(|raw| unit(*raw)).filter(|at| lead(at) <= 0.0);
        let moved = |at: [f64; 4]| at.iter().zip(weights).map(|(at, now)| (at - now).max(0.0)).sum::<f64>();
        let nearest = turned.map(moved).fold(f64::INFINITY, f64::min);
        match found {
            None => prop_assert!(nearest.is_infinite()),
            Some(shift) => {
                prop_assert!(shift.moved <= nearest + 1e-12, "{} against {nearest}", shift.moved);
                prop_assert!((shift.from.iter().map(|from| from.1).sum::<f64>() - shift.moved).abs() < 1e-12);
            }
        }
    }
}

/// Standing goes before score: the only scheme that fits leads under every weighting; by score alone it may not.
#[test]
fn standing_goes_before_weights() {
    let mut choice = choice(&[0.5, 0.5], &[&[0.9, 0.3], &[0.5, 0.5]]);
    choice.ranked[1].standing = Standing::WithCare;
    let found = robustness(&choice).unwrap();
    assert_eq!(
        (found.within_standing.count, found.within_standing.shares.as_slice()),
        (Count::Alone, [(0, 1.0)].as_slice())
    );
    assert!(found.within_standing.shift.is_none());
    // w1 x 0.4 > w2 x 0.2 is w1 > 1/3.
    approx::assert_relative_eq!(found.by_score.unwrap().shares[0].1, 2.0 / 3.0, max_relative = 1e-12);
    choice.ranked.iter_mut().for_each(|ranked| ranked.standing = Standing::Open);
    assert!(robustness(&choice).is_none());
}
