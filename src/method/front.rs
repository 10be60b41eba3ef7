//! What resists at the front: an enlarging head, the tip of the pilot.

use crate::drive::{Drive, FaceResistance, Stretch, Tip};
use crate::handbook::{GroundClass, TipModel};
use crate::law::Calc;
use crate::laws::open_bore::BitThrust;
use crate::laws::soil::{LayerStress, water_unit_weight};
use crate::laws::thrust::{
    CuttingEdge, FaceForce, OpenShieldFace, PilotTipAsCone, PilotTipByStrength, PilotTipInClay, SlurryFace,
};
use crate::quantity::{Band, Force, Length};

/// Resistance at an enlarging head in one stretch.
pub(super) fn head(
    calc: &mut Calc,
    face: FaceResistance,
    cut_diameter: Length,
    guided_diameter: Length,
    stretch: &Stretch,
) -> Band<Force> {
    match (face, stretch.drilled(false)) {
        (FaceResistance::Given(force), _) => force,
        // A pipe no larger than the casing it follows cuts nothing.
        _ if cut_diameter <= guided_diameter => Band::default(),
        // What follows a pilot through rock cuts it as the bit did.
        (FaceResistance::Table { .. }, Some(drilled)) if stretch.has(GroundClass::is_rock) => {
            let diameter = cut_diameter - guided_diameter;
            calc.levels(drilled.bit, |calc, per_diameter| calc.law(BitThrust { per_diameter, diameter }))
        }
        (FaceResistance::Table { pressure, least }, _) => {
            let each = pressure.zip(least);
            calc.levels(each, |calc, (pressure, least)| {
                calc.law(FaceForce { pressure, cut_diameter, guided_diameter, least })
            })
        }
        (FaceResistance::Slurry { pressure_per_blow, blows_most, slurry_over_water }, _) => {
            let unit_weight = water_unit_weight();
            let water_pressure = calc.law(LayerStress { unit_weight, thickness: stretch.way.head() });
            calc.levels(stretch.worst_blows(), |calc, blows| {
                calc.law(SlurryFace {
                    pressure_per_blow,
                    blows,
                    blows_most,
                    water_pressure,
                    slurry_over_water,
                    cut_diameter,
                })
            })
        }
        (FaceResistance::CuttingEdge { pressure, thickness, line_load, index }, _) => {
            let edge = calc.law(CuttingEdge { pressure, cut_diameter, thickness });
            let index = index.of(stretch.class);
            let shield = calc.law(OpenShieldFace { line_load, cut_diameter, index });
            // Two publications that disagree: the larger counts.
            let greater = edge.max(shield);
            Band { low: edge.min(shield), likely: greater, high: greater }
        }
    }
}

/// Resistance of the pilot tip; in a mixed face that of the harder ground.
pub(super) fn tips(calc: &mut Calc, drive: &Drive, (head, at_best): (Length, bool), stretch: &Stretch) -> Band<Force> {
    if !drive.stem.is_there() {
        return Band::default();
    }
    if let Some(drilled) = stretch.drilled(at_best) {
        return calc.levels(drilled.bit, |calc, per_diameter| calc.law(BitThrust { per_diameter, diameter: head }));
    }
    let own = if at_best { stretch.tip.at_best() } else { stretch.tip };
    let one = tip(calc, drive, head, own);
    match stretch.other_tip {
        Some(other) => one.or_harder(tip(calc, drive, head, other)),
        None => one,
    }
}

fn tip(calc: &mut Calc, drive: &Drive, diameter: Length, tip: Tip) -> Band<Force> {
    match tip.model {
        TipModel::Sand => {
            let each = tip.blows.zip(drive.tip.cone_per_blow);
            calc.levels(each, |calc, (blows, cone_resistance_per_blow)| {
                calc.law(PilotTipAsCone { cone_resistance_per_blow, blows, diameter })
            })
        }
        TipModel::Clay => {
            let each = tip.blows.zip(drive.tip.bearing_factor);
            let bearing = calc.levels(each, |calc, (blows, bearing_factor)| {
                let strength_per_blow = drive.tip.strength_per_blow;
                calc.law(PilotTipInClay { bearing_factor, strength_per_blow, blows, diameter })
            });
            let bearing = match tip.strength {
                Some(strength) => {
                    let given = drive.tip.bearing_factor;
                    let given = calc.levels(given, |calc, bearing_factor| {
                        calc.law(PilotTipByStrength { bearing_factor, strength, diameter })
                    });
                    Band { low: bearing.low.min(given.low), likely: given.likely, high: bearing.high.max(given.high) }
                }
                None => bearing,
            };
            // The cone gives more than the bearing factor in clay; the larger counts where it matters.
            let cone_resistance_per_blow = drive.tip.cone_per_blow_clay;
            let cone = calc.law(PilotTipAsCone { cone_resistance_per_blow, blows: tip.blows.high, diameter });
            Band { high: bearing.high.max(cone), ..bearing }
        }
    }
}
