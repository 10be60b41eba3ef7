//! The share of all weightings under which a scheme leads. All weightings are the points of a simplex: no weight below
//! zero, their sum 1, each as likely as any other.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Weightings drawn from one stream of random numbers.
const CHUNK: u32 = 4096;
/// Streams.
const CHUNKS: u32 = 16;
/// Weightings drawn in all.
pub(super) const SAMPLES: u32 = CHUNK * CHUNKS;
/// Any number does; the same one gives the same shares.
const SEED: u64 = 20_230_601;
/// Values closer than this are equal.
const EQUAL: f64 = 1e-12;

/// By how much one scheme leads another in each criterion.
pub(super) fn difference(one: &[f64], other: &[f64]) -> Vec<f64> {
    one.iter().zip(other).map(|(one, other)| one - other).collect()
}

/// The exact share of weightings under which `sum of weight x difference` is above zero; one half where there is no
/// difference at all.
///
/// A weighting is a list of waiting times of mean 1, divided by their sum. Let each positive difference fill and each
/// negative one drain in turn: what is exhausted first is settled by the odds of two waiting times, and the rest waits on
/// as if it had just begun, which gives the recursion `p(k, h) = (y_h p(k-1, h) + x_k p(k, h-1)) / (x_k + y_h)` for the
/// chance that `k` positive ones stay below `h` negative ones. Every term is positive, so nothing cancels.
pub(super) fn ahead(differences: &[f64]) -> f64 {
    let plus: Vec<f64> = differences.iter().copied().filter(|d| *d > EQUAL).collect();
    let minus: Vec<f64> = differences.iter().copied().filter(|d| *d < -EQUAL).map(f64::abs).collect();
    if plus.is_empty() && minus.is_empty() {
        return 0.5;
    }
    // Chance that the positive ones seen so far stay below the first, the first two, ... of the negative ones.
    let mut below = vec![1.0; minus.len()];
    for x in plus {
        // Against no negative one at all they never do.
        let mut with_one_less = 0.0;
        for (chance, y) in below.iter_mut().zip(&minus) {
            with_one_less = (y * *chance + x * with_one_less) / (x + y);
            *chance = with_one_less;
        }
    }
    1.0 - below.last().copied().unwrap_or(0.0)
}

/// The share of sampled weightings under which each list of values has the greatest sum; equal ones share.
pub(super) fn sampled(values: &[Vec<f64>]) -> Vec<f64> {
    // What another leads in something and follows in nothing never leads.
    let is_beaten = |one: &Vec<f64>| values.iter().any(|other| beats(other, one));
    let places: Vec<usize> = (0..).zip(values).filter(|(_, one)| !is_beaten(one)).map(|(place, _)| place).collect();
    let rivals: Vec<&Vec<f64>> = places.iter().filter_map(|place| values.get(*place)).collect();
    let won = if rivals.len() == 1 { vec![1.0] } else { led(&rivals) };
    let mut shares = vec![0.0; values.len()];
    for (place, won) in places.into_iter().zip(won) {
        if let Some(share) = shares.get_mut(place) {
            *share = won;
        }
    }
    shares
}

/// Whether one follows another in nothing, and leads it in something by so much that no weight drawn makes them equal.
fn beats(one: &[f64], other: &[f64]) -> bool {
    const CLEARLY: f64 = 1e-3;
    let lead = difference(one, other);
    lead.iter().all(|lead| *lead >= 0.0) && lead.iter().any(|lead| *lead >= CLEARLY)
}

/// The same of lists of which any may lead.
fn led(values: &[&Vec<f64>]) -> Vec<f64> {
    let [first, others @ ..] = values else { return Vec::new() };
    // A criterion in which all are alike parts none from another; its weight is drawn all the same.
    let parts = |place: &usize| others.iter().any(|other| other.get(*place) != first.get(*place));
    let drawn: Vec<bool> = (0..first.len()).map(|place| parts(&place)).collect();
    let parting =
        |values: &&Vec<f64>| values.iter().zip(&drawn).filter(|(_, parts)| **parts).map(|(value, _)| *value).collect();
    let values: Vec<Vec<f64>> = values.iter().map(parting).collect();
    let mut won = vec![0.0; values.len()];
    let mut weights = vec![0.0; values.first().map_or(0, Vec::len)];
    let mut sums = vec![0.0; values.len()];
    for chunk in 0..CHUNKS {
        // A stream a chunk: the same numbers however the chunks are shared out.
        let mut random = ChaCha8Rng::seed_from_u64(SEED);
        random.set_stream(u64::from(chunk));
        for _ in 0..CHUNK {
            let mut weight = weights.iter_mut();
            for parts in &drawn {
                let bits = random.next_u64();
                if *parts && let Some(weight) = weight.next() {
                    // Waiting times; dividing them by their sum changes no order.
                    *weight = -unit(bits).ln();
                }
            }
            for (sum, values) in sums.iter_mut().zip(&values) {
                *sum = values.iter().zip(&weights).map(|(value, weight)| value * weight).sum();
            }
            let best = sums.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let leads = |sum: &&f64| **sum >= best - EQUAL;
            let equals = sums.iter().filter(leads).count().max(1);
            let part = 1.0 / f64::from(u32::try_from(equals).unwrap_or(1));
            for (won, sum) in won.iter_mut().zip(&sums) {
                if *sum >= best - EQUAL {
                    *won += part;
                }
            }
        }
    }
    won.iter().map(|won| won / f64::from(SAMPLES)).collect()
}

/// A number above 0 and up to 1, from the upper 53 bits.
#[expect(clippy::cast_precision_loss, reason = "53 bits fit a number exactly")]
fn unit(bits: u64) -> f64 {
    const STEP: f64 = 1.0 / (1_u64 << 53) as f64;
    ((bits >> 11) + 1) as f64 * STEP
}
