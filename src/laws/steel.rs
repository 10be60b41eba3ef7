//! What a steel jacking pipe can bear along its axis: yield, local buckling of the wall, the Chinese annex, and the
//! building code as upper information. A column of free pipe is in [`super::column`].

use crate::law::laws;
use crate::quantity::{Area, Force, Length, Pressure, Ratio};

laws! {
    /// Elastic stress of local buckling of a tube under axial compression: `F_xe = 2 C E t / D`.
    ///
    /// A critical stress, not an allowable.
    ElasticLocalBuckling "elastic local buckling of a tube" {
        /// Coefficient with the effect of imperfections (0.6 in theory, half of it for imperfections).
        coefficient "C": Ratio as Ratio [> 0.0],
        /// Modulus of steel.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
    } -> Pressure as Strength;
    form "F_xe = 2 coefficient modulus wall / outside_diameter";
    from Memory "api_rp_2a" "section 3.2.2, elastic local buckling";
    valid "arguments positive";
    value |s| 2.0 * s.coefficient * s.modulus * s.wall / s.outside_diameter;

    /// Stress of local buckling of a tube under axial compression: `F_xc = F_y` up to the compact D/t, above it
    /// `F_xc = min(F_y (1.64 - 0.23 (D/t)^0.25), F_xe)`, never over F_y.
    ///
    /// A critical stress, not an allowable.
    LocalBuckling "local buckling of a tube" {
        /// Yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// Elastic stress of local buckling.
        elastic_stress "F_xe": Pressure as Strength [> 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Constant of the inelastic curve.
        constant "1.64": Ratio as Ratio,
        /// Slope of the inelastic curve.
        slope "0.23": Ratio as Ratio,
        /// Exponent of D/t.
        exponent "0.25": Ratio as Ratio,
        /// D/t up to which yield counts.
        compact_ratio "60": Ratio as Ratio,
        /// Last D/t of the range.
        last_ratio "300": Ratio as Ratio,
    } -> Pressure as Strength;
    form "F_xc = min(yield_strength, yield_strength (constant - slope (outside_diameter/wall)^exponent), \
          elastic_stress) above compact_ratio, yield_strength below it; up to last_ratio";
    from Memory "api_rp_2a" "section 3.2.2, inelastic local buckling";
    valid "D/t above 2 and up to the last ratio, stresses positive"
        if |v| v.outside_diameter > 2.0 * v.wall && v.outside_diameter / v.wall <= v.last_ratio;
    fails beyond |v| v.wall.value > 0.0 && v.outside_diameter / v.wall > v.last_ratio;
    value |s| {
        let slim = s.outside_diameter / s.wall;
        if slim <= s.compact_ratio {
            s.yield_strength
        } else {
            let curve = s.constant.value - s.slope.value * slim.value.powf(s.exponent.value);
            let inelastic = s.yield_strength * curve.clamp(0.0, 1.0);
            if s.elastic_stress < inelastic { s.elastic_stress } else { inelastic }
        }
    };

    /// Allowable jacking force of steel pipe: `P = A min(F_y / n, k F_xc)`.
    ///
    /// On drives over 300 m or in mixed ground [`ChineseSteelEndForce`] is a limit besides.
    SteelEndForce "allowable jacking force of steel pipe" {
        /// Area of the section.
        section_area "A": Area as Area [> 0.0],
        /// Yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// Safety on yield.
        yield_factor "n": Ratio as Ratio [>= 1.0],
        /// Stress of local buckling.
        local_stress "F_xc": Pressure as Strength [> 0.0],
        /// Share of it that is allowed.
        local_share "k": Ratio as Ratio [> 0.0 <= 1.0],
    } -> Force as Thrust;
    form "P = section_area min(yield_strength / yield_factor, local_share local_stress)";
    from Judgement "jackpull" "a factor 3 on capacity (ttp_2010, p. 333) read as one on yield; 5/3 on local buckling";
    valid "area and stresses positive, factor at least 1, share above 0 and at most 1";
    value |s| {
        let (by_yield, by_local) = (s.yield_strength / s.yield_factor, s.local_share * s.local_stress);
        s.section_area * if by_local < by_yield { by_local } else { by_yield }
    };

    /// Allowable jacking force of steel pipe by a Chinese annex: `F = phi1 phi3 phi4 f_s A_p / gamma_Qd`.
    ///
    /// The partial factor is in the result. The higher stability is for drives under 300 m in uniform ground.
    ChineseSteelEndForce "allowable jacking force of steel, Chinese annex" {
        /// phi1, reduction of the strength.
        strength_reduction "phi1": Ratio as Ratio [> 0.0],
        /// phi3, brittleness.
        brittleness "phi3": Ratio as Ratio [> 0.0],
        /// phi4, stability of the pipe.
        stability "phi4": Ratio as Ratio [> 0.0],
        /// Partial factor of the jacking force.
        partial_factor "gamma_Qd": Ratio as Ratio [>= 1.0],
        /// Design value of the compressive strength (not yield).
        design_strength "f_s": Pressure as Strength [> 0.0],
        /// Least effective area that passes the force.
        least_end_area "A_p": Area as Area [> 0.0],
    } -> Force as Thrust;
    form "F = strength_reduction brittleness stability design_strength least_end_area / partial_factor";
    from Memory "cn_annex_e" "clauses E.1.1 and E.1.2; the coefficients were legible, the form is recalled";
    valid "coefficients, strength and area positive, partial factor at least 1";
    value |s| {
        let above = s.strength_reduction * s.brittleness * s.stability;
        above * s.design_strength * s.least_end_area / s.partial_factor
    };

    /// Effective over full area of a round section: 1 up to `D/t = 0.11 E/F_y`, above it
    /// `0.038 E / (F_y D/t) + 2/3`, no more than 1.
    EffectiveShare "effective share of a round section" {
        /// Modulus of steel.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// D/t without local buckling, over E/F_y.
        round_limit "0.11": Ratio as Ratio,
        /// Coefficient of E/(F_y D/t).
        slope "0.038": Ratio as Ratio,
        /// Last D/t of the range, over E/F_y.
        last_limit "0.45": Ratio as Ratio,
    } -> Ratio as Ratio;
    form "Q = slope modulus / (yield_strength outside_diameter/wall) + 2/3, no more than 1, 1 where \
          outside_diameter/wall is up to round_limit modulus / yield_strength; up to last_limit of it";
    from Memory "aisc_360" "table B4.1a and section E7";
    valid "D/t above 2 and up to the last limit, stresses positive"
        if |v| v.outside_diameter > 2.0 * v.wall
            && v.outside_diameter / v.wall <= v.last_limit * (v.modulus / v.yield_strength);
    fails beyond |v| v.wall.value > 0.0 && v.outside_diameter > 2.0 * v.wall && v.yield_strength.value > 0.0;
    value |s| {
        let slim = s.outside_diameter / s.wall;
        let stiff = s.modulus / s.yield_strength;
        let share = if slim <= s.round_limit * stiff { 1.0 } else { (s.slope * stiff / slim).value + 2.0 / 3.0 };
        Ratio::from(share.min(1.0))
    };

    /// Allowable axial force of a round section by the building code: `P = F_cr Q A / Omega`. Upper information: it
    /// covers no eccentric weld, no roundness of a jacked pipe and no free length.
    ///
    /// Never a default for jacking.
    CodeAxialForce "allowable axial force by the building code" {
        /// Critical stress (yield for a short column).
        critical_stress "F_cr": Pressure as Strength [> 0.0],
        /// Effective over full area.
        effective_share "Q": Ratio as Ratio [> 0.0 <= 1.0],
        /// Area of the section.
        section_area "A": Area as Area [> 0.0],
        /// Safety on nominal strength.
        safety "Omega": Ratio as Ratio [>= 1.0],
    } -> Force as Thrust;
    form "P = critical_stress effective_share section_area / safety";
    from Memory "aisc_360" "chapter E, nominal strength over the safety factor";
    valid "stress and area positive, share above 0 and at most 1, safety at least 1";
    value |s| s.critical_stress * s.effective_share * s.section_area / s.safety;
}
