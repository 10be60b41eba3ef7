//! Resistance of a stem, casing or pipe that is pushed: friction on the outside, and what stands in front.

use crate::law::law;
use crate::quantity::{Angle, Force, Length, LineLoad, Pressure, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_4, PI};

law! {
    /// Friction on the outside of a body in the bore, from a mean unit friction over the whole outside area.
    ///
    /// `F = tau pi D L`
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | tau | `unit_friction` | pressure |
    /// | D | `outside_diameter` | length |
    /// | L | `length` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** non-negative arguments.
    ///
    /// ```
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::FrictionForce;
    /// use jackpull::quantity::{FromText, Length, Pressure, Force};
    /// let force = FrictionForce {
    ///     unit_friction: Pressure::from_text("5 kPa")?,
    ///     outside_diameter: Length::from_text("600 mm")?,
    ///     length: Length::from_text("100 m")?,
    /// };
    /// assert!((force.value() - Force::from_text("942.478 kN")?).abs() < Force::from_text("1 N")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    FrictionForce {
        /// Mean unit friction.
        unit_friction: Pressure as UnitFriction,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Length in the bore.
        length: Length as Distance,
    } -> Force as Thrust
    { Equation {
        name: "friction on the outside area",
        form: "F = unit_friction pi outside_diameter length",
        source: "pja_introduction",
        locator: "sec. 6, p. 23: resistance per outside area of the pipeline",
        mark: Mark::Published,
        valid: "unit friction, diameter and length not negative",
    } }
    valid |v| v.unit_friction.value >= 0.0 && v.outside_diameter.value >= 0.0 && v.length.value >= 0.0;
    value |s| s.unit_friction * (PI * s.outside_diameter * s.length);
}

law! {
    /// Resistance at an enlarging head: a pressure on the ring that is cut, not less than a least force.
    ///
    /// `F = max(p (pi/4) (D² - d²), F_least)`
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | p | `pressure` | pressure |
    /// | D | `cut_diameter` | length |
    /// | d | `guided_diameter` (bore already there) | length |
    /// | F_least | `least` | force |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a head larger than the bore it follows.
    FaceForce {
        /// Pressure on the cut area.
        pressure: Pressure as UnitFriction,
        /// Diameter that is cut.
        cut_diameter: Length as Diameter,
        /// Diameter of the bore already there.
        guided_diameter: Length as Diameter,
        /// Least force.
        least: Force as Thrust,
    } -> Force as Thrust
    { Equation {
        name: "resistance at the enlarging head",
        form: "F = max(pressure (pi/4) (cut_diameter^2 - guided_diameter^2), least)",
        source: "jackpull",
        locator: "pressure on the cut ring; the pressures are trade habit, no agreed formula exists",
        mark: Mark::CommonPractice,
        valid: "cut diameter above guided diameter, pressure not negative",
    } }
    valid |v| v.cut_diameter > v.guided_diameter && v.pressure.value >= 0.0;
    value |s| {
        let ring = FRAC_PI_4 * (s.cut_diameter * s.cut_diameter - s.guided_diameter * s.guided_diameter);
        (s.pressure * ring).max(s.least)
    };
}

law! {
    /// Share of its own weight that a pipe pushed uphill adds to the thrust: `F = w L sin(phi)`; pushed downhill it is
    /// not credited, since lubricant carries most of the weight.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | w | `pipe_weight` | force per length |
    /// | L | `length` | length |
    /// | phi | `rise` (positive: pushed uphill) | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** slopes within 45 deg.
    WeightAlongGrade {
        /// Weight of the pipe.
        pipe_weight: LineLoad as LineWeight,
        /// Length in the bore.
        length: Length as Distance,
        /// Slope, positive when the push goes uphill.
        rise: Angle as Angle,
    } -> Force as Thrust
    { Equation {
        name: "weight of the pipe along the grade",
        form: "F = pipe_weight length sin(rise), no less than 0",
        source: "jackpull",
        locator: "statics; no credit downhill",
        mark: Mark::Judgement,
        valid: "slope within 45 deg, weight and length not negative",
    } }
    valid |v| v.rise.value.abs() <= FRAC_PI_4 && v.pipe_weight.value >= 0.0 && v.length.value >= 0.0;
    value |s| (s.pipe_weight * s.length * s.rise.sin()).max(Force::default());
}

law! {
    /// Share of its own weight that a pipe adds to the thrust uphill and gives back downhill: `F = w L sin(phi)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | w | `pipe_weight` | force per length |
    /// | L | `length` | length |
    /// | phi | `rise` (positive: pushed uphill) | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** slopes within 45 deg. For the low level
    /// alone: what is not counted on is [`WeightAlongGrade`].
    SignedWeightAlongGrade {
        /// Weight of the pipe.
        pipe_weight: LineLoad as LineWeight,
        /// Length in the bore.
        length: Length as Distance,
        /// Slope, positive when the push goes uphill.
        rise: Angle as Angle,
    } -> Force as Thrust
    { Equation {
        name: "weight along the grade, up or down",
        form: "F = pipe_weight length sin(rise)",
        source: "jackpull",
        locator: "statics",
        mark: Mark::Judgement,
        valid: "slope within 45 deg, weight and length not negative",
    } }
    valid |v| v.rise.value.abs() <= FRAC_PI_4 && v.pipe_weight.value >= 0.0 && v.length.value >= 0.0;
    value |s| s.pipe_weight * s.length * s.rise.sin();
}

