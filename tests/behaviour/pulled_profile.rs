//! The force along the stages of a pull against sums from the numbers of the file: stem, reamer and weight on the grade.

use crate::drives::drive;
use crate::edit::Edit;
use jackpull::check::Subject;
use jackpull::method::{Stage, profile};
use jackpull::quantity::Band;
use jackpull::{Method, assess};
use proptest::prelude::*;
use std::f64::consts::PI;

const LONG: f64 = 80.0;
const STEM: f64 = 0.15;
const WALL: f64 = 0.02;

/// Stretches by their end as a share of the drive and their unit friction in kPa, per cent of grade, stops as shares.
#[derive(Debug, Clone)]
struct Case {
    stretches: Vec<(f64, [f64; 3])>,
    grade: f64,
    stops: Vec<f64>,
}

fn cases() -> impl Strategy<Value = Case> {
    let level =
        (0.2..2.0_f64, 0.0..3.0_f64, 0.0..9.0_f64).prop_map(|(low, more, most)| [low, low + more, low + more + most]);
    let stretches = prop::collection::vec((0.1..1.0_f64, level), 1..4).prop_map(|parts| {
        let whole: f64 = parts.iter().map(|(share, _)| share).sum();
        let mut end = 0.0;
        let ended = |(share, level): (f64, [f64; 3])| {
            end += share / whole;
            (end, level)
        };
        parts.into_iter().map(ended).collect::<Vec<_>>()
    });
    let stops = prop::collection::vec(0.05..0.95_f64, 0..3).prop_map(|mut stops| {
        stops.sort_by(f64::total_cmp);
        stops
    });
    (stretches, -6.0..6.0_f64, stops).prop_map(|(stretches, grade, stops)| Case { stretches, grade, stops })
}

impl Case {
    fn text(&self) -> String {
        let last = self.stretches.len() - 1;
        let one = |(index, (end, [low, likely, high])): (usize, &(f64, [f64; 3]))| {
            let to = if index == last { String::new() } else { format!("to: {} m, ", end * LONG) };
            format!(
                "  - {{ {to}class: silt, spt_n: 10, largest_stone: 0 mm, unit_friction: \
                 {{ low: {low} kPa, likely: {likely} kPa, high: {high} kPa }} }}\n"
            )
        };
        let ground: String = self.stretches.iter().enumerate().map(one).collect();
        let stops: Vec<String> = self.stops.iter().map(|stop| format!("{{ at: {} m }}", stop * LONG)).collect();
        format!(
            "service: casing\nlength: {LONG} m\nlaunch: {{ invert_depth: 14 m }}\ngrade: {} %\ngroundwater: none\n\
             lubrication: none\nwork: {{ round_the_clock: true }}\nground:\n{ground}stops: [{}]\nrig: {{ thrust: 9 MN, pull: 2 MN }}\n\
             stem: {{ outside_diameter: 150 mm, head_diameter: 150 mm, wall: 20 mm }}\npull: {{ duration: 8 h, pipe_temperature: 20 degC, \
             reamer: {{ low: 5 kN, likely: 9 kN, high: 21 kN }} }}\ncandidates:\n  - {{ material: pe100, size: 315 mm, \
             sdr: 11, passes: [300 mm] }}\n",
            self.grade,
            stops.join(", ")
        )
    }

    /// Friction of the stem between two distances from the launch pit, by level, in newtons.
    fn friction(&self, from: f64, to: f64) -> [f64; 3] {
        let mut start = 0.0;
        let mut sum = [0.0; 3];
        for (end, levels) in &self.stretches {
            let end = end * LONG;
            for (sum, unit) in sum.iter_mut().zip(levels) {
                *sum += unit * 1e3 * PI * STEM * (to.min(end) - from.max(start)).max(0.0);
            }
            start = end;
        }
        sum
    }

    /// Weight of this much stem along the grade: the pull climbs where the drive falls. Help counts for low alone.
    fn weight(&self, length: f64) -> [f64; 3] {
        let along = -(self.grade / 100.0).atan().sin() * 7_850.0 * 9.80665 * PI * (STEM - WALL) * WALL * length;
        [along, along.max(0.0), along.max(0.0)]
    }
}

const REAMER: [f64; 3] = [5e3, 9e3, 21e3];

fn levels(band: Band<jackpull::quantity::Force>) -> [f64; 3] {
    [band.low.value, band.likely.value, band.high.value]
}

