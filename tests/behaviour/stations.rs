//! Jacking stations against a drive that is pushed step by step, and against every piece of a drive.

use jackpull::law::Law;
use jackpull::laws::stations::{
    Run, StationCount, StationDistance, StationStart, ThrustThroughTail, reach, shortest_run,
};
use jackpull::quantity::{Force, Length, LineLoad, Measure, Ratio};
use proptest::prelude::*;

/// A value that must lie in the range of its law and be a number.
fn law<L: Law>(law: L) -> L::Out {
    assert!(law.in_range(), "{} is out of its range", L::EQUATION.name);
    let value = law.value();
    assert!(value.si().is_finite(), "{} gives {}", L::EQUATION.name, value.si());
    value
}

/// A drive in one ground: N, N/m and m.
#[derive(Debug, Clone, Copy)]
struct Drive {
    length: f64,
    face: f64,
    friction: f64,
    station: f64,
    main: f64,
    first: f64,
    next: f64,
}

impl Drive {
    fn section(self, capacity: f64, utilisation: f64, ahead: f64) -> Length {
        Length::from_si((utilisation * capacity - ahead) / self.friction)
    }

    fn count(self) -> StationCount {
        StationCount {
            drive: Length::from_si(self.length),
            alone: self.section(self.main, 0.8, self.face),
            first: self.section(self.station, self.first, self.face),
            next: self.section(self.station, self.next, 0.0),
            last: self.section(self.main, 0.8, 0.0),
        }
    }

    /// Pushes the drive a centimetre at a time. A station goes in where the force on the pipe ahead of the shaft comes
    /// to its share; once enough of them are in, the main jacks push what is left.
    fn pushed(self) -> (u32, Vec<f64>) {
        let step = 0.01;
        let mut stations = Vec::new();
        loop {
            let placed = stations.last().copied().unwrap_or(0.0);
            let ahead = if stations.is_empty() { self.face } else { 0.0 };
            if ahead + self.friction * (self.length - placed) <= 0.8 * self.main {
                return (u32::try_from(stations.len()).unwrap(), stations);
            }
            let share = if stations.is_empty() { self.first } else { self.next };
            let mut at = placed;
            while ahead + self.friction * (at - placed) < share * self.station {
                at += step;
            }
            stations.push(at);
        }
    }
}

#[test]
fn stations_as_the_drive_is_pushed() {
    for (drive, expected) in [
        (Drive { length: 120.0, face: 2e5, friction: 15e3, station: 2e6, main: 3e6, first: 0.6, next: 0.8 }, 0),
        (Drive { length: 200.0, face: 2e5, friction: 15e3, station: 2e6, main: 3e6, first: 0.6, next: 0.8 }, 1),
        (Drive { length: 500.0, face: 2e5, friction: 15e3, station: 2e6, main: 3e6, first: 0.6, next: 0.8 }, 4),
    ] {
        let (count, places) = drive.pushed();
        assert_eq!(count, expected);
        let law_count = drive.count();
        assert_eq!(law(law_count).si(), f64::from(count), "{drive:?}");
        for (station, place) in (1..).zip(places) {
            let station = Ratio::from(f64::from(station));
            let at = law(StationDistance { station, first: law_count.first, next: law_count.next }).si();
            assert!((at - place).abs() <= 0.02 * station.value, "{at} and {place}");
        }
    }
}

/// 90 % of whichever is weaker; the tail takes its friction off what the wall sees.
#[test]
fn start_and_tail() {
    let start = |station: f64, main: f64| {
        law(StationStart {
            utilisation: Ratio::from_si(0.9),
            station_capacity: Force::from_si(station),
            main_capacity: Force::from_si(main),
        })
        .si()
    };
    assert_eq!(start(2e6, 3e6), 0.9 * 2e6);
    assert_eq!(start(3e6, 2e6), 0.9 * 2e6);
    let wall = |tail: f64| {
        law(ThrustThroughTail { station_thrust: Force::from_si(1.5e6), tail_friction: Force::from_si(tail) }).si()
    };
    assert_eq!([wall(0.0), wall(0.4e6), wall(2e6)], [1.5e6, 1.1e6, 0.0]);
}

#[test]
fn stations_out_of_range() {
    let drive = Drive { length: 200.0, face: 2e5, friction: 15e3, station: 2e6, main: 3e6, first: 0.6, next: 0.8 };
    let good = drive.count();
    assert!(good.in_range());
    for next in [0.0, -1.0, f64::NAN] {
        assert!(!StationCount { next: Length::from_si(next), ..good }.in_range(), "{next}");
    }
}

