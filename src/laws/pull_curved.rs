//! Pull force on a curved path that leaves and meets the surface, by ASTM F1962: tensions as the head of the pipe
//! passes the ends of the curves. For crossings drilled from the surface; a bore on grade between two pits is pulled
//! straight, and its ramp is a pair of bends.

use crate::law::law;
use crate::quantity::{Angle, Force, Length, LineLoad, Measure, Ratio};
use crate::source::{Equation, Mark};
use core::f64::consts::FRAC_PI_2;

/// Growth of tension over a bend.
fn growth(friction: Ratio, angle: Angle) -> f64 {
    (friction.value * angle.value).exp()
}

/// Neither friction is negative and the angle is at most a right one, which degrees taken for radians are not.
fn sound(friction_ground: Ratio, friction_bore: Ratio, angle: Angle) -> bool {
    friction_ground.value >= 0.0 && friction_bore.value >= 0.0 && (0.0..=FRAC_PI_2).contains(&angle.value)
}

law! {
    /// Tension when the head enters the ground: the whole string is dragged over the surface and round the first bend,
    /// `T_A = exp(v_a alpha) v_a w_a (L_1 + L_2 + L_3 + L_4)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | alpha | `pipe_side_angle` | angle |
    /// | v_a | `friction_ground` | ratio |
    /// | w_a | `pipe_weight` (empty, in air) | force per length |
    /// | L_1 + ... + L_4 | `string` (the excess outside, both curves and the level part) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** angles from 0 to 90 deg. For a pipe that
    /// is nearly weightless in light fluid this tension, or the next, is the highest.
    TensionAtEntry {
        /// Angle between pipe and surface where the pipe enters; the rig's exit.
        pipe_side_angle: Angle as Angle,
        /// Friction outside the bore.
        friction_ground: Ratio as Ratio,
        /// Weight of the empty pipe in air.
        pipe_weight: LineLoad as LineWeight,
        /// Length of the whole string.
        string: Length as Distance,
    } -> Force as Pull
    { Equation {
        name: "tension at the pipe entry",
        form: "T_A = exp(friction_ground pipe_side_angle) friction_ground pipe_weight string",
        source: "ttp_2010",
        locator: "eq. 5.12a, p. 217 (from ASTM F1962)",
        mark: Mark::Published,
        valid: "friction, weight and length not negative, angle 0 to 90 deg",
    } }
    valid |v| sound(v.friction_ground, v.friction_ground, v.pipe_side_angle)
        && v.pipe_weight.value >= 0.0
        && v.string.value >= 0.0;
    value |s| growth(s.friction_ground, s.pipe_side_angle) * (s.friction_ground * s.pipe_weight * s.string);
}

law! {
    /// Tension when the head has passed the curve on the pipe side:
    /// `T_B = exp(v_b alpha) (T_A + v_b |w_b| L_2 - w_b H - v_a w_a L_2 exp(v_a alpha))`, w_b positive downwards.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T_A | `tension_at_entry` | force |
    /// | alpha | `pipe_side_angle` | angle |
    /// | v_a, v_b | `friction_ground`, `friction_bore` | ratio |
    /// | w_a | `pipe_weight` (in air) | force per length |
    /// | w_b | `net_weight` (in fluid, down positive) | force per length |
    /// | L_2 | `length` of the curve | length |
    /// | H | `depth` gained in it | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION), which counts the net weight upwards. **Valid for**
    /// angles from 0 to 90 deg. The stiffness of the pipe is neglected.
    TensionAfterEntryCurve {
        /// Tension at the entry.
        tension_at_entry: Force as Pull,
        /// Angle of the pipe at its entry.
        pipe_side_angle: Angle as Angle,
        /// Friction outside the bore.
        friction_ground: Ratio as Ratio,
        /// Friction in the bore.
        friction_bore: Ratio as Ratio,
        /// Weight of the empty pipe in air.
        pipe_weight: LineLoad as LineWeight,
        /// Net weight in the bore fluid, down positive.
        net_weight: LineLoad as LineWeight,
        /// Length of the curve along the ground.
        length: Length as Distance,
        /// Depth of the level part below the entry.
        depth: Length as Depth,
    } -> Force as Pull
    { Equation {
        name: "tension after the entry curve",
        form: "T_B = exp(friction_bore pipe_side_angle) (tension_at_entry + friction_bore |net_weight| length \
               - net_weight depth - friction_ground pipe_weight length exp(friction_ground pipe_side_angle))",
        source: "ttp_2010",
        locator: "eq. 5.12b, p. 217 (from ASTM F1962)",
        mark: Mark::Published,
        valid: "friction, lengths and tension not negative, angle 0 to 90 deg",
    } }
    valid |v| sound(v.friction_ground, v.friction_bore, v.pipe_side_angle)
        && v.tension_at_entry.value >= 0.0
        && v.length.value >= 0.0
        && v.depth.value >= 0.0;
    value |s| {
        let left = s.friction_ground * s.pipe_weight * s.length * growth(s.friction_ground, s.pipe_side_angle);
        let dragged = s.friction_bore * s.net_weight.abs() * s.length;
        growth(s.friction_bore, s.pipe_side_angle) * (s.tension_at_entry + dragged - s.net_weight * s.depth - left)
    };
}

