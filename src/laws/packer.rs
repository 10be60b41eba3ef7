//! The packer in a jacking joint, and the middle part of the ring where a force leaves all of it pressed.

use crate::law::law;
use crate::quantity::{Area, Length, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::FRAC_PI_4;

law! {
    /// Area of a ring, of a packer or of a plain pipe end: `A = (pi/4) (D² - d²)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= d < D. The barrel of a pipe is not
    /// its end: where the joint is recessed the end bears on less.
    RingArea {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Inside diameter.
        inside_diameter: Length as Diameter,
    } -> Area as Area
    { Equation {
        name: "area of a ring",
        form: "A = (pi/4) (outside_diameter^2 - inside_diameter^2)",
        source: "jackpull",
        locator: "geometry of a ring",
        mark: Mark::Judgement,
        valid: "inside diameter not negative and below the outside diameter",
    } }
    valid |v| v.inside_diameter.value >= 0.0 && v.outside_diameter > v.inside_diameter;
    value |s| (s.outside_diameter - s.inside_diameter) * (s.outside_diameter + s.inside_diameter) * FRAC_PI_4;
}

law! {
    /// Thickness of a packer after it is crushed: `a = q a0`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | a0 | `thickness` (as fitted) | length |
    /// | q | `residual` (crushed over fitted) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 < q <= 1.
    ResidualThickness {
        /// Thickness as fitted.
        thickness: Length as Wall,
        /// Crushed over fitted thickness.
        residual: Ratio as Ratio,
    } -> Length as Wall
    { Equation {
        name: "thickness of the crushed packer",
        form: "a = residual thickness",
        source: "jackpull",
        locator: "table packer_residual",
        mark: Mark::Judgement,
        valid: "thickness positive, residual above 0 and at most 1",
    } }
    valid |v| v.thickness.value > 0.0 && v.residual.value > 0.0 && v.residual.value <= 1.0;
    value |s| s.thickness * s.residual;
}

law! {
    /// Greatest offset of the force at which the whole ring stays pressed: `e = (D² + d²) / (8 D)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= d < D. For the jacks and the thrust
    /// ring as well as for the joint.
    KernRadius {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Inside diameter.
        inside_diameter: Length as Diameter,
    } -> Length as Diameter
    { Equation {
        name: "kern of a ring",
        form: "e = (outside_diameter^2 + inside_diameter^2) / (8 outside_diameter)",
        source: "jackpull",
        locator: "statics of a ring",
        mark: Mark::Judgement,
        valid: "inside diameter not negative and below the outside diameter",
    } }
    valid |v| v.inside_diameter.value >= 0.0 && v.outside_diameter > v.inside_diameter;
    value |s| {
        let (outside, inside) = (s.outside_diameter, s.inside_diameter);
        (outside * outside + inside * inside) / (8.0 * outside)
    };
}
