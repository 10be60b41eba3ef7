//! Friction on the whole pipe by the models that stand in every stretch.

use super::place::SoilView;
use crate::drive::{Drive, Pipe};
use crate::law::Calc;
use crate::laws::thrust::FrictionForce;
use crate::quantity::{Band, Force};

/// Friction on the whole pipe by one model. It only grows as the pipe advances, so that it is greatest at the far end.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct ModelForce {
    /// Name of the set.
    pub name: &'static str,
    /// Friction with the pipe in the whole of the bore.
    pub force: Band<Force>,
    /// False where the model was used outside its range in some stretch.
    pub in_range: bool,
}

/// Sums over the drive, of the models that every stretch has; none where the soil of some stretch is not told.
#[must_use]
pub fn model_forces(drive: &Drive, pipe: &Pipe, views: &[SoilView]) -> Vec<ModelForce> {
    let Some(first) = views.first().filter(|_| views.len() == drive.stretches.len()) else { return Vec::new() };
    let calc = &mut Calc::silent();
    let mut of = |name: &'static str| {
        let start = ModelForce { name, force: Band::default(), in_range: true };
        views.iter().zip(&drive.stretches).try_fold(start, |sum, (view, stretch)| {
            let model = view.models.iter().find(|model| model.name == name)?;
            let force = model.friction.map(|unit_friction| {
                let length = stretch.to - stretch.from;
                calc.law(FrictionForce { unit_friction, outside_diameter: pipe.outside_diameter.value, length })
            });
            let in_range = sum.in_range && model.in_range;
            Some(ModelForce { force: sum.force.with(force, |one, other| one + other), in_range, ..sum })
        })
    };
    first.models.iter().filter_map(|model| of(model.name)).collect()
}
