//! Models that rest on the pressure of a column of soil over the pipe.

use super::along::Silo;
use super::place::{Coefficients, FrictionModel, Over, Place};
use crate::drive::Layer;
use crate::law::Calc;
use crate::laws::friction::OpenShieldFriction;
use crate::laws::soil::{
    FrictionOfPressure, MeanRingPressure, ModifiedArching, SiloWidthAtv, SiloWidthPja, SiloWidthTerzaghi,
};
use crate::quantity::{Angle, Band, Length, Measure, Pressure, Ratio, UnitWeight};

pub(super) fn models(calc: &mut Calc, place: &Place<'_>, models: &mut Vec<FrictionModel>) {
    let Some(layer) = place.soil.at_pipe() else { return };
    let column = Column { place, layer, unit_weight: layer.moist, friction_angle: layer.friction_angle };
    models.push(column.calibrated(calc));
    if place.is_granular() {
        if !place.is_lubricated() {
            models.push(column.full_friction(calc));
        }
        models.push(column.arching(calc));
        models.push(column.open_shield(calc));
        models.push(column.german(calc));
    }
    models.push(column.association(calc));
}

/// The column of soil over the pipe. All sets take the moist unit weight, as their coefficients were found.
struct Column<'a> {
    place: &'a Place<'a>,
    /// The soil that holds the pipe.
    layer: &'a Layer,
    unit_weight: UnitWeight,
    friction_angle: Angle,
}

impl Coefficients {
    /// Unit friction of a pressure with the fitted coefficients, not below the floors.
    fn friction(&self, calc: &mut Calc, pressure: Pressure) -> Band<Pressure> {
        let band = self.fitted.map(|coefficient| calc.law(FrictionOfPressure { pressure, coefficient }));
        self.floored(band)
    }

    fn floored(&self, band: Band<Pressure>) -> Band<Pressure> {
        let (likely, high) = self.floor;
        Band { low: band.low, likely: band.likely.max(likely), high: band.high.max(high) }
    }
}

