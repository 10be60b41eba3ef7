//! The soil that holds the pipe and the layers over it.

use super::class_weight::Weights;
use super::earth::FrictionAngle;
use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Ends, Layer, Soil, Undrained};
use crate::drive_file::{LayerFile, SoilFile};
use crate::handbook::GroundClass;
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::quantity::{Angle, Length, Measure, Role, Shown, UnitWeight};
use crate::yaml::MayBe;

/// Most layers over a pipe; a borehole log has a dozen.
const MOST_LAYERS: usize = 100;
/// A saturated and a buoyant unit weight that are both given agree within this, N/m³.
const AGREEMENT: f64 = 100.0;

fn water() -> UnitWeight {
    UnitWeight::from_si(WATER_UNIT_WEIGHT)
}

impl Resolver<'_> {
    /// The soil of the file, with the unit weights and the friction of the class where it tells none. `crown` is the depth of the
    /// crown of the pipe in the shallowest place: above it layers end.
    pub(super) fn soil(
        &mut self,
        soil: &SoilFile,
        stretch: &str,
        crown: Length,
        (weights, friction): (&Weights, &FrictionAngle),
    ) -> Resolved<Ends<Soil>> {
        let path = format!("{stretch}.soil");
        // Nothing tells the class of a layer.
        let any = self.class_weights(GroundClass::Unknown, None)?;
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
                self.wrong(&path, layer, LayerFile::thickness, why);
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
        let angle = soil.friction_angle.given().map_or(friction.angles, Ends::same);
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
        if strength.is_none() {
            let why = ("means nothing without the undrained strength", "add `undrained_strength`");
            self.wrong(&path, soil, SoilFile::undrained_modulus, why);
        }
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
            self.wrong(path, layer, LayerFile::saturated, ("is less than the moist unit weight", advice));
        }
        let differs = |(saturated, buoyant): (UnitWeight, UnitWeight)| (saturated - water() - buoyant).si().abs();
        if saturated.zip(buoyant).is_some_and(|both| differs(both) > AGREEMENT) {
            let why = ("is not the saturated unit weight less that of water", "give one of the two");
            self.wrong(path, layer, LayerFile::buoyant, why);
        } else if buoyant.is_some_and(|buoyant| buoyant > moist.low) {
            let advice = "the buoyant unit weight leaves out the water; see `saturated`";
            self.wrong(path, layer, LayerFile::buoyant, ("is more than the moist unit weight", advice));
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
