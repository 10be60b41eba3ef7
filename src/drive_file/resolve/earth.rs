//! The soil round the bore and the layers over it: the file's, and by the class of the ground what the file leaves out, at
//! both ends.

use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Earth, Ends, Layer, Soil, Strength, StrengthBy, Tip, Undrained};
use crate::drive_file::{LayerFile, SoilFile, StretchFile};
use crate::handbook::{ClassSoilRow, GroundClass, SoilWeightRow};
use crate::laws::soil::water_unit_weight;
use crate::quantity::{Angle, Length, Measure, Pressure, Ratio, Role, Shown, UnitWeight};
use crate::source::{Cited, Origin};
use crate::yaml::{Field, MayBe};

/// What a class of ground is beside its weight. Of two grounds the worse counts, value by value.
#[derive(Debug, Clone, Copy)]
struct OfClass {
    /// Friction that a resistance counts on, and a load.
    friction: Ends<Angle>,
    /// Undrained strength per blow, of clay.
    per_blow: Option<Ends<Pressure>>,
    modulus_ratio: Option<Ends<Ratio>>,
    shear_modulus: Option<Ends<Pressure>>,
    native_modulus: Ends<Pressure>,
    origin: Origin,
}

impl OfClass {
    fn of(row: &ClassSoilRow, origin: Origin) -> Self {
        Self {
            friction: Ends { low: row.phi_resist.value, high: row.phi_load.value },
            per_blow: pair(&row.blow_low, &row.blow_high),
            modulus_ratio: pair(&row.modulus_low, &row.modulus_high),
            shear_modulus: pair(&row.shear_low, &row.shear_high),
            native_modulus: Ends { low: row.native_low.value, high: row.native_high.value },
            origin,
        }
    }

    const fn friction(&self) -> Cited<Ends<Angle>> {
        Cited::new(self.friction, self.origin)
    }

    fn or(self, other: Self) -> Self {
        let least = |one: Ends<Pressure>, other: Ends<Pressure>| one.with(other, Pressure::min);
        Self {
            friction: self.friction.with(other.friction, Angle::min),
            // One of them may be no clay: the strength is that of the clay.
            per_blow: either(self.per_blow, other.per_blow, least),
            modulus_ratio: either(self.modulus_ratio, other.modulus_ratio, |one, other| one.with(other, Ratio::min)),
            shear_modulus: self.shear_modulus.zip(other.shear_modulus).map(|(one, other)| least(one, other)),
            native_modulus: least(self.native_modulus, other.native_modulus),
            origin: if other.friction.high < self.friction.high { other.origin } else { self.origin },
        }
    }
}

fn pair<Q: Copy>(low: &Option<Field<Q>>, high: &Option<Field<Q>>) -> Option<Ends<Q>> {
    low.as_ref().zip(high.as_ref()).map(|(low, high)| Ends { low: low.value, high: high.value })
}

/// The one that is there, or both.
fn either<T>(one: Option<T>, other: Option<T>, both: impl Fn(T, T) -> T) -> Option<T> {
    match (one, other) {
        (Some(one), Some(other)) => Some(both(one, other)),
        (one, other) => one.or(other),
    }
}

impl Resolver<'_> {
    /// Friction of the ground of a face.
    pub(super) fn class_friction(&self, face: Grounds) -> Resolved<Cited<Ends<Angle>>> {
        Ok(self.of_class(face)?.friction())
    }

    fn assume_angle(&mut self, path: &str, friction: Cited<Ends<Angle>>) {
        let [least, most] = [friction.value.low, friction.value.high].map(|angle| Shown::of(angle, Role::Angle));
        self.assume_alike(path, "soil.friction_angle", AssumedValue::Range(least, most), friction.origin);
    }

    fn of_class(&self, face: Grounds) -> Resolved<OfClass> {
        let table = self.handbook.class_soil()?;
        let of = |class: GroundClass| {
            let row = table.fitting(class.key(), |row| row.ground.value == class)?;
            Ok(OfClass::of(row.value, row.origin))
        };
        of_face(face, of, OfClass::or)
    }

    /// The soil of a stretch: the file's, with what it leaves out of it, or that of the class.
    pub(super) fn earth(
        &mut self,
        stretch: &StretchFile,
        path: &str,
        crown: Length,
        tips: (Tip, Option<Tip>),
    ) -> Resolved<Earth> {
        let face = (stretch.class.value, stretch.mixed_with.given());
        let weights = self.class_weights(face)?;
        let of_class = self.of_class(face)?;
        let soil = match &stretch.soil {
            Some(soil) => self.soil(soil, path, crown, (&weights, of_class.friction()))?,
            None => {
                self.assume_class(path, &weights, &of_class);
                of_weights(&weights, &of_class)
            }
        };
        let undrained = soil.high.undrained;
        let given = undrained.map(|undrained| undrained.strength);
        let tips = match (stretch.spt_n.is_some(), tips) {
            // Blows that are those of the class say nothing of the clay beside a ground that is none.
            (false, (tip, Some(other))) if !face.0.is_clay() => (Tip { blows: other.blows, ..tip }, Some(other)),
            (_, tips) => tips,
        };
        // The word alone tells that the clay is no softer than firm.
        let firm = self.handbook.pressure("clay.firm_least")?.value;
        let is_firm = face == (GroundClass::FirmToVeryStiffClay, None);
        let least = |low: Pressure| if is_firm { low.max(firm) } else { low };
        let strength = self.strength(path, face, tips, given, &of_class)?.map(|strength| match strength.by {
            StrengthBy::Blows => {
                let by = if stretch.spt_n.is_none() { StrengthBy::Class } else { StrengthBy::Blows };
                Strength { by, ends: Ends { low: least(strength.ends.low), ..strength.ends } }
            }
            _ => strength,
        });
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
        self.assume_angle(path, of_class.friction());
    }

    /// Undrained strength of the clay in a face; `None` where there is none. A count of a mixed face may have been taken
    /// in either ground: the lesser counts.
    fn strength(
        &mut self,
        path: &str,
        (class, mixed_with): Grounds,
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
        low: soil(weights.moist.low, weights.saturated.low, of_class.friction.low),
        high: soil(weights.moist.high, weights.saturated.high, of_class.friction.high),
    }
}

