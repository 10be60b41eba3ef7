//! What must hold for any pipe end, whatever the factors: limits are the lesser of their parts, capacity rises with area
//! and strength, curves have no jump to the unsafe side, and joint angles go back to the line they came from.

use jackpull::law::Law;
use jackpull::laws::column::{ColumnStress, ElasticColumnStress};
use jackpull::laws::concrete::{Asce27EndForce, ChineseConcreteEndForce, MeanEndStress};
use jackpull::laws::rigid::GrpEndForce;
use jackpull::laws::steel::{EffectiveShare, ElasticLocalBuckling, LocalBuckling, SteelEndForce};
use jackpull::laws::steering::{
    CurveRadius, GapAtJointAngle, JointAngleFromDeviation, JointAngleFromGap, JointAngleFromRadius,
    LeastRadiusOfUndulation,
};
use jackpull::quantity::{Angle, Area, Length, Measure, Pressure, Ratio};
use proptest::prelude::*;

const STEEL: f64 = 200e9;

/// The curve with the coefficients recalled for it.
fn local(yield_strength: f64, slim: f64) -> LocalBuckling {
    let (outside_diameter, wall) = (Length::from_si(slim), Length::from_si(1.0));
    let coefficient = Ratio::from_si(0.3);
    let elastic_stress =
        ElasticLocalBuckling { coefficient, modulus: Pressure::from_si(STEEL), wall, outside_diameter }.value();
    LocalBuckling {
        yield_strength: Pressure::from_si(yield_strength),
        elastic_stress,
        outside_diameter,
        wall,
        constant: Ratio::from_si(1.64),
        slope: Ratio::from_si(0.23),
        exponent: Ratio::from_si(0.25),
        compact_ratio: Ratio::from_si(60.0),
        last_ratio: Ratio::from_si(300.0),
    }
}

fn share(yield_strength: f64, slim: f64) -> EffectiveShare {
    EffectiveShare {
        modulus: Pressure::from_si(STEEL),
        yield_strength: Pressure::from_si(yield_strength),
        outside_diameter: Length::from_si(slim),
        wall: Length::from_si(1.0),
        round_limit: Ratio::from_si(0.11),
        slope: Ratio::from_si(0.038),
        last_limit: Ratio::from_si(0.45),
    }
}

fn column(yield_strength: f64, slenderness: f64) -> f64 {
    let elastic_stress = ElasticColumnStress {
        modulus: Pressure::from_si(STEEL),
        length_factor: Ratio::from_si(1.0),
        free_length: Length::from_si(slenderness),
        radius_of_gyration: Length::from_si(1.0),
    }
    .value();
    ColumnStress {
        yield_strength: Pressure::from_si(yield_strength),
        elastic_stress,
        base: Ratio::from_si(0.658),
        elastic_share: Ratio::from_si(0.877),
        limit: Ratio::from_si(2.25),
    }
    .value()
    .value
}

