//! Weights of the score that the file gives.

use super::{Resolved, Resolver};
use crate::drive::Weights;
use crate::drive_file::{CrossingFile, DriveFile, WeightFile};
use crate::handbook::{CriterionKind, Service};
use crate::quantity::Measure;

impl Resolver<'_> {
    pub(super) fn weights(&mut self) -> Resolved<Weights> {
        let mut weights = Weights::default();
        for (index, given) in self.file.weights.iter().enumerate() {
            let kind = given.criterion.value;
            let path = format!("weights[{index}]");
            let weight = WeightFile::weight.cited(&path, given);
            if weights.given(kind).is_some() {
                self.wrong_at(&path, given, WeightFile::criterion, format!("{} has a weight already", kind.key()));
            }
            if kind == CriterionKind::Grade && self.file.service.value != Service::GravitySewer {
                let why = ("only a gravity sewer is valued by its grade", "take it out");
                self.wrong_at(&path, given, WeightFile::criterion, why);
            }
            if let Some(needs) = lacks(self.file, kind) {
                let why = ("cannot be scored with what the file gives", format!("give {needs}, or take it out"));
                self.wrong_at(&path, given, WeightFile::criterion, why);
            }
            weights.0.push((kind, weight));
        }
        // What is always told must not all be nothing: nothing would be left to rank by.
        let grade = (self.file.service.value == Service::GravitySewer).then_some(CriterionKind::Grade);
        let mut always =
            [CriterionKind::LoadMargin, CriterionKind::Ground, CriterionKind::Size].into_iter().chain(grade);
        let weightless = |kind: &CriterionKind| weights.given(*kind).is_some_and(|weight| !(weight.value.si() > 0.0));
        if let Some(first) = self.file.weights.first()
            && always.all(|kind| weightless(&kind))
        {
            let why = ("the criteria that apply all weigh nothing", "give one of them a weight");
            self.flaw(&first.weight, "weights", why);
        }
        Ok(weights)
    }
}

/// What the file would have to give for a criterion to count; see `Drive::weighs`.
fn lacks(file: &DriveFile, kind: CriterionKind) -> Option<&'static str> {
    let pace = file.pace.as_ref();
    let reception = file.reception.as_ref();
    let (told, needs) = match kind {
        CriterionKind::Area => (
            file.launch.area.is_some() && reception.is_some_and(|pit| pit.area.is_some()),
            "`launch.area` and `reception.area`",
        ),
        CriterionKind::Time => (pace.is_some_and(|pace| pace.programme.is_some()), "`pace.programme`"),
        CriterionKind::Cost => (
            pace.is_some_and(|pace| pace.shift_price.is_some() && pace.budget.is_some()),
            "`pace.shift_price` and `pace.budget`",
        ),
        CriterionKind::Movement => {
            let surface = file.surface.as_ref();
            let over = surface.is_some_and(|over| over.allowed_settlement.is_some() || over.allowed_slope.is_some());
            let crossed =
                |service: &CrossingFile| service.allowed_settlement.is_some() || service.allowed_slope.is_some();
            (
                over || file.crossings.iter().flatten().any(crossed),
                "`surface.allowed_settlement` or one of a crossed service",
            )
        }
        CriterionKind::LoadMargin | CriterionKind::Ground | CriterionKind::Grade | CriterionKind::Size => (true, ""),
    };
    (!told).then_some(needs)
}
