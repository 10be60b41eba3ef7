//! Strength and weight of the clay in a stretch, as the file gives them or by its blow count and its class.

use super::vertical_stress;
use crate::drive::{Drive, Stretch};
use crate::law::{Calc, Recorder};
use crate::quantity::{Band, Length, Pressure, Ratio, UnitWeight};

/// Undrained strength of clay.
#[derive(Debug, Clone, Copy)]
pub(super) struct Strength {
    /// At the high level the weakest.
    pub(super) levels: Band<Pressure>,
    /// Not the file's own.
    pub(super) by_blows: bool,
}

/// Undrained strength of the clay in a face or below a pit; `None` where there is none. A count of a mixed face may have
/// been taken in either ground: the lesser counts.
pub(super) fn strength(drive: &Drive, stretch: &Stretch) -> Option<Strength> {
    let per_blow = drive.tip.strength_per_blow;
    let other = stretch.mixed_with.filter(|other| other.is_clay()).and(stretch.other_tip);
    if !stretch.class.is_clay() && other.is_none() {
        return None;
    }
    let blows = other.map_or(stretch.tip.blows, |other| stretch.tip.blows.with(other.blows, Ratio::min));
    // Few blows make a weak clay.
    let counted = Band { low: blows.high, likely: blows.likely, high: blows.low }.map(|blows| per_blow * blows);
    let given = stretch.soil.as_deref().and_then(|soil| soil.undrained).map(|undrained| undrained.strength);
    Some(match (given, other) {
        // More than the other clay of the face can have: it is not told of that one.
        (Some(given), Some(other)) if stretch.class.is_clay() && given > per_blow * other.blows.high => {
            Strength { levels: counted.map(|counted| counted.min(given)), by_blows: true }
        }
        (Some(given), _) => Strength { levels: Band::same(given), by_blows: false },
        (None, _) => Strength { levels: counted, by_blows: true },
    })
}

/// Mean unit weight of the ground over a depth, without the surcharge, and the surcharge: by the soil that the file
/// tells, else by class; `None` where it is not known below water.
pub(super) fn load<R: Recorder>(
    calc: &mut Calc<R>,
    stretch: &Stretch,
    depth: Length,
) -> Option<(UnitWeight, Pressure)> {
    match stretch.soil.as_deref() {
        Some(soil) => Some(((vertical_stress(calc, soil, depth)?.total - soil.surcharge) / depth, soil.surcharge)),
        None => Some((stretch.clay_weight?.value, Pressure::default())),
    }
}
