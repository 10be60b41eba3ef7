//! Properties of the forces and verdicts, whatever the numbers are.

use crate::drives::{drive, text};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Subject, Verdict};
use jackpull::method::{Stage, StageProfile};
use jackpull::quantity::{Band, Force, Role};
use jackpull::{Drive, Method, Scheme, assess};
use proptest::prelude::*;

/// A jacked pipe of a given diameter with given friction everywhere and nothing at the face.
fn plain(length: &str, diameter: &str, friction: [f64; 3], ground: &str) -> String {
    let [low, likely, high] = friction;
    let band = format!("unit_friction: {{ low: {low} kPa, likely: {likely} kPa, high: {high} kPa }}");
    bare(length, diameter, &ground.edit_all("BAND", &band))
}

/// The same with ground that has its friction in it.
fn bare(length: &str, diameter: &str, ground: &str) -> String {
    format!(
        "service: gravity_sewer\nlength: {length}\nlaunch: {{ invert_depth: 6 m }}\ngrade: 0 %\ngroundwater: none\n\
         lubrication: none\nwork: {{ round_the_clock: true }}\nground:\n{ground}\nrig: {{ thrust: 5 MN, pull: 1 MN }}\n\
         stem: {{ outside_diameter: none }}\nface: {{ low: 0 kN, likely: 0 kN, high: 0 kN }}\ncandidates:\n\
         \x20 - {{ material: clay, size: {diameter}, outside_diameter: {diameter}, end_bearing_area: 0.03 m2 }}\n"
    )
}

fn clay() -> &'static str {
    "  - { class: firm_to_very_stiff_clay, spt_n: 10, largest_stone: 0 mm, BAND }"
}

fn jacked(drive: &Drive) -> Scheme {
    assess(drive, &drive.candidates()[0], Method::PipeJacking)
}

fn force(text: &str) -> Band<f64> {
    jacked(&drive(text)).force.unwrap().map(|force| force.value)
}