/// What a class of ground weighs, at both ends.
#[derive(Debug, Clone, Copy)]
pub(super) struct Weights {
    pub(super) moist: Ends<UnitWeight>,
    pub(super) saturated: Ends<UnitWeight>,
    pub(super) origin: Origin,
}

impl Weights {
    fn of(row: &SoilWeightRow, origin: Origin) -> Self {
        let water = water_unit_weight();
        let moist = Ends { low: row.moist_low.value, high: row.moist_high.value };
        let buoyant = Ends { low: row.buoyant_low.value, high: row.buoyant_high.value };
        Self { moist, saturated: buoyant.map(|buoyant| buoyant + water), origin }
    }

    /// The widest of both.
    fn or(self, other: Self) -> Self {
        let widest = |one: Ends<UnitWeight>, other: Ends<UnitWeight>| Ends {
            low: one.low.min(other.low),
            high: one.high.max(other.high),
        };
        let origin = if other.moist.high > self.moist.high { other.origin } else { self.origin };
        Self { moist: widest(self.moist, other.moist), saturated: widest(self.saturated, other.saturated), origin }
    }
}

/// Class of a stretch, and the other one of a mixed face.
pub(super) type Grounds = (GroundClass, Option<GroundClass>);

/// What the ground of a face is; of a mixed one the worse of both.
pub(super) fn of_face<T>(face: Grounds, of: impl Fn(GroundClass) -> Resolved<T>, worse: fn(T, T) -> T) -> Resolved<T> {
    let (class, mixed_with) = face;
    let one = of(class)?;
    Ok(match mixed_with {
        Some(other) => worse(one, of(other)?),
        None => one,
    })
}

impl Resolver<'_> {
    /// Unit weights of the ground of a face.
    pub(super) fn class_weights(&self, face: Grounds) -> Resolved<Weights> {
        let table = self.handbook.soil_weight()?;
        let of = |class: GroundClass| {
            let row = table.fitting(class.key(), |row| row.ground.value == class)?;
            Ok(Weights::of(row.value, row.origin))
        };
        of_face(face, of, Weights::or)
    }
}

/// Most layers over a pipe; a borehole log has a dozen.
const MOST_LAYERS: usize = 100;
/// A saturated and a buoyant unit weight that are both given agree within this, N/m³.
const AGREEMENT: f64 = 100.0;

fn water() -> UnitWeight {
    water_unit_weight()
}

