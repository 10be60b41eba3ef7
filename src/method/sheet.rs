//! The working: each law with its arguments and result, in the order of evaluation.

use crate::law::{Doubt, Law, Recorder};
use crate::laws::thrust::FrictionForce;
use crate::quantity::Shown;
use crate::source::Equation;

/// One evaluated law.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Step {
    /// The part of the working it belongs to.
    pub part: &'static str,
    /// The level of the band that it is of, where it is of one; else empty.
    pub level: &'static str,
    /// The equation.
    pub equation: &'static Equation,
    /// Arguments by name.
    pub inputs: Vec<(&'static str, Shown)>,
    /// Result.
    pub result: Shown,
    /// False where it was used outside its range.
    pub in_range: bool,
}

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
    part: &'static str,
    level: &'static str,
    pub(super) leftover: Doubt,
}

impl Sheet {
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

impl Recorder for Sheet {
    fn step<L: Law>(&mut self, law: &L, value: L::Out) {
        let mut inputs = Vec::new();
        law.inputs(&mut |name, shown| inputs.push((name, shown)));
        let result = Shown::of(value, L::OUT);
        let Self { part, level, .. } = *self;
        self.steps.push(Step { part, level, equation: &L::EQUATION, inputs, result, in_range: law.in_range() });
    }

    fn part(&mut self, title: &'static str) {
        self.part = title;
    }

    fn level(&mut self, level: &'static str) {
        self.level = level;
    }
}
