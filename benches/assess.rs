//! What one scheme costs, silently and with its working; what reading, resolving and ranking cost.
#![allow(missing_docs, clippy::unwrap_used, reason = "a benchmark that fails should stop")]

use criterion::{Criterion, criterion_group, criterion_main};
use jackpull::{Handbook, Method, assess, choose, explain, read_drive};
use std::fmt::Write as _;
use std::hint::black_box;

/// A drive of `stretches` stretches and a clay and a PE pipe.
fn file(stretches: usize) -> String {
    let mut text = String::from(
        "service: gravity_sewer\nlength: 60 m\nlaunch: { invert_depth: 4.2 m }\ngrade: 0.4 %\ngroundwater: none\n\
         lubrication: metered\nrig: { thrust: 900 kN, pull: 500 kN }\n\
         pull: { duration: 6 h, pipe_temperature: 25 degC }\n\
         candidates:\n  - { material: clay, size: 10 in }\n  - { material: pe100, size: 315 mm, sdr: 11 }\nground:\n",
    );
    for stretch in 1..=stretches {
        let to = 60.0 * stretch as f64 / stretches as f64;
        writeln!(text, "  - {{ to: {to} m, class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }}").unwrap();
    }
    text
}

fn bench(c: &mut Criterion) {
    let handbook = Handbook::embedded();
    handbook.parse_all().unwrap();
    for stretches in [1, 6, 100] {
        let text = file(stretches);
        let drive = read_drive(&text, &handbook).unwrap();
        let [clay, pe] = drive.candidates() else { unreachable!() };
        c.bench_function(&format!("assess jacking, {stretches} stretches"), |b| {
            b.iter(|| assess(black_box(&drive), black_box(clay), Method::PipeJacking));
        });
        c.bench_function(&format!("assess pullback, {stretches} stretches"), |b| {
            b.iter(|| assess(black_box(&drive), black_box(pe), Method::Pullback));
        });
        c.bench_function(&format!("explain pullback, {stretches} stretches"), |b| {
            b.iter(|| explain(black_box(&drive), black_box(pe), Method::Pullback));
        });
        c.bench_function(&format!("choose, {stretches} stretches"), |b| b.iter(|| choose(black_box(&drive)).unwrap()));
        c.bench_function(&format!("read and choose, {stretches} stretches"), |b| {
            b.iter(|| choose(&read_drive(black_box(&text), &handbook).unwrap()).unwrap());
        });
    }
}

criterion_group!(benches, bench);
criterion_main!(benches);