impl Resolver<'_> {
    /// The soil of the file, with the unit weights and the friction of the class where it tells none. `crown` is the depth of the
    /// crown of the pipe in the shallowest place: above it layers end.
    pub(super) fn soil(
        &mut self,
        soil: &SoilFile,
        stretch: &str,
        crown: Length,
        (weights, friction): (&Weights, Cited<Ends<Angle>>),
    ) -> Resolved<Ends<Soil>> {
        let path = format!("{stretch}.soil");
        // Nothing tells the class of a layer.
        let any = self.class_weights((GroundClass::Unknown, None))?;
        let mut layers = Vec::new();
        let mut bottom = Length::default();
        if let Some(one_too_many) = soil.layers.get(MOST_LAYERS) {
            let message = format!("more than {MOST_LAYERS} layers");
            self.flaw(&one_too_many.thickness, &format!("{path}.layers[{MOST_LAYERS}]"), message);
        }
        for (index, layer) in soil.layers.iter().take(MOST_LAYERS).enumerate() {
            let path = format!("{path}.layers[{index}]");
            bottom += layer.thickness.value;
            if bottom > crown {
                let read = Shown::of(bottom, Role::Depth).display(self.system).to_string();
                let message = format!("reaches down to {read}, below the crown of the pipe in the shallowest place");
                let why = (message, "what holds the pipe is the soil itself, not a layer");
                self.wrong_at(&path, layer, LayerFile::thickness, why);
            }
            let own = (Ends::same(layer.moist.value), Ends::same(layer.friction_angle.value));
            layers.push(self.layer(layer, &path, bottom, own, any.saturated));
        }
        let infinite = Length::from_si(f64::INFINITY);
        let saturated = soil.saturated.given().or(soil.buoyant.given().map(|buoyant| buoyant + water()));
        // Moist it weighs no more than saturated, and no less than without the water.
        let moist = weights
            .moist
            .map(|moist| saturated.map_or(moist, |saturated| moist.min(saturated).max(saturated - water())));
        let moist = soil.moist.given().map_or(moist, Ends::same);
        let angle = soil.friction_angle.given().map_or(friction.value, Ends::same);
        let holding = LayerFile {
            thickness: infinite.into(),
            moist: moist.low.into(),
            saturated: soil.saturated.clone(),
            buoyant: soil.buoyant.clone(),
            friction_angle: angle.low.into(),
        };
        layers.push(self.layer(&holding, &path, infinite, (moist, angle), weights.saturated));
        if soil.moist.is_none() {
            let range = AssumedValue::range(moist.low, moist.high, Role::UnitWeight);
            self.assume_alike(stretch, "soil.moist", range, weights.origin);
        }
        if soil.friction_angle.is_none() {
            self.assume_angle(stretch, friction);
        }
        let over = || soil.layers.iter().any(|layer| layer.saturated.is_none() && layer.buoyant.is_none());
        if (soil.saturated.is_none() && soil.buoyant.is_none()) || over() {
            let range = AssumedValue::range(weights.saturated.low, weights.saturated.high, Role::UnitWeight);
            self.assume_alike(stretch, "soil.saturated", range, weights.origin);
        }
        let strength = soil.undrained_strength.given();
        let modulus = soil.undrained_modulus.given();
        let surcharge = soil.surcharge.given().unwrap_or_default();
        let cohesion = soil.cohesion.given();
        let shear_modulus = soil.shear_modulus.given();
        let undrained = strength.map(|strength| Undrained { strength, modulus });
        let of = |layers| Soil { layers, surcharge, cohesion, shear_modulus, undrained };
        let (light, heavy) = layers.into_iter().map(|layer| (layer.low, layer.high)).unzip();
        Ok(Ends { low: of(light), high: of(heavy) })
    }

    /// A layer of this moist unit weight and friction, with its water as the file tells it or as its class has it.
    fn layer(
        &mut self,
        layer: &LayerFile,
        path: &str,
        bottom: Length,
        (moist, angle): (Ends<UnitWeight>, Ends<Angle>),
        by_class: Ends<UnitWeight>,
    ) -> Ends<Layer> {
        let saturated = layer.saturated.given();
        let buoyant = layer.buoyant.given();
        if saturated.is_some_and(|saturated| saturated < moist.high) {
            let advice = "the saturated unit weight holds the water; write the other as `buoyant`";
            self.wrong_at(path, layer, LayerFile::saturated, ("is less than the moist unit weight", advice));
        }
        let differs = |(saturated, buoyant): (UnitWeight, UnitWeight)| (saturated - water() - buoyant).si().abs();
        if saturated.zip(buoyant).is_some_and(|both| differs(both) > AGREEMENT) {
            let why = ("is not the saturated unit weight less that of water", "give one of the two");
            self.wrong_at(path, layer, LayerFile::buoyant, why);
        } else if buoyant.is_some_and(|buoyant| buoyant > moist.low) {
            let advice = "the buoyant unit weight leaves out the water; see `saturated`";
            self.wrong_at(path, layer, LayerFile::buoyant, ("is more than the moist unit weight", advice));
        }
        // Water in its pores takes no weight away.
        let saturated = match saturated.or(buoyant.map(|buoyant| buoyant + water())) {
            Some(told) => Ends::same(told),
            None => by_class.with(moist, UnitWeight::max),
        };
        moist.with(angle, |moist, angle| (moist, angle)).with(saturated, |(moist, friction_angle), saturated| Layer {
            bottom,
            moist,
            saturated,
            friction_angle,
        })
    }
}
