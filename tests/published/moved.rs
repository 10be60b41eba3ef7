//! A check shows no better mark than that of any number of the tables that moves it. Each number below *published* is moved
//! by 3 % and laid over the handbook, and every check of a few drives is made again.

use crate::doubled::{overlay, rows_in_use, scalar, times};
use jackpull::check::Subject;
use jackpull::handbook::Method;
use jackpull::source::Mark;
use jackpull::{Handbook, assess, read_drive};
use serde_yaml::Value;
use std::collections::{HashMap, HashSet};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// Drives that between them make most checks: little is told, so that much is taken from the tables.
const DRIVES: [&str; 11] = [
    include_str!("../../examples/fennbridge_sallow_junction.yaml"),
    include_str!("../../examples/fennbridge_tarn_head.yaml"),
    "service: gravity_sewer\nlength: 60 m\nlaunch: { invert_depth: 4.2 m }\ngrade: 0.5 %\ngroundwater: none\nlubrication: \
     none\nground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }]\nrig: { thrust: 1500 kN, pull: 500 \
     kN }\nsurface: { over: road }\ncrossings: [{ at: 20 m, depth: 1.5 m }]\ndesign_flow: { max: 20 L/s, min: 2 L/s }\npull: { \
     duration: 6 h, pipe_temperature: 20 degC }\ncandidates: [{ material: clay, size: 10 in }, { material: pe100, size: 315 \
     mm, sdr: 11 }, { material: clay, size: 12 in, casing: 457 mm }]\n",
    "service: gravity_sewer\nlength: 80 m\nlaunch: { invert_depth: 4.2 m }\nreception: { invert_depth: 3.8 m }\ngroundwater: \
     2 m\nlubrication: logged\nground: [{ class: medium_to_dense_sand, spt_n: 25, largest_stone: 30 mm }]\nrig: { thrust: \
     4000 kN, pull: 500 kN, auger_torque: { low: 1 kN*m, likely: 2 kN*m, high: 3 kN*m }, torque: 8 kN*m }\ncandidates: [{ \
     material: concrete, size: 600 mm, strength: 50 MPa }, { material: clay, size: 15 in }, { material: steel, size: 24 in, \
     wall: 9.5 mm, steel_grade: a139_b }]\n",
    "service: pressure_main\nlength: 120 m\nlaunch: { invert_depth: 2.2 m }\ngrade: 0.5 %\ngroundwater: none\nlubrication: \
     metered\nground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }]\nrig: { thrust: 300 kN, pull: \
     200 kN }\nsurface: { over: road }\ncrossings: []\ncandidates: [{ material: pe100, size: 225 mm, sdr: 11 }, { material: \
     steel, size: 8 in, wall: 8.2 mm, steel_grade: a139_b }, { material: pvc_fused, size: 8 in, sdr: 18, joint_factor: 1 \
     }]\npull: { duration: 5 h, pipe_temperature: 20 degC }\npilot: drilled\n",
    "service: pressure_main\nlength: 80 m\nlaunch: { invert_depth: 3.2 m }\ngrade: 0.5 %\ngroundwater: 1 m\nlubrication: \
     none\nground: [{ class: medium_to_dense_sand, spt_n: 14, largest_stone: 20 mm }]\nrig: { thrust: 400 kN, pull: 300 kN \
     }\nsurface: { over: road }\ncandidates: [{ material: ductile_iron, size: 8 in, wall: 7 mm, joint_pull: 250 kN, \
     joint_deflection: 3 deg, pipe_length: 6 m }, { material: pe100, size: 315 mm, sdr: 17 }]\npull: { duration: 6 h, \
     pipe_temperature: 20 degC }\n",
    "service: casing\nlength: 30 m\nlaunch: { invert_depth: 4.3 m }\ngrade: 0.5 %\ngroundwater: 6 m\nlubrication: \
     metered\nground: [{ class: firm_to_very_stiff_clay, largest_stone: 20 mm }]\nrig: { thrust: 2000 kN, pull: 500 kN, torque: 40 kN*m \
     }\nsurface: { over: railway }\ncrossings: []\ncandidates: [{ material: steel, size: 24 in, wall: 12.7 mm, steel_grade: \
     a139_b }]\n",
    "service: gravity_sewer\nlength: 50 m\nlaunch: { invert_depth: 5 m, space: { length: 5 m, width: 3.5 m } }\ngrade: 0.6 \
     %\ngroundwater: 3 m\nlubrication: metered\nground: [{ class: silt, spt_n: 10, largest_stone: 0 mm }]\nrig: { thrust: \
     1500 kN, pull: 500 kN, stroke: 1 m }\nspoil: slurry\ncandidates: [{ material: grp, size: 400 mm, outside_diameter: 427 \
     mm, wall: 25 mm, strength: 90 MPa, end_bearing_area: 0.02 m2, weight: 0.6 kN/m }, { material: polymer_concrete, size: \
     400 mm, outside_diameter: 550 mm, wall: 70 mm, strength: 90 MPa, end_bearing_area: 0.085 m2 }]\n",
    "service: gravity_sewer\nlength: 40 m\nlaunch: { invert_depth: 4 m }\ngrade: 1 %\ngroundwater: 1 m\nlubrication: \
     none\nground: [{ class: soft_clay, spt_n: 3, largest_stone: 0 mm }]\nrig: { thrust: 1000 kN, pull: 500 kN \
     }\ncandidates: [{ material: clay, size: 10 in }, { material: pe4710, size: 10 in, sdr: 11 }]\npull: { duration: 12 h, \
     pipe_temperature: 20 degC }\nstem: { outside_diameter: 90 mm, wall: 10 mm }\nannulus: { filling: grouted }\n",
    "service: gravity_sewer\nlength: 60 m\nlaunch: { invert_depth: 4.2 m }\ngrade: 0.5 %\ngroundwater: none\nlubrication: \
     metered\nground: [{ class: gravel, spt_n: 30, largest_stone: 30 mm }]\nrig: { thrust: 1500 kN, pull: 500 kN \
     }\nspoil: open_edge\ncutting_edge: 20 mm\nstem: { outside_diameter: none }\ncandidates: [{ material: concrete, size: 1000 \
     mm, strength: 40 MPa }]\nsteering: { curve_radius: 300 m }\n",
    "service: pressure_main\nlength: 100 m\nlaunch: { invert_depth: 2.5 m }\ngrade: 0.5 %\ngroundwater: 4 m\nlubrication: \
     none\nground: [{ class: weak_rock }]\nrig: { thrust: 600 kN, pull: 500 kN }\nsurface: { over: open }\ncrossings: \
     []\npilot: drilled\ncandidates: [{ material: pvc_restrained, size: 8 in, sdr: 18, joint_pull: 60 kN, joint_deflection: 2 deg, \
     pipe_length: 6 m, joint_diameter: 300 mm }]\npull: { duration: 6 h, pipe_temperature: 20 degC, push_assist: { force: 20 \
     kN, free_length: 3 m } }\n",
];

