//! Whether a thrust wall fits its thrust: where the reaction lies, how far the wall must move, how large it must be.

use crate::law::laws;
use crate::quantity::{Force, Length, Pressure, Ratio};

laws! {
    /// Depth of the resultant of a pressure that runs linearly down a strip, below the top of the strip:
    /// `y = H (p_t + 2 p_b) / (3 (p_t + p_b))`.
    StripCentroid "depth of the reaction in a strip" {
        /// Height of the strip.
        height "H": Length as Depth [> 0.0],
        /// Pressure at its top.
        top_pressure "p_t": Pressure as UnitFriction [>= 0.0],
        /// Pressure at its foot.
        bottom_pressure "p_b": Pressure as UnitFriction [>= 0.0],
    } -> Length as Depth;
    form "y = height (top_pressure + 2 bottom_pressure) / (3 (top_pressure + bottom_pressure))";
    from Judgement "jackpull" "centroid of a trapezium";
    valid "height positive, pressures not negative and not both zero"
        if |v| (v.top_pressure + v.bottom_pressure).value > 0.0;
    value |s| {
        let sum = s.top_pressure + s.bottom_pressure;
        s.height * ((sum + s.bottom_pressure) / (3.0 * sum))
    };

    /// Depth of the resultant of two forces: `z = (F_1 z_1 + F_2 z_2) / (F_1 + F_2)`. More forces are joined one after
    /// the other; one that is taken off, as at an eye, is negative.
    ResultantDepth "depth of the reaction of two strips" {
        /// First force.
        force "F_1": Force as Thrust [>= 0.0],
        /// Its depth.
        depth "z_1": Length as Depth,
        /// Second force.
        other_force "F_2": Force as Thrust,
        /// Its depth.
        other_depth "z_2": Length as Depth,
    } -> Length as Depth;
    form "z = (force depth + other_force other_depth) / (force + other_force)";
    from Judgement "jackpull" "moments of parallel forces";
    valid "first force not negative, sum of the forces positive"
        if |v| (v.force + v.other_force).value > 0.0;
    value |s| (s.force * s.depth + s.other_force * s.other_depth) / (s.force + s.other_force);

    /// How far the thrust is off the reaction of the ground: `e = |z_F - z_R|`.
    ThrustEccentricity "eccentricity of the thrust on a wall" {
        /// Depth of the thrust axis.
        thrust_depth "z_F": Length as Depth [>= 0.0],
        /// Depth of the reaction.
        reaction_depth "z_R": Length as Depth [>= 0.0],
    } -> Length as Offset;
    form "e = |thrust_depth - reaction_depth|";
    from Judgement "jackpull" "distance of two parallel forces";
    valid "depths not negative";
    value |s| (s.thrust_depth - s.reaction_depth).abs();

    /// Movement of the wall into the ground at which its resistance is complete: `u = r H`.
    ///
    /// A line on grade bears a fraction of it, which is why the resistance is divided by a large factor.
    ///
    /// ```
    /// // 2 % of 3 m: 60 mm.
    /// use jackpull::law::Law;
    /// use jackpull::laws::wall_fit::PassiveMovement;
    /// use jackpull::quantity::{FromText, Length, Ratio};
    /// let movement = PassiveMovement { share: Ratio::from_text("2 %")?, height: Length::from_text("3 m")? };
    /// assert!((movement.value() - Length::from_text("60 mm")?).abs() < Length::from_text("0.001 mm")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PassiveMovement "movement to full resistance of a wall" {
        /// Movement over height.
        share "r": Ratio as Percent [>= 0.0 <= 0.1],
        /// Height of the wall.
        height "H": Length as Distance [> 0.0],
    } -> Length as Offset;
    form "u = share height";
    from Memory "trade_practice" "movement to full passive pressure as a share of the wall height, recalled";
    valid "share 0 to 10 %, height positive";
    value |s| s.share * s.height;

    /// Width a wall needs for a thrust, from the resistance of one of any width, to which it is proportional:
    /// `B = B_0 (n F + R_e) / R_0`.
    WidthForThrust "width of a wall for a thrust" {
        /// Thrust.
        thrust "F": Force as Thrust [>= 0.0],
        /// Safety factor.
        safety "n": Ratio as Ratio [>= 1.0],
        /// What openings take off.
        eye "R_e": Force as Thrust [>= 0.0],
        /// Width of the wall that the resistance is of.
        width "B_0": Length as Distance [> 0.0],
        /// Its resistance (of all strips at that width, nothing taken off).
        resistance "R_0": Force as Thrust [> 0.0],
    } -> Length as Distance;
    form "B = width (safety thrust + eye) / resistance";
    from Judgement "jackpull" "inverse of the allowable thrust on a wall";
    valid "resistance and width positive, thrust and eye not negative, factor at least 1";
    value |s| s.width * ((s.safety * s.thrust + s.eye) / s.resistance);
}
