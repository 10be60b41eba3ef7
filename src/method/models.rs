//! Unit friction by pressure models, shown beside the band and never used for capacity: in the measured drives no
//! pressure explains any of the scatter, and dividing by one widens it. Each model is a named set; the coefficients
//! belong to the set and to no other.

use crate::conditions::{VerticalStress, vertical_stress};
use crate::drive::{Drive, Pipe, Soil};
use crate::handbook::{GroundClass, HandbookError, Lubrication};
use crate::law::{Calc, Doubted, Silent};
use crate::laws::soil::{
    FrictionOfPressure, MeanRingPressure, ModifiedArching, SiloStress, SiloWidthPja, SiloWidthTerzaghi,
};
use crate::quantity::{Band, Length, Measure, Pressure, Ratio};

/// Unit friction by one model in one stretch.
#[derive(Debug, Clone, PartialEq)]
pub struct FrictionModel {
    /// Name of the set.
    pub name: &'static str,
    /// Unit friction.
    pub friction: Band<Pressure>,
    /// False where a law of it was used outside its range.
    pub in_range: bool,
    /// What a reader must know.
    pub note: &'static str,
}

impl FrictionModel {
    fn of(name: &'static str, friction: Doubted<Band<Pressure>>, note: &'static str) -> Self {
        Self { name, friction: friction.value, in_range: friction.doubt.is_none(), note }
    }
}

/// What the soil of one stretch says.
#[derive(Debug, Clone, PartialEq)]
pub struct SoilView {
    /// Position of the stretch.
    pub stretch: usize,
    /// Stress at the crown of the pipe in the deepest place; `None` below water without a saturated unit weight.
    pub at_crown: Option<VerticalStress>,
    /// The models.
    pub models: Vec<FrictionModel>,
}

/// The models of every stretch whose soil the file tells.
///
/// # Errors
/// If the table of coefficients is malformed or lacks a row.
pub fn friction_models(drive: &Drive, pipe: &Pipe) -> Result<Vec<SoilView>, HandbookError> {
    let coefficients = Coefficients::of(drive)?;
    let mut views = Vec::new();
    for (stretch, ground) in drive.stretches.iter().enumerate() {
        let Some(soil) = &ground.soil else { continue };
        let granular =
            matches!(ground.class, GroundClass::LooseSand | GroundClass::MediumToDenseSand | GroundClass::Gravel);
        let diameter = pipe.outside_diameter.value;
        let crown = (soil.invert_depth - diameter).max(Length::default());
        let calc = &mut Calc::new(Silent);
        let mut models = vec![calibrated(calc, soil, diameter, crown, &coefficients)];
        if granular {
            if drive.lubrication == Lubrication::None {
                models.push(full_friction(calc, soil, diameter, crown, &coefficients));
            }
            models.push(arching(calc, soil, diameter, &coefficients));
        }
        models.push(association(calc, soil, diameter, crown, &coefficients));
        views.push(SoilView { stretch, at_crown: vertical_stress(calc, soil, crown), models });
    }
    Ok(views)
}

/// Coefficients of the sets.
struct Coefficients {
    fitted: Band<Ratio>,
    floor: (Pressure, Pressure),
    lateral: Ratio,
}

impl Coefficients {
    fn of(drive: &Drive) -> Result<Self, HandbookError> {
        let ratio = |key| drive.handbook.ratio(key).map(|ratio| ratio.value);
        let pressure = |key| drive.handbook.pressure(key).map(|pressure| pressure.value);
        Ok(Self {
            fitted: Band {
                low: ratio("model.fitted_low")?,
                likely: ratio("model.fitted_likely")?,
                high: ratio("model.fitted_high")?,
            },
            floor: (pressure("friction.floor_likely")?, pressure("friction.floor_high")?),
            lateral: ratio("model.lateral")?,
        })
    }
}

impl Coefficients {
    /// Unit friction of a pressure with the fitted coefficients, not below the floors.
    fn friction(&self, calc: &mut Calc<Silent>, pressure: Pressure) -> Band<Pressure> {
        let band = self.fitted.map(|coefficient| calc.law(FrictionOfPressure { pressure, coefficient }));
        let (likely, high) = self.floor;
        Band { low: band.low, likely: band.likely.max(likely), high: band.high.max(high) }
    }
}

