//! The sizes that the trade asks for every day are known: each is read with nothing but what a drawing says of it.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::check::{Care, Subject, Verdict};
use jackpull::quantity::{FromText, Length, Measure};

const LIST: &str = "  - { material: clay, size: 10 in }\n  - { material: pe100, size: 315 mm, sdr: 11 }\n";

/// The one pipe of the shared drive: what it is called, and its outside diameter in millimetres.
fn pipe(pipe: &str) -> (String, f64) {
    let drive = drive(&text(|text| text.edit(LIST, &format!("  - {{ {pipe} }}\n"))));
    let pipe = &drive.candidates()[0];
    (pipe.label().to_owned(), pipe.outside_diameter().si() * 1e3)
}

/// Outside diameters by hand from inches, or as the standard prints them.
#[test]
fn each_size_is_known() {
    const JACKED: &str = "wall: 0.5 in, scheme: default";
    const PULLED: &str = "wall: 0.5 in, steel_grade: api_5l_b, ovality: 0.5 %";
    let clay = [(8, 11.0), (10, 13.3125), (12, 15.625), (15, 18.875), (18, 21.875), (21, 24.875), (24, 29.125)];
    for (size, outside) in clay {
        let (label, got) = pipe(&format!("material: clay, size: {size} in"));
        assert_eq!(label, format!("clay {size} in"));
        assert!((got - outside * 25.4).abs() < 0.01, "{label}: {got}");
    }
    for size in (14..=48).step_by(2).chain([52, 54, 56, 60, 64, 66, 68, 72]) {
        for fields in [JACKED, PULLED] {
            let (_, outside) = pipe(&format!("material: steel, size: {size} in, {fields}"));
            assert!((outside - f64::from(size) * 25.4).abs() < 0.01, "{size} in: {outside}");
        }
    }
    for (size, outside) in
        [("168.3 mm", 168.3), ("323.9 mm", 323.9), ("508 mm", 508.0), ("610 mm", 609.6), ("1219 mm", 1219.2)]
    {
        let (_, got) = pipe(&format!("material: steel, size: {size}, {JACKED}"));
        assert!((got - outside).abs() < 0.01, "{size}: {got}");
    }
    // Smaller ones are no larger than the stem.
    for dn in [125, 140, 160, 200, 250, 315, 355, 400, 450, 500, 560, 630, 710, 800, 900, 1000, 1200] {
        for sdr in ["6", "7.4", "9", "11", "13.6", "17", "21", "26", "33", "41"] {
            // The thick walls of large pipe are not made.
            let greatest = match sdr {
                "6" => 450,
                "7.4" => 630,
                "9" => 800,
                "11" => 1000,
                _ => 1200,
            };
            if dn <= greatest {
                let (label, outside) = pipe(&format!("material: pe100, size: {dn} mm, sdr: {sdr}"));
                assert_eq!((label, outside.round()), (format!("PE100 {dn} mm SDR {sdr}"), f64::from(dn)));
            }
        }
    }
    for size in (14..=36).step_by(2).chain([42, 48, 54]) {
        let (label, outside) = pipe(&format!("material: pe4710, size: {size} in, sdr: 13.5"));
        assert_eq!(label, format!("PE4710 IPS {size} in DR 13.5"));
        assert!((outside - f64::from(size) * 25.4).abs() < 0.01, "{size} in: {outside}");
    }
    // DN is 25 for each inch of the nominal size, and no diameter.
    for (dn, outside) in [(150, 168.275), (300, 323.85), (350, 355.6), (600, 609.6), (900, 914.4), (1200, 1219.2)] {
        for fields in [JACKED, PULLED] {
            let (_, got) = pipe(&format!("material: steel, size: {dn} mm, {fields}"));
            assert!((got - outside).abs() < 0.01, "DN {dn}: {got}");
        }
    }
}

