//! What the ground behind a thrust wall can bear.
//!
//! A wall is cut into strips, level by level, wherever the ground, its strength or the water changes. In drained ground
//! the strips count effective stress: moist unit weight above the water, buoyant below, and the water itself not at all,
//! for it presses on the wall before any jack does. In clay that is quick to load either strip holds, never the sum of
//! both. How the resultant lies against the thrust is in [`wall_fit`](super::wall_fit).
//!
//! ```
//! // Wall 3 m by 3 m, its top 4 m down, water 5 m down: one strip of 1 m above the water, one of 2 m below.
//! use jackpull::law::Law;
//! use jackpull::laws::soil::LayerStress;
//! use jackpull::laws::wall::{PassiveCoefficient, PassiveStrip};
//! use jackpull::quantity::{Angle, Force, FromText, Length, Measure, Pressure, Ratio, UnitWeight};
//! let coefficient = PassiveCoefficient { friction_angle: Angle::from_text("30 deg")? }.value();
//! let (moist, buoyant) = (UnitWeight::from_text("18 kN/m3")?, UnitWeight::from_text("8 kN/m3")?);
//! let strip = |top_stress, height, unit_weight| {
//!     let (spread, width) = (Ratio::from_si(1.0), Length::from_si(3.0));
//!     PassiveStrip { spread, width, height, top_stress, unit_weight, coefficient, cohesion: Pressure::default() }.value()
//! };
//! let depth = |metres| LayerStress { unit_weight: moist, thickness: Length::from_si(metres) }.value();
//! let resistance = strip(depth(4.0), Length::from_si(1.0), moist) + strip(depth(5.0), Length::from_si(2.0), buoyant);
//! // 9 (72 + 9) + 9 (180 + 16)
//! assert!((resistance - Force::from_text("2493 kN")?).abs() < Force::from_text("1 N")?);
//! # Ok::<(), jackpull::quantity::QuantityError>(())
//! ```

use super::soil::STEEPEST;
use crate::law::law;
use crate::quantity::{Angle, Force, Length, Pressure, Ratio, UnitWeight};
use crate::source::{Equation, Mark};
use core::f64::consts::FRAC_PI_4;

law! {
    /// Horizontal over vertical stress of ground that gives way before a wall that yields (Rankine):
    /// `K_a = (1 - sin phi) / (1 + sin phi)`, which is `tan²(45 deg - phi/2)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | phi | `friction_angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** level ground, a smooth upright wall, phi
    /// from 0 to 50 deg.
    ActiveCoefficient {
        /// Friction angle of the ground.
        friction_angle: Angle as Angle,
    } -> Ratio as Ratio
    { Equation {
        name: "active coefficient, Rankine",
        form: "K_a = (1 - sin(friction_angle)) / (1 + sin(friction_angle))",
        source: "moser_buried_pipe",
        locator: "p. 126, Rankine's lateral pressure ratio, vertical over horizontal stress; here its inverse",
        mark: Mark::Published,
        valid: "level ground, smooth upright wall, friction angle 0 to 50 deg",
    } }
    valid |v| (0.0..=STEEPEST).contains(&v.friction_angle.value);
    value |s| {
        let sine = s.friction_angle.value.sin();
        Ratio::from((1.0 - sine) / (1.0 + sine))
    };
}

law! {
    /// Horizontal over vertical stress of ground that gives way to a wall pushed into it (Rankine):
    /// `K_p = (1 + sin phi) / (1 - sin phi)`, which is `tan²(45 deg + phi/2)` and exactly 1 without friction.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | phi | `friction_angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** level ground, a smooth upright wall, phi
    /// from 0 to 50 deg. Friction on the wall, which would add to it, is not counted.
    ///
    /// ```
    /// // 30 deg: 3.
    /// use jackpull::law::Law;
    /// use jackpull::laws::wall::PassiveCoefficient;
    /// use jackpull::quantity::{Angle, FromText};
    /// let coefficient = PassiveCoefficient { friction_angle: Angle::from_text("30 deg")? };
    /// assert!((coefficient.value().value - 3.0).abs() < 1e-12);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PassiveCoefficient {
        /// Friction angle of the ground.
        friction_angle: Angle as Angle,
    } -> Ratio as Ratio
    { Equation {
        name: "passive coefficient, Rankine",
        form: "K_p = (1 + sin(friction_angle)) / (1 - sin(friction_angle))",
        source: "moser_buried_pipe",
        locator: "p. 126, Rankine's lateral pressure ratio, 3 at 30 deg",
        mark: Mark::Published,
        valid: "level ground, smooth upright wall, friction angle 0 to 50 deg",
    } }
    valid |v| (0.0..=STEEPEST).contains(&v.friction_angle.value);
    value |s| {
        let sine = s.friction_angle.value.sin();
        Ratio::from((1.0 + sine) / (1.0 - sine))
    };
}

