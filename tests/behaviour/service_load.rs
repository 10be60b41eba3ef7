//! Load of a pipe in service against integrals, the floor of the earth load, and the strength that both ask for.

use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::earth_load::{
    ClassNeeded, CrushingStrengthNeeded, FloorColumn, FlooredLoad, PressureOnPipe, StrengthOfClass, SurfaceLoadShare,
    WheelAside, WheelLoadOnPipe,
};
use jackpull::laws::soil::MarstonLoad;
use jackpull::quantity::{Force, Length, LineLoad, Measure, Pressure, Ratio, UnitWeight};
use proptest::prelude::*;

/// A value that must lie in the range of its law and be a number.
fn law<L: Law>(law: L) -> L::Out {
    assert!(law.in_range(), "{} is out of its range", L::EQUATION.name);
    let value = law.value();
    assert!(value.si().is_finite(), "{} gives {}", L::EQUATION.name, value.si());
    value
}

fn share(breadth: f64, length: f64, depth: f64) -> f64 {
    let [breadth, length, depth] = [breadth, length, depth].map(Length::from_si);
    law(SurfaceLoadShare { breadth, length, depth }).si()
}

fn pressure(wheel: f64, depth: f64, aside: f64) -> f64 {
    let (depth, aside) = (Length::from_si(depth), Length::from_si(aside));
    law(WheelAside { wheel: Force::from_si(wheel), depth, aside }).si()
}

/// The pressure of a point load over a rectangle, cell by cell.
#[test]
fn share_is_the_pressure_over_its_rectangle() {
    for (breadth, length, depth) in [(0.3, 0.9, 1.2), (1.2, 0.9, 0.6), (0.6, 3.0, 4.0), (2.0, 2.0, 1.0)] {
        let cells = 400_u32;
        let middle = |cell: u32, side: f64| side * ((f64::from(cell) + 0.5) / f64::from(cells) - 0.5);
        let area = breadth * length / f64::from(cells * cells);
        let mut sum = 0.0;
        for i in 0..cells {
            for j in 0..cells {
                sum += area * pressure(1.0, depth, middle(i, breadth).hypot(middle(j, length)));
            }
        }
        let closed = share(breadth, length, depth);
        assert!((sum / closed - 1.0).abs() < 1e-4, "{breadth} by {length} at {depth}: {sum} and {closed}");
    }
}

/// A rectangle without end takes the whole load, a strip without end what the cosine rule says, a dot nothing.
#[test]
fn share_at_its_limits() {
    assert!((share(1e6, 1e6, 1.0) - 1.0).abs() < 1e-5);
    // 2/pi (atan m + m/(1 + m²)) of a strip.
    for m in [0.2_f64, 0.7, 1.5] {
        let strip = 2.0 / core::f64::consts::PI * (m.atan() + m / (1.0 + m * m));
        assert!((share(2.0 * m, 1e7, 1.0) / strip - 1.0).abs() < 1e-6, "{m}");
    }
    // Under a deep cover it is the pressure straight below times the area.
    let deep = share(0.3, 0.9, 300.0) / (0.3 * 0.9 * pressure(1.0, 300.0, 0.0));
    assert!((deep - 1.0).abs() < 1e-4, "{deep}");
}

/// The pressure of a point load over a whole level is the load.
#[test]
fn wheel_aside_keeps_the_wheel() {
    let (depth, steps, reach) = (1.5, 200_000_u32, 600.0);
    let step = reach / f64::from(steps);
    let ring = |index: u32| {
        let radius = (f64::from(index) + 0.5) * step;
        2.0 * core::f64::consts::PI * radius * step * pressure(1.0, depth, radius)
    };
    let sum: f64 = (0..steps).map(ring).sum();
    assert!((sum - 1.0).abs() < 1e-4, "{sum}");
}

