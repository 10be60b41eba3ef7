//! What the ground behind a thrust wall can bear.
//!
//! A wall is cut into strips, level by level, wherever the ground, its strength or the water changes. In drained ground
//! the strips count effective stress: moist unit weight above the water, buoyant below, and the water itself not at
//! all, for it presses on the wall before any jack does. In clay that is quick to load either strip holds, never the
//! sum of both. How the resultant lies against the thrust is in [`wall_fit`](super::wall_fit).
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
//!     PassiveStrip { spread, width, height, top_stress, unit_weight, coefficient, cohesion: Pressure::default()
//! }.value() }; let depth = |metres| LayerStress { unit_weight: moist, thickness: Length::from_si(metres) }.value();
//! let resistance = strip(depth(4.0), Length::from_si(1.0), moist) + strip(depth(5.0), Length::from_si(2.0), buoyant);
//! // 9 (72 + 9) + 9 (180 + 16) assert!((resistance - Force::from_text("2493 kN")?).abs() < Force::from_text("1 N")?);
//! # Ok::<(), jackpull::quantity::QuantityError>(())
//! ```

use super::soil::STEEPEST;
use crate::law::laws;
use crate::quantity::{Angle, Force, Length, Pressure, Ratio, UnitWeight};
use core::f64::consts::FRAC_PI_4;

/// High end of the spread that the reaction formula of pipe jacking is used with (recalled, 1.5 to 2.5).
pub(super) const WIDEST_SPREAD: f64 = 2.5;

