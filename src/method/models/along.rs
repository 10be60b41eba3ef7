//! Silo pressure along a stretch whose depth changes: its exact mean, piece by piece where the surface breaks and where
//! a floor takes over.

use crate::drive::{Layer, Soil};
use crate::law::Calc;
use crate::laws::silo_mean::MeanSiloStress;
use crate::laws::soil::SiloStress;
use crate::quantity::{Angle, Length, Measure, Pressure, Ratio, UnitWeight};

/// A part of the stretch over which the depth changes evenly.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    /// Part of the stretch.
    share: f64,
    /// Depth of the crown in the soil that holds the pipe: least and greatest.
    depths: (Length, Length),
}

/// The pieces of a stretch. Layers end above the crown in the shallowest place and no pipe stands out of the ground (the
/// door sees to both), so that only the depth in the soil that holds the pipe changes.
pub(super) fn pieces(soil: &Soil, points: &[(Length, Length)], diameter: Length) -> Vec<Piece> {
    let top = overlying(soil).last().map_or(Length::default(), |layer| layer.bottom);
    let crown = |invert: Length| (invert - diameter - top).max(Length::default());
    let length = points.last().zip(points.first()).map_or(Length::default(), |(last, first)| last.0 - first.0);
    let even = |(from, to): (&(Length, Length), &(Length, Length))| Piece {
        share: ((to.0 - from.0) / length).value,
        depths: (crown(from.1.min(to.1)), crown(from.1.max(to.1))),
    };
    points.iter().zip(points.iter().skip(1)).map(even).collect()
}

/// The layers over the soil that holds the pipe.
fn overlying(soil: &Soil) -> &[Layer] {
    soil.layers.split_last().map_or(&[], |(_, over)| over)
}

/// A column of soil that hangs in its sides, in the soil that holds the pipe.
pub(super) struct Silo {
    unit_weight: UnitWeight,
    width: Length,
    lateral_friction: Ratio,
    /// What the layers above send down.
    load: Pressure,
}

impl Silo {
    /// Layer by layer: what a layer sends down is the load on the next. All sets take the moist unit weight, as their
    /// coefficients were found, so that water breaks nothing.
    pub(super) fn over(
        calc: &mut Calc,
        soil: &Soil,
        own: &Layer,
        width: Length,
        lateral: impl Fn(Angle) -> Ratio,
    ) -> Self {
        let mut load = soil.surcharge;
        let mut top = Length::default();
        for layer in overlying(soil) {
            load = calc.law(SiloStress {
                unit_weight: layer.moist,
                width,
                depth: layer.bottom - top,
                lateral_friction: lateral(layer.friction_angle),
                cohesion: Pressure::default(),
                surcharge: load,
            });
            top = layer.bottom;
        }
        Self { unit_weight: own.moist, width, lateral_friction: lateral(own.friction_angle), load }
    }

    /// Mean pressure at the crown.
    pub(super) fn mean(&self, calc: &mut Calc, pieces: &[Piece]) -> Pressure {
        pieces.iter().fold(Pressure::default(), |sum, piece| sum + self.part(calc, piece.depths) * piece.share)
    }

    /// Mean of the pressure at the crown or of a floor, whichever is the greater at each place.
    pub(super) fn mean_above(&self, calc: &mut Calc, pieces: &[Piece], floor: Pressure) -> Pressure {
        pieces.iter().fold(Pressure::default(), |sum, piece| {
            let (one, other) = piece.depths;
            let ends = (self.at(calc, one), self.at(calc, other));
            let mean = if ends.0 >= floor && ends.1 >= floor {
                self.part(calc, piece.depths)
            } else if ends.0 <= floor && ends.1 <= floor {
                floor
            } else {
                let root = self.depth_of(floor, one, ends.0).max(one).min(other);
                let share = ((root - one) / (other - one)).value;
                // The pressure goes one way with depth: up to its limit, or down to it under a heavy load.
                if ends.1 > floor {
                    floor * share + self.part(calc, (root, other)) * (1.0 - share)
                } else {
                    self.part(calc, (one, root)) * share + floor * (1.0 - share)
                }
            };
            sum + mean * piece.share
        })
    }

    fn part(&self, calc: &mut Calc, (depth_from, depth_to): (Length, Length)) -> Pressure {
        calc.law(MeanSiloStress {
            unit_weight: self.unit_weight,
            width: self.width,
            depth_from,
            depth_to,
            lateral_friction: self.lateral_friction,
            surcharge: self.load,
        })
    }

    fn at(&self, calc: &mut Calc, depth: Length) -> Pressure {
        self.part(calc, (depth, depth))
    }

    /// Depth at which the pressure is `wanted`, from a depth where it is `known`: the root of the silo law.
    fn depth_of(&self, wanted: Pressure, depth: Length, known: Pressure) -> Length {
        let hangs = 2.0 * self.lateral_friction.value * known / self.width;
        // Change of pressure with depth there.
        let slope: UnitWeight = self.unit_weight - hangs;
        let straight: Length = (wanted - known) / slope;
        let x = 2.0 * self.lateral_friction.value * (straight / self.width).value;
        let bent = if x == 0.0 { 1.0 } else { -(-x).ln_1p() / x };
        let root = depth + straight * bent;
        if root.si().is_finite() { root } else { depth }
    }
}
