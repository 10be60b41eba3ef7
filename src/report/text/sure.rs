//! How sure a choice is, and the pits of a line, in words for a memo.

use super::page::{Page, sentence};
use crate::check::Check;
use crate::choice::Choice;
use crate::choice::reason::{at, name};
use crate::choice::robust::{Contest, Count};
use crate::handbook::Method;
use crate::method::Scheme;
use crate::quantity::shown::decimal;
use crate::quantity::{Length, Role, Shown};
use crate::report::contents::Beside;
use crate::report::words::{ratio, verdict};
use crate::vary::{Input, InputTurns, Outcome, Pits, Turn};

impl Page<'_> {
    pub(super) fn sure(&mut self, beside: &Beside, choice: &Choice) {
        self.heading("How firm the choice is");
        if let Some(robustness) = &beside.robustness {
            let mut text = within_standing(&robustness.within_standing, choice);
            if let Some(contest) = &robustness.by_score {
                text.push_str(&format!(" If care did not count against a scheme, {}.", shares(contest, choice)));
                if let Some(shift) = shift(contest, choice) {
                    text.push_str(&format!(" {}.", sentence_start(&shift)));
                }
            }
            self.wrapped("Weights  ", &text);
        }
        match &beside.turns {
            Some(inputs) => {
                self.wrapped("Inputs   ", "each changed on its own:");
                for turns in inputs {
                    self.wrapped("         ", &self.input(turns));
                }
                if let Some(without) = beside.unlubricated {
                    self.wrapped("         ", &self.unlubricated(without, choice));
                }
            }
            None => self.wrapped("Inputs   ", "not looked at: too many stretches and pipes."),
        }
    }

    pub(super) fn line_of_drives(&mut self, beside: &Beside, choice: &Choice) {
        let Some(line) = self.drive.line else { return };
        self.heading(&format!("Pits and drives of a line of {}", self.distance(line)));
        if beside.pits.is_empty() {
            self.wrapped("", "Not looked at: no scheme has a published length, or the ground has too many stretches.");
            return;
        }
        for pits in &beside.pits {
            self.wrapped("- ", &self.pits(pits, choice));
            let checks: Vec<String> = pits.worst.iter().flat_map(|worst| worst.checks.iter()).map(one_check).collect();
            if !checks.is_empty() {
                self.wrapped("  ", &format!("Checks, likely and high: {}.", checks.join("; ")));
            }
        }
        let text = "The worst drive of a line is taken at the greatest depth and in the worst ground of the file. \
            Ground and depth beyond this drive are not known.";
        self.wrapped("", text);
    }

    fn distance(&self, length: Length) -> String {
        self.value(Shown::of(length, Role::Distance))
    }

    /// A scheme by the position of its pipe among the candidates.
    fn scheme(&self, candidate: usize, method: Method) -> String {
        let label = self.drive.candidates.get(candidate).map_or("", |pipe| pipe.label());
        format!("{} of {label}", method.key())
    }

    /// One sentence that stands alone in a memo.
    fn unlubricated(&self, without: Outcome, choice: &Choice) -> String {
        let what = match (without, choice.chosen().map(name)) {
            (Outcome::Chosen(candidate, method), now) => match self.scheme(candidate, method) {
                to if now.as_ref() == Some(&to) => "the choice stays the same".to_owned(),
                to => format!("the choice changes to {to}"),
            },
            (Outcome::Nothing, Some(_)) => "nothing fits".to_owned(),
            (Outcome::Nothing, None) => "nothing fits either".to_owned(),
        };
        format!("lubrication, now {}: without lubrication {what}", self.drive.lubrication.key().replace('_', " "))
    }

    /// One sentence that stands alone in a memo.
    fn input(&self, turns: &InputTurns) -> String {
        let (from, to) = (self.value(turns.range.0), self.value(turns.range.1));
        let is_factor = turns.input == Input::Friction;
        let times = if is_factor { " times the assumed band" } else { "" };
        let label = turns.input.label();
        let opening = match turns.is_none {
            _ if is_factor => label.to_owned(),
            false => format!("{label}, now {}", self.value(turns.now)),
            true => format!("{label}, now none"),
        };
        let side = |turn: Option<Turn>, word: &str| {
            turn.map(|turn| {
                let to = match turn.to {
                    Outcome::Nothing => "nothing fits".to_owned(),
                    Outcome::Chosen(pipe, method) => format!("the choice changes to {}", self.scheme(pipe, method)),
                };
                format!("{to} at {}{times} or {word}", self.value(turn.at))
            })
        };
        let sides: Vec<String> = [side(turns.below, "less"), side(turns.above, "more")].into_iter().flatten().collect();
        if sides.is_empty() {
            format!("{opening}: no value from {from} to {to}{times} changes the choice")
        } else {
            format!("{opening}: {} (tried: {from} to {to}{times})", sides.join("; "))
        }
    }

    fn pits(&self, pits: &Pits, choice: &Choice) -> String {
        let scheme = place(choice, pits.ranked);
        let set_by = match pits.limit.origin() {
            Some(origin) => {
                let reference = self.drive.handbook.reference(origin);
                format!("{} ({}, {})", pits.limit.label(), reference.source, reference.locator)
            }
            None => pits.limit.label().to_owned(),
        };
        let Some((drives, spacing)) = pits.drives else {
            return format!("{scheme}: no drive of any length: {set_by}");
        };
        let governed = pits.worst.as_ref().and_then(Scheme::governing);
        let governed = governed.map_or_else(String::new, |check| format!("; governed by {}", at(check)));
        let (plural, pit) = if drives == 1 { ("drive", 2) } else { ("drives", drives + 1) };
        format!(
            "{scheme}: {drives} {plural} of {}, {pit} pits; the longest drive is {}, set by {set_by}; the worst drive \
             {}{governed}",
            self.distance(spacing),
            self.distance(pits.longest),
            pits.standing.label()
        )
    }
}

