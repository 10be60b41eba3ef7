//! Vertical stress at a depth, total and effective, in one place.

use crate::drive::Soil;
use crate::law::{Calc, Recorder};
use crate::laws::soil::LayerStress;
use crate::quantity::unit::STANDARD_GRAVITY;
use crate::quantity::{Length, Measure, Pressure, UnitWeight};

/// Unit weight of fresh water at standard gravity, N/m³ (1,000 kg/m³).
const WATER: f64 = 1_000.0 * STANDARD_GRAVITY;

/// Vertical stress.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VerticalStress {
    /// Soil and water and surcharge.
    pub total: Pressure,
    /// Less the pressure of the water.
    pub effective: Pressure,
}

/// Vertical stress at a depth; `None` where the depth lies below water and the saturated unit weight is not known.
pub fn vertical_stress<R: Recorder>(calc: &mut Calc<R>, soil: &Soil, depth: Length) -> Option<VerticalStress> {
    let zero = Length::default();
    let dry = soil.water_depth.map_or(depth, |water| water.min(depth));
    let wet = (depth - dry).max(zero);
    let above = calc.law(LayerStress { unit_weight: soil.moist, thickness: dry });
    let below = if wet > zero {
        calc.law(LayerStress { unit_weight: soil.saturated?, thickness: wet })
    } else {
        Pressure::default()
    };
    let water = calc.law(LayerStress { unit_weight: UnitWeight::from_si(WATER), thickness: wet });
    let total = soil.surcharge + above + below;
    Some(VerticalStress { total, effective: total - water })
}
