//! What a steel jacking pipe can bear along its axis: yield, local buckling of the wall, the Chinese annex, and the
//! building code as upper information. A column of free pipe is in [`super::column`].

use crate::law::law;
use crate::quantity::{Area, Force, Length, Pressure, Ratio};
use crate::source::{Equation, Mark};

law! {
    /// Elastic stress of local buckling of a tube under axial compression: `F_xe = 2 C E t / D`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | C | `coefficient` (0.6 in theory, half of it for imperfections) | ratio |
    /// | E | `modulus` | pressure |
    /// | t | `wall` | length |
    /// | D | `outside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive arguments. A critical stress, not
    /// an allowable.
    ElasticLocalBuckling {
        /// Coefficient with the effect of imperfections.
        coefficient: Ratio as Ratio,
        /// Modulus of steel.
        modulus: Pressure as Modulus,
        /// Wall.
        wall: Length as Wall,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
    } -> Pressure as Strength
    { Equation {
        name: "elastic local buckling of a tube",
        form: "F_xe = 2 coefficient modulus wall / outside_diameter",
        source: "api_rp_2a",
        locator: "section 3.2.2, elastic local buckling",
        mark: Mark::Memory,
        valid: "arguments positive",
    } }
    valid |v| v.coefficient.value > 0.0
        && v.modulus.value > 0.0
        && v.wall.value > 0.0
        && v.outside_diameter.value > 0.0;
    value |s| 2.0 * s.coefficient * s.modulus * s.wall / s.outside_diameter;
}

law! {
    /// Stress of local buckling of a tube under axial compression: `F_xc = F_y` up to the compact D/t, above it
    /// `F_xc = min(F_y (1.64 - 0.23 (D/t)^0.25), F_xe)`, never over F_y.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | F_y | `yield_strength` | pressure |
    /// | F_xe | `elastic_stress` | pressure |
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    /// | 1.64, 0.23, 0.25 | `constant`, `slope`, `exponent` | ratio |
    /// | 60, 300 | `compact_ratio`, `last_ratio` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** D/t up to the last ratio. A critical
    /// stress, not an allowable.
    LocalBuckling {
        /// Yield strength.
        yield_strength: Pressure as Strength,
        /// Elastic stress of local buckling.
        elastic_stress: Pressure as Strength,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
        /// Constant of the inelastic curve.
        constant: Ratio as Ratio,
        /// Slope of the inelastic curve.
        slope: Ratio as Ratio,
        /// Exponent of D/t.
        exponent: Ratio as Ratio,
        /// D/t up to which yield counts.
        compact_ratio: Ratio as Ratio,
        /// Last D/t of the range.
        last_ratio: Ratio as Ratio,
    } -> Pressure as Strength
    { Equation {
        name: "local buckling of a tube",
        form: "F_xc = min(yield_strength, yield_strength (constant - slope (outside_diameter/wall)^exponent), \
               elastic_stress) above compact_ratio, yield_strength below it; up to last_ratio",
        source: "api_rp_2a",
        locator: "section 3.2.2, inelastic local buckling",
        mark: Mark::Memory,
        valid: "D/t above 2 and up to the last ratio, stresses positive",
    } }
    valid |v| v.yield_strength.value > 0.0
        && v.elastic_stress.value > 0.0
        && v.outside_diameter > 2.0 * v.wall
        && v.wall.value > 0.0
        && v.outside_diameter / v.wall <= v.last_ratio;
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
}

law! {
    /// Allowable jacking force of steel pipe: `P = A min(F_y / n, k F_xc)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | A | `section_area` | area |
    /// | F_y | `yield_strength` | pressure |
    /// | n | `yield_factor` | ratio |
    /// | F_xc | `local_stress` (of local buckling) | pressure |
    /// | k | `local_share` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** n of at least 1, k of at most 1. On drives
    /// over 300 m or in mixed ground [`ChineseSteelEndForce`] is a limit besides.
    SteelEndForce {
        /// Area of the section.
        section_area: Area as Area,
        /// Yield strength.
        yield_strength: Pressure as Strength,
        /// Safety on yield.
        yield_factor: Ratio as Ratio,
        /// Stress of local buckling.
        local_stress: Pressure as Strength,
        /// Share of it that is allowed.
        local_share: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force of steel pipe",
        form: "P = section_area min(yield_strength / yield_factor, local_share local_stress)",
        source: "jackpull",
        locator: "a factor 3 on capacity (ttp_2010, p. 333) read as one on yield; 5/3 on local buckling",
        mark: Mark::Judgement,
        valid: "area and stresses positive, factor at least 1, share above 0 and at most 1",
    } }
    valid |v| v.section_area.value > 0.0
        && v.yield_strength.value > 0.0
        && v.yield_factor.value >= 1.0
        && v.local_stress.value > 0.0
        && v.local_share.value > 0.0
        && v.local_share.value <= 1.0;
    value |s| {
        let (by_yield, by_local) = (s.yield_strength / s.yield_factor, s.local_share * s.local_stress);
        s.section_area * if by_local < by_yield { by_local } else { by_yield }
    };
}

