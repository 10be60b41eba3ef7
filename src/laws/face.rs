//! Whether the face of a bore in clay stands, short term. Granular ground has no stability number: above water it needs
//! apparent cohesion or a closed face, below water a closed face or lowered water.

use crate::law::laws;
use crate::quantity::{Length, Measure, Pressure, Ratio, UnitWeight};

/// Number at which an unsupported opening in clay fails (Broms and Bennermark 1967, read in Broere 2001, Table 2.1).
const MOST_STABILITY_NUMBER: f64 = 6.0;

laws! {
    /// Stability number of a face in clay: `N = (s_s + gamma (C + D/2) - s_T) / s_u`.
    ///
    /// ```
    /// // 18.5 kN/m3, 5 m of cover, 1 m bore, 25 kPa: 4.07.
    /// use jackpull::law::Law;
    /// use jackpull::laws::face::StabilityNumber;
    /// use jackpull::quantity::{FromText, Length, Pressure, UnitWeight};
    /// let number = StabilityNumber {
    ///     surcharge: Pressure::from_text("0 kPa")?,
    ///     unit_weight: UnitWeight::from_text("18.5 kN/m3")?,
    ///     cover: Length::from_text("5 m")?,
    ///     bore: Length::from_text("1 m")?,
    ///     support: Pressure::from_text("0 kPa")?,
    ///     undrained_strength: Pressure::from_text("25 kPa")?,
    /// };
    /// assert!((number.value().value - 4.07).abs() < 0.005);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    StabilityNumber "stability number of the face" {
        /// Load on the surface.
        surcharge "s_s": Pressure as UnitFriction,
        /// Unit weight of the ground (total: moist above water, saturated below).
        unit_weight "gamma": UnitWeight as UnitWeight [> 0.0],
        /// Depth of the crown.
        cover "C": Length as Depth [>= 0.0],
        /// Diameter of the bore.
        bore "D": Length as Diameter [>= 0.0],
        /// Pressure on the face.
        support "s_T": Pressure as UnitFriction,
        /// Undrained strength.
        undrained_strength "s_u": Pressure as UnitFriction [> 0.0],
    } -> Ratio as Ratio;
    form "N = (surcharge + unit_weight (cover + bore/2) - support) / undrained_strength";
    from Published "broere_2001" "Table 2.1, p. 16, Broms and Bennermark 1967, solved for the number";
    valid "undrained clay, strength positive, cover and bore not negative";
    value |s| (s.surcharge + s.unit_weight * (s.cover + s.bore / 2.0) - s.support) / s.undrained_strength;

    /// Least pressure that keeps the stability number at a given value: `s_T = s_s + gamma (C + D/2) - N s_u`, no less
    /// than 0.
    LeastSupport "least support of a face in clay" {
        /// Load on the surface.
        surcharge "s_s": Pressure as UnitFriction,
        /// Unit weight of the ground (total).
        unit_weight "gamma": UnitWeight as UnitWeight [> 0.0],
        /// Depth of the crown.
        cover "C": Length as Depth [>= 0.0],
        /// Diameter of the bore.
        bore "D": Length as Diameter [>= 0.0],
        /// Stability number to keep (6 as printed, without a safety factor).
        stability_number "N": Ratio as Ratio [>= 0.0 <= MOST_STABILITY_NUMBER],
        /// Undrained strength.
        undrained_strength "s_u": Pressure as UnitFriction [> 0.0],
    } -> Pressure as UnitFriction;
    form "s = surcharge + unit_weight (cover + bore/2) - stability_number undrained_strength";
    from Published "broere_2001" "Table 2.1, p. 16, Broms and Bennermark 1967";
    valid "undrained clay, stability number 0 to 6, strength positive";
    value |s| {
        let support =
            s.surcharge + s.unit_weight * (s.cover + s.bore / 2.0) - s.stability_number * s.undrained_strength;
        support.max(Pressure::default())
    };

    /// Least pressure that keeps ground in that runs or flows: `s_T = u + K_a s' + m`.
    ///
    /// With the stress that arching over the head leaves, where it is counted.
    LeastSupportDrained "least support of a face in sand" {
        /// Pressure of the water at the axis.
        water_pressure "u": Pressure as UnitFriction [>= 0.0],
        /// Horizontal over vertical stress of ground that yields.
        coefficient "K_a": Ratio as Ratio [>= 0.0 <= 1.0],
        /// Effective vertical stress at the axis.
        effective_stress "s'": Pressure as UnitFriction [>= 0.0],
        /// Margin over both.
        margin "m": Pressure as UnitFriction [>= 0.0],
    } -> Pressure as UnitFriction;
    form "s = water_pressure + coefficient effective_stress + margin";
    from Judgement "jackpull" "active pressure by Rankine and the water, with a margin over both";
    valid "pressures not negative, coefficient 0 to 1";
    value |s| s.water_pressure + s.coefficient * s.effective_stress + s.margin;

    /// Greatest pressure that a face is held at, below what lifts the ground over it: `s_T = f s`.
    GreatestSupport "greatest support of a face" {
        /// Share of the stress.
        share "f": Ratio as Ratio [>= 0.0 <= 1.0],
        /// Total vertical stress at the axis.
        total_stress "s": Pressure as UnitFriction [>= 0.0],
    } -> Pressure as UnitFriction;
    form "s = share total_stress";
    from Judgement "jackpull" "uplift of the ground over the face, before the passive pressure that is far above it";
    valid "stress not negative, share 0 to 1";
    value |s| s.share * s.total_stress;

    /// Stability number at failure by the cover, from a spherical field of stress: `N_c = 4 ln(2 C/D + 1)`.
    ///
    /// For a face supported up to itself. Take the least of this, [`CriticalNumberCylinder`] and 6: at a cover of one
    /// bore an unsupported length behind the face has failed at about 4.
    CriticalNumberSphere "critical stability number, spherical field" {
        /// Depth of the crown.
        cover "C": Length as Depth [>= 0.0],
        /// Diameter of the bore.
        bore "D": Length as Diameter [> 0.0],
    } -> Ratio as Ratio;
    form "N = 4 ln(2 cover/bore + 1)";
    from Published "broere_2001" "Table 2.1, p. 16, Davis and others 1980, radius written as half of the bore";
    valid "undrained clay, cover not negative, bore positive";
    value |s| 4.0 * (2.0 * s.cover / s.bore + Ratio::from_si(1.0)).ln();

    /// Stability number at failure by the cover, from a cylindrical field of stress: `N_c = 2 + 2 ln(2 C/D + 1)`.
    ///
    /// For a face supported up to itself. Below [`CriticalNumberSphere`] once the cover is more than 0.86 bores: 4.2 at
    /// one bore, 6 at about three.
    CriticalNumberCylinder "critical stability number, cylindrical field" {
        /// Depth of the crown.
        cover "C": Length as Depth [>= 0.0],
        /// Diameter of the bore.
        bore "D": Length as Diameter [> 0.0],
    } -> Ratio as Ratio;
    form "N = 2 + 2 ln(2 cover/bore + 1)";
    from Memory "davis_1980" "lower bound of a heading; abstract read, formula recalled";
    valid "undrained clay, cover not negative, bore positive";
    value |s| {
        let one = Ratio::from_si(1.0);
        2.0 * one + 2.0 * (2.0 * s.cover / s.bore + one).ln()
    };

    /// Safety of a face: `F = N_c / N`.
    ///
    /// At 0 or below the support carries all of the ground and no factor is to be given.
    FaceSafety "safety of the face" {
        /// Number at failure.
        critical_number "N_c": Ratio as Ratio [> 0.0],
        /// Number of the face.
        stability_number "N": Ratio as Ratio [> 0.0],
    } -> Ratio as Ratio;
    form "F = critical_number / stability_number";
    from Judgement "jackpull" "number at failure over number; 6 over 1.5 is the refusal of an open face";
    valid "both numbers positive";
    value |s| s.critical_number / s.stability_number;
}
