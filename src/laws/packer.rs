//! The packer in a jacking joint: an elastic ring that takes no tension. How much of it bears, how the mean stress
//! compares with the greatest, and where the force runs.
//!
//! The model holds the modulus constant, without stiffening or residual set, and knows no contact of the pipe beyond
//! the packer. A stiff and thin packer is the safer assumption.

use super::ring::{LEAST_CONTACT, Ring};
use crate::law::law;
use crate::quantity::{Angle, Area, Length, Measure, Pressure, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

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
    /// Depth of contact from the most pressed edge: `z = a s / (E tan b)`. Beyond the outside diameter the whole packer
    /// is pressed.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | a | `thickness` | length |
    /// | s | `greatest_stress` (at the edge) | pressure |
    /// | E | `modulus` (secant) | pressure |
    /// | b | `angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** an angle above 0 and below 90 deg.
    ContactDepth {
        /// Thickness of the packer.
        thickness: Length as Wall,
        /// Stress at the most pressed edge.
        greatest_stress: Pressure as Strength,
        /// Secant modulus of the packer.
        modulus: Pressure as Modulus,
        /// Angle at the joint.
        angle: Angle as JointAngle,
    } -> Length as Diameter
    { Equation {
        name: "depth of contact in the joint",
        form: "z = thickness greatest_stress / (modulus tan(angle))",
        source: "jackpull",
        locator: "elastic packer between two planes, no tension",
        mark: Mark::Judgement,
        valid: "angle above 0 and below 90 deg, the others positive",
    } }
    valid |v| v.thickness.value > 0.0
        && v.greatest_stress.value > 0.0
        && v.modulus.value > 0.0
        && v.angle.value > 0.0
        && v.angle.value < FRAC_PI_2;
    value |s| s.thickness * s.greatest_stress / s.modulus / s.angle.value.tan();
}

law! {
    /// Mean over greatest stress of a ring without tension, the mean over the whole ring:
    /// `r = (S(D/2) - S(d/2)) / (z A)`, S(q) the first moment, about the line of zero stress, of the part of a disc of
    /// radius q beyond that line: `S = (2/3) q³ sin³ t - c q² (t - sin t cos t)`, `cos t = c / q`, `c = D/2 - z`. With
    /// the whole ring pressed it is `r = 1 - D / (2 z)`, one half where one edge is just free, 1 for uniform stress.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    /// | z | `contact_depth` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= d < D, z at least D/1000.
    ///
    /// ```
    /// // Half of the diameter pressed, inside over outside diameter 0.8: 0.2877.
    /// use jackpull::law::Law;
    /// use jackpull::laws::packer::StressRatio;
    /// use jackpull::quantity::{FromText, Length};
    /// let ratio = StressRatio {
    ///     outside_diameter: Length::from_text("1 m")?,
    ///     inside_diameter: Length::from_text("0.8 m")?,
    ///     contact_depth: Length::from_text("0.5 m")?,
    /// };
    /// assert!((ratio.value().value - 0.2877).abs() < 0.00005);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    StressRatio {
        /// Outside diameter of the packer.
        outside_diameter: Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter: Length as Diameter,
        /// Depth of contact from the most pressed edge.
        contact_depth: Length as Diameter,
    } -> Ratio as Ratio
    { Equation {
        name: "mean over greatest stress in the joint",
        form: "r = (S(outside_diameter/2) - S(inside_diameter/2)) / (contact_depth A), \
               1 - outside_diameter / (2 contact_depth) where the whole ring is pressed",
        source: "jackpull",
        locator: "linear stress on a ring without tension, the basis of EN 1916 annex B by its abstracts",
        mark: Mark::Judgement,
        valid: "inside diameter below the outside diameter, contact at least 1/1000 of it",
    } }
    valid |v| v.inside_diameter.value >= 0.0
        && v.outside_diameter > v.inside_diameter
        && v.contact_depth >= v.outside_diameter * LEAST_CONTACT;
    value |s| {
        let ring = Ring::of(s.outside_diameter.value, s.inside_diameter.value);
        Ratio::from_si(ring.mean_over_greatest(ring.outer / s.contact_depth.value))
    };
}

law! {
    /// [`StressRatio`] of a ring without width: `r = (sin t - t cos t) / (pi (1 - cos t))`, `cos t = 1 - 2 z / D`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `diameter` | length |
    /// | z | `contact_depth` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** z from D/1000 to D. Above the ratio of any
    /// ring with a width, so on the unsafe side.
    ThinRingStressRatio {
        /// Diameter of the ring.
        diameter: Length as Diameter,
        /// Depth of contact from the most pressed edge.
        contact_depth: Length as Diameter,
    } -> Ratio as Ratio
    { Equation {
        name: "mean over greatest stress of a thin ring",
        form: "r = (sin t - t cos t) / (pi (1 - cos t)), cos t = 1 - 2 contact_depth / diameter",
        source: "jackpull",
        locator: "linear stress on a ring without width or tension",
        mark: Mark::Judgement,
        valid: "contact from 1/1000 of the diameter to the diameter",
    } }
    valid |v| v.diameter.value > 0.0
        && v.contact_depth >= v.diameter * LEAST_CONTACT
        && v.contact_depth <= v.diameter;
    value |s| {
        let cos = (1.0 - 2.0 * (s.contact_depth / s.diameter).value).clamp(-1.0, 1.0);
        let half_angle = cos.acos();
        Ratio::from_si((half_angle.sin() - half_angle * cos) / (PI * (1.0 - cos)))
    };
}

law! {
    /// Offset of the jacking force from the centre of the joint: `e = M / F`, M the moment of the stress of
    /// [`StressRatio`] about the centre. With the whole ring pressed it is `e = (D² + d²) / (16 (z - D/2))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    /// | z | `contact_depth` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= d < D, z at least D/1000.
    ForceOffset {
        /// Outside diameter of the packer.
        outside_diameter: Length as Diameter,
        /// Inside diameter of the packer.
        inside_diameter: Length as Diameter,
        /// Depth of contact from the most pressed edge.
        contact_depth: Length as Diameter,
    } -> Length as Diameter
    { Equation {
        name: "offset of the force in the joint",
        form: "e = moment of linear stress over contact_depth / its force, on the ring of outside_diameter and \
               inside_diameter",
        source: "jackpull",
        locator: "linear stress on a ring without tension",
        mark: Mark::Judgement,
        valid: "inside diameter below the outside diameter, contact at least 1/1000 of it",
    } }
    valid |v| v.inside_diameter.value >= 0.0
        && v.outside_diameter > v.inside_diameter
        && v.contact_depth >= v.outside_diameter * LEAST_CONTACT;
    value |s| {
        let ring = Ring::of(s.outside_diameter.value, s.inside_diameter.value);
        let pressed = ring.pressed(s.contact_depth.value);
        Length::from_si(pressed.second / pressed.first)
    };
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
