//! Unit friction by the tables of codes and guides, for the ground as it is classed here.

use super::{FrictionModel, Over, Place};
use crate::handbook::{GroundClass, HandbookError};
use crate::quantity::{Band, Pressure};

pub(super) fn models(place: &Place<'_>, models: &mut Vec<FrictionModel>) -> Result<(), HandbookError> {
    let rows = if place.is_lubricated() { slurried(place.ground.class) } else { dry(place) };
    let table = place.drive.handbook.unit_friction_published()?;
    let mut range: Option<Band<Pressure>> = None;
    for key in rows {
        let missing = || HandbookError::NoRow { table: "unit_friction_published", wanted: (*key).to_owned() };
        let row = table.get(key).ok_or_else(missing)?.value;
        let high = row.high.value;
        // A row printed as "up to" has no low end.
        let low = row.low.as_ref().map_or(Pressure::default(), |low| low.value);
        let row = Band { low, likely: (low + high) / 2.0, high };
        // The middle of the harder row: the middle of the whole range would lie below it.
        range = Some(range.map_or(row, |range| Band {
            low: range.low.min(low),
            likely: range.likely.max(row.likely),
            high: range.high.max(high),
        }));
    }
    let Some(friction) = range else { return Ok(()) };
    let (name, note) = if place.is_lubricated() {
        ("GB 50268 table, concrete pipe", "recalled; holds with thixotropic slurry kept round the pipe only")
    } else {
        ("contractors' table of the United Kingdom", "recalled; from large drives, mostly hand-dug, without lubricant")
    };
    models.push(FrictionModel { name, over: Over::Any, friction, in_range: true, note });
    Ok(())
}

/// Rows of the Chinese code. A class of ours that lies in two of its rows takes both.
const fn slurried(class: GroundClass) -> &'static [&'static str] {
    match class {
        GroundClass::SoftClay | GroundClass::FirmToVeryStiffClay | GroundClass::HardClay => &["gb_clay_concrete"],
        GroundClass::Silt => &["gb_silt_concrete"],
        GroundClass::LooseSand | GroundClass::MediumToDenseSand => {
            &["gb_fine_sand_concrete", "gb_coarse_sand_concrete"]
        }
        GroundClass::Gravel
        | GroundClass::Fill
        | GroundClass::WeakRock
        | GroundClass::HardRock
        | GroundClass::Peat
        | GroundClass::Unknown => &[],
    }
}

/// Rows of the contractors' table. It has none for soft clay, for dense dry sand and for gravel.
fn dry(place: &Place<'_>) -> &'static [&'static str] {
    match place.ground.class {
        GroundClass::FirmToVeryStiffClay => &["uk_firm_clay"],
        GroundClass::HardClay => &["uk_boulder_clay"],
        GroundClass::Silt => &["uk_silt"],
        // Dry sand holds a pipe harder than wet sand: where water rises into part of the stretch both rows count, and
        // dense dry sand has none.
        GroundClass::LooseSand if place.is_wet() && place.is_partly_dry() => &["uk_dry_loose_sand", "uk_wet_sand"],
        GroundClass::LooseSand if !place.is_wet() => &["uk_dry_loose_sand"],
        GroundClass::LooseSand | GroundClass::MediumToDenseSand if !place.is_partly_dry() => &["uk_wet_sand"],
        GroundClass::Fill => &["uk_fill"],
        _ => &[],
    }
}
