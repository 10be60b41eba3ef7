//! Force on stem and casing along each stage, against hand sums at the start, half way, where things stand, and at the end.

use crate::drives::drive;
use approx::assert_relative_eq;
use jackpull::method::{Point, Stage, profile};
use jackpull::quantity::{Band, Force};
use jackpull::{Drive, Method};
use std::f64::consts::PI;

const LONG: f64 = 80.0;
const FRICTION: [f64; 3] = [2e3, 5e3, 8e3];

/// A stem of 100 x 10 mm, a stop half way, a slope of 5 % up, nothing at the face; pipes of 360 and 315 mm.
fn text(casing: &str) -> Drive {
    drive(&format!(
        "service: casing\nlength: {LONG} m\nlaunch: {{ invert_depth: 9 m }}\ngrade: 5 %\ngroundwater: none\n\
         lubrication: none\nwork: {{ round_the_clock: true }}\nground:\n  - {{ class: silt, spt_n: 10, largest_stone: 0 mm, unit_friction: {{ low: 2 kPa, \
         likely: 5 kPa, high: 8 kPa }} }}\nstops: [{{ at: 40 m }}]\nrig: {{ thrust: 5 MN, pull: 1 MN }}\n\
         stem: {{ outside_diameter: 100 mm, head_diameter: 100 mm, wall: 10 mm }}\nface: {{ low: 0 kN, likely: 0 kN, high: 0 kN }}\n\
         pull: {{ duration: 8 h, pipe_temperature: 20 degC, reamer: {{ low: 5 kN, likely: 9 kN, high: 21 kN }} }}\n\
         candidates:\n  - {{ material: clay, size: 300 mm, outside_diameter: 360 mm, end_bearing_area: 0.03 m2, weight: \
         1 kN/m{casing} }}\n  - {{ material: pe100, size: 315 mm, sdr: 11, passes: [300 mm] }}\n"
    ))
}

fn points(drive: &Drive, pipe: usize, method: Method, stage: Stage) -> Vec<Point> {
    let stages = profile(drive, &drive.candidates()[pipe], method);
    stages.into_iter().find(|found| found.stage == stage).unwrap().points
}

fn same(force: Option<Band<Force>>, expected: [f64; 3]) {
    let force = force.unwrap().map(|force| force.value);
    for (force, expected) in [force.low, force.likely, force.high].into_iter().zip(expected) {
        assert_relative_eq!(force, expected, max_relative = 1e-9, epsilon = 1e-6);
    }
}

/// Weight of a steel tube up the slope.
fn tube(diameter: f64, wall: f64, length: f64) -> f64 {
    7_850.0 * 9.80665 * PI * (diameter - wall) * wall * length * 0.05_f64.atan().sin()
}

/// Friction over a length of a body, after a stop 1.1 and 1.3 times that of a stem, 1.3 and 1.5 times that of a casing in
/// silt, and its weight up the slope.
fn left(diameter: f64, wall: f64, length: f64, stood: bool) -> [f64; 3] {
    let [low, likely, high] = FRICTION.map(|friction| friction * PI * diameter * length);
    let weight = tube(diameter, wall, length);
    let (more, most) = match (stood, diameter > 0.1) {
        (false, _) => (1.0, 1.0),
        (true, false) => (1.1, 1.3),
        (true, true) => (1.3, 1.5),
    };
    [low + weight, more * likely + weight, most * high + weight]
}

/// 0, half way moving, half way after a stop, moving again, and the end.
const PLACES: [(f64, bool); 5] = [(0.0, false), (40.0, false), (40.0, true), (40.0, false), (LONG, false)];

/// What is driven out bears the friction and weight of what is left of it.
#[test]
fn what_is_driven_out_bears_what_is_left_of_it() {
    let (bare, cased) = (text(""), text(", casing: 406 mm, casing_wall: 8 mm"));
    let after_stem = points(&bare, 0, Method::PipeJacking, Stage::PIPE_AFTER_STEM);
    let casing = points(&cased, 0, Method::PipeJacking, Stage::CASING);
    let after_casing = points(&cased, 0, Method::PipeJacking, Stage::PIPE_AFTER_CASING);
    for (index, (advance, stood)) in PLACES.into_iter().enumerate() {
        for point in [after_stem[index], casing[index], after_casing[index]] {
            assert_eq!(point.advance.value, advance);
        }
        let stem = left(0.1, 0.01, LONG - advance, stood);
        same(after_stem[index].on_stem, stem);
        same(casing[index].on_stem, stem);
        let behind = left(0.406, 0.008, advance, stood);
        same(casing[index].on_casing, [0, 1, 2].map(|level| stem[level] + behind[level]));
        same(after_casing[index].on_casing, left(0.406, 0.008, LONG - advance, stood));
        assert_eq!((after_stem[index].on_casing, after_casing[index].on_stem), (None, None));
        assert_eq!((casing[index].on_pipe, after_casing[index].on_pipe), (None, Some(after_casing[index].on_rig)));
    }
    assert!(points(&cased, 0, Method::PipeJacking, Stage::STEM).iter().all(|point| point.on_casing.is_none()));
}

/// The stem that pulls bears all that the rig does: what is left of it, falling towards the launch pit or rising, the
/// reamer, and what comes behind.
#[test]
fn a_stem_that_pulls_bears_all() {
    let drive = text("");
    // Pulled from the reception pit downhill: weight helps at the low level alone.
    let reaming = points(&drive, 1, Method::Pullback, Stage::REAMING);
    let [_, likely, high] = FRICTION.map(|friction| friction * PI * 0.1 * LONG);
    for (index, (advance, stood)) in PLACES.into_iter().enumerate() {
        assert_eq!(reaming[index].advance.value, advance);
        let on_stem = reaming[index].on_stem.unwrap();
        assert_eq!(on_stem, reaming[index].on_rig);
        // One whole stem lies in the bore all along.
        let (likely, high) = if stood { (1.1 * likely, 1.3 * high) } else { (likely, high) };
        assert_relative_eq!(on_stem.likely.value, likely + 9e3, max_relative = 1e-9);
        assert_relative_eq!(on_stem.high.value, high + 21e3, max_relative = 1e-9);
    }
    let pull = points(&drive, 1, Method::Pullback, Stage::PULLBACK);
    for at in [0.0, 40.0, LONG] {
        let point = pull.iter().find(|point| point.advance.value == at).unwrap();
        let (on_stem, on_pipe) = (point.on_stem.unwrap(), point.on_pipe.unwrap());
        let own = |friction: f64| friction * PI * 0.1 * (LONG - at);
        assert_relative_eq!(on_stem.likely.value, own(5e3) + 9e3 + on_pipe.likely.value, max_relative = 1e-9);
        assert_relative_eq!(on_stem.high.value, own(8e3) + 21e3 + on_pipe.high.value, max_relative = 1e-9);
        let helped = own(2e3) + 5e3 + on_pipe.low.value - tube(0.1, 0.01, LONG - at);
        assert_relative_eq!(on_stem.low.value, helped.max(0.0), max_relative = 1e-9);
    }
}
