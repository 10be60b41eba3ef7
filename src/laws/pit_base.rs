//! Whether the base of a pit, and the soil in the mouth of a casing, stay where they are.

use crate::law::law;
use crate::quantity::{Angle, Length, Measure, Pressure, Ratio, UnitWeight};
use crate::source::{Equation, Mark};

/// Gain of the bearing factor per depth or shape ratio, and the depth ratio at which it ends (Skempton 1951, read in
/// two textbooks).
const SKEMPTON: (f64, f64) = (0.2, 2.5);

law! {
    /// Bearing factor of the base of a rectangular pit in clay: `N_c = 5 (1 + 0.2 B/L) (1 + 0.2 H/B)`, H/B counted to 2.5.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `depth` | length |
    /// | B | `width` (the shorter side) | length |
    /// | L | `length` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** undrained clay and a width no more than the
    /// length.
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
    BearingFactorSkempton {
        /// Depth of the pit.
        depth: Length as Depth,
        /// Shorter side.
        width: Length as Distance,
        /// Longer side.
        length: Length as Distance,
    } -> Ratio as Ratio
    { Equation {
        name: "bearing factor of the base, Skempton",
        form: "N_c = 5 (1 + 0.2 width/length) (1 + 0.2 depth/width), depth/width counted to 2.5",
        source: "venkatramaiah",
        locator: "Skempton's equation, p. 593; its end at 2.5 in a second textbook",
        mark: Mark::Published,
        valid: "undrained clay, width positive and no more than the length",
    } }
    valid |v| v.width.value > 0.0 && v.width <= v.length && v.depth.value >= 0.0;
    value |s| {
        let (gain, deepest) = SKEMPTON;
        let one = Ratio::from_si(1.0);
        let depth = (s.depth / s.width).min(Ratio::from_si(deepest));
        5.0 * (one + gain * s.width / s.length) * (one + gain * depth)
    };
}

law! {
    /// Safety of a pit in clay against heave of its base: `F = N_c s_u / (gamma H + q)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | N_c | `bearing_factor` | ratio |
    /// | s_u | `undrained_strength` (below the base) | pressure |
    /// | gamma | `unit_weight` (total) | force per volume |
    /// | H | `depth` | length |
    /// | q | `surcharge` (beside the pit) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** undrained clay, any depth; walls that reach
    /// into stiffer ground are not counted.
    BaseHeave {
        /// Bearing factor of the base.
        bearing_factor: Ratio as Ratio,
        /// Undrained strength below the base.
        undrained_strength: Pressure as UnitFriction,
        /// Unit weight of the ground.
        unit_weight: UnitWeight as UnitWeight,
        /// Depth of the pit.
        depth: Length as Depth,
        /// Load beside the pit.
        surcharge: Pressure as UnitFriction,
    } -> Ratio as Ratio
    { Equation {
        name: "safety against base heave",
        form: "F = bearing_factor undrained_strength / (unit_weight depth + surcharge)",
        source: "bjerrum_eide_1956",
        locator: "base failure of braced cuts in clay",
        mark: Mark::Memory,
        valid: "undrained clay, load on the base level positive",
    } }
    valid |v| v.bearing_factor.value > 0.0
        && v.undrained_strength.value > 0.0
        && v.depth.value >= 0.0
        && v.surcharge.value >= 0.0
        && (v.unit_weight * v.depth + v.surcharge).value > 0.0;
    value |s| s.bearing_factor * s.undrained_strength / (s.unit_weight * s.depth + s.surcharge);
}

/// Bearing factor, and the share of the width that slides (Terzaghi 1943; recalled).
const TERZAGHI: (f64, f64) = (5.7, 0.7);

