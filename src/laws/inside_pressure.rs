//! Pressure inside a pipe: what its wall may hold, and what it does to the ends.

use crate::law::laws;
use crate::quantity::{Force, Length, Pressure, Ratio};
use core::f64::consts::FRAC_PI_4;

laws! {
    /// Pressure inside at which the hoop stress of a plastic pipe, at the middle of its wall, comes to a stress:
    /// `p = 2 s t / (D - t)`, which is `2 s / (DR - 1)`.
    ///
    /// ```
    /// // 1,000 psi in DR 11: the class of 200 psi.
    /// use jackpull::law::Law;
    /// use jackpull::laws::inside_pressure::PressureByRatio;
    /// use jackpull::quantity::{FromText, Length, Pressure};
    /// let held = PressureByRatio {
    ///     stress: Pressure::from_text("1000 psi")?,
    ///     outside_diameter: Length::from_text("11 in")?,
    ///     wall: Length::from_text("1 in")?,
    /// };
    /// assert!((held.value() - Pressure::from_text("200 psi")?).abs() < Pressure::from_text("0.1 psi")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PressureByRatio "pressure inside at a hoop stress, plastic" {
        /// Hoop stress.
        stress "s": Pressure as Strength [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> Pressure as Pressure;
    form "p = 2 stress wall / (outside_diameter - wall)";
    from Memory "astm_f714" "pressure rating by dimension ratio";
    valid "wall positive and below half the outside diameter, stress not negative"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| 2.0 * s.stress * (s.wall / (s.outside_diameter - s.wall));

    /// The same of a metal pipe, on its outside diameter (Barlow): `p = 2 s t / D`.
    ///
    /// ```
    /// // 17,500 psi, 12.75 in with a wall of 0.250 in: 686 psi.
    /// use jackpull::law::Law;
    /// use jackpull::laws::inside_pressure::PressureByBarlow;
    /// use jackpull::quantity::{FromText, Length, Pressure};
    /// let held = PressureByBarlow {
    ///     stress: Pressure::from_text("17500 psi")?,
    ///     outside_diameter: Length::from_text("12.75 in")?,
    ///     wall: Length::from_text("0.250 in")?,
    /// };
    /// assert!((held.value() - Pressure::from_text("686 psi")?).abs() < Pressure::from_text("0.5 psi")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PressureByBarlow "pressure inside at a hoop stress, metal" {
        /// Hoop stress.
        stress "s": Pressure as Strength [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> Pressure as Pressure;
    form "p = 2 stress wall / outside_diameter";
    from Memory "awwa_m11" "hoop stress of a steel pipe, solved for the pressure";
    valid "wall positive and below half the outside diameter, stress not negative"
        if |v| 2.0 * v.wall < v.outside_diameter;
    fails beyond |v| v.wall.value <= 0.0;
    value |s| 2.0 * s.stress * (s.wall / s.outside_diameter);

    /// Wall of ductile iron that pressure may count on: less what it may be cast thinner by and what is kept for service,
    /// `t_n = t - (c + k DN) - s`.
    ///
    /// ```
    /// // 12 in, class 350: 0.28 in, less 0.08 in for service and 1.3 mm + 0.001 DN, leaves 0.137 in.
    /// use jackpull::law::Law;
    /// use jackpull::laws::inside_pressure::NetIronWall;
    /// use jackpull::quantity::{FromText, Length, Ratio};
    /// let net = NetIronWall {
    ///     wall: Length::from_text("0.28 in")?,
    ///     size: Length::from_text("12 in")?,
    ///     service: Length::from_text("0.08 in")?,
    ///     casting: Length::from_text("1.3 mm")?,
    ///     casting_share: Ratio::from(0.001),
    /// };
    /// assert!((net.value() - Length::from_text("0.137 in")?).abs() < Length::from_text("0.0005 in")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    NetIronWall "net wall of ductile iron" {
        /// Nominal wall.
        wall "t": Length as Wall,
        /// Nominal size.
        size "DN": Length as Diameter [>= 0.0],
        /// Kept for service.
        service "s": Length as Wall [>= 0.0],
        /// What any pipe may be cast thinner by.
        casting "c": Length as Wall [>= 0.0],
        /// The same over the size.
        casting_share "k": Ratio as Ratio [>= 0.0],
    } -> Length as Wall;
    form "t_n = wall - (casting + casting_share size) - service";
    from Memory "awwa_c150" "net thickness: service allowance and casting tolerance";
    valid "allowances not negative, and less than the wall"
        if |v| v.wall > v.casting + v.casting_share * v.size + v.service;
    fails beyond |v| v.size.value >= 0.0;
    value |s| s.wall - (s.casting + s.casting_share * s.size) - s.service;

    /// Thrust of a pressure inside on the closed ends of a string, which its wall bears: `F = p (pi/4) (D - 2 t)²`.
    EndThrust "thrust of a pressure on the ends" {
        /// Pressure inside.
        pressure "p": Pressure as Pressure [>= 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> Force as Pull;
    form "F = pressure (pi/4) (outside_diameter - 2 wall)^2";
    from Judgement "jackpull" "statics of a closed end; the pressure outside, which takes of it, is left out";
    valid "wall positive and below half the outside diameter, pressure not negative"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let inside = s.outside_diameter - 2.0 * s.wall;
        s.pressure * (FRAC_PI_4 * inside * inside)
    };
}
