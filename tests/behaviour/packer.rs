//! The ring of the packer: the closed forms against plain sampling of the ring, the inverse against its law, and what
//! must hold for any joint.

use approx::assert_relative_eq;
use jackpull::law::Law;
use jackpull::laws::packer::KernRadius;
use jackpull::laws::turned_joint::{AngleAtForce, StressRatioAtAngle};
use jackpull::quantity::{Angle, Force, Length, Measure, Pressure};
use proptest::prelude::*;
use std::f64::consts::PI;

/// Inside over outside diameter of the rings sampled.
const RINGS: [f64; 5] = [0.0, 0.3, 0.6, 0.8, 0.95];

/// A joint as bare numbers in SI units, the angle as its tangent.
#[derive(Debug, Clone, Copy)]
struct Joint {
    outside: f64,
    inside: f64,
    thickness: f64,
    modulus: f64,
}

impl Joint {
    fn area(self) -> f64 {
        PI / 4.0 * (self.outside * self.outside - self.inside * self.inside)
    }

    fn at(self, greatest: f64, tangent: f64) -> StressRatioAtAngle {
        StressRatioAtAngle {
            outside_diameter: Length::from_si(self.outside),
            inside_diameter: Length::from_si(self.inside),
            thickness: Length::from_si(self.thickness),
            modulus: Pressure::from_si(self.modulus),
            greatest_stress: Pressure::from_si(greatest),
            angle: Angle::from_si(tangent.atan()),
        }
    }

    fn force(self, greatest: f64, tangent: f64) -> f64 {
        self.at(greatest, tangent).value().value * self.area() * greatest
    }

    fn angle(self, greatest: f64, force: f64) -> AngleAtForce {
        AngleAtForce {
            outside_diameter: Length::from_si(self.outside),
            inside_diameter: Length::from_si(self.inside),
            thickness: Length::from_si(self.thickness),
            modulus: Pressure::from_si(self.modulus),
            greatest_stress: Pressure::from_si(greatest),
            force: Force::from_si(force),
        }
    }
}

/// A ring of outside diameter 1 that is pressed over `depth` from its edge.
fn pressed(inside: f64, depth: f64) -> StressRatioAtAngle {
    Joint { outside: 1.0, inside, thickness: depth, modulus: 1.0 }.at(1.0, 1.0)
}

/// Force and moment about the centre by plain sampling: the stress at each cell of the ring grows from zero at `depth`
/// from the edge to `greatest` at the edge, and is never tension.
fn sampled(outside: f64, inside: f64, depth: f64, greatest: f64) -> (f64, f64) {
    const RADIAL: u32 = 400;
    const AROUND: u32 = 4000;
    let (outer, inner) = (outside / 2.0, inside / 2.0);
    let width = (outer - inner) / f64::from(RADIAL);
    let turn = 2.0 * PI / f64::from(AROUND);
    let (mut force, mut moment) = (0.0, 0.0);
    for ring in 0..RADIAL {
        let radius = inner + width * (f64::from(ring) + 0.5);
        for cell in 0..AROUND {
            let across = radius * (turn * (f64::from(cell) + 0.5)).cos();
            let stress = greatest * (across - (outer - depth)).max(0.0) / depth;
            force += stress * radius * width * turn;
            moment += stress * across * radius * width * turn;
        }
    }
    (force, moment)
}

#[test]
fn ratio_agrees_with_sampling() {
    for inside in RINGS {
        for depth in [0.1, 0.3, 0.5, 0.7, 0.9, 1.0, 1.4, 5.0] {
            let (force, _) = sampled(1.0, inside, depth, 1.0);
            let area = PI / 4.0 * (1.0 - inside * inside);
            // The error of the grid, about the square of a cell over the depth.
            assert_relative_eq!(pressed(inside, depth).value().value, force / area, max_relative = 1e-4);
        }
    }
}

#[test]
fn force_at_an_angle_agrees_with_sampling() {
    for inside in RINGS {
        let joint = Joint { outside: 1.16, inside: 1.16 * inside, thickness: 0.015, modulus: 2e8 };
        for tangent in [0.0005_f64, 0.001, 0.002, 0.005] {
            let depth = 0.015 * 20e6 / (2e8 * tangent);
            let (force, _) = sampled(joint.outside, joint.inside, depth, 20e6);
            assert_relative_eq!(joint.force(20e6, tangent), force, max_relative = 1e-4);
        }
    }
}

