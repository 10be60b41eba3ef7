//! What a pulled plastic pipe, its joint and its weak link can bear, beside the section laws of `pe`.

use crate::law::law;
use crate::quantity::{Force, Length, Measure, Pressure, Ratio, ThermodynamicTemperature};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_4, PI};

law! {
    /// Allowable stress of fused PVC in pull and bending together: `s = (s_t / n) f_temp f_joint`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_t | `tensile` (least of the cell class) | pressure |
    /// | n | `safety` | ratio |
    /// | f_temp | `temperature_factor` | ratio |
    /// | f_joint | `joint_factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); rows of `pvc_stress`, `pvc_ratio` and
    /// `pvc_temperature`. **Valid for** factors up to 1 and a safety of at least 1. The joint factor is the maker's of
    /// the joint: without one there is no allowable for gasketed or segmental pipe.
    PvcPullStress {
        /// Least tensile strength.
        tensile: Pressure as Strength,
        /// Safety on it.
        safety: Ratio as Ratio,
        /// Factor for the temperature of the wall.
        temperature_factor: Ratio as Ratio,
        /// Factor for the joint.
        joint_factor: Ratio as Ratio,
    } -> Pressure as Strength
    { Equation {
        name: "allowable stress of fused PVC",
        form: "s = (tensile / safety) temperature_factor joint_factor",
        source: "trade_practice",
        locator: "US practice for pulled pipe: least tensile strength over 2.5; the other two factors are ours",
        mark: Mark::Judgement,
        valid: "safety at least 1, factors above 0 and at most 1",
    } }
    valid |v| v.safety.value >= 1.0
        && [v.temperature_factor, v.joint_factor].iter().all(|factor| factor.value > 0.0 && factor.value <= 1.0);
    value |s| s.tensile / s.safety * s.temperature_factor * s.joint_factor;
}

law! {
    /// A factor between two tabulated temperatures, on the straight line.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T | `temperature` | temperature |
    /// | | `below`, `factor_below`: the row at or below | temperature, ratio |
    /// | | `above`, `factor_above`: the row at or above | temperature, ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** temperatures between the rows.
    FactorAtTemperature {
        /// Temperature of the wall.
        temperature: ThermodynamicTemperature as Temperature,
        /// Temperature of the row below.
        below: ThermodynamicTemperature as Temperature,
        /// Its factor.
        factor_below: Ratio as Ratio,
        /// Temperature of the row above.
        above: ThermodynamicTemperature as Temperature,
        /// Its factor.
        factor_above: Ratio as Ratio,
    } -> Ratio as Ratio
    { Equation {
        name: "factor at the wall temperature",
        form: "f = factor_below + (factor_above - factor_below) (temperature - below) / (above - below)",
        source: "jackpull",
        locator: "straight between the rows of a table of factors",
        mark: Mark::Judgement,
        valid: "temperature between the two rows",
    } }
    valid |v| v.below <= v.temperature && v.temperature <= v.above;
    value |s| {
        let span = s.above.value - s.below.value;
        let share = if span > 0.0 { (s.temperature.value - s.below.value) / span } else { 0.0 };
        s.factor_below + (s.factor_above - s.factor_below) * share
    };
}

law! {
    /// Pull that is left to a bent pipe: `F = max(s - E D / (2 R), 0) pi (D - t) t`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `allowable` (pull and bending together) | pressure |
    /// | E | `modulus` | pressure |
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    /// | R | `radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a radius of at least 10 diameters. For PE
    /// the modulus is that of the duration of the pull; for any plastic the two stresses share one strength.
    ///
    /// ```
    /// // PVC 12 in DR 18 on a radius of 250 diameters: 57,400 lb, not 80,400.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pull_limits::TensionBesideBend;
    /// use jackpull::quantity::{Force, FromText, Length, Pressure};
    /// let left = TensionBesideBend {
    ///     allowable: Pressure::from_text("2800 psi")?,
    ///     modulus: Pressure::from_text("400000 psi")?,
    ///     outside_diameter: Length::from_text("13.20 in")?,
    ///     wall: Length::from_text("13.20 in")? / 18.0,
    ///     radius: Length::from_text("275 ft")?,
    /// };
    /// assert!((left.value() - Force::from_text("57400 lbf")?).abs() < Force::from_text("60 lbf")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    TensionBesideBend {
        /// Allowable stress.
        allowable: Pressure as Strength,
        /// Modulus.
        modulus: Pressure as Modulus,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
        /// Radius of the bend.
        radius: Length as Distance,
    } -> Force as Pull
    { Equation {
        name: "pull beside the bend",
        form: "F = max(allowable - modulus outside_diameter / (2 radius), 0) pi (outside_diameter - wall) wall",
        source: "astm_f1962_1999",
        locator: "peak tensile stress, both terms, solved for the tension",
        mark: Mark::Memory,
        valid: "radius at least 10 outside diameters, wall positive and below half the outside diameter",
    } }
    valid |v| v.radius >= 10.0 * v.outside_diameter && v.wall.value > 0.0 && 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let left = s.allowable - s.modulus * s.outside_diameter / (2.0 * s.radius);
        let left = if left.value > 0.0 { left } else { Pressure::default() };
        left * (PI * (s.outside_diameter - s.wall) * s.wall)
    };
}

