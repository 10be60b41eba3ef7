//! The packer in a jacking joint, and the middle part of the ring where a force leaves all of it pressed.

use crate::law::laws;
use crate::quantity::{Area, Length};
use core::f64::consts::FRAC_PI_4;

laws! {
    /// Area of a ring, of a packer or of a plain pipe end: `A = (pi/4) (D² - d²)`.
    ///
    /// The barrel of a pipe is not its end: where the joint is recessed the end bears on less.
    RingArea "area of a ring" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Inside diameter.
        inside_diameter "d": Length as Diameter [>= 0.0],
    } -> Area as Area;
    form "A = (pi/4) (outside_diameter^2 - inside_diameter^2)";
    from Judgement "jackpull" "geometry of a ring";
    valid "inside diameter not negative and below the outside diameter"
        if |v| v.outside_diameter > v.inside_diameter;
    value |s| (s.outside_diameter - s.inside_diameter) * (s.outside_diameter + s.inside_diameter) * FRAC_PI_4;

    /// Outside diameter of the ring that has an area: `D = sqrt(d² + 4 A/pi)`.
    ///
    /// The favourable place of the ring: a wider one of the same area gapes at a smaller angle.
    RingOutside "outside diameter of a ring" {
        /// Inside diameter.
        inside_diameter "d": Length as Diameter [>= 0.0],
        /// Area.
        area "A": Area as Area [> 0.0],
    } -> Length as Diameter;
    form "D = sqrt(inside_diameter^2 + 4 area/pi)";
    from Judgement "jackpull" "geometry of a ring";
    valid "inside diameter not negative, area positive";
    value |s| (s.inside_diameter * s.inside_diameter + s.area / FRAC_PI_4).sqrt();

    /// Greatest offset of the force at which the whole ring stays pressed: `e = (D² + d²) / (8 D)`.
    ///
    /// For the jacks and the thrust ring as well as for the joint.
    KernRadius "kern of a ring" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Inside diameter.
        inside_diameter "d": Length as Diameter [>= 0.0],
    } -> Length as Diameter;
    form "e = (outside_diameter^2 + inside_diameter^2) / (8 outside_diameter)";
    from Judgement "jackpull" "statics of a ring";
    valid "inside diameter not negative and below the outside diameter"
        if |v| v.outside_diameter > v.inside_diameter;
    value |s| {
        let (outside, inside) = (s.outside_diameter, s.inside_diameter);
        (outside * outside + inside * inside) / (8.0 * outside)
    };
}
