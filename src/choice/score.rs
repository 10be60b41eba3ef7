//! A score from 0 to 100 of criteria with absolute value functions: the value of a scheme does not depend on which
//! others are looked at. An unknown criterion runs from 0 to 1, so a score has a least and a most.

use crate::check::{Check, Verdict};
use crate::conditions::{Plan, cost_plan, invert_uncertainty, time_plan};
use crate::drive::{Drive, Pipe};
use crate::handbook::{Handbook, HandbookError};
use crate::method::Scheme;
use crate::quantity::{Measure, Role, Shown};
use crate::source::{Origin, printed};

printed!(CriterionKind: label);

pub use crate::handbook::CriterionKind;

/// One criterion of one scheme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Criterion {
    /// What is valued.
    pub kind: CriterionKind,
    /// The figure behind the value, where it is a number.
    pub raw: Option<Shown>,
    /// 0 to 1; `None` where it is not known.
    pub value: Option<f64>,
    /// Share of the score, 0 to 1; the shares of a drive sum to 1.
    pub weight: f64,
    /// Where the weight comes from, before it is shared out among the criteria that apply.
    pub basis: Origin,
}

impl Criterion {
    /// Points of the score's 100 that it brings; `None` where its value is not known.
    #[must_use]
    pub fn points(&self) -> Option<f64> {
        self.value.map(|value| 100.0 * self.weight * value)
    }

    /// Points it brings at least.
    pub(super) fn least(&self) -> f64 {
        self.points().unwrap_or(0.0)
    }
}

/// The score of a scheme.
#[derive(Debug, Clone, PartialEq)]
pub struct Score {
    /// With every unknown criterion at 0; the ranking uses this.
    pub least: f64,
    /// With every unknown criterion at 1.
    pub most: f64,
    /// The criteria that apply to the drive.
    pub criteria: Vec<Criterion>,
}

/// Weights and value functions of a drive, from its file and the tables.
pub(super) struct Scales {
    weights: Vec<(CriterionKind, f64, Origin)>,
    shapes: Shapes,
}

impl Scales {
    /// A criterion that does not apply drops out for the whole drive, so that all schemes share one set of weights.
    pub(super) fn of(drive: &Drive) -> Result<Self, HandbookError> {
        let table = drive.handbook.score_weight()?;
        let unfit = |why| HandbookError::Unfit { table: "score_weight", row: "every row".to_owned(), why };
        let mut weights = Vec::new();
        for kind in CriterionKind::ALL {
            let row = table.value(kind.key())?;
            let weight = drive.weights.given(kind).unwrap_or(row);
            if !(weight.value.si() >= 0.0) {
                return Err(unfit("a weight is below zero"));
            }
            if drive.weighs(kind) {
                weights.push((kind, weight.value.si(), weight.origin));
            }
        }
        let total: f64 = weights.iter().map(|(_, weight, _)| weight).sum();
        if !(total > 0.0 && total.is_finite()) {
            return Err(unfit("the weights that apply sum to nothing"));
        }
        for (_, weight, _) in &mut weights {
            *weight /= total;
        }
        Ok(Self { weights, shapes: Shapes::of(&drive.handbook)? })
    }
}

pub(super) fn score(drive: &Drive, pipe: &Pipe, scheme: &Scheme, scales: &Scales) -> Score {
    let seen = Seen { drive, pipe, scheme, shapes: &scales.shapes };
    let criterion = |&(kind, weight, basis): &(CriterionKind, f64, Origin)| {
        let figure = figure(kind, &seen);
        Criterion { kind, raw: figure.raw, value: figure.value, weight, basis }
    };
    let criteria: Vec<Criterion> = scales.weights.iter().map(criterion).collect();
    let total = |unknown: f64| {
        let parts = criteria.iter().map(|criterion| criterion.weight * criterion.value.unwrap_or(unknown));
        100.0 * parts.sum::<f64>()
    };
    Score { least: total(0.0), most: total(1.0), criteria }
}

/// What a criterion says of one scheme.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Figure {
    /// The figure behind the value, where it is a number.
    pub(super) raw: Option<Shown>,
    /// 0 to 1; `None` where it is not known.
    pub(super) value: Option<f64>,
}

/// A scheme, and the shapes of the value functions.
pub(super) struct Seen<'a> {
    pub(super) drive: &'a Drive,
    pub(super) pipe: &'a Pipe,
    pub(super) scheme: &'a Scheme,
    pub(super) shapes: &'a Shapes,
}

impl<'a> Seen<'a> {
    const fn plan(&self) -> Plan<'a> {
        Plan { drive: self.drive, pipe: self.pipe, method: self.scheme.method }
    }
}

/// Where the value functions turn, from the tables.
pub(super) struct Shapes {
    marginal: f64,
    grade_zero: f64,
    size_zero: f64,
}

impl Shapes {
    pub(super) fn of(handbook: &Handbook) -> Result<Self, HandbookError> {
        let zero = |key: &str| -> Result<f64, HandbookError> {
            let zero = handbook.ratio(key)?.value.si();
            let why = "must be above zero";
            if zero > 0.0 { Ok(zero) } else { Err(unfit(key, why)) }
        };
        let marginal = handbook.ratio("score.ground_marginal")?.value.si();
        if !(0.0..=1.0).contains(&marginal) {
            return Err(unfit("score.ground_marginal", "must be from 0 to 1"));
        }
        Ok(Self { marginal, grade_zero: zero("score.grade_zero")?, size_zero: zero("score.size_zero")? })
    }
}

