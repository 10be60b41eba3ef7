//! What must hold of the forces of both methods in any row of grounds, with stem, casing, stops and slope.

use crate::drives::drive;
use crate::edit::Edit;
use jackpull::{Method, Scheme, assess};
use proptest::prelude::*;
use std::collections::BTreeSet;

const GROUNDS: [&str; 6] = [
    "class: soft_clay, spt_n: 3, largest_stone: 0 mm",
    "class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 20 mm",
    "class: silt, spt_n: 14, largest_stone: 0 mm",
    "class: loose_sand, spt_n: 7, largest_stone: 0 mm",
    "class: medium_to_dense_sand, spt_n: 20, largest_stone: 20 mm",
    "class: silt, mixed_with: gravel, spt_n: 20, largest_stone: 20 mm",
];

#[derive(Debug, Clone)]
struct Case {
    /// Which ground, and where it ends as a share of 60 m.
    stretches: Vec<(usize, f64)>,
    /// Per cent.
    grade: f64,
    water: &'static str,
    lubrication: &'static str,
    stop: f64,
    /// What goes in before the jacked pipe.
    casing: &'static str,
}

fn cases() -> impl Strategy<Value = Case> {
    let stretches = (prop::collection::vec((0..GROUNDS.len(), 0.05..1.0_f64), 1..5)).prop_map(|parts| {
        let whole: f64 = parts.iter().map(|(_, part)| part).sum();
        let mut end = 0.0;
        parts
            .into_iter()
            .map(|(ground, part)| {
                end += part / whole;
                (ground, end)
            })
            .collect::<Vec<_>>()
    });
    // The invert lies between 10.2 and 13.8 m: the table may cross it, and its crown.
    let water = prop::sample::select(&["none", "5 m", "10.9 m", "11.3 m", "11.8 m", "12.4 m", "13 m"]);
    let lubrication = prop::sample::select(&["none", "metered", "logged"]);
    let casing = prop::sample::select(&["", ", casing: 500 mm, casing_wall: 10 mm"]);
    (stretches, -3.0..3.0_f64, water, lubrication, 0.1..0.9_f64, casing).prop_map(
        |(stretches, grade, water, lubrication, stop, casing)| Case {
            stretches,
            grade,
            water,
            lubrication,
            stop,
            casing,
        },
    )
}

impl Case {
    /// With a length in metres, pipes of these sizes, and the stretches as given.
    fn text(&self, stretches: &[(usize, f64)], length: f64, clay: &str, pe: &str) -> String {
        let last = stretches.len() - 1;
        let ground: String = stretches
            .iter()
            .enumerate()
            .map(|(index, (ground, end))| {
                let to = if index == last { String::new() } else { format!("to: {} m, ", end * 60.0) };
                format!("  - {{ {to}{} }}\n", GROUNDS[*ground])
            })
            .collect();
        format!(
            "service: gravity_sewer\nlength: {length} m\nlaunch: {{ invert_depth: 12 m }}\ngrade: {} %\ngroundwater: {}\n\
             lubrication: {}\nwork: {{ round_the_clock: true }}\nground:\n{ground}rig: {{ thrust: 900 kN, pull: 500 kN }}\nstops: [{{ at: {} m }}]\n\
             stem: {{ outside_diameter: 100 mm, wall: 10 mm, head_diameter: 120 mm }}\n\
             pull: {{ duration: 6 h, pipe_temperature: 20 degC }}\ncandidates:\n  - {{ material: clay, {clay}, \
             end_bearing_area: 0.03 m2, weight: 2 kN/m{} }}\n  - {{ material: pe100, {pe}, sdr: 11 }}\n",
            self.grade,
            self.water,
            self.lubrication,
            self.stop * 60.0,
            self.casing,
        )
    }
}

const CLAY: &str = "size: 400 mm, outside_diameter: 400 mm";
const WIDER: &str = "size: 450 mm, outside_diameter: 450 mm";

/// Forces of both methods, all levels, in newtons: on the pipe, on the rig.
fn forces(text: &str) -> Vec<f64> {
    let drive = drive(text);
    let schemes: Vec<Scheme> = [Method::PipeJacking, Method::Pullback]
        .into_iter()
        .zip(drive.candidates())
        .map(|(method, pipe)| assess(&drive, pipe, method))
        .collect();
    let bands = schemes.iter().flat_map(|scheme| [scheme.force.unwrap(), scheme.rig_force.unwrap()]);
    bands.flat_map(|band| [band.low.value, band.likely.value, band.high.value]).collect()
}