proptest! {
    // A failing case is printed whole; a file of seeds beside the tests is not wanted.
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn jacking_force_never_falls_with_length_friction_or_diameter(
        length in 5.0..200.0_f64, more in 1.0..2.0_f64, diameter in 0.25..0.9_f64, friction in 0.5..30.0_f64,
    ) {
        let at = |length: f64, diameter: f64, friction: f64| {
            let text = plain(&format!("{length} m"), &format!("{diameter} m"), [friction; 3], clay());
            force(&text).high
        };
        let base = at(length, diameter, friction);
        prop_assert!(base > 0.0);
        prop_assert!(at(length * more, diameter, friction) >= base);
        prop_assert!(at(length, diameter * more, friction) >= base);
        prop_assert!(at(length, diameter, friction * more) >= base);
    }

    #[test]
    fn splitting_a_stretch_changes_nothing(length in 10.0..150.0_f64, share in 0.1..0.9_f64, friction in 0.5..30.0_f64) {
        let whole = force(&plain(&format!("{length} m"), "0.4 m", [friction; 3], clay())).high;
        let cut = length * share;
        let two = format!(
            "  - {{ to: {cut} m, class: silt, spt_n: 10, largest_stone: 0 mm, BAND }}\n{}", clay()
        );
        let split = force(&plain(&format!("{length} m"), "0.4 m", [friction; 3], &two)).high;
        prop_assert!((split / whole - 1.0).abs() < 1e-12, "{whole} and {split}");
    }

    #[test]
    fn low_is_at_most_likely_is_at_most_high(
        length in 5.0..120.0_f64, duration in 1.0..20.0_f64, grade in -8.0..8.0_f64, temperature in 2.0..38.0_f64,
    ) {
        let text = text(|text| {
            text.edit("length: 60 m", &format!("length: {length} m"))
                .edit("reception: { invert_depth: 3.96 m }", &format!("grade: {grade} %"))
                .edit("launch: { invert_depth: 4.20 m }", "launch: { invert_depth: 15 m }")
                .edit("to: 25 m", &format!("to: {} m", 0.4 * length))
                .edit("to: 40 m", &format!("to: {} m", 0.7 * length))
                .edit("to: 60 m", &format!("to: {length} m"))
                .edit("duration: 6 h", &format!("duration: {duration} h"))
                .edit("25 degC", &format!("{temperature} degC"))
        });
        let drive = drive(&text);
        for pipe in drive.candidates() {
            for method in [Method::PipeJacking, Method::Pullback] {
                let scheme = assess(&drive, pipe, method);
                for band in [scheme.force, scheme.rig_force].into_iter().flatten() {
                    prop_assert!(band.low <= band.likely && band.likely <= band.high, "{band:?}");
                }
            }
        }
    }

    /// The same drive said in SI and in US units.
    #[test]
    fn unit_systems_agree(length in 20.0..90.0_f64, depth in 3.0..9.0_f64, hours in 1.0..20.0_f64) {
        let si = text(|text| {
            text.edit("length: 60 m", &format!("length: {length} m"))
                .edit("to: 60 m", &format!("to: {length} m"))
                .edit("to: 25 m", &format!("to: {} m", length / 4.0))
                .edit("to: 40 m", &format!("to: {} m", length / 2.0))
                .edit("launch: { invert_depth: 4.20 m }", &format!("launch: {{ invert_depth: {depth} m }}"))
                .edit("duration: 6 h", &format!("duration: {hours} h"))
        });
        let foot = 0.3048;
        let us = text(|text| {
            text.edit("length: 60 m", &format!("length: {} ft", length / foot))
                .edit("to: 60 m", &format!("to: {} ft", length / foot))
                .edit("to: 25 m", &format!("to: {} ft", length / 4.0 / foot))
                .edit("to: 40 m", &format!("to: {} ft", length / 2.0 / foot))
                .edit("launch: { invert_depth: 4.20 m }", &format!("launch: {{ invert_depth: {} ft }}", depth / foot))
                .edit("duration: 6 h", &format!("duration: {} min", hours * 60.0))
                .edit("900 kN", &format!("{} lbf", 900e3 / 4.448_221_615_260_5))
                .edit("25 degC", "77 degF")
                .edit("315 mm", &format!("{} in", 0.315 / 0.0254))
        });
        let (si, us) = (drive(&si), drive(&us));
        for (one, other) in si.candidates().iter().zip(us.candidates()) {
            for method in [Method::PipeJacking, Method::Pullback] {
                let (one, other) = (assess(&si, one, method), assess(&us, other, method));
                for (a, b) in one.checks.iter().zip(other.checks.iter()) {
                    prop_assert_eq!(a.verdict, b.verdict);
                    if let (Some((demand, limit)), Some((demand_us, limit_us))) = (a.high(), b.high()) {
                        // What is left of two depths of metres, and the pressure of that water, lose digits near nothing.
                        let least = if demand.role == Role::Pressure { 1e4 } else { 1.0 };
                        let whole = demand.si.abs().max(limit.si.abs()).max(least);
                        let near = |a: f64, b: f64| (a - b).abs() <= 1e-12 * whole;
                        prop_assert!(near(demand.si, demand_us.si) && near(limit.si, limit_us.si), "{:?}", a.subject);
                    }
                }
            }
        }
    }

    #[test]
    fn allowed_tension_never_rises_with_duration_or_temperature(
        hours in 0.5..24.0_f64, more in 1.0..4.0_f64, temperature in 5.0..39.0_f64, warmer in 0.0..1.0_f64,
    ) {
        let at = |hours: f64, temperature: f64| {
            let drive = drive(&text(|text| {
                text.edit("duration: 6 h", &format!("duration: {hours} h"))
                    .edit("25 degC", &format!("{temperature} degC"))
            }));
            let scheme = assess(&drive, &drive.candidates()[1], Method::Pullback);
            let check = *scheme.checks.get(Subject::Tension).unwrap();
            check.high().unwrap().1.si
        };
        let base = at(hours, temperature);
        prop_assert!(at((hours * more).min(24.0), temperature) <= base);
        prop_assert!(at(hours, temperature + warmer) <= base);
    }
}

