//! Thrust walls against sums of many thin slices, and what no wall may do.

use approx::assert_relative_eq;
use jackpull::law::Law;
use jackpull::laws::wall::{
    ActiveCoefficient, AllowableReaction, EyeResistance, PassiveCoefficient, PassivePressure, PassiveStrip,
    UndrainedStrip,
};
use jackpull::laws::wall_fit::{ResultantDepth, StripCentroid, ThrustEccentricity, WidthForThrust};
use jackpull::quantity::{Angle, Force, Length, Measure, Pressure, Ratio, UnitWeight};
use proptest::prelude::*;

const ONE: f64 = 1.0;

/// A value that must lie in the range of its law.
fn law<L: Law>(law: L) -> L::Out {
    assert!(law.in_range(), "{} is out of its range", L::EQUATION.name);
    law.value()
}

/// Sum of `f` over `from..to` by thin slices, taken in their middles; exact for what is linear.
fn sum(from: f64, to: f64, f: impl Fn(f64) -> f64) -> f64 {
    let slices = 4_000_u32;
    let step = (to - from) / f64::from(slices);
    (0..slices).map(|slice| f(from + (f64::from(slice) + 0.5) * step) * step).sum()
}

/// One ground, moist above the water and buoyant below; lengths in m, forces in N.
#[derive(Debug, Clone, Copy)]
struct Ground {
    moist: f64,
    buoyant: f64,
    water: f64,
    degrees: f64,
    cohesion: f64,
}

impl Ground {
    /// Effective vertical stress.
    fn stress(self, depth: f64) -> f64 {
        self.moist * depth.min(self.water) + self.buoyant * (depth - self.water).max(0.0)
    }

    /// Passive pressure by the form with a tangent.
    fn pressure(self, depth: f64) -> f64 {
        let ratio = (45.0 + self.degrees / 2.0).to_radians().tan().powi(2);
        ratio * self.stress(depth) + 2.0 * self.cohesion * ratio.sqrt()
    }

    fn coefficient(self) -> Ratio {
        law(PassiveCoefficient { friction_angle: Angle::from_si(self.degrees.to_radians()) })
    }

    fn strip(self, width: f64, from: f64, to: f64) -> PassiveStrip {
        let above = to <= self.water + 1e-12;
        PassiveStrip {
            spread: Ratio::from_si(ONE),
            width: Length::from_si(width),
            height: Length::from_si(to - from),
            top_stress: Pressure::from_si(self.stress(from)),
            unit_weight: UnitWeight::from_si(if above { self.moist } else { self.buoyant }),
            coefficient: self.coefficient(),
            cohesion: Pressure::from_si(self.cohesion),
        }
    }

    /// Force and depth of the reaction of a strip, by the laws.
    fn reaction(self, width: f64, from: f64, to: f64) -> (Force, Length) {
        let at = |depth: f64| {
            law(PassivePressure {
                vertical_stress: Pressure::from_si(self.stress(depth)),
                coefficient: self.coefficient(),
                cohesion: Pressure::from_si(self.cohesion),
            })
        };
        let height = Length::from_si(to - from);
        let below = law(StripCentroid { height, top_pressure: at(from), bottom_pressure: at(to) });
        (law(self.strip(width, from, to)), Length::from_si(from) + below)
    }
}

/// Water 5 m down behind a wall from 4 to 7 m: both strips together are the integral, force and moment.
#[test]
fn wall_through_the_water_table() {
    let ground = Ground { moist: 18e3, buoyant: 9.2e3, water: 5.0, degrees: 31.0, cohesion: 4e3 };
    let (upper, upper_depth) = ground.reaction(2.4, 4.0, 5.0);
    let (lower, lower_depth) = ground.reaction(2.4, 5.0, 7.0);
    let force = sum(4.0, 7.0, |depth| 2.4 * ground.pressure(depth));
    assert_relative_eq!((upper + lower).si(), force, max_relative = 1e-9);
    let joined = law(ResultantDepth { force: upper, depth: upper_depth, other_force: lower, other_depth: lower_depth });
    let moment = sum(4.0, 7.0, |depth| 2.4 * depth * ground.pressure(depth));
    assert_relative_eq!(joined.si(), moment / force, max_relative = 1e-7);
}

