//! How far a pilot stem, a slender steel tube, can be pushed before it buckles.

use crate::law::laws;
use crate::quantity::{Force, Length, LineLoad, Measure, Pressure, Ratio, SecondMomentOfArea, UnitWeight};
use core::f64::consts::PI;

laws! {
    /// Second moment of area of a tube: `I = (pi/64) (D⁴ - (D - 2 t)⁴)`.
    TubeStiffness "second moment of area of a tube" {
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> SecondMomentOfArea as SecondMoment;
    form "I = pi/64 (outside_diameter^4 - (outside_diameter - 2 wall)^4)";
    from Memory "timoshenko_gere" "section properties; plane geometry";
    valid "wall positive and up to half the diameter"
        if |v| 2.0 * v.wall <= v.outside_diameter;
    value |s| {
        let inside = s.outside_diameter - 2.0 * s.wall;
        let fourth = |d: Length| d * d * d * d;
        PI / 64.0 * (fourth(s.outside_diameter) - fourth(inside))
    };

    /// Buckling force of a straight column without support between its ends (Euler): `P = pi² E I / (K L)²`.
    ///
    /// For slender columns that are straight and loaded in their axis; the safety factor must cover what joints add.
    EulerBuckling "buckling of a free length" {
        /// Modulus of elasticity.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Second moment of area.
        second_moment "I": SecondMomentOfArea as SecondMoment [> 0.0],
        /// Length without support.
        free_length "L": Length as Distance [> 0.0],
        /// Effective over free length (1 hinged at both ends, 2 free at one).
        end_factor "K": Ratio as Ratio [> 0.0],
    } -> Force as Thrust;
    form "P = pi^2 modulus second_moment/(end_factor free_length)^2";
    from Memory "timoshenko_gere" "Euler column";
    valid "all arguments positive";
    value |s| {
        let effective = s.end_factor * s.free_length;
        PI * PI * s.modulus * s.second_moment / (effective * effective)
    };

    /// Buckling force of a long column in an elastic bed: `P = 2 sqrt(k E I)`.
    ///
    /// For a long column in contact with the ground all along.
    EmbeddedBuckling "buckling in the ground" {
        /// Modulus of the bed (force per length and deflection).
        bedding "k": Pressure as Strength [>= 0.0],
        /// Modulus of elasticity.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Second moment of area.
        second_moment "I": SecondMomentOfArea as SecondMoment [> 0.0],
    } -> Force as Thrust;
    form "P = 2 sqrt(bedding modulus second_moment)";
    from Memory "timoshenko_gere" "long bar on an elastic foundation; also Hetenyi, Beams on Elastic Foundation, 1946";
    valid "bedding not negative, modulus and second moment positive";
    value |s| {
        let force = (s.bedding * s.modulus * s.second_moment).sqrt();
        2.0 * force
    };

    /// Modulus of the bed that clay gives a stem: `k = n s_u`.
    ///
    /// For clay that is loaded faster than it drains.
    BeddingInClay "bedding of a slender bar in clay" {
        /// Bedding modulus over undrained strength (67).
        bedding_per_strength "n": Ratio as Ratio [> 0.0],
        /// Undrained strength.
        strength "s_u": Pressure as UnitFriction [>= 0.0],
    } -> Pressure as Strength;
    form "k = bedding_per_strength strength";
    from Memory "davisson_1963" "horizontal modulus of subgrade reaction times width, 67 times the undrained strength";
    valid "strength not negative";
    value |s| s.bedding_per_strength * s.strength;

    /// Modulus of the bed that sand gives a stem: `k = n_h z min(N/N_0, 1)`.
    ///
    /// Very loose sand, below N_0, has no constant of its own; that its bed falls to nothing with the count is ours.
    BeddingInSand "bedding of a slender bar in sand" {
        /// Modulus of horizontal subgrade reaction, per depth.
        per_depth "n_h": UnitWeight as UnitWeight [>= 0.0],
        /// Depth of the bar.
        depth "z": Length as Depth [>= 0.0],
        /// SPT N.
        blows "N": Ratio as Count [>= 0.0],
        /// SPT N where loose sand begins (where loose sand begins, 4).
        blows_loose "N_0": Ratio as Count [> 0.0],
    } -> Pressure as Strength;
    form "k = per_depth depth min(blows/blows_loose, 1)";
    from Judgement "jackpull"
        "Terzaghi, Geotechnique 5, 1955, modulus of horizontal subgrade reaction times width; less in very loose \
                  sand, in proportion to the count";
    valid "no argument negative";
    value |s| {
        s.per_depth * s.depth * (s.blows / s.blows_loose).min(Ratio::from_si(1.0))
    };

    /// Buckling force of a tube that lies in a wider, level bore: `P = 2 sqrt(E I w / r)`.
    ///
    /// For a long level bore with some clearance; beyond the force the tube snakes, which spoils line and friction
    /// before it breaks anything.
    OpenBoreBuckling "buckling in a wider bore" {
        /// Modulus of elasticity.
        modulus "E": Pressure as Modulus [> 0.0],
        /// Second moment of area.
        second_moment "I": SecondMomentOfArea as SecondMoment [> 0.0],
        /// Weight of the tube.
        weight "w": LineLoad as LineWeight [> 0.0],
        /// Clearance on the radius.
        clearance "r": Length as Offset [> 0.0],
    } -> Force as Thrust;
    form "P = 2 sqrt(modulus second_moment weight/clearance)";
    from Memory "dawson_paslay_1984" "sinusoidal buckling of a pipe in an inclined hole, level";
    valid "all arguments positive";
    value |s| {
        let force = (s.modulus * s.second_moment * (s.weight / s.clearance)).sqrt();
        2.0 * force
    };

    /// What may be pushed: the buckling force over a safety factor.
    BucklingAllowed "allowed thrust against buckling" {
        /// Buckling force.
        buckling "P": Force as Thrust,
        /// Safety factor.
        factor "n": Ratio as Ratio [>= 1.0],
    } -> Force as Thrust;
    form "P_a = buckling/factor";
    from Judgement "jackpull" "safety factor on the buckling force";
    valid "factor of 1 and more";
    value |s| s.buckling / s.factor;
}
