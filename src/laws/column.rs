//! A free length of steel pipe as a column: in the pit, before the ground holds it.

use crate::law::laws;
use crate::quantity::{Force, Length, Pressure, Ratio};
use core::f64::consts::PI;

laws! {
    /// Radius of gyration of a tube: `r = sqrt(D² + d²) / 4`.
    RadiusOfGyration "radius of gyration of a tube" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Inside diameter.
        inside_diameter "d": Length as Diameter [>= 0.0],
    } -> Length as Wall;
    form "r = sqrt(outside_diameter^2 + inside_diameter^2) / 4";
    from Judgement "jackpull" "geometry of a ring";
    valid "inside diameter not negative and below the outside diameter"
        if |v| v.outside_diameter > v.inside_diameter;
    value |s| {
        (s.outside_diameter * s.outside_diameter + s.inside_diameter * s.inside_diameter).sqrt() / 4.0
    };

    /// Elastic buckling stress of a column (Euler): `F_e = pi² E / (K L / r)²`.
    ///
    /// The larger length factor is the safer: 1 with both ends guided, 2 with one free.
    ElasticColumnStress "elastic stress of a column" {
        /// Modulus.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Effective over free length.
        length_factor "K": Ratio as Ratio [> 0.0],
        /// Free length.
        free_length "L": Length as Distance [> 0.0],
        /// Radius of gyration.
        radius_of_gyration "r": Length as Wall [> 0.0],
    } -> Pressure as Strength;
    form "F_e = pi^2 modulus / (length_factor free_length / radius_of_gyration)^2";
    from Memory "aisc_360" "section E3, elastic buckling stress (Euler)";
    valid "arguments positive";
    value |s| {
        let slenderness = s.length_factor * s.free_length / s.radius_of_gyration;
        s.modulus * (PI * PI) / (slenderness * slenderness)
    };

    /// Critical stress of a column: `F_cr = 0.658^(F_y/F_e) F_y` where F_y/F_e is up to 2.25, else `0.877 F_e`.
    ///
    /// It is central load on a straight column; an eccentric joint bears less.
    ColumnStress "critical stress of a column" {
        /// Yield strength.
        yield_strength "F_y": Pressure as Strength [> 0.0],
        /// Elastic stress of the column.
        elastic_stress "F_e": Pressure as Strength [> 0.0],
        /// Base of the inelastic curve.
        base "0.658": Ratio as Ratio [> 0.0 <= 1.0],
        /// Share of the elastic stress of a slender column.
        elastic_share "0.877": Ratio as Ratio [> 0.0 <= 1.0],
        /// Yield over elastic stress where the curves meet.
        limit "2.25": Ratio as Ratio,
    } -> Pressure as Strength;
    form "F_cr = yield_strength base^(yield_strength/elastic_stress), elastic_share elastic_stress above limit";
    from Memory "aisc_360" "section E3, flexural buckling";
    valid "stresses positive, base and share above 0 and at most 1";
    value |s| {
        let slim = s.yield_strength / s.elastic_stress;
        if slim <= s.limit {
            s.yield_strength * s.base.value.powf(slim.value)
        } else {
            s.elastic_share * s.elastic_stress
        }
    };

    /// Force of a column that may crush or buckle (Rankine): `1/P = 1/P_c + 1/P_b`.
    ///
    /// It lies below the lesser of the two, most where they are alike: there it is half of either.
    CrushOrBuckle "column that crushes or buckles" {
        /// Force of a short column.
        crushing "P_c": Force as Thrust [> 0.0],
        /// Force of a slender column.
        buckling "P_b": Force as Thrust [> 0.0],
    } -> Force as Thrust;
    form "P = crushing buckling/(crushing + buckling)";
    from Memory "rankine_1862" "resistance of pillars of middling length, the sum of the inverses";
    valid "both forces positive";
    value |s| s.buckling * (s.crushing / (s.crushing + s.buckling)).value;
}
