//! Unit friction by published models, shown beside the band and never used for capacity: in the measured drives no
//! pressure explains any of the scatter, and dividing by one widens it. Each model is a named set; the coefficients
//! belong to the set and to no other. A model that rests on depth gives the exact mean over its stretch; one that cannot
//! stands for the deepest place, and says so.

mod along;
mod clay;
mod code;
mod place;
mod silo;
mod total;

pub use place::{FrictionModel, Over, SoilView};
pub use total::{ModelForce, model_forces};

use crate::conditions::vertical_stress;
use crate::drive::{Drive, Pipe};
use crate::handbook::HandbookError;
use crate::law::Calc;
use crate::quantity::Length;
use place::{Coefficients, Place};

/// The models of every stretch whose soil the file tells.
///
/// # Errors
/// If the table of coefficients is malformed or lacks a row.
pub fn friction_models(drive: &Drive, pipe: &Pipe) -> Result<Vec<SoilView>, HandbookError> {
    let coefficients = Coefficients::of(drive)?;
    let mut views = Vec::new();
    for (stretch, ground) in drive.stretches.iter().enumerate() {
        let Some(at) = ground.told() else { continue };
        let diameter = pipe.outside_diameter.value;
        let crown = (ground.way.deepest - diameter).max(Length::default());
        let pieces = along::pieces(at.soil, &ground.way.points, diameter);
        let weight = pipe.jacked_weight();
        let place = Place { drive, ground, soil: at.soil, pipe, diameter, pieces, weight, coefficients: &coefficients };
        let calc = &mut Calc::silent();
        let (mut models, mut notes) = (Vec::new(), Vec::new());
        notes.extend(ground.mixed_with.map(|_| MIXED));
        silo::models(calc, &place, &mut models);
        clay::models(calc, &place, &mut models, &mut notes)?;
        code::models(&place, &mut models, &mut notes)?;
        views.push(SoilView { stretch, at_crown: vertical_stress(calc, at, crown), models, notes });
    }
    Ok(views)
}

/// Said of a mixed face.
const MIXED: &str = "a mixed face: the models of both its grounds are shown, each with the one soil that the file gives \
                     for the stretch";
