//! What one scheme costs, silently and with its working; what reading, resolving and ranking cost.
#![allow(missing_docs, clippy::unwrap_used, reason = "a benchmark that fails should stop")]

mod shared;

use criterion::{Criterion, criterion_group, criterion_main};
use jackpull::{Handbook, Method, assess, choose, explain, read_drive};
use shared::{CLAY, file};
use std::hint::black_box;

const PE: &str = "  - { material: pe100, size: 315 mm, sdr: 11 }\n";

fn bench(c: &mut Criterion) {
    let handbook = Handbook::embedded();
    handbook.parse_all().unwrap();
    for stretches in [1, 6, 100] {
        let text = file(stretches, &format!("{CLAY}{PE}"));
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
