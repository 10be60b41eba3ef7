//! Models that rest on the pressure of a column of soil over the pipe.

use super::{Coefficients, FrictionModel, Place};
use crate::law::{Calc, Silent};
use crate::laws::friction::OpenShieldFriction;
use crate::laws::soil::{
    FrictionOfPressure, MeanRingPressure, ModifiedArching, SiloStress, SiloWidthAtv, SiloWidthPja, SiloWidthTerzaghi,
};
use crate::quantity::{Angle, Band, Length, Measure, Pressure, Ratio, UnitWeight};

pub(super) fn models(calc: &mut Calc<Silent>, place: &Place<'_>, models: &mut Vec<FrictionModel>) {
    let Some(layer) = place.soil.at_pipe() else { return };
    let column = Column { place, unit_weight: layer.moist, friction_angle: layer.friction_angle };
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
    unit_weight: UnitWeight,
    friction_angle: Angle,
}

impl Coefficients {
    /// Unit friction of a pressure with the fitted coefficients, not below the floors.
    fn friction(&self, calc: &mut Calc<Silent>, pressure: Pressure) -> Band<Pressure> {
        let band = self.fitted.map(|coefficient| calc.law(FrictionOfPressure { pressure, coefficient }));
        let (likely, high) = self.floor;
        Band { low: band.low, likely: band.likely.max(likely), high: band.high.max(high) }
    }
}

impl Column<'_> {
    /// Vertical pressure at the crown under a column that hangs in its sides, layer by layer: what a layer sends down
    /// is the load on the next.
    fn crown(&self, calc: &mut Calc<Silent>, width: Length, lateral: impl Fn(Angle) -> Ratio) -> Pressure {
        let mut stress = self.place.soil.surcharge;
        let mut top = Length::default();
        for layer in &self.place.soil.layers {
            let bottom = layer.bottom.min(self.place.crown);
            if bottom > top {
                stress = calc.law(SiloStress {
                    unit_weight: layer.moist,
                    width,
                    depth: bottom - top,
                    lateral_friction: lateral(layer.friction_angle),
                    cohesion: Pressure::default(),
                    surcharge: stress,
                });
                top = bottom;
            }
        }
        stress
    }

    /// Mean pressure round the pipe.
    fn ring(&self, calc: &mut Calc<Silent>, crown_stress: Pressure) -> Pressure {
        calc.law(MeanRingPressure {
            crown_stress,
            unit_weight: self.unit_weight,
            outside_diameter: self.place.diameter,
            lateral_ratio: self.place.coefficients.lateral,
        })
    }

    fn terzaghi(&self, calc: &mut Calc<Silent>) -> Pressure {
        let outside_diameter = self.place.diameter;
        let width = calc.law(SiloWidthTerzaghi { outside_diameter, friction_angle: self.friction_angle });
        let crown = self.crown(calc, width, Angle::tan);
        self.ring(calc, crown)
    }

    fn calibrated(&self, calc: &mut Calc<Silent>) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let pressure = self.terzaghi(calc);
            self.place.coefficients.friction(calc, pressure)
        });
        FrictionModel::of(
            "Terzaghi silo with fitted coefficients",
            friction,
            "coefficients fitted on slurry-method drives from 0.64 m; floors kept",
        )
    }

    fn full_friction(&self, calc: &mut Calc<Silent>) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let pressure = self.terzaghi(calc);
            let mut of = |coefficient| calc.law(FrictionOfPressure { pressure, coefficient });
            let low = of((self.friction_angle / 2.0).tan());
            let high = of(self.friction_angle.tan());
            Band { low, likely: (low + high) / 2.0, high }
        });
        FrictionModel::of(
            "Terzaghi silo, half to full friction angle",
            friction,
            "granular ground without lubricant; over-reads measured drives several times",
        )
    }

    fn arching(&self, calc: &mut Calc<Silent>) -> FrictionModel {
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
            friction,
            "with the fitted coefficients and floors; far too low for small bores in sand and gravel",
        );
        FrictionModel { in_range: model.in_range && !self.place.is_wet(), ..model }
    }

    /// Only in granular ground: in clay the adhesion governs, and its published value could not be read.
    fn open_shield(&self, calc: &mut Calc<Silent>) -> FrictionModel {
        let friction_angle = self.friction_angle;
        let friction = calc.doubted(|calc| {
            let outside_diameter = self.place.diameter + self.place.coefficients.japanese_allowance;
            let width = calc.law(SiloWidthPja { outside_diameter, friction_angle });
            let pressure = self.crown(calc, width, Angle::tan);
            Band::same(calc.law(OpenShieldFriction {
                pressure,
                pipe_weight: self.place.weight.unwrap_or_default(),
                outside_diameter: self.place.diameter,
                friction_angle,
                adhesion: Pressure::default(),
            }))
        });
        let known = self.place.weight.is_some();
        FrictionModel::of(
            "Japanese open-shield form",
            friction,
            if known {
                "for a hand or cutting-edge shield without lubricant; recalled"
            } else {
                "for a hand or cutting-edge shield without lubricant; recalled; weight of the pipe left out"
            },
        )
    }

    fn german(&self, calc: &mut Calc<Silent>) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let width = calc.law(SiloWidthAtv { outside_diameter: self.place.diameter });
            let (lateral, wall_over_phi) = self.place.coefficients.german;
            let lateral = |angle: Angle| lateral * Angle::from_si(angle.si() * wall_over_phi.si()).tan();
            let pressure = self.crown(calc, width, lateral);
            Band::same(calc.law(FrictionOfPressure { pressure, coefficient: (self.friction_angle / 2.0).tan() }))
        });
        FrictionModel::of(
            "ATV-A 161 silo, half friction angle",
            friction,
            "a load for the design of pipe; over-reads measured friction 3 to 46 times",
        )
    }

    fn association(&self, calc: &mut Calc<Silent>) -> FrictionModel {
        let friction = calc.doubted(|calc| {
            let friction_angle = self.friction_angle;
            let width = calc.law(SiloWidthPja { outside_diameter: self.place.diameter, friction_angle });
            // The lateral ratio of this set, recalled with low confidence.
            let lateral = |angle: Angle| {
                let sine = angle.sin();
                let one = Ratio::from_si(1.0);
                (one - sine * sine) / (one + sine * sine) * angle.tan()
            };
            let crown = self.crown(calc, width, lateral);
            let pressure = self.ring(calc, crown);
            self.place.coefficients.friction(calc, pressure)
        });
        FrictionModel::of(
            "pipe jacking association silo",
            friction,
            "with the fitted coefficients and floors; recalled with low confidence",
        )
    }
}
