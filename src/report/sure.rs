//! How sure a choice is, and the pits of a line, spelled out as plain data.

use super::build::{View, at_subject};
use super::view::{AtView, CheckView, OriginView, Report, ValueView};
use crate::choice::robust::{Contest, Count, Robustness, WeightShift};
use crate::choice::{Choice, Ranked};
use crate::drive::Drive;
use crate::handbook::Method;
use crate::quantity::{Role, Shown, UnitSystem};
use crate::vary::{Input, InputTurns, Outcome, PitLimit, Pits, Turn};
use serde::Serialize;

/// A scheme by name.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct NameView {
    /// Method.
    pub method: &'static str,
    /// Pipe.
    pub pipe: String,
}

/// How sure the choice is.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SureView {
    /// By weights, among the schemes of the best standing; standing goes before score whatever the weights.
    pub within_standing: Option<ContestView>,
    /// By weights, among all schemes that may be chosen, were care not held against any.
    pub by_score: Option<ContestView>,
    /// By input, each changed alone; `null` where the file is too long to look.
    pub inputs: Option<Vec<InputTurnsView>>,
    /// Were there no lubrication; `null` where the file plans none.
    pub unlubricated: Option<WithoutView>,
}

/// What the choice is without something.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WithoutView {
    /// As planned.
    pub now: &'static str,
    /// True where the choice is another.
    pub turns: bool,
    /// What is chosen then; `null` where nothing can be.
    pub to: Option<NameView>,
}

/// Schemes that compete by score.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ContestView {
    /// How the shares were found: `alone`, `exact` or `sampled`.
    pub count: &'static str,
    /// Number of weightings drawn, where they were.
    pub samples: Option<u32>,
    /// Share of all weightings under which each scheme leads.
    pub shares: Vec<ShareView>,
    /// The least shift of weight that turns the choice.
    pub shift: Option<ShiftView>,
}

/// How often a scheme leads.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ShareView {
    /// The scheme.
    pub scheme: NameView,
    /// 0 to 1.
    pub share: f64,
}

/// Weight to move to turn the choice.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ShiftView {
    /// Weight moved in all, from 0 to 1.
    pub moved: f64,
    /// Criteria that give weight.
    pub from: Vec<&'static str>,
    /// The criterion that takes it.
    pub into: &'static str,
    /// What the choice turns to.
    pub to: NameView,
    #[serde(skip)]
    pub(super) labels: (Vec<&'static str>, &'static str),
}

/// What one input does to the choice.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct InputTurnsView {
    /// The input.
    pub input: &'static str,
    /// Its value now; `null` where there is none.
    pub now: Option<ValueView>,
    /// Where the search began.
    pub from: ValueView,
    /// Where it ended.
    pub to: ValueView,
    /// The nearest turn below.
    pub below: Option<TurnView>,
    /// The nearest turn above.
    pub above: Option<TurnView>,
    /// True where the value is a factor on what is taken.
    #[serde(skip)]
    pub(super) is_factor: bool,
}

/// Where the choice turns.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TurnView {
    /// The value.
    pub at: ValueView,
    /// What it turns to; `null` where nothing can be chosen then.
    pub to: Option<NameView>,
}

/// Pits and drives of a line.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LineView {
    /// Length of the line.
    pub length: ValueView,
    /// By scheme; empty where the ground has too many stretches to look at each.
    pub schemes: Vec<PitsView>,
}

/// Pits and drives of a line by one scheme.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PitsView {
    /// The scheme.
    pub scheme: NameView,
    /// Number of drives; nothing where no drive is possible.
    pub drives: Option<u32>,
    /// Spacing of the pits.
    pub spacing: Option<ValueView>,
    /// The longest drive.
    pub longest: ValueView,
    /// What sets it: the published length, or a check.
    pub set_by: &'static str,
    /// Where the published length comes from.
    pub source: Option<OriginView>,
    /// Standing of the worst drive.
    pub standing: &'static str,
    /// The load check that drive uses most.
    pub governed_by: Option<AtView>,
    /// Checks of the worst drive.
    pub checks: Vec<CheckView>,
}

/// What is looked at beside a choice.
#[derive(Debug, Clone)]
pub struct Beside {
    /// How far it depends on the weights.
    pub robustness: Option<Robustness>,
    /// Which single input turns it.
    pub turns: Option<Vec<InputTurns>>,
    /// What is chosen without lubrication.
    pub unlubricated: Option<Outcome>,
    /// The pits of the line.
    pub pits: Vec<Pits>,
}

