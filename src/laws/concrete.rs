//! What the end of a concrete jacking pipe can bear, by scheme. Each scheme holds its own factors for eccentricity and
//! safety; factors of two schemes are never put together. All work on the end bearing area, not on the barrel.

use crate::law::law;
use crate::quantity::{Area, Force, Pressure, Ratio};
use crate::source::{Equation, Mark};

law! {
    /// Mean stress that a jacking force puts on the end: `s = P / A`. Schemes are compared by it.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | P | `force` | force |
    /// | A | `end_bearing_area` | area |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a positive area.
    MeanEndStress {
        /// Jacking force.
        force: Force as Thrust,
        /// End bearing area.
        end_bearing_area: Area as Area,
    } -> Pressure as Strength
    { Equation {
        name: "mean stress on the end",
        form: "s = force / end_bearing_area",
        source: "jackpull",
        locator: "statics",
        mark: Mark::Judgement,
        valid: "force not negative, area positive",
    } }
    valid |v| v.force.value >= 0.0 && v.end_bearing_area.value > 0.0;
    value |s| s.force / s.end_bearing_area;
}

law! {
    /// Allowable jacking force by a share of the strength as mean stress: `P = k A f`. With a share of 0.2 of the
    /// cylinder strength it is the triangle of a closed joint with a factor 2.5 on its edge.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | k | `mean_share` | ratio |
    /// | A | `end_bearing_area` | area |
    /// | f | `strength` (cylinder) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a joint closed over its full face, 0 < k <=
    /// 1. At an angle the lesser of this and [`EdgeShareEndForce`] counts.
    MeanShareEndForce {
        /// Mean stress over strength.
        mean_share: Ratio as Ratio,
        /// End bearing area.
        end_bearing_area: Area as Area,
        /// Compressive strength of cylinders.
        strength: Pressure as Strength,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force, share of the strength as mean",
        form: "P = mean_share end_bearing_area strength",
        source: "jackpull",
        locator: "triangular stress over the joint with a safety on its edge",
        mark: Mark::Judgement,
        valid: "share above 0 and at most 1, area and strength positive",
    } }
    valid |v| v.mean_share.value > 0.0
        && v.mean_share.value <= 1.0
        && v.end_bearing_area.value > 0.0
        && v.strength.value > 0.0;
    value |s| s.mean_share * s.end_bearing_area * s.strength;
}

law! {
    /// Allowable jacking force by a share of the strength as stress at the edge: `P = r k A f`, r the mean over the
    /// greatest stress in the joint.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | r | `stress_ratio` | ratio |
    /// | k | `edge_share` | ratio |
    /// | A | `end_bearing_area` | area |
    /// | f | `strength` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 < r <= 1, 0 < k <= 1. r comes from
    /// [`StressRatioAtAngle`](super::turned_joint::StressRatioAtAngle) with k f as the greatest stress, and is 0.5 for a
    /// joint that is just closed. EN 1916 asks the characteristic strength and a share of about 0.6.
    EdgeShareEndForce {
        /// Mean over greatest stress.
        stress_ratio: Ratio as Ratio,
        /// Stress at the edge over strength.
        edge_share: Ratio as Ratio,
        /// End bearing area: where `stress_ratio` is that of a packer, no more than the packer presses.
        end_bearing_area: Area as Area,
        /// Compressive strength.
        strength: Pressure as Strength,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force, share of the strength at the edge",
        form: "P = stress_ratio edge_share end_bearing_area strength",
        source: "en_1916",
        locator: "annex B, limit on the edge stress with linear stress over the joint; BS 5911-1 follows it",
        mark: Mark::Memory,
        valid: "stress ratio and share above 0 and at most 1, area and strength positive",
    } }
    valid |v| v.stress_ratio.value > 0.0
        && v.stress_ratio.value <= 1.0
        && v.edge_share.value > 0.0
        && v.edge_share.value <= 1.0
        && v.end_bearing_area.value > 0.0
        && v.strength.value > 0.0;
    value |s| s.stress_ratio * s.edge_share * s.end_bearing_area * s.strength;
}

