//! Unit friction by the tables of codes and guides, for the ground as it is classed here. Of a mixed face the worse of both
//! grounds counts, at each level.

use super::place::{FrictionModel, Over, Place};
use crate::handbook::{Family, GroundClass, HandbookError, Lubrication};
use crate::quantity::{Band, Pressure};

const ONE_ONLY: &str = "the table of unit friction has no row for one of the grounds of this mixed face: it speaks of the \
                        other alone";

/// Which of the pipes of the Chinese table.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Surface {
    Concrete,
    Steel,
}

pub(super) fn models(
    place: &Place<'_>,
    models: &mut Vec<FrictionModel>,
    notes: &mut Vec<&'static str>,
) -> Result<(), HandbookError> {
    // What is neither takes the rows of concrete, which are no lower.
    let surface = if place.pipe.family == Family::Steel { Surface::Steel } else { Surface::Concrete };
    let mut worst: Option<Band<Pressure>> = None;
    let mut without_row = false;
    for class in place.classes() {
        let rows = if place.is_lubricated() { slurried(class, surface) } else { dry(place, class) };
        let Some(band) = band(place, rows)? else {
            without_row = true;
            continue;
        };
        worst = Some(worst.map_or(band, |worst| worst.or_harder(band)));
    }
    if let Some(friction) = worst {
        if without_row {
            notes.push(ONE_ONLY);
        }
        let (name, note) = names(place.is_lubricated(), surface);
        models.push(FrictionModel { name, over: Over::Any, friction, in_range: true, note });
    }
    if place.drive.lubrication == Lubrication::Logged {
        models.extend(sleeve(place, surface)?);
    }
    Ok(())
}

const fn names(is_lubricated: bool, surface: Surface) -> (&'static str, &'static str) {
    let slurry = "recalled; holds with thixotropic slurry kept round the pipe only";
    match (is_lubricated, surface) {
        (true, Surface::Concrete) => ("GB 50268 table, concrete pipe", slurry),
        (true, Surface::Steel) => ("GB 50268 table, steel pipe", slurry),
        (false, _) => (
            "contractors' table of the United Kingdom",
            "recalled; from large drives, mostly hand-dug, without lubricant",
        ),
    }
}

/// The note under the Chinese table, where the log of a drive shows that its sleeve is kept.
fn sleeve(place: &Place<'_>, surface: Surface) -> Result<Option<FrictionModel>, HandbookError> {
    let (row, name) = match surface {
        Surface::Concrete => ("gb_sleeve_concrete", "GB 50268, full sleeve of slurry, concrete pipe"),
        Surface::Steel => ("gb_sleeve_steel", "GB 50268, full sleeve of slurry, steel pipe"),
    };
    let note = "recalled; only while a stable sleeve is kept over the whole length, which the log must show";
    let model = |friction| FrictionModel { name, over: Over::Any, friction, in_range: true, note };
    Ok(band(place, &[row])?.map(model))
}

/// All of the rows together; none where there are none.
fn band(place: &Place<'_>, rows: &[&'static str]) -> Result<Option<Band<Pressure>>, HandbookError> {
    let table = place.drive.handbook.unit_friction_published()?;
    let mut range: Option<Band<Pressure>> = None;
    for key in rows {
        let row = table.row(key)?.value;
        let high = row.high.value;
        // A row printed as "up to" has no low end.
        let low = row.low.as_ref().map_or(Pressure::default(), |low| low.value);
        let row = Band { low, likely: (low + high) / 2.0, high };
        range = Some(range.map_or(row, |range| range.or_harder(row)));
    }
    Ok(range)
}

/// Rows of the Chinese code. A class of ours that lies in two of its rows takes both.
const fn slurried(class: GroundClass, surface: Surface) -> &'static [&'static str] {
    let (clay, silt, sand): (&[&str], &[&str], &[&str]) = match surface {
        Surface::Concrete => {
            (&["gb_clay_concrete"], &["gb_silt_concrete"], &["gb_fine_sand_concrete", "gb_coarse_sand_concrete"])
        }
        Surface::Steel => (&["gb_clay_steel"], &["gb_silt_steel"], &["gb_fine_sand_steel", "gb_coarse_sand_steel"]),
    };
    match class {
        GroundClass::SoftClay | GroundClass::FirmToVeryStiffClay | GroundClass::HardClay => clay,
        GroundClass::Silt => silt,
        GroundClass::LooseSand | GroundClass::MediumToDenseSand => sand,
        GroundClass::Gravel
        | GroundClass::Fill
        | GroundClass::WeakRock
        | GroundClass::HardRock
        | GroundClass::Peat
        | GroundClass::Unknown => &[],
    }
}

/// Rows of the contractors' table. It has none for soft clay, for dense dry sand and for gravel.
fn dry(place: &Place<'_>, class: GroundClass) -> &'static [&'static str] {
    match class {
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