/// Low, likely and high together; after a stop in silt the stem has 1.1 and 1.3 times its friction, the pipe 1.3 and 1.5
/// times its pull.
fn together(friction: [f64; 3], weight: [f64; 3], pipe: [f64; 3], stood: bool) -> [f64; 3] {
    let (stem, string) = if stood { ([1.0, 1.1, 1.3], [1.0, 1.3, 1.5]) } else { ([1.0; 3], [1.0; 3]) };
    let at = |level: usize| friction[level] * stem[level] + pipe[level] * string[level] + weight[level] + REAMER[level];
    [0, 1, 2].map(|level| at(level).max(0.0))
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Every point of both stages is one of the sums, no sampled sum is above the peak, and the checks have the peaks.
    #[test]
    fn the_rig_bears_the_sums_and_no_more(case in cases()) {
        let drive = drive(&case.text());
        let pipe = &drive.candidates()[0];
        let stages = profile(&drive, pipe, Method::Pullback);
        let [_, reaming, pull] = stages.as_slice() else { panic!("three stages") };
        prop_assert_eq!((reaming.stage, pull.stage), (Stage::REAMING, Stage::PULLBACK));
        let ends = [pull.points.first(), pull.points.last()].map(|point| levels(point.unwrap().on_pipe.unwrap()));
        let on_pipe = |advance: f64| [0, 1, 2].map(|level| ends[0][level] + (ends[1][level] - ends[0][level]) * advance / LONG);
        let reamed = |stood: bool| together(case.friction(0.0, LONG), case.weight(LONG), [0.0; 3], stood);
        let pulled = |advance: f64, stood: bool| {
            together(case.friction(0.0, LONG - advance), case.weight(LONG - advance), on_pipe(advance), stood)
        };
        let near = |one: [f64; 3], other: [f64; 3]| one.iter().zip(other).all(|(one, other)| (one - other).abs() <= 1e-9 * other.abs() + 1e-6);
        let stops: Vec<f64> = case.stops.iter().map(|stop| stop * LONG).collect();
        for point in &reaming.points {
            let rig = levels(point.on_rig);
            prop_assert!(near(rig, reamed(false)) || near(rig, reamed(true)), "{rig:?} {:?}", reamed(false));
            prop_assert_eq!(point.on_stem, Some(point.on_rig));
        }
        for point in &pull.points {
            let (advance, rig) = (point.advance.value, levels(point.on_rig));
            let stands = stops.iter().any(|stop| (stop - advance).abs() < 1e-9);
            prop_assert!(near(rig, pulled(advance, false)) || stands && near(rig, pulled(advance, true)), "{advance}: {rig:?}");
        }
        let peak = |points: &[jackpull::method::Point], level: usize| {
            points.iter().map(|point| levels(point.on_rig)[level]).fold(0.0, f64::max)
        };
        let scheme = assess(&drive, pipe, Method::Pullback);
        for (level, of) in [(1, 0), (2, 1)] {
            let sampled = (0..=2_000).map(|step| pulled(f64::from(step) * LONG / 2_000.0, false)[level]);
            let stood = stops.iter().map(|stop| pulled(*stop, true)[level]);
            let ended = case.stretches.iter().map(|(end, _)| pulled(LONG * (1.0 - end), false)[level]);
            let most = sampled.chain(stood).chain(ended).fold(0.0, f64::max);
            prop_assert!((peak(&pull.points, level) / most - 1.0).abs() < 1e-9, "{} {most}", peak(&pull.points, level));
            for (subject, points) in [(Subject::RigPull, &[pull][..]), (Subject::ReamingPull, &[reaming][..])] {
                let check = scheme.checks.get(subject).unwrap();
                let demand = if of == 0 { check.likely() } else { check.high() }.unwrap().0.si;
                let peaks = points.iter().map(|stage| peak(&stage.points, level)).fold(0.0, f64::max);
                prop_assert!((demand / peaks - 1.0).abs() < 1e-9, "{subject:?}: {demand} and {peaks}");
            }
        }
    }
}

/// A slope that helps takes nothing off the likely and the high pull, whichever way the pipe is pressed.
#[test]
fn a_slope_that_helps_is_not_counted_on() {
    for contents in ["", ", contents: water"] {
        let at = |grade: f64| {
            let case = Case { stretches: vec![(1.0, [0.5, 1.0, 2.0])], grade, stops: Vec::new() };
            let drive = drive(&case.text().edit("20 degC,", &format!("20 degC{contents},")));
            assess(&drive, &drive.candidates()[0], Method::Pullback).force.unwrap()
        };
        let level = at(0.0);
        let (up, down) = (at(5.0), at(-5.0));
        for sloped in [up, down] {
            // The friction falls with the cosine of the slope, by a thousandth.
            assert!(sloped.likely >= level.likely * 0.998 && sloped.high >= level.high * 0.998, "{level:?} {sloped:?}");
        }
        // Full of water it is heaviest to drag as it enters, on the level.
        assert!(!contents.is_empty() || up.high > level.high * 1.01);
    }
}