law! {
    /// Allowable jacking force by ASCE 27: `P = min(1, k_e) 0.85 phi f A / LF`, the lesser of the concentric and the
    /// eccentric case.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | k_e | `eccentric_share` (eccentric over concentric case) | ratio |
    /// | 0.85 | `stress_block` | ratio |
    /// | phi | `phi` | ratio |
    /// | LF | `load_factor` | ratio |
    /// | f | `strength` (cylinder) | pressure |
    /// | A | `end_bearing_area` | area |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** shares of at most 1 and a load factor of at
    /// least 1. The form is recalled with little certainty and allows more than any other scheme here: never a default,
    /// and to be capped by a limit on the edge stress. It has no concentric case of its own, on purpose.
    Asce27EndForce {
        /// Eccentric over concentric case.
        eccentric_share: Ratio as Ratio,
        /// Stress block over cylinder strength.
        stress_block: Ratio as Ratio,
        /// Strength reduction.
        phi: Ratio as Ratio,
        /// Load factor on the jacking force.
        load_factor: Ratio as Ratio,
        /// Compressive strength of cylinders.
        strength: Pressure as Strength,
        /// End bearing area.
        end_bearing_area: Area as Area,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force of concrete, ASCE 27",
        form: "P = min(1, eccentric_share) stress_block phi strength end_bearing_area / load_factor",
        source: "asce_27",
        locator: "longitudinal thrust, concentric and eccentric case; printed form not seen",
        mark: Mark::Memory,
        valid: "shares above 0 and at most 1, load factor at least 1, strength and area positive",
    } }
    valid |v| [v.eccentric_share, v.stress_block, v.phi].iter().all(|share| share.value > 0.0 && share.value <= 1.0)
        && v.load_factor.value >= 1.0
        && v.strength.value > 0.0
        && v.end_bearing_area.value > 0.0;
    value |s| {
        let lesser = s.eccentric_share.value.min(1.0);
        lesser * s.stress_block * s.phi * s.strength * s.end_bearing_area / s.load_factor
    };
}

law! {
    /// Allowable jacking force of concrete pipe by a Chinese annex:
    /// `F = 0.5 phi1 phi2 phi3 f_c A_p / (gamma_Qd phi5)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | 0.5 | `eccentric_load` | ratio |
    /// | phi1 | `strength_reduction` | ratio |
    /// | phi2 | `eccentric_enhancement` | ratio |
    /// | phi3 | `brittleness` | ratio |
    /// | phi5 | `strength_adjustment` | ratio |
    /// | gamma_Qd | `partial_factor` | ratio |
    /// | f_c | `design_strength` (not characteristic) | pressure |
    /// | A_p | `least_end_area` | area |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive coefficients of this scheme and a
    /// partial factor of at least 1. The partial factor is in the result: the force it is held against carries none.
    ///
    /// ```
    /// // Bore 1000 mm, wall 100 mm, 23.1 N/mm2: 3120.2 kN.
    /// use jackpull::law::Law;
    /// use jackpull::laws::concrete::ChineseConcreteEndForce;
    /// use jackpull::quantity::{Area, Force, FromText, Pressure, Ratio};
    /// let allowed = ChineseConcreteEndForce {
    ///     eccentric_load: Ratio::from_text("0.5")?,
    ///     strength_reduction: Ratio::from_text("0.90")?,
    ///     eccentric_enhancement: Ratio::from_text("1.05")?,
    ///     brittleness: Ratio::from_text("0.85")?,
    ///     strength_adjustment: Ratio::from_text("0.79")?,
    ///     partial_factor: Ratio::from_text("1.30")?,
    ///     design_strength: Pressure::from_text("23.1 N/mm2")?,
    ///     least_end_area: Area::from_text("345400 mm2")?,
    /// };
    /// assert!((allowed.value() - Force::from_text("3120.2 kN")?).abs() < Force::from_text("0.05 kN")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    ChineseConcreteEndForce {
        /// Factor for the eccentric load.
        eccentric_load: Ratio as Ratio,
        /// phi1, reduction of the compressive strength.
        strength_reduction: Ratio as Ratio,
        /// phi2, enhancement under eccentric compression.
        eccentric_enhancement: Ratio as Ratio,
        /// phi3, brittleness.
        brittleness: Ratio as Ratio,
        /// phi5, adjustment between standards of strength.
        strength_adjustment: Ratio as Ratio,
        /// Partial factor of the jacking force.
        partial_factor: Ratio as Ratio,
        /// Design value of the compressive strength.
        design_strength: Pressure as Strength,
        /// Least effective area that passes the force.
        least_end_area: Area as Area,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force of concrete, Chinese annex",
        form: "F = eccentric_load strength_reduction eccentric_enhancement brittleness design_strength least_end_area \
               / (partial_factor strength_adjustment)",
        source: "cn_annex_e",
        locator: "coefficients clauses E.1.1 and E.1.2; form as applied in a calculation sheet",
        mark: Mark::Published,
        valid: "coefficients, strength and area positive, partial factor at least 1",
    } }
    valid |v| {
        let coefficients =
            [v.eccentric_load, v.strength_reduction, v.eccentric_enhancement, v.brittleness, v.strength_adjustment];
        coefficients.iter().all(|coefficient| coefficient.value > 0.0)
            && v.partial_factor.value >= 1.0
            && v.design_strength.value > 0.0
            && v.least_end_area.value > 0.0
    };
    value |s| {
        let above = s.eccentric_load * s.strength_reduction * s.eccentric_enhancement * s.brittleness;
        above * s.design_strength * s.least_end_area / (s.partial_factor * s.strength_adjustment)
    };
}

