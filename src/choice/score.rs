//! A score from 0 to 100 of criteria with absolute value functions: the value of a scheme does not depend on which
//! others are looked at. An unknown criterion runs from 0 to 1, so a score has a least and a most.

use crate::check::{Subject, Verdict};
use crate::conditions::invert_uncertainty;
use crate::drive::{Drive, Pipe};
use crate::handbook::{HandbookError, Service};
use crate::method::Scheme;
use crate::quantity::{Measure, Role, Shown};

/// What is valued.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CriterionKind {
    /// 1 less the greatest likely utilisation of a load check; 0 where a load is over its limit.
    LoadMargin,
    /// 1 suitable, the table's value marginal, 0 unsuitable.
    Ground,
    /// 1 where the invert is certain, falling evenly to 0 at a multiple of the tolerance. Gravity sewers only.
    Grade,
}

impl CriterionKind {
    /// All criteria.
    pub const ALL: [Self; 3] = [Self::LoadMargin, Self::Ground, Self::Grade];

    /// Key in the table of weights, and as written in JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::LoadMargin => "load_margin",
            Self::Ground => "ground",
            Self::Grade => "grade",
        }
    }

    /// As printed.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::LoadMargin => "load margin",
            Self::Ground => "ground suitability",
            Self::Grade => "line and grade",
        }
    }
}

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

/// Weights and value functions, from the tables.
pub(super) struct Scales {
    load_margin: f64,
    ground: f64,
    grade: Option<f64>,
    marginal: f64,
    grade_zero: f64,
}

impl Scales {
    /// A criterion that does not apply drops out for the whole drive, so that all schemes share one set of weights.
    pub(super) fn of(drive: &Drive) -> Result<Self, HandbookError> {
        let weight = |kind: CriterionKind| {
            let table = drive.handbook.score_weight()?;
            let row = table.get(kind.key()).map(|row| row.value.value.si());
            row.ok_or_else(|| HandbookError::NoRow { table: table.id, wanted: kind.key().to_owned() })
        };
        let gravity = drive.service == Service::GravitySewer;
        let [load_margin, ground, grade] =
            [weight(CriterionKind::LoadMargin)?, weight(CriterionKind::Ground)?, weight(CriterionKind::Grade)?];
        let unfit = |row: &str, why| HandbookError::Unfit { table: "score_weight", row: row.to_owned(), why };
        if ![load_margin, ground, grade].iter().all(|weight| *weight >= 0.0) {
            return Err(unfit("every row", "a weight is below zero"));
        }
        let total = load_margin + ground + if gravity { grade } else { 0.0 };
        if !(total > 0.0) {
            return Err(unfit("every row", "the weights that apply sum to nothing"));
        }
        let grade_zero = drive.handbook.ratio("score.grade_zero")?.value.si();
        let marginal = drive.handbook.ratio("score.ground_marginal")?.value.si();
        if !(grade_zero > 0.0 && (0.0..=1.0).contains(&marginal)) {
            let row = "score.grade_zero, score.ground_marginal".to_owned();
            let why = "the first must be above zero, the second from 0 to 1";
            return Err(HandbookError::Unfit { table: "practice_ratio", row, why });
        }
        Ok(Self {
            load_margin: load_margin / total,
            ground: ground / total,
            grade: gravity.then_some(grade / total),
            marginal,
            grade_zero,
        })
    }
}

pub(super) fn score(drive: &Drive, pipe: &Pipe, scheme: &Scheme, scales: &Scales) -> Score {
    let mut criteria = vec![load_margin(scheme, scales), ground(scheme, scales)];
    criteria.extend(scales.grade.map(|weight| grade(drive, pipe, scheme, scales, weight)));
    let total = |unknown: f64| {
        let parts = criteria.iter().map(|criterion| criterion.weight * criterion.value.unwrap_or(unknown));
        100.0 * parts.sum::<f64>()
    };
    Score { least: total(0.0), most: total(1.0), criteria }
}

fn load_margin(scheme: &Scheme, scales: &Scales) -> Criterion {
    let loads = || scheme.checks.iter().filter(|check| check.subject.is_load());
    let utilisation = loads().filter_map(|check| check.likely_utilisation()).fold(0.0, f64::max);
    let over = loads().any(|check| check.verdict == Verdict::Over);
    let known = loads().all(|check| check.verdict != Verdict::NotDecided) && loads().next().is_some();
    Criterion {
        kind: CriterionKind::LoadMargin,
        raw: Some(Shown { si: utilisation, role: Role::Ratio }),
        value: known.then_some(if over { 0.0 } else { (1.0 - utilisation).clamp(0.0, 1.0) }),
        weight: scales.load_margin,
    }
}

fn ground(scheme: &Scheme, scales: &Scales) -> Criterion {
    let value = scheme.checks.get(Subject::Ground).and_then(|check| match check.verdict {
        Verdict::Within => Some(1.0),
        Verdict::WithCare => Some(scales.marginal),
        Verdict::Over => Some(0.0),
        Verdict::NotDecided => None,
    });
    Criterion { kind: CriterionKind::Ground, raw: None, value, weight: scales.ground }
}

fn grade(drive: &Drive, pipe: &Pipe, scheme: &Scheme, scales: &Scales, weight: f64) -> Criterion {
    let uncertain = invert_uncertainty(drive, pipe, scheme.method);
    let share = (uncertain / drive.tolerance.value).si();
    Criterion {
        kind: CriterionKind::Grade,
        raw: Some(Shown::of(uncertain, Role::Offset)),
        value: Some((1.0 - share / scales.grade_zero).clamp(0.0, 1.0)),
        weight,
    }
}
