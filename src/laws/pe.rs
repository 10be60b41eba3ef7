//! What a PE pipe can bear in tension and bending, and how stiff it is.

use crate::law::law;
use crate::quantity::{Force, Length, Pressure, Ratio, ThermodynamicTemperature, Time};
use crate::source::{Equation, Mark};
use core::f64::consts::PI;

law! {
    /// Allowable stress from tensile yield: `s = f_Y f_T T_Y`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | f_Y | `design_factor` | ratio |
    /// | f_T | `duration_factor` | ratio |
    /// | T_Y | `tensile_yield` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** factors from 0 to 1. A yield-based setting
    /// for gas pipe, not a strain limit: at long durations it allows more than strain-based tables.
    ///
    /// ```
    /// // 3,500 psi x 0.40 x 0.95 = 1,330 psi, the 12 h value printed for ASTM F1962-22.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pe::TensileDesignStress;
    /// use jackpull::quantity::{FromText, Pressure, Ratio};
    /// let stress = TensileDesignStress {
    ///     design_factor: Ratio::from_text("0.40")?,
    ///     duration_factor: Ratio::from_text("0.95")?,
    ///     tensile_yield: Pressure::from_text("3500 psi")?,
    /// };
    /// assert!((stress.value() - Pressure::from_text("1330 psi")?).abs() < Pressure::from_text("0.5 psi")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    TensileDesignStress {
        /// Design factor on tensile yield.
        design_factor: Ratio as Ratio,
        /// Factor for the duration of the pull.
        duration_factor: Ratio as Ratio,
        /// Tensile yield at the pipe temperature.
        tensile_yield: Pressure as Strength,
    } -> Pressure as Strength
    { Equation {
        name: "allowable stress from tensile yield",
        form: "s = design_factor duration_factor tensile_yield",
        source: "astm_f1804",
        locator: "allowable tensile load, without the area",
        mark: Mark::Memory,
        valid: "factors above 0 and at most 1",
    } }
    valid |v| v.design_factor.value > 0.0 && v.design_factor.value <= 1.0
        && v.duration_factor.value > 0.0 && v.duration_factor.value <= 1.0;
    value |s| s.design_factor * s.duration_factor * s.tensile_yield;
}

law! {
    /// Pull stress for the duration of the pull: the value of the next longer tabulated duration, times the factor
    /// of that duration where the table has one: `s = f s_row`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_row | `stress` | pressure |
    /// | f | `duration_factor` (1 where the row is for the duration itself) | ratio |
    /// | | `duration` of the pull | time |
    /// | | `longest` duration of the row | time |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** pulls no longer than the row is for.
    PullStressForDuration {
        /// Stress of the row.
        stress: Pressure as Strength,
        /// Factor for the duration.
        duration_factor: Ratio as Ratio,
        /// Duration of the pull.
        duration: Time as Duration,
        /// Longest duration the row is for.
        longest: Time as Duration,
    } -> Pressure as Strength
    { Equation {
        name: "pull stress for the duration",
        form: "s = duration_factor stress, of the row with the next longer duration",
        source: "jackpull",
        locator: "tables pe_pull_stress and pe_duration_factor; never between rows",
        mark: Mark::Judgement,
        valid: "duration of the pull no longer than the longest tabulated one",
    } }
    valid |v| v.duration <= v.longest && v.duration_factor.value > 0.0 && v.duration_factor.value <= 1.0;
    value |s| s.duration_factor * s.stress;
}