law! {
    /// Safety of a wide, shallow pit in clay against heave of its base:
    /// `F = 5.7 s_u / (gamma H + q - s_u H / (0.7 B))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_u | `undrained_strength` | pressure |
    /// | gamma | `unit_weight` (total) | force per volume |
    /// | H | `depth` | length |
    /// | B | `width` | length |
    /// | q | `surcharge` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** pits no deeper than wide: deeper, the sides
    /// carry too much. Use the lesser of this and [`BaseHeave`].
    BaseHeaveTerzaghi {
        /// Undrained strength.
        undrained_strength: Pressure as UnitFriction,
        /// Unit weight of the ground.
        unit_weight: UnitWeight as UnitWeight,
        /// Depth of the pit.
        depth: Length as Depth,
        /// Shorter side.
        width: Length as Distance,
        /// Load beside the pit.
        surcharge: Pressure as UnitFriction,
    } -> Ratio as Ratio
    { Equation {
        name: "safety against base heave, Terzaghi",
        form: "F = 5.7 undrained_strength / (unit_weight depth + surcharge - undrained_strength depth / (0.7 width))",
        source: "terzaghi_1943",
        locator: "heave of the base of a cut in clay",
        mark: Mark::Memory,
        valid: "undrained clay, depth no more than the width, load above the strength of the sides",
    } }
    valid |v| v.undrained_strength.value > 0.0
        && v.width.value > 0.0
        && v.depth.value >= 0.0
        && v.depth <= v.width
        && v.surcharge.value >= 0.0
        && v.net_load().value > 0.0;
    value |s| TERZAGHI.0 * s.undrained_strength / s.net_load();
}

impl BaseHeaveTerzaghi {
    fn net_load(&self) -> Pressure {
        let sides = self.undrained_strength * self.depth / (TERZAGHI.1 * self.width);
        self.unit_weight * self.depth + self.surcharge - sides
    }
}

law! {
    /// Safety of the soil left under a pit against the water below it, by weight alone: `F = gamma t / u`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma | `unit_weight` (saturated) | force per volume |
    /// | t | `thickness` (from the base to the foot of the tight layer) | length |
    /// | u | `water_pressure` (at the foot) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive pressure; friction on the walls is
    /// left out.
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
    BaseUplift {
        /// Unit weight of the soil left.
        unit_weight: UnitWeight as UnitWeight,
        /// Its thickness.
        thickness: Length as Depth,
        /// Water pressure at its foot.
        water_pressure: Pressure as UnitFriction,
    } -> Ratio as Ratio
    { Equation {
        name: "safety of the base against uplift",
        form: "F = unit_weight thickness / water_pressure",
        source: "nptel_soil_mechanics",
        locator: "chapter 5, example 2",
        mark: Mark::Published,
        valid: "water pressure and unit weight positive, thickness not negative",
    } }
    valid |v| v.water_pressure.value > 0.0 && v.unit_weight.value > 0.0 && v.thickness.value >= 0.0;
    value |s| s.unit_weight * s.thickness / s.water_pressure;
}

law! {
    /// Seepage gradient at which soil without cohesion boils: `i_c = gamma' / gamma_w`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | gamma' | `buoyant_weight` | force per volume |
    /// | gamma_w | `water_weight` | force per volume |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** flow upwards; about 1 for most soils.
    CriticalGradient {
        /// Unit weight of the soil under water, less that of water.
        buoyant_weight: UnitWeight as UnitWeight,
        /// Unit weight of water.
        water_weight: UnitWeight as UnitWeight,
    } -> Ratio as Ratio
    { Equation {
        name: "critical gradient",
        form: "i_c = buoyant_weight / water_weight",
        source: "terzaghi_peck_1967",
        locator: "seepage upwards, boiling of sand; not in the second-hand copy, recalled",
        mark: Mark::Memory,
        valid: "both weights positive",
    } }
    valid |v| v.buoyant_weight.value > 0.0 && v.water_weight.value > 0.0;
    value |s| s.buoyant_weight / s.water_weight;
}