/// What a check uses of its limit, likely and high, and how it comes out, by drive, pipe, method and subject.
type Made = HashMap<(usize, usize, bool, Subject), ([Option<f64>; 2], &'static str)>;

/// A drive of a size that the handbook no longer has is not there.
fn made(handbook: &Arc<Handbook>) -> Made {
    let mut made = Made::new();
    for (place, text) in DRIVES.iter().enumerate() {
        let Ok(drive) = read_drive(text, handbook) else { continue };
        for (index, pipe) in drive.candidates().iter().enumerate() {
            for method in [Method::PipeJacking, Method::Pullback] {
                for check in assess(&drive, pipe, method).checks.iter() {
                    let used = [check.likely_utilisation(), check.utilisation()];
                    let jacked = method == Method::PipeJacking;
                    made.insert((place, index, jacked, check.subject), (used, check.verdict.label()));
                }
            }
        }
    }
    made
}

/// Subjects of the checks that a handbook makes otherwise than another.
fn moved(before: &Made, after: &Made) -> HashSet<Subject> {
    let near = |(one, other): (&Option<f64>, &Option<f64>)| match (one, other) {
        (Some(one), Some(other)) => (one - other).abs() <= 1e-9 * one.abs().max(1e-9),
        (one, other) => one == other,
    };
    let same = |one: &([Option<f64>; 2], &str), other: &([Option<f64>; 2], &str)| {
        one.1 == other.1 && one.0.iter().zip(&other.0).all(near)
    };
    let read: HashSet<usize> = after.keys().map(|key| key.0).collect();
    let there = before.iter().filter(|(key, _)| read.contains(&key.0));
    let differs = there.filter(|(key, was)| after.get(*key).is_none_or(|is| !same(was, is)));
    differs.map(|(key, _)| key.3).collect()
}

/// A row of a table with every number 3 % greater, and its mark.
struct Row {
    name: String,
    mark: Mark,
    overlay: String,
}

fn rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for table in Handbook::TABLES.iter().filter(|table| **table != "sources") {
        for (key, mark, value) in rows_in_use(table) {
            let more = |value: &Value| scalar(value).as_deref().and_then(|text| times(text, 1.03)).map(Value::from);
            let changed = match &value {
                Value::Mapping(columns) => {
                    let column =
                        |(name, value): (&Value, &Value)| (name.clone(), more(value).unwrap_or_else(|| value.clone()));
                    Value::Mapping(columns.iter().map(column).collect())
                }
                value => more(value).unwrap_or_else(|| value.clone()),
            };
            if mark != Mark::Published && changed != value {
                rows.push(Row { name: format!("{table}/{key}"), mark, overlay: overlay(table, &key, changed) });
            }
        }
    }
    rows
}

