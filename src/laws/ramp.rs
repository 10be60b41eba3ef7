//! The ramp through which a string enters a pit: an S of two equal arcs, with or without a straight between them, from
//! the surface down to the depth of the bore.

use crate::law::laws;
use crate::quantity::{Angle, Length, Measure};
use core::f64::consts::FRAC_PI_2;

laws! {
    /// Length of a ramp of given radius and angle, along the ground: `x = H / tan(a) + 2 R tan(a/2)`.
    ///
    /// The two arcs alone take `2 R (1 - cos(a))` of depth. Of a shallower ramp they are cut short: [`ShortestRamp`].
    RampLength "length of a ramp" {
        /// Depth from the string on the ground to the bore.
        depth "H": Length as Depth,
        /// Radius of both arcs.
        radius "R": Length as Distance [>= 0.0],
        /// Angle of the straight between them.
        angle "a": Angle as Angle [> 0.0 < FRAC_PI_2],
    } -> Length as Distance;
    form "x = depth / tan(angle) + 2 radius tan(angle / 2)";
    from Judgement "jackpull" "geometry of two arcs and a straight";
    valid "depth at least 2 radius (1 - cos(angle)), angle above 0 and below 90 deg"
        if |v| v.depth.value >= 2.0 * v.radius.value * (1.0 - v.angle.value.cos());
    value |s| s.depth / s.angle.tan() + 2.0 * s.radius * (s.angle / 2.0).tan();

    /// Shortest ramp of a radius, two arcs that meet: `x = sqrt(H (4 R - H))`.
    ///
    /// At a depth of 2 R the arcs stand upright.
    ShortestRamp "shortest ramp" {
        /// Depth.
        depth "H": Length as Depth [>= 0.0],
        /// Radius of both arcs.
        radius "R": Length as Distance,
    } -> Length as Distance;
    form "x = sqrt(depth (4 radius - depth))";
    from Judgement "jackpull" "geometry of two arcs that meet";
    valid "depth from 0 to 2 radius"
        if |v| v.depth <= 2.0 * v.radius;
    value |s| Length::from_si((s.depth.value * (4.0 * s.radius - s.depth).value).max(0.0).sqrt());

    /// Depth that the two arcs reach within a length: `H = 2 R - sqrt(4 R² - x²)`, the inverse of [`ShortestRamp`].
    RampDepth "depth of a ramp" {
        /// Length of the ramp.
        length "x": Length as Distance [>= 0.0],
        /// Radius of both arcs.
        radius "R": Length as Distance,
    } -> Length as Depth;
    form "H = 2 radius - sqrt(4 radius^2 - length^2)";
    from Judgement "jackpull" "geometry of two arcs that meet, solved for the depth";
    valid "length from 0 to 2 radius"
        if |v| v.length <= 2.0 * v.radius;
    value |s| {
        let across = 2.0 * s.radius.value;
        // x² / (2 R + sqrt(4 R² - x²)): the same, without the difference of two near numbers.
        let left = (across * across - s.length.value * s.length.value).max(0.0).sqrt();
        let whole = across + left;
        Length::from_si(if whole > 0.0 { s.length.value * s.length.value / whole } else { 0.0 })
    };
}
