//! Pipes that the file does not list, proposed from the inside diameter that is needed.

use super::Drive;
use crate::handbook::Method;
use crate::quantity::{Length, Role, Shown, UnitSystem};
use crate::source::{Cited, Equation, Mark, Origin};

/// A limit that only the pipe maker knows. A proposed pipe without it is open, never chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
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
const ASK: Equation = Equation {
    name: "limit by the pipe maker",
    form: "at its best, and not decided",
    source: "jackpull",
    locator: "only the pipe maker knows it, and it is not given",
    mark: Mark::Judgement,
    valid: "a proposed pipe",
};

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

impl Drive {
    /// Inside diameter needed, where the file tells it or a flow.
    #[must_use]
    pub fn needed_inside_diameter(&self) -> Option<Length> {
        self.proposed.as_ref().map(|proposed| proposed.inside_diameter.value)
    }

    /// What was proposed.
    #[must_use]
    pub const fn proposed(&self) -> Option<&Proposed> {
        self.proposed.as_ref()
    }

    /// Whether a candidate is proposed, not listed in the file.
    #[must_use]
    pub fn is_proposed(&self, candidate: usize) -> bool {
        self.proposed.as_ref().is_some_and(|proposed| candidate >= proposed.first)
    }
}

impl Proposed {
    /// The pipes proposed and left out, in one sentence.
    #[must_use]
    pub fn sentence(&self, drive: &Drive, system: UnitSystem) -> String {
        let needed = Shown::of(self.inside_diameter.value, Role::Diameter).display(system);
        let pipes: Vec<&str> = drive.candidates.iter().skip(self.first).map(|pipe| pipe.label()).collect();
        let pipes = if pipes.is_empty() { "none".to_owned() } else { pipes.join(", ") };
        let left_out = if self.left_out.is_empty() {
            String::new()
        } else {
            format!("; not proposed: {}", self.left_out.join("; "))
        };
        format!("proposed for an inside diameter of at least {needed}: {pipes}{left_out}")
    }
}