impl Report {
    /// With what was looked at beside the choice.
    #[must_use]
    pub fn with(self, beside: &Beside, drive: &Drive, choice: &Choice, system: UnitSystem) -> Self {
        let spell = Spell { view: View { drive, system }, choice };
        let robustness = beside.robustness.as_ref();
        let sure = SureView {
            within_standing: robustness.map(|found| spell.contest(&found.within_standing)),
            by_score: robustness.and_then(|found| found.by_score.as_ref()).map(|contest| spell.contest(contest)),
            unlubricated: beside.unlubricated.map(|outcome| spell.unlubricated(outcome)),
            inputs: beside.turns.as_ref().map(|turns| turns.iter().map(|turns| spell.turns(turns)).collect()),
        };
        let line = drive.line.map(|length| LineView {
            length: spell.view.value(Shown::of(length, Role::Distance)),
            schemes: beside.pits.iter().map(|pits| spell.pits(pits)).collect(),
        });
        Self { sure: Some(sure), line, ..self }
    }
}

struct Spell<'a> {
    view: View<'a>,
    choice: &'a Choice,
}

impl Spell<'_> {
    fn name(&self, candidate: usize, method: Method) -> NameView {
        let pipe = self.view.drive.candidates.get(candidate).map_or_else(String::new, |pipe| pipe.label.clone());
        NameView { method: method.key(), pipe }
    }

    fn ranked(&self, place: usize) -> NameView {
        let of = |ranked: &Ranked| self.name(ranked.candidate, ranked.scheme.method);
        self.choice.ranked.get(place).map_or(NameView { method: "", pipe: String::new() }, of)
    }

    fn contest(&self, contest: &Contest) -> ContestView {
        let (count, samples) = match contest.count {
            Count::Alone => ("alone", None),
            Count::Exact => ("exact", None),
            Count::Sampled(samples) => ("sampled", Some(samples)),
        };
        let share = |&(place, share): &(usize, f64)| ShareView { scheme: self.ranked(place), share };
        let shift = |shift: &WeightShift| ShiftView {
            moved: shift.moved,
            from: shift.from.iter().map(|(kind, _)| kind.key()).collect(),
            into: shift.into.key(),
            to: self.ranked(shift.to),
            labels: (shift.from.iter().map(|(kind, _)| kind.label()).collect(), shift.into.label()),
        };
        ContestView {
            count,
            samples,
            shares: contest.shares.iter().map(share).collect(),
            shift: contest.shift.as_ref().map(shift),
        }
    }

    fn outcome(&self, outcome: Outcome) -> Option<NameView> {
        match outcome {
            Outcome::Chosen(candidate, method) => Some(self.name(candidate, method)),
            Outcome::Nothing => None,
        }
    }

    fn unlubricated(&self, outcome: Outcome) -> WithoutView {
        let now = self.choice.chosen().map(|first| self.name(first.candidate, first.scheme.method));
        let to = self.outcome(outcome);
        WithoutView { now: self.view.drive.lubrication.key(), turns: now != to, to }
    }

    fn turns(&self, turns: &InputTurns) -> InputTurnsView {
        let turn = |turn: Turn| TurnView { at: self.view.value(turn.at), to: self.outcome(turn.to) };
        InputTurnsView {
            input: turns.input.label(),
            now: (!turns.is_none).then(|| self.view.value(turns.now)),
            from: self.view.value(turns.range.0),
            to: self.view.value(turns.range.1),
            below: turns.below.map(turn),
            above: turns.above.map(turn),
            is_factor: turns.input == Input::Friction,
        }
    }

    fn pits(&self, pits: &Pits) -> PitsView {
        let (set_by, source) = match pits.limit {
            PitLimit::Published(origin) => ("published length", Some(self.view.origin(origin))),
            PitLimit::Check(subject) | PitLimit::Never(subject) => (subject.label(), None),
        };
        let distance = |length| self.view.value(Shown::of(length, Role::Distance));
        PitsView {
            scheme: self.ranked(pits.ranked),
            drives: pits.drives.map(|(drives, _)| drives),
            spacing: pits.drives.map(|(_, spacing)| distance(spacing)),
            longest: distance(pits.longest),
            set_by,
            source,
            standing: pits.standing.label(),
            governed_by: pits.governed_by.map(|(subject, used)| at_subject(subject, Some(used))),
            checks: pits
                .worst
                .iter()
                .flat_map(|worst| worst.checks.iter())
                .map(|check| self.view.check(check))
                .collect(),
        }
    }
}
