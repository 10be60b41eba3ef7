//! How much each criterion of the score counts.

use crate::handbook::CriterionKind;
use crate::quantity::Ratio;
use crate::source::Cited;

/// Weights that the file gives in place of those of the table.
#[derive(Debug, Clone, Default)]
pub(crate) struct Weights(pub(crate) Vec<(CriterionKind, Cited<Ratio>)>);

impl Weights {
    /// The user's weight of a criterion.
    pub(crate) fn given(&self, kind: CriterionKind) -> Option<Cited<Ratio>> {
        self.0.iter().find(|(other, _)| *other == kind).map(|(_, weight)| *weight)
    }
}
