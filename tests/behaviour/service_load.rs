//! Load of a pipe in service: the floor of the earth load, and the strength that it asks for.

use jackpull::Handbook;
use jackpull::law::Law;
use jackpull::laws::earth_load::{CrushingStrengthNeeded, FloorColumn, FlooredLoad, StrengthOfClass};
use jackpull::laws::soil::MarstonLoad;
use jackpull::quantity::{Length, LineLoad, Measure, Pressure, Ratio, UnitWeight};
use proptest::prelude::*;

/// A value that must lie in the range of its law and be a number.
fn law<L: Law>(law: L) -> L::Out {
    assert!(law.in_range(), "{} is out of its range", L::EQUATION.name);
    let value = law.value();
    assert!(value.si().is_finite(), "{} gives {}", L::EQUATION.name, value.si());
    value
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

        let of_class = |load: f64, size: f64| {
            law(StrengthOfClass { class_load: Pressure::from_si(load), size: Length::from_si(size) }).si()
        };
        prop_assert!((of_class(base, bedding) - base * bedding).abs() <= 1e-9 * (1.0 + base * bedding));
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