law! {
    /// Allowable jacking force of steel pipe by a Chinese annex: `F = phi1 phi3 phi4 f_s A_p / gamma_Qd`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | phi1 | `strength_reduction` | ratio |
    /// | phi3 | `brittleness` | ratio |
    /// | phi4 | `stability` | ratio |
    /// | gamma_Qd | `partial_factor` | ratio |
    /// | f_s | `design_strength` (not yield) | pressure |
    /// | A_p | `least_end_area` | area |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive coefficients of this scheme and a
    /// partial factor of at least 1, which is in the result. The higher stability is for drives under 300 m in uniform
    /// ground.
    ChineseSteelEndForce {
        /// phi1, reduction of the strength.
        strength_reduction: Ratio as Ratio,
        /// phi3, brittleness.
        brittleness: Ratio as Ratio,
        /// phi4, stability of the pipe.
        stability: Ratio as Ratio,
        /// Partial factor of the jacking force.
        partial_factor: Ratio as Ratio,
        /// Design value of the compressive strength.
        design_strength: Pressure as Strength,
        /// Least effective area that passes the force.
        least_end_area: Area as Area,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force of steel, Chinese annex",
        form: "F = strength_reduction brittleness stability design_strength least_end_area / partial_factor",
        source: "cn_annex_e",
        locator: "clauses E.1.1 and E.1.2; the coefficients were legible, the form is recalled",
        mark: Mark::Memory,
        valid: "coefficients, strength and area positive, partial factor at least 1",
    } }
    valid |v| [v.strength_reduction, v.brittleness, v.stability].iter().all(|factor| factor.value > 0.0)
        && v.partial_factor.value >= 1.0
        && v.design_strength.value > 0.0
        && v.least_end_area.value > 0.0;
    value |s| {
        let above = s.strength_reduction * s.brittleness * s.stability;
        above * s.design_strength * s.least_end_area / s.partial_factor
    };
}

law! {
    /// Effective over full area of a round section: 1 up to `D/t = 0.11 E/F_y`, above it
    /// `0.038 E / (F_y D/t) + 2/3`, no more than 1.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` | pressure |
    /// | F_y | `yield_strength` | pressure |
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    /// | 0.11 | `round_limit` | ratio |
    /// | 0.038 | `slope` | ratio |
    /// | 0.45 | `last_limit` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** D/t up to `0.45 E/F_y`.
    EffectiveShare {
        /// Modulus of steel.
        modulus: Pressure as Modulus,
        /// Yield strength.
        yield_strength: Pressure as Strength,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
        /// D/t without local buckling, over E/F_y.
        round_limit: Ratio as Ratio,
        /// Coefficient of E/(F_y D/t).
        slope: Ratio as Ratio,
        /// Last D/t of the range, over E/F_y.
        last_limit: Ratio as Ratio,
    } -> Ratio as Ratio
    { Equation {
        name: "effective share of a round section",
        form: "Q = slope modulus / (yield_strength outside_diameter/wall) + 2/3, no more than 1, 1 where outside_diameter/wall is up \
               to round_limit modulus / yield_strength; up to last_limit of it",
        source: "aisc_360",
        locator: "table B4.1a and section E7",
        mark: Mark::Memory,
        valid: "D/t above 2 and up to the last limit, stresses positive",
    } }
    valid |v| v.modulus.value > 0.0
        && v.yield_strength.value > 0.0
        && v.wall.value > 0.0
        && v.outside_diameter > 2.0 * v.wall
        && v.outside_diameter / v.wall <= v.last_limit * (v.modulus / v.yield_strength);
    value |s| {
        let slim = s.outside_diameter / s.wall;
        let stiff = s.modulus / s.yield_strength;
        let share = if slim <= s.round_limit * stiff { 1.0 } else { (s.slope * stiff / slim).value + 2.0 / 3.0 };
        Ratio::from(share.min(1.0))
    };
}

law! {
    /// Allowable axial force of a round section by the building code: `P = F_cr Q A / Omega`. Upper information: it
    /// covers no eccentric weld, no roundness of a jacked pipe and no free length.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | F_cr | `critical_stress` (yield for a short column) | pressure |
    /// | Q | `effective_share` | ratio |
    /// | A | `section_area` | area |
    /// | Omega | `safety` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a share of at most 1 and a safety of at
    /// least 1. Never a default for jacking.
    CodeAxialForce {
        /// Critical stress.
        critical_stress: Pressure as Strength,
        /// Effective over full area.
        effective_share: Ratio as Ratio,
        /// Area of the section.
        section_area: Area as Area,
        /// Safety on nominal strength.
        safety: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "allowable axial force by the building code",
        form: "P = critical_stress effective_share section_area / safety",
        source: "aisc_360",
        locator: "chapter E, nominal strength over the safety factor",
        mark: Mark::Memory,
        valid: "stress and area positive, share above 0 and at most 1, safety at least 1",
    } }
    valid |v| v.critical_stress.value > 0.0
        && v.effective_share.value > 0.0
        && v.effective_share.value <= 1.0
        && v.section_area.value > 0.0
        && v.safety.value >= 1.0;
    value |s| s.critical_stress * s.effective_share * s.section_area / s.safety;
}