law! {
    /// Pressure at which the ground at one level gives way to the wall: `p = K_p s + 2 c sqrt(K_p)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `vertical_stress` (effective; total with K_p = 1 and c the undrained strength) | pressure |
    /// | K_p | `coefficient` | ratio |
    /// | c | `cohesion` (none in drained ground) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** K_p of at least 1, the rest not negative.
    PassivePressure {
        /// Vertical stress at the level.
        vertical_stress: Pressure as UnitFriction,
        /// Passive coefficient.
        coefficient: Ratio as Ratio,
        /// Cohesion.
        cohesion: Pressure as UnitFriction,
    } -> Pressure as UnitFriction
    { Equation {
        name: "passive pressure at a level",
        form: "p = coefficient vertical_stress + 2 cohesion sqrt(coefficient)",
        source: "bell_1915",
        locator: "resistance of ground with friction and cohesion, after Rankine",
        mark: Mark::Memory,
        valid: "coefficient at least 1, stress and cohesion not negative",
    } }
    valid |v| v.coefficient.value >= 1.0 && v.vertical_stress.value >= 0.0 && v.cohesion.value >= 0.0;
    value |s| s.coefficient * s.vertical_stress + 2.0 * s.coefficient.value.sqrt() * s.cohesion;
}

law! {
    /// Resistance of drained ground behind a strip of the wall:
    /// `R = a B (K_p (s H + gamma H²/2) + 2 c H sqrt(K_p))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | a | `spread` (1: the ground straight behind the wall) | ratio |
    /// | B | `width` | length |
    /// | H | `height` | length |
    /// | s | `top_stress` (effective, at the top of the strip) | pressure |
    /// | gamma | `unit_weight` (moist, or buoyant below water) | force per volume |
    /// | K_p | `coefficient` | ratio |
    /// | c | `cohesion` | pressure |
    ///
    /// It is printed with gamma h in place of s, h the depth of the top, for a wall in one ground without water.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a spread from 1 to 2.5; with 1 it is
    /// [`PassivePressure`] summed over the strip. Drained cohesion is a strength that few tests prove: leave it out.
    ///
    /// ```
    /// // 3 m by 3 m, top 4 m down, 18 kN/m3, 30 deg, 10 kPa: 2,985 kN.
    /// use jackpull::law::Law;
    /// use jackpull::laws::wall::PassiveStrip;
    /// use jackpull::quantity::{Force, FromText, Length, Pressure, Ratio, UnitWeight};
    /// let resistance = PassiveStrip {
    ///     spread: Ratio::from_text("1")?,
    ///     width: Length::from_text("3 m")?,
    ///     height: Length::from_text("3 m")?,
    ///     top_stress: Pressure::from_text("72 kPa")?,
    ///     unit_weight: UnitWeight::from_text("18 kN/m3")?,
    ///     coefficient: Ratio::from_text("3")?,
    ///     cohesion: Pressure::from_text("10 kPa")?,
    /// };
    /// assert!((resistance.value() - Force::from_text("2985 kN")?).abs() < Force::from_text("0.5 kN")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PassiveStrip {
        /// Factor for the ground beside the wall.
        spread: Ratio as Ratio,
        /// Width of the wall.
        width: Length as Distance,
        /// Height of the strip.
        height: Length as Distance,
        /// Effective vertical stress at its top.
        top_stress: Pressure as UnitFriction,
        /// Unit weight behind it.
        unit_weight: UnitWeight as UnitWeight,
        /// Passive coefficient.
        coefficient: Ratio as Ratio,
        /// Cohesion.
        cohesion: Pressure as UnitFriction,
    } -> Force as Thrust
    { Equation {
        name: "resistance of drained ground behind a wall",
        form: "R = spread width (coefficient (top_stress height + unit_weight height^2/2) \
               + 2 cohesion height sqrt(coefficient))",
        source: "trade_practice",
        locator: "reaction formula of pipe jacking, of Japanese origin, recalled; printed with unit weight times depth \
                  for the stress at the top",
        mark: Mark::Memory,
        valid: "spread 1 to 2.5, coefficient at least 1, width and height positive, all else not negative",
    } }
    valid |v| (1.0..=WIDEST_SPREAD).contains(&v.spread.value)
        && v.width.value > 0.0
        && v.height.value > 0.0
        && v.top_stress.value >= 0.0
        && v.unit_weight.value >= 0.0
        && v.coefficient.value >= 1.0
        && v.cohesion.value >= 0.0;
    value |s| {
        let stress = s.top_stress + s.unit_weight * s.height / 2.0;
        let pressure = s.coefficient * stress + 2.0 * s.coefficient.value.sqrt() * s.cohesion;
        s.spread * s.width * s.height * pressure
    };
}