/// Mean pressure round the pipe under a silo with the full friction of the ground and the moist unit weight, which is
/// how the coefficients were found.
fn ring(
    calc: &mut Calc<Silent>,
    soil: &Soil,
    diameter: Length,
    depth: Length,
    (width, lateral_friction): (Length, Ratio),
    lateral_ratio: Ratio,
) -> Pressure {
    let crown_stress = calc.law(SiloStress {
        unit_weight: soil.moist,
        width,
        depth,
        lateral_friction,
        cohesion: Pressure::default(),
        surcharge: soil.surcharge,
    });
    calc.law(MeanRingPressure { crown_stress, unit_weight: soil.moist, outside_diameter: diameter, lateral_ratio })
}

fn terzaghi(calc: &mut Calc<Silent>, soil: &Soil, diameter: Length, depth: Length, lateral: Ratio) -> Pressure {
    let width = calc.law(SiloWidthTerzaghi { outside_diameter: diameter, friction_angle: soil.friction_angle });
    let full = soil.friction_angle.tan();
    ring(calc, soil, diameter, depth, (width, full), lateral)
}

fn calibrated(
    calc: &mut Calc<Silent>,
    soil: &Soil,
    diameter: Length,
    depth: Length,
    coefficients: &Coefficients,
) -> FrictionModel {
    let friction = calc.doubted(|calc| {
        let pressure = terzaghi(calc, soil, diameter, depth, coefficients.lateral);
        coefficients.friction(calc, pressure)
    });
    FrictionModel::of(
        "Terzaghi silo with fitted coefficients",
        friction,
        "coefficients fitted on slurry-method drives from 0.64 m; floors kept",
    )
}

fn full_friction(
    calc: &mut Calc<Silent>,
    soil: &Soil,
    diameter: Length,
    depth: Length,
    coefficients: &Coefficients,
) -> FrictionModel {
    let friction = calc.doubted(|calc| {
        let pressure = terzaghi(calc, soil, diameter, depth, coefficients.lateral);
        let of = |calc: &mut Calc<Silent>, coefficient| calc.law(FrictionOfPressure { pressure, coefficient });
        let low = of(calc, (soil.friction_angle / 2.0).tan());
        let high = of(calc, soil.friction_angle.tan());
        Band { low, likely: (low + high) / 2.0, high }
    });
    FrictionModel::of(
        "Terzaghi silo, half to full friction angle",
        friction,
        "granular ground without lubricant; over-reads measured drives several times",
    )
}

fn arching(calc: &mut Calc<Silent>, soil: &Soil, diameter: Length, coefficients: &Coefficients) -> FrictionModel {
    let law =
        ModifiedArching { unit_weight: soil.moist, outside_diameter: diameter, friction_angle: soil.friction_angle };
    let dry = soil.water_depth.is_none_or(|water| water >= soil.invert_depth);
    let friction = calc.doubted(|calc| {
        let pressure = calc.law(law);
        coefficients.friction(calc, pressure)
    });
    let model = FrictionModel::of(
        "modified arching",
        friction,
        "with the fitted coefficients and floors; far too low for small bores in sand and gravel",
    );
    FrictionModel { in_range: model.in_range && dry, ..model }
}

fn association(
    calc: &mut Calc<Silent>,
    soil: &Soil,
    diameter: Length,
    depth: Length,
    coefficients: &Coefficients,
) -> FrictionModel {
    let friction = calc.doubted(|calc| {
        let friction_angle = soil.friction_angle;
        let width = calc.law(SiloWidthPja { outside_diameter: diameter, friction_angle });
        // The lateral ratio of this set, recalled with low confidence.
        let sine = friction_angle.sin();
        let one = Ratio::from_si(1.0);
        let lateral = (one - sine * sine) / (one + sine * sine);
        let pressure = ring(calc, soil, diameter, depth, (width, lateral * friction_angle.tan()), coefficients.lateral);
        coefficients.friction(calc, pressure)
    });
    FrictionModel::of(
        "pipe jacking association silo",
        friction,
        "with the fitted coefficients and floors; recalled with low confidence",
    )
}