/// The same text with every quantity in US units.
fn in_us_units(text: &str) -> String {
    let foot = 0.3048;
    let pound = 4.448_221_615_260_5;
    let known = [
        ("m", foot, "ft"),
        ("mm", 0.0254e3, "in"),
        ("m2", foot * foot, "ft2"),
        ("kN", pound, "kip"),
        ("kN/m", pound / foot / 1e3, "lbf/ft"),
        ("h", 1.0 / 60.0, "min"),
    ];
    let mut words: Vec<String> = text.split(' ').map(ToOwned::to_owned).collect();
    for place in 1..words.len() {
        let (Ok(number), unit) = (words[place - 1].parse::<f64>(), words[place].clone()) else { continue };
        let end = unit.find([',', '}', '\n', ']']).unwrap_or(unit.len());
        let (unit, rest) = unit.split_at(end);
        let (number, unit) = match known.iter().find(|(si, ..)| *si == unit) {
            Some((_, one, other)) => (number / one, *other),
            None if unit == "degC" => (number * 1.8 + 32.0, "degF"),
            None => continue,
        };
        (words[place - 1], words[place]) = (number.to_string(), format!("{unit}{rest}"));
    }
    words.join(" ")
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn splitting_a_stretch_changes_no_force(
        case in cases(), which in 0..5_usize, share in 0.05..0.95_f64, at_stop in any::<bool>(),
    ) {
        let whole = case.text(&case.stretches, 60.0, CLAY, "size: 250 mm");
        let which = which % case.stretches.len();
        let from = if which == 0 { 0.0 } else { case.stretches[which - 1].1 };
        let (ground, to) = case.stretches[which];
        let mut split = case.stretches.clone();
        if at_stop {
            let holds = split.iter().position(|(_, end)| case.stop < *end).unwrap();
            split.insert(holds, (split[holds].0, case.stop));
        } else {
            split.insert(which, (ground, from + share * (to - from)));
        }
        let split = case.text(&split, 60.0, CLAY, "size: 250 mm");
        for (one, other) in forces(&whole).into_iter().zip(forces(&split)) {
            prop_assert!((one - other).abs() <= 1e-12 * one.abs().max(1.0), "{} and {}", one, other);
        }
    }

    /// Longer in its last ground; a pipe of the next size.
    #[test]
    fn no_force_falls_with_length_or_diameter(case in cases(), more in 0.0..60.0_f64) {
        let base = forces(&case.text(&case.stretches, 60.0, CLAY, "size: 250 mm"));
        let longer = forces(&case.text(&case.stretches, 60.0 + more, CLAY, "size: 250 mm"));
        let wider = forces(&case.text(&case.stretches, 60.0, WIDER, "size: 315 mm"));
        // The low level may fall: what helps downhill grows with the length, and a wider bore has the water standing against
        // it over a longer way, where the lower friction counts for low.
        let is_low = |index: usize| index.is_multiple_of(3);
        for (index, base) in base.iter().enumerate() {
            let slack = 1e-9 * base.abs();
            prop_assert!(is_low(index) || longer[index] >= base - slack, "{index}: {} and {}", base, longer[index]);
            prop_assert!(is_low(index) || wider[index] >= base - slack, "{index}: {} and {}", base, wider[index]);
        }
    }

    /// With the friction of the file in each ground.
    #[test]
    fn no_force_falls_with_friction(case in cases(), unit in prop::collection::vec(0.3..15.0_f64, 6), times in 1.0..4.0_f64) {
        let at = |times: f64| {
            let mut text = case.text(&case.stretches, 60.0, CLAY, "size: 250 mm");
            let present: BTreeSet<usize> = case.stretches.iter().map(|(ground, _)| *ground).collect();
            for (ground, unit) in present.into_iter().map(|ground| (GROUNDS[ground], unit[ground])) {
                let [low, likely, high] = [0.5, 1.0, 2.0].map(|level| level * unit * times);
                let given = format!("{ground}, unit_friction: {{ low: {low} kPa, likely: {likely} kPa, high: {high} kPa }} }}");
                text = text.edit_all(&format!("{ground} }}"), &given);
            }
            forces(&text)
        };
        for (base, more) in at(1.0).into_iter().zip(at(times)) {
            prop_assert!(more >= base * (1.0 - 1e-12), "{} and {}", base, more);
        }
    }

    /// The same drive said in SI and in US units: forces, and every demand, limit and verdict.
    #[test]
    fn units_make_no_difference(case in cases()) {
        let si = case.text(&case.stretches, 60.0, CLAY, "size: 250 mm, outside_diameter: 250 mm, wall: 25 mm");
        let si = si.edit(", sdr: 11", "");
        let us = in_us_units(&si);
        for left in [" m ", " m,", " mm", " kN", " degC", " h,"] {
            prop_assert!(!us.contains(left), "{us}");
        }
        for (one, other) in forces(&si).into_iter().zip(forces(&us)) {
            prop_assert!((one - other).abs() <= 1e-12 * one.abs(), "{} and {}\n{us}", one, other);
        }
        let (si, us) = (drive(&si), drive(&us));
        for (method, (one, other)) in [Method::PipeJacking, Method::Pullback].into_iter().zip(si.candidates().iter().zip(us.candidates())) {
            let (one, other) = (assess(&si, one, method), assess(&us, other, method));
            for (one, other) in one.checks.iter().zip(other.checks.iter()) {
                prop_assert_eq!((one.subject, one.verdict), (other.subject, other.verdict));
                if let (Some(one), Some(other)) = (one.high(), other.high()) {
                    // A depth of water is what is left of two depths.
                    let whole = one.0.si.abs().max(one.1.si.abs()).max(1e-9);
                    let near = |a: f64, b: f64| (a - b).abs() <= 1e-12 * whole;
                    prop_assert!(near(one.0.si, other.0.si) && near(one.1.si, other.1.si), "{:?} {:?}", one, other);
                }
            }
        }
    }

    /// From the least lubrication to the most.
    #[test]
    fn no_force_of_a_jacked_pipe_rises_with_lubrication(case in cases()) {
        let at = |lubrication: &'static str| {
            let case = Case { lubrication, ..case.clone() };
            forces(&case.text(&case.stretches, 60.0, CLAY, "size: 250 mm"))
        };
        let words = ["none", "not_metered", "metered", "logged"].map(at);
        for pair in words.windows(2) {
            for level in 1..3 {
                prop_assert!(pair[1][level] <= pair[0][level] * (1.0 + 1e-12), "{:?}", pair);
            }
        }
    }
}
