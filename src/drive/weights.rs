//! How much each criterion of the score counts.

use super::Drive;
use crate::handbook::{CriterionKind, Service};
use crate::quantity::Ratio;
use crate::source::Cited;

/// Weights that the file gives in place of those of the table.
#[derive(Debug, Clone, Default)]
pub struct Weights(pub(crate) Vec<(CriterionKind, Cited<Ratio>)>);

impl Weights {
    /// The user's weight of a criterion.
    pub(crate) fn given(&self, kind: CriterionKind) -> Option<Cited<Ratio>> {
        self.0.iter().find(|(other, _)| *other == kind).map(|(_, weight)| *weight)
    }
}

impl Drive {
    /// Whether a criterion applies. It is a matter of the drive alone, never of one scheme or of which pipes are looked
    /// at: what cannot be told for the drive drops out for every scheme.
    #[must_use]
    pub fn weighs(&self, kind: CriterionKind) -> bool {
        match kind {
            CriterionKind::LoadMargin | CriterionKind::Ground | CriterionKind::Size => true,
            CriterionKind::Grade => matches!(self.service, Service::GravitySewer),
            CriterionKind::Movement => self.site.limits_movement(),
            CriterionKind::Area => self.site.launch.area.is_some() && self.site.reception.area.is_some(),
            CriterionKind::Time => self.site.pace.programme.is_some(),
            CriterionKind::Cost => self.site.pace.prices.shift.is_some() && self.site.pace.prices.budget.is_some(),
        }
    }
}
