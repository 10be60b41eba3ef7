//! Whether the face of a bore in clay stands, short term. Granular ground has no stability number: above water it needs
//! apparent cohesion or a closed face, below water a closed face or lowered water.

use crate::law::law;
use crate::quantity::{Length, Measure, Pressure, Ratio, UnitWeight};
use crate::source::{Equation, Mark};

law! {
    /// Stability number of a face in clay: `N = (s_s + gamma (C + D/2) - s_T) / s_u`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_s | `surcharge` | pressure |
    /// | gamma | `unit_weight` (total: moist above water, saturated below) | force per volume |
    /// | C | `cover` (to the crown) | length |
    /// | D | `bore` | length |
    /// | s_T | `support` | pressure |
    /// | s_u | `undrained_strength` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** undrained clay of positive strength.
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
    StabilityNumber {
        /// Load on the surface.
        surcharge: Pressure as UnitFriction,
        /// Unit weight of the ground.
        unit_weight: UnitWeight as UnitWeight,
        /// Depth of the crown.
        cover: Length as Depth,
        /// Diameter of the bore.
        bore: Length as Diameter,
        /// Pressure on the face.
        support: Pressure as UnitFriction,
        /// Undrained strength.
        undrained_strength: Pressure as UnitFriction,
    } -> Ratio as Ratio
    { Equation {
        name: "stability number of the face",
        form: "N = (surcharge + unit_weight (cover + bore/2) - support) / undrained_strength",
        source: "broere_2001",
        locator: "Table 2.1, p. 16, Broms and Bennermark 1967, solved for the number",
        mark: Mark::Published,
        valid: "undrained clay, strength positive, cover and bore not negative",
    } }
    valid |v| v.undrained_strength.value > 0.0
        && v.unit_weight.value > 0.0
        && v.cover.value >= 0.0
        && v.bore.value >= 0.0;
    value |s| (s.surcharge + s.unit_weight * (s.cover + s.bore / 2.0) - s.support) / s.undrained_strength;
}

law! {
    /// Least pressure that keeps the stability number at a given value: `s_T = s_s + gamma (C + D/2) - N s_u`, no less
    /// than 0.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_s | `surcharge` | pressure |
    /// | gamma | `unit_weight` (total) | force per volume |
    /// | C | `cover` | length |
    /// | D | `bore` | length |
    /// | N | `stability_number` (6 as printed, without a safety factor) | ratio |
    /// | s_u | `undrained_strength` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** undrained clay and N from 0 to 6.
    LeastSupport {
        /// Load on the surface.
        surcharge: Pressure as UnitFriction,
        /// Unit weight of the ground.
        unit_weight: UnitWeight as UnitWeight,
        /// Depth of the crown.
        cover: Length as Depth,
        /// Diameter of the bore.
        bore: Length as Diameter,
        /// Stability number to keep.
        stability_number: Ratio as Ratio,
        /// Undrained strength.
        undrained_strength: Pressure as UnitFriction,
    } -> Pressure as UnitFriction
    { Equation {
        name: "least support of a face in clay",
        form: "s = surcharge + unit_weight (cover + bore/2) - stability_number undrained_strength",
        source: "broere_2001",
        locator: "Table 2.1, p. 16, Broms and Bennermark 1967",
        mark: Mark::Published,
        valid: "undrained clay, stability number 0 to 6, strength positive",
    } }
    valid |v| v.undrained_strength.value > 0.0
        && (0.0..=MOST_STABILITY_NUMBER).contains(&v.stability_number.value)
        && v.unit_weight.value > 0.0
        && v.cover.value >= 0.0
        && v.bore.value >= 0.0;
    value |s| {
        let support =
            s.surcharge + s.unit_weight * (s.cover + s.bore / 2.0) - s.stability_number * s.undrained_strength;
        support.max(Pressure::default())
    };
}

/// Number at which an unsupported opening in clay fails (Broms and Bennermark 1967, read in Broere 2001, Table 2.1).
const MOST_STABILITY_NUMBER: f64 = 6.0;

law! {
    /// Stability number at failure by the cover, from a spherical field of stress: `N_c = 4 ln(2 C/D + 1)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | C | `cover` | length |
    /// | D | `bore` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** undrained clay, a face supported up to itself.
    /// Take the least of this, [`CriticalNumberCylinder`] and 6: at a cover of one bore an unsupported length behind the
    /// face has failed at about 4.
    CriticalNumberSphere {
        /// Depth of the crown.
        cover: Length as Depth,
        /// Diameter of the bore.
        bore: Length as Diameter,
    } -> Ratio as Ratio
    { Equation {
        name: "critical stability number, spherical field",
        form: "N = 4 ln(2 cover/bore + 1)",
        source: "broere_2001",
        locator: "Table 2.1, p. 16, Davis and others 1980, radius written as half of the bore",
        mark: Mark::Published,
        valid: "undrained clay, cover not negative, bore positive",
    } }
    valid |v| v.cover.value >= 0.0 && v.bore.value > 0.0;
    value |s| 4.0 * (2.0 * s.cover / s.bore + Ratio::from_si(1.0)).ln();
}

law! {
    /// Stability number at failure by the cover, from a cylindrical field of stress: `N_c = 2 + 2 ln(2 C/D + 1)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | C | `cover` | length |
    /// | D | `bore` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** undrained clay, a face supported up to itself.
    /// Below [`CriticalNumberSphere`] once the cover is more than 0.86 bores: 4.2 at one bore, 6 at about three.
    CriticalNumberCylinder {
        /// Depth of the crown.
        cover: Length as Depth,
        /// Diameter of the bore.
        bore: Length as Diameter,
    } -> Ratio as Ratio
    { Equation {
        name: "critical stability number, cylindrical field",
        form: "N = 2 + 2 ln(2 cover/bore + 1)",
        source: "davis_1980",
        locator: "lower bound of a heading; abstract read, formula recalled",
        mark: Mark::Memory,
        valid: "undrained clay, cover not negative, bore positive",
    } }
    valid |v| v.cover.value >= 0.0 && v.bore.value > 0.0;
    value |s| {
        let one = Ratio::from_si(1.0);
        2.0 * one + 2.0 * (2.0 * s.cover / s.bore + one).ln()
    };
}

law! {
    /// Safety of a face: `F = N_c / N`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | N_c | `critical_number` | ratio |
    /// | N | `stability_number` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive number; at 0 or below the support
    /// carries all of the ground and no factor is to be given.
    FaceSafety {
        /// Number at failure.
        critical_number: Ratio as Ratio,
        /// Number of the face.
        stability_number: Ratio as Ratio,
    } -> Ratio as Ratio
    { Equation {
        name: "safety of the face",
        form: "F = critical_number / stability_number",
        source: "jackpull",
        locator: "number at failure over number; 6 over 1.5 is the refusal of an open face",
        mark: Mark::Judgement,
        valid: "both numbers positive",
    } }
    valid |v| v.critical_number.value > 0.0 && v.stability_number.value > 0.0;
    value |s| s.critical_number / s.stability_number;
}
