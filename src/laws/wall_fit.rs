//! Whether a thrust wall fits its thrust: where the reaction lies, how far the wall must move, how large it must be.

use crate::law::law;
use crate::quantity::{Force, Length, Pressure, Ratio};
use crate::source::{Equation, Mark};

law! {
    /// Depth of the resultant of a pressure that runs linearly down a strip, below the top of the strip:
    /// `y = H (p_t + 2 p_b) / (3 (p_t + p_b))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `height` | length |
    /// | p_t | `top_pressure` | pressure |
    /// | p_b | `bottom_pressure` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** pressures that are not negative and not
    /// both zero.
    StripCentroid {
        /// Height of the strip.
        height: Length as Depth,
        /// Pressure at its top.
        top_pressure: Pressure as UnitFriction,
        /// Pressure at its foot.
        bottom_pressure: Pressure as UnitFriction,
    } -> Length as Depth
    { Equation {
        name: "depth of the reaction in a strip",
        form: "y = height (top_pressure + 2 bottom_pressure) / (3 (top_pressure + bottom_pressure))",
        source: "jackpull",
        locator: "centroid of a trapezium",
        mark: Mark::Judgement,
        valid: "height positive, pressures not negative and not both zero",
    } }
    valid |v| v.height.value > 0.0
        && v.top_pressure.value >= 0.0
        && v.bottom_pressure.value >= 0.0
        && (v.top_pressure + v.bottom_pressure).value > 0.0;
    value |s| {
        let sum = s.top_pressure + s.bottom_pressure;
        s.height * ((sum + s.bottom_pressure) / (3.0 * sum))
    };
}

law! {
    /// Depth of the resultant of two forces: `z = (F_1 z_1 + F_2 z_2) / (F_1 + F_2)`. More forces are joined one after
    /// the other; one that is taken off, as at an eye, is negative.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | F_1, z_1 | `force`, `depth` | force, length |
    /// | F_2, z_2 | `other_force`, `other_depth` | force, length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a sum of forces above zero.
    ResultantDepth {
        /// First force.
        force: Force as Thrust,
        /// Its depth.
        depth: Length as Depth,
        /// Second force.
        other_force: Force as Thrust,
        /// Its depth.
        other_depth: Length as Depth,
    } -> Length as Depth
    { Equation {
        name: "depth of the reaction of two strips",
        form: "z = (force depth + other_force other_depth) / (force + other_force)",
        source: "jackpull",
        locator: "moments of parallel forces",
        mark: Mark::Judgement,
        valid: "first force not negative, sum of the forces positive",
    } }
    valid |v| v.force.value >= 0.0 && (v.force + v.other_force).value > 0.0;
    value |s| (s.force * s.depth + s.other_force * s.other_depth) / (s.force + s.other_force);
}

law! {
    /// How far the thrust is off the reaction of the ground: `e = |z_F - z_R|`.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** depths that are not negative.
    ThrustEccentricity {
        /// Depth of the thrust axis.
        thrust_depth: Length as Depth,
        /// Depth of the reaction.
        reaction_depth: Length as Depth,
    } -> Length as Offset
    { Equation {
        name: "eccentricity of the thrust on a wall",
        form: "e = |thrust_depth - reaction_depth|",
        source: "jackpull",
        locator: "distance of two parallel forces",
        mark: Mark::Judgement,
        valid: "depths not negative",
    } }
    valid |v| v.thrust_depth.value >= 0.0 && v.reaction_depth.value >= 0.0;
    value |s| (s.thrust_depth - s.reaction_depth).abs();
}

law! {
    /// Movement of the wall into the ground at which its resistance is complete: `u = r H`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | r | `share` | ratio |
    /// | H | `height` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** shares up to a tenth. A line on grade bears
    /// a fraction of it, which is why the resistance is divided by a large factor.
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
    PassiveMovement {
        /// Movement over height.
        share: Ratio as Percent,
        /// Height of the wall.
        height: Length as Distance,
    } -> Length as Offset
    { Equation {
        name: "movement to full resistance of a wall",
        form: "u = share height",
        source: "trade_practice",
        locator: "movement to full passive pressure as a share of the wall height, recalled",
        mark: Mark::Memory,
        valid: "share 0 to 10 %, height positive",
    } }
    valid |v| (0.0..=0.1).contains(&v.share.value) && v.height.value > 0.0;
    value |s| s.share * s.height;
}

law! {
    /// Width a wall needs for a thrust, from the resistance of one of any width, to which it is proportional:
    /// `B = B_0 (n F + R_e) / R_0`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | F | `thrust` | force |
    /// | n | `safety` | ratio |
    /// | R_e | `eye` | force |
    /// | B_0 | `width` | length |
    /// | R_0 | `resistance` (of all strips at that width, nothing taken off) | force |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a factor of at least 1.
    WidthForThrust {
        /// Thrust.
        thrust: Force as Thrust,
        /// Safety factor.
        safety: Ratio as Ratio,
        /// What openings take off.
        eye: Force as Thrust,
        /// Width of the wall that the resistance is of.
        width: Length as Distance,
        /// Its resistance.
        resistance: Force as Thrust,
    } -> Length as Distance
    { Equation {
        name: "width of a wall for a thrust",
        form: "B = width (safety thrust + eye) / resistance",
        source: "jackpull",
        locator: "inverse of the allowable thrust on a wall",
        mark: Mark::Judgement,
        valid: "resistance and width positive, thrust and eye not negative, factor at least 1",
    } }
    valid |v| v.thrust.value >= 0.0
        && v.eye.value >= 0.0
        && v.safety.value >= 1.0
        && v.width.value > 0.0
        && v.resistance.value > 0.0;
    value |s| s.width * ((s.safety * s.thrust + s.eye) / s.resistance);
}