/// Of every subject the weakest mark that moves it, and the row.
fn weakest() -> HashMap<Subject, (Mark, String)> {
    let (before, rows, next) = (made(&Handbook::embedded()), rows(), AtomicUsize::new(0));
    let work = || {
        let mut found: Vec<(Subject, Mark, String)> = Vec::new();
        while let Some(row) = rows.get(next.fetch_add(1, Ordering::Relaxed)) {
            // What the loader holds for no value that can be moves nothing.
            let Ok(handbook) = Handbook::embedded().with_overlay("moved", &row.overlay) else { continue };
            let moved = moved(&before, &made(&Arc::new(handbook)));
            found.extend(moved.into_iter().map(|subject| (subject, row.mark, row.name.clone())));
        }
        found
    };
    let threads = thread::available_parallelism().map_or(1, usize::from);
    thread::scope(|scope| {
        let workers: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        let mut all: HashMap<Subject, (Mark, String)> = HashMap::new();
        for (subject, mark, row) in workers.into_iter().flat_map(|worker| worker.join().unwrap()) {
            let known = all.entry(subject).or_insert_with(|| (mark, row.clone()));
            if known.0.weaker(mark) != known.0 {
                *known = (mark, row);
            }
        }
        all
    })
}

#[test]
fn no_mark_flatters() {
    let mut flattered = Vec::new();
    for (subject, (mark, row)) in weakest() {
        let shown = subject.rests_on();
        if shown.weaker(mark) != shown {
            flattered.push(format!("{subject:?} shows {shown:?} and is moved by {row}: {mark:?}"));
        }
    }
    flattered.sort();
    assert!(flattered.is_empty(), "{flattered:#?}");
}

/// Every drive is read, and among them they make most checks.
#[test]
fn the_drives_make_most_checks() {
    for (place, text) in DRIVES.iter().enumerate() {
        assert!(read_drive(text, &Handbook::embedded()).is_ok(), "{place}");
    }
    let made: HashSet<Subject> = made(&Handbook::embedded()).into_keys().map(|key| key.3).collect();
    let unmade: Vec<&Subject> = Subject::ALL.iter().filter(|subject| !made.contains(subject)).collect();
    assert!(unmade.len() <= 22, "{unmade:?}");
}