law! {
    /// End resistance of the pilot stem, as a cone: `F = q N (pi/4) d²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | q | `cone_resistance_per_blow` | pressure |
    /// | N | `blows` (SPT N) | ratio |
    /// | d | `diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** N from 0 to 50; denser ground refuses a
    /// displacement pilot.
    ///
    /// ```
    /// // A 100 mm tip at N 30: 106 kN with 0.45 MPa per blow.
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::PilotTipAsCone;
    /// use jackpull::quantity::{Force, FromText, Length, Pressure, Ratio};
    /// let tip = PilotTipAsCone {
    ///     cone_resistance_per_blow: Pressure::from_text("0.45 MPa")?,
    ///     blows: Ratio::from_text("30")?,
    ///     diameter: Length::from_text("100 mm")?,
    /// };
    /// assert!((tip.value() - Force::from_text("106 kN")?).abs() < Force::from_text("0.5 kN")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PilotTipAsCone {
        /// Cone resistance per SPT blow.
        cone_resistance_per_blow: Pressure as Strength,
        /// SPT N.
        blows: Ratio as Count,
        /// Tip diameter.
        diameter: Length as Diameter,
    } -> Force as Thrust
    { Equation {
        name: "pilot tip resistance, as a cone",
        form: "F = cone_resistance_per_blow blows (pi/4) diameter^2",
        source: "jackpull",
        locator: "cone penetration of the tip, q_c about 0.45 N MPa in sand",
        mark: Mark::Judgement,
        valid: "SPT N 0 to 50",
    } }
    valid |v| (0.0..=50.0).contains(&v.blows.value);
    value |s| s.cone_resistance_per_blow * s.blows * (FRAC_PI_4 * s.diameter * s.diameter);
}

law! {
    /// End resistance of the pilot stem in clay: bearing factor times undrained strength, the strength taken from
    /// the SPT: `F = f s N (pi/4) d²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | f | `bearing_factor` | ratio |
    /// | s | `strength_per_blow` | pressure |
    /// | N | `blows` (SPT N) | ratio |
    /// | d | `diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** N from 0 to 50.
    PilotTipInClay {
        /// End bearing factor on undrained strength.
        bearing_factor: Ratio as Ratio,
        /// Undrained strength per SPT blow.
        strength_per_blow: Pressure as UnitFriction,
        /// SPT N.
        blows: Ratio as Count,
        /// Tip diameter.
        diameter: Length as Diameter,
    } -> Force as Thrust
    { Equation {
        name: "pilot tip resistance in clay",
        form: "F = bearing_factor strength_per_blow blows (pi/4) diameter^2",
        source: "jackpull",
        locator: "end bearing of a driven tip, 9 to 12 times undrained strength",
        mark: Mark::Judgement,
        valid: "SPT N 0 to 50",
    } }
    valid |v| (0.0..=50.0).contains(&v.blows.value);
    value |s| s.bearing_factor * s.strength_per_blow * s.blows * (FRAC_PI_4 * s.diameter * s.diameter);
}

law! {
    /// End resistance of the pilot stem in clay of a known strength: `F = f s_u (pi/4) d²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | f | `bearing_factor` | ratio |
    /// | s_u | `strength` | pressure |
    /// | d | `diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive strength.
    PilotTipByStrength {
        /// End bearing factor on undrained strength.
        bearing_factor: Ratio as Ratio,
        /// Undrained strength.
        strength: Pressure as UnitFriction,
        /// Tip diameter.
        diameter: Length as Diameter,
    } -> Force as Thrust
    { Equation {
        name: "pilot tip resistance in clay of known strength",
        form: "F = bearing_factor strength (pi/4) diameter^2",
        source: "jackpull",
        locator: "end bearing of a driven tip, 9 to 12 times undrained strength",
        mark: Mark::Judgement,
        valid: "strength positive",
    } }
    valid |v| v.strength.value > 0.0;
    value |s| s.bearing_factor * s.strength * (FRAC_PI_4 * s.diameter * s.diameter);
}