/// The scheme at a place of the ranking.
fn place(choice: &Choice, place: usize) -> String {
    choice.ranked.get(place).map_or_else(String::new, name)
}

fn within_standing(contest: &Contest, choice: &Choice) -> String {
    match (contest.count, contest.shares.as_slice()) {
        (Count::Alone, [(one, _), ..]) => {
            let one = sentence_start(&place(choice, *one));
            format!("{one} stands better than the others, so no weighting changes the choice.")
        }
        _ => {
            let turn = shift(contest, choice).map_or_else(
                || "No weighting changes the choice: it is at least as good on every criterion".to_owned(),
                |shift| sentence_start(&shift),
            );
            format!("{}. {turn}.", sentence_start(&shares(contest, choice)))
        }
    }
}

/// Who leads under which share of weightings.
fn shares(contest: &Contest, choice: &Choice) -> String {
    let one = |&(one, share): &(usize, f64)| {
        let name = place(choice, one);
        if share > 0.9995 {
            return format!("{name} leads under every weighting");
        }
        format!("{name} leads under {} % of all weightings", decimal(100.0 * share, 0))
    };
    let how = match contest.count {
        Count::Sampled(samples) => format!(" ({samples} drawn evenly)"),
        Count::Alone | Count::Exact => String::new(),
    };
    let leaders: Vec<String> = contest.shares.iter().filter(|(_, share)| *share >= 0.005).map(one).collect();
    format!("{}{how}", leaders.join(", ").replace(" % of all weightings, ", " %, "))
}

fn shift(contest: &Contest, choice: &Choice) -> Option<String> {
    let shift = contest.shift.as_ref()?;
    let (to, into) = (place(choice, shift.to), shift.into.label());
    Some(if shift.from.is_empty() {
        format!("the least shift of weight to {into} changes the choice to {to}")
    } else {
        let moved = decimal(100.0 * shift.moved, 0);
        let from: Vec<&str> = shift.from.iter().map(|(kind, _)| kind.label()).collect();
        format!("{to} scores as much once {moved} of the 100 points of weight go from {} to {into}", from.join(" and "))
    })
}

/// A check in a line of others.
pub(super) fn one_check(check: &Check) -> String {
    let numbers = match (check.likely_utilisation(), check.utilisation()) {
        (None, None) => String::new(),
        (likely, high) => format!(" {} {}", ratio(likely), ratio(high)),
    };
    format!("{}{numbers} {}", check.subject.label(), verdict(check))
}

fn sentence_start(text: &str) -> String {
    let whole = sentence(text);
    whole.trim_end_matches('.').to_owned()
}
