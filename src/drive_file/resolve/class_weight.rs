//! What ground weighs by its class, where the file does not tell it.

use super::{Resolved, Resolver};
use crate::drive::Ends;
use crate::handbook::{GroundClass, SoilWeightRow};
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::quantity::{Measure, UnitWeight};
use crate::source::Origin;

/// What a class of ground weighs, at both ends.
#[derive(Debug, Clone, Copy)]
pub(super) struct Weights {
    pub(super) moist: Ends<UnitWeight>,
    pub(super) saturated: Ends<UnitWeight>,
    pub(super) origin: Origin,
}

impl Weights {
    fn of(row: &SoilWeightRow, origin: Origin) -> Self {
        let water = UnitWeight::from_si(WATER_UNIT_WEIGHT);
        let moist = Ends { low: row.moist_low.value, high: row.moist_high.value };
        let buoyant = Ends { low: row.buoyant_low.value, high: row.buoyant_high.value };
        Self { moist, saturated: buoyant.map(|buoyant| buoyant + water), origin }
    }

    /// The widest of both.
    fn or(self, other: Self) -> Self {
        let widest = |one: Ends<UnitWeight>, other: Ends<UnitWeight>| Ends {
            low: one.low.min(other.low),
            high: one.high.max(other.high),
        };
        let origin = if other.moist.high > self.moist.high { other.origin } else { self.origin };
        Self { moist: widest(self.moist, other.moist), saturated: widest(self.saturated, other.saturated), origin }
    }
}

/// What the ground of a face is; of a mixed one the worse of both.
pub(super) fn of_face<T, E>(
    class: GroundClass,
    mixed_with: Option<GroundClass>,
    of: impl Fn(GroundClass) -> Result<T, E>,
    worse: impl FnOnce(T, T) -> T,
) -> Result<T, E> {
    let one = of(class)?;
    Ok(match mixed_with {
        Some(other) => worse(one, of(other)?),
        None => one,
    })
}

impl Resolver<'_> {
    /// Unit weights of the ground of a face.
    pub(super) fn class_weights(&self, class: GroundClass, mixed_with: Option<GroundClass>) -> Resolved<Weights> {
        let table = self.handbook.soil_weight()?;
        let of = |class: GroundClass| {
            let row = table.fitting(class.key(), |row| row.ground.value == class)?;
            Ok(Weights::of(row.value, row.origin))
        };
        of_face(class, mixed_with, of, Weights::or)
    }
}
