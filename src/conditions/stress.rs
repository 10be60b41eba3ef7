//! Vertical stress at a depth, total and effective, in one place.

use crate::drive::Column;
use crate::law::Calc;
use crate::laws::soil::{LayerStress, water_unit_weight};
use crate::quantity::{Length, Pressure};

/// Vertical stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VerticalStress {
    /// Soil and water and surcharge.
    pub total: Pressure,
    /// Less the pressure of the water.
    pub effective: Pressure,
}

/// Vertical stress at a depth.
pub fn vertical_stress(calc: &mut Calc, at: Column<'_>, depth: Length) -> VerticalStress {
    let total = at.soil.surcharge + weight(calc, at, depth);
    VerticalStress { total, effective: total - water_pressure(calc, at, depth) }
}

/// Effective stress that resists at a depth, on the safe side: without the surcharge, which may go.
pub fn resisting_stress(calc: &mut Calc, at: Column<'_>, depth: Length) -> Pressure {
    (weight(calc, at, depth) - water_pressure(calc, at, depth)).max(Pressure::default())
}

/// Total stress that resists at a depth where the ground cannot drain, on the safe side: moist weight alone, which is no
/// more than the saturated one, so that water never adds to it, and no surcharge.
pub fn undrained_resisting_stress(calc: &mut Calc, at: Column<'_>, depth: Length) -> Pressure {
    weight(calc, Column { table: None, ..at }, depth)
}

/// Weight of the soil over a depth, moist above water and saturated below, and of water that stands over the ground.
pub(super) fn weight(calc: &mut Calc, at: Column<'_>, depth: Length) -> Pressure {
    let mut total = Pressure::default();
    let mut top = Length::default();
    if let Some(table) = at.table.filter(|table| *table < top) {
        total += calc.law(LayerStress { unit_weight: water_unit_weight(), thickness: -table });
    }
    for layer in &at.soil.layers {
        let bottom = layer.bottom.min(depth);
        let water = at.table.map_or(bottom, |table| table.max(top).min(bottom));
        if water > top {
            total += calc.law(LayerStress { unit_weight: layer.moist, thickness: water - top });
        }
        if bottom > water {
            total += calc.law(LayerStress { unit_weight: layer.saturated, thickness: bottom - water });
        }
        top = bottom;
        if top >= depth {
            break;
        }
    }
    total
}

fn water_pressure(calc: &mut Calc, at: Column<'_>, depth: Length) -> Pressure {
    let wet = at.table.map_or(Length::default(), |water| (depth - water).max(Length::default()));
    calc.law(LayerStress { unit_weight: water_unit_weight(), thickness: wet })
}