fn grp(greatest: f64, ratio: f64) -> GrpEndForce {
    GrpEndForce {
        greatest_ratio: Ratio::from_si(greatest),
        stress_ratio: Ratio::from_si(ratio),
        end_bearing_area: Area::from_si(0.1),
        axial_strength: Pressure::from_si(80e6),
        material_factor: Ratio::from_si(1.75),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// A thousandth is the misfit of the recalled curve with yield at D/t 60.
    #[test]
    fn local_buckling_never_rises_with_slimness(fy in 200e6..550e6_f64, slim in 10.0..295.0_f64, more in 0.0..5.0_f64) {
        let (thick, thin) = (local(fy, slim), local(fy, slim + more));
        prop_assert!(thick.in_range() && thin.in_range());
        prop_assert!(thick.value().value <= fy && thin.value().value > 0.0);
        prop_assert!(thin.value().value <= thick.value().value);
        prop_assert!(thick.value() <= thick.elastic_stress);
    }

    #[test]
    fn effective_share_never_rises_with_slimness(fy in 200e6..550e6_f64, part in 0.02..0.44_f64, more in 1.0..1.02_f64) {
        let (thick, thin) = (share(fy, part * STEEL / fy), share(fy, part * more * STEEL / fy));
        prop_assert!(thick.in_range() && thin.in_range());
        prop_assert!(thick.value().value <= 1.0 && thin.value().value > 2.0 / 3.0);
        prop_assert!(thin.value() <= thick.value());
    }

    #[test]
    fn column_falls_with_length_and_stays_below_yield_and_euler(
        fy in 200e6..550e6_f64, slenderness in 1.0..250.0_f64, more in 1.01..2.0_f64,
    ) {
        let stress = column(fy, slenderness);
        let euler = (std::f64::consts::PI / slenderness).powi(2) * STEEL;
        prop_assert!(stress <= fy && stress <= euler * 1.0001);
        prop_assert!(column(fy, slenderness * more) < stress);
    }

    #[test]
    fn steel_takes_the_lesser_limit(fy in 200e6..550e6_f64, slim in 20.0..299.0_f64, n in 1.0..4.0_f64, k in 0.3..1.0_f64) {
        let law = SteelEndForce {
            section_area: Area::from_si(0.02),
            yield_strength: Pressure::from_si(fy),
            yield_factor: Ratio::from_si(n),
            local_stress: local(fy, slim).value(),
            local_share: Ratio::from_si(k),
        };
        let stress = law.value().value / 0.02;
        let parts = [fy / n, k * law.local_stress.value];
        prop_assert!(parts.iter().all(|part| stress <= part * (1.0 + 1e-12)));
        prop_assert!(parts.iter().any(|part| (stress / part - 1.0).abs() < 1e-12));
    }

    #[test]
    fn grp_never_counts_more_than_its_greatest_ratio(ratio in 0.01..1.0_f64, more in 1.0..1.5_f64) {
        let force = |ratio| grp(0.5, ratio).value();
        prop_assert!(force(ratio) <= force(0.5));
        prop_assert!(force((ratio * more).min(1.0)) >= force(ratio));
    }

    /// The mean stress of a scheme is that of one square metre, whatever the area.
    #[test]
    fn schemes_are_proportional_to_area_and_strength(area in 0.01..3.0_f64, strength in 20e6..80e6_f64, share in 0.1..1.0_f64) {
        let asce = |area, strength| {
            let end_bearing_area = Area::from_si(area);
            let force = Asce27EndForce {
                eccentric_share: Ratio::from_si(share),
                stress_block: Ratio::from_si(0.85),
                phi: Ratio::from_si(0.9),
                load_factor: Ratio::from_si(1.2),
                strength: Pressure::from_si(strength),
                end_bearing_area,
            }.value();
            MeanEndStress { force, end_bearing_area }.value().value
        };
        prop_assert!((asce(area, strength) / asce(1.0, 1.0) / strength - 1.0).abs() < 1e-12);
        prop_assert!(asce(area, strength) <= 0.85 * 0.9 / 1.2 * strength * (1.0 + 1e-12));
        let annex = |area, strength, partial: f64| ChineseConcreteEndForce {
            eccentric_load: Ratio::from_si(0.5),
            strength_reduction: Ratio::from_si(0.9),
            eccentric_enhancement: Ratio::from_si(1.05),
            brittleness: Ratio::from_si(0.85),
            strength_adjustment: Ratio::from_si(0.79),
            partial_factor: Ratio::from_si(partial),
            design_strength: Pressure::from_si(strength),
            least_end_area: Area::from_si(area),
        };
        let force = annex(area, strength, 1.3).value().value;
        prop_assert!((force / (area * strength) / annex(1.0, 1.0, 1.3).value().value - 1.0).abs() < 1e-12);
        prop_assert!(annex(area, strength, 1.5).value().value < force);
    }

    #[test]
    fn radius_and_angle_are_inverses(length in 0.5..6.0_f64, radius in 50.0..5000.0_f64, diameter in 0.2..4.0_f64) {
        let (pipe_length, radius) = (Length::from_si(length), Length::from_si(radius));
        let angle = JointAngleFromRadius { pipe_length, radius }.value();
        let back = CurveRadius { pipe_length, angle }.value();
        prop_assert!((back / radius - Ratio::from_si(1.0)).value.abs() < 1e-9);
        // Both gaps agree at the angles of joints, to the third order.
        let outside_diameter = Length::from_si(diameter);
        let gap = GapAtJointAngle { outside_diameter, angle }.value();
        prop_assume!(gap <= outside_diameter);
        let again = JointAngleFromGap { gap, outside_diameter }.value();
        let square = angle.value * angle.value;
        prop_assert!((again.value / angle.value - 1.0).abs() <= 0.4 * square + 1e-9);
    }

    /// A joint on a curve stands off the line by about L²/(2 R), and so leaves that of the last pipe by twice as much.
    #[test]
    fn angles_of_the_line(length in 0.5..6.0_f64, radius in 100.0..5000.0_f64) {
        let pipe_length = Length::from_si(length);
        let offset = Length::from_si(length * length / (2.0 * radius));
        let on_curve = JointAngleFromRadius { pipe_length, radius: Length::from_si(radius) }.value();
        let leaves = JointAngleFromDeviation { deviation: 2.0 * offset, pipe_length }.value();
        prop_assert!((leaves.value / on_curve.value - 1.0).abs() < 0.01);
    }

    #[test]
    fn a_longer_wave_is_milder(amplitude in 0.001..0.2_f64, half in 2.0..100.0_f64, more in 1.01..3.0_f64) {
        let at = |half: f64| {
            let (amplitude, half_wave) = (Length::from_si(amplitude), Length::from_si(half));
            let slope = jackpull::laws::undulation::PeakSlope { amplitude, half_wave }.value().value;
            (slope, LeastRadiusOfUndulation { amplitude, half_wave }.value().value)
        };
        let (short, long) = (at(half), at(half * more));
        prop_assert!(long.0 < short.0 && long.1 > short.1);
        // Steeper than the mean from crest to trough.
        prop_assert!(short.0 > 2.0 * amplitude / half);
    }
}

/// Out of range is doubt, never a panic.
#[test]
fn nonsense_is_out_of_range() {
    for slim in [f64::NAN, 0.0, 1.0, 301.0, f64::INFINITY] {
        assert!(!local(240e6, slim).in_range(), "{slim}");
        let _ = local(240e6, slim).value();
    }
    for slim in [f64::NAN, 0.0, 1.0, 0.46 * STEEL / 240e6] {
        assert!(!share(240e6, slim).in_range(), "{slim}");
        let _ = share(240e6, slim).value();
    }
    for ratio in [f64::NAN, 0.0, -1.0, 1.1] {
        assert!(!grp(0.5, ratio).in_range() && !grp(ratio, 0.5).in_range(), "{ratio}");
    }
    let outside_diameter = Length::from_si(1.0);
    assert!(!JointAngleFromGap { gap: Length::from_si(1.1), outside_diameter }.in_range());
    assert!(JointAngleFromGap { gap: Length::from_si(9.0), outside_diameter }.value().value.is_finite());
    assert!(!GapAtJointAngle { outside_diameter, angle: Angle::from_si(2.0) }.in_range());
    assert!(!CurveRadius { pipe_length: outside_diameter, angle: Angle::from_si(0.0) }.in_range());
}
