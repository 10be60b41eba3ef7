//! The bed that the ground gives the stem between the pits: clay by its strength, sand by depth and density, and what no
//! source tells of as clay of the same count.

use crate::check::Draft;
use crate::drive::{Drive, Pipe, SandBed, Stretch, Tip, Tube};
use crate::handbook::GroundClass;
use crate::law::Calc;
use crate::laws::stem::{BeddingInClay, BeddingInSand};
use crate::quantity::{Band, Length, Pressure, Ratio};

const KNOWN: &str = "the lesser of the free length in the pit and the bedded length along the drive: clay by its \
    strength, sand and gravel by depth and blow count, as under water where any stands above the invert";
const STAND_IN: &str = "the lesser of the free length in the pit and the bedded length along the drive; no source \
    gives the bed of silt, fill and unknown ground: treated as clay of the same blow count";
const PEAT: &str = "no source gives the bed of peat: treated as clay of the same blow count, and with care at best";

/// What holds the stem in a ground.
#[derive(Clone, Copy, PartialEq)]
enum Bed {
    Clay,
    /// As clay of the same count.
    StandIn,
    Peat,
    Sand,
    /// Rock holds it.
    Rock,
}

const fn bed(class: GroundClass) -> Bed {
    match class {
        GroundClass::SoftClay | GroundClass::FirmToVeryStiffClay | GroundClass::HardClay => Bed::Clay,
        GroundClass::LooseSand | GroundClass::MediumToDenseSand | GroundClass::Gravel => Bed::Sand,
        GroundClass::Silt | GroundClass::Fill | GroundClass::Unknown => Bed::StandIn,
        GroundClass::Peat => Bed::Peat,
        GroundClass::WeakRock | GroundClass::HardRock => Bed::Rock,
    }
}

/// Both grounds of the face of a stretch. A count that is told was driven in both, where the other may have it.
fn grounds(stretch: &Stretch) -> impl Iterator<Item = (GroundClass, Tip)> {
    let Tip { blows: told, .. } = stretch.tip;
    let other = stretch.other_tip.map(|other| {
        let is_told = !stretch.tip.hangs() && other.blows.low <= told.low && told.high <= other.blows.high;
        if is_told { Tip { blows: told, ..other } } else { other }
    });
    [Some((stretch.class, stretch.tip)), stretch.mixed_with.zip(other)].into_iter().flatten()
}

/// Whether the bed hangs on a count that nobody tells.
pub(super) fn hangs(drive: &Drive) -> bool {
    let open = |(class, tip): (GroundClass, Tip)| bed(class) != Bed::Rock && tip.strength.is_none() && tip.hangs();
    drive.stretches.iter().flat_map(grounds).any(open)
}

/// The check with what a reader must know of its bed.
pub(super) fn noted(check: Draft, drive: &Drive) -> Draft {
    let any = |kind| drive.stretches.iter().flat_map(grounds).any(|(class, _)| bed(class) == kind);
    if any(Bed::Peat) {
        check.as_caution(PEAT)
    } else if any(Bed::StandIn) {
        check.with_note(STAND_IN)
    } else {
        check.with_note(KNOWN)
    }
}

/// Modulus of the softest bed along the drive, at the level of the force that it has to hold: the softest is at the high
/// one.
pub(super) fn softest(calc: &mut Calc, drive: &Drive, pipe: &Pipe, tube: &Tube) -> Option<Band<Pressure>> {
    let mut least: Option<Band<Pressure>> = None;
    for stretch in &drive.stretches {
        for (class, tip) in grounds(stretch) {
            let modulus = match bed(class) {
                Bed::Clay | Bed::StandIn | Bed::Peat => in_clay(calc, drive, tube, tip),
                Bed::Sand => in_sand(calc, stretch, pipe, tube, tip),
                Bed::Rock => continue,
            };
            least = Some(least.map_or(modulus, |least| least.with(modulus, Pressure::min)));
        }
    }
    least
}

/// By the count, and where the file gives the strength as given, at the high level no more than by the count.
fn in_clay(calc: &mut Calc, drive: &Drive, tube: &Tube, tip: Tip) -> Band<Pressure> {
    let by_blows = tip.blows.map(|blows| drive.tip.strength_per_blow * blows);
    let strength = match tip.strength {
        Some(given) => Band { low: given.max(by_blows.high), likely: given, high: given.min(by_blows.low) },
        None => Band { low: by_blows.high, likely: by_blows.likely, high: by_blows.low },
    };
    let bedding_per_strength = tube.bedding_per_strength;
    strength.map(|strength| calc.law(BeddingInClay { bedding_per_strength, strength }))
}

/// At the least depth of the axis; at the high level by the low end of the range of the constant.
fn in_sand(calc: &mut Calc, stretch: &Stretch, pipe: &Pipe, tube: &Tube, tip: Tip) -> Band<Pressure> {
    let depth = (stretch.way.shallowest - pipe.outside_diameter.value / 2.0).max(Length::default());
    let [loose, ..] = tube.sand;
    let mut at = |blows: Ratio, least: bool| {
        let row = of_density(&tube.sand, blows);
        let value = if stretch.way.is_wet() { row.submerged } else { row.moist };
        let per_depth = if least { value * row.low_share } else { value };
        calc.law(BeddingInSand { per_depth, depth, blows, blows_loose: loose.blows_from })
    };
    Band { low: at(tip.blows.high, false), likely: at(tip.blows.likely, false), high: at(tip.blows.low, true) }
}

/// The densest row that begins at no more than the count; the loosest for what is looser still.
fn of_density(rows: &[SandBed; 3], blows: Ratio) -> SandBed {
    let [loose, ..] = *rows;
    rows.iter().rev().find(|row| row.blows_from <= blows).copied().unwrap_or(loose)
}