/// Slices of a circle, each with the pressure of its level.
#[test]
fn eye_is_the_pressure_over_its_circle() {
    let ground = Ground { moist: 19e3, buoyant: 19e3, water: 100.0, degrees: 28.0, cohesion: 0.0 };
    let (axis, radius) = (5.5_f64, 0.6_f64);
    let chord = |depth: f64| 2.0 * (radius * radius - (depth - axis).powi(2)).max(0.0).sqrt();
    let by_slices = sum(axis - radius, axis + radius, |depth| chord(depth) * ground.pressure(depth));
    let eye = law(EyeResistance {
        spread: Ratio::from_si(ONE),
        pressure: Pressure::from_si(ground.pressure(axis)),
        diameter: Length::from_si(2.0 * radius),
    });
    // Slices of a circle converge slowly at its ends.
    assert_relative_eq!(eye.si(), by_slices, max_relative = 1e-4);
    // The reaction of a wall with an eye in its upper half lies deeper than without.
    let (whole, depth) = ground.reaction(3.0, 4.0, 9.0);
    let less = law(ResultantDepth { force: whole, depth, other_force: -eye, other_depth: Length::from_si(axis) });
    assert!(less > depth, "{less:?} and {depth:?}");
    let net = law(AllowableReaction { resistance: whole, eye, safety: Ratio::from_si(2.0) });
    assert_relative_eq!(net.si(), (whole.si() - eye.si()) / 2.0, max_relative = 1e-12);
    let all = AllowableReaction { resistance: eye, eye: whole, safety: Ratio::from_si(2.0) };
    assert_eq!(all.value(), Force::default());
}

/// A rectangle has its middle in the middle, a triangle at two thirds.
#[test]
fn centroids_of_simple_pressures() {
    let at = |top: f64, bottom: f64| {
        law(StripCentroid {
            height: Length::from_si(3.0),
            top_pressure: Pressure::from_si(top),
            bottom_pressure: Pressure::from_si(bottom),
        })
        .si()
    };
    assert_relative_eq!(at(5e3, 5e3), 1.5, max_relative = 1e-12);
    assert_relative_eq!(at(0.0, 5e3), 2.0, max_relative = 1e-12);
    assert_relative_eq!(at(5e3, 0.0), 1.0, max_relative = 1e-12);
}

#[test]
fn eccentricity_has_no_sign() {
    let off = |thrust: f64, reaction: f64| {
        let (thrust_depth, reaction_depth) = (Length::from_si(thrust), Length::from_si(reaction));
        law(ThrustEccentricity { thrust_depth, reaction_depth })
    };
    assert_relative_eq!(off(5.2, 5.7).si(), 0.5, max_relative = 1e-12);
    assert_eq!(off(5.2, 5.7), off(5.7, 5.2));
}

