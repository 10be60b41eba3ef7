//! What types, records, range checks and whole drives cost. Prints a line each:
//!
//! - `ratio NAME VALUE`, from interleaved pairs;
//! - `time NAME VALUE UNIT`, of this machine;
//! - `input NAME VALUE...`, what the bare sums are made of, for the same sums in another language.
#![allow(missing_docs, clippy::unwrap_used, clippy::indexing_slicing, clippy::print_stdout, reason = "a benchmark")]

mod shared;

use jackpull::law::Law;
use jackpull::laws::soil::SiloStress;
use jackpull::laws::thrust::{CurveFactor, FaceForce, FrictionForce, WeightAlongGrade};
use jackpull::method::pushes;
use jackpull::quantity::{Angle, Force, Length, LineLoad, Measure, Pressure, Ratio, UnitWeight};
use jackpull::{Handbook, Method, assess, choose, explain, read_drive};
use shared::{BLOWS, CLAY, FRICTION, LENGTH, SLOPE, file};
use std::f64::consts::PI;
use std::hint::black_box;
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::time::Instant;

const STEM: f64 = 0.1;
/// Head of the stem.
const HEAD: f64 = 0.12;

/// Seconds of one call, the mean of so many.
fn seconds<T>(calls: u32, mut work: impl FnMut() -> T) -> f64 {
    let begun = Instant::now();
    for _ in 0..calls {
        black_box(work());
    }
    begun.elapsed().as_secs_f64() / f64::from(calls)
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    values[values.len() / 2]
}

/// Calls that take some milliseconds, so that the clock counts for nothing.
fn calls<T>(mut work: impl FnMut() -> T) -> u32 {
    let mut calls = 1;
    while calls < 1 << 24 && seconds(calls, &mut work) * f64::from(calls) < 3e-3 {
        calls *= 2;
    }
    calls
}

/// Medians of the time of one, of another, and of what the one takes over the other next to it.
fn pair<A, B>(mut one: impl FnMut() -> A, mut other: impl FnMut() -> B) -> [f64; 3] {
    let (of_one, of_other) = (calls(&mut one), calls(&mut other));
    let pairs: Vec<[f64; 2]> = (0..41).map(|_| [seconds(of_one, &mut one), seconds(of_other, &mut other)]).collect();
    let each = |of: fn(&[f64; 2]) -> f64| median(pairs.iter().map(of).collect());
    [each(|pair| pair[0]), each(|pair| pair[1]), each(|pair| pair[0] / pair[1])]
}

fn ratio(name: &str, value: f64) {
    println!("ratio {name} {value:.3}");
}

fn law<L: Law>(name: &str, typed: impl Fn() -> L, bare: impl Fn() -> f64) {
    ratio(&format!("law_{name}_typed_over_bare"), pair(|| typed().value(), bare)[2]);
}

fn laws() {
    let b = black_box::<f64>;
    let (tau, diameter, length) = (5e3, 0.36, 10.0);
    let typed = || FrictionForce {
        unit_friction: Pressure::from_si(b(tau)),
        outside_diameter: Length::from_si(b(diameter)),
        length: Length::from_si(b(length)),
    };
    law("friction", typed, || b(tau) * (PI * b(diameter) * b(length)));
    let (gamma, width, depth, k, load) = (19e3, 1.2, 5.0, 0.6, 10e3);
    let typed = || SiloStress {
        unit_weight: UnitWeight::from_si(b(gamma)),
        width: Length::from_si(b(width)),
        depth: Length::from_si(b(depth)),
        lateral_friction: Ratio::from_si(b(k)),
        cohesion: Pressure::default(),
        surcharge: Pressure::from_si(b(load)),
    };
    let bare = || {
        let (gamma, width, depth, k, load) = (b(gamma), b(width), b(depth), b(k), b(load));
        let x = 2.0 * k * (depth / width);
        (gamma * depth * (-(-x).exp_m1() / x) + load * (-x).exp()).max(0.0)
    };
    law("silo", typed, bare);
    let (weight, rise) = (950.0, 0.004);
    let typed = || WeightAlongGrade {
        pipe_weight: LineLoad::from_si(b(weight)),
        length: Length::from_si(b(length)),
        rise: Angle::from_si(b(rise)),
    };
    law("weight", typed, || (b(weight) * b(length) * b(rise).sin()).max(0.0));
    let (pressure, cut, guided, least) = (75e3, 0.34, 0.1, 15e3);
    let typed = || FaceForce {
        pressure: Pressure::from_si(b(pressure)),
        cut_diameter: Length::from_si(b(cut)),
        guided_diameter: Length::from_si(b(guided)),
        least: Force::from_si(b(least)),
    };
    let bare = || {
        let (cut, guided) = (b(cut), b(guided));
        (b(pressure) * (PI / 4.0 * (cut * cut - guided * guided))).max(b(least))
    };
    law("face", typed, bare);
    let (mu, radius) = (0.3, 200.0);
    let typed = || CurveFactor {
        friction: Ratio::from_si(b(mu)),
        length: Length::from_si(b(length)),
        radius: Length::from_si(b(radius)),
    };
    law("curve", typed, || (b(mu) * (b(length) / b(radius))).exp());
}

