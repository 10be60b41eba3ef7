//! How far a pilot stem, a slender steel tube, can be pushed before it buckles.

use crate::law::law;
use crate::quantity::{Force, Length, LineLoad, Measure, Pressure, Ratio, SecondMomentOfArea, UnitWeight};
use crate::source::{Equation, Mark};
use core::f64::consts::PI;

law! {
    /// Second moment of area of a tube: `I = (pi/64) (D⁴ - (D - 2 t)⁴)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | t | `wall` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a wall up to half the diameter.
    TubeStiffness {
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
    } -> SecondMomentOfArea as SecondMoment
    { Equation {
        name: "second moment of area of a tube",
        form: "I = pi/64 (outside_diameter^4 - (outside_diameter - 2 wall)^4)",
        source: "timoshenko_gere",
        locator: "section properties; plane geometry",
        mark: Mark::Memory,
        valid: "wall positive and up to half the diameter",
    } }
    valid |v| v.wall.value > 0.0 && 2.0 * v.wall <= v.outside_diameter;
    value |s| {
        let inside = s.outside_diameter - 2.0 * s.wall;
        let fourth = |d: Length| d * d * d * d;
        PI / 64.0 * (fourth(s.outside_diameter) - fourth(inside))
    };
}

law! {
    /// Buckling force of a straight column without support between its ends (Euler): `P = pi² E I / (K L)²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` | pressure |
    /// | I | `second_moment` | length⁴ |
    /// | L | `free_length` | length |
    /// | K | `end_factor` (1 hinged at both ends, 2 free at one) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** slender columns that are straight and loaded
    /// in their axis; the safety factor must cover what joints add.
    EulerBuckling {
        /// Modulus of elasticity.
        modulus: Pressure as Modulus,
        /// Second moment of area.
        second_moment: SecondMomentOfArea as SecondMoment,
        /// Length without support.
        free_length: Length as Distance,
        /// Effective over free length.
        end_factor: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "buckling of a free length",
        form: "P = pi^2 modulus second_moment/(end_factor free_length)^2",
        source: "timoshenko_gere",
        locator: "Euler column",
        mark: Mark::Memory,
        valid: "all arguments positive",
    } }
    valid |v| v.modulus.value > 0.0
        && v.second_moment.value > 0.0
        && v.free_length.value > 0.0
        && v.end_factor.value > 0.0;
    value |s| {
        let effective = s.end_factor * s.free_length;
        PI * PI * s.modulus * s.second_moment / (effective * effective)
    };
}

law! {
    /// Buckling force of a long column in an elastic bed: `P = 2 sqrt(k E I)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | k | `bedding` (force per length and deflection) | pressure |
    /// | E | `modulus` | pressure |
    /// | I | `second_moment` | length⁴ |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a long column in contact with the ground all
    /// along.
    EmbeddedBuckling {
        /// Modulus of the bed.
        bedding: Pressure as Strength,
        /// Modulus of elasticity.
        modulus: Pressure as Modulus,
        /// Second moment of area.
        second_moment: SecondMomentOfArea as SecondMoment,
    } -> Force as Thrust
    { Equation {
        name: "buckling in the ground",
        form: "P = 2 sqrt(bedding modulus second_moment)",
        source: "timoshenko_gere",
        locator: "long bar on an elastic foundation; also Hetenyi, Beams on Elastic Foundation, 1946",
        mark: Mark::Memory,
        valid: "bedding not negative, modulus and second moment positive",
    } }
    valid |v| v.bedding.value >= 0.0 && v.modulus.value > 0.0 && v.second_moment.value > 0.0;
    value |s| {
        let force = (s.bedding * s.modulus * s.second_moment).sqrt();
        2.0 * force
    };
}

