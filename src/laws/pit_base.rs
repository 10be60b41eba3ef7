//! Whether the base of a pit, and the soil in the mouth of a casing, stay where they are.

use crate::law::laws;
use crate::quantity::{Angle, Length, Measure, Pressure, Ratio, UnitWeight};

/// Gain of the bearing factor per depth or shape ratio, and the depth ratio at which it ends (Skempton 1951, read in
/// two textbooks).
const SKEMPTON: (f64, f64) = (0.2, 2.5);

/// Bearing factor, and the share of the width that slides (Terzaghi 1943; recalled).
const TERZAGHI: (f64, f64) = (5.7, 0.7);

laws! {
    /// Bearing factor of the base of a rectangular pit in clay: `N_c = 5 (1 + 0.2 B/L) (1 + 0.2 H/B)`, H/B counted to
    /// 2.5.
    ///
    /// ```
    /// // 1 m by 2 m, 2 m deep: 7.7.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pit_base::BearingFactorSkempton;
    /// use jackpull::quantity::{FromText, Length};
    /// let factor = BearingFactorSkempton {
    ///     depth: Length::from_text("2 m")?,
    ///     width: Length::from_text("1 m")?,
    ///     length: Length::from_text("2 m")?,
    /// };
    /// assert!((factor.value().value - 7.7).abs() < 1e-9);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    BearingFactorSkempton "bearing factor of the base, Skempton" {
        /// Depth of the pit.
        depth "H": Length as Depth [>= 0.0],
        /// Shorter side.
        width "B": Length as Distance [> 0.0],
        /// Longer side.
        length "L": Length as Distance,
    } -> Ratio as Ratio;
    form "N_c = 5 (1 + 0.2 width/length) (1 + 0.2 depth/width), depth/width counted to 2.5";
    from Published "venkatramaiah" "Skempton's equation, p. 593; its end at 2.5 in a second textbook";
    valid "undrained clay, width positive and no more than the length"
        if |v| v.width <= v.length;
    value |s| {
        let (gain, deepest) = SKEMPTON;
        let one = Ratio::from_si(1.0);
        let depth = (s.depth / s.width).min(Ratio::from_si(deepest));
        5.0 * (one + gain * s.width / s.length) * (one + gain * depth)
    };

    /// Safety of a pit in clay against heave of its base: `F = N_c s_u / (gamma H + q)`.
    ///
    /// For any depth; walls that reach into stiffer ground are not counted.
    BaseHeave "safety against base heave" {
        /// Bearing factor of the base.
        bearing_factor "N_c": Ratio as Ratio [> 0.0],
        /// Undrained strength below the base.
        undrained_strength "s_u": Pressure as UnitFriction [> 0.0],
        /// Unit weight of the ground (total).
        unit_weight "gamma": UnitWeight as UnitWeight,
        /// Depth of the pit.
        depth "H": Length as Depth [>= 0.0],
        /// Load beside the pit.
        surcharge "q": Pressure as UnitFriction [>= 0.0],
    } -> Ratio as Ratio;
    form "F = bearing_factor undrained_strength / (unit_weight depth + surcharge)";
    from Memory "bjerrum_eide_1956" "base failure of braced cuts in clay";
    valid "undrained clay, load on the base level positive"
        if |v| (v.unit_weight * v.depth + v.surcharge).value > 0.0;
    value |s| s.bearing_factor * s.undrained_strength / (s.unit_weight * s.depth + s.surcharge);

    /// Safety of a wide, shallow pit in clay against heave of its base:
    /// `F = 5.7 s_u / (gamma H + q - s_u H / (0.7 B))`.
    ///
    /// Deeper than wide, the sides carry too much. Use the lesser of this and [`BaseHeave`].
    BaseHeaveTerzaghi "safety against base heave, Terzaghi" {
        /// Undrained strength.
        undrained_strength "s_u": Pressure as UnitFriction [> 0.0],
        /// Unit weight of the ground (total).
        unit_weight "gamma": UnitWeight as UnitWeight,
        /// Depth of the pit.
        depth "H": Length as Depth [>= 0.0],
        /// Shorter side.
        width "B": Length as Distance [> 0.0],
        /// Load beside the pit.
        surcharge "q": Pressure as UnitFriction [>= 0.0],
    } -> Ratio as Ratio;
    form "F = 5.7 undrained_strength / (unit_weight depth + surcharge - undrained_strength depth / (0.7 width))";
    from Memory "terzaghi_1943" "heave of the base of a cut in clay";
    valid "undrained clay, depth no more than the width, load above the strength of the sides"
        if |v| v.depth <= v.width && v.net_load().value > 0.0;
    value |s| TERZAGHI.0 * s.undrained_strength / s.net_load();

    /// Safety of the soil left under a pit against the water below it, by weight alone: `F = gamma t / u`.
    ///
    /// Friction on the walls is left out.
    ///
    /// ```
    /// // 3 m of clay of 2 t/m3 broke under 6 m of water: just 1.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pit_base::BaseUplift;
    /// use jackpull::quantity::{FromText, Length, Pressure, UnitWeight};
    /// let safety = BaseUplift {
    ///     unit_weight: UnitWeight::from_text("2 tf/m3")?,
    ///     thickness: Length::from_text("3 m")?,
    ///     water_pressure: Pressure::from_text("6 tf/m2")?,
    /// };
    /// assert!((safety.value().value - 1.0).abs() < 1e-9);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    BaseUplift "safety of the base against uplift" {
        /// Unit weight of the soil left (saturated).
        unit_weight "gamma": UnitWeight as UnitWeight [> 0.0],
        /// Its thickness (from the base to the foot of the tight layer).
        thickness "t": Length as Depth [>= 0.0],
        /// Water pressure at its foot.
        water_pressure "u": Pressure as UnitFriction [> 0.0],
    } -> Ratio as Ratio;
    form "F = unit_weight thickness / water_pressure";
    from Published "nptel_soil_mechanics" "chapter 5, example 2";
    valid "water pressure and unit weight positive, thickness not negative";
    value |s| s.unit_weight * s.thickness / s.water_pressure;

    /// Seepage gradient at which soil without cohesion boils: `i_c = gamma' / gamma_w`.
    ///
    /// For flow upwards; about 1 for most soils.
    CriticalGradient "critical gradient" {
        /// Unit weight of the soil under water, less that of water.
        buoyant_weight "gamma'": UnitWeight as UnitWeight [> 0.0],
        /// Unit weight of water.
        water_weight "gamma_w": UnitWeight as UnitWeight [> 0.0],
    } -> Ratio as Ratio;
    form "i_c = buoyant_weight / water_weight";
    from Memory "terzaghi_peck_1967" "seepage upwards, boiling of sand; not in the second-hand copy, recalled";
    valid "both weights positive";
    value |s| s.buoyant_weight / s.water_weight;

    /// Length of soil plug that holds a head of water: `L = n h / i_c`, the safety against boiling solved for the path.
    ///
    /// The plug is whole soil, not what an auger has loosened. Boiling is a matter of upward flow; along a level casing
    /// the plug may slide first: the longer of this and [`PlugAgainstSliding`] counts.
    PlugLength "length of a soil plug" {
        /// Factor on the gradient.
        factor "n": Ratio as Ratio [>= 1.0],
        /// Head of water (over the invert of the casing).
        head "h": Length as Depth [>= 0.0],
        /// Critical gradient.
        critical_gradient "i_c": Ratio as Ratio [> 0.0],
    } -> Length as Distance;
    form "L = factor head / critical_gradient";
    from Judgement "jackpull" "gradient of upward boiling taken for a plug in a casing";
    valid "factor at least 1, critical gradient positive, head not negative";
    value |s| s.factor * s.head / s.critical_gradient;

    /// Length of soil plug that its own weight keeps from sliding in a level casing: `L = n gamma_w h / (gamma'
    /// tan(d))`.
    ///
    /// The side pressure of a plug that is packed tight is left out.
    PlugAgainstSliding "length of a soil plug against sliding" {
        /// Factor on the water force.
        factor "n": Ratio as Ratio [>= 1.0],
        /// Head of water (over the invert of the casing).
        head "h": Length as Depth [>= 0.0],
        /// Buoyant unit weight of the plug.
        buoyant "gamma'": UnitWeight as UnitWeight [> 0.0],
        /// Friction angle between plug and casing.
        interface_angle "d": Angle as Angle [> 0.0],
    } -> Length as Distance;
    form "L = factor gamma_water head/(buoyant tan(interface_angle))";
    from Judgement "jackpull" "water force on the face of the plug against friction of its weight; statics";
    valid "factor at least 1, buoyant unit weight positive, angle above 0 and below 45 deg, head not negative"
        if |v| v.interface_angle.value < core::f64::consts::FRAC_PI_4;
    value |s| {
        let water = super::soil::water_unit_weight();
        s.factor * s.head * (water / (s.buoyant * s.interface_angle.tan()))
    };
}

impl BaseHeaveTerzaghi {
    fn net_load(&self) -> Pressure {
        let sides = self.undrained_strength * self.depth / (TERZAGHI.1 * self.width);
        self.unit_weight * self.depth + self.surcharge - sides
    }
}
