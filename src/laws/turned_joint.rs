//! Force and angle at a turned joint with a packer, each from the other. The packer is an elastic ring that takes no
//! tension, its modulus is constant, without stiffening or residual set, and nothing but the packer bears. A stiff and
//! thin packer is the safer assumption. Its thickness is that as fitted: what it hardens by is in the modulus.

use super::ring::{LEAST_CONTACT, Ring};
use crate::law::laws;
use crate::quantity::{Angle, Force, Length, Measure, Pressure, Ratio};
use core::f64::consts::FRAC_PI_2;

laws! {
    /// Mean over greatest stress at a joint angle, 1 at no angle: `r = M / (A z)` at the depth of contact
    /// `z = a s / (E tan b)`, M the first moment of the pressed part of the ring about the line of zero stress, and
    /// `r = 1 - D / (2 z)` where the whole ring is pressed. The force is `r A s`.
    ///
    /// It goes into the laws of the end that ask a `stress_ratio`.
    StressRatioAtAngle "mean over greatest stress at a joint angle" {
        /// Outside diameter of the packer.
        outside_diameter "D": Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter "d": Length as Diameter,
        /// Thickness of the packer as fitted.
        thickness "a": Length as Wall [> 0.0],
        /// Secant modulus of the packer.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Stress allowed at the most pressed edge.
        greatest_stress "s": Pressure as Strength [> 0.0],
        /// Angle at the joint.
        angle "b": Angle as JointAngle [>= 0.0 < FRAC_PI_2],
    } -> Ratio as Ratio;
    form "r of the ring outside_diameter, inside_diameter at z = thickness greatest_stress / (modulus tan(angle))";
    from Judgement "jackpull" "linear stress on an elastic ring without tension, between two planes";
    valid "angle from 0 to below 90 deg, contact at least 1/1000 of the outside diameter, the others positive"
        if |v| {
        let ring = Ring::of(v.outside_diameter.value, v.inside_diameter.value);
        ring.is_sound()
            && steepness(v.thickness, v.modulus, v.angle) * 2.0 * ring.outer * LEAST_CONTACT <= v.greatest_stress.value
    };
    value |s| {
        let ring = Ring::of(s.outside_diameter.value, s.inside_diameter.value);
        let radius_over_depth = steepness(s.thickness, s.modulus, s.angle) * ring.outer / s.greatest_stress.value;
        Ratio::from_si(ring.mean_over_greatest(radius_over_depth))
    };

    /// Angle allowed at a force, the inverse of [`StressRatioAtAngle`]: `tan b = a s / (E z)` at the depth z where
    /// `r = F / (A s)`. Where r is one half or more, `tan b = 2 a s (1 - r) / (E D)`.
    ///
    /// Above A s no angle is allowed: the value is 0.
    AngleAtForce "joint angle allowed at a force" {
        /// Outside diameter of the packer.
        outside_diameter "D": Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter "d": Length as Diameter,
        /// Thickness of the packer as fitted.
        thickness "a": Length as Wall [> 0.0],
        /// Secant modulus of the packer.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Stress allowed at the most pressed edge.
        greatest_stress "s": Pressure as Strength [> 0.0],
        /// Jacking force.
        force "F": Force as Thrust,
    } -> Angle as JointAngle;
    form "tan(b) = thickness greatest_stress / (modulus z), z where r = force / (A greatest_stress) on the ring \
          outside_diameter, inside_diameter";
    from Judgement "jackpull" "inverse of the force allowed at a joint angle";
    valid "force up to area times stress, contact at least 1/1000 of the outside diameter, the others positive"
        if |v| {
        let ring = Ring::of(v.outside_diameter.value, v.inside_diameter.value);
        let ratio = v.force.value / (ring.area() * v.greatest_stress.value);
        ring.is_sound()
            && ratio <= 1.0
            && ratio >= ring.mean_over_greatest(1.0 / (2.0 * LEAST_CONTACT))
    };
    value |s| {
        let ring = Ring::of(s.outside_diameter.value, s.inside_diameter.value);
        let ratio = s.force.value / (ring.area() * s.greatest_stress.value);
        let depths = if ratio >= 0.5 { (1.0 - ratio).max(0.0) / ring.outer } else { 1.0 / ring.depth_at_ratio(ratio) };
        Angle::from_si(((s.thickness * s.greatest_stress / s.modulus).value * depths).atan())
    };
}

/// Growth of the stress per length across the joint.
fn steepness(thickness: Length, modulus: Pressure, angle: Angle) -> f64 {
    modulus.value * angle.value.tan() / thickness.value
}