/// So many PE pipes, no more than 48.
fn pe(count: usize) -> String {
    let sizes = [315, 280, 250, 225, 200, 180, 160, 140, 125, 110, 355, 400];
    let each = ["11", "17", "13.6", "9"].iter().flat_map(|sdr| sizes.iter().map(move |size| (size, sdr)));
    each.take(count).map(|(size, sdr)| format!("  - {{ material: pe100, size: {size} mm, sdr: {sdr} }}\n")).collect()
}

/// A stretch in bare numbers: extent, low, likely and high unit friction, blow count.
type Bare = (f64, f64, [f64; 3], f64);

struct BarePipe {
    diameter: f64,
    weight: f64,
    face: [f64; 3],
    least: [f64; 3],
    cone: [f64; 3],
}

/// Greatest force of the stem stage and of the pipe stage, at three levels.
fn bare(stretches: &[Bare], pipe: &BarePipe) -> [[f64; 3]; 2] {
    let friction = |tau: f64, diameter: f64, length: f64| tau * (PI * diameter * length);
    let mut stem = [0.0_f64; 3];
    let mut own = [0.0; 3];
    for (from, to, tau, blows) in stretches {
        for level in 0..3 {
            let tip = pipe.cone[level] * blows * (PI / 4.0 * HEAD * HEAD);
            stem[level] = stem[level].max(own[level] + tip);
            own[level] += friction(tau[level], STEM, to - from);
            stem[level] = stem[level].max(own[level] + tip);
        }
    }
    let ring = PI / 4.0 * (pipe.diameter * pipe.diameter - STEM * STEM);
    let mut ahead = own;
    let mut own = [0.0; 3];
    let mut jacking = [0.0_f64; 3];
    let climb = SLOPE.atan().sin();
    for (from, to, tau, _) in stretches {
        for level in 0..3 {
            let face = (pipe.face[level] * ring).max(pipe.least[level]);
            jacking[level] = jacking[level].max(own[level] + ahead[level] + face);
            own[level] += friction(tau[level], pipe.diameter, to - from) + (pipe.weight * (to - from) * climb).max(0.0);
            ahead[level] = (ahead[level] - friction(tau[level], STEM, to - from)).max(0.0);
            jacking[level] = jacking[level].max(own[level] + ahead[level] + face);
        }
    }
    [stem, jacking]
}

/// Forces alone, the same to a billionth before they are timed.
fn forces(handbook: &Arc<Handbook>) {
    let row = handbook.clay_pipe().unwrap().find(|row| (row.size.value.si() - 0.254).abs() < 1e-6).unwrap().value;
    let face = handbook.face().unwrap().get("auger").unwrap().value;
    let pipe = BarePipe {
        diameter: row.outside_diameter.value.si(),
        weight: row.weight.value.si(),
        face: [face.low.value.si(), face.likely.value.si(), face.high.value.si()],
        least: [face.least_low.value.si(), face.least_likely.value.si(), face.least_high.value.si()],
        cone: ["tip.cone_per_blow_low", "tip.cone_per_blow", "tip.cone_per_blow_high"]
            .map(|key| handbook.pressure(key).unwrap().value.si()),
    };
    let told = |name: &str, values: &[f64]| {
        println!("input {name} {}", values.iter().map(|value| format!("{value:?}")).collect::<Vec<_>>().join(" "));
    };
    told("pipe", &[pipe.diameter, pipe.weight]);
    told("cone", &pipe.cone);
    told("face", &pipe.face);
    told("least", &pipe.least);
    for count in [6, 100] {
        let drive = read_drive(&file(count, CLAY), handbook).unwrap();
        let step = LENGTH / count as f64;
        let stretches: Vec<Bare> =
            (0..count).map(|i| (step * i as f64, step * (i + 1) as f64, FRICTION, BLOWS)).collect();
        let [clay] = drive.candidates() else { unreachable!() };
        let ours = || {
            let mut all = pushes(black_box(&drive), black_box(clay)).map(|(_, force)| force.map(|level| level.si()));
            [all.next(), all.next()].map(|force| force.map_or([0.0; 3], |force| [force.low, force.likely, force.high]))
        };
        let theirs = || bare(black_box(&stretches), black_box(&pipe));
        for (a, b) in ours().iter().flatten().zip(theirs().iter().flatten()) {
            assert!((a / b - 1.0).abs() < 1e-9, "the two sums differ: {a} and {b}");
        }
        let [time, _, over] = pair(ours, theirs);
        told(&format!("stem_{count}"), &ours()[0]);
        told(&format!("jacking_{count}"), &ours()[1]);
        println!("time forces_{count} {:.1} ns", time * 1e9);
        ratio(&format!("forces_{count}_ours_over_bare"), over);
    }
}

