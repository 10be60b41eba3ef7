//! Between the gauge of the jacks and the force on the pipe.

use crate::law::laws;
use crate::quantity::{Area, Force, Pressure, Ratio};

laws! {
    /// Pressure on the gauge of the jacks at a force: `p = F / (e A)`.
    ///
    /// For a limit the high end of the efficiency is the safe one: the same reading then is more force.
    ///
    /// ```
    /// // 900 kN from 50,000 mm2 at 0.9: 20 MPa.
    /// use jackpull::law::Law;
    /// use jackpull::laws::gauge::GaugePressure;
    /// use jackpull::quantity::{Area, Force, FromText, Pressure, Ratio};
    /// let pressure = GaugePressure {
    ///     force: Force::from_text("900 kN")?,
    ///     efficiency: Ratio::from_text("0.9")?,
    ///     cylinder_area: Area::from_text("50000 mm2")?,
    /// };
    /// assert!((pressure.value() - Pressure::from_text("20 MPa")?).abs() < Pressure::from_text("1 Pa")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    GaugePressure "pressure on the gauge of the jacks" {
        /// Force.
        force "F": Force as Thrust [>= 0.0],
        /// Efficiency of the jacks (force over pressure times area).
        efficiency "e": Ratio as Ratio [> 0.0 <= 1.0],
        /// Piston area of all jacks that push.
        cylinder_area "A": Area as Area [> 0.0],
    } -> Pressure as Strength;
    form "p = force / (efficiency cylinder_area)";
    from Published "jackpull" "pressure on a piston, less what the jack loses";
    valid "force not negative, efficiency above 0 up to 1, area positive";
    value |s| s.force / (s.efficiency * s.cylinder_area);
}
