//! The soil that holds the pipe and the layers over it.

use super::Resolver;
use crate::drive::{Layer, Soil, Undrained};
use crate::drive_file::{LayerFile, SoilFile};
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::quantity::{Length, Measure, Role, Shown, UnitWeight};
use crate::yaml::Complaint;

/// Most layers over a pipe; a borehole log has a dozen.
const MOST_LAYERS: usize = 100;
/// A saturated and a buoyant unit weight that are both given agree within this, N/m³.
const AGREEMENT: f64 = 100.0;

impl Resolver<'_> {
    /// `crown` is the depth of the crown of the pipe in the shallowest place: above it layers end.
    pub(super) fn soil(&mut self, soil: &SoilFile, path: &str, crown: Length) -> Soil {
        let path = format!("{path}.soil");
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
            layers.push(self.layer(layer, &path, bottom));
        }
        let holding = LayerFile {
            thickness: Length::from_si(f64::INFINITY).into(),
            moist: soil.moist.clone(),
            saturated: soil.saturated.clone(),
            buoyant: soil.buoyant.clone(),
            friction_angle: soil.friction_angle.clone(),
        };
        layers.push(self.layer(&holding, &path, Length::from_si(f64::INFINITY)));
        let strength = self.number(&path, soil, SoilFile::undrained_strength);
        let modulus = self.number(&path, soil, SoilFile::undrained_modulus);
        if strength.is_none() {
            let why = Complaint::advised("means nothing without the undrained strength", "add `undrained_strength`");
            self.wrong(&path, soil, SoilFile::undrained_modulus, why);
        }
        Soil {
            layers,
            surcharge: self.number(&path, soil, SoilFile::surcharge).unwrap_or_default(),
            cohesion: self.number(&path, soil, SoilFile::cohesion),
            shear_modulus: self.number(&path, soil, SoilFile::shear_modulus),
            undrained: strength.map(|strength| Undrained { strength, modulus }),
        }
    }

    fn layer(&mut self, layer: &LayerFile, path: &str, bottom: Length) -> Layer {
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
        Layer { bottom, moist, saturated: saturated.or(buoyant.map(|buoyant| buoyant + water)), friction_angle: angle }
    }
}
