//! The packer in a jacking joint, and the middle part of the ring where a force leaves all of it pressed.

use crate::law::laws;
use crate::quantity::{Area, Length, Ratio};
use core::f64::consts::FRAC_PI_4;

laws! {
    /// Area of a ring, of a packer or of a plain pipe end: `A = (pi/4) (D² - d²)`.
    ///
    /// The barrel of a pipe is not its end: where the joint is recessed the end bears on less.
    RingArea "area of a ring" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Inside diameter.
        inside_diameter "d": Length as Diameter,
    } -> Area as Area;
    form "A = (pi/4) (outside_diameter^2 - inside_diameter^2)";
    from Judgement "jackpull" "geometry of a ring";
    valid "inside diameter not negative and below the outside diameter"
        if |v| v.inside_diameter.value >= 0.0 && v.outside_diameter > v.inside_diameter;
    value |s| (s.outside_diameter - s.inside_diameter) * (s.outside_diameter + s.inside_diameter) * FRAC_PI_4;

    /// Thickness of a packer after it is crushed: `a = q a0`.
    ResidualThickness "thickness of the crushed packer" {
        /// Thickness as fitted.
        thickness "a0": Length as Wall,
        /// Crushed over fitted thickness.
        residual "q": Ratio as Ratio,
    } -> Length as Wall;
    form "a = residual thickness";
    from Judgement "jackpull" "table packer_residual";
    valid "thickness positive, residual above 0 and at most 1"
        if |v| v.thickness.value > 0.0 && v.residual.value > 0.0 && v.residual.value <= 1.0;
    value |s| s.thickness * s.residual;

    /// Greatest offset of the force at which the whole ring stays pressed: `e = (D² + d²) / (8 D)`.
    ///
    /// For the jacks and the thrust ring as well as for the joint.
    KernRadius "kern of a ring" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Inside diameter.
        inside_diameter "d": Length as Diameter,
    } -> Length as Diameter;
    form "e = (outside_diameter^2 + inside_diameter^2) / (8 outside_diameter)";
    from Judgement "jackpull" "statics of a ring";
    valid "inside diameter not negative and below the outside diameter"
        if |v| v.inside_diameter.value >= 0.0 && v.outside_diameter > v.inside_diameter;
    value |s| {
        let (outside, inside) = (s.outside_diameter, s.inside_diameter);
        (outside * outside + inside * inside) / (8.0 * outside)
    };
}
