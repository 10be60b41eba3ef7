//! The forces of a jacked pipe against the same sums in bare numbers: what types, records and range checks cost.
#![allow(missing_docs, clippy::unwrap_used, clippy::indexing_slicing, reason = "a benchmark that fails should stop")]

use criterion::{Criterion, criterion_group, criterion_main};
use jackpull::law::Law;
use jackpull::laws::soil::SiloStress;
use jackpull::laws::thrust::FrictionForce;
use jackpull::quantity::{Band, Length, Measure, Pressure, Ratio, UnitWeight};
use jackpull::{Handbook, Method, assess, read_drive};
use std::f64::consts::PI;
use std::fmt::Write as _;
use std::hint::black_box;

const LENGTH: f64 = 60.0;
const STEM: f64 = 0.1;
const SLOPE: f64 = 0.004;

fn file(stretches: usize) -> String {
    let mut text = String::from(
        "service: gravity_sewer\nlength: 60 m\nlaunch: { invert_depth: 4.2 m }\ngrade: 0.4 %\ngroundwater: none\n\
         lubrication: metered\nrig: { thrust: 900 kN, pull: 500 kN }\nstem: { outside_diameter: 100 mm }\n\
         candidates:\n  - { material: clay, size: 10 in }\nground:\n",
    );
    for stretch in 1..=stretches {
        let to = LENGTH * stretch as f64 / stretches as f64;
        writeln!(
            text,
            "  - {{ to: {to} m, class: silt, spt_n: 12, largest_stone: 0 mm, \
             unit_friction: {{ low: 2 kPa, likely: 5 kPa, high: 9 kPa }} }}"
        )
        .unwrap();
    }
    text
}

/// A stretch in bare numbers: extent, low, likely and high unit friction, blow count.
type Bare = (f64, f64, [f64; 3], f64);

struct BarePipe {
    diameter: f64,
    weight: f64,
    face: [f64; 3],
    least: [f64; 3],
    cone: f64,
}

/// Greatest force of the stem stage and of the pipe stage, at three levels.
fn bare(stretches: &[Bare], pipe: &BarePipe) -> [[f64; 3]; 2] {
    let friction = |tau: f64, diameter: f64, length: f64| tau * (PI * diameter * length);
    let mut stem = [0.0_f64; 3];
    let mut own = [0.0; 3];
    for (from, to, tau, blows) in stretches {
        let tip = pipe.cone * blows * (PI / 4.0 * STEM * STEM);
        for level in 0..3 {
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

fn forces(c: &mut Criterion) {
    let handbook = Handbook::embedded();
    handbook.parse_all().unwrap();
    let row = handbook.clay_pipe().unwrap().find(|row| (row.size.value.si() - 0.254).abs() < 1e-6).unwrap().value;
    let face = handbook.face().unwrap().get("auger").unwrap().value;
    let pipe = BarePipe {
        diameter: row.outside_diameter.value.si(),
        weight: row.weight.value.si(),
        face: [face.low.value.si(), face.likely.value.si(), face.high.value.si()],
        least: [face.least_low.value.si(), face.least_likely.value.si(), face.least_high.value.si()],
        cone: handbook.pressure("tip.cone_per_blow").unwrap().value.si(),
    };
    for count in [6, 100] {
        let drive = read_drive(&file(count), &handbook).unwrap();
        let step = LENGTH / count as f64;
        let stretches: Vec<Bare> =
            (0..count).map(|i| (step * i as f64, step * (i + 1) as f64, [2e3, 5e3, 9e3], 12.0)).collect();
        let [clay] = drive.candidates() else { unreachable!() };
        let ours: Band<f64> = assess(&drive, clay, Method::PipeJacking).force.unwrap().map(|force| force.value);
        let [_, theirs] = bare(&stretches, &pipe);
        for (a, b) in [ours.low, ours.likely, ours.high].iter().zip(theirs) {
            assert!((a / b - 1.0).abs() < 1e-9, "the two sums differ: {a} and {b}");
        }
        c.bench_function(&format!("assess jacking, {count} stretches, as shipped"), |b| {
            b.iter(|| assess(black_box(&drive), black_box(clay), Method::PipeJacking));
        });
        c.bench_function(&format!("forces of jacking, {count} stretches, bare numbers"), |b| {
            b.iter(|| bare(black_box(&stretches), black_box(&pipe)));
        });
    }
}

fn laws(c: &mut Criterion) {
    let (tau, diameter, length) = (5e3, 0.36, 10.0);
    c.bench_function("friction force, law", |b| {
        b.iter(|| {
            FrictionForce {
                unit_friction: Pressure::from_si(black_box(tau)),
                outside_diameter: Length::from_si(black_box(diameter)),
                length: Length::from_si(black_box(length)),
            }
            .value()
        });
    });
    c.bench_function("friction force, bare", |b| {
        b.iter(|| black_box(tau) * (PI * black_box(diameter) * black_box(length)));
    });
    c.bench_function("silo pressure, law", |b| {
        b.iter(|| {
            SiloStress {
                unit_weight: UnitWeight::from_si(black_box(19e3)),
                width: Length::from_si(black_box(1.2)),
                depth: Length::from_si(black_box(5.0)),
                lateral_friction: Ratio::from_si(black_box(0.6)),
                cohesion: Pressure::default(),
                surcharge: Pressure::from_si(black_box(10e3)),
            }
            .value()
        });
    });
    c.bench_function("silo pressure, bare", |b| {
        b.iter(|| {
            let (gamma, width, depth, k, load) =
                (black_box(19e3), black_box(1.2), black_box(5.0), black_box(0.6), black_box(10e3));
            let x: f64 = 2.0 * k * (depth / width);
            (gamma * depth * (-(-x).exp_m1() / x) + load * (-x).exp()).max(0.0)
        });
    });
}

criterion_group!(benches, laws, forces);
criterion_main!(benches);
