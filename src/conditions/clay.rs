//! Strength and weight of the clay in a stretch, as the file gives them or by its blow count and its class.

use super::stress::vertical_stress;
use crate::drive::{Drive, Stretch};
use crate::law::{Calc, Recorder};
use crate::quantity::{Band, Length, Pressure, Ratio, UnitWeight};

/// Undrained strength of clay.
#[derive(Debug, Clone, Copy)]
pub(super) struct Strength {
    /// At the high level the weakest.
    pub(super) levels: Band<Pressure>,
    pub(super) told: Told,
}

/// What tells a strength.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Told {
    /// The file.
    Given,
    /// The blow count.
    Blows,
    /// The blow count of the weaker of two clays: the file's own strength is more than that one can have.
    OtherClay,
}

impl Told {
    /// The note of a check, by what tells its strength.
    pub(super) const fn note(self, [given, blows, other]: [&'static str; 3]) -> &'static str {
        match self {
            Self::Given => given,
            Self::Blows => blows,
            Self::OtherClay => other,
        }
    }
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
        // The strength of one clay says nothing of another that cannot have as much.
        (Some(given), Some(other)) if stretch.class.is_clay() && given > per_blow * other.blows.high => {
            Strength { levels: counted.map(|counted| counted.min(given)), told: Told::OtherClay }
        }
        (Some(given), _) => Strength { levels: Band::same(given), told: Told::Given },
        (None, _) => Strength { levels: counted, told: Told::Blows },
    })
}

/// Mean unit weight of the ground over a depth, without the surcharge, and the surcharge: by the soil that the file
/// tells, else by class; `None` where it is not known below water.
pub(super) fn load<R: Recorder>(
    calc: &mut Calc<R>,
    stretch: &Stretch,
    depth: Length,
) -> Option<(UnitWeight, Pressure)> {
    match stretch.column() {
        Some(at) => {
            let surcharge = at.soil.surcharge;
            Some(((vertical_stress(calc, at, depth)?.total - surcharge) / depth, surcharge))
        }
        None => Some((stretch.clay_weight?.value, Pressure::default())),
    }
}