/// What is written of a pipe of which the maker's force is all that is known, of a size that is told by its name or by its
/// diameters, and its outside diameter in mm: EN 545 and C151 print those of iron, C900 that of 12 in. Each is resolved and
/// assessed without a fault.
#[test]
fn each_size_is_assessed_by_the_makers_force_alone() {
    const CASES: &[(&str, f64)] = &[
        ("clay, size: 200 mm", 276.0),
        ("clay, size: 300 mm", 406.0),
        ("clay, size: 600 mm, certificate: en_295_7", 766.0),
        ("clay, size: 1200 mm", 1475.0),
        ("clay, size: 27 in, outside_diameter: 32.5 in, weight: 260 plf", 825.5),
        ("concrete, size: 18 in", 584.2),
        ("concrete, size: 600 mm", 760.0),
        ("concrete, size: 750 mm, outside_diameter: 950 mm", 950.0),
        ("grp, size: 400 mm, outside_diameter: 427 mm, wall: 25 mm", 427.0),
        ("polymer_concrete, size: 400 mm, outside_diameter: 550 mm, wall: 70 mm", 550.0),
        ("ductile_iron, size: 600 mm", 635.0),
        ("ductile_iron, size: 1200 mm", 1255.0),
        ("ductile_iron, size: 16 in", 441.96),
        ("ductile_iron, size: 36 in", 972.82),
        ("pvc, size: 12 in, sdr: 18", 335.28),
        ("pvc, size: 54 in, wall: 1.4 in", 1462.02),
    ];
    for (written, outside) in CASES {
        let text = text(|text| text.edit(LIST, &format!("  - {{ material: {written}, rated_force: 900 kN }}\n")));
        let drive = drive(&text);
        let pipe = &drive.candidates()[0];
        assert!(
            (pipe.outside_diameter().si() * 1e3 - outside).abs() < 0.01,
            "{written}: {:?}",
            pipe.outside_diameter()
        );
        let choice = jackpull::choose(&drive).unwrap();
        let jacked = choice.ranked.iter().find(|ranked| ranked.scheme.method == jackpull::Method::PipeJacking);
        let ranked = jacked.unwrap();
        let end = ranked.scheme.checks.iter().find(|check| check.subject == Subject::EndCapacity);
        let limit = end.and_then(|check| check.high()).map(|(_, limit)| limit.si);
        assert_eq!(limit, Some(900e3), "{written}");
    }
}

/// Nothing told of strength and area is no better than both: the maker's force holds at an angle of the joint.
#[test]
fn the_makers_force_alone_is_no_better() {
    const SHORT: &str = "service: gravity_sewer\nlength: 20 m\nlaunch: { invert_depth: 4.2 m }\ngrade: 1 %\n\
        groundwater: none\nlubrication: logged\nwork: { round_the_clock: true }\n\
        ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0 mm }]\nrig: { thrust: 900 kN, pull: 500 kN }\n";
    const PIPES: [(&str, &str); 3] = [
        ("clay, size: 13 in, outside_diameter: 420 mm, weight: 1.2 kN/m", "end_bearing_area: 0.04 m2"),
        ("grp, size: 400 mm, outside_diameter: 427 mm, wall: 25 mm", "strength: 90 MPa, end_bearing_area: 0.02 m2"),
        ("concrete, size: 600 mm, outside_diameter: 760 mm", "strength: 50 MPa, end_bearing_area: 0.1 m2"),
    ];
    for (pipe, more) in PIPES {
        let end = |more: &str, lines: &str| {
            let drive =
                drive(&format!("{SHORT}candidates: [{{ material: {pipe}, rated_force: 900 kN{more} }}]\n{lines}"));
            let scheme = jackpull::assess(&drive, &drive.candidates()[0], jackpull::Method::PipeJacking);
            let check = scheme.checks.get(Subject::EndCapacity).unwrap();
            (check.verdict, check.care)
        };
        let condition = (Verdict::WithCare, Some(Care::Condition));
        assert_eq!(end(&format!(", {more}"), ""), condition, "{pipe}");
        assert_eq!(end("", ""), condition, "{pipe}");
        assert_eq!(end("", "steering: { joint_angle: 0.1 deg }\n").0, Verdict::Within, "{pipe}");
    }
}

/// A strength without an area says nothing beside the maker's force, and is listed as not used.
#[test]
fn a_strength_without_its_area_is_listed() {
    for material in ["grp", "polymer_concrete", "concrete"] {
        let pipe = "size: 400 mm, outside_diameter: 550 mm, wall: 70 mm, strength: 90 MPa, rated_force: 900 kN";
        let drive = drive(&text(|text| text.edit(LIST, &format!("  - {{ material: {material}, {pipe} }}\n"))));
        let strength = drive.assumed().iter().find(|assumed| assumed.field == "candidates[0].strength").unwrap();
        let told = strength.value.text(jackpull::quantity::UnitSystem::Si).to_string();
        assert!(told.starts_with("not used: the maker's force"), "{material}: {told}");
    }
}