impl Column<'_> {
    /// The soil over the crown as a silo of this width.
    fn silo(&self, calc: &mut Calc, width: Length, lateral: impl Fn(Angle) -> Ratio) -> Silo {
        Silo::over(calc, self.place.soil, self.layer, width, lateral)
    }

    /// Mean friction of the pressure round the pipe, with the fitted coefficients and not below the floors at any
    /// place of the stretch.
    fn fitted(&self, calc: &mut Calc, silo: &Silo) -> Band<Pressure> {
        let coefficients = self.place.coefficients;
        let of = |calc: &mut Calc, crown: Pressure, coefficient: Ratio| {
            let pressure = self.ring(calc, crown);
            calc.law(FrictionOfPressure { pressure, coefficient })
        };
        let plain = silo.mean(calc, &self.place.pieces);
        let above = |calc: &mut Calc, coefficient: Ratio, floor: Pressure| {
            // Friction is linear in the pressure at the crown, so that two points tell where it meets the floor.
            let without = of(calc, Pressure::default(), coefficient);
            let per_floor = of(calc, floor, coefficient) - without;
            let crown = if per_floor > Pressure::default() {
                let meets = floor * ((floor - without) / per_floor).value;
                silo.mean_above(calc, &self.place.pieces, meets)
            } else {
                plain
            };
            of(calc, crown, coefficient)
        };
        let band = Band {
            low: of(calc, plain, coefficients.fitted.low),
            likely: above(calc, coefficients.fitted.likely, coefficients.floor.0),
            high: above(calc, coefficients.fitted.high, coefficients.floor.1),
        };
        coefficients.floored(band)
    }

    /// Mean pressure round the pipe.
    fn ring(&self, calc: &mut Calc, crown_stress: Pressure) -> Pressure {
        calc.law(MeanRingPressure {
            crown_stress,
            unit_weight: self.unit_weight,
            outside_diameter: self.place.diameter,
            lateral_ratio: self.place.coefficients.lateral,
        })
    }

    fn terzaghi(&self, calc: &mut Calc) -> Silo {
        let outside_diameter = self.place.diameter;
        let width = calc.law(SiloWidthTerzaghi { outside_diameter, friction_angle: self.friction_angle });
        self.silo(calc, width, Angle::tan)
    }

    fn calibrated(&self, calc: &mut Calc) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let silo = self.terzaghi(calc);
            self.fitted(calc, &silo)
        });
        FrictionModel::of(
            "Terzaghi silo with fitted coefficients",
            Over::Mean,
            friction,
            "coefficients fitted on slurry-method drives from 0.64 m; floors kept",
        )
    }

    fn full_friction(&self, calc: &mut Calc) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let silo = self.terzaghi(calc);
            let crown = silo.mean(calc, &self.place.pieces);
            let pressure = self.ring(calc, crown);
            let mut of = |coefficient| calc.law(FrictionOfPressure { pressure, coefficient });
            let low = of((self.friction_angle / 2.0).tan());
            let high = of(self.friction_angle.tan());
            Band { low, likely: (low + high) / 2.0, high }
        });
        FrictionModel::of(
            "Terzaghi silo, half to full friction angle",
            Over::Mean,
            friction,
            "granular ground without lubricant; over-reads measured drives several times",
        )
    }

    fn arching(&self, calc: &mut Calc) -> FrictionModel {
        let law = ModifiedArching {
            unit_weight: self.unit_weight,
            outside_diameter: self.place.diameter,
            friction_angle: self.friction_angle,
        };
        let friction = calc.doubted(|calc| {
            let pressure = calc.law(law);
            self.place.coefficients.friction(calc, pressure)
        });
        let model = FrictionModel::of(
            "modified arching",
            Over::Any,
            friction,
            "with the fitted coefficients and floors; far too low for small bores in sand and gravel",
        );
        FrictionModel { in_range: model.in_range && !self.place.is_wet(), ..model }
    }

    /// Only in granular ground: in clay the adhesion governs, and its published value could not be read.
    fn open_shield(&self, calc: &mut Calc) -> FrictionModel {
        let friction_angle = self.friction_angle;
        let friction = calc.doubted(|calc| {
            let outside_diameter = self.place.diameter + self.place.coefficients.japanese_allowance;
            let width = calc.law(SiloWidthPja { outside_diameter, friction_angle });
            let pressure = self.silo(calc, width, Angle::tan).mean(calc, &self.place.pieces);
            Band::same(calc.law(OpenShieldFriction {
                pressure,
                pipe_weight: self.place.weight.unwrap_or_default(),
                outside_diameter: self.place.diameter,
                friction_angle,
                adhesion: Pressure::default(),
            }))
        });
        let note = match (self.place.is_lubricated(), self.place.weight.is_some()) {
            (true, _) => "does not hold here: for a hand or cutting-edge shield without lubricant; recalled",
            (false, true) => "for a hand or cutting-edge shield without lubricant; recalled",
            (false, false) => {
                "for a hand or cutting-edge shield without lubricant; recalled; weight of the pipe left out"
            }
        };
        let model = FrictionModel::of("Japanese open-shield form", Over::Mean, friction, note);
        FrictionModel { in_range: model.in_range && !self.place.is_lubricated(), ..model }
    }

    fn german(&self, calc: &mut Calc) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let width = calc.law(SiloWidthAtv { outside_diameter: self.place.diameter });
            let (lateral, wall_over_phi) = self.place.coefficients.german;
            let lateral = |angle: Angle| lateral * Angle::from_si(angle.si() * wall_over_phi.si()).tan();
            let pressure = self.silo(calc, width, lateral).mean(calc, &self.place.pieces);
            Band::same(calc.law(FrictionOfPressure { pressure, coefficient: (self.friction_angle / 2.0).tan() }))
        });
        FrictionModel::of(
            "ATV-A 161 silo, half friction angle",
            Over::Mean,
            friction,
            "a load for the design of pipe; over-reads measured friction 3 to 46 times",
        )
    }

    fn association(&self, calc: &mut Calc) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let friction_angle = self.friction_angle;
            let width = calc.law(SiloWidthPja { outside_diameter: self.place.diameter, friction_angle });
            // The lateral ratio of this set, recalled with low confidence.
            let lateral = |angle: Angle| {
                let sine = angle.sin();
                let one = Ratio::from_si(1.0);
                (one - sine * sine) / (one + sine * sine) * angle.tan()
            };
            let silo = self.silo(calc, width, lateral);
            self.fitted(calc, &silo)
        });
        FrictionModel::of(
            "pipe jacking association silo",
            Over::Mean,
            friction,
            "with the fitted coefficients and floors; recalled with low confidence",
        )
    }
}