/// The product stage starts with the full friction of what it pushes out: 0.406 m casing, 0.360 m pipe, 80 m,
/// 8 kPa give 816 kN at its start and 724 kN at its end (statics; no force from zero).
#[test]
fn a_casing_pushed_out_is_felt_at_once() {
    let text = plain("80 m", "360 mm", [8.0; 3], clay()).edit("0.03 m2 }", "0.03 m2, casing: 406 mm }");
    let force = force(&text);
    // Printed to the kilonewton.
    assert_relative_eq!(force.high, 816e3, max_relative = 0.5 / 816.0);
    let without = plain("80 m", "360 mm", [8.0; 3], clay());
    let ends = self::force(&without).high;
    assert_relative_eq!(ends, 724e3, max_relative = 0.5 / 724.0);
}

/// Beyond 40 degC and beyond the longest tabulated duration the limit is not decided, never quietly extrapolated.
#[test]
fn outside_the_tables_the_check_is_not_decided() {
    for change in [("25 degC", "45 degC"), ("duration: 6 h", "duration: 30 h")] {
        let drive = drive(&text(|text| text.edit(change.0, change.1)));
        let scheme = assess(&drive, &drive.candidates()[1], Method::Pullback);
        let check = scheme.checks.get(Subject::Tension).unwrap();
        assert_eq!(check.verdict, Verdict::NotDecided, "{change:?}");
        assert!(check.doubt.is_some());
        let choice = jackpull::choose(&drive).unwrap();
        let pulled = choice.ranked.iter().find(|ranked| ranked.candidate == 1 && !ranked.scheme.is_excluded()).unwrap();
        assert!(!pulled.standing.can_be_chosen());
    }
}

/// A scheme with something not decided is never chosen, however good the rest.
#[test]
fn what_is_open_is_not_chosen() {
    let drive = drive(&text(|text| text.edit("spt_n: 12, largest_stone: 20 mm", "spt_n: 12")));
    let choice = jackpull::choose(&drive).unwrap();
    assert!(choice.chosen().is_none());
    assert!(choice.reason.contains("not decided"), "{}", choice.reason);
    let open = choice.ranked.first().unwrap();
    assert_eq!(open.standing, jackpull::Standing::Open);
    let score = open.score.as_ref().unwrap();
    assert!(score.least < score.most);
}

/// The order of candidates changes nothing but their places.
#[test]
fn the_order_of_candidates_does_not_matter() {
    let one = drive(&text(|text| text));
    let other = drive(&text(|text| {
        let clay = "  - { material: clay, size: 10 in }\n";
        let pe = "  - { material: pe100, size: 315 mm, sdr: 11 }\n";
        text.edit(&format!("{clay}{pe}"), &format!("{pe}{clay}"))
    }));
    let names = |drive: &Drive| -> Vec<(String, Method, String)> {
        let choice = jackpull::choose(drive).unwrap();
        let possible = choice.ranked.iter().filter(|ranked| !ranked.scheme.is_excluded());
        possible
            .map(|ranked| {
                let label = drive.candidates()[ranked.candidate].label().to_owned();
                (label, ranked.scheme.method, format!("{:?}", ranked.score))
            })
            .collect()
    };
    assert_eq!(names(&one), names(&other));
}