law! {
    /// Face resistance of a slurry or mud machine, Japanese form: earth pressure by blow count and slurry over water,
    /// on the whole face: `F = (pi/4) D² (p N + p_w + dp)`, N no more than its most.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | p | `pressure_per_blow` (4 kPa) | pressure |
    /// | N | `blows` | ratio |
    /// | N_max | `blows_most` (50) | ratio |
    /// | p_w | `water_pressure` | pressure |
    /// | dp | `slurry_over_water` (20 kPa) | pressure |
    /// | D | `cut_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** arguments that are not negative.
    ///
    /// ```
    /// // 1.24 m, N 20, water 60 kPa and 20 kPa over it: 193.2 kN.
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::SlurryFace;
    /// use jackpull::quantity::{Force, FromText, Length, Pressure, Ratio};
    /// let face = SlurryFace {
    ///     pressure_per_blow: Pressure::from_text("4 kPa")?,
    ///     blows: Ratio::from_text("20")?,
    ///     blows_most: Ratio::from_text("50")?,
    ///     water_pressure: Pressure::from_text("60 kPa")?,
    ///     slurry_over_water: Pressure::from_text("20 kPa")?,
    ///     cut_diameter: Length::from_text("1.24 m")?,
    /// };
    /// assert!((face.value() - Force::from_text("193.2 kN")?).abs() < Force::from_text("50 N")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    SlurryFace {
        /// Earth pressure per blow.
        pressure_per_blow: Pressure as UnitFriction,
        /// Blow count.
        blows: Ratio as Count,
        /// Blow count beyond which the pressure does not grow.
        blows_most: Ratio as Count,
        /// Pressure of the groundwater.
        water_pressure: Pressure as UnitFriction,
        /// Pressure of the slurry over that of the water.
        slurry_over_water: Pressure as UnitFriction,
        /// Diameter that is cut.
        cut_diameter: Length as Diameter,
    } -> Force as Thrust
    { Equation {
        name: "face resistance of a slurry machine",
        form: "F = (pi/4) cut_diameter^2 (pressure_per_blow min(blows, blows_most) + water_pressure + slurry_over_water)",
        source: "japan_sewage_guide",
        locator: "face term, slurry and mud machines",
        mark: Mark::Memory,
        valid: "no argument negative",
    } }
    valid |v| v.pressure_per_blow.value >= 0.0
        && v.blows.value >= 0.0
        && v.blows_most.value >= 0.0
        && v.water_pressure.value >= 0.0
        && v.slurry_over_water.value >= 0.0
        && v.cut_diameter.value >= 0.0;
    value |s| {
        let earth = s.pressure_per_blow * s.blows.min(s.blows_most);
        (earth + s.water_pressure + s.slurry_over_water) * (FRAC_PI_4 * s.cut_diameter * s.cut_diameter)
    };
}

law! {
    /// Resistance of an open cutting edge, Chinese code: `F = pi (D - t) t R`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | R | `pressure` (500 kPa) | pressure |
    /// | D | `cut_diameter` | length |
    /// | t | `thickness` (of the edge) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** an edge thinner than half the diameter.
    CuttingEdge {
        /// Pressure under the edge.
        pressure: Pressure as UnitFriction,
        /// Diameter that is cut.
        cut_diameter: Length as Diameter,
        /// Thickness of the edge.
        thickness: Length as Wall,
    } -> Force as Thrust
    { Equation {
        name: "resistance of a cutting edge",
        form: "F = pi (cut_diameter - thickness) thickness pressure",
        source: "gb_50268",
        locator: "clause 6.3.4, Table 6.3.4-1, open face with a cutting ring",
        mark: Mark::Memory,
        valid: "edge positive and thinner than half the diameter, pressure not negative",
    } }
    valid |v| v.thickness.value > 0.0 && 2.0 * v.thickness < v.cut_diameter && v.pressure.value >= 0.0;
    value |s| s.pressure * (PI * (s.cut_diameter - s.thickness) * s.thickness);
}

law! {
    /// Face term of a hand or cutting-edge shield, Japanese form: `F = pi q D N'`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | q | `line_load` (13.2 kN/m) | force per length |
    /// | D | `cut_diameter` | length |
    /// | N' | `index` (1.0 ordinary, 2.5 sand, 3.0 hard ground or gravel; no blow count) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** arguments that are not negative.
    ///
    /// ```
    /// // 1.2 m in sand: 124.4 kN.
    /// use jackpull::law::Law;
    /// use jackpull::laws::thrust::OpenShieldFace;
    /// use jackpull::quantity::{Force, FromText, Length, LineLoad, Ratio};
    /// let face = OpenShieldFace {
    ///     line_load: LineLoad::from_text("13.2 kN/m")?,
    ///     cut_diameter: Length::from_text("1.2 m")?,
    ///     index: Ratio::from_text("2.5")?,
    /// };
    /// assert!((face.value() - Force::from_text("124.4 kN")?).abs() < Force::from_text("50 N")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    OpenShieldFace {
        /// Force per length of the rim.
        line_load: LineLoad as LineWeight,
        /// Diameter that is cut.
        cut_diameter: Length as Diameter,
        /// Index of the ground.
        index: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "face resistance of an open shield",
        form: "F = pi line_load cut_diameter index",
        source: "japan_sewage_guide",
        locator: "jacking force, hand or cutting-edge shield, face term",
        mark: Mark::Memory,
        valid: "no argument negative",
    } }
    valid |v| v.line_load.value >= 0.0 && v.cut_diameter.value >= 0.0 && v.index.value >= 0.0;
    value |s| s.line_load * (PI * s.cut_diameter * s.index);
}
