//! The ramp through which a string enters a pit: an S of two equal arcs, with or without a straight between them, from
//! the surface down to the depth of the bore.

use crate::law::law;
use crate::quantity::{Angle, Length, Measure};
use crate::source::{Equation, Mark};
use core::f64::consts::FRAC_PI_2;

law! {
    /// Length of a ramp of given radius and angle, along the ground: `x = H / tan(a) + 2 R tan(a/2)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `depth` | length |
    /// | R | `radius` | length |
    /// | a | `angle` of the straight between the arcs | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** depths of at least `2 R (1 - cos(a))`,
    /// which the two arcs take alone, and angles above 0 and below 90 deg. Of a shallower ramp the arcs are cut short:
    /// [`ShortestRamp`].
    RampLength {
        /// Depth from the string on the ground to the bore.
        depth: Length as Depth,
        /// Radius of both arcs.
        radius: Length as Distance,
        /// Angle of the straight between them.
        angle: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "length of a ramp",
        form: "x = depth / tan(angle) + 2 radius tan(angle / 2)",
        source: "jackpull",
        locator: "geometry of two arcs and a straight",
        mark: Mark::Judgement,
        valid: "depth at least 2 radius (1 - cos(angle)), angle above 0 and below 90 deg",
    } }
    valid |v| v.angle.value > 0.0
        && v.angle.value < FRAC_PI_2
        && v.radius.value >= 0.0
        && v.depth.value >= 2.0 * v.radius.value * (1.0 - v.angle.value.cos());
    value |s| s.depth / s.angle.tan() + 2.0 * s.radius * (s.angle / 2.0).tan();
}

law! {
    /// Shortest ramp of a radius, two arcs that meet: `x = sqrt(H (4 R - H))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `depth` | length |
    /// | R | `radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** depths up to 2 R, where the arcs stand
    /// upright.
    ShortestRamp {
        /// Depth.
        depth: Length as Depth,
        /// Radius of both arcs.
        radius: Length as Distance,
    } -> Length as Distance
    { Equation {
        name: "shortest ramp",
        form: "x = sqrt(depth (4 radius - depth))",
        source: "jackpull",
        locator: "geometry of two arcs that meet",
        mark: Mark::Judgement,
        valid: "depth from 0 to 2 radius",
    } }
    valid |v| v.depth.value >= 0.0 && v.depth <= 2.0 * v.radius;
    value |s| Length::from_si((s.depth.value * (4.0 * s.radius - s.depth).value).max(0.0).sqrt());
}

law! {
    /// Depth that the two arcs reach within a length: `H = 2 R - sqrt(4 R² - x²)`, the inverse of [`ShortestRamp`].
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | x | `length` | length |
    /// | R | `radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** lengths up to 2 R.
    RampDepth {
        /// Length of the ramp.
        length: Length as Distance,
        /// Radius of both arcs.
        radius: Length as Distance,
    } -> Length as Depth
    { Equation {
        name: "depth of a ramp",
        form: "H = 2 radius - sqrt(4 radius^2 - length^2)",
        source: "jackpull",
        locator: "geometry of two arcs that meet, solved for the depth",
        mark: Mark::Judgement,
        valid: "length from 0 to 2 radius",
    } }
    valid |v| v.length.value >= 0.0 && v.length <= 2.0 * v.radius;
    value |s| {
        let across = 2.0 * s.radius.value;
        // x² / (2 R + sqrt(4 R² - x²)): the same, without the difference of two near numbers.
        let left = (across * across - s.length.value * s.length.value).max(0.0).sqrt();
        let whole = across + left;
        Length::from_si(if whole > 0.0 { s.length.value * s.length.value / whole } else { 0.0 })
    };
}
