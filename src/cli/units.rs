//! The family of units that a drive file is written in.

use crate::quantity::UnitSystem;

/// That of the length of the drive; SI where it does not tell.
pub(super) fn of(text: &str) -> UnitSystem {
    let length = text.lines().find_map(|line| line.strip_prefix("length:")).unwrap_or_default();
    let length = length.split('#').next().unwrap_or_default().trim().trim_matches(['"', '\'']);
    let unit = length.trim_start_matches(|c: char| !c.is_ascii_alphabetic());
    if matches!(unit, "ft" | "in" | "yd" | "mi") { UnitSystem::Us } else { UnitSystem::Si }
}