/// The profile is exact at its points: dense sampling of the sum, worked out here from the friction of the file, finds
/// no higher force than the peak, and finds the peak.
#[test]
fn the_peak_is_the_greatest_of_a_dense_sampling() {
    let ground = [(18.0, 4.0), (41.0, 17.0), (80.0, 9.0)];
    let stretches: String = ground
        .iter()
        .map(|(to, tau)| {
            format!(
                "  - {{ to: {to} m, class: silt, spt_n: 12, largest_stone: 0 mm, unit_friction: {{ low: {tau} kPa, \
                 likely: {tau} kPa, high: {tau} kPa }} }}\n"
            )
        })
        .collect();
    let text = bare("80 m", "360 mm", &stretches);
    let text = text.edit("0.03 m2 }", "0.03 m2, casing: 406 mm }");
    let drive = drive(&text);
    let pipe = &drive.candidates()[0];
    let stages = jackpull::method::profile(&drive, pipe, Method::PipeJacking);
    // Friction per length of a body of diameter `d` between two distances.
    let friction = |d: f64, from: f64, to: f64| -> f64 {
        let mut start = 0.0;
        let mut sum = 0.0;
        for (end, tau) in ground {
            sum += tau * 1e3 * std::f64::consts::PI * d * (to.min(end) - from.max(start)).max(0.0);
            start = end;
        }
        sum
    };
    let sampled = |behind: f64, ahead: f64| {
        (0..=8_000)
            .map(|step| f64::from(step) * 0.01)
            .map(|x| friction(behind, 0.0, x) + friction(ahead, x, 80.0))
            .fold(0.0, f64::max)
    };
    // A bore without a stem: the casing pushes nothing out, the pipe the casing.
    for (index, (behind, ahead)) in [(1, (0.406, 0.0)), (2, (0.360, 0.406))] {
        let peak = stages[index].points.iter().map(|point| point.on_rig.high.value).fold(0.0, f64::max);
        assert_relative_eq!(peak, sampled(behind, ahead), max_relative = 1e-9);
    }
    let scheme = jacked(&drive);
    let last = stages.last().unwrap().points.iter().filter_map(|point| point.on_pipe).map(|band| band.high.value);
    assert_eq!(scheme.force.unwrap().high.value, last.fold(0.0, f64::max));
}

/// The peaks of the profile are those of the checks, on rig and pipe, for both methods.
#[test]
fn profile_and_scheme_agree() {
    let drive = drive(&text(|text| text));
    for (pipe, method) in drive.candidates().iter().zip([Method::PipeJacking, Method::Pullback]) {
        let scheme = assess(&drive, pipe, method);
        let stages = jackpull::method::profile(&drive, pipe, method);
        let points = || stages.iter().flat_map(|stage| &stage.points);
        let rig = points().map(|point| point.on_rig.likely.value).fold(0.0, f64::max);
        let on_pipe = points().filter_map(|point| point.on_pipe).map(|band| band.likely.value).fold(0.0, f64::max);
        assert_relative_eq!(scheme.rig_force.unwrap().likely.value, rig, max_relative = 1e-12);
        assert_relative_eq!(scheme.force.unwrap().likely.value, on_pipe, max_relative = 1e-12);
        if method == Method::PipeJacking {
            let of = |(stage, force): (Stage, Band<Force>)| (stage, force.likely.value);
            let pushes: Vec<_> = jackpull::method::pushes(&drive, pipe).map(of).collect();
            let peak = |stage: &StageProfile| {
                (stage.stage, stage.points.iter().map(|point| point.on_rig.likely.value).fold(0.0, f64::max))
            };
            assert_eq!(pushes, stages.iter().map(peak).collect::<Vec<_>>());
        }
        let other = if method == Method::Pullback { Method::PipeJacking } else { Method::Pullback };
        assert!(jackpull::method::profile(&drive, pipe, other).is_empty());
    }
}

/// A pipe pushed uphill carries part of its weight; downhill it is not credited.
#[test]
fn weight_counts_uphill_only() {
    let at = |grade: &str| {
        let text = plain("80 m", "360 mm", [8.0; 3], clay()).edit("grade: 0 %", &format!("grade: {grade}"));
        force(&text.edit("0.03 m2 }", "0.03 m2, weight: 1.5 kN/m }")).high
    };
    // 1.5 kN/m over 80 m on a slope of 5 %: sin(atan(0.05)) = 0.049 938.
    assert_relative_eq!(at("5 %") - at("0 %"), 1.5e3 * 80.0 * 0.049_938, max_relative = 1e-4);
    assert_relative_eq!(at("-5 %"), at("0 %"), max_relative = 1e-12);
}