law! {
    /// Design strength over the strength of the cube class. Above about 0.6 a characteristic strength was put in the
    /// place of the design strength.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | f_c | `design_strength` | pressure |
    /// | f_cube | `cube_strength` (of the class) | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive strengths.
    DesignOverCubeStrength {
        /// Design value of the compressive strength.
        design_strength: Pressure as Strength,
        /// Strength of the cube class.
        cube_strength: Pressure as Strength,
    } -> Ratio as Ratio
    { Equation {
        name: "design strength over cube strength",
        form: "k = design_strength / cube_strength",
        source: "jackpull",
        locator: "plausibility of a strength given for the Chinese annex",
        mark: Mark::Judgement,
        valid: "strengths positive",
    } }
    valid |v| v.design_strength.value > 0.0 && v.cube_strength.value > 0.0;
    value |s| s.design_strength / s.cube_strength;
}

law! {
    /// Allowable jacking force by an allowable mean stress: `F_a = A_e s_a`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | A_e | `end_bearing_area` (effective) | area |
    /// | s_a | `allowable_mean` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a straight drive with the stresses of the
    /// standard; at an angle the mean is that of [`MeanAtTurnedJoint`].
    AllowableMeanEndForce {
        /// Effective end area.
        end_bearing_area: Area as Area,
        /// Allowable mean stress.
        allowable_mean: Pressure as Strength,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force by a mean stress",
        form: "F = end_bearing_area allowable_mean",
        source: "jswas_a6",
        locator: "table of allowable forces and its note; second hand",
        mark: Mark::Published,
        valid: "area and stress positive",
    } }
    valid |v| v.end_bearing_area.value > 0.0 && v.allowable_mean.value > 0.0;
    value |s| s.end_bearing_area * s.allowable_mean;
}

law! {
    /// Mean stress allowed at a turned joint that has both a limit on its mean and on its peak:
    /// `s = min(s_mean, r s_peak)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_mean | `allowable_mean` | pressure |
    /// | s_peak | `allowable_peak` | pressure |
    /// | r | `stress_ratio` (mean over greatest, of the area that the packer presses) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 < r <= 1; 0.5 for any angle of a joint
    /// that is known to stay closed.
    MeanAtTurnedJoint {
        /// Allowable mean stress of a straight drive.
        allowable_mean: Pressure as Strength,
        /// Allowable stress at the edge.
        allowable_peak: Pressure as Strength,
        /// Mean over greatest stress.
        stress_ratio: Ratio as Ratio,
    } -> Pressure as Strength
    { Equation {
        name: "mean stress allowed at a turned joint",
        form: "s = min(allowable_mean, stress_ratio allowable_peak)",
        source: "jackpull",
        locator: "peak of curved drives put on linear stress; the mean of straight drives stays a limit",
        mark: Mark::Judgement,
        valid: "stresses positive, stress ratio above 0 and at most 1",
    } }
    valid |v| v.allowable_mean.value > 0.0
        && v.allowable_peak.value > 0.0
        && v.stress_ratio.value > 0.0
        && v.stress_ratio.value <= 1.0;
    value |s| {
        let peaked = s.stress_ratio * s.allowable_peak;
        if peaked < s.allowable_mean { peaked } else { s.allowable_mean }
    };
}
