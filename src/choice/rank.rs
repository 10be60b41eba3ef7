//! The order of the schemes, and where an open one would stand.

use super::asks::asks;
use super::standing::{self, IfSettled, Ranked, Standing};
use crate::check::{Check, Verdict};
use core::cmp::Ordering;

/// Scores closer than this are equal as printed, in points of 100.
pub(super) const SAME: f64 = 0.5;

/// Best first, whatever the order of the file; of what is open that which likely passes as it is told, then that which asks
/// for the fewest lines.
pub(super) fn order(a: &Ranked, b: &Ranked) -> Ordering {
    let by_merit = a.standing.cmp(&b.standing).then_with(|| excess(a).total_cmp(&excess(b)));
    let by_merit = by_merit.then_with(|| likely_fails(a).cmp(&likely_fails(b)));
    let by_merit = by_merit.then_with(|| lines(a).cmp(&lines(b))).then_with(|| least(b).total_cmp(&least(a)));
    by_merit.then(a.pipe.label().cmp(b.pipe.label())).then(a.scheme.method.key().cmp(b.scheme.method.key()))
}

/// In their order; then places, and what open schemes would reach.
pub(super) fn rank(ranked: &mut [Ranked]) {
    ranked.sort_by(order);
    let mut leader: Option<(usize, (Standing, bool, usize), f64)> = None;
    for (index, one) in ranked.iter_mut().enumerate() {
        let (least, merit) = (least(one), (one.standing, likely_fails(one), lines(one)));
        let place = leader
            .filter(|(_, leads, lead)| merit == *leads && one.standing != Standing::Barred && *lead - least < SAME);
        one.place = match place {
            Some((place, ..)) => place,
            None => {
                leader = Some((index + 1, merit, least));
                index + 1
            }
        };
    }
    for index in 0..ranked.len() {
        let settled = ranked.get(index).and_then(|one| if_settled(one, ranked));
        if let Some(one) = ranked.get_mut(index) {
            one.if_settled = settled;
        }
    }
}

/// How far a barred scheme is from fitting: the greatest share of a limit that is over, the likely one where that fails.
/// Nothing for any other; a scheme that is excluded, or over a limit that leaves no share to tell, comes last.
fn excess(ranked: &Ranked) -> f64 {
    if ranked.scheme.is_excluded() {
        return f64::INFINITY;
    }
    let over = ranked.scheme.checks.iter().filter(|check| check.verdict == Verdict::Over);
    let share = |check: &Check| check.likely_utilisation().filter(|share| *share > 1.0).or(check.utilisation());
    over.map(|check| share(check).unwrap_or(f64::MAX)).fold(0.0, f64::max)
}

/// Whether something of an open scheme is likely over a limit as long as the file tells no more.
fn likely_fails(ranked: &Ranked) -> bool {
    // What the contractor has to bring he brings.
    let is_open = |check: &&Check| check.verdict == Verdict::NotDecided && !check.is_required();
    let mut open = ranked.scheme.checks.iter().filter(is_open);
    ranked.standing == Standing::Open && open.any(|check| check.likely_utilisation().is_some_and(|share| share > 1.0))
}

/// How many lines an open scheme asks for; none for any other.
fn lines(ranked: &Ranked) -> usize {
    if ranked.standing == Standing::Open { asks(ranked).len() } else { 0 }
}

/// What the ranking goes by within one standing; an excluded scheme comes last.
fn least(ranked: &Ranked) -> f64 {
    ranked.score.as_ref().map_or(-1.0, |score| score.least)
}

fn if_settled(open: &Ranked, all: &[Ranked]) -> Option<IfSettled> {
    let (standing, is_shown) = Standing::if_settled(&open.scheme)?;
    let most = open.score.as_ref().map_or(-1.0, |score| score.most);
    let itself = (open.candidate, open.scheme.method);
    let before = all
        .iter()
        .filter(|other| (other.candidate, other.scheme.method) != itself)
        .filter(|other| other.standing < standing || (other.standing == standing && least(other) > most));
    Some(IfSettled {
        place: 1 + before.count(),
        standing,
        is_shown,
        open: standing::not_decided(&open.scheme).collect(),
    })
}
