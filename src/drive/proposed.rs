//! Pipes that the file does not list, proposed from the inside diameter that is needed; how much each criterion counts.

use crate::handbook::{CriterionKind, Method};
use crate::quantity::{Length, Ratio};
use crate::source::{Cited, Equation, Origin};

/// A limit that only the pipe maker knows, and the file does not tell. A pipe without it is never a plain fit; without one that
/// has no usual value it is open, never chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum NotGiven {
    /// The greatest force on the end of a jacked pipe.
    EndForce,
    /// Strength of a fused joint over that of the pipe.
    JointFactor,
    /// The pull that a restrained joint holds.
    JointPull,
    /// Deflection that a restrained joint may take, which sets the radius of the ramp.
    JointDeflection,
}

impl NotGiven {
    /// Field of a candidate that settles it.
    #[must_use]
    pub const fn field(self) -> &'static str {
        match self {
            Self::EndForce => "rated_force",
            Self::JointFactor => "joint_factor",
            Self::JointPull => "joint_pull",
            Self::JointDeflection => "joint_deflection",
        }
    }

    /// The method that asks for it.
    #[must_use]
    pub const fn method(self) -> Method {
        match self {
            Self::EndForce => Method::PipeJacking,
            Self::JointFactor | Self::JointPull | Self::JointDeflection => Method::Pullback,
        }
    }
}

/// Stands where the maker's figure would.
const ASK: Equation = Equation::judged(
    "limit by the pipe maker",
    "at its best, and not decided",
    "only the pipe maker knows it, and it is not given",
    "a proposed pipe",
);

/// Where such a limit would come from.
pub(crate) const BY_ITS_MAKER: Origin = Origin::Law(&ASK);

/// What was proposed, and why.
#[derive(Debug, Clone)]
pub struct Proposed {
    /// Inside diameter needed.
    pub(crate) inside_diameter: Cited<Length>,
    /// Position of the first proposed pipe among the candidates; those before are the user's.
    pub(crate) first: usize,
    /// What could not be proposed, and why.
    pub(crate) left_out: Vec<String>,
}

/// Weights that the file gives in place of those of the table.
#[derive(Debug, Clone, Default)]
pub(crate) struct Weights(pub(crate) Vec<(CriterionKind, Cited<Ratio>)>);

impl Weights {
    /// The user's weight of a criterion.
    pub(crate) fn given(&self, kind: CriterionKind) -> Option<Cited<Ratio>> {
        self.0.iter().find(|(other, _)| *other == kind).map(|(_, weight)| *weight)
    }
}
