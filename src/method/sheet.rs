//! The working: each law with its arguments and result, in the order of evaluation.

pub use crate::law::Step;
use crate::law::{Calc, Doubt, Law};
use crate::laws::thrust::FrictionForce;

impl Step {
    /// Whether it is friction on the outside of a body.
    #[must_use]
    pub fn is_friction(&self) -> bool {
        *self.equation == FrictionForce::EQUATION
    }
}

/// The working of one scheme.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Sheet {
    steps: Vec<Step>,
    leftover: Doubt,
}

impl Sheet {
    pub(super) fn of(calc: Calc) -> Self {
        Self { leftover: calc.leftover(), steps: calc.steps() }
    }

    /// The steps, in the order of evaluation.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// The first equation that was used outside its range in the working and puts no check in doubt: none, or the crate
    /// has lost a doubt.
    #[must_use]
    pub const fn leftover(&self) -> Doubt {
        self.leftover
    }
}
