//! Force and angle at a turned joint with a packer, each from the other. The packer is an elastic ring that takes no
//! tension, its modulus is constant, without stiffening or residual set, and nothing but the packer bears. A stiff and
//! thin packer is the safer assumption.

use super::ring::{LEAST_CONTACT, Ring};
use crate::law::law;
use crate::quantity::{Angle, Force, Length, Measure, Pressure, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::FRAC_PI_2;

law! {
    /// Mean over greatest stress at a joint angle, 1 at no angle: `r = M / (A z)` at the depth of contact
    /// `z = a s / (E tan b)`, M the first moment of the pressed part of the ring about the line of zero stress, and
    /// `r = 1 - D / (2 z)` where the whole ring is pressed. The force is `r A s`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    /// | a | `thickness` | length |
    /// | E | `modulus` (secant) | pressure |
    /// | s | `greatest_stress` (allowed at the edge) | pressure |
    /// | b | `angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= b < 90 deg and a contact of at least
    /// D/1000. It goes into the laws of the end that ask a `stress_ratio`.
    StressRatioAtAngle {
        /// Outside diameter of the packer.
        outside_diameter: Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter: Length as Diameter,
        /// Thickness of the packer, crushed.
        thickness: Length as Wall,
        /// Secant modulus of the packer.
        modulus: Pressure as Modulus,
        /// Stress allowed at the most pressed edge.
        greatest_stress: Pressure as Strength,
        /// Angle at the joint.
        angle: Angle as JointAngle,
    } -> Ratio as Ratio
    { Equation {
        name: "mean over greatest stress at a joint angle",
        form: "r of the ring outside_diameter, inside_diameter at z = thickness greatest_stress / (modulus tan(angle))",
        source: "jackpull",
        locator: "linear stress on an elastic ring without tension, between two planes",
        mark: Mark::Judgement,
        valid: "angle from 0 to below 90 deg, contact at least 1/1000 of the outside diameter, the others positive",
    } }
    valid |v| {
        let ring = Ring::of(v.outside_diameter.value, v.inside_diameter.value);
        ring.is_sound()
            && is_packer(v.thickness, v.modulus, v.angle)
            && v.greatest_stress.value > 0.0
            && steepness(v.thickness, v.modulus, v.angle) * 2.0 * ring.outer * LEAST_CONTACT <= v.greatest_stress.value
    };
    value |s| {
        let ring = Ring::of(s.outside_diameter.value, s.inside_diameter.value);
        let radius_over_depth = steepness(s.thickness, s.modulus, s.angle) * ring.outer / s.greatest_stress.value;
        Ratio::from_si(ring.mean_over_greatest(radius_over_depth))
    };
}

law! {
    /// Angle allowed at a force, the inverse of [`StressRatioAtAngle`]: `tan b = a s / (E z)` at the depth z where
    /// `r = F / (A s)`. Where r is one half or more, `tan b = 2 a s (1 - r) / (E D)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    /// | a | `thickness` | length |
    /// | E | `modulus` (secant) | pressure |
    /// | s | `greatest_stress` (allowed at the edge) | pressure |
    /// | F | `force` | force |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a force up to A s that presses at least
    /// D/1000. Above A s no angle is allowed: the value is 0.
    AngleAtForce {
        /// Outside diameter of the packer.
        outside_diameter: Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter: Length as Diameter,
        /// Thickness of the packer, crushed.
        thickness: Length as Wall,
        /// Secant modulus of the packer.
        modulus: Pressure as Modulus,
        /// Stress allowed at the most pressed edge.
        greatest_stress: Pressure as Strength,
        /// Jacking force.
        force: Force as Thrust,
    } -> Angle as JointAngle
    { Equation {
        name: "joint angle allowed at a force",
        form: "tan(b) = thickness greatest_stress / (modulus z), z where r = force / (A greatest_stress) on the ring \
               outside_diameter, inside_diameter",
        source: "jackpull",
        locator: "inverse of the force allowed at a joint angle",
        mark: Mark::Judgement,
        valid: "force up to area times stress, contact at least 1/1000 of the outside diameter, the others positive",
    } }
    valid |v| {
        let ring = Ring::of(v.outside_diameter.value, v.inside_diameter.value);
        let ratio = v.force.value / (ring.area() * v.greatest_stress.value);
        ring.is_sound()
            && is_packer(v.thickness, v.modulus, Angle::from_si(0.0))
            && v.greatest_stress.value > 0.0
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

fn is_packer(thickness: Length, modulus: Pressure, angle: Angle) -> bool {
    thickness.value > 0.0 && modulus.value > 0.0 && (0.0..FRAC_PI_2).contains(&angle.value)
}
