//! How much fluid pressure the ground around a bore bears before the fluid breaks out. What the returns need is
//! `outside_pressure::NetOutsidePressure` with the flow loss of `reaming` added.

use crate::law::law;
use crate::quantity::{Angle, Length, Measure, Pressure, Ratio};
use crate::source::{Equation, Mark};

/// Steepest friction angle of the form, 50 deg: no soil is read as stronger (ours).
const MOST_FRICTION: f64 = 50.0 * core::f64::consts::PI / 180.0;

/// Strength term `(s0 sin(phi) + c cos(phi)) / G` of the cavity.
fn softness(effective_stress: Pressure, friction_angle: Angle, cohesion: Pressure, shear_modulus: Pressure) -> f64 {
    let strength = effective_stress * friction_angle.sin() + cohesion * friction_angle.cos();
    (strength / shear_modulus).value
}

law! {
    /// Fluid pressure at which the plastic ground around a bore reaches a radius (cavity expansion):
    ///
    /// `p = u + (p_f + c cot(phi)) ((R_0/R_p)² + Q)^(-sin(phi)/(1 + sin(phi))) - c cot(phi)`,
    /// `p_f = s_0 (1 + sin(phi)) + c cos(phi)`, `Q = (s_0 sin(phi) + c cos(phi)) / G`
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_0 | `effective_stress` at the axis; total for clay without drainage | pressure |
    /// | u | `pore_pressure`; 0 for clay without drainage | pressure |
    /// | phi | `friction_angle`; 0 for clay without drainage | angle |
    /// | c | `cohesion`, or undrained strength | pressure |
    /// | G | `shear_modulus` | pressure |
    /// | R_0 | `bore_radius` | length |
    /// | R_p | `plastic_radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). At 0 deg it is
    /// `s_0 + c - c ln((R_0/R_p)² + c/G)`; the power is written with exp(x) - 1 so that the two meet without a gap.
    /// **Valid for** friction angles up to 50 deg and a plastic radius beyond the bore. Never alone: with the printed
    /// radii, half the cover in clay and two thirds in sand, it is reported to exceed the pressure at fracture in most
    /// cases; see [`FluidPressureLimit`].
    CavityPressure {
        /// Effective stress at the axis.
        effective_stress: Pressure as Pressure,
        /// Pore pressure.
        pore_pressure: Pressure as Pressure,
        /// Friction angle.
        friction_angle: Angle as Angle,
        /// Cohesion.
        cohesion: Pressure as UnitFriction,
        /// Shear modulus.
        shear_modulus: Pressure as Modulus,
        /// Radius of the bore.
        bore_radius: Length as Offset,
        /// Radius of the plastic zone.
        plastic_radius: Length as Depth,
    } -> Pressure as Pressure
    { Equation {
        name: "fluid pressure by cavity expansion",
        form: "p = pore_pressure + (p_f + cohesion cot(friction_angle)) ((bore_radius/plastic_radius)^2 + Q)^(-k) \
               - cohesion cot(friction_angle), p_f = effective_stress (1 + sin(friction_angle)) \
               + cohesion cos(friction_angle), Q = (effective_stress sin(friction_angle) + cohesion \
               cos(friction_angle)) / shear_modulus, k = sin(friction_angle) / (1 + sin(friction_angle))",
        source: "cpar_1998",
        locator: "limit pressure of the fluid, cavity expansion (Delft)",
        mark: Mark::Memory,
        valid: "friction angle 0 to 50 deg, plastic radius beyond the bore, (bore_radius/plastic_radius)^2 + Q below 1",
    } }
    valid |v| (0.0..=MOST_FRICTION).contains(&v.friction_angle.value)
        && v.effective_stress.value >= 0.0
        && v.pore_pressure.value >= 0.0
        && v.cohesion.value >= 0.0
        && v.shear_modulus.value > 0.0
        && v.bore_radius.value > 0.0
        && v.plastic_radius > v.bore_radius
        && spread(v) < 1.0;
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
}

fn spread(cavity: &CavityPressure) -> f64 {
    let near = (cavity.bore_radius / cavity.plastic_radius).value;
    let soft = softness(cavity.effective_stress, cavity.friction_angle, cavity.cohesion, cavity.shear_modulus);
    near * near + soft
}