/// Where one edge is just free every ring has the ratio one half, and the force runs at the kern.
#[test]
fn triangle_and_kern() {
    for inside in RINGS {
        assert_relative_eq!(pressed(inside, 1.0).value().value, 0.5, max_relative = 1e-12);
        assert_relative_eq!(pressed(inside, 1.0 - 5e-10).value().value, 0.5, max_relative = 1e-8);
        let (force, moment) = sampled(1.0, inside, 1.0, 1.0);
        let kern = KernRadius { outside_diameter: Length::from_si(1.0), inside_diameter: Length::from_si(inside) };
        assert_relative_eq!(moment / force, kern.value().value, max_relative = 1e-4);
    }
}

/// What is not a joint is doubt and no panic, whatever the value.
#[test]
fn nonsense_is_out_of_range() {
    let good = Joint { outside: 1.0, inside: 0.8, thickness: 0.015, modulus: 4e8 };
    assert!(good.at(20e6, 0.002).in_range() && good.angle(20e6, 1e6).in_range());
    let bad = [
        Joint { inside: 1.0, ..good },
        Joint { inside: -0.1, ..good },
        Joint { thickness: 0.0, ..good },
        Joint { modulus: 0.0, ..good },
        Joint { modulus: f64::NAN, ..good },
        Joint { outside: f64::NAN, ..good },
        Joint { outside: 0.0, inside: 0.0, ..good },
    ];
    for joint in bad {
        let laws = (joint.at(20e6, 0.002), joint.angle(20e6, 1e6));
        assert!(!laws.0.in_range() && !laws.1.in_range(), "{joint:?}");
        let _ = (laws.0.value(), laws.1.value());
    }
    // A force over area times stress, a point contact, no stress, a negative angle.
    assert!(!good.angle(20e6, 20e6 * good.area() * 1.001).in_range());
    assert_eq!(good.angle(20e6, 30e6 * good.area()).value().value, 0.0);
    assert!(!good.at(20e6, 10.0).in_range() && !good.angle(20e6, 1.0).in_range());
    assert!(!good.at(0.0, 0.002).in_range() && !good.at(20e6, -0.002).in_range());
}

prop_compose! {
    fn joints()(
        outside in 0.2..4.0_f64, ring in 0.0..0.98_f64, thickness in 0.004..0.04_f64, modulus in 20e6..1500e6_f64,
    ) -> Joint {
        Joint { outside, inside: outside * ring, thickness, modulus }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn force_falls_with_angle_and_rises_with_softness_thickness_and_stress(
        joint in joints(), greatest in 5e6..60e6_f64, degrees in 0.001..1.0_f64, more in 1.01..3.0_f64,
    ) {
        let tangent = degrees.to_radians().tan();
        let base = joint.force(greatest, tangent);
        prop_assume!(joint.at(greatest, more * tangent).in_range());
        prop_assert!(base > 0.0 && base < greatest * joint.area());
        prop_assert!(joint.force(greatest, more * tangent) < base);
        let softer = Joint { modulus: joint.modulus / more, ..joint };
        let thicker = Joint { thickness: joint.thickness * more, ..joint };
        prop_assert!(softer.force(greatest, tangent) > base);
        prop_assert!(thicker.force(greatest, tangent) > base);
        prop_assert!(joint.force(more * greatest, tangent) > more * base);
        // Only the product of stiffness and angle counts.
        let same = softer.force(greatest, more * tangent);
        prop_assert!((same / base - 1.0).abs() < 1e-9);
    }

    #[test]
    fn no_angle_is_the_concentric_limit(joint in joints(), greatest in 5e6..60e6_f64) {
        prop_assert_eq!(joint.at(greatest, 0.0).value().value, 1.0);
        prop_assert!((joint.at(greatest, 1e-9).value().value - 1.0).abs() < 1e-4);
    }

    #[test]
    fn the_inverse_returns_what_went_in(joint in joints(), greatest in 5e6..60e6_f64, degrees in 0.0005..1.5_f64) {
        let tangent = degrees.to_radians().tan();
        prop_assume!(joint.at(greatest, tangent).in_range());
        let angle = joint.angle(greatest, joint.force(greatest, tangent));
        prop_assume!(angle.in_range());
        prop_assert!((angle.value().value / tangent.atan() - 1.0).abs() < 1e-6, "{:?}", angle.value());
    }

    #[test]
    fn ratio_rises_with_depth_and_lies_between_0_and_1(ring in 0.0..0.999_f64, depth in 0.001_01..3.0_f64, more in 1.001..2.0_f64) {
        let ratio = pressed(ring, depth).value().value;
        prop_assert!(pressed(ring, depth).in_range() && ratio > 0.0 && ratio < 1.0);
        prop_assert!(pressed(ring, depth * more).value().value > ratio);
        // Where it gapes the triangle's half is not reached.
        prop_assert!((ratio < 0.5) == (depth < 1.0));
    }
}
