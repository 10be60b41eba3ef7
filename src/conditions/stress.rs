//! Vertical stress at a depth, total and effective, in one place.

use crate::drive::{Column, Layer};
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
pub fn vertical_stress<R: Recorder>(calc: &mut Calc<R>, at: Column<'_>, depth: Length) -> Option<VerticalStress> {
    let total = column(calc, at, depth, at.soil.surcharge, |layer| layer.saturated)?;
    let pressure = water_pressure(calc, at, depth);
    Some(VerticalStress { total, effective: total - pressure })
}

/// Effective stress that resists at a depth, on the safe side: without the surcharge, which may go, and of ground below
/// water whose saturated unit weight is not known nothing but the water in it.
pub fn resisting_stress<R: Recorder>(calc: &mut Calc<R>, at: Column<'_>, depth: Length) -> Pressure {
    let below = |layer: &Layer| Some(layer.saturated.unwrap_or(UnitWeight::from_si(WATER_UNIT_WEIGHT)));
    let total = column(calc, at, depth, Pressure::default(), below).unwrap_or_default();
    (total - water_pressure(calc, at, depth)).max(Pressure::default())
}

/// Total stress that resists at a depth where the ground cannot drain, on the safe side: moist weight alone, which is no
/// more than the saturated one, so that water never adds to it, and no surcharge.
pub fn undrained_resisting_stress<R: Recorder>(calc: &mut Calc<R>, at: Column<'_>, depth: Length) -> Pressure {
    column(calc, Column { table: None, ..at }, depth, Pressure::default(), |layer| layer.saturated).unwrap_or_default()
}

/// Weight of the soil over a depth on top of a load, moist above water and by another weight below.
fn column<R: Recorder>(
    calc: &mut Calc<R>,
    at: Column<'_>,
    depth: Length,
    load: Pressure,
    below: impl Fn(&Layer) -> Option<UnitWeight>,
) -> Option<Pressure> {
    let mut total = load;
    let mut top = Length::default();
    for layer in &at.soil.layers {
        let bottom = layer.bottom.min(depth);
        let water = at.table.map_or(bottom, |water| water.max(top).min(bottom));
        if water > top {
            total += calc.law(LayerStress { unit_weight: layer.moist, thickness: water - top });
        }
        if bottom > water {
            total += calc.law(LayerStress { unit_weight: below(layer)?, thickness: bottom - water });
        }
        top = bottom;
        if top >= depth {
            break;
        }
    }
    Some(total)
}

fn water_pressure<R: Recorder>(calc: &mut Calc<R>, at: Column<'_>, depth: Length) -> Pressure {
    let wet = at.table.map_or(Length::default(), |water| (depth - water).max(Length::default()));
    calc.law(LayerStress { unit_weight: UnitWeight::from_si(WATER_UNIT_WEIGHT), thickness: wet })
}
