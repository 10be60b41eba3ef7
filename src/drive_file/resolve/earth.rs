//! The soil round the bore: the file's, and by the class of the ground what the file leaves out, at both ends.

use super::class_weight::{Weights, of_face};
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Earth, Ends, Layer, Soil, Strength, StrengthBy, Tip};
use crate::drive_file::{SoilFile, StretchFile};
use crate::handbook::{ClassSoilRow, GroundClass};
use crate::quantity::{Angle, Length, Measure, Pressure, Ratio, Role, Shown, UnitWeight};
use crate::source::Origin;
use crate::yaml::MayBe;

/// What a class of ground is beside its weight. Of two grounds the worse counts, value by value.
#[derive(Debug, Clone, Copy)]
struct OfClass {
    phi_load: Angle,
    phi_resist: Angle,
    /// Undrained strength per blow, of clay.
    per_blow: Option<Ends<Pressure>>,
    modulus_ratio: Option<Ends<Ratio>>,
    shear_modulus: Option<Ends<Pressure>>,
    native_modulus: Ends<Pressure>,
    origin: Origin,
}

impl OfClass {
    fn of(row: &ClassSoilRow, origin: Origin) -> Self {
        let pair = |low: &Option<crate::yaml::Field<Pressure>>, high: &Option<crate::yaml::Field<Pressure>>| {
            low.as_ref().zip(high.as_ref()).map(|(low, high)| Ends { low: low.value, high: high.value })
        };
        let ratio = row.modulus_low.as_ref().zip(row.modulus_high.as_ref());
        Self {
            phi_load: row.phi_load.value,
            phi_resist: row.phi_resist.value,
            per_blow: pair(&row.blow_low, &row.blow_high),
            modulus_ratio: ratio.map(|(low, high)| Ends { low: low.value, high: high.value }),
            shear_modulus: pair(&row.shear_low, &row.shear_high),
            native_modulus: Ends { low: row.native_low.value, high: row.native_high.value },
            origin,
        }
    }

    fn or(self, other: Self) -> Self {
        let least = |one: Ends<Pressure>, other: Ends<Pressure>| one.with(other, Pressure::min);
        Self {
            phi_load: self.phi_load.min(other.phi_load),
            phi_resist: self.phi_resist.min(other.phi_resist),
            // One of them may be no clay: the strength is that of the clay.
            per_blow: match (self.per_blow, other.per_blow) {
                (Some(one), Some(other)) => Some(least(one, other)),
                (one, other) => one.or(other),
            },
            modulus_ratio: match (self.modulus_ratio, other.modulus_ratio) {
                (Some(one), Some(other)) => Some(one.with(other, Ratio::min)),
                (one, other) => one.or(other),
            },
            shear_modulus: self.shear_modulus.zip(other.shear_modulus).map(|(one, other)| least(one, other)),
            native_modulus: least(self.native_modulus, other.native_modulus),
            origin: if other.phi_load < self.phi_load { other.origin } else { self.origin },
        }
    }
}

/// Friction of a class of ground: that which a resistance counts on, and a load.
#[derive(Debug, Clone, Copy)]
pub(super) struct FrictionAngle {
    pub(super) angles: Ends<Angle>,
    pub(super) origin: Origin,
}

impl OfClass {
    const fn friction(&self) -> FrictionAngle {
        FrictionAngle { angles: Ends { low: self.phi_resist, high: self.phi_load }, origin: self.origin }
    }
}

