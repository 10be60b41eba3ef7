//! A free length of steel pipe as a column: in the pit, before the ground holds it.

use crate::law::law;
use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::PI;

law! {
    /// Radius of gyration of a tube: `r = sqrt(D² + d²) / 4`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | d | `inside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= d < D.
    RadiusOfGyration {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Inside diameter.
        inside_diameter: Length as Diameter,
    } -> Length as Wall
    { Equation {
        name: "radius of gyration of a tube",
        form: "r = sqrt(outside_diameter^2 + inside_diameter^2) / 4",
        source: "jackpull",
        locator: "geometry of a ring",
        mark: Mark::Judgement,
        valid: "inside diameter not negative and below the outside diameter",
    } }
    valid |v| v.inside_diameter.value >= 0.0 && v.outside_diameter > v.inside_diameter;
    value |s| {
        (s.outside_diameter * s.outside_diameter + s.inside_diameter * s.inside_diameter).sqrt() / 4.0
    };
}

law! {
    /// Elastic buckling stress of a column (Euler): `F_e = pi² E / (K L / r)²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` | pressure |
    /// | K | `length_factor` | ratio |
    /// | L | `free_length` | length |
    /// | r | `radius_of_gyration` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive arguments. The larger length
    /// factor is the safer: 1 with both ends guided, 2 with one free.
    ElasticColumnStress {
        /// Modulus.
        modulus: Pressure as Modulus,
        /// Effective over free length.
        length_factor: Ratio as Ratio,
        /// Free length.
        free_length: Length as Distance,
        /// Radius of gyration.
        radius_of_gyration: Length as Wall,
    } -> Pressure as Strength
    { Equation {
        name: "elastic stress of a column",
        form: "F_e = pi^2 modulus / (length_factor free_length / radius_of_gyration)^2",
        source: "aisc_360",
        locator: "section E3, elastic buckling stress (Euler)",
        mark: Mark::Memory,
        valid: "arguments positive",
    } }
    valid |v| v.modulus.value > 0.0
        && v.length_factor.value > 0.0
        && v.free_length.value > 0.0
        && v.radius_of_gyration.value > 0.0;
    value |s| {
        let slenderness = s.length_factor * s.free_length / s.radius_of_gyration;
        s.modulus * (PI * PI) / (slenderness * slenderness)
    };
}

law! {
    /// Critical stress of a column: `F_cr = 0.658^(F_y/F_e) F_y` where F_y/F_e is up to 2.25, else `0.877 F_e`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | F_y | `yield_strength` | pressure |
    /// | F_e | `elastic_stress` | pressure |
    /// | 0.658 | `base` | ratio |
    /// | 0.877 | `elastic_share` | ratio |
    /// | 2.25 | `limit` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive stresses, a base and a share of at
    /// most 1. It is central load on a straight column; an eccentric joint bears less.
    ColumnStress {
        /// Yield strength.
        yield_strength: Pressure as Strength,
        /// Elastic stress of the column.
        elastic_stress: Pressure as Strength,
        /// Base of the inelastic curve.
        base: Ratio as Ratio,
        /// Share of the elastic stress of a slender column.
        elastic_share: Ratio as Ratio,
        /// Yield over elastic stress where the curves meet.
        limit: Ratio as Ratio,
    } -> Pressure as Strength
    { Equation {
        name: "critical stress of a column",
        form: "F_cr = yield_strength base^(yield_strength/elastic_stress), elastic_share elastic_stress above limit",
        source: "aisc_360",
        locator: "section E3, flexural buckling",
        mark: Mark::Memory,
        valid: "stresses positive, base and share above 0 and at most 1",
    } }
    valid |v| v.yield_strength.value > 0.0
        && v.elastic_stress.value > 0.0
        && [v.base, v.elastic_share].iter().all(|share| share.value > 0.0 && share.value <= 1.0);
    value |s| {
        let slim = s.yield_strength / s.elastic_stress;
        if slim <= s.limit {
            s.yield_strength * s.base.value.powf(slim.value)
        } else {
            s.elastic_share * s.elastic_stress
        }
    };
}

law! {
    /// Force of a column that may crush or buckle (Rankine): `1/P = 1/P_c + 1/P_b`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | P_c | `crushing` | force |
    /// | P_b | `buckling` | force |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive forces. It lies below the lesser of
    /// the two, most where they are alike: there it is half of either.
    CrushOrBuckle {
        /// Force of a short column.
        crushing: Force as Thrust,
        /// Force of a slender column.
        buckling: Force as Thrust,
    } -> Force as Thrust
    { Equation {
        name: "column that crushes or buckles",
        form: "P = crushing buckling/(crushing + buckling)",
        source: "rankine_1862",
        locator: "resistance of pillars of middling length, the sum of the inverses",
        mark: Mark::Memory,
        valid: "both forces positive",
    } }
    valid |v| v.crushing.value > 0.0 && v.buckling.value > 0.0;
    value |s| s.buckling * (s.crushing / (s.crushing + s.buckling)).value;
}