law! {
    /// Tension when the head has passed the level part:
    /// `T_C = T_B + v_b |w_b| L_3 - exp(v_b alpha) v_a w_a L_3 exp(v_a alpha)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T_B | `tension_after_entry` | force |
    /// | alpha | `pipe_side_angle` | angle |
    /// | v_a, v_b | `friction_ground`, `friction_bore` | ratio |
    /// | w_a, w_b | `pipe_weight`, `net_weight` | force per length |
    /// | L_3 | `length` of the level part | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** angles from 0 to 90 deg.
    TensionAfterLevel {
        /// Tension after the entry curve.
        tension_after_entry: Force as Pull,
        /// Angle of the pipe at its entry.
        pipe_side_angle: Angle as Angle,
        /// Friction outside the bore.
        friction_ground: Ratio as Ratio,
        /// Friction in the bore.
        friction_bore: Ratio as Ratio,
        /// Weight of the empty pipe in air.
        pipe_weight: LineLoad as LineWeight,
        /// Net weight in the bore fluid.
        net_weight: LineLoad as LineWeight,
        /// Length of the level part.
        length: Length as Distance,
    } -> Force as Pull
    { Equation {
        name: "tension after the level part",
        form: "T_C = tension_after_entry + friction_bore |net_weight| length - exp(friction_bore pipe_side_angle) \
               friction_ground pipe_weight length exp(friction_ground pipe_side_angle)",
        source: "ttp_2010",
        locator: "eq. 5.12c, p. 217 (from ASTM F1962)",
        mark: Mark::Published,
        valid: "friction, length and tension not negative, angle 0 to 90 deg",
    } }
    valid |v| sound(v.friction_ground, v.friction_bore, v.pipe_side_angle)
        && v.tension_after_entry.value >= 0.0
        && v.length.value >= 0.0;
    value |s| {
        let left = s.friction_ground * s.pipe_weight * s.length * growth(s.friction_ground, s.pipe_side_angle);
        s.tension_after_entry + s.friction_bore * s.net_weight.abs() * s.length
            - growth(s.friction_bore, s.pipe_side_angle) * left
    };
}

