//! The size of a pipe in words.

use crate::quantity::shown::plain;
use crate::quantity::{Length, Measure, Role, Shown, UnitSystem};

/// A size in the unit it was most likely written in: inches where they are whole sixteenths and the millimetres are no
/// multiple of five.
pub(super) fn as_given(size: Length) -> String {
    let whole = |number: f64| (number - number.round()).abs() < 0.01;
    let sixteenths = Shown::of(size, Role::Diameter).in_units(UnitSystem::Us).0 * 16.0;
    // 254 mm is 10 in, 300 mm is not 11.81 in.
    let inches = whole(sixteenths) && !whole(size.si() * 200.0);
    in_units(size, if inches { UnitSystem::Us } else { UnitSystem::Si })
}

/// A size in one family of units.
pub(super) fn in_units(size: Length, system: UnitSystem) -> String {
    let (value, unit) = Shown::of(size, Role::Diameter).in_units(system);
    format!("{} {unit}", plain((value * 100.0).round() / 100.0))
}