fn unfit(row: &str, why: &'static str) -> HandbookError {
    HandbookError::Unfit { table: "practice_ratio", row: row.to_owned(), why }
}

/// What a criterion says of a scheme.
pub(super) fn figure(kind: CriterionKind, seen: &Seen) -> Figure {
    match kind {
        CriterionKind::LoadMargin => load_margin(seen),
        CriterionKind::Ground => ground(seen),
        CriterionKind::Grade => grade(seen),
        CriterionKind::Size => size(seen),
        CriterionKind::Movement | CriterionKind::Area => tightest(seen, kind),
        CriterionKind::Time => time(seen),
        CriterionKind::Cost => cost(seen),
    }
}

/// The checks that a criterion reads: the table of checks says which.
fn read<'a>(seen: &Seen<'a>, kind: CriterionKind) -> impl Iterator<Item = &'a Check> {
    seen.scheme.checks.iter().filter(move |check| check.subject.criterion() == Some(kind))
}

/// 1 at nothing, falling evenly to 0 where a share of the limit reaches `zero`. A share beyond all numbers is 0.
fn falling(share: f64, zero: f64) -> f64 {
    let value = 1.0 - share / zero;
    if value.is_nan() { 0.0 } else { value.clamp(0.0, 1.0) }
}

/// 1 less the greatest likely utilisation of a load check; 0 where a load is over its limit.
fn load_margin(seen: &Seen) -> Figure {
    let loads = || read(seen, CriterionKind::LoadMargin);
    let utilisation = loads().filter_map(|check| check.likely_utilisation()).fold(0.0, f64::max);
    let over = loads().any(|check| check.verdict == Verdict::Over);
    let known = loads().all(|check| check.verdict != Verdict::NotDecided) && loads().next().is_some();
    Figure {
        raw: Some(Shown { si: utilisation, role: Role::Ratio }),
        // Over is over, whatever else is not known.
        value: (known || over).then(|| if over { 0.0 } else { falling(utilisation, 1.0) }),
    }
}

/// 1 suitable, the table's value marginal, 0 unsuitable.
fn ground(seen: &Seen) -> Figure {
    let value = read(seen, CriterionKind::Ground).next().and_then(|check| match check.verdict {
        Verdict::Within => Some(1.0),
        Verdict::WithCare => Some(seen.shapes.marginal),
        Verdict::Over => Some(0.0),
        Verdict::NotDecided => None,
    });
    Figure { raw: None, value }
}

/// 1 where the invert is certain, falling evenly to 0 at a multiple of the tolerance.
fn grade(seen: &Seen) -> Figure {
    let uncertain = invert_uncertainty(&seen.plan()).high;
    let share = (uncertain / seen.drive.tolerance.value).si();
    Figure { raw: Some(Shown::of(uncertain, Role::Offset)), value: Some(falling(share, seen.shapes.grade_zero)) }
}

/// Length of the drive and diameter of the pipe over the published range of the method, the worse: 1 at nothing, falling
/// evenly to 0 at a multiple.
fn size(seen: &Seen) -> Figure {
    let share = read(seen, CriterionKind::Size).filter_map(|check| check.utilisation()).reduce(f64::max);
    Figure {
        raw: share.map(|si| Shown { si, role: Role::Ratio }),
        value: share.map(|share| falling(share, seen.shapes.size_zero)),
    }
}

/// The greatest likely utilisation of the checks that a criterion reads, 1 at none, falling evenly to 0 at the limit; not
/// known where none is there or one is not decided. Movement: settlement and slope of the surface and of crossed services
/// over what the file allows. Area: room needed over room there is.
fn tightest(seen: &Seen, kind: CriterionKind) -> Figure {
    let checks = || read(seen, kind);
    let known = checks().next().is_some() && checks().all(|check| check.verdict != Verdict::NotDecided);
    let share = checks().filter_map(|check| check.likely_utilisation()).fold(0.0, f64::max);
    Figure { raw: known.then_some(Shown { si: share, role: Role::Ratio }), value: known.then(|| falling(share, 1.0)) }
}

/// Likely shifts over those of the programme: 1 at none, falling evenly to 0 at the programme. Not known where a stage
/// has no rate.
fn time(seen: &Seen) -> Figure {
    let shifts = time_plan(&seen.plan()).shifts.map(|shifts| shifts.likely);
    let value = shifts.zip(seen.drive.site.pace.programme);
    Figure {
        raw: shifts.map(|shifts| Shown::of(shifts, Role::Shifts)),
        value: value.map(|(shifts, programme)| falling((shifts / programme.value).si(), 1.0)),
    }
}

/// Likely cost over the budget: 1 at nothing, falling evenly to 0 at the budget. Not known where a line of it is not.
fn cost(seen: &Seen) -> Figure {
    let cost = cost_plan(&seen.plan()).sum.map(|sum| sum.likely);
    let value = cost.zip(seen.drive.site.pace.prices.budget);
    Figure {
        raw: cost.map(|cost| Shown::of(cost, Role::Count)),
        value: value.map(|(cost, budget)| falling((cost / budget.value).si(), 1.0)),
    }
}
