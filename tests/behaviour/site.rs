//! Settlement, face, pit base and inflow: closed forms against quadrature, inverses, limits and how they run.

use approx::assert_relative_eq;
use jackpull::law::Law;
use jackpull::laws::face::{CriticalNumberCylinder, CriticalNumberSphere, FaceSafety, LeastSupport, StabilityNumber};
use jackpull::laws::inflow::{EquivalentRadius, InflowUnconfined, InfluenceRadius};
use jackpull::laws::pit_base::{
    BaseHeave, BaseHeaveTerzaghi, BaseUplift, BearingFactorSkempton, CriticalGradient, PlugLength,
};
use jackpull::laws::room::{ClearDistance, LeastCover};
use jackpull::laws::settlement::{
    AnnulusLoss, FaceLoss, GreatestSettlement, SettlementAtOffset, SteepestTrough, TroughWidth,
};
use jackpull::quantity::{Angle, Area, Length, Measure, Pressure, Ratio, UnitWeight, Velocity};
use proptest::prelude::*;
use std::f64::consts::{E, PI};

fn m(value: f64) -> Length {
    Length::from_si(value)
}

fn one(value: f64) -> Ratio {
    Ratio::from_si(value)
}

fn kpa(value: f64) -> Pressure {
    Pressure::from_si(value * 1e3)
}

fn kn_m3(value: f64) -> UnitWeight {
    UnitWeight::from_si(value * 1e3)
}

/// The trough holds the ground that was lost, and is steepest where the law says, by finite differences.
#[test]
fn the_trough_holds_the_lost_ground() {
    const STEPS: u32 = 4_000;
    for (lost, width) in [(0.2011, 15.0), (0.05, 1.2), (0.365, 2.0)] {
        let trough_width = m(width);
        let greatest_settlement = GreatestSettlement { lost_ground: Area::from_si(lost), trough_width }.value();
        let settlement = |y: f64| SettlementAtOffset { greatest_settlement, offset: m(y), trough_width }.value().value;
        let step = 16.0 * width / f64::from(STEPS);
        let (mut volume, mut steepest, mut at) = (0.0, 0.0, 0.0);
        for count in 0..STEPS {
            let y = f64::from(count) * step - 8.0 * width;
            volume += step * settlement(y + step / 2.0);
            let slope = (settlement(y + step) - settlement(y)) / step;
            if slope > steepest {
                (steepest, at) = (slope, y + step / 2.0);
            }
        }
        assert_relative_eq!(volume, lost, max_relative = 1e-9);
        let slope = SteepestTrough { greatest_settlement, trough_width }.value().value;
        assert_relative_eq!(slope, steepest, max_relative = 1e-4);
        assert!((at + width).abs() <= step, "steepest at {at}");
        assert_eq!(settlement(0.0), greatest_settlement.value);
    }
}

