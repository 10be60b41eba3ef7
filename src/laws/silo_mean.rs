//! Silo pressure averaged where the surface is not level.

use crate::law::laws;
use crate::quantity::{Length, Pressure, Ratio, UnitWeight};

/// Below this the difference in `(1 - (1 - exp(-x)) / x) / x` loses digits, and the series needs few terms.
const SMALL: f64 = 0.01;
/// Terms of the series: the next is below 1e-16 of the sum.
const TERMS: i32 = 7;

laws! {
    /// Mean of the [silo pressure](super::soil::SiloStress) without cohesion while the depth goes evenly from z1 to z2:
    /// `s_m = gamma (z1 f(k z1) + exp(-k z1) d h(k d)) + p exp(-k z1) f(k d)` with `k = 2 K tan(delta) / b`,
    /// `d = z2 - z1`, `f(x) = (1 - exp(-x)) / x` and `h(x) = (1 - f(x)) / x`. Without friction (k = 0) it is the
    /// overburden half way, `gamma (z1 + z2) / 2 + p`.
    ///
    /// The integral is ours, the pressure Terzaghi's. One soil from z1 to z2.
    ///
    /// ```
    /// // No friction in the sides, 2 m to 4 m at 18 kN/m3 under 10 kPa: 64 kPa.
    /// use jackpull::law::Law;
    /// use jackpull::laws::silo_mean::MeanSiloStress;
    /// use jackpull::quantity::{FromText, Length, Pressure, Ratio, UnitWeight};
    /// let mean = MeanSiloStress {
    ///     unit_weight: UnitWeight::from_text("18 kN/m3")?,
    ///     width: Length::from_text("1 m")?,
    ///     depth_from: Length::from_text("2 m")?,
    ///     depth_to: Length::from_text("4 m")?,
    ///     lateral_friction: Ratio::from_text("0")?,
    ///     surcharge: Pressure::from_text("10 kPa")?,
    /// };
    /// assert!((mean.value() - Pressure::from_text("64 kPa")?).abs() < Pressure::from_text("0.001 Pa")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    MeanSiloStress "mean silo pressure over an even change of depth" {
        /// Unit weight.
        unit_weight "gamma": UnitWeight as UnitWeight [>= 0.0],
        /// Width of the column.
        width "b": Length as Distance [> 0.0],
        /// Depth of its foot at one end.
        depth_from "z1": Length as Depth [>= 0.0],
        /// Depth of its foot at the other end.
        depth_to "z2": Length as Depth [>= 0.0],
        /// Lateral pressure ratio times tangent of the wall friction angle.
        lateral_friction "K tan(delta)": Ratio as Ratio [>= 0.0],
        /// Load on its top.
        surcharge "p": Pressure as UnitFriction [>= 0.0],
    } -> Pressure as UnitFriction;
    form "s_m = unit_weight (z1 f(k z1) + exp(-k z1) d h(k d)) + surcharge exp(-k z1) f(k d), \
          k = 2 lateral_friction/width, d = |depth_to - depth_from|, z1 the lesser depth, \
          f(x) = (1 - exp(-x))/x, h(x) = (1 - f(x))/x";
    from Judgement "jackpull" "integral of the silo pressure (Terzaghi 1943) without cohesion";
    valid "width positive, all else not negative";
    value |s| {
        let (top, foot) = (s.depth_from.min(s.depth_to), s.depth_from.max(s.depth_to));
        let exponent = |depth: Length| 2.0 * s.lateral_friction.value * (depth / s.width).value;
        let change = foot - top;
        let left = (-exponent(top)).exp();
        let soil = top * kept(exponent(top)) + change * (left * rising(exponent(change)));
        s.unit_weight * soil + s.surcharge * (left * kept(exponent(change)))
    };
}

/// `(1 - exp(-x)) / x`: 1 where nothing hangs in the sides.
fn kept(x: f64) -> f64 {
    if x > 0.0 { -(-x).exp_m1() / x } else { 1.0 }
}

/// `(1 - (1 - exp(-x)) / x) / x`: 1/2 at nothing; the series is `1/2! - x/3! + x^2/4! - ...`.
fn rising(x: f64) -> f64 {
    if x >= SMALL {
        return (x + (-x).exp_m1()) / (x * x);
    }
    let (mut sum, mut term) = (0.0, 1.0 / 2.0);
    for n in 3..3 + TERMS {
        sum += term;
        term *= -x / f64::from(n);
    }
    sum
}