law! {
    /// Safety against boiling along a path of seepage, at the base of a pit or through the soil plug in a casing:
    /// `F = i_c L / h`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | i_c | `critical_gradient` | ratio |
    /// | L | `path` (through soil) | length |
    /// | h | `head` (lost on the path) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive head. A gradient even along the path
    /// is assumed; at the foot of a wall it is steeper. In a level casing the critical gradient of upward flow is taken
    /// over as it stands.
    SeepageSafety {
        /// Critical gradient.
        critical_gradient: Ratio as Ratio,
        /// Length of the path through soil.
        path: Length as Distance,
        /// Head that is lost on it.
        head: Length as Depth,
    } -> Ratio as Ratio
    { Equation {
        name: "safety against boiling",
        form: "F = critical_gradient path / head",
        source: "terzaghi_peck_1967",
        locator: "seepage upwards, boiling of sand; not in the second-hand copy, recalled",
        mark: Mark::Memory,
        valid: "critical gradient and head positive, path not negative",
    } }
    valid |v| v.critical_gradient.value > 0.0 && v.head.value > 0.0 && v.path.value >= 0.0;
    value |s| s.critical_gradient * s.path / s.head;
}

law! {
    /// Length of soil plug that holds a head of water: `L = n h / i_c`, the safety against boiling solved for the path.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | n | `factor` | ratio |
    /// | h | `head` (over the invert of the casing) | length |
    /// | i_c | `critical_gradient` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a head not negative. The plug is whole soil,
    /// not what an auger has loosened. Boiling is a matter of upward flow; along a level casing the plug may slide first:
    /// the longer of this and [`PlugAgainstSliding`] counts.
    PlugLength {
        /// Factor on the gradient.
        factor: Ratio as Ratio,
        /// Head of water.
        head: Length as Depth,
        /// Critical gradient.
        critical_gradient: Ratio as Ratio,
    } -> Length as Distance
    { Equation {
        name: "length of a soil plug",
        form: "L = factor head / critical_gradient",
        source: "jackpull",
        locator: "gradient of upward boiling taken for a plug in a casing",
        mark: Mark::Judgement,
        valid: "factor at least 1, critical gradient positive, head not negative",
    } }
    valid |v| v.factor.value >= 1.0 && v.critical_gradient.value > 0.0 && v.head.value >= 0.0;
    value |s| s.factor * s.head / s.critical_gradient;
}

law! {
    /// Length of soil plug that its own weight keeps from sliding in a level casing: `L = n gamma_w h / (gamma' tan(d))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | n | `factor` | ratio |
    /// | h | `head` (over the invert of the casing) | length |
    /// | gamma' | `buoyant` | force per volume |
    /// | d | `interface_angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** an angle above 0 and below 45 deg. The side
    /// pressure of a plug that is packed tight is left out.
    PlugAgainstSliding {
        /// Factor on the water force.
        factor: Ratio as Ratio,
        /// Head of water.
        head: Length as Depth,
        /// Buoyant unit weight of the plug.
        buoyant: UnitWeight as UnitWeight,
        /// Friction angle between plug and casing.
        interface_angle: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "length of a soil plug against sliding",
        form: "L = factor gamma_water head/(buoyant tan(interface_angle))",
        source: "jackpull",
        locator: "water force on the face of the plug against friction of its weight; statics",
        mark: Mark::Judgement,
        valid: "factor at least 1, buoyant unit weight positive, angle above 0 and below 45 deg, head not negative",
    } }
    valid |v| v.factor.value >= 1.0
        && v.head.value >= 0.0
        && v.buoyant.value > 0.0
        && v.interface_angle.value > 0.0
        && v.interface_angle.value < core::f64::consts::FRAC_PI_4;
    value |s| {
        let water = UnitWeight::from_si(super::soil::WATER_UNIT_WEIGHT);
        s.factor * s.head * (water / (s.buoyant * s.interface_angle.tan()))
    };
}