impl Resolver<'_> {
    /// Friction of the ground of a face.
    pub(super) fn class_friction(
        &self,
        class: GroundClass,
        mixed_with: Option<GroundClass>,
    ) -> Resolved<FrictionAngle> {
        Ok(self.of_class(class, mixed_with)?.friction())
    }

    pub(super) fn assume_angle(&mut self, path: &str, friction: &FrictionAngle) {
        let [least, most] = [friction.angles.low, friction.angles.high].map(|angle| Shown::of(angle, Role::Angle));
        self.assume_alike(path, "soil.friction_angle", AssumedValue::Range(least, most), friction.origin);
    }

    fn of_class(&self, class: GroundClass, mixed_with: Option<GroundClass>) -> Resolved<OfClass> {
        let table = self.handbook.class_soil()?;
        let of = |class: GroundClass| {
            let row = table.fitting(class.key(), |row| row.ground.value == class)?;
            Ok(OfClass::of(row.value, row.origin))
        };
        of_face(class, mixed_with, of, OfClass::or)
    }

    /// The soil of a stretch: the file's, with what it leaves out of it, or that of the class.
    pub(super) fn earth(
        &mut self,
        stretch: &StretchFile,
        path: &str,
        crown: Length,
        tips: (Tip, Option<Tip>),
    ) -> Resolved<Earth> {
        let class = stretch.class.value;
        let mixed_with = stretch.mixed_with.given();
        let weights = self.class_weights(class, mixed_with)?;
        let of_class = self.of_class(class, mixed_with)?;
        let soil = match &stretch.soil {
            Some(soil) => self.soil(soil, path, crown, (&weights, &of_class.friction()))?,
            None => {
                self.assume_class(path, &weights, &of_class);
                of_weights(&weights, &of_class)
            }
        };
        let undrained = soil.high.undrained;
        let given = undrained.map(|undrained| undrained.strength);
        let strength = self.strength(path, (class, mixed_with), tips, given, &of_class)?;
        let by_clay = strength.zip(of_class.modulus_ratio);
        let shear_modulus = soil.high.shear_modulus.or(undrained.and_then(|clay| clay.modulus).map(|e| e / 3.0));
        Ok(Earth {
            told: stretch.soil.as_ref().is_some_and(SoilFile::is_whole),
            strength,
            shear_modulus: match shear_modulus {
                Some(told) => Some(Ends::same(told)),
                // Three shear moduli are one undrained modulus.
                None => by_clay
                    .map(|(strength, ratio)| strength.ends.with(ratio, |strength, ratio| strength * ratio / 3.0))
                    .or(of_class.shear_modulus),
            },
            heavy: soil.high,
            light: soil.low,
            native_modulus: of_class.native_modulus,
        })
    }

    fn assume_class(&mut self, path: &str, weights: &Weights, of_class: &OfClass) {
        let weight = |ends: Ends<UnitWeight>| AssumedValue::range(ends.low, ends.high, Role::UnitWeight);
        self.assume_alike(path, "soil.moist", weight(weights.moist), weights.origin);
        self.assume_alike(path, "soil.saturated", weight(weights.saturated), weights.origin);
        self.assume_angle(path, &of_class.friction());
    }

    /// Undrained strength of the clay in a face; `None` where there is none. A count of a mixed face may have been taken
    /// in either ground: the lesser counts.
    fn strength(
        &mut self,
        path: &str,
        (class, mixed_with): (GroundClass, Option<GroundClass>),
        (tip, other_tip): (Tip, Option<Tip>),
        given: Option<Pressure>,
        of_class: &OfClass,
    ) -> Resolved<Option<Strength>> {
        let other = mixed_with.filter(|other| other.is_clay()).and(other_tip);
        let Some(per_blow) = of_class.per_blow else { return Ok(None) };
        if !class.is_clay() && other.is_none() {
            return Ok(None);
        }
        let pressure = |key| self.handbook.pressure(key).map(|row| row.value);
        let few = Ends { low: pressure("clay.few_blows_low")?, high: pressure("clay.few_blows_high")? };
        let most = pressure("clay.most_strength")?;
        let blows = other.map_or(tip.blows, |other| tip.blows.with(other.blows, Ratio::min));
        // Few blows say little of a strength.
        let counted = Ends {
            low: (per_blow.low * blows.low).max(few.low).min(most),
            high: (per_blow.high * blows.high).max(few.high).min(most),
        };
        let beyond = |other: Tip, given: Pressure| given > per_blow.high * other.blows.high;
        let strength = match (given, other) {
            // The strength of one clay says nothing of another that cannot have as much.
            (Some(given), Some(other)) if class.is_clay() && beyond(other, given) => {
                Strength { ends: counted.map(|counted| counted.min(given)), by: StrengthBy::OtherClay }
            }
            (Some(given), _) => Strength { ends: Ends::same(given), by: StrengthBy::File },
            (None, _) => Strength { ends: counted, by: StrengthBy::Blows },
        };
        if strength.by != StrengthBy::File {
            let ends = AssumedValue::range(strength.ends.low, strength.ends.high, Role::UnitFriction);
            self.assume_alike(path, "soil.undrained_strength", ends, of_class.origin);
        }
        Ok(Some(strength))
    }
}

/// One soil of the class from the surface down.
fn of_weights(weights: &Weights, of_class: &OfClass) -> Ends<Soil> {
    let soil = |moist, saturated, friction_angle| Soil {
        layers: vec![Layer { bottom: Length::from_si(f64::INFINITY), moist, saturated, friction_angle }],
        surcharge: Pressure::default(),
        cohesion: None,
        shear_modulus: None,
        undrained: None,
    };
    Ends {
        low: soil(weights.moist.low, weights.saturated.low, of_class.phi_resist),
        high: soil(weights.moist.high, weights.saturated.high, of_class.phi_load),
    }
}