law! {
    /// Pull stress at a higher pipe temperature: linear from the full value at the reference temperature of the
    /// table to a reduced one at an upper temperature.
    ///
    /// `s(T) = s (1 - (1 - f) (T - T_0) / (T_1 - T_0))`, s below T_0
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `stress` | pressure |
    /// | T | `temperature` (mean of the pipe wall) | temperature |
    /// | T_0 | `reference` | temperature |
    /// | T_1 | `upper` | temperature |
    /// | f | `factor_at_upper` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** temperatures up to T_1; colder pipe is not
    /// credited with more. Beyond T_1 the value is extrapolated and in doubt.
    ///
    /// ```
    /// // PE-HD, 8 N/mm2 at 20 degC: 5 N/mm2 at 40 degC.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pe::PullStressAtTemperature;
    /// use jackpull::quantity::{FromText, Pressure, Ratio, ThermodynamicTemperature};
    /// let stress = PullStressAtTemperature {
    ///     stress: Pressure::from_text("8 N/mm2")?,
    ///     temperature: ThermodynamicTemperature::from_text("40 degC")?,
    ///     reference: ThermodynamicTemperature::from_text("20 degC")?,
    ///     upper: ThermodynamicTemperature::from_text("40 degC")?,
    ///     factor_at_upper: Ratio::from_text("0.625")?,
    /// };
    /// assert!((stress.value() - Pressure::from_text("5 N/mm2")?).abs() < Pressure::from_text("1 Pa")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PullStressAtTemperature {
        /// Stress at the reference temperature.
        stress: Pressure as Strength,
        /// Pipe temperature.
        temperature: ThermodynamicTemperature as Temperature,
        /// Temperature the stress is for.
        reference: ThermodynamicTemperature as Temperature,
        /// Upper temperature.
        upper: ThermodynamicTemperature as Temperature,
        /// Factor at the upper temperature.
        factor_at_upper: Ratio as Ratio,
    } -> Pressure as Strength
    { Equation {
        name: "pull stress at the pipe temperature",
        form: "s(T) = stress (1 - (1 - factor_at_upper) (temperature - reference) / (upper - reference)), \
               stress below reference",
        source: "stein_2001",
        locator: "sec. 5.3.2.6.3.1.1.1: 8 N/mm2 at 20 degC, 5 N/mm2 at 40 degC; linear between is ours",
        mark: Mark::Judgement,
        valid: "pipe temperature up to the upper temperature (40 degC)",
    } }
    valid |v| v.temperature <= v.upper && v.reference < v.upper;
    value |s| {
        let warmer = (s.temperature.value - s.reference.value).max(0.0);
        let share = warmer / (s.upper.value - s.reference.value);
        s.stress * (1.0 - (1.0 - s.factor_at_upper.value) * share).max(0.0)
    };
}

law! {
    /// Allowable pull force: `F = f_S s pi (D - t) t`, the stress on the minimum section with the factor of its
    /// welds. With t = D/DR the section is `pi D² (1/DR - 1/DR²)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `stress` | pressure |
    /// | D | `outside_diameter` | length |
    /// | t | `wall` (minimum) | length |
    /// | f_S | `weld_factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a wall below half the outside diameter.
    ///
    /// ```
    /// // Iron pipe size 8, DR 11, 1,150 psi: 22,212 lb.
    /// use jackpull::law::Law;
    /// use jackpull::laws::pe::AllowableTension;
    /// use jackpull::quantity::{Force, FromText, Length, Pressure, Ratio};
    /// let od = Length::from_text("8.625 in")?;
    /// let force = AllowableTension {
    ///     stress: Pressure::from_text("1150 psi")?,
    ///     outside_diameter: od,
    ///     wall: od / 11.0,
    ///     weld_factor: Ratio::from_text("1")?,
    /// };
    /// assert!((force.value() - Force::from_text("22212 lbf")?).abs() < Force::from_text("0.5 lbf")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    AllowableTension {
        /// Allowable stress at the duration and temperature of the pull.
        stress: Pressure as Strength,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Minimum wall.
        wall: Length as Wall,
        /// Factor of the welds.
        weld_factor: Ratio as Ratio,
    } -> Force as Pull
    { Equation {
        name: "allowable pull force",
        form: "F = weld_factor stress pi (outside_diameter - wall) wall",
        source: "astm_f1962_1999",
        locator: "safe pull force; the same as DVGW GW 321",
        mark: Mark::Memory,
        valid: "wall positive and below half the outside diameter, weld factor above 0 and at most 1",
    } }
    valid |v| v.wall.value > 0.0 && 2.0 * v.wall < v.outside_diameter
        && v.weld_factor.value > 0.0 && v.weld_factor.value <= 1.0;
    value |s| s.weld_factor * s.stress * (PI * (s.outside_diameter - s.wall) * s.wall);
}