/// High end of the spread that the reaction formula of pipe jacking is used with (recalled, 1.5 to 2.5).
pub(super) const WIDEST_SPREAD: f64 = 2.5;

law! {
    /// Resistance of clay behind a strip of the wall, loaded too fast to drain:
    /// `R = a B (s H + gamma H²/2 + 2 s_u H)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | a | `spread` (1: the ground straight behind the wall) | ratio |
    /// | B | `width` | length |
    /// | H | `height` | length |
    /// | s | `top_stress` (total, at the top of the strip) | pressure |
    /// | gamma | `unit_weight` (moist, or saturated below water) | force per volume |
    /// | s_u | `undrained_strength` | pressure |
    ///
    /// It is printed for a metre of wall, without B.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** saturated clay without fissures, for the
    /// length of the drive; a clay that softens is drained ground.
    UndrainedStrip {
        /// Factor for the ground beside the wall.
        spread: Ratio as Ratio,
        /// Width of the wall.
        width: Length as Distance,
        /// Height of the strip.
        height: Length as Distance,
        /// Total vertical stress at its top.
        top_stress: Pressure as UnitFriction,
        /// Unit weight behind it.
        unit_weight: UnitWeight as UnitWeight,
        /// Undrained strength.
        undrained_strength: Pressure as UnitFriction,
    } -> Force as Thrust
    { Equation {
        name: "resistance of undrained clay behind a wall",
        form: "R = spread width (top_stress height + unit_weight height^2/2 + 2 undrained_strength height)",
        source: "trade_practice",
        locator: "reaction formula without friction, per metre of wall, times its width",
        mark: Mark::CommonPractice,
        valid: "spread 1 to 2.5, width and height positive, all else not negative",
    } }
    valid |v| (1.0..=WIDEST_SPREAD).contains(&v.spread.value)
        && v.width.value > 0.0
        && v.height.value > 0.0
        && v.top_stress.value >= 0.0
        && v.unit_weight.value >= 0.0
        && v.undrained_strength.value >= 0.0;
    value |s| {
        let stress = s.top_stress + s.unit_weight * s.height / 2.0;
        s.spread * s.width * s.height * (stress + 2.0 * s.undrained_strength)
    };
}

law! {
    /// What an opening in the wall, the eye of another drive for instance, takes off its resistance:
    /// `R_e = a p (pi/4) d²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | a | `spread` (as in the resistance it is taken off) | ratio |
    /// | p | `pressure` (passive, at the axis of the eye) | pressure |
    /// | d | `diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** an eye within one strip: there the pressure
    /// is linear, and its value at the axis is its mean over the circle.
    EyeResistance {
        /// Factor for the ground beside the wall.
        spread: Ratio as Ratio,
        /// Passive pressure at the axis of the eye.
        pressure: Pressure as UnitFriction,
        /// Diameter of the eye.
        diameter: Length as Diameter,
    } -> Force as Thrust
    { Equation {
        name: "resistance lost at the eye of a wall",
        form: "R_e = spread pressure (pi/4) diameter^2",
        source: "jackpull",
        locator: "linear pressure over a circle; ground behind an opening gives no reaction",
        mark: Mark::Judgement,
        valid: "spread 1 to 2.5, pressure and diameter not negative",
    } }
    valid |v| (1.0..=WIDEST_SPREAD).contains(&v.spread.value) && v.pressure.value >= 0.0 && v.diameter.value >= 0.0;
    value |s| s.spread * s.pressure * (FRAC_PI_4 * s.diameter * s.diameter);
}

law! {
    /// Thrust that a wall may be asked to bear: `F = (R - R_e) / n`, no less than 0.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | R | `resistance` (of all strips) | force |
    /// | R_e | `eye` | force |
    /// | n | `safety` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a factor of at least 1. A share of jack
    /// capacity to design for is a margin of the jacks and no substitute for it.
    AllowableReaction {
        /// Resistance of the ground.
        resistance: Force as Thrust,
        /// What openings take off.
        eye: Force as Thrust,
        /// Safety factor.
        safety: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "allowable thrust on a wall",
        form: "F = (resistance - eye) / safety, no less than 0",
        source: "trade_practice",
        locator: "safety factor of the thrust wall, recalled",
        mark: Mark::Memory,
        valid: "resistance and eye not negative, factor at least 1",
    } }
    valid |v| v.resistance.value >= 0.0 && v.eye.value >= 0.0 && v.safety.value >= 1.0;
    value |s| ((s.resistance - s.eye) / s.safety).max(Force::default());
}