law! {
    /// Plastic radius at which the bore wall has strained by a limit: `R_p = R_0 sqrt(2 e / Q)`,
    /// `Q = (s_0 sin(phi) + c cos(phi)) / G`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | R_0 | `bore_radius` | length |
    /// | e | `strain` | ratio |
    /// | s_0 | `effective_stress` | pressure |
    /// | phi | `friction_angle` | angle |
    /// | c | `cohesion` | pressure |
    /// | G | `shear_modulus` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); strains of 2 and 5 % are rows of
    /// `fluid_pressure_limit`, the first the safer. **Valid for** strains up to 10 % and ground with some strength.
    StrainLimitedRadius {
        /// Radius of the bore.
        bore_radius: Length as Offset,
        /// Strain of the bore wall.
        strain: Ratio as Percent,
        /// Effective stress at the axis.
        effective_stress: Pressure as Pressure,
        /// Friction angle.
        friction_angle: Angle as Angle,
        /// Cohesion.
        cohesion: Pressure as UnitFriction,
        /// Shear modulus.
        shear_modulus: Pressure as Modulus,
    } -> Length as Depth
    { Equation {
        name: "plastic radius by strain of the bore wall",
        form: "R_p = bore_radius sqrt(2 strain / Q), Q = (effective_stress sin(friction_angle) + cohesion \
               cos(friction_angle)) / shear_modulus",
        source: "nen_3650",
        locator: "plastic radius limited by the strain of the bore wall",
        mark: Mark::Memory,
        valid: "strain above 0 and up to 10 %, friction angle 0 to 50 deg, some strength",
    } }
    valid |v| v.bore_radius.value > 0.0
        && v.strain.value > 0.0
        && v.strain.value <= 0.1
        && (0.0..=MOST_FRICTION).contains(&v.friction_angle.value)
        && v.shear_modulus.value > 0.0
        && softness(v.effective_stress, v.friction_angle, v.cohesion, v.shear_modulus) > 0.0;
    value |s| {
        let soft = softness(s.effective_stress, s.friction_angle, s.cohesion, s.shear_modulus);
        s.bore_radius * (2.0 * s.strain.value / soft).sqrt()
    };
}

law! {
    /// Fluid pressure at which clay starts to crack: `p = s_3 + s_u`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s_3 | `minor_stress` (total) | pressure |
    /// | s_u | `undrained_strength` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** clay without drainage. To be shown beside
    /// the other limits.
    ClayCracking {
        /// Lesser total stress at the axis.
        minor_stress: Pressure as Pressure,
        /// Undrained strength.
        undrained_strength: Pressure as UnitFriction,
    } -> Pressure as Pressure
    { Equation {
        name: "fluid pressure at the first crack of clay",
        form: "p = minor_stress + undrained_strength",
        source: "jackpull",
        locator: "tension at the wall of a bore in undrained clay, about the lesser stress and the strength",
        mark: Mark::Judgement,
        valid: "clay without drainage, neither argument negative",
    } }
    valid |v| v.minor_stress.value >= 0.0 && v.undrained_strength.value >= 0.0;
    value |s| s.minor_stress + s.undrained_strength;
}

law! {
    /// Fluid pressure that may be used: `p = min(p_c / n, k s_v)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | p_c | `cavity` | pressure |
    /// | n | `safety` | ratio |
    /// | k | `cap` | ratio |
    /// | s_v | `total_stress`, vertical, at the axis | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); rows of `fluid_pressure_limit`: the cap is 1.0, and
    /// above it up to 1.3 only with a named reason. **Valid for** a safety of at least 1.
    FluidPressureLimit {
        /// Pressure by cavity expansion.
        cavity: Pressure as Pressure,
        /// Safety on it.
        safety: Ratio as Ratio,
        /// Cap over the total vertical stress.
        cap: Ratio as Ratio,
        /// Total vertical stress.
        total_stress: Pressure as Pressure,
    } -> Pressure as Pressure
    { Equation {
        name: "allowable fluid pressure",
        form: "p = min(cavity / safety, cap total_stress)",
        source: "jackpull",
        locator: "cavity expansion alone gives up to five times overburden; capped by the total vertical stress",
        mark: Mark::Judgement,
        valid: "safety at least 1, cap above 0 and up to 1.3, pressures not negative",
    } }
    valid |v| v.safety.value >= 1.0
        && v.cap.value > 0.0
        && v.cap.value <= MOST_CAP
        && v.cavity.value >= 0.0
        && v.total_stress.value >= 0.0;
    value |s| Pressure::from_si((s.cavity / s.safety).value.min((s.cap * s.total_stress).value));
}

/// Largest cap, with a named reason (ours; range of row `cap_total_stress` of `fluid_pressure_limit`).
const MOST_CAP: f64 = 1.3;
