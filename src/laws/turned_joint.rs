//! Force, angle and stress at a turned joint with a packer, each from the other two. The ring and its assumptions are
//! those of [`super::packer`].

use super::ring::{LEAST_CONTACT, Ring};
use crate::law::law;
use crate::quantity::{Angle, Force, Length, Measure, Pressure, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::FRAC_PI_2;

law! {
    /// [`StressRatio`](super::packer::StressRatio) at an angle: that of the depth `z = a s / (E tan b)`, and 1 at no
    /// angle.
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
    /// Force allowed at a joint angle: `F = r(b) A s`, r of [`StressRatioAtAngle`], A the area of the packer.
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
    /// D/1000.
    ///
    /// ```
    /// // Packer 1160/1010 mm, 15 mm, 200 MPa, 20 MPa at the edge, 0.1 deg: 2000 kN.
    /// use jackpull::law::Law;
    /// use jackpull::laws::turned_joint::ForceAtAngle;
    /// use jackpull::quantity::{Angle, Force, FromText, Length, Pressure};
    /// let allowed = ForceAtAngle {
    ///     outside_diameter: Length::from_text("1160 mm")?,
    ///     inside_diameter: Length::from_text("1010 mm")?,
    ///     thickness: Length::from_text("15 mm")?,
    ///     modulus: Pressure::from_text("200 MPa")?,
    ///     greatest_stress: Pressure::from_text("20 MPa")?,
    ///     angle: Angle::from_text("0.1 deg")?,
    /// };
    /// assert!((allowed.value() - Force::from_text("2000 kN")?).abs() < Force::from_text("0.5 kN")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    ForceAtAngle {
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
    } -> Force as Thrust
    { Equation {
        name: "force allowed at a joint angle",
        form: "F = r A greatest_stress, A of the ring outside_diameter, inside_diameter, r at \
               z = thickness greatest_stress / (modulus tan(angle))",
        source: "jackpull",
        locator: "linear stress on an elastic ring without tension, between two planes",
        mark: Mark::Judgement,
        valid: "angle from 0 to below 90 deg, contact at least 1/1000 of the outside diameter, the others positive",
    } }
    valid |v| at_angle(v).in_range();
    value |s| {
        let area = Ring::of(s.outside_diameter.value, s.inside_diameter.value).area();
        Force::from_si(at_angle(s).value().value * area * s.greatest_stress.value)
    };
}

law! {
    /// Angle allowed at a force, the inverse of [`ForceAtAngle`]: `tan b = a s / (E z)` at the depth z where
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

law! {
    /// Depth of contact at a force and an angle: z where `F = (E tan b / a) M(z)`, M the first moment of the pressed part
    /// of the ring about the line of zero stress. With the whole ring pressed, `z = D/2 + a F / (A E tan b)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    /// | a | `thickness` | length |
    /// | E | `modulus` (secant) | pressure |
    /// | F | `force` | force |
    /// | b | `angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 < b < 90 deg and a force that presses at
    /// least D/1000.
    ContactDepthAtForce {
        /// Outside diameter of the packer.
        outside_diameter: Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter: Length as Diameter,
        /// Thickness of the packer, crushed.
        thickness: Length as Wall,
        /// Secant modulus of the packer.
        modulus: Pressure as Modulus,
        /// Jacking force.
        force: Force as Thrust,
        /// Angle at the joint.
        angle: Angle as JointAngle,
    } -> Length as Diameter
    { Equation {
        name: "depth of contact at a force and an angle",
        form: "force = (modulus tan(angle) / thickness) M(z), M of the ring outside_diameter, inside_diameter",
        source: "jackpull",
        locator: "linear stress on an elastic ring without tension, between two planes",
        mark: Mark::Judgement,
        valid: "angle above 0 and below 90 deg, contact at least 1/1000 of the outside diameter, the others positive",
    } }
    valid |v| v.angle.value > 0.0 && presses(v);
    value |s| {
        let ring = Ring::of(s.outside_diameter.value, s.inside_diameter.value);
        Length::from_si(ring.depth_at_first_moment(s.force.value / steepness(s.thickness, s.modulus, s.angle)))
    };
}

law! {
    /// Greatest stress at a force and an angle: `s = F / A + E tan b D / (2 a)` while the whole ring is pressed, else
    /// `s = E tan b z / a` with z of [`ContactDepthAtForce`].
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    /// | a | `thickness` | length |
    /// | E | `modulus` (secant) | pressure |
    /// | F | `force` | force |
    /// | b | `angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= b < 90 deg and a force that presses at
    /// least D/1000.
    GreatestStress {
        /// Outside diameter of the packer.
        outside_diameter: Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter: Length as Diameter,
        /// Thickness of the packer, crushed.
        thickness: Length as Wall,
        /// Secant modulus of the packer.
        modulus: Pressure as Modulus,
        /// Jacking force.
        force: Force as Thrust,
        /// Angle at the joint.
        angle: Angle as JointAngle,
    } -> Pressure as Strength
    { Equation {
        name: "greatest stress in the joint",
        form: "s = force / A + modulus tan(angle) outside_diameter / (2 thickness), where the ring of \
               inside_diameter gapes modulus tan(angle) z / thickness",
        source: "jackpull",
        locator: "linear stress on an elastic ring without tension, between two planes",
        mark: Mark::Judgement,
        valid: "angle from 0 to below 90 deg, contact at least 1/1000 of the outside diameter, the others positive",
    } }
    valid |v| presses(&ContactDepthAtForce {
        outside_diameter: v.outside_diameter,
        inside_diameter: v.inside_diameter,
        thickness: v.thickness,
        modulus: v.modulus,
        force: v.force,
        angle: v.angle,
    });
    value |s| {
        let ring = Ring::of(s.outside_diameter.value, s.inside_diameter.value);
        let steepness = steepness(s.thickness, s.modulus, s.angle);
        let (mean, turn) = (s.force.value / ring.area(), steepness * ring.outer);
        let gapes = turn > mean;
        Pressure::from_si(if gapes {
            steepness * ring.depth_at_first_moment(s.force.value / steepness)
        } else {
            mean + turn
        })
    };
}

/// Growth of the stress per length across the joint.
fn steepness(thickness: Length, modulus: Pressure, angle: Angle) -> f64 {
    modulus.value * angle.value.tan() / thickness.value
}

fn is_packer(thickness: Length, modulus: Pressure, angle: Angle) -> bool {
    thickness.value > 0.0 && modulus.value > 0.0 && (0.0..FRAC_PI_2).contains(&angle.value)
}

/// Whether the force presses more than a point.
fn presses(joint: &ContactDepthAtForce) -> bool {
    let ring = Ring::of(joint.outside_diameter.value, joint.inside_diameter.value);
    ring.is_sound()
        && is_packer(joint.thickness, joint.modulus, joint.angle)
        && joint.force.value > 0.0
        && joint.force.value
            >= steepness(joint.thickness, joint.modulus, joint.angle)
                * ring.pressed(2.0 * ring.outer * LEAST_CONTACT).first
}

const fn at_angle(joint: &ForceAtAngle) -> StressRatioAtAngle {
    StressRatioAtAngle {
        outside_diameter: joint.outside_diameter,
        inside_diameter: joint.inside_diameter,
        thickness: joint.thickness,
        modulus: joint.modulus,
        greatest_stress: joint.greatest_stress,
        angle: joint.angle,
    }
}