law! {
    /// Tension when the head leaves the ground at the rig:
    /// `T_D = exp(v_b beta) (T_C + v_b |w_b| L_4 + w_b H - exp(v_b alpha) v_a w_a L_4 exp(v_a alpha))`, w_b positive
    /// downwards.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T_C | `tension_after_level` | force |
    /// | alpha, beta | `pipe_side_angle`, `rig_side_angle` | angle |
    /// | v_a, v_b | `friction_ground`, `friction_bore` | ratio |
    /// | w_a | `pipe_weight` | force per length |
    /// | w_b | `net_weight` (down positive) | force per length |
    /// | L_4 | `length` of the curve | length |
    /// | H | `depth` lost in it | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION), which counts the net weight upwards and has one depth
    /// for both ends; portals of unequal height take two. **Valid for** angles from 0 to 90 deg.
    TensionAtExit {
        /// Tension after the level part.
        tension_after_level: Force as Pull,
        /// Angle of the pipe at its entry.
        pipe_side_angle: Angle as Angle,
        /// Angle of the pipe where it leaves the ground.
        rig_side_angle: Angle as Angle,
        /// Friction outside the bore.
        friction_ground: Ratio as Ratio,
        /// Friction in the bore.
        friction_bore: Ratio as Ratio,
        /// Weight of the empty pipe in air.
        pipe_weight: LineLoad as LineWeight,
        /// Net weight in the bore fluid, down positive.
        net_weight: LineLoad as LineWeight,
        /// Length of the curve along the ground.
        length: Length as Distance,
        /// Depth of the level part below the exit.
        depth: Length as Depth,
    } -> Force as Pull
    { Equation {
        name: "tension at the pipe exit",
        form: "T_D = exp(friction_bore rig_side_angle) (tension_after_level + friction_bore |net_weight| length \
               + net_weight depth - exp(friction_bore pipe_side_angle) friction_ground pipe_weight length \
               exp(friction_ground pipe_side_angle))",
        source: "ttp_2010",
        locator: "eq. 5.12d, p. 217 (from ASTM F1962)",
        mark: Mark::Published,
        valid: "friction, lengths and tension not negative, angles 0 to 90 deg",
    } }
    valid |v| sound(v.friction_ground, v.friction_bore, v.pipe_side_angle)
        && sound(v.friction_bore, v.friction_bore, v.rig_side_angle)
        && v.tension_after_level.value >= 0.0
        && v.length.value >= 0.0
        && v.depth.value >= 0.0;
    value |s| {
        let left = s.friction_ground * s.pipe_weight * s.length * growth(s.friction_ground, s.pipe_side_angle);
        let dragged = s.friction_bore * s.net_weight.abs() * s.length;
        growth(s.friction_bore, s.rig_side_angle)
            * (s.tension_after_level + dragged + s.net_weight * s.depth
                - growth(s.friction_bore, s.pipe_side_angle) * left)
    };
}

law! {
    /// Mean radius of a curve that reaches a depth at a surface angle: `R = 2 H / alpha²`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `depth` | length |
    /// | alpha | `angle` (in radians) | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** angles up to 30 deg, where the sine is
    /// the angle to 5 %.
    MeanCurveRadius {
        /// Depth reached.
        depth: Length as Depth,
        /// Angle at the surface.
        angle: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "mean radius of a surface curve",
        form: "R = 2 depth / angle^2",
        source: "astm_f1962_1999",
        locator: "average radius of curvature at pipe entry and exit",
        mark: Mark::Memory,
        valid: "angle above 0 and up to 30 deg, depth not negative",
    } }
    valid |v| v.angle.value > 0.0 && v.angle.value <= FRAC_PI_2 / 3.0 && v.depth.value >= 0.0;
    value |s| s.depth * (2.0 / (s.angle.value * s.angle.value));
}

law! {
    /// Length along the ground of a curve that reaches a depth at a surface angle: `L = 2 H / alpha`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `depth` | length |
    /// | alpha | `angle` (in radians) | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** angles up to 30 deg.
    SurfaceCurveLength {
        /// Depth reached.
        depth: Length as Depth,
        /// Angle at the surface.
        angle: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "length of a surface curve",
        form: "L = 2 depth / angle",
        source: "astm_f1962_1999",
        locator: "horizontal distance to reach depth, and to rise to the surface",
        mark: Mark::Memory,
        valid: "angle above 0 and up to 30 deg, depth not negative",
    } }
    valid |v| v.angle.value > 0.0 && v.angle.value <= FRAC_PI_2 / 3.0 && v.depth.value >= 0.0;
    value |s| s.depth * (2.0 / s.angle.value);
}

law! {
    /// Radius of a bore that turns by an angle over a length: `R = L / A`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | L | `length` over which the turn was measured | length |
    /// | A | `turn` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** turns above 0 and up to 180 deg. In feet,
    /// degrees and inches the sheet has 688 for 12 times 180 over pi, which is 0.066 % high.
    RadiusOfTurn {
        /// Length of the bore.
        length: Length as Distance,
        /// Angle turned in it.
        turn: Angle as Angle,
    } -> Length as Distance
    { Equation {
        name: "radius of a measured turn",
        form: "R = length / turn",
        source: "steel_crossing_sheet",
        locator: "section 1.1, radius from length and total turn",
        mark: Mark::Published,
        valid: "turn above 0 and up to 180 deg",
    } }
    valid |v| v.turn.value > 0.0 && v.turn.value <= 2.0 * FRAC_PI_2 && v.length.value >= 0.0;
    value |s| Length::from_si(s.length.value / s.turn.value);
}
