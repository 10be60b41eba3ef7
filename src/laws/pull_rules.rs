//! Short rules for a pull: a collapsed bore, and the smaller of two bores.

use crate::law::laws;
use crate::quantity::{Force, Length, Ratio, UnitWeight};
use core::f64::consts::PI;

laws! {
    /// Pull against ground that has fallen on the pipe, an upper bound: the full column of soil on the whole
    /// circumference, `T = gamma d pi D L mu`.
    ///
    /// Written for pipe bursting over the whole length. For a length that the engineer names as collapsed. The planning
    /// guide beside it keeps a ninth of this and could not be read in full, so it is not offered.
    GroundLoadPull "pull in a collapsed bore, upper bound" {
        /// Unit weight of the soil.
        unit_weight "gamma": UnitWeight as UnitWeight [>= 0.0],
        /// Depth of cover.
        cover "d": Length as Depth [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [>= 0.0],
        /// Length over which the bore has collapsed.
        collapsed_length "L": Length as Distance [>= 0.0],
        /// Friction of the pipe in soil.
        friction "mu": Ratio as Ratio [>= 0.0],
    } -> Force as Pull;
    form "T = unit_weight cover pi outside_diameter collapsed_length friction";
    from Published "ttp_2010" "eq. 6.3, p. 270";
    valid "no argument negative";
    value |s| s.unit_weight * s.cover * (PI * s.outside_diameter * s.collapsed_length) * s.friction;

    /// Final bore by the lesser of two rules: `D_b = min(k D, D + a)`.
    ///
    /// k is 1.5 and a 12 in. Below 8 in it keeps the city's 1.5 times, where the guidelines' pipe plus 4 in does not;
    /// above 24 in both agree.
    LesserBore "final bore, lesser of two rules" {
        /// Outside diameter (of pipe or coupling, the larger).
        outside_diameter "D": Length as Diameter,
        /// Multiple of the outside diameter.
        times "k": Ratio as Ratio [>= 1.0],
        /// Added to the outside diameter.
        plus "a": Length as Diameter [>= 0.0],
    } -> Length as Diameter;
    form "D_b = min(times outside_diameter, outside_diameter + plus)";
    from Memory "asce_mop_108" "bore diameter, lesser of 1.5 times the pipe and the pipe plus 12 in";
    valid "multiple at least 1, addition not negative";
    value |s| {
        let (one, other) = (s.times * s.outside_diameter, s.outside_diameter + s.plus);
        if one < other { one } else { other }
    };
}
