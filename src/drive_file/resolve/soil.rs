//! The soil that holds the pipe and the layers over it.

use super::Resolver;
use super::class_weight::Weights;
use crate::drive::{AssumedValue, Ends, Layer, Soil, Undrained};
use crate::drive_file::{LayerFile, SoilFile};
use crate::handbook::{GroundClass, HandbookError};
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::quantity::{Length, Measure, Role, Shown, UnitWeight};
use crate::yaml::Complaint;

/// Most layers over a pipe; a borehole log has a dozen.
const MOST_LAYERS: usize = 100;
/// A saturated and a buoyant unit weight that are both given agree within this, N/m³.
const AGREEMENT: f64 = 100.0;

impl Resolver<'_> {
    /// The soil of the file, with the saturated unit weights of the class where it tells none. `crown` is the depth of the
    /// crown of the pipe in the shallowest place: above it layers end.
    pub(super) fn soil(
        &mut self,
        soil: &SoilFile,
        stretch: &str,
        crown: Length,
        weights: &Weights,
    ) -> Result<Ends<Soil>, HandbookError> {
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
            bottom += self.number(&path, layer, LayerFile::thickness);
            if bottom > crown {
                let read = Shown::of(bottom, Role::Depth).display(self.system).to_string();
                let message = format!("reaches down to {read}, below the crown of the pipe in the shallowest place");
                let why = Complaint::advised(message, "what holds the pipe is the soil itself, not a layer");
                self.wrong(&path, layer, LayerFile::thickness, why);
            }
            layers.push(self.layer(layer, &path, bottom, any.saturated));
        }
        let holding = LayerFile {
            thickness: Length::from_si(f64::INFINITY).into(),
            moist: soil.moist.clone(),
            saturated: soil.saturated.clone(),
            buoyant: soil.buoyant.clone(),
            friction_angle: soil.friction_angle.clone(),
        };
        layers.push(self.layer(&holding, &path, Length::from_si(f64::INFINITY), weights.saturated));
        let over = || soil.layers.iter().any(|layer| layer.saturated.is_none() && layer.buoyant.is_none());
        if (soil.saturated.is_none() && soil.buoyant.is_none()) || over() {
            let Ends { low, high } = weights.saturated.map(|weight| Shown::of(weight, Role::UnitWeight));
            self.assume_alike(stretch, "soil.saturated", AssumedValue::Range(low, high), weights.origin);
        }
        let strength = self.number(&path, soil, SoilFile::undrained_strength);
        let modulus = self.number(&path, soil, SoilFile::undrained_modulus);
        if strength.is_none() {
            let why = Complaint::advised("means nothing without the undrained strength", "add `undrained_strength`");
            self.wrong(&path, soil, SoilFile::undrained_modulus, why);
        }
        let surcharge = self.number(&path, soil, SoilFile::surcharge).unwrap_or_default();
        let cohesion = self.number(&path, soil, SoilFile::cohesion);
        let shear_modulus = self.number(&path, soil, SoilFile::shear_modulus);
        let undrained = strength.map(|strength| Undrained { strength, modulus });
        let of = |layers| Soil { layers, surcharge, cohesion, shear_modulus, undrained };
        let (light, heavy) = layers.into_iter().map(|layer| (layer.low, layer.high)).unzip();
        Ok(Ends { low: of(light), high: of(heavy) })
    }

    fn layer(&mut self, layer: &LayerFile, path: &str, bottom: Length, by_class: Ends<UnitWeight>) -> Ends<Layer> {
        let moist = self.number(path, layer, LayerFile::moist);
        let saturated = self.number(path, layer, LayerFile::saturated);
        let buoyant = self.number(path, layer, LayerFile::buoyant);
        if saturated.is_some_and(|saturated| saturated < moist) {
            let advice = "the saturated unit weight holds the water; write the other as `buoyant`";
            self.wrong(
                path,
                layer,
                LayerFile::saturated,
                Complaint::advised("is less than the moist unit weight", advice),
            );
        }
        let water = UnitWeight::from_si(WATER_UNIT_WEIGHT);
        let differs = |(saturated, buoyant): (UnitWeight, UnitWeight)| (saturated - water - buoyant).si().abs();
        if saturated.zip(buoyant).is_some_and(|both| differs(both) > AGREEMENT) {
            let why = Complaint::advised("is not the saturated unit weight less that of water", "give one of the two");
            self.wrong(path, layer, LayerFile::buoyant, why);
        } else if buoyant.is_some_and(|buoyant| buoyant >= moist) {
            let advice = "the buoyant unit weight leaves out the water; see `saturated`";
            self.wrong(
                path,
                layer,
                LayerFile::buoyant,
                Complaint::advised("is no less than the moist unit weight", advice),
            );
        }
        let angle = self.number(path, layer, LayerFile::friction_angle);
        // Water in its pores takes no weight away.
        let saturated = match saturated.or(buoyant.map(|buoyant| buoyant + water)) {
            Some(told) => Ends::same(told),
            None => by_class.map(|weight| weight.max(moist)),
        };
        saturated.map(|saturated| Layer { bottom, moist, saturated, friction_angle: angle })
    }
}