/// Out of range is doubt, and nothing panics.
#[test]
fn walls_out_of_range() {
    let ground = Ground { moist: 18e3, buoyant: 9e3, water: 9.0, degrees: 30.0, cohesion: 0.0 };
    let good = ground.strip(3.0, 4.0, 7.0);
    assert!(good.in_range());
    for spread in [0.9, 2.6, f64::NAN] {
        assert!(!PassiveStrip { spread: Ratio::from_si(spread), ..good }.in_range(), "{spread}");
    }
    assert!(!PassiveStrip { height: Length::from_si(0.0), ..good }.in_range());
    assert!(!PassiveStrip { top_stress: Pressure::from_si(-1.0), ..good }.in_range());
    assert!(!PassiveCoefficient { friction_angle: Angle::from_si(1.0) }.in_range());
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Active is the inverse of passive; both are 1 without friction.
    #[test]
    fn active_times_passive_is_one(degrees in 0.0..50.0_f64) {
        let friction_angle = Angle::from_si(degrees.to_radians());
        let (active, passive) = (law(ActiveCoefficient { friction_angle }), law(PassiveCoefficient { friction_angle }));
        prop_assert!((active.value * passive.value - 1.0).abs() < 1e-12);
        prop_assert!(passive.value >= 1.0);
    }

    /// Cutting a strip changes nothing, and without friction drained and undrained are one.
    #[test]
    fn strips_add_up(
        cut in 0.1..0.9_f64, top in 0.0..8.0_f64, height in 0.5..5.0_f64, degrees in 0.0..45.0_f64, cohesion in 0.0..60e3_f64,
    ) {
        let ground = Ground { moist: 18e3, buoyant: 9e3, water: 50.0, degrees, cohesion };
        let (foot, middle) = (top + height, top + cut * height);
        let whole = law(ground.strip(2.0, top, foot)).si();
        let parts = law(ground.strip(2.0, top, middle)).si() + law(ground.strip(2.0, middle, foot)).si();
        prop_assert!((parts / whole - 1.0).abs() < 1e-12, "{whole} and {parts}");

        let strip = Ground { degrees: 0.0, ..ground }.strip(2.0, top, foot);
        let PassiveStrip { spread, width, height, top_stress, unit_weight, cohesion, .. } = strip;
        let clay = UndrainedStrip { spread, width, height, top_stress, unit_weight, undrained_strength: cohesion };
        prop_assert!((law(clay).si() - law(strip).si()).abs() <= 1e-12 * law(strip).si());
    }

    /// More of anything never gives less resistance; water gives less.
    #[test]
    fn resistance_never_falls(
        top in 0.0..8.0_f64, height in 0.5..5.0_f64, width in 0.5..6.0_f64, degrees in 10.0..40.0_f64, more in 0.0..0.5_f64,
    ) {
        let ground = Ground { moist: 18e3, buoyant: 9e3, water: 50.0, degrees, cohesion: 2e3 };
        let of = |ground: Ground, width: f64, top: f64, height: f64| law(ground.strip(width, top, top + height)).si();
        let base = of(ground, width, top, height);
        prop_assert!(of(ground, width + more, top, height) >= base);
        prop_assert!(of(ground, width, top + more, height) >= base);
        prop_assert!(of(ground, width, top, height + more) >= base);
        let stronger = Ground { degrees: degrees + 10.0 * more, ..ground };
        let stickier = Ground { cohesion: 2e3 + 1e4 * more, ..ground };
        for better in [stronger, stickier] {
            prop_assert!(of(better, width, top, height) >= base);
        }
        let flooded = Ground { water: 0.0, ..ground };
        prop_assert!(of(flooded, width, top, height) <= base);
    }

    /// The wall that the inverse asks for bears just the thrust.
    #[test]
    fn inverse_bears_the_thrust(
        thrust in 1e3..9e6_f64, safety in 1.0..3.0_f64, top in 0.0..8.0_f64, degrees in 0.0..45.0_f64,
        unit_weight in 1e-9..22e3_f64, cohesion in 0.0..50e3_f64, spread in 1.0..2.5_f64, eye in 0.0..2e5_f64,
    ) {
        let (thrust, safety, spread) = (Force::from_si(thrust), Ratio::from_si(safety), Ratio::from_si(spread));
        let unit_weight = UnitWeight::from_si(unit_weight);
        let coefficient = law(PassiveCoefficient { friction_angle: Angle::from_si(degrees.to_radians()) });
        let (top_stress, cohesion) = (Pressure::from_si(1.0 + 15e3 * top), Pressure::from_si(cohesion));
        let width = Length::from_si(2.5);
        let strip = |width, height| {
            law(PassiveStrip { spread, width, height, top_stress, unit_weight, coefficient, cohesion })
        };
        let (height, eye) = (Length::from_si(3.0), Force::from_si(eye));
        let needed = law(WidthForThrust { thrust, safety, eye, width, resistance: strip(width, height) });
        let bears = law(AllowableReaction { resistance: strip(needed, height), eye, safety });
        prop_assert!((bears / thrust - Ratio::from_si(1.0)).abs().value < 1e-9, "{bears:?} of {thrust:?}");
    }
}
