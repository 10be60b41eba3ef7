//! Where between two values the choice may turn: a guess, from how checks and scores come out at both.

use crate::check::{Check, Draft, Rule, Subject};
use crate::choice::Ranked;
use crate::handbook::Method;
use crate::quantity::Measure;

/// A scheme by the position of its pipe among the candidates, and its method.
type Place = (usize, Method);

/// Of what is chosen and the schemes at both, as a share of the way: where the first scheme comes to stand otherwise, else
/// where another has a higher score.
pub(super) fn share([now, then]: [Option<Place>; 2], [near, far]: [&[Ranked]; 2]) -> Option<f64> {
    let schemes = || near.iter().zip(far);
    let other_standing = schemes().filter(|(one, other)| one.standing != other.standing);
    let turns = other_standing.filter_map(|(one, other)| {
        let check = |of: &Ranked, subject| of.scheme.checks.get(subject).copied();
        let both = Subject::ALL.iter().filter_map(|subject| check(one, *subject).zip(check(other, *subject)));
        let met =
            both.filter(|(one, other)| one.verdict != other.verdict).filter_map(|(one, other)| meets(&one, &other));
        // The first check that fails bars a scheme, and the last that passes clears it.
        met.reduce(if one.standing < other.standing { f64::min } else { f64::max })
    });
    let scores = || {
        let lead = |of: &[Ranked]| Some(score(of, now?)? - score(of, then?)?);
        let (leads, follows) = (lead(near)?, lead(far)?);
        (leads > 0.0 && follows < 0.0).then(|| leads / (leads - follows))
    };
    turns.reduce(f64::min).or_else(scores)
}

fn score(of: &[Ranked], (candidate, method): Place) -> Option<f64> {
    let scheme = of.iter().find(|one| one.candidate == candidate && one.scheme.method == method)?;
    scheme.score.as_ref().map(|score| score.least)
}

/// Where a check first passes its limit or what its rule leaves, at either level: a power of what is varied is nearly one line.
fn meets(one: &Check, other: &Check) -> Option<f64> {
    let most = match one.rule() {
        Some(Rule::Likely(most) | Rule::Watched(most)) => most.si(),
        _ => 1.0,
    };
    let levels = [Draft::likely_utilisation, Draft::utilisation].map(|level| level(one).zip(level(other)));
    let passes = |((one, other), limit): ((f64, f64), f64)| {
        ((one <= limit) != (other <= limit) && one > 0.0 && other > 0.0)
            .then(|| (limit / one).ln() / (other / one).ln())
    };
    let met = levels.into_iter().flatten().flat_map(|both| [(both, 1.0), (both, most)]);
    met.filter_map(passes).reduce(f64::min)
}