/// What a pipe with cohesion over it is charged with.
fn floored(bore: f64, depth: f64, cohesion: f64, bores: f64) -> [LineLoad; 3] {
    let (bore, depth) = (Length::from_si(bore), Length::from_si(depth));
    let marston = |depth, cohesion| {
        let (unit_weight, lateral_friction) = (UnitWeight::from_si(19e3), Ratio::from_si(0.13));
        MarstonLoad { unit_weight, bore, depth, lateral_friction, cohesion: Pressure::from_si(cohesion) }.value()
    };
    let column = law(FloorColumn { depth, bore, bores: Ratio::from_si(bores) });
    let (load, floor) = (marston(depth, cohesion), marston(column, 0.0));
    [law(FlooredLoad { load, floor }), floor, marston(depth, 0.0)]
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Never below the floor, never above the load without cohesion; no cohesion changes nothing.
    #[test]
    fn floor_holds(
        bore in 0.2..3.0_f64, depth in 0.1..20.0_f64, cohesion in 0.0..60e3_f64, bores in 1.5..2.0_f64,
    ) {
        let [load, floor, bare] = floored(bore, depth, cohesion, bores);
        prop_assert!(floor <= load && load <= bare * (1.0 + 1e-12), "{floor:?} {load:?} {bare:?}");
        prop_assert!(floor > LineLoad::default());
        prop_assert_eq!(floored(bore, depth, 0.0, bores)[0], bare);
        // More cohesion never adds load.
        prop_assert!(floored(bore, depth, cohesion + 1e3, bores)[0] <= load);
    }

    /// A share is a share, falls with depth and grows with the rectangle.
    #[test]
    fn share_runs_as_it_must(breadth in 0.1..3.0_f64, length in 0.1..3.0_f64, depth in 0.1..30.0_f64) {
        let base = share(breadth, length, depth);
        prop_assert!(0.0 < base && base < 1.0, "{base}");
        prop_assert!(share(breadth, length, depth * 1.05) < base);
        prop_assert!(share(breadth * 1.05, length, depth) > base);
        prop_assert!((share(length, breadth, depth) / base - 1.0).abs() < 1e-12);
        // The peak pressure is above the mean.
        let [wide, long, deep] = [breadth, length, depth].map(Length::from_si);
        let one = Ratio::from_si(1.0);
        let own = SurfaceLoadShare { breadth: wide, length: long, depth: deep }.value();
        let wheel = law(WheelLoadOnPipe { share: own, wheel: Force::from_si(1.0), impact_factor: one, length: long });
        let peak = Pressure::from_si(pressure(1.0, depth, 0.0));
        let at_peak = law(PressureOnPipe { pressure: peak, factor: one, outside_diameter: wide });
        prop_assert!(wheel <= at_peak, "{wheel:?} and {at_peak:?}");
    }

    /// More load asks for more, more bedding for less; with one bedding factor the loads may be summed first.
    #[test]
    fn strength_runs_as_it_must(
        earth in 0.0..500e3_f64, live in 0.0..200e3_f64, bedding in 1.0..3.0_f64, other in 1.0..3.0_f64, safety in 1.0..2.0_f64,
    ) {
        let of = |earth: f64, live: f64, bedding: f64, other: f64| {
            law(CrushingStrengthNeeded {
                earth_load: LineLoad::from_si(earth),
                earth_bedding_factor: Ratio::from_si(bedding),
                live_load: LineLoad::from_si(live),
                live_bedding_factor: Ratio::from_si(other),
                safety: Ratio::from_si(safety),
            })
            .si()
        };
        let base = of(earth, live, bedding, other);
        prop_assert!(of(earth + 1.0, live, bedding, other) > base && of(earth, live + 1.0, bedding, other) > base);
        prop_assert!(of(earth, live, bedding + 0.1, other) <= base && of(earth, live, bedding, other + 0.1) <= base);
        let summed = safety * (earth + live) / bedding;
        prop_assert!((of(earth, live, bedding, bedding) - summed).abs() <= 1e-9 * (1.0 + summed));

        let size = Length::from_si(bedding);
        let class_load = law(ClassNeeded { strength: LineLoad::from_si(base + 1.0), size });
        let back = law(StrengthOfClass { class_load, size }).si();
        prop_assert!((back / (base + 1.0) - 1.0).abs() < 1e-12);
    }
}

/// 30 kN/m on a factor 3 and 15 kN/m on a factor 1.5 are 10 each; half as much again is 30.
#[test]
fn each_load_has_its_own_bedding() {
    let needed = law(CrushingStrengthNeeded {
        earth_load: LineLoad::from_si(30e3),
        earth_bedding_factor: Ratio::from_si(3.0),
        live_load: LineLoad::from_si(15e3),
        live_bedding_factor: Ratio::from_si(1.5),
        safety: Ratio::from_si(1.5),
    });
    assert!((needed.si() - 30e3).abs() < 1e-6, "{needed:?}");
}

/// Classes and sizes rise; the ultimate strength is a quarter to a half above that at the crack.
#[test]
fn crushing_tables_rise() {
    let book = Handbook::embedded();
    let rows = &book.crushing_class().unwrap().rows;
    for standard in ["ASTM C76", "EN 295-1"] {
        let own: Vec<_> = rows.iter().filter(|row| row.value.standard.value.0 == standard).collect();
        assert!(own.len() == 5, "{standard}");
        for pair in own.windows(2) {
            assert!(pair[0].value.ultimate.value < pair[1].value.ultimate.value, "{}", pair[1].key);
        }
        for row in own {
            if let Some(cracked) = &row.value.cracked {
                let over = (row.value.ultimate.value / cracked.value).value;
                assert!((1.25 - 1e-9..=1.5 + 1e-9).contains(&over), "{}: {over}", row.key);
            }
        }
    }
    for pair in book.clay_crushing().unwrap().rows.windows(2) {
        let [small, large] = [&pair[0].value, &pair[1].value];
        assert!(small.size.value < large.size.value && small.strength.value < large.strength.value, "{}", pair[1].key);
    }
}
