//! A score from 0 to 100 of criteria with absolute value functions: the value of a scheme does not depend on which
//! others are looked at. An unknown criterion runs from 0 to 1, so a score has a least and a most.

use super::criterion::{Seen, Shapes, figure};
use crate::drive::{Drive, Pipe};
use crate::handbook::HandbookError;
use crate::method::Scheme;
use crate::quantity::{Measure, Shown};
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
