//! What a PE pipe can bear in tension and bending, and how stiff it is.

use crate::law::laws;
use crate::quantity::{Force, Length, Pressure, Ratio, ThermodynamicTemperature, Time};
use core::f64::consts::PI;

/// 0 degC in kelvin, exact by definition.
const ZERO_CELSIUS: f64 = 273.15;
/// The cold rule runs from 0 degC to 20 degC (STEIN, curved-line section).
const COLD_SPAN: f64 = 20.0;

laws! {
    /// Allowable stress from tensile yield: `s = f_Y f_T T_Y`.
    ///
    /// A yield-based setting for gas pipe, not a strain limit: at long durations it allows more than strain-based
    /// tables.
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
    TensileDesignStress "allowable stress from tensile yield" {
        /// Design factor on tensile yield.
        design_factor "f_Y": Ratio as Ratio [> 0.0 <= 1.0],
        /// Factor for the duration of the pull.
        duration_factor "f_T": Ratio as Ratio [> 0.0 <= 1.0],
        /// Tensile yield at the pipe temperature.
        tensile_yield "T_Y": Pressure as Strength,
    } -> Pressure as Strength;
    form "s = design_factor duration_factor tensile_yield";
    from Memory "astm_f1804" "allowable tensile load, without the area";
    valid "factors above 0 and at most 1";
    value |s| s.design_factor * s.duration_factor * s.tensile_yield;

    /// Pull stress for the duration of the pull: the value of the next longer tabulated duration, times the factor
    /// of that duration where the table has one: `s = f s_row`.
    PullStressForDuration "pull stress for the duration" {
        /// Stress of the row.
        stress "s_row": Pressure as Strength,
        /// Factor for the duration (1 where the row is for the duration itself).
        duration_factor "f": Ratio as Ratio [> 0.0 <= 1.0],
        /// Duration of the pull.
        duration "": Time as Duration,
        /// Longest duration the row is for.
        longest "": Time as Duration,
    } -> Pressure as Strength;
    form "s = duration_factor stress, of the row with the next longer duration";
    from Judgement "jackpull" "tables pe_pull_stress and pe_duration_factor; never between rows";
    valid "duration of the pull no longer than the longest tabulated one"
        if |v| v.duration <= v.longest;
    value |s| s.duration_factor * s.stress;

    /// Pull stress at a higher pipe temperature: linear from the full value at the reference temperature of the
    /// table to a reduced one at an upper temperature.
    ///
    /// `s(T) = s (1 - (1 - f) (T - T_0) / (T_1 - T_0))`, s below T_0
    ///
    /// Colder pipe is not credited with more. Beyond T_1 the value is extrapolated and in doubt.
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
    PullStressAtTemperature "pull stress at the pipe temperature" {
        /// Stress at the reference temperature.
        stress "s": Pressure as Strength,
        /// Pipe temperature (mean of the pipe wall).
        temperature "T": ThermodynamicTemperature as Temperature,
        /// Temperature the stress is for.
        reference "T_0": ThermodynamicTemperature as Temperature,
        /// Upper temperature.
        upper "T_1": ThermodynamicTemperature as Temperature,
        /// Factor at the upper temperature.
        factor_at_upper "f": Ratio as Ratio,
    } -> Pressure as Strength;
    form "s(T) = stress (1 - (1 - factor_at_upper) (temperature - reference) / (upper - reference)), \
          stress below reference";
    from Judgement "stein_2001" "sec. 5.3.2.6.3.1.1.1: 8 N/mm2 at 20 degC, 5 N/mm2 at 40 degC; linear between is ours";
    valid "pipe temperature up to the upper temperature (40 degC)"
        if |v| v.temperature <= v.upper && v.reference < v.upper;
    value |s| {
        let warmer = (s.temperature.value - s.reference.value).max(0.0);
        let share = warmer / (s.upper.value - s.reference.value);
        s.stress * (1.0 - (1.0 - s.factor_at_upper.value) * share).max(0.0)
    };

    /// Allowable pull force: `F = f_S s pi (D - t) t`, the stress on the minimum section with the factor of its
    /// welds. With t = D/DR the section is `pi D² (1/DR - 1/DR²)`.
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
    AllowableTension "allowable pull force" {
        /// Allowable stress at the duration and temperature of the pull.
        stress "s": Pressure as Strength,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Minimum wall.
        wall "t": Length as Wall [> 0.0],
        /// Factor of the welds.
        weld_factor "f_S": Ratio as Ratio [> 0.0 <= 1.0],
    } -> Force as Pull;
    form "F = weld_factor stress pi (outside_diameter - wall) wall";
    from Memory "astm_f1962_1999" "safe pull force; the same as DVGW GW 321";
    valid "wall positive and below half the outside diameter, weld factor above 0 and at most 1"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| s.weld_factor * s.stress * (PI * (s.outside_diameter - s.wall) * s.wall);

    /// Mean axial stress: `s = T / (pi (D - t) t)`.
    AxialStress "axial stress" {
        /// Tension.
        tension "T": Force as Pull,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Minimum wall.
        wall "t": Length as Wall [> 0.0],
    } -> Pressure as Strength;
    form "s = tension / (pi (outside_diameter - wall) wall)";
    from Memory "astm_f1962_1999" "peak tensile stress, first term";
    valid "wall positive and below half the outside diameter"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| s.tension / (PI * (s.outside_diameter - s.wall) * s.wall);

    /// Stress in the outer fibre of a bent pipe: `s = E D / (2 R)`.
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
    BendingStress "bending stress" {
        /// Modulus (at the duration and temperature of the bend).
        modulus "E": Pressure as Modulus,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
        /// Bend radius (of the axis).
        radius "R": Length as Distance,
    } -> Pressure as Strength;
    form "s = modulus outside_diameter / (2 radius)";
    from Memory "astm_f1962_1999" "peak tensile stress, second term";
    valid "radius at least 10 outside diameters"
        if |v| v.radius >= 10.0 * v.outside_diameter;
    fails beyond |v| v.radius.value > 0.0 && v.outside_diameter.value > 0.0;
    value |s| s.modulus * s.outside_diameter / (2.0 * s.radius);

    /// Smallest bend radius of a pipe under tension, larger in the cold: `R = k D c(T)`, c from 1 at 20 degC to
    /// `cold_factor` at 0 degC, linear.
    MinimumBendRadius "smallest bend radius" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Radius over outside diameter at 20 degC and above.
        ratio "k": Ratio as Ratio,
        /// Pipe temperature.
        temperature "T": ThermodynamicTemperature as Temperature [>= ZERO_CELSIUS],
        /// Factor at 0 degC.
        cold_factor "c(0 degC)": Ratio as Ratio,
    } -> Length as Distance;
    form "R = ratio outside_diameter (1 + (cold_factor - 1) (20 degC - temperature) / 20 K), no less than at 20 degC";
    from Published "stein_2001" "curved-line section: 2.5 times the 20 degC radius at 0 degC, linear between";
    valid "pipe temperature 0 degC and above";
    value |s| {
        let colder = (ZERO_CELSIUS + COLD_SPAN - s.temperature.value).max(0.0) / COLD_SPAN;
        s.ratio * s.outside_diameter * (1.0 + (s.cold_factor.value - 1.0) * colder)
    };

    /// Bend radius at which bending uses a share of the allowable stress: `R = E D / (2 k s)`.
    ///
    /// [`BendingStress`] solved for the radius.
    BendRadiusForShare "bend radius for a share of the allowable stress" {
        /// Modulus.
        modulus "E": Pressure as Modulus,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Allowable stress.
        allowable "s": Pressure as Strength [> 0.0],
        /// Share that bending may use.
        share "k": Ratio as Ratio [> 0.0 <= 1.0],
    } -> Length as Distance;
    form "R = modulus outside_diameter / (2 share allowable)";
    from Judgement "jackpull" "bending stress of ASTM F1962 solved for the radius; the share is ours";
    valid "share above 0 and at most 1, allowable stress positive";
    value |s| s.modulus * s.outside_diameter / (2.0 * s.share * s.allowable);

    /// Apparent modulus between two tabulated durations, linear in the logarithm of time:
    /// `E = E1 + (E2 - E1) ln(t/t1) / ln(t2/t1)`.
    ///
    /// With t1 = t2 it gives E1.
    ModulusAtDuration "apparent modulus at the duration" {
        /// Duration of the load.
        duration "t": Time as Duration,
        /// Tabulated duration at or before it.
        duration_before "t1": Time as Duration [> 0.0],
        /// Modulus there.
        modulus_before "E1": Pressure as Modulus,
        /// Tabulated duration at or after it.
        duration_after "t2": Time as Duration,
        /// Modulus there.
        modulus_after "E2": Pressure as Modulus,
    } -> Pressure as Strength;
    form "E = modulus_before + (modulus_after - modulus_before) ln(duration/duration_before) / \
          ln(duration_after/duration_before)";
    from Judgement "ppi_handbook_2008" "App. B, Table B.1.1, p. 99; linear in log time between rows is ours";
    valid "durations between the two tabulated"
        if |v| v.duration_before <= v.duration && v.duration <= v.duration_after;
    value |s| {
        if s.duration_after <= s.duration_before {
            s.modulus_before
        } else {
            let share = (s.duration.value / s.duration_before.value).ln()
                / (s.duration_after.value / s.duration_before.value).ln();
            s.modulus_before + (s.modulus_after - s.modulus_before) * share
        }
    };

    /// Modulus at the pipe temperature: linear between two tabulated multipliers.
    ModulusAtTemperature "modulus at the pipe temperature" {
        /// Modulus at 73 degF.
        modulus "E": Pressure as Modulus,
        /// Pipe temperature.
        temperature "T": ThermodynamicTemperature as Temperature,
        /// Tabulated temperature at or below it.
        below "T1": ThermodynamicTemperature as Temperature,
        /// Multiplier there.
        factor_below "m1": Ratio as Ratio,
        /// Tabulated temperature at or above it.
        above "T2": ThermodynamicTemperature as Temperature,
        /// Multiplier there.
        factor_above "m2": Ratio as Ratio,
    } -> Pressure as Strength;
    form "E(T) = modulus (factor_below + (factor_above - factor_below) (temperature - below) / (above - below))";
    from Memory "ppi_handbook_2008" "App. B, Table B.1.2, multipliers; linear between rows";
    valid "temperatures from -20 degF to 140 degF"
        if |v| v.below <= v.temperature && v.temperature <= v.above;
    value |s| {
        let span = s.above.value - s.below.value;
        let share = if span > 0.0 { (s.temperature.value - s.below.value) / span } else { 0.0 };
        s.modulus * (s.factor_below + (s.factor_above - s.factor_below) * share)
    };
}
