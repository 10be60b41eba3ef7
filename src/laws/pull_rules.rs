//! Short rules for a pull: a collapsed bore, and the smaller of two bores.

use crate::law::law;
use crate::quantity::{Force, Length, Ratio, UnitWeight};
use crate::source::{Equation, Mark};
use core::f64::consts::PI;

law! {
    /// Pull against ground that has fallen on the pipe, an upper bound: the full column of soil on the whole
    /// circumference, `T = gamma d pi D L mu`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` of the soil | force per volume |
    /// | d | `cover` | length |
    /// | D | `outside_diameter` | length |
    /// | L | `collapsed_length` | length |
    /// | mu | `friction` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION), written for pipe bursting over the whole length.
    /// **Valid for** a length that the engineer names as collapsed. The planning guide beside it keeps a ninth of this
    /// and could not be read in full, so it is not offered.
    GroundLoadPull {
        /// Unit weight of the soil.
        unit_weight: UnitWeight as UnitWeight,
        /// Depth of cover.
        cover: Length as Depth,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Length over which the bore has collapsed.
        collapsed_length: Length as Distance,
        /// Friction of the pipe in soil.
        friction: Ratio as Ratio,
    } -> Force as Pull
    { Equation {
        name: "pull in a collapsed bore, upper bound",
        form: "T = unit_weight cover pi outside_diameter collapsed_length friction",
        source: "ttp_2010",
        locator: "eq. 6.3, p. 270",
        mark: Mark::Published,
        valid: "no argument negative",
    } }
    valid |v| v.unit_weight.value >= 0.0
        && v.cover.value >= 0.0
        && v.outside_diameter.value >= 0.0
        && v.collapsed_length.value >= 0.0
        && v.friction.value >= 0.0;
    value |s| s.unit_weight * s.cover * (PI * s.outside_diameter * s.collapsed_length) * s.friction;
}

law! {
    /// Final bore by the lesser of two rules: `D_b = min(k D, D + a)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` (of pipe or coupling, the larger) | length |
    /// | k | `times` | ratio |
    /// | a | `plus` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION): 1.5 and 12 in. **Valid for** k of at least 1. Below 8
    /// in it keeps the city's 1.5 times, where the guidelines' pipe plus 4 in does not; above 24 in both agree.
    LesserBore {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Multiple of the outside diameter.
        times: Ratio as Ratio,
        /// Added to the outside diameter.
        plus: Length as Diameter,
    } -> Length as Diameter
    { Equation {
        name: "final bore, lesser of two rules",
        form: "D_b = min(times outside_diameter, outside_diameter + plus)",
        source: "asce_mop_108",
        locator: "bore diameter, lesser of 1.5 times the pipe and the pipe plus 12 in",
        mark: Mark::Memory,
        valid: "multiple at least 1, addition not negative",
    } }
    valid |v| v.times.value >= 1.0 && v.plus.value >= 0.0;
    value |s| {
        let (one, other) = (s.times * s.outside_diameter, s.outside_diameter + s.plus);
        if one < other { one } else { other }
    };
}
