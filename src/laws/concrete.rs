//! What the end of a concrete jacking pipe can bear, by scheme. Each scheme holds its own factors for eccentricity and
//! safety; factors of two schemes are never put together. All work on the end bearing area, not on the barrel.

use crate::law::laws;
use crate::quantity::{Area, Force, Pressure, Ratio};

laws! {
    /// Mean stress that a jacking force puts on the end: `s = P / A`. Schemes are compared by it.
    MeanEndStress "mean stress on the end" {
        /// Jacking force.
        force "P": Force as Thrust [>= 0.0],
        /// End bearing area.
        end_bearing_area "A": Area as Area [> 0.0],
    } -> Pressure as Strength;
    form "s = force / end_bearing_area";
    from Judgement "jackpull" "statics";
    valid "force not negative, area positive";
    value |s| s.force / s.end_bearing_area;

    /// Allowable jacking force by a share of the strength as mean stress: `P = k A f`. With a share of 0.2 of the
    /// cylinder strength it is the triangle of a closed joint with a factor 2.5 on its edge.
    ///
    /// For a joint closed over its full face. At an angle the lesser of this and [`EdgeShareEndForce`] counts.
    MeanShareEndForce "allowable jacking force, share of the strength as mean" {
        /// Mean stress over strength.
        mean_share "k": Ratio as Ratio [> 0.0 <= 1.0],
        /// End bearing area.
        end_bearing_area "A": Area as Area [> 0.0],
        /// Compressive strength of cylinders.
        strength "f": Pressure as Strength [> 0.0],
    } -> Force as Thrust;
    form "P = mean_share end_bearing_area strength";
    from Judgement "jackpull" "triangular stress over the joint with a safety on its edge";
    valid "share above 0 and at most 1, area and strength positive";
    value |s| s.mean_share * s.end_bearing_area * s.strength;

    /// Allowable jacking force by a share of the strength as stress at the edge: `P = r k A f`, r the mean over the
    /// greatest stress in the joint.
    ///
    /// R comes from [`StressRatioAtAngle`](super::turned_joint::StressRatioAtAngle) with k f as the greatest stress,
    /// and is 0.5 for a joint that is just closed. EN 1916 asks the characteristic strength and a share of about 0.6.
    EdgeShareEndForce "allowable jacking force, share of the strength at the edge" {
        /// Mean over greatest stress.
        stress_ratio "r": Ratio as Ratio [> 0.0 <= 1.0],
        /// Stress at the edge over strength.
        edge_share "k": Ratio as Ratio [> 0.0 <= 1.0],
        /// End bearing area: where `stress_ratio` is that of a packer, no more than the packer presses.
        end_bearing_area "A": Area as Area [> 0.0],
        /// Compressive strength.
        strength "f": Pressure as Strength [> 0.0],
    } -> Force as Thrust;
    form "P = stress_ratio edge_share end_bearing_area strength";
    from Memory "en_1916" "annex B, limit on the edge stress with linear stress over the joint; BS 5911-1 follows it";
    valid "stress ratio and share above 0 and at most 1, area and strength positive";
    value |s| s.stress_ratio * s.edge_share * s.end_bearing_area * s.strength;

    /// Allowable jacking force by ASCE 27: `P = min(1, k_e) 0.85 phi f A / LF`, the lesser of the concentric and the
    /// eccentric case.
    ///
    /// The form is recalled with little certainty and allows more than any other scheme here: never a default, and to
    /// be capped by a limit on the edge stress. It has no concentric case of its own, on purpose.
    Asce27EndForce "allowable jacking force of concrete, ASCE 27" {
        /// Eccentric over concentric case.
        eccentric_share "k_e": Ratio as Ratio [> 0.0 <= 1.0],
        /// Stress block over cylinder strength.
        stress_block "0.85": Ratio as Ratio [> 0.0 <= 1.0],
        /// Strength reduction.
        phi "phi": Ratio as Ratio [> 0.0 <= 1.0],
        /// Load factor on the jacking force.
        load_factor "LF": Ratio as Ratio [>= 1.0],
        /// Compressive strength of cylinders.
        strength "f": Pressure as Strength [> 0.0],
        /// End bearing area.
        end_bearing_area "A": Area as Area [> 0.0],
    } -> Force as Thrust;
    form "P = min(1, eccentric_share) stress_block phi strength end_bearing_area / load_factor";
    from Memory "asce_27" "longitudinal thrust, concentric and eccentric case; printed form not seen";
    valid "shares above 0 and at most 1, load factor at least 1, strength and area positive";
    value |s| {
        let lesser = s.eccentric_share.value.min(1.0);
        lesser * s.stress_block * s.phi * s.strength * s.end_bearing_area / s.load_factor
    };

    /// Allowable jacking force of concrete pipe by a Chinese annex:
    /// `F = 0.5 phi1 phi2 phi3 f_c A_p / (gamma_Qd phi5)`.
    ///
    /// The partial factor is in the result: the force it is held against carries none.
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
    ChineseConcreteEndForce "allowable jacking force of concrete, Chinese annex" {
        /// Factor for the eccentric load.
        eccentric_load "0.5": Ratio as Ratio [> 0.0],
        /// phi1, reduction of the compressive strength.
        strength_reduction "phi1": Ratio as Ratio [> 0.0],
        /// phi2, enhancement under eccentric compression.
        eccentric_enhancement "phi2": Ratio as Ratio [> 0.0],
        /// phi3, brittleness.
        brittleness "phi3": Ratio as Ratio [> 0.0],
        /// phi5, adjustment between standards of strength.
        strength_adjustment "phi5": Ratio as Ratio [> 0.0],
        /// Partial factor of the jacking force.
        partial_factor "gamma_Qd": Ratio as Ratio [>= 1.0],
        /// Design value of the compressive strength (not characteristic).
        design_strength "f_c": Pressure as Strength [> 0.0],
        /// Least effective area that passes the force.
        least_end_area "A_p": Area as Area [> 0.0],
    } -> Force as Thrust;
    form "F = eccentric_load strength_reduction eccentric_enhancement brittleness design_strength least_end_area \
          / (partial_factor strength_adjustment)";
    from Published "cn_annex_e" "coefficients clauses E.1.1 and E.1.2; form as applied in a calculation sheet";
    valid "coefficients, strength and area positive, partial factor at least 1";
    value |s| {
        let above = s.eccentric_load * s.strength_reduction * s.eccentric_enhancement * s.brittleness;
        above * s.design_strength * s.least_end_area / (s.partial_factor * s.strength_adjustment)
    };

    /// Design strength over the strength of the cube class. Above about 0.6 a characteristic strength was put in the
    /// place of the design strength.
    DesignOverCubeStrength "design strength over cube strength" {
        /// Design value of the compressive strength.
        design_strength "f_c": Pressure as Strength [> 0.0],
        /// Strength of the cube class.
        cube_strength "f_cube": Pressure as Strength [> 0.0],
    } -> Ratio as Ratio;
    form "k = design_strength / cube_strength";
    from Judgement "jackpull" "plausibility of a strength given for the Chinese annex";
    valid "strengths positive";
    value |s| s.design_strength / s.cube_strength;

    /// Allowable jacking force by an allowable mean stress: `F_a = A_e s_a`.
    ///
    /// For a straight drive with the stresses of the standard; at an angle the mean is that of [`MeanAtTurnedJoint`].
    AllowableMeanEndForce "allowable jacking force by a mean stress" {
        /// Effective end area.
        end_bearing_area "A_e": Area as Area [> 0.0],
        /// Allowable mean stress.
        allowable_mean "s_a": Pressure as Strength [> 0.0],
    } -> Force as Thrust;
    form "F = end_bearing_area allowable_mean";
    from SecondHand "jswas_a6" "table of allowable forces and its note";
    valid "area and stress positive";
    value |s| s.end_bearing_area * s.allowable_mean;

    /// Mean stress allowed at a turned joint that has both a limit on its mean and on its peak:
    /// `s = min(s_mean, r s_peak)`.
    ///
    /// r is 0.5 for any angle of a joint that is known to stay closed.
    MeanAtTurnedJoint "mean stress allowed at a turned joint" {
        /// Allowable mean stress of a straight drive.
        allowable_mean "s_mean": Pressure as Strength [> 0.0],
        /// Allowable stress at the edge.
        allowable_peak "s_peak": Pressure as Strength [> 0.0],
        /// Mean over greatest stress (mean over greatest, of the area that the packer presses).
        stress_ratio "r": Ratio as Ratio [> 0.0 <= 1.0],
    } -> Pressure as Strength;
    form "s = min(allowable_mean, stress_ratio allowable_peak)";
    from Judgement "jackpull" "peak of curved drives put on linear stress; the mean of straight drives stays a limit";
    valid "stresses positive, stress ratio above 0 and at most 1";
    value |s| {
        let peaked = s.stress_ratio * s.allowable_peak;
        if peaked < s.allowable_mean { peaked } else { s.allowable_mean }
    };
}
