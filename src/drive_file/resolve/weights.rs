//! Weights of the score that the file gives.

use super::Resolver;
use crate::drive::Weights;
use crate::drive_file::DriveFile;
use crate::handbook::{CriterionKind, HandbookError, Service};
use crate::quantity::{Measure, Role};
use crate::source::{Cited, FieldName};
use crate::yaml::Complaint;

const WEIGHT: &FieldName = &FieldName("weights[].weight");

impl Resolver<'_> {
    pub(super) fn weights(&mut self, file: &DriveFile) -> Result<Weights, HandbookError> {
        let mut weights = Weights::default();
        for (index, given) in file.weights.iter().enumerate() {
            let kind = given.criterion.value;
            let weight = self.not_negative(&given.weight, &format!("weights[{index}].weight"), Role::Ratio);
            if weights.given(kind).is_some() {
                let message = format!("{} has a weight already", kind.key());
                self.flaw(&given.criterion, &format!("weights[{index}].criterion"), message);
            }
            if kind == CriterionKind::Grade && file.service.value != Service::GravitySewer {
                let complaint = Complaint::from("only a gravity sewer is valued by its grade");
                self.flaw(&given.criterion, &format!("weights[{index}].criterion"), complaint.advise("take it out"));
            }
            weights.0.push((kind, Cited::given(weight, WEIGHT)));
        }
        // What is always told must not all be nothing: nothing would be left to rank by.
        let grade = (file.service.value == Service::GravitySewer).then_some(CriterionKind::Grade);
        let mut always =
            [CriterionKind::LoadMargin, CriterionKind::Ground, CriterionKind::Size].into_iter().chain(grade);
        let weightless = |kind: &CriterionKind| weights.given(*kind).is_some_and(|weight| !(weight.value.si() > 0.0));
        if let Some(first) = file.weights.first()
            && always.all(|kind| weightless(&kind))
        {
            let complaint = Complaint::from("the criteria that apply all weigh nothing");
            self.flaw(&first.weight, "weights", complaint.advise("give one of them a weight"));
        }
        Ok(weights)
    }
}
