//! The soil that holds the pipe and the layers over it.

use super::Resolver;
use crate::drive::{Layer, Soil, Undrained};
use crate::drive_file::{OrNone, SoilFile};
use crate::laws::soil::WATER_UNIT_WEIGHT;
use crate::quantity::{Angle, Length, Measure, Pressure, Role, Shown, UnitWeight};
use crate::yaml::{Complaint, Field};

/// Most layers over a pipe; a borehole log has a dozen.
const MOST_LAYERS: usize = 100;
/// Largest friction angle, rad: 50 deg is dense crushed rock.
const STEEPEST_FRICTION: f64 = 0.9;
/// A saturated and a buoyant unit weight that are both given agree within this, N/m³.
const AGREEMENT: f64 = 100.0;

/// The unit weights and the friction angle of a layer as written.
struct Written<'a> {
    moist: &'a Field<UnitWeight>,
    saturated: Option<&'a Field<UnitWeight>>,
    buoyant: Option<&'a Field<UnitWeight>>,
    friction_angle: &'a Field<Angle>,
}

impl Resolver<'_> {
    pub(super) fn soil(
        &mut self,
        soil: &SoilFile,
        path: &str,
        depths: (Length, Length),
        largest: Length,
        water: &Field<OrNone<Length>>,
    ) -> Soil {
        let path = format!("{path}.soil");
        let mut layers = Vec::new();
        let mut bottom = Length::default();
        if let Some(one_too_many) = soil.layers.get(MOST_LAYERS) {
            let message = format!("more than {MOST_LAYERS} layers");
            self.flaw(&one_too_many.thickness, &format!("{path}.layers[{MOST_LAYERS}]"), message);
        }
        for (index, layer) in soil.layers.iter().take(MOST_LAYERS).enumerate() {
            let path = format!("{path}.layers[{index}]");
            bottom += self.positive(&layer.thickness, &format!("{path}.thickness"), Role::Depth);
            let crown = depths.0 - largest;
            if bottom > crown {
                let read = Shown::of(bottom, Role::Depth).display(self.system).to_string();
                let message = format!("reaches down to {read}, below the crown of the pipe in the shallowest place");
                let complaint = Complaint::from(message).advise("what holds the pipe is the soil itself, not a layer");
                self.flaw(&layer.thickness, &format!("{path}.thickness"), complaint);
            }
            let written = Written {
                moist: &layer.moist,
                saturated: layer.saturated.as_ref(),
                buoyant: layer.buoyant.as_ref(),
                friction_angle: &layer.friction_angle,
            };
            layers.push(self.layer(&written, &path, bottom));
        }
        let written = Written {
            moist: &soil.moist,
            saturated: soil.saturated.as_ref(),
            buoyant: soil.buoyant.as_ref(),
            friction_angle: &soil.friction_angle,
        };
        layers.push(self.layer(&written, &path, Length::from_si(f64::INFINITY)));
        let strength = soil.undrained_strength.as_ref();
        let strength =
            strength.map(|field| self.positive(field, &format!("{path}.undrained_strength"), Role::UnitFriction));
        let modulus = soil.undrained_modulus.as_ref().map(|field| {
            if strength.is_none() {
                let complaint = Complaint::from("means nothing without the undrained strength");
                self.flaw(field, &format!("{path}.undrained_modulus"), complaint.advise("add `undrained_strength`"));
            }
            self.positive(field, &format!("{path}.undrained_modulus"), Role::Modulus)
        });
        Soil {
            layers,
            surcharge: soil.surcharge.as_ref().map_or(Pressure::default(), |field| {
                self.not_negative(field, &format!("{path}.surcharge"), Role::UnitFriction)
            }),
            depths,
            path: Vec::new(),
            water_depth: match water.value {
                OrNone::Some(depth) => Some(depth),
                OrNone::None => None,
            },
            cohesion: soil
                .cohesion
                .as_ref()
                .map(|field| self.not_negative(field, &format!("{path}.cohesion"), Role::UnitFriction)),
            shear_modulus: soil
                .shear_modulus
                .as_ref()
                .map(|field| self.positive(field, &format!("{path}.shear_modulus"), Role::Modulus)),
            undrained: strength.map(|strength| Undrained { strength, modulus }),
        }
    }

    fn layer(&mut self, written: &Written<'_>, path: &str, bottom: Length) -> Layer {
        let moist = self.positive(written.moist, &format!("{path}.moist"), Role::UnitWeight);
        let saturated =
            written.saturated.map(|field| self.positive(field, &format!("{path}.saturated"), Role::UnitWeight));
        if let (Some(field), Some(saturated)) = (written.saturated, saturated)
            && saturated < moist
        {
            let complaint = Complaint::from("is less than the moist unit weight");
            let complaint = complaint.advise("the saturated unit weight holds the water; write the other as `buoyant`");
            self.flaw(field, &format!("{path}.saturated"), complaint);
        }
        let water = UnitWeight::from_si(WATER_UNIT_WEIGHT);
        let buoyant = written.buoyant.map(|field| {
            let buoyant = self.positive(field, &format!("{path}.buoyant"), Role::UnitWeight);
            let agrees = saturated.is_none_or(|saturated| (saturated - water - buoyant).si().abs() <= AGREEMENT);
            if !agrees {
                let complaint = Complaint::from("is not the saturated unit weight less that of water");
                self.flaw(field, &format!("{path}.buoyant"), complaint.advise("give one of the two"));
            } else if buoyant >= moist {
                let complaint = Complaint::from("is no less than the moist unit weight");
                let complaint = complaint.advise("the buoyant unit weight leaves out the water; see `saturated`");
                self.flaw(field, &format!("{path}.buoyant"), complaint);
            }
            buoyant
        });
        let angle = written.friction_angle.value;
        if !(angle.si() >= 0.0 && angle.si() < STEEPEST_FRICTION) {
            let complaint = Complaint::from("expected a friction angle from 0 deg to 50 deg");
            let complaint = complaint.advise("write for example \"32 deg\"");
            self.flaw(written.friction_angle, &format!("{path}.friction_angle"), complaint);
        }
        Layer { bottom, moist, saturated: saturated.or(buoyant.map(|buoyant| buoyant + water)), friction_angle: angle }
    }
}
