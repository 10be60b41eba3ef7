//! Part-full flow against a peer package, quadrature and its own inverse; low spots against a walk along the invert.
//!
//! `hydraulics_peer.json`: the package `fluids` 1.3.1 (PyPI), modules `fluids.geometry` and `fluids.open_flow`, made by
//! `.ci/peers/hydraulics.py`.

use approx::assert_relative_eq;
use jackpull::law::Law;
use jackpull::laws::hydraulics::{Flow, ManningVelocity, SlopeForVelocity};
use jackpull::laws::part_full::{DepthForFlow, FlowArea, FlowRatio, HydraulicRadius, WettedAngle};
use jackpull::laws::undulation::{PeakSlope, SagDepth};
use jackpull::quantity::{Angle, Length, Measure, Ratio, Velocity};
use proptest::prelude::*;
use serde_json::Value;
use std::f64::consts::PI;

fn angle(ratio: f64) -> Angle {
    WettedAngle { depth_ratio: Ratio::from_si(ratio) }.value()
}

fn flow_ratio(ratio: f64) -> f64 {
    FlowRatio { wetted_angle: angle(ratio) }.value().value
}

fn depth(flow: f64) -> f64 {
    DepthForFlow { flow_ratio: Ratio::from_si(flow) }.value().value
}

#[test]
fn sections_and_velocities_agree_with_a_peer() {
    let fixture: Value = serde_json::from_str(include_str!("hydraulics_peer.json")).unwrap();
    let number = |value: &Value, name: &str| value[name].as_f64().unwrap();
    let sections = fixture["sections"].as_array().unwrap();
    assert_eq!(sections.len(), 40);
    for section in sections {
        let inside_diameter = Length::from_si(number(section, "diameter"));
        let wetted_angle = angle(number(section, "ratio"));
        let area = FlowArea { inside_diameter, wetted_angle }.value();
        let hydraulic_radius = HydraulicRadius { inside_diameter, wetted_angle }.value();
        assert_relative_eq!(area.value, number(section, "area"), max_relative = 1e-11);
        let perimeter = number(section, "perimeter");
        assert_relative_eq!(hydraulic_radius.value, number(section, "area") / perimeter, max_relative = 1e-11);
        for one in section["velocities"].as_array().unwrap() {
            let (slope, roughness) = (Ratio::from_si(number(one, "slope")), Ratio::from_si(number(one, "n")));
            let velocity = ManningVelocity { hydraulic_radius, slope, roughness }.value();
            assert_relative_eq!(velocity.value, number(one, "velocity"), max_relative = 1e-11);
            let back = SlopeForVelocity { velocity, hydraulic_radius, roughness }.value();
            assert_relative_eq!(back.value, slope.value, max_relative = 1e-12);
        }
    }
}

/// The area is the sum of the chords, the hydraulic radius that over the length of the arc that they end on.
#[test]
fn sections_agree_with_quadrature() {
    const STEPS: u32 = 200_000;
    for ratio in [0.05, 0.3, 0.5, 0.82, 1.0] {
        let inside_diameter = Length::from_si(0.4);
        let (radius, top) = (0.2_f64, 0.4 * ratio);
        let step = top / f64::from(STEPS);
        let chord = |level: f64| 2.0 * (radius * radius - (radius - level) * (radius - level)).max(0.0).sqrt();
        let (mut area, mut perimeter) = (0.0, 0.0);
        for count in 0..STEPS {
            let low = f64::from(count) * step;
            area += step * chord(low + step / 2.0);
            let run = (chord(low + step) - chord(low)) / 2.0;
            perimeter += 2.0 * run.hypot(step);
        }
        let wetted_angle = angle(ratio);
        let got = FlowArea { inside_diameter, wetted_angle }.value().value;
        assert_relative_eq!(got, area, max_relative = 1e-6);
        let got = HydraulicRadius { inside_diameter, wetted_angle }.value().value;
        assert_relative_eq!(got, area / perimeter, max_relative = 1e-4);
    }
}

/// The ratio is Manning's equation part full over full, whatever the pipe.
#[test]
fn flow_ratio_is_part_full_over_full() {
    let inside_diameter = Length::from_si(0.3);
    let run = |ratio: f64| {
        let wetted_angle = angle(ratio);
        let hydraulic_radius = HydraulicRadius { inside_diameter, wetted_angle }.value();
        let (slope, roughness) = (Ratio::from_si(0.004), Ratio::from_si(0.013));
        let velocity = ManningVelocity { hydraulic_radius, slope, roughness }.value();
        let area = FlowArea { inside_diameter, wetted_angle }.value();
        Flow { area, velocity }.value().value
    };
    let full = run(1.0);
    for ratio in [0.03, 0.2, 0.5, 0.7, 0.95, 1.0] {
        assert_relative_eq!(flow_ratio(ratio), run(ratio) / full, max_relative = 1e-12);
    }
}