law! {
    /// Mean axial stress: `s = T / (pi (D - t) t)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T | `tension` | force |
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a wall below half the outside diameter.
    AxialStress {
        /// Tension.
        tension: Force as Pull,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Minimum wall.
        wall: Length as Wall,
    } -> Pressure as Strength
    { Equation {
        name: "axial stress",
        form: "s = tension / (pi (outside_diameter - wall) wall)",
        source: "astm_f1962_1999",
        locator: "peak tensile stress, first term",
        mark: Mark::Memory,
        valid: "wall positive and below half the outside diameter",
    } }
    valid |v| v.wall.value > 0.0 && 2.0 * v.wall < v.outside_diameter;
    value |s| s.tension / (PI * (s.outside_diameter - s.wall) * s.wall);
}

law! {
    /// Stress in the outer fibre of a bent pipe: `s = E D / (2 R)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` (at the duration and temperature of the bend) | pressure |
    /// | D | `outside_diameter` | length |
    /// | R | `radius` (of the axis) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** radii of at least ten diameters.
    ///
    /// ```
    /// // 24 in pipe on 1,021 ft with 57,500 psi: 56.3 psi (theoretical river crossing of the PE handbook).
    /// use jackpull::law::Law;
    /// use jackpull::laws::pe::BendingStress;
    /// use jackpull::quantity::{FromText, Length, Pressure};
    /// let stress = BendingStress {
    ///     modulus: Pressure::from_text("57500 psi")?,
    ///     outside_diameter: Length::from_text("24 in")?,
    ///     radius: Length::from_text("1021 ft")?,
    /// };
    /// assert!((stress.value() - Pressure::from_text("56.3 psi")?).abs() < Pressure::from_text("0.05 psi")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    BendingStress {
        /// Modulus.
        modulus: Pressure as Modulus,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Bend radius.
        radius: Length as Distance,
    } -> Pressure as Strength
    { Equation {
        name: "bending stress",
        form: "s = modulus outside_diameter / (2 radius)",
        source: "astm_f1962_1999",
        locator: "peak tensile stress, second term",
        mark: Mark::Memory,
        valid: "radius at least 10 outside diameters",
    } }
    valid |v| v.radius >= 10.0 * v.outside_diameter && v.outside_diameter.value > 0.0;
    value |s| s.modulus * s.outside_diameter / (2.0 * s.radius);
}

law! {
    /// Smallest bend radius of a pipe under tension, larger in the cold: `R = k D c(T)`, c from 1 at 20 degC to
    /// `cold_factor` at 0 degC, linear.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | k | `ratio` | ratio |
    /// | T | `temperature` | temperature |
    /// | c(0 degC) | `cold_factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 degC and above.
    MinimumBendRadius {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Radius over outside diameter at 20 degC and above.
        ratio: Ratio as Ratio,
        /// Pipe temperature.
        temperature: ThermodynamicTemperature as Temperature,
        /// Factor at 0 degC.
        cold_factor: Ratio as Ratio,
    } -> Length as Distance
    { Equation {
        name: "smallest bend radius",
        form: "R = ratio outside_diameter (1 + (cold_factor - 1) (20 degC - temperature) / 20 K), no less than at 20 degC",
        source: "stein_2001",
        locator: "curved-line section: 2.5 times the 20 degC radius at 0 degC, linear between",
        mark: Mark::Published,
        valid: "pipe temperature 0 degC and above",
    } }
    valid |v| v.temperature.value >= ZERO_CELSIUS;
    value |s| {
        let colder = (ZERO_CELSIUS + COLD_SPAN - s.temperature.value).max(0.0) / COLD_SPAN;
        s.ratio * s.outside_diameter * (1.0 + (s.cold_factor.value - 1.0) * colder)
    };
}