proptest! {
    /// The low end of the ratio is the deep and steep one, the high end the wide one.
    #[test]
    fn a_narrow_trough_is_deep_and_steep(low in 0.2..0.5_f64, more in 0.01..0.3_f64, lost in 0.01..0.5_f64, depth in 1.5..20.0_f64) {
        let at = |ratio: f64| {
            let trough_width = TroughWidth { ratio: one(ratio), axis_depth: m(depth), level: m(0.0) }.value();
            let greatest_settlement = GreatestSettlement { lost_ground: Area::from_si(lost), trough_width }.value();
            let slope = SteepestTrough { greatest_settlement, trough_width }.value();
            let far = SettlementAtOffset { greatest_settlement, offset: 3.0 * trough_width, trough_width }.value();
            (greatest_settlement, slope, far, trough_width)
        };
        let (narrow, wide) = (at(low), at(low + more));
        prop_assert!(narrow.0 > wide.0 && narrow.1 > wide.1 && narrow.3 < wide.3);
        prop_assert!(narrow.2 < narrow.0);
    }

    /// A face that is lost whole is the annulus round no pipe; an annulus that closes whole is the bore less the pipe.
    #[test]
    fn losses_are_areas(bore in 0.2..3.0_f64, share in 0.0..1.0_f64, part in 0.0..1.0_f64) {
        let face = FaceLoss { volume_loss: one(share), bore: m(bore) }.value().value;
        let no_pipe = AnnulusLoss { closed_share: one(share), bore: m(bore), outside_diameter: m(0.0) }.value().value;
        prop_assert!((face - no_pipe).abs() <= 1e-12);
        let all = AnnulusLoss { closed_share: one(1.0), bore: m(bore), outside_diameter: m(part * bore) }.value().value;
        let left = PI / 4.0 * bore * bore * (1.0 - part * part);
        prop_assert!((all - left).abs() <= 1e-12);
    }

    /// The least support brings the number to the one it was asked for, and never pulls.
    #[test]
    fn least_support_is_the_inverse_of_the_number(cover in 0.5..20.0_f64, strength in 5.0..100.0_f64, number in 0.5..6.0_f64) {
        let (surcharge, unit_weight, bore) = (kpa(10.0), kn_m3(19.0), m(0.6));
        let undrained_strength = kpa(strength);
        let support =
            LeastSupport { surcharge, unit_weight, cover: m(cover), bore, stability_number: one(number), undrained_strength };
        let back = StabilityNumber {
            surcharge,
            unit_weight,
            cover: m(cover),
            bore,
            support: support.value(),
            undrained_strength,
        };
        prop_assert!(support.value().value >= 0.0);
        prop_assert!(back.value().value <= number + 1e-9);
        if support.value().value > 0.0 {
            prop_assert!((back.value().value - number).abs() <= 1e-9);
        }
    }

    /// Skempton: never less for a deeper or a shorter pit, 5 to 9 in all.
    #[test]
    fn bearing_factor_runs_as_printed(depth in 0.0..20.0_f64, more in 0.0..5.0_f64, width in 1.0..5.0_f64, times in 1.0..10.0_f64) {
        let at = |depth: f64, times: f64| {
            BearingFactorSkempton { depth: m(depth), width: m(width), length: m(width * times) }.value().value
        };
        prop_assert!(at(depth + more, times) >= at(depth, times));
        prop_assert!(at(depth, times + more) <= at(depth, times));
        prop_assert!((5.0..=9.0 + 1e-9).contains(&at(depth, times)));
        prop_assert_eq!(at(width * 2.5, times), at(width * 2.5 + 1.0 + more, times));
    }

    /// A plug as long as is asked for has the factor against boiling.
    #[test]
    fn plugs_hold_what_they_are_made_for(head in 0.5..15.0_f64, factor in 1.0..2.0_f64) {
        let water_weight = kn_m3(9.806_65);
        let critical_gradient = CriticalGradient { buoyant_weight: kn_m3(9.0), water_weight }.value();
        let path = PlugLength { factor: one(factor), head: m(head), critical_gradient }.value();
        let gradient = m(head) / path;
        prop_assert!((critical_gradient / gradient - one(factor)).value.abs() <= 1e-9);
    }

    /// More drawdown, permeability or pit lets in more water.
    #[test]
    fn inflow_rises_with_its_causes(near in 0.0..4.0_f64, radius in 1.0..10.0_f64, more in 1.01..2.0_f64) {
        let at = |permeability: f64, near: f64, radius: f64| {
            InflowUnconfined {
                permeability: Velocity::from_si(permeability),
                far_depth: m(8.0),
                near_depth: m(near),
                far_radius: m(100.0),
                near_radius: m(radius),
            }
            .value()
        };
        let base = at(1e-4, near, radius);
        prop_assert!(at(1e-4 * more, near, radius) > base);
        prop_assert!(at(1e-4, near, radius * more) > base);
        prop_assert!(at(1e-4, near / 2.0, radius) >= base);
    }

    #[test]
    fn rules_of_room_take_the_larger(diameter in 0.1..3.0_f64, times in 0.0..4.0_f64, least in 0.0..5.0_f64) {
        let cover = LeastCover { outside_diameter: m(diameter), times: one(times), least: m(least) }.value().value;
        let clear = ClearDistance { diameter: m(diameter), times: one(times), least: m(least) }.value().value;
        prop_assert_eq!(cover, (times * diameter).max(least));
        prop_assert_eq!(clear, cover);
    }
}

/// The two fields of stress give the same number at a cover of (e - 1)/2 bores; deeper, the cylinder is the lesser.
#[test]
fn critical_numbers_cross() {
    let at = |ratio: f64| {
        let (cover, bore) = (m(ratio * 0.8), m(0.8));
        let sphere = CriticalNumberSphere { cover, bore }.value().value;
        (sphere, CriticalNumberCylinder { cover, bore }.value().value)
    };
    let (sphere, cylinder) = at((E - 1.0) / 2.0);
    assert_relative_eq!(sphere, 4.0, max_relative = 1e-12);
    assert_relative_eq!(cylinder, 4.0, max_relative = 1e-12);
    assert!(at(0.5).0 < at(0.5).1 && at(3.0).0 > at(3.0).1);
    assert_eq!(at(0.0), (0.0, 2.0));
}

#[test]
fn a_face_without_load_has_no_factor() {
    assert!(!FaceSafety { critical_number: one(6.0), stability_number: one(0.0) }.in_range());
    assert!(!FaceSafety { critical_number: one(6.0), stability_number: one(-1.0) }.in_range());
    // 6 over 1.5 is 4.
    let factor = FaceSafety { critical_number: one(6.0), stability_number: one(4.0) };
    assert!(factor.in_range() && factor.value() == one(1.5));
}