#[test]
fn limits_of_a_dry_and_a_full_pipe() {
    let inside_diameter = Length::from_si(0.3);
    let radius = |ratio| HydraulicRadius { inside_diameter, wetted_angle: angle(ratio) }.value().value;
    assert_eq!([radius(0.0), flow_ratio(0.0), depth(0.0)], [0.0; 3]);
    assert_relative_eq!(radius(1.0), 0.075, max_relative = 1e-12);
    assert_relative_eq!(radius(0.5), 0.075, max_relative = 1e-12);
    assert_relative_eq!(flow_ratio(1.0), 1.0, max_relative = 1e-12);
    assert_relative_eq!(flow_ratio(0.5), 0.5, max_relative = 1e-12);
    // More than the pipe carries: taken full, and in doubt.
    let too_much = DepthForFlow { flow_ratio: Ratio::from_si(1.04) };
    assert!(!too_much.in_range());
    assert_eq!(too_much.value().value, 1.0);
}

#[test]
fn flow_peaks_below_the_crown_and_velocity_lower_still() {
    let best = |law: &dyn Fn(f64) -> f64| {
        (1..=10_000).map(|step| f64::from(step) * 1e-4).max_by(|a, b| law(*a).total_cmp(&law(*b))).unwrap()
    };
    // By Manning the velocity goes with the hydraulic radius.
    let inside_diameter = Length::from_si(0.3);
    let radius = |ratio| HydraulicRadius { inside_diameter, wetted_angle: angle(ratio) }.value().value;
    assert!((best(&flow_ratio) - 0.938).abs() <= 0.0005);
    assert!((best(&radius) - 0.813).abs() <= 0.0005);
}

proptest! {
    #[test]
    fn the_depth_of_a_flow_gives_that_flow(flow in 1e-4..=1.0_f64) {
        let back = flow_ratio(depth(flow));
        prop_assert!((back - flow).abs() <= 1e-9, "{flow}: {back}");
        // The lower of two depths.
        prop_assert!(depth(flow) <= 0.8197);
    }

    #[test]
    fn more_flow_is_deeper(flow in 0.0..0.99_f64, more in 1e-3..0.01_f64) {
        prop_assert!(depth(flow + more) > depth(flow));
    }

    /// Water stands wherever the invert rises, as deep as a walk along it finds.
    #[test]
    fn standing_water_agrees_with_a_walk(slope in 0.0..0.03_f64, amplitude in 1e-3..0.05_f64, half_wave in 1.0..30.0_f64) {
        const STEPS: u32 = 4_000;
        let invert = |x: f64| amplitude * (PI * x / half_wave).sin() - slope * x;
        let (mut lowest, mut rise) = (f64::INFINITY, 0.0_f64);
        for step in 0..=STEPS {
            let level = invert(3.0 * half_wave * f64::from(step) / f64::from(STEPS));
            // A fall below the last low spot starts a new one.
            lowest = lowest.min(level);
            rise = rise.max(level - lowest);
        }
        let wave = SagDepth {
            design_slope: Ratio::from_si(slope),
            amplitude: Length::from_si(amplitude),
            half_wave: Length::from_si(half_wave),
        };
        prop_assert!((wave.value().value - rise).abs() <= 1e-4 * amplitude, "{} and {rise}", wave.value().value);
        let steepest = PeakSlope { amplitude: wave.amplitude, half_wave: wave.half_wave };
        prop_assert!(steepest.value() <= wave.design_slope || wave.value().value > 0.0);
    }
}

/// The steepest step of a finely cut sine wave.
#[test]
fn peak_slope_is_the_steepest_step() {
    let (amplitude, half_wave) = (0.025, 3.0);
    let invert = |x: f64| amplitude * (PI * x / half_wave).sin();
    let step = 1e-4;
    let steepest = (0..60_000)
        .map(|count| f64::from(count) * step)
        .map(|x| (invert(x + step) - invert(x)) / step)
        .fold(0.0, f64::max);
    let law = PeakSlope { amplitude: Length::from_si(amplitude), half_wave: Length::from_si(half_wave) };
    assert_relative_eq!(law.value().value, steepest, max_relative = 1e-6);
}

#[test]
fn bisection_touches_no_heap() {
    let count = allocation_counter::measure(|| {
        std::hint::black_box(depth(std::hint::black_box(0.37)));
    });
    assert_eq!(count.count_total, 0);
}

/// Nothing in range is infinite or no number, at the ends either.
#[test]
fn ends_of_the_ranges_are_finite() {
    let zero = Length::default();
    let inside_diameter = Length::from_si(0.2);
    for ratio in [0.0, 1.0] {
        let wetted_angle = angle(ratio);
        assert!(FlowRatio { wetted_angle }.in_range());
        assert!(FlowArea { inside_diameter, wetted_angle }.in_range());
        assert!(HydraulicRadius { inside_diameter, wetted_angle }.value().value.is_finite());
    }
    let level = SagDepth { design_slope: Ratio::from_si(0.0), amplitude: zero, half_wave: inside_diameter };
    assert!(level.in_range() && level.value() == zero);
    let still =
        ManningVelocity { hydraulic_radius: zero, slope: Ratio::from_si(0.0), roughness: Ratio::from_si(0.013) };
    assert!(still.in_range() && still.value() == Velocity::default());
}