fn runs(parts: &[(f64, f64)]) -> Vec<Run> {
    let run = |&(length, friction): &(f64, f64)| Run {
        length: Length::from_si(length),
        friction: LineLoad::from_si(friction),
    };
    parts.iter().map(run).collect()
}

/// Friction of the piece from `from` to `to`.
fn between(parts: &[(f64, f64)], from: f64, to: f64) -> f64 {
    let mut start = 0.0;
    let mut sum = 0.0;
    for (length, friction) in parts {
        let end = start + length;
        sum += friction * (to.min(end) - from.max(start)).max(0.0);
        start = end;
    }
    sum
}

#[test]
fn runs_by_hand() {
    let parts = [(30.0, 10e3), (10.0, 40e3), (60.0, 5e3)];
    let runs = runs(&parts);
    let short = |force: f64| {
        shortest_run(|| runs.iter().copied(), || runs.iter().rev().copied(), Force::from_si(force)).map(Measure::si)
    };
    // 200 kN fit in the stiff 10 m; 450 kN take all of it and 5 m of the 10 kN/m before.
    assert_eq!(short(200e3), Some(5.0));
    assert_eq!(short(450e3), Some(15.0));
    assert_eq!(short(1_000e3), Some(100.0));
    assert_eq!(short(1_000.1e3), None);
    let from_shaft = |force: f64| reach(runs.iter().copied(), Force::from_si(force)).map(Measure::si);
    assert_eq!([from_shaft(200e3), from_shaft(500e3)], [Some(20.0), Some(35.0)]);
    assert_eq!(from_shaft(2_000e3), None);
    assert_eq!(reach(core::iter::empty(), Force::from_si(1.0)), None);
    assert_eq!(short(0.0), Some(0.0));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// In one ground the stations are those of a drive pushed step by step; with one share and one capacity, the total
    /// over the usable push of one, rounded up, less one.
    #[test]
    fn count_in_one_ground(
        length in 20.0..900.0_f64, face in 0.0..5e5_f64, friction in 3e3..30e3_f64, station in 1.5e6..5e6_f64,
        main in 1.5e6..6e6_f64,
    ) {
        let drive = Drive { length, face, friction, station, main, first: 0.6, next: 0.8 };
        let (count, _) = drive.pushed();
        let own = law(drive.count()).si();
        // A centimetre a station of the step by step drive may turn a count that is on the border.
        let close = Drive { length: length - 0.02 * own, ..drive };
        prop_assert!(own == f64::from(count) || law(close.count()).si() == f64::from(count), "{own} and {count}");

        let even = Drive { main: station, first: 0.8, next: 0.8, ..drive };
        let total = face + friction * length;
        let usable = total / (0.8 * station);
        if (usable - usable.round()).abs() > 1e-6 {
            prop_assert_eq!(law(even.count()).si(), (usable.ceil() - 1.0).max(0.0));
        }
    }

    /// No piece shorter than the shortest comes to the force, wherever it begins; one of that length does.
    #[test]
    fn shortest_run_is_the_shortest(
        parts in proptest::collection::vec((1.0..60.0_f64, 1e3..50e3_f64), 1..7), part in 0.02..0.98_f64,
    ) {
        let whole: f64 = parts.iter().map(|(length, _)| length).sum();
        let force = part * between(&parts, 0.0, whole);
        let runs = runs(&parts);
        let shortest = shortest_run(|| runs.iter().copied(), || runs.iter().rev().copied(), Force::from_si(force)).unwrap().si();
        // Everywhere in small steps, and with either end where a run ends.
        let steps = (0..=1_000_u32).map(|place| f64::from(place) / 1_000.0 * (whole - shortest));
        let ends = parts.iter().scan(0.0, |end, (length, _)| {
            *end += length;
            Some(*end)
        });
        let starts = core::iter::once(0.0).chain(ends.flat_map(|end| [end, end - shortest])).chain(steps);
        let inside = starts.filter(|from| (0.0..=whole - shortest).contains(from));
        let most = inside.map(|from| between(&parts, from, from + shortest)).fold(0.0, f64::max);
        prop_assert!((most / force - 1.0).abs() < 1e-9, "{most} and {force}");

        let from_shaft = reach(runs.iter().copied(), Force::from_si(force)).unwrap().si();
        prop_assert!(shortest <= from_shaft * (1.0 + 1e-12));
        prop_assert!((between(&parts, 0.0, from_shaft) / force - 1.0).abs() < 1e-9);
    }
}
