//! A tube that is pushed: what it bears before it gives way sideways, held by nothing, by the ground, or by its weight in
//! a wider bore.

use crate::law::Calc;
use crate::laws::stem::{BucklingAllowed, EmbeddedBuckling, EulerBuckling, OpenBoreBuckling, TubeStiffness};
use crate::quantity::{Force, Length, LineLoad, Pressure, Ratio, SecondMomentOfArea};

/// A tube, and the factor on its buckling.
#[derive(Clone, Copy)]
pub(super) struct Column {
    modulus: Pressure,
    second_moment: SecondMomentOfArea,
    factor: Ratio,
}

impl Column {
    pub(super) fn of(
        calc: &mut Calc,
        modulus: Pressure,
        outside_diameter: Length,
        wall: Length,
        factor: Ratio,
    ) -> Self {
        Self { modulus, second_moment: calc.law(TubeStiffness { outside_diameter, wall }), factor }
    }

    fn allowed(self, calc: &mut Calc, buckling: Force) -> Force {
        calc.law(BucklingAllowed { buckling, factor: self.factor })
    }

    /// Over a length that nothing holds.
    pub(super) fn free(self, calc: &mut Calc, free_length: Length, end_factor: Ratio) -> Force {
        let Self { modulus, second_moment, .. } = self;
        let buckling = calc.law(EulerBuckling { modulus, second_moment, free_length, end_factor });
        self.allowed(calc, buckling)
    }

    /// In ground that holds it all along.
    pub(super) fn bedded(self, calc: &mut Calc, bedding: Pressure) -> Force {
        let Self { modulus, second_moment, .. } = self;
        let buckling = calc.law(EmbeddedBuckling { bedding, modulus, second_moment });
        self.allowed(calc, buckling)
    }

    /// In a wider bore, where it snakes first.
    pub(super) fn snaking(self, calc: &mut Calc, weight: LineLoad, clearance: Length) -> Force {
        let Self { modulus, second_moment, .. } = self;
        let buckling = calc.law(OpenBoreBuckling { modulus, second_moment, weight, clearance });
        self.allowed(calc, buckling)
    }
}
