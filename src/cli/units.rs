//! Units of the output, and the family of units that a drive file is written in.

use crate::quantity::UnitSystem;
use clap::ValueEnum;

/// Units of the output.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(super) enum Units {
    /// Metres, kilonewtons, kilopascals.
    Si,
    /// Feet, kips of 1,000 lbf, pounds per square inch.
    Us,
}

impl Units {
    /// Which of both is meant.
    pub(super) const fn of<T: Copy>(self, [si, us]: [T; 2]) -> T {
        match self {
            Self::Si => si,
            Self::Us => us,
        }
    }
}

impl From<Units> for UnitSystem {
    fn from(units: Units) -> Self {
        units.of([Self::Si, Self::Us])
    }
}

/// That of the length of the drive; SI where it does not tell.
pub(super) fn of(text: &str) -> UnitSystem {
    let length = text.lines().find_map(|line| line.strip_prefix("length:")).unwrap_or_default();
    let length = length.split('#').next().unwrap_or_default().trim().trim_matches(['"', '\'']);
    let unit = length.trim_start_matches(|c: char| !c.is_ascii_alphabetic());
    if matches!(unit, "ft" | "in" | "yd" | "mi") { UnitSystem::Us } else { UnitSystem::Si }
}