/// Largest strain that the laws here are read for: above it PE yields in pulls of hours (ours; the sum of pull and bend
/// is printed as 3 to 4 %).
const MOST_STRAIN: f64 = 0.05;

law! {
    /// Strain of the outer fibre in a bend: `e = D / (2 R)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | R | `radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** radii of at least 10 diameters.
    BendStrain {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Radius.
        radius: Length as Distance,
    } -> Ratio as Percent
    { Equation {
        name: "strain of the bend",
        form: "e = outside_diameter / (2 radius)",
        source: "astm_f1962_1999",
        locator: "bending strain",
        mark: Mark::Memory,
        valid: "radius at least 10 outside diameters",
    } }
    valid |v| v.radius >= 10.0 * v.outside_diameter && v.outside_diameter.value > 0.0;
    value |s| s.outside_diameter / (2.0 * s.radius);
}

law! {
    /// Strain of the pull at the end of it: `e = s / E`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `stress` | pressure |
    /// | E | `modulus` (apparent, at the duration of the pull) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** strains up to 5 %. The source keeps it to
    /// 2 %, and pull and bend together to 3 to 4 %: rows of table `pull_strain`.
    PullStrain {
        /// Axial stress.
        stress: Pressure as Strength,
        /// Apparent modulus.
        modulus: Pressure as Modulus,
    } -> Ratio as Percent
    { Equation {
        name: "strain of the pull",
        form: "e = stress / modulus",
        source: "stein_2001",
        locator: "eq. 5-31, strain while pulling",
        mark: Mark::Published,
        valid: "strain up to 5 %, modulus positive",
    } }
    valid |v| v.modulus.value > 0.0 && v.stress.value >= 0.0 && v.stress <= MOST_STRAIN * v.modulus;
    value |s| s.stress / s.modulus;
}

law! {
    /// Fallback for a restrained joint without a rating for pulls: the thrust that its pressure rating holds,
    /// `F = f p (pi/4) D²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | p | `rated_pressure` | pressure |
    /// | D | `outside_diameter` of the barrel | length |
    /// | f | `deflection_factor` (1 for a straight string) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a string without internal pressure. Only
    /// where the joint's maker gives no pull; how much a deflected joint loses is the maker's to say too. Recalled
    /// lists of pulls for iron joints lie up to 1.6 times higher and are not in the tables.
    JointThrustRating {
        /// Rated pressure of the restrained joint.
        rated_pressure: Pressure as Pressure,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// What deflection leaves.
        deflection_factor: Ratio as Ratio,
    } -> Force as Pull
    { Equation {
        name: "pull of a joint from its pressure rating",
        form: "F = deflection_factor rated_pressure (pi/4) outside_diameter^2",
        source: "jackpull",
        locator: "end thrust of a pressure main; the joint holds it in service",
        mark: Mark::Judgement,
        valid: "factor above 0 and at most 1, pressure not negative",
    } }
    valid |v| v.deflection_factor.value > 0.0 && v.deflection_factor.value <= 1.0 && v.rated_pressure.value >= 0.0;
    value |s| s.deflection_factor * s.rated_pressure * (FRAC_PI_4 * s.outside_diameter * s.outside_diameter);
}

law! {
    /// Load at which the weak link at the pull head has to part: the least that pipe, head and joints may bear,
    /// `F = min(F_pipe, F_head, F_joint)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | F_pipe | `pipe` (allowable at its duration and temperature, beside the bend) | force |
    /// | F_head | `pull_head` (rating) | force |
    /// | F_joint | `joint` (rating; that of the pipe for a fused string) | force |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION), which uses the allowable pull for it. **Valid for**
    /// positive forces. Never the rating of the rig. The link sees the pull of the pipe alone, not that of the reamer
    /// before it.
    WeakLinkSetting {
        /// Allowable pull of the pipe.
        pipe: Force as Pull,
        /// Rating of the pull head.
        pull_head: Force as Pull,
        /// Rating of the joints.
        joint: Force as Pull,
    } -> Force as Pull
    { Equation {
        name: "setting of the weak link",
        form: "F = min(pipe, pull_head, joint)",
        source: "jackpull",
        locator: "scope of ASTM F1804: the allowable tensile load sets the weak link; head and joint are ours",
        mark: Mark::Judgement,
        valid: "forces positive",
    } }
    valid |v| v.pipe.value > 0.0 && v.pull_head.value > 0.0 && v.joint.value > 0.0;
    value |s| Force::from_si(s.pipe.value.min(s.pull_head.value).min(s.joint.value));
}