/// Every check, with its working against without.
fn assessing(handbook: &Arc<Handbook>) {
    for count in [1, 6, 100] {
        let drive = read_drive(&file(count, &format!("{CLAY}{}", pe(1))), handbook).unwrap();
        let [clay, pe] = drive.candidates() else { unreachable!() };
        for (name, pipe, method) in [("jacking", clay, Method::PipeJacking), ("pullback", pe, Method::Pullback)] {
            let (drive, pipe) = (black_box(&drive), black_box(pipe));
            let [_, assessed, over] = pair(|| explain(drive, pipe, method), || assess(drive, pipe, method));
            println!("time assess_{name}_{count} {:.2} us", assessed * 1e6);
            ratio(&format!("explain_over_assess_{name}_{count}"), over);
            let forces = || pushes(drive, clay).for_each(|force| _ = black_box(force));
            ratio(&format!("assess_{name}_over_forces_{count}"), pair(|| assess(drive, pipe, method), forces)[2]);
        }
    }
}

/// The power of the number by which time grows: 1 where it grows in step.
fn growth(name: &str, times: &[(usize, f64)]) {
    let logs: Vec<[f64; 2]> = times.iter().map(|(count, time)| [(*count as f64).ln(), time.ln()]).collect();
    let mean = |of: usize| logs.iter().map(|log| log[of]).sum::<f64>() / logs.len() as f64;
    let (x, y) = (mean(0), mean(1));
    let shared: f64 = logs.iter().map(|log| (log[0] - x) * (log[1] - y)).sum();
    let own: f64 = logs.iter().map(|log| (log[0] - x).powi(2)).sum();
    ratio(&format!("growth_with_{name}"), shared / own);
}

/// Read, resolve and rank, as the number of stretches and of pipes grows to what one file may have.
fn ranking(handbook: &Arc<Handbook>) {
    let time = |text: &str| {
        let rank = || choose(&read_drive(black_box(text), handbook).unwrap()).unwrap();
        median((0..9).map(|_| seconds(8, rank)).collect())
    };
    let text = file(6, &pe(12));
    println!("time read_to_ranked_12_pipes_6_stretches {:.3} ms", time(&text) * 1e3);
    let drive = read_drive(&text, handbook).unwrap();
    let read = || choose(&read_drive(black_box(&text), handbook).unwrap()).unwrap();
    ratio("read_to_ranked_over_ranked", pair(read, || choose(black_box(&drive)).unwrap())[2]);
    let of = |counts: [usize; 4], text: &dyn Fn(usize) -> String| counts.map(|count| (count, time(&text(count))));
    growth("stretches", &of([40, 80, 160, 300], &|count| file(count, CLAY)));
    growth("pipes", &of([6, 12, 24, 48], &|count| file(6, &pe(count))));
}

/// The command from its start to its answer, over a start without one, and what a further drive adds.
fn command() {
    let start = |command: &mut Command| {
        let begun = Instant::now();
        command.stdout(Stdio::null()).status().unwrap();
        begun.elapsed().as_secs_f64()
    };
    let run = |format: &str, file: &str, count: usize| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_jackpull"));
        start(command.args(["assess", "--format", format]).args(vec![file; count]))
    };
    let idle = || start(Command::new(env!("CARGO_BIN_EXE_jackpull")).arg("template"));
    for name in ["mill_lane", "quarry_road"] {
        let file = format!("examples/fennbridge_{name}.yaml");
        for format in ["csv", "text"] {
            let pairs: Vec<[f64; 2]> = (0..15).map(|_| [run(format, &file, 1), run(format, &file, 11)]).collect();
            let first = median(pairs.iter().map(|pair| pair[0]).collect());
            println!("time start_to_{format}_{name} {:.1} ms", first * 1e3);
            ratio(&format!("{format}_over_idle_{name}"), first / median((0..15).map(|_| idle()).collect()));
            let further = pairs.iter().map(|pair| (pair[1] / pair[0] - 1.0) / 10.0).collect();
            ratio(&format!("further_over_first_{format}_{name}"), median(further));
        }
    }
    let file = "examples/fennbridge_mill_lane.yaml";
    growth(
        "files",
        &[100, 1_000, 10_000].map(|count| (count, median((0..3).map(|_| run("csv", file, count)).collect()))),
    );
}

fn main() {
    let handbook = Handbook::embedded();
    handbook.parse_all().unwrap();
    laws();
    forces(&handbook);
    assessing(&handbook);
    ranking(&handbook);
    command();
}
