//! How much fluid pressure the ground around a bore bears before the fluid breaks out. What the returns need is
//! `outside_pressure::NetOutsidePressure` with the flow loss of `reaming` added.

use crate::law::laws;
use crate::quantity::{Angle, Length, Measure, Pressure, Ratio};

/// Steepest friction angle of the form, 50 deg: no soil is read as stronger (ours).
const MOST_FRICTION: f64 = 50.0 * core::f64::consts::PI / 180.0;

/// Strength term `(s0 sin(phi) + c cos(phi)) / G` of the cavity.
fn softness(effective_stress: Pressure, friction_angle: Angle, cohesion: Pressure, shear_modulus: Pressure) -> f64 {
    let strength = effective_stress * friction_angle.sin() + cohesion * friction_angle.cos();
    (strength / shear_modulus).value
}

/// Largest cap, with a named reason (ours; range of row `cap_total_stress` of `fluid_pressure_limit`).
const MOST_CAP: f64 = 1.3;

laws! {
    /// Fluid pressure at which the plastic ground around a bore reaches a radius (cavity expansion):
    ///
    /// `p = u + (p_f + c cot(phi)) ((R_0/R_p)² + Q)^(-sin(phi)/(1 + sin(phi))) - c cot(phi)`,
    /// `p_f = s_0 (1 + sin(phi)) + c cos(phi)`, `Q = (s_0 sin(phi) + c cos(phi)) / G`
    ///
    /// At 0 deg it is `s_0 + c - c ln((R_0/R_p)² + c/G)`; the power is written with exp(x) - 1 so that the two meet
    /// without a gap. Never alone: with the printed radii, half the cover in clay and two thirds in sand, it is
    /// reported to exceed the pressure at fracture in most cases; see [`FluidPressureLimit`].
    CavityPressure "fluid pressure by cavity expansion" {
        /// Effective stress at the axis (at the axis; total for clay without drainage).
        effective_stress "s_0": Pressure as Pressure [>= 0.0],
        /// Pore pressure (0 for clay without drainage).
        pore_pressure "u": Pressure as Pressure [>= 0.0],
        /// Friction angle (0 for clay without drainage).
        friction_angle "phi": Angle as Angle [>= 0.0 <= MOST_FRICTION],
        /// Cohesion (or undrained strength).
        cohesion "c": Pressure as UnitFriction [>= 0.0],
        /// Shear modulus.
        shear_modulus "G": Pressure as Modulus [> 0.0],
        /// Radius of the bore.
        bore_radius "R_0": Length as Offset [> 0.0],
        /// Radius of the plastic zone.
        plastic_radius "R_p": Length as Depth,
    } -> Pressure as Pressure;
    form "p = pore_pressure + (p_f + cohesion cot(friction_angle)) ((bore_radius/plastic_radius)^2 + Q)^(-k) \
          - cohesion cot(friction_angle), p_f = effective_stress (1 + sin(friction_angle)) \
          + cohesion cos(friction_angle), Q = (effective_stress sin(friction_angle) + cohesion \
          cos(friction_angle)) / shear_modulus, k = sin(friction_angle) / (1 + sin(friction_angle))";
    from Memory "cpar_1998" "limit pressure of the fluid, cavity expansion (Delft)";
    valid "friction angle 0 to 50 deg, plastic radius beyond the bore, (bore_radius/plastic_radius)^2 + Q below 1"
        if |v| v.plastic_radius > v.bore_radius && spread(v) < 1.0;
    value |s| {
        let (sine, cosine) = s.friction_angle.value.sin_cos();
        let start = s.effective_stress * (1.0 + sine) + s.cohesion * cosine;
        let logarithm = spread(s).ln();
        let power = -sine / (1.0 + sine) * logarithm;
        // c cot(phi) (exp(power) - 1), whose quotient (exp(x) - 1)/x is 1 at x = 0.
        let bound = if power.abs() > 0.0 { power.exp_m1() / power } else { 1.0 };
        let cohesive = s.cohesion * (-cosine / (1.0 + sine) * logarithm * bound);
        s.pore_pressure + start * power.exp() + cohesive
    };

    /// Plastic radius at which the bore wall has strained by a limit: `R_p = R_0 sqrt(2 e / Q)`,
    /// `Q = (s_0 sin(phi) + c cos(phi)) / G`.
    ///
    /// Strains of 2 and 5 % are rows of `fluid_pressure_limit`, the first the safer.
    StrainLimitedRadius "plastic radius by strain of the bore wall" {
        /// Radius of the bore.
        bore_radius "R_0": Length as Offset [> 0.0],
        /// Strain of the bore wall.
        strain "e": Ratio as Percent [> 0.0 <= 0.1],
        /// Effective stress at the axis.
        effective_stress "s_0": Pressure as Pressure,
        /// Friction angle.
        friction_angle "phi": Angle as Angle [>= 0.0 <= MOST_FRICTION],
        /// Cohesion.
        cohesion "c": Pressure as UnitFriction,
        /// Shear modulus.
        shear_modulus "G": Pressure as Modulus [> 0.0],
    } -> Length as Depth;
    form "R_p = bore_radius sqrt(2 strain / Q), Q = (effective_stress sin(friction_angle) + cohesion \
          cos(friction_angle)) / shear_modulus";
    from Memory "nen_3650" "plastic radius limited by the strain of the bore wall";
    valid "strain above 0 and up to 10 %, friction angle 0 to 50 deg, some strength"
        if |v| softness(v.effective_stress, v.friction_angle, v.cohesion, v.shear_modulus) > 0.0;
    value |s| {
        let soft = softness(s.effective_stress, s.friction_angle, s.cohesion, s.shear_modulus);
        s.bore_radius * (2.0 * s.strain.value / soft).sqrt()
    };

    /// Fluid pressure that may be used: `p = min(p_c / n, k s_v)`.
    ///
    /// Rows of `fluid_pressure_limit`: the cap is 1.0, and above it up to 1.3 only with a named reason.
    FluidPressureLimit "allowable fluid pressure" {
        /// Pressure by cavity expansion.
        cavity "p_c": Pressure as Pressure [>= 0.0],
        /// Safety on it.
        safety "n": Ratio as Ratio [>= 1.0],
        /// Cap over the total vertical stress.
        cap "k": Ratio as Ratio [> 0.0 <= MOST_CAP],
        /// Total vertical stress (vertical, at the axis).
        total_stress "s_v": Pressure as Pressure [>= 0.0],
    } -> Pressure as Pressure;
    form "p = min(cavity / safety, cap total_stress)";
    from Judgement "jackpull"
        "cavity expansion alone gives up to five times overburden; capped by the total vertical stress";
    valid "safety at least 1, cap above 0 and up to 1.3, pressures not negative";
    value |s| Pressure::from_si((s.cavity / s.safety).value.min((s.cap * s.total_stress).value));
}

fn spread(cavity: &CavityPressure) -> f64 {
    let near = (cavity.bore_radius / cavity.plastic_radius).value;
    let soft = softness(cavity.effective_stress, cavity.friction_angle, cavity.cohesion, cavity.shear_modulus);
    near * near + soft
}
