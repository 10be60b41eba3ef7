//! How sure a choice is, and the pits of a line, as JSON.

use super::{Json, array, at, object};
use crate::choice::Choice;
use crate::choice::robust::{Contest, Count};
use crate::method::Scheme;
use crate::quantity::{Role, Shown};
use crate::report::contents::Beside;
use crate::vary::{InputTurns, Outcome, Pits, Turn};
use serde_json::{Map, Value};

impl Json<'_> {
    pub(super) fn sure(&self, beside: &Beside, choice: &Choice) -> Map<String, Value> {
        let robustness = beside.robustness.as_ref();
        let by_score = robustness.and_then(|found| found.by_score.as_ref());
        object! {
            within_standing: robustness.map(|found| contest(&found.within_standing, choice)),
            by_score: by_score.map(|found| contest(found, choice)),
            inputs: beside.turns.as_ref().map(|turns| array(turns.iter().map(|turns| self.turns(turns)))),
            unlubricated: beside.unlubricated.map(|outcome| object! {
                now: self.drive.lubrication().key(),
                turns: self.outcome(outcome) != self.outcome(Outcome::of(choice)),
                to: self.outcome(outcome),
            }),
        }
    }

    pub(super) fn line(&self, beside: &Beside, choice: &Choice) -> Option<Map<String, Value>> {
        self.drive.line().map(|length| {
            object! {
                length: self.value(Shown::of(length, Role::Distance)),
                schemes: array(beside.pits.iter().map(|pits| self.pits(pits, choice))),
            }
        })
    }

    fn outcome(&self, outcome: Outcome) -> Option<Map<String, Value>> {
        match outcome {
            Outcome::Chosen(candidate, method) => {
                let pipe = self.drive.candidates().get(candidate)?;
                Some(object! { method: method.key(), pipe: pipe.label() })
            }
            Outcome::Nothing => None,
        }
    }

    fn turns(&self, turns: &InputTurns) -> Map<String, Value> {
        let turn = |turn: Turn| object! { at: self.value(turn.at), to: self.outcome(turn.to) };
        object! {
            input: turns.input.label(),
            now: (!turns.is_none).then(|| self.value(turns.now)),
            from: self.value(turns.range.0),
            to: self.value(turns.range.1),
            below: turns.below.map(turn),
            above: turns.above.map(turn),
        }
    }

    fn pits(&self, pits: &Pits, choice: &Choice) -> Map<String, Value> {
        let distance = |length| self.value(Shown::of(length, Role::Distance));
        object! {
            scheme: name(choice, pits.ranked),
            drives: pits.drives.map(|(drives, _)| drives),
            spacing: pits.drives.map(|(_, spacing)| distance(spacing)),
            longest: distance(pits.longest),
            set_by: pits.limit.label(),
            source: pits.limit.origin().map(|origin| self.origin(origin)),
            standing: pits.standing.label(),
            governed_by: pits.worst.as_ref().and_then(Scheme::governing).map(at),
            checks: array(pits.worst.iter().flat_map(|worst| worst.checks.iter()).map(|check| self.check(check))),
        }
    }
}

/// The scheme at a place of the ranking.
fn name(choice: &Choice, place: usize) -> Option<Map<String, Value>> {
    let ranked = choice.ranked.get(place)?;
    Some(object! { method: ranked.scheme.method.key(), pipe: ranked.pipe.label() })
}

fn contest(contest: &Contest, choice: &Choice) -> Map<String, Value> {
    let (count, samples) = match contest.count {
        Count::Alone => ("alone", None),
        Count::Exact => ("exact", None),
        Count::Sampled(samples) => ("sampled", Some(samples)),
    };
    object! {
        count: count,
        samples: samples,
        shares: array(contest.shares.iter().map(|(place, share)| object! {
            scheme: name(choice, *place),
            share: *share,
        })),
        shift: contest.shift.as_ref().map(|shift| object! {
            moved: shift.moved,
            from: array(shift.from.iter().map(|(kind, _)| kind.key())),
            into: shift.into.key(),
            to: name(choice, shift.to),
        }),
    }
}