/// PE in ductile iron sizes: 8 in has 9.05 in outside, 24 in 25.80.
#[test]
fn pe_in_ductile_iron_sizes() {
    for (size, outside) in [(8, 9.05), (24, 25.80)] {
        let (label, got) = pipe(&format!("material: pe4710, series: dips, size: {size} in, sdr: 11"));
        assert_eq!(label, format!("PE4710 DIPS {size} in DR 11"));
        assert!((got - outside * 25.4).abs() < 0.01, "{got}");
    }
}

/// Concrete pipe is named by its bore: with the wall the outside diameter follows, whatever a table has for that size, and
/// with the outside diameter the weight. Without either the wall of a table counts: 1,000 mm has 100 mm, 48 in 5.75 in.
#[test]
fn concrete_is_named_by_its_bore() {
    let outside =
        |fields: &str| pipe(&format!("material: concrete, strength: 40 MPa, end_bearing_area: 0.2 m2, {fields}")).1;
    for (fields, printed) in [
        ("size: 48 in, wall: 5 in", 58.0 * 25.4),
        ("size: 1000 mm, wall: 120 mm", 1240.0),
        ("size: 1150 mm, wall: 120 mm", 1390.0),
        ("size: 48 in", 59.5 * 25.4),
        ("size: 1000 mm", 1200.0),
        ("size: 1000 mm, outside_diameter: 1280 mm", 1280.0),
        ("size: 1000 mm, inside_diameter: 1010 mm, wall: 110 mm", 1230.0),
    ] {
        let got = outside(fields);
        assert!((got - printed).abs() < 0.01, "{fields}: {got}");
    }
    // pi (1.28 + 1.0)/2 x 0.14 m2 of 2,400 kg/m3 or a little more: 11.8 kN/m and up.
    let text = text(|text| {
        text.edit(LIST, "  - { material: concrete, strength: 40 MPa, end_bearing_area: 0.2 m2, size: 1000 mm, outside_diameter: 1280 mm }\n")
    });
    let drive = drive(&text);
    let weight = drive.assumed().iter().find(|assumed| assumed.field == "candidates[0].weight").unwrap();
    let jackpull::drive::AssumedValue::One(weight) = &weight.value else { panic!("{weight:?}") };
    let told = weight.display(jackpull::quantity::UnitSystem::Si).to_string();
    let number: f64 = told.split(' ').next().unwrap().parse().unwrap();
    assert!((11.7..12.6).contains(&number), "{told}");
}