laws! {
    /// Horizontal over vertical stress of ground that gives way before a wall that yields (Rankine):
    /// `K_a = (1 - sin phi) / (1 + sin phi)`, which is `tan²(45 deg - phi/2)`.
    ActiveCoefficient "active coefficient, Rankine" {
        /// Friction angle of the ground.
        friction_angle "phi": Angle as Angle [>= 0.0 <= STEEPEST],
    } -> Ratio as Ratio;
    form "K_a = (1 - sin(friction_angle)) / (1 + sin(friction_angle))";
    from Published "moser_buried_pipe"
        "p. 126, Rankine's lateral pressure ratio, vertical over horizontal stress; here its inverse";
    valid "level ground, smooth upright wall, friction angle 0 to 50 deg";
    value |s| {
        let sine = s.friction_angle.value.sin();
        Ratio::from((1.0 - sine) / (1.0 + sine))
    };

    /// Horizontal over vertical stress of ground that gives way to a wall pushed into it (Rankine):
    /// `K_p = (1 + sin phi) / (1 - sin phi)`, which is `tan²(45 deg + phi/2)` and exactly 1 without friction.
    ///
    /// Friction on the wall, which would add to it, is not counted.
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
    PassiveCoefficient "passive coefficient, Rankine" {
        /// Friction angle of the ground.
        friction_angle "phi": Angle as Angle [>= 0.0 <= STEEPEST],
    } -> Ratio as Ratio;
    form "K_p = (1 + sin(friction_angle)) / (1 - sin(friction_angle))";
    from Published "moser_buried_pipe" "p. 126, Rankine's lateral pressure ratio, 3 at 30 deg";
    valid "level ground, smooth upright wall, friction angle 0 to 50 deg";
    value |s| {
        let sine = s.friction_angle.value.sin();
        Ratio::from((1.0 + sine) / (1.0 - sine))
    };

    /// Pressure at which the ground at one level gives way to the wall: `p = K_p s + 2 c sqrt(K_p)`.
    PassivePressure "passive pressure at a level" {
        /// Vertical stress at the level (effective; total with K_p = 1 and c the undrained strength).
        vertical_stress "s": Pressure as UnitFriction [>= 0.0],
        /// Passive coefficient.
        coefficient "K_p": Ratio as Ratio [>= 1.0],
        /// Cohesion (none in drained ground).
        cohesion "c": Pressure as UnitFriction [>= 0.0],
    } -> Pressure as UnitFriction;
    form "p = coefficient vertical_stress + 2 cohesion sqrt(coefficient)";
    from Memory "bell_1915" "resistance of ground with friction and cohesion, after Rankine";
    valid "coefficient at least 1, stress and cohesion not negative";
    value |s| s.coefficient * s.vertical_stress + 2.0 * s.coefficient.value.sqrt() * s.cohesion;

    /// Resistance of drained ground behind a strip of the wall:
    /// `R = a B (K_p (s H + gamma H²/2) + 2 c H sqrt(K_p))`.
    ///
    /// It is printed with gamma h in place of s, h the depth of the top, for a wall in one ground without water.
    ///
    /// With a spread of 1 it is [`PassivePressure`] summed over the strip. Drained cohesion is a strength that few
    /// tests prove: leave it out.
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
    PassiveStrip "resistance of drained ground behind a wall" {
        /// Factor for the ground beside the wall (1: the ground straight behind the wall).
        spread "a": Ratio as Ratio [>= 1.0 <= WIDEST_SPREAD],
        /// Width of the wall.
        width "B": Length as Distance [> 0.0],
        /// Height of the strip.
        height "H": Length as Distance [> 0.0],
        /// Effective vertical stress at its top (effective, at the top of the strip).
        top_stress "s": Pressure as UnitFriction [>= 0.0],
        /// Unit weight behind it (moist, or buoyant below water).
        unit_weight "gamma": UnitWeight as UnitWeight [>= 0.0],
        /// Passive coefficient.
        coefficient "K_p": Ratio as Ratio [>= 1.0],
        /// Cohesion.
        cohesion "c": Pressure as UnitFriction [>= 0.0],
    } -> Force as Thrust;
    form "R = spread width (coefficient (top_stress height + unit_weight height^2/2) \
          + 2 cohesion height sqrt(coefficient))";
    from Memory "trade_practice"
        "reaction formula of pipe jacking, of Japanese origin, recalled; printed with unit weight times depth \
                  for the stress at the top";
    valid "spread 1 to 2.5, coefficient at least 1, width and height positive, all else not negative";
    value |s| {
        let stress = s.top_stress + s.unit_weight * s.height / 2.0;
        let pressure = s.coefficient * stress + 2.0 * s.coefficient.value.sqrt() * s.cohesion;
        s.spread * s.width * s.height * pressure
    };

    /// Resistance of clay behind a strip of the wall, loaded too fast to drain:
    /// `R = a B (s H + gamma H²/2 + 2 s_u H)`.
    ///
    /// It is printed for a metre of wall, without B.
    ///
    /// For saturated clay without fissures, for the length of the drive; a clay that softens is drained ground.
    UndrainedStrip "resistance of undrained clay behind a wall" {
        /// Factor for the ground beside the wall (1: the ground straight behind the wall).
        spread "a": Ratio as Ratio [>= 1.0 <= WIDEST_SPREAD],
        /// Width of the wall.
        width "B": Length as Distance [> 0.0],
        /// Height of the strip.
        height "H": Length as Distance [> 0.0],
        /// Total vertical stress at its top (total, at the top of the strip).
        top_stress "s": Pressure as UnitFriction [>= 0.0],
        /// Unit weight behind it (moist, or saturated below water).
        unit_weight "gamma": UnitWeight as UnitWeight [>= 0.0],
        /// Undrained strength.
        undrained_strength "s_u": Pressure as UnitFriction [>= 0.0],
    } -> Force as Thrust;
    form "R = spread width (top_stress height + unit_weight height^2/2 + 2 undrained_strength height)";
    from CommonPractice "trade_practice" "reaction formula without friction, per metre of wall, times its width";
    valid "spread 1 to 2.5, width and height positive, all else not negative";
    value |s| {
        let stress = s.top_stress + s.unit_weight * s.height / 2.0;
        s.spread * s.width * s.height * (stress + 2.0 * s.undrained_strength)
    };

    /// What an opening in the wall, the eye of another drive for instance, takes off its resistance:
    /// `R_e = a p (pi/4) d²`.
    ///
    /// For an eye within one strip: there the pressure is linear, and its value at the axis is its mean over the
    /// circle.
    EyeResistance "resistance lost at the eye of a wall" {
        /// Factor for the ground beside the wall (as in the resistance it is taken off).
        spread "a": Ratio as Ratio [>= 1.0 <= WIDEST_SPREAD],
        /// Passive pressure at the axis of the eye.
        pressure "p": Pressure as UnitFriction [>= 0.0],
        /// Diameter of the eye.
        diameter "d": Length as Diameter [>= 0.0],
    } -> Force as Thrust;
    form "R_e = spread pressure (pi/4) diameter^2";
    from Judgement "jackpull" "linear pressure over a circle; ground behind an opening gives no reaction";
    valid "spread 1 to 2.5, pressure and diameter not negative";
    value |s| s.spread * s.pressure * (FRAC_PI_4 * s.diameter * s.diameter);

    /// Thrust that a wall may be asked to bear: `F = (R - R_e) / n`, no less than 0.
    ///
    /// A share of jack capacity to design for is a margin of the jacks and no substitute for it.
    AllowableReaction "allowable thrust on a wall" {
        /// Resistance of the ground (of all strips).
        resistance "R": Force as Thrust [>= 0.0],
        /// What openings take off.
        eye "R_e": Force as Thrust [>= 0.0],
        /// Safety factor.
        safety "n": Ratio as Ratio [>= 1.0],
    } -> Force as Thrust;
    form "F = (resistance - eye) / safety, no less than 0";
    from Memory "trade_practice" "safety factor of the thrust wall, recalled";
    valid "resistance and eye not negative, factor at least 1";
    value |s| ((s.resistance - s.eye) / s.safety).max(Force::default());
}
