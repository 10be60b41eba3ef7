//! Pull of a stiff pipe over a curved stretch, by the pipeline guide. Its straight stretches need no law of their own:
//! `pull::StraightPull` for weight and friction, and `thrust::FrictionForce` with the fluid drag per area.

use crate::law::laws;
use crate::quantity::{Angle, Force, Length, LineLoad, Measure, Pressure, Ratio};
use core::f64::consts::{FRAC_PI_2, FRAC_PI_4};

/// Arc over the length in which bending dies out, `U = L sqrt(T / (E I))`, below which the difference X loses its
/// digits (it falls with U squared).
const LEAST_SLACK: f64 = 0.01;

/// `U`: how often the pipe can bend between the ends of the curve.
fn slack(curve: &CurveNormalForce) -> f64 {
    let arc = curve.radius.value * curve.turn.value;
    let (outer, inner) = (curve.outside_diameter.value, (curve.outside_diameter - 2.0 * curve.wall).value);
    let inertia = FRAC_PI_4 / 16.0 * (outer.powi(4) - inner.powi(4));
    arc * (curve.mean_tension.value / (curve.modulus.value * inertia)).sqrt()
}

laws! {
    /// Force of the bore wall on the middle of a curve that a stiff pipe is pulled round:
    /// `N = (T h - w cos(theta) Y) / X` with `h = R (1 - cos(a/2))`, `L = R a`, `j = sqrt(E I / T)`, `U = L / j`,
    /// `X = L/4 - (j/2) tanh(U/2)`, `Y = L²/8 - j² (1 - 1/cosh(U/2))`.
    ///
    /// Rewritten from feet and inches (`18 L²` and `3 L` with L in feet are L²/8 and L/4). The tension at the far end
    /// depends on the result: repeat until the mean agrees.
    CurveNormalForce "normal force in a curve" {
        /// Mean tension in the curve (of both ends of the curve).
        mean_tension "T": Force as Pull,
        /// Net weight, down positive (down positive, so negative when it floats).
        net_weight "w": LineLoad as LineWeight,
        /// Slope in the middle of the curve.
        slope "theta": Angle as Angle,
        /// Radius.
        radius "R": Length as Distance,
        /// Angle turned.
        turn "a": Angle as Angle,
        /// Modulus.
        modulus "E": Pressure as Modulus,
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall,
    } -> Force as Pull;
    form "N = (mean_tension radius (1 - cos(turn/2)) - net_weight cos(slope) Y) / X, L = radius turn, \
          j = sqrt(modulus (pi/64) (outside_diameter^4 - (outside_diameter - 2 wall)^4) / mean_tension), \
          X = L/4 - (j/2) tanh(L/(2 j)), Y = L^2/8 - j^2 (1 - 1/cosh(L/(2 j)))";
    from Memory "prci_1995" "curved section, normal force";
    valid "mean tension and turn positive, turn up to 90 deg, L / j at least 0.01"
        if |v| v.mean_tension.value > 0.0
            && v.turn.value > 0.0
            && v.turn.value <= FRAC_PI_2
            && v.wall.value > 0.0
            && 2.0 * v.wall < v.outside_diameter
            && v.modulus.value > 0.0
            && slack(v) >= LEAST_SLACK;
    value |s| {
        let arc = s.radius.value * s.turn.value;
        let half = slack(s) / 2.0;
        let decay = arc / (2.0 * half);
        let sag = s.radius.value * (1.0 - (s.turn.value / 2.0).cos());
        let point = arc / 4.0 - decay / 2.0 * half.tanh();
        // The hyperbolic cosine of a slack pipe is infinite, and its reciprocal the 0 that is meant.
        let weight = arc * arc / 8.0 - decay * decay * (1.0 - 1.0 / half.cosh());
        let along = s.net_weight.value * s.slope.value.cos() * weight;
        Force::from_si((s.mean_tension.value * sag - along) / point)
    };

    /// Tension after a curve: `T2 = T1 + 2 mu |N| + F_d + w L sin(theta)`: the wall bears on the middle with N and on
    /// the two ends with half of it each.
    CurvedPull "tension after a curve of a stiff pipe" {
        /// Tension before the curve.
        tension "T1": Force as Pull,
        /// Normal force in the curve.
        normal_force "N": Force as Pull,
        /// Friction coefficient.
        friction "mu": Ratio as Ratio,
        /// Drag of the fluid over the arc.
        fluid_drag "F_d": Force as Pull,
        /// Net weight, down positive.
        net_weight "w": LineLoad as LineWeight,
        /// Length of the arc.
        length "L": Length as Distance,
        /// Slope, positive when the pull goes uphill.
        rise "theta": Angle as Angle,
    } -> Force as Pull;
    form "T2 = tension + 2 friction |normal_force| + fluid_drag + net_weight length sin(rise)";
    from Memory "prci_1995" "curved section, tension";
    valid "friction, drag and length not negative, slope within 45 deg"
        if |v| v.friction.value >= 0.0
            && v.fluid_drag.value >= 0.0
            && v.length.value >= 0.0
            && v.rise.value.abs() <= FRAC_PI_4;
    value |s| {
        let bearing = 2.0 * s.friction * s.normal_force.abs();
        s.tension + bearing + s.fluid_drag + s.net_weight * s.length * s.rise.sin()
    };
}
