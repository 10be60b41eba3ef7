//! What a pulled plastic pipe, its joint and its weak link can bear, beside the section laws of `pe`.

use crate::law::laws;
use crate::quantity::{Force, Length, Measure, Pressure, Ratio, ThermodynamicTemperature};
use core::f64::consts::{FRAC_PI_4, PI};

/// Largest strain that the laws here are read for: above it PE yields in pulls of hours (ours; the sum of pull and bend
/// is printed as 3 to 4 %).
const MOST_STRAIN: f64 = 0.05;

laws! {
    /// Allowable stress of fused PVC in pull and bending together: `s = (s_t / n) f_temp f_joint`.
    ///
    /// Rows of `pvc_stress`, `pvc_ratio` and `pvc_temperature`. The joint factor is the maker's of the joint: without
    /// one there is no allowable for gasketed or segmental pipe.
    PvcPullStress "allowable stress of fused PVC" {
        /// Least tensile strength (least of the cell class).
        tensile "s_t": Pressure as Strength,
        /// Safety on it.
        safety "n": Ratio as Ratio [>= 1.0],
        /// Factor for the temperature of the wall.
        temperature_factor "f_temp": Ratio as Ratio [> 0.0 <= 1.0],
        /// Factor for the joint.
        joint_factor "f_joint": Ratio as Ratio [> 0.0 <= 1.0],
    } -> Pressure as Strength;
    form "s = (tensile / safety) temperature_factor joint_factor";
    from Judgement "trade_practice"
        "US practice for pulled pipe: least tensile strength over 2.5; the other two factors are ours";
    valid "safety at least 1, factors above 0 and at most 1";
    value |s| s.tensile / s.safety * s.temperature_factor * s.joint_factor;

    /// A factor between two tabulated temperatures, on the straight line.
    FactorAtTemperature "factor at the wall temperature" {
        /// Temperature of the wall.
        temperature "T": ThermodynamicTemperature as Temperature,
        /// Temperature of the row at or below it.
        below "T1": ThermodynamicTemperature as Temperature,
        /// Its factor.
        factor_below "f1": Ratio as Ratio,
        /// Temperature of the row at or above it.
        above "T2": ThermodynamicTemperature as Temperature,
        /// Its factor.
        factor_above "f2": Ratio as Ratio,
    } -> Ratio as Ratio;
    form "f = factor_below + (factor_above - factor_below) (temperature - below) / (above - below)";
    from Judgement "jackpull" "straight between the rows of a table of factors";
    valid "temperature between the two rows"
        if |v| v.below <= v.temperature && v.temperature <= v.above;
    value |s| {
        let span = s.above.value - s.below.value;
        let share = if span > 0.0 { (s.temperature.value - s.below.value) / span } else { 0.0 };
        s.factor_below + (s.factor_above - s.factor_below) * share
    };

    /// Pull that is left to a bent pipe: `F = max(s - E D / (2 R), 0) pi (D - t) t`.
    ///
    /// For PE the modulus is that of the duration of the pull; for any plastic the two stresses share one strength.
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
    TensionBesideBend "pull beside the bend" {
        /// Allowable stress (pull and bending together).
        allowable "s": Pressure as Strength,
        /// Modulus.
        modulus "E": Pressure as Modulus,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Radius of the bend.
        radius "R": Length as Distance,
    } -> Force as Pull;
    form "F = max(allowable - modulus outside_diameter / (2 radius), 0) pi (outside_diameter - wall) wall";
    from Memory "astm_f1962_1999" "peak tensile stress, both terms, solved for the tension";
    valid "radius at least 10 outside diameters, wall positive and below half the outside diameter"
        if |v| v.radius >= 10.0 * v.outside_diameter && 2.0 * v.wall < v.outside_diameter;
    fails beyond |v| v.radius.value > 0.0 && 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let left = s.allowable - s.modulus * s.outside_diameter / (2.0 * s.radius);
        let left = if left.value > 0.0 { left } else { Pressure::default() };
        left * (PI * (s.outside_diameter - s.wall) * s.wall)
    };

    /// Strain of the outer fibre in a bend: `e = D / (2 R)`.
    BendStrain "strain of the bend" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
        /// Radius.
        radius "R": Length as Distance,
    } -> Ratio as Percent;
    form "e = outside_diameter / (2 radius)";
    from Memory "astm_f1962_1999" "bending strain";
    valid "radius at least 10 outside diameters"
        if |v| v.radius >= 10.0 * v.outside_diameter;
    fails beyond |v| v.radius.value > 0.0 && v.outside_diameter.value > 0.0;
    value |s| s.outside_diameter / (2.0 * s.radius);

    /// Strain of the pull at the end of it: `e = s / E`.
    ///
    /// The source keeps it to 2 %, and pull and bend together to 3 to 4 %: rows of table `pull_strain`.
    PullStrain "strain of the pull" {
        /// Axial stress.
        stress "s": Pressure as Strength [>= 0.0],
        /// Apparent modulus (apparent, at the duration of the pull).
        modulus "E": Pressure as Modulus [> 0.0],
    } -> Ratio as Percent;
    form "e = stress / modulus";
    from Published "stein_2001" "eq. 5-31, strain while pulling";
    valid "strain up to 5 %, modulus positive"
        if |v| v.stress <= MOST_STRAIN * v.modulus;
    fails beyond |v| v.stress.value > 0.0 && v.modulus.value > 0.0;
    value |s| s.stress / s.modulus;

    /// Fallback for a restrained joint without a rating for pulls: the thrust that its pressure rating holds,
    /// `F = f p (pi/4) D²`.
    ///
    /// For a string without internal pressure. Only where the joint's maker gives no pull; how much a deflected joint
    /// loses is the maker's to say too. Recalled lists of pulls for iron joints lie up to 1.6 times higher and are not
    /// in the tables.
    JointThrustRating "pull of a joint from its pressure rating" {
        /// Rated pressure of the restrained joint.
        rated_pressure "p": Pressure as Pressure [>= 0.0],
        /// Outside diameter (of the barrel).
        outside_diameter "D": Length as Diameter,
        /// What deflection leaves (1 for a straight string).
        deflection_factor "f": Ratio as Ratio [> 0.0 <= 1.0],
    } -> Force as Pull;
    form "F = deflection_factor rated_pressure (pi/4) outside_diameter^2";
    from Judgement "jackpull" "end thrust of a pressure main; the joint holds it in service";
    valid "factor above 0 and at most 1, pressure not negative";
    value |s| s.deflection_factor * s.rated_pressure * (FRAC_PI_4 * s.outside_diameter * s.outside_diameter);

    /// Load at which the weak link at the pull head has to part: the least that pipe, head and joints may bear,
    /// `F = min(F_pipe, F_head, F_joint)`.
    ///
    /// The source uses the allowable pull for it. Never the rating of the rig. The link sees the pull of the pipe
    /// alone, not that of the reamer before it.
    WeakLinkSetting "setting of the weak link" {
        /// Allowable pull of the pipe (allowable at its duration and temperature, beside the bend).
        pipe "F_pipe": Force as Pull [> 0.0],
        /// Rating of the pull head.
        pull_head "F_head": Force as Pull [> 0.0],
        /// Rating of the joints (rating; that of the pipe for a fused string).
        joint "F_joint": Force as Pull [> 0.0],
    } -> Force as Pull;
    form "F = min(pipe, pull_head, joint)";
    from Judgement "jackpull"
        "scope of ASTM F1804: the allowable tensile load sets the weak link; head and joint are ours";
    valid "forces positive";
    value |s| Force::from_si(s.pipe.value.min(s.pull_head.value).min(s.joint.value));
}
