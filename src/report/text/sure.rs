//! How sure a choice is, and the pits of a line, in words for a memo.

use super::{Page, at, sentence};
use crate::quantity::shown::decimal;
use crate::report::sure::{ContestView, InputTurnsView, LineView, NameView, PitsView, SureView, TurnView, WithoutView};
use crate::report::view::CheckView;

fn name(name: &NameView) -> String {
    format!("{} of {}", name.method, name.pipe)
}

impl Page {
    pub(super) fn sure(&mut self, sure: &SureView) {
        self.heading("How sure the choice is");
        if let Some(contest) = &sure.within_standing {
            let mut text = within_standing(contest);
            if let Some(contest) = &sure.by_score {
                let care = format!("Were care not held against a scheme, {}", shares(contest));
                text.push_str(&format!(" {care}."));
                if let Some(shift) = shift(contest) {
                    text.push_str(&format!(" {}.", sentence_start(&shift)));
                }
            }
            self.wrapped("Weights  ", &text);
        }
        match &sure.inputs {
            Some(inputs) => {
                self.wrapped("Inputs   ", "each changed alone:");
                for turns in inputs {
                    self.wrapped("         ", &input(turns));
                }
                if let Some(without) = &sure.unlubricated {
                    self.wrapped("         ", &unlubricated(without));
                }
            }
            None => self.wrapped("Inputs   ", "not looked at: too many stretches and pipes."),
        }
    }

    pub(super) fn line_of_drives(&mut self, line: &LineView) {
        self.heading(&format!("Pits and drives of a line of {}", line.length.text));
        if line.schemes.is_empty() {
            self.wrapped("", "Not looked at: no scheme has a published length, or the ground has too many stretches.");
            return;
        }
        for pits in &line.schemes {
            self.wrapped("- ", &pits_text(pits));
            if !pits.checks.is_empty() {
                let checks: Vec<String> = pits.checks.iter().map(one_check).collect();
                self.wrapped("  ", &format!("Its checks, likely and high: {}.", checks.join("; ")));
            }
        }
        let text = "The worst drive of each line: all of it at the greatest depth of the file and in the worst of its \
                    grounds. Ground and depth beyond the drive of the file are not known here.";
        self.wrapped("", text);
    }
}

fn within_standing(contest: &ContestView) -> String {
    match (contest.count, contest.shares.as_slice()) {
        ("alone", [one, ..]) => {
            let one = sentence_start(&name(&one.scheme));
            format!("{one} is the only scheme of its standing, and standing goes before score: no weighting turns it.")
        }
        _ => {
            let turn = shift(contest).map_or_else(
                || "No weighting turns the choice: it is at least as good in everything".to_owned(),
                |shift| sentence_start(&shift),
            );
            format!("{}. {turn}.", sentence_start(&shares(contest)))
        }
    }
}

/// Who leads under which share of weightings.
fn shares(contest: &ContestView) -> String {
    let one = |share: &super::super::sure::ShareView| {
        if share.share > 0.9995 {
            return format!("{} leads under every weighting", name(&share.scheme));
        }
        format!("{} leads under {} % of all weightings", name(&share.scheme), decimal(100.0 * share.share, 0))
    };
    let how = match contest.samples {
        Some(samples) => format!(" ({samples} drawn evenly)"),
        None => String::new(),
    };
    let leaders: Vec<String> = contest.shares.iter().filter(|share| share.share >= 0.005).map(one).collect();
    format!("{}{how}", leaders.join(", ").replace(" % of all weightings, ", " %, "))
}

fn shift(contest: &ContestView) -> Option<String> {
    let shift = contest.shift.as_ref()?;
    let (from, into) = &shift.labels;
    let to = name(&shift.to);
    Some(if from.is_empty() {
        format!("the least shift of weight to {into} turns it to {to}")
    } else {
        let moved = decimal(100.0 * shift.moved, 0);
        format!("{to} scores as much once {moved} of the 100 points of weight go from {} to {into}", from.join(" and "))
    })
}

/// One sentence that stands alone in a memo.
fn unlubricated(without: &WithoutView) -> String {
    let what = match &without.to {
        Some(_) if !without.turns => "the choice stays".to_owned(),
        Some(to) => format!("the choice turns to {}", name(to)),
        None if without.turns => "no scheme can be chosen".to_owned(),
        None => "no scheme can be chosen either".to_owned(),
    };
    format!("lubrication, now {}: without any {what}", without.now.replace('_', " "))
}

/// One sentence that stands alone in a memo.
fn input(turns: &InputTurnsView) -> String {
    let (from, to) = (&turns.from.text, &turns.to.text);
    let times = if turns.is_factor { " times what is taken" } else { "" };
    let opening = match &turns.now {
        _ if turns.is_factor => turns.input.to_owned(),
        Some(now) => format!("{}, now {}", turns.input, now.text),
        None => format!("{}, now none", turns.input),
    };
    let side = |turn: &Option<TurnView>, word: &str| {
        turn.as_ref().map(|turn| {
            let to = turn
                .to
                .as_ref()
                .map_or_else(|| "no scheme can be chosen".to_owned(), |to| format!("the choice turns to {}", name(to)));
            format!("at {}{times} {word} {to}", turn.at.text)
        })
    };
    let sides: Vec<String> =
        [side(&turns.below, "and below"), side(&turns.above, "and above")].into_iter().flatten().collect();
    if sides.is_empty() {
        format!("{opening}: no value from {from} to {to}{times} turns the choice")
    } else {
        format!("{opening}: {} (looked at from {from} to {to}{times})", sides.join("; "))
    }
}

fn pits_text(pits: &PitsView) -> String {
    let scheme = name(&pits.scheme);
    let set_by = match &pits.source {
        Some(source) => format!("{} ({}, {})", pits.set_by, source.source, source.at),
        None => pits.set_by.to_owned(),
    };
    let (Some(drives), Some(spacing)) = (pits.drives, &pits.spacing) else {
        return format!("{scheme}: no drive of any length: {set_by}");
    };
    let governed = pits
        .governed_by
        .as_ref()
        .map_or_else(String::new, |check| format!("; largest load: {}", at(check.subject, check.utilisation)));
    let (plural, pit) = if drives == 1 { ("drive", 2) } else { ("drives", drives + 1) };
    format!(
        "{scheme}: {drives} {plural} of {}, {pit} pits; the longest drive is {}, set by {set_by}; the worst drive {}\
         {governed}",
        spacing.text, pits.longest.text, pits.standing
    )
}

/// A check in a line of others.
pub(super) fn one_check(check: &CheckView) -> String {
    let used = |used: Option<f64>| used.map_or_else(|| "-".to_owned(), |used| decimal(used, 2));
    let numbers = match (check.likely_utilisation, check.utilisation) {
        (None, None) => String::new(),
        (likely, high) => format!(" {} {}", used(likely), used(high)),
    };
    format!("{}{numbers} {}", check.subject, super::verdict(check))
}

fn sentence_start(text: &str) -> String {
    let whole = sentence(text);
    whole.trim_end_matches('.').to_owned()
}