law! {
    /// Modulus of the bed that clay gives a stem: `k = n s_u`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | n | `bedding_per_strength` (67) | ratio |
    /// | s_u | `strength` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** clay, loaded faster than it drains.
    BeddingInClay {
        /// Bedding modulus over undrained strength.
        bedding_per_strength: Ratio as Ratio,
        /// Undrained strength.
        strength: Pressure as UnitFriction,
    } -> Pressure as Strength
    { Equation {
        name: "bedding of a slender bar in clay",
        form: "k = bedding_per_strength strength",
        source: "davisson_1963",
        locator: "horizontal modulus of subgrade reaction times width, 67 times the undrained strength",
        mark: Mark::Memory,
        valid: "strength not negative",
    } }
    valid |v| v.strength.value >= 0.0 && v.bedding_per_strength.value > 0.0;
    value |s| s.bedding_per_strength * s.strength;
}

law! {
    /// Modulus of the bed that sand gives a stem: `k = n_h z min(N/N_0, 1)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | n_h | `per_depth` (modulus of horizontal subgrade reaction, per depth) | force/volume |
    /// | z | `depth` | length |
    /// | N | `blows` (SPT N) | ratio |
    /// | N_0 | `blows_loose` (where loose sand begins, 4) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** sand. Very loose sand, below N_0, has no
    /// constant of its own; that its bed falls to nothing with the count is ours.
    BeddingInSand {
        /// Modulus of horizontal subgrade reaction, per depth.
        per_depth: UnitWeight as UnitWeight,
        /// Depth of the bar.
        depth: Length as Depth,
        /// SPT N.
        blows: Ratio as Count,
        /// SPT N where loose sand begins.
        blows_loose: Ratio as Count,
    } -> Pressure as Strength
    { Equation {
        name: "bedding of a slender bar in sand",
        form: "k = per_depth depth min(blows/blows_loose, 1)",
        source: "jackpull",
        locator: "Terzaghi, Geotechnique 5, 1955, modulus of horizontal subgrade reaction times width; less in very loose \
                  sand, in proportion to the count",
        mark: Mark::Judgement,
        valid: "no argument negative",
    } }
    valid |v| v.per_depth.value >= 0.0 && v.depth.value >= 0.0 && v.blows.value >= 0.0 && v.blows_loose.value > 0.0;
    value |s| {
        s.per_depth * s.depth * (s.blows / s.blows_loose).min(Ratio::from_si(1.0))
    };
}

law! {
    /// Buckling force of a tube that lies in a wider, level bore: `P = 2 sqrt(E I w / r)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` | pressure |
    /// | I | `second_moment` | length⁴ |
    /// | w | `weight` | force per length |
    /// | r | `clearance` (on the radius) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a long level bore with some clearance; beyond
    /// the force the tube snakes, which spoils line and friction before it breaks anything.
    OpenBoreBuckling {
        /// Modulus of elasticity.
        modulus: Pressure as Modulus,
        /// Second moment of area.
        second_moment: SecondMomentOfArea as SecondMoment,
        /// Weight of the tube.
        weight: LineLoad as LineWeight,
        /// Clearance on the radius.
        clearance: Length as Offset,
    } -> Force as Thrust
    { Equation {
        name: "buckling in a wider bore",
        form: "P = 2 sqrt(modulus second_moment weight/clearance)",
        source: "dawson_paslay_1984",
        locator: "sinusoidal buckling of a pipe in an inclined hole, level",
        mark: Mark::Memory,
        valid: "all arguments positive",
    } }
    valid |v| v.modulus.value > 0.0 && v.second_moment.value > 0.0 && v.weight.value > 0.0 && v.clearance.value > 0.0;
    value |s| {
        let force = (s.modulus * s.second_moment * (s.weight / s.clearance)).sqrt();
        2.0 * force
    };
}

law! {
    /// What may be pushed: the buckling force over a safety factor.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a factor of 1 and more.
    BucklingAllowed {
        /// Buckling force.
        buckling: Force as Thrust,
        /// Safety factor.
        factor: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "allowed thrust against buckling",
        form: "P_a = buckling/factor",
        source: "jackpull",
        locator: "safety factor on the buckling force",
        mark: Mark::Judgement,
        valid: "factor of 1 and more",
    } }
    valid |v| v.factor.value >= 1.0;
    value |s| s.buckling / s.factor;
}
