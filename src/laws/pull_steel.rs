//! A pulled steel pipe: strength in bending and against outside pressure, and the two combined checks, on the basis of
//! the offshore practice API RP 2A. The coefficients are rows of tables `steel_pull_factor` and `steel_pull_stress`.

use crate::law::laws;
use crate::quantity::{Length, Pressure, Ratio};

/// Largest diameter over wall of the practice behind these laws (API RP 2A, recalled; row `bending_end` of
/// `steel_pull_factor`).
const MOST_SLENDER: f64 = 300.0;

laws! {
    /// Allowable bending stress of a steel pipe, by slenderness D/t:
    ///
    /// - `F_b = k_1 F_y` while `(D/t) F_y` is at most s_1,
    /// - `F_b = (k_2 - m_2 F_y D/(E t)) F_y` while it is at most s_2,
    /// - `F_b = (k_3 - m_3 F_y D/(E t)) F_y` beyond.
    ///
    /// Beyond `last_ratio`, 300, there is no value.
    SteelBendingStrength "bending strength of a steel pipe" {
        /// Least yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// Modulus.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
        /// Share of yield of a stocky pipe.
        low_share "k_1": Ratio as Ratio,
        /// Constant of the middle branch.
        middle_constant "k_2": Ratio as Ratio,
        /// Slope of the middle branch.
        middle_slope "m_2": Ratio as Ratio,
        /// Constant of the last branch.
        high_constant "k_3": Ratio as Ratio,
        /// Slope of the last branch.
        high_slope "m_3": Ratio as Ratio,
        /// Diameter over wall times yield where the first branch ends.
        low_end "s_1": Pressure as Strength,
        /// The same for the middle branch.
        middle_end "s_2": Pressure as Strength,
        /// Diameter over wall where the last branch ends.
        last_ratio "r": Ratio as Ratio,
    } -> Pressure as Strength;
    form "F_b = low_share yield_strength while q = yield_strength outside_diameter / wall is at most low_end, \
          (middle_constant - middle_slope q / modulus) yield_strength at most middle_end, \
          (high_constant - high_slope q / modulus) yield_strength beyond, up to last_ratio of \
          outside_diameter / wall";
    from Memory "prci_1995" "allowable bending stress, after API RP 2A";
    valid "outside diameter over wall up to last_ratio, wall and modulus positive"
        if |v| 2.0 * v.wall < v.outside_diameter && v.outside_diameter <= v.last_ratio * v.wall;
    fails beyond |v| v.wall.value > 0.0 && v.outside_diameter > v.last_ratio * v.wall;
    value |s| {
        let slenderness = s.outside_diameter / s.wall;
        let reach = slenderness * s.yield_strength;
        let fall = s.yield_strength / s.modulus * slenderness;
        let share = if reach <= s.low_end {
            s.low_share
        } else if reach <= s.middle_end {
            s.middle_constant - s.middle_slope * fall
        } else {
            s.high_constant - s.high_slope * fall
        };
        share * s.yield_strength
    };

    /// Hoop stress of a pressure difference: `f_h = p D / (2 t)`.
    HoopStress "hoop stress" {
        /// Pressure difference (outside less inside, or inside less outside).
        pressure "p": Pressure as Pressure,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> Pressure as Strength;
    form "f_h = pressure outside_diameter / (2 wall)";
    from Published "steel_crossing_sheet" "section 1.0, hoop stress by Barlow";
    valid "wall positive and below half the outside diameter"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| s.pressure * s.outside_diameter / (2.0 * s.wall);

    /// Elastic hoop buckling stress of a long steel pipe: `F_he = k E (t/D)²`.
    ///
    /// There is no factor for more ovality.
    SteelElasticHoop "elastic hoop buckling stress" {
        /// Coefficient.
        coefficient "k": Ratio as Ratio,
        /// Modulus.
        modulus "E": Pressure as Modulus,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> Pressure as Strength;
    form "F_he = coefficient modulus (wall / outside_diameter)^2";
    from Memory "prci_1995" "elastic hoop buckling stress, after API RP 2A";
    valid "long pipe at most 1 % out of round, outside diameter over wall up to 300"
        if |v| 2.0 * v.wall < v.outside_diameter && v.outside_diameter <= MOST_SLENDER * v.wall;
    fails beyond |v| v.wall.value > 0.0 && v.outside_diameter > MOST_SLENDER * v.wall;
    value |s| {
        let thin = s.wall / s.outside_diameter;
        s.coefficient * s.modulus * thin * thin
    };

    /// Critical hoop buckling stress from the elastic one, in four pieces:
    ///
    /// - `F_hc = F_he` up to e_1 F_y,
    /// - `F_hc = k_2 F_y + m_2 F_he` up to e_2 F_y,
    /// - `F_hc = k_3 F_y / (c_3 + F_y / F_he)` up to e_3 F_y,
    /// - `F_hc = F_y` beyond.
    SteelCriticalHoop "critical hoop buckling stress" {
        /// Elastic hoop buckling stress.
        elastic "F_he": Pressure as Strength [> 0.0],
        /// Least yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// End of the elastic branch, over yield.
        elastic_end "e_1": Ratio as Ratio,
        /// Constant of the second branch.
        linear_constant "k_2": Ratio as Ratio,
        /// Slope of the second branch.
        linear_slope "m_2": Ratio as Ratio,
        /// End of the second branch, over yield.
        linear_end "e_2": Ratio as Ratio,
        /// Numerator of the third branch.
        third_numerator "k_3": Ratio as Ratio,
        /// Constant of the third branch.
        third_constant "c_3": Ratio as Ratio,
        /// End of the third branch, over yield.
        third_end "e_3": Ratio as Ratio,
    } -> Pressure as Strength;
    form "F_hc = elastic up to elastic_end yield_strength, linear_constant yield_strength + linear_slope elastic \
          up to linear_end, third_numerator yield_strength / (third_constant + yield_strength / elastic) up to \
          third_end, then yield_strength";
    from Memory "prci_1995" "critical hoop buckling stress, after API RP 2A";
    valid "stresses positive";
    value |s| {
        let over = s.elastic / s.yield_strength;
        if over <= s.elastic_end {
            s.elastic
        } else if over <= s.linear_end {
            s.linear_constant * s.yield_strength + s.linear_slope * s.elastic
        } else if over <= s.third_end {
            s.third_numerator * s.yield_strength / (s.third_constant + s.yield_strength / s.elastic)
        } else {
            s.yield_strength
        }
    };

    /// Tension and bending of a steel pipe together, at most 1: `u = f_a / (k F_y) + f_b / F_b`.
    ///
    /// In pure tension the other check governs: 1.25 f_a at most F_y is 0.80 of yield, less than 0.90.
    SteelTensionBending "steel in tension and bending" {
        /// Axial stress.
        axial "f_a": Pressure as Strength,
        /// Bending stress.
        bending "f_b": Pressure as Strength,
        /// Least yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// Share of yield in tension.
        tension_share "k": Ratio as Ratio [> 0.0],
        /// Bending strength.
        bending_strength "F_b": Pressure as Strength [> 0.0],
    } -> Ratio as Ratio;
    form "u = axial / (tension_share yield_strength) + bending / bending_strength";
    from Memory "prci_1995" "tensile and bending stress, combined";
    valid "strengths and share positive";
    value |s| s.axial / (s.tension_share * s.yield_strength) + s.bending / s.bending_strength;

    /// Tension, bending and outside pressure of a steel pipe together, at most 1: `u = A² + B² + 2 nu |A| B`,
    /// `A = k_a (f_a + f_b - h f_h) / F_y`, `B = k_h f_h / F_hc`.
    ///
    /// Factors 1.25 and 1.5 are those of an extreme condition; 1.67 and 2.0, of a normal one, are the safer.
    SteelTensionBendingHoop "steel in tension, bending and outside pressure" {
        /// Axial stress.
        axial "f_a": Pressure as Strength [>= 0.0],
        /// Bending stress.
        bending "f_b": Pressure as Strength [>= 0.0],
        /// Hoop stress of the outside pressure.
        hoop "f_h": Pressure as Strength [>= 0.0],
        /// Least yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// Critical hoop buckling stress.
        critical_hoop "F_hc": Pressure as Strength [> 0.0],
        /// Factor on the axial term.
        axial_factor "k_a": Ratio as Ratio,
        /// Factor on the hoop term.
        hoop_factor "k_h": Ratio as Ratio,
        /// Share of the hoop stress in the axial term.
        hoop_share "h": Ratio as Ratio,
        /// Poisson's ratio.
        poisson "nu": Ratio as Ratio,
    } -> Ratio as Ratio;
    form "u = A^2 + B^2 + 2 poisson |A| B, A = axial_factor (axial + bending - hoop_share hoop) / yield_strength, \
          B = hoop_factor hoop / critical_hoop";
    from Memory "prci_1995" "full interaction, after API RP 2A";
    valid "strengths positive, stresses not negative";
    value |s| {
        let along = s.axial_factor * (s.axial + s.bending - s.hoop_share * s.hoop) / s.yield_strength;
        let around = s.hoop_factor * s.hoop / s.critical_hoop;
        along * along + around * around + 2.0 * s.poisson * along.abs() * around
    };
}
