//! How far a choice depends on the weights: the share of all weightings under which each scheme leads, and the least
//! weight that must be moved to turn the choice. Not part of [`choose`](super::choose): it takes milliseconds.

mod share;
mod shift;

pub use shift::WeightShift;

use super::standing::{Choice, Ranked, Standing};
use crate::handbook::CriterionKind;

/// How the shares were found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Count {
    /// There is but one scheme.
    Alone,
    /// Two schemes: the exact volume of either side.
    Exact,
    /// More: so many weightings drawn evenly from all there are, the same at every run.
    Sampled(u32),
}

/// Schemes that compete by score, and how often each leads.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Contest {
    /// Position in the ranking and share of all weightings, from 0 to 1; equal schemes share.
    pub shares: Vec<(usize, f64)>,
    /// How the shares were found.
    pub count: Count,
    /// The least weight to move to turn the choice; `None` where no weighting does.
    pub shift: Option<WeightShift>,
}

/// How far a choice depends on the weights.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Robustness {
    /// Among the schemes of the best standing. Standing goes before score whatever the weights, so no other can lead.
    pub within_standing: Contest,
    /// Among all schemes that may be chosen, were care not held against any; `None` where that is the same contest.
    pub by_score: Option<Contest>,
}

/// How far a choice depends on the weights; `None` where nothing is chosen.
#[must_use]
pub fn robustness(choice: &Choice) -> Option<Robustness> {
    let best = choice.chosen()?.standing;
    let those = |may: &dyn Fn(Standing) -> bool| -> Vec<(usize, &Ranked)> {
        choice.ranked.iter().enumerate().filter(|(_, one)| may(one.standing) && one.score.is_some()).collect()
    };
    let (equals, all) = (those(&|standing| standing == best), those(&Standing::can_be_chosen));
    let by_score = (all.len() > equals.len()).then(|| contest(&all));
    Some(Robustness { within_standing: contest(&equals), by_score })
}

/// The first of the list is the one chosen.
fn contest(list: &[(usize, &Ranked)]) -> Contest {
    let values: Vec<Vec<f64>> = list.iter().map(|(_, one)| values(one)).collect();
    let (shares, count) = match values.as_slice() {
        [] | [_] => (vec![1.0], Count::Alone),
        [one, other] => {
            let share = share::ahead(&share::difference(one, other));
            (vec![share, 1.0 - share], Count::Exact)
        }
        more => (share::sampled(more), Count::Sampled(share::SAMPLES)),
    };
    let places = list.iter().map(|(place, _)| *place);
    let weighed = list.first().map_or_else(Vec::new, |(_, first)| weights(first));
    let shift = shift::least(&weighed, &values)
        .map(|(rival, shift)| WeightShift { to: list.get(rival).map_or(0, |(place, _)| *place), ..shift });
    Contest { shares: places.zip(shares).collect(), count, shift }
}

/// What is not known counts nothing, as in the ranking.
fn values(ranked: &Ranked) -> Vec<f64> {
    let criteria = ranked.score.iter().flat_map(|score| &score.criteria);
    criteria.map(|criterion| criterion.value.unwrap_or(0.0)).collect()
}

fn weights(ranked: &Ranked) -> Vec<(CriterionKind, f64)> {
    let criteria = ranked.score.iter().flat_map(|score| &score.criteria);
    criteria.map(|criterion| (criterion.kind, criterion.weight)).collect()
}
