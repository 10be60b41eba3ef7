//! Vertical stress at a depth, total and effective, in one place.

use crate::drive::Soil;
use crate::law::{Calc, Recorder};
use crate::laws::soil::{LayerStress, WATER_UNIT_WEIGHT};
use crate::quantity::{Length, Measure, Pressure, UnitWeight};

/// Vertical stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VerticalStress {
    /// Soil and water and surcharge.
    pub total: Pressure,
    /// Less the pressure of the water.
    pub effective: Pressure,
}

/// Vertical stress at a depth; `None` where a layer lies below water and its saturated unit weight is not known.
pub fn vertical_stress<R: Recorder>(calc: &mut Calc<R>, soil: &Soil, depth: Length) -> Option<VerticalStress> {
    let mut total = soil.surcharge;
    let mut top = Length::default();
    for layer in &soil.layers {
        let bottom = layer.bottom.min(depth);
        let water = soil.water_depth.map_or(bottom, |water| water.max(top).min(bottom));
        if water > top {
            total += calc.law(LayerStress { unit_weight: layer.moist, thickness: water - top });
        }
        if bottom > water {
            total += calc.law(LayerStress { unit_weight: layer.saturated?, thickness: bottom - water });
        }
        top = bottom;
        if top >= depth {
            break;
        }
    }
    let wet = soil.water_depth.map_or(Length::default(), |water| (depth - water).max(Length::default()));
    let pressure = calc.law(LayerStress { unit_weight: UnitWeight::from_si(WATER_UNIT_WEIGHT), thickness: wet });
    Some(VerticalStress { total, effective: total - pressure })
}