/// A narrow pit is outside Terzaghi's form, as is one whose sides would carry all; without depth or width to slide on
/// the two forms differ by their bearing factors only.
#[test]
fn heave_of_wide_and_of_narrow_pits() {
    let (undrained_strength, unit_weight, surcharge) = (kpa(20.0), kn_m3(18.0), kpa(0.0));
    let terzaghi = |depth: f64, width: f64| BaseHeaveTerzaghi {
        undrained_strength,
        unit_weight,
        depth: m(depth),
        width: m(width),
        surcharge,
    };
    assert!(!terzaghi(4.0, 3.0).in_range());
    assert!(terzaghi(3.0, 4.0).in_range());
    let strong = BaseHeaveTerzaghi { undrained_strength: kpa(200.0), ..terzaghi(3.0, 4.0) };
    assert!(!strong.in_range());
    let wide = terzaghi(3.0, 1e9).value().value;
    let bjerrum = BaseHeave { bearing_factor: one(5.7), undrained_strength, unit_weight, depth: m(3.0), surcharge };
    assert_relative_eq!(wide, bjerrum.value().value, max_relative = 1e-6);
    let loaded = BaseHeave { surcharge: kpa(10.0), ..bjerrum };
    assert!(loaded.value() < bjerrum.value());
}

/// At the critical gradient the whole column is just as heavy as the water at its foot pushes.
#[test]
fn the_critical_gradient_lifts_the_column() {
    let (water_weight, buoyant_weight, thickness) = (kn_m3(9.806_65), kn_m3(11.0), m(2.5));
    let gradient = CriticalGradient { buoyant_weight, water_weight }.value();
    let water_pressure = water_weight * (thickness + gradient * thickness);
    let whole = BaseUplift { unit_weight: buoyant_weight + water_weight, thickness, water_pressure };
    assert_relative_eq!(whole.value().value, 1.0, max_relative = 1e-12);
}

/// Darcy summed over rings from the pit outwards must arrive at the water level far away.
#[test]
fn inflow_agrees_with_a_sum_over_rings() {
    const RINGS: u32 = 100_000;
    let (permeability, near, far) = (2e-4, 4.0_f64, 120.0_f64);
    let rings = |mut level: f64, gradient: &dyn Fn(f64, f64) -> f64| {
        let growth = (far / near).ln() / f64::from(RINGS);
        for ring in 0..RINGS {
            let radius = near * (growth * f64::from(ring)).exp();
            let width = radius * growth.exp_m1();
            let middle = radius + width / 2.0;
            let half = level + width / 2.0 * gradient(level, middle);
            level += width * gradient(half, middle);
        }
        level
    };
    let (far_radius, near_radius) = (m(far), m(near));
    let free = InflowUnconfined {
        permeability: Velocity::from_si(permeability),
        far_depth: m(9.0),
        near_depth: m(3.0),
        far_radius,
        near_radius,
    };
    let flow = free.value().value;
    let level = rings(3.0, &|level, radius| flow / (2.0 * PI * radius * level * permeability));
    assert_relative_eq!(level, 9.0, max_relative = 1e-6);
    assert!(!InflowUnconfined { near_radius: far_radius, ..free }.in_range());
}

#[test]
fn radii_of_a_pit() {
    let radius = EquivalentRadius { width: m(3.0), length: m(6.0) }.value().value;
    assert_relative_eq!(PI * radius * radius, 18.0, max_relative = 1e-12);
    let influence = InfluenceRadius { drawdown: m(4.0), permeability: Velocity::from_si(1e-4) };
    assert_relative_eq!(influence.value().value, 120.0, max_relative = 1e-12);
}

/// A plug slides before it boils: by its weight alone, 10 kN/m3 at 20 to 24 deg holds a gradient of 0.37 to 0.45, where
/// upward boiling needs about 1 (statics).
#[test]
fn a_plug_slides_before_it_boils() {
    use jackpull::laws::pit_base::{PlugAgainstSliding, PlugLength};
    let head = Length::from_si(3.0);
    let factor = Ratio::from_si(1.0);
    for (degrees, gradient) in [(20.0_f64, 0.371), (24.0, 0.454)] {
        let sliding = PlugAgainstSliding {
            factor,
            head,
            buoyant: UnitWeight::from_si(10e3),
            interface_angle: Angle::from_si(degrees.to_radians()),
        };
        assert!(sliding.in_range());
        assert_relative_eq!(3.0 / sliding.value().si(), gradient, max_relative = 2e-3);
        let boiling = PlugLength { factor, head, critical_gradient: Ratio::from_si(10.0 / 9.80665) };
        assert!(sliding.value() > 2.0 * boiling.value());
    }
}