law! {
    /// Bend radius at which bending uses a share of the allowable stress: `R = E D / (2 k s)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` | pressure |
    /// | D | `outside_diameter` | length |
    /// | s | `allowable` | pressure |
    /// | k | `share` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION): [`BendingStress`] solved for the radius.
    /// **Valid for** shares from 0 to 1 and a positive allowable stress.
    BendRadiusForShare {
        /// Modulus.
        modulus: Pressure as Modulus,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Allowable stress.
        allowable: Pressure as Strength,
        /// Share that bending may use.
        share: Ratio as Ratio,
    } -> Length as Distance
    { Equation {
        name: "bend radius for a share of the allowable stress",
        form: "R = modulus outside_diameter / (2 share allowable)",
        source: "jackpull",
        locator: "bending stress of ASTM F1962 solved for the radius; the share is ours",
        mark: Mark::Judgement,
        valid: "share above 0 and at most 1, allowable stress positive",
    } }
    valid |v| v.share.value > 0.0 && v.share.value <= 1.0 && v.allowable.value > 0.0;
    value |s| s.modulus * s.outside_diameter / (2.0 * s.share * s.allowable);
}

/// 0 degC in kelvin, exact by definition.
const ZERO_CELSIUS: f64 = 273.15;
/// The cold rule runs from 0 degC to 20 degC (STEIN, curved-line section).
const COLD_SPAN: f64 = 20.0;

law! {
    /// Apparent modulus between two tabulated durations, linear in the logarithm of time:
    /// `E = E1 + (E2 - E1) ln(t/t1) / ln(t2/t1)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | t | `duration` | time |
    /// | t1, E1 | `duration_before`, `modulus_before` | time, pressure |
    /// | t2, E2 | `duration_after`, `modulus_after` | time, pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** t1 <= t <= t2. With t1 = t2 it gives E1.
    ModulusAtDuration {
        /// Duration of the load.
        duration: Time as Duration,
        /// Tabulated duration at or before it.
        duration_before: Time as Duration,
        /// Modulus there.
        modulus_before: Pressure as Modulus,
        /// Tabulated duration at or after it.
        duration_after: Time as Duration,
        /// Modulus there.
        modulus_after: Pressure as Modulus,
    } -> Pressure as Strength
    { Equation {
        name: "apparent modulus at the duration",
        form: "E = modulus_before + (modulus_after - modulus_before) ln(duration/duration_before) / \
               ln(duration_after/duration_before)",
        source: "ppi_handbook_2008",
        locator: "App. B, Table B.1.1, p. 99; linear in log time between rows is ours",
        mark: Mark::Judgement,
        valid: "durations from 0.5 h to 50 years",
    } }
    valid |v| v.duration_before <= v.duration && v.duration <= v.duration_after && v.duration_before.value > 0.0;
    value |s| {
        if s.duration_after <= s.duration_before {
            s.modulus_before
        } else {
            let share = (s.duration.value / s.duration_before.value).ln()
                / (s.duration_after.value / s.duration_before.value).ln();
            s.modulus_before + (s.modulus_after - s.modulus_before) * share
        }
    };
}

law! {
    /// Modulus at the pipe temperature: linear between two tabulated multipliers.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` (at 73 degF) | pressure |
    /// | T | `temperature` | temperature |
    /// | T1, m1 | `below`, `factor_below` | temperature, ratio |
    /// | T2, m2 | `above`, `factor_above` | temperature, ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** T1 <= T <= T2.
    ModulusAtTemperature {
        /// Modulus at 73 degF.
        modulus: Pressure as Modulus,
        /// Pipe temperature.
        temperature: ThermodynamicTemperature as Temperature,
        /// Tabulated temperature at or below it.
        below: ThermodynamicTemperature as Temperature,
        /// Multiplier there.
        factor_below: Ratio as Ratio,
        /// Tabulated temperature at or above it.
        above: ThermodynamicTemperature as Temperature,
        /// Multiplier there.
        factor_above: Ratio as Ratio,
    } -> Pressure as Strength
    { Equation {
        name: "modulus at the pipe temperature",
        form: "E(T) = modulus (factor_below + (factor_above - factor_below) (temperature - below) / (above - below))",
        source: "ppi_handbook_2008",
        locator: "App. B, Table B.1.2, multipliers; linear between rows",
        mark: Mark::Memory,
        valid: "temperatures from -20 degF to 140 degF",
    } }
    valid |v| v.below <= v.temperature && v.temperature <= v.above;
    value |s| {
        let span = s.above.value - s.below.value;
        let share = if span > 0.0 { (s.temperature.value - s.below.value) / span } else { 0.0 };
        s.modulus * (s.factor_below + (s.factor_above - s.factor_below) * share)
    };
}