/// Every size of the trade is proposed for a sewer and for a main in each material that is made so wide, that of its name
/// where there is one, and each pipe is assessed: in some way it can be put in, and the force on it is held against it.
#[test]
fn each_size_is_proposed_and_assessed() {
    const FROM_6_IN: [&str; 3] = ["PE100 ", "PVC ", "ductile iron "];
    // A size, and pipes of its name.
    let sizes: [(&str, &[&str]); 23] = [
        ("6 in", &["ductile iron 6 in", "PVC fused 6 in"]),
        ("8 in", &["clay 8 in", "ductile iron 8 in", "PVC fused 8 in"]),
        ("10 in", &["clay 10 in", "ductile iron 10 in"]),
        ("12 in", &["clay 12 in", "concrete 12 in", "ductile iron 12 in", "PVC fused 12 in"]),
        ("15 in", &["clay 15 in", "concrete 15 in"]),
        ("18 in", &["clay 18 in", "concrete 18 in", "ductile iron 18 in"]),
        ("21 in", &["clay 21 in", "concrete 21 in"]),
        ("24 in", &["clay 24 in", "concrete 24 in", "ductile iron 24 in"]),
        ("27 in", &["concrete 27 in", "clay 700 mm"]),
        ("30 in", &["concrete 30 in", "ductile iron 30 in", "clay 800 mm"]),
        ("33 in", &["concrete 33 in", "clay 1000 mm"]),
        ("36 in", &["concrete 36 in", "ductile iron 36 in", "clay 1000 mm"]),
        ("150 mm", &["clay 150 mm", "ductile iron 150 mm"]),
        ("200 mm", &["clay 200 mm", "ductile iron 200 mm"]),
        ("250 mm", &["clay 250 mm", "concrete 250 mm", "ductile iron 250 mm"]),
        ("300 mm", &["clay 300 mm", "concrete 300 mm", "ductile iron 300 mm"]),
        ("400 mm", &["clay 400 mm", "concrete 400 mm", "ductile iron 400 mm"]),
        ("500 mm", &["clay 500 mm", "concrete 500 mm", "ductile iron 500 mm"]),
        ("600 mm", &["clay 600 mm", "concrete 600 mm", "ductile iron 600 mm"]),
        ("700 mm", &["clay 700 mm", "ductile iron 700 mm"]),
        ("800 mm", &["clay 800 mm", "concrete 800 mm", "ductile iron 800 mm"]),
        ("900 mm", &["clay 1000 mm", "concrete 900 mm", "ductile iron 900 mm"]),
        ("1000 mm", &["clay 1000 mm", "concrete 1000 mm", "ductile iron 1000 mm"]),
    ];
    for (needed, named) in sizes {
        for (service, more) in [("gravity_sewer", None), ("pressure_main", Some("steel "))] {
            let drive = drive(&text(|text| {
                text.edit("gravity_sewer", service)
                    .edit(&format!("candidates:\n{LIST}"), &format!("needed_inside_diameter: {needed}\n"))
            }));
            let labels: Vec<&str> = drive.candidates().iter().map(|pipe| pipe.label()).collect();
            for wanted in named.iter().copied().chain(FROM_6_IN).chain(more) {
                assert!(labels.iter().any(|label| label.starts_with(wanted)), "{needed}: {wanted} of {labels:?}");
            }
            let choice = jackpull::choose(&drive).unwrap();
            for label in labels {
                // A way that is ruled out for the pipe has no force.
                let of = choice.ranked.iter().filter(|ranked| ranked.pipe.label() == label);
                let put_in: Vec<_> = of.filter(|ranked| ranked.scheme.force.is_some()).collect();
                // Clay and concrete bear no pressure.
                assert!(service == "pressure_main" || !put_in.is_empty(), "{needed}: {label} is put in no way");
                for ranked in put_in {
                    let held = [Subject::EndCapacity, Subject::Tension].map(|of| ranked.scheme.checks.get(of));
                    assert!(held.iter().any(|check| check.is_some()), "{needed}: {label}: nothing holds the force");
                }
            }
        }
    }
}

/// Sewers of 12 in and of 36 in, and a main of 36 in: steel, bare as it is, is proposed for the main alone.
#[test]
fn pipes_are_proposed_for_sewers_and_a_main() {
    const SMALL: &[&str] = &[
        "clay 12 in",
        "clay 400 mm",
        "concrete 12 in",
        "PE100 355 mm SDR 17",
        "PE100 400 mm SDR 11",
        "PE4710 IPS 14 in DR 17",
    ];
    const LARGE: &[&str] = &[
        "PE100 1200 mm SDR 17",
        "PE4710 IPS 42 in DR 17",
        "concrete 36 in",
        "clay 1000 mm",
        "ductile iron 36 in",
        "ductile iron 1000 mm",
    ];
    for (service, needed, wanted) in
        [("gravity_sewer", "12 in", SMALL), ("gravity_sewer", "36 in", LARGE), ("pressure_main", "36 in", LARGE)]
    {
        let drive = drive(&text(|text| {
            text.edit("gravity_sewer", service)
                .edit(&format!("candidates:\n{LIST}"), &format!("needed_inside_diameter: {needed}\n"))
        }));
        let labels: Vec<&str> = drive.candidates().iter().map(|pipe| pipe.label()).collect();
        for wanted in wanted {
            assert!(labels.iter().any(|label| label.starts_with(wanted)), "{needed}: {wanted} of {labels:?}");
        }
        let steel = labels.iter().any(|label| label.starts_with("steel 38 in"));
        assert_eq!(steel, service == "pressure_main", "{service} {needed}: {labels:?}");
        let told = drive.proposal(jackpull::quantity::UnitSystem::Us).unwrap();
        assert_eq!(told.contains("bare steel is no sewer pipe"), service == "gravity_sewer", "{told}");
        let least = Length::from_text(needed).unwrap();
        assert!(drive.candidates().iter().all(|pipe| pipe.outside_diameter() > least));
    }
}
