//! Ground against technique: hazards, treatment, ground that no source gives a band for, and what the door refuses.

use crate::drives::{STEM, drive, text};
use crate::edit::Edit;
use jackpull::check::{Subject, Verdict};
use jackpull::handbook::GroundHazard;
use jackpull::source::Origin;
use jackpull::{Handbook, Method, Scheme, assess, read_drive};

fn one_stretch(stretch: &str, lines: &str) -> String {
    text(|text| {
        let (before, rest) = text.split_once("ground:\n").unwrap();
        let (_, after) = rest.split_once("rig:").unwrap();
        let after = if lines.contains("stem:") { after.to_owned().edit(STEM, "") } else { after.to_owned() };
        format!("{before}ground: [{{ {stretch} }}]\n{lines}rig:{after}")
    })
}

fn schemes(stretch: &str, lines: &str) -> [Scheme; 2] {
    let drive = drive(&one_stretch(stretch, lines));
    let [clay, pe] = drive.candidates() else { panic!("two pipes") };
    [assess(&drive, clay, Method::PipeJacking), assess(&drive, pe, Method::Pullback)]
}

fn grounds(stretch: &str, lines: &str) -> [Verdict; 2] {
    schemes(stretch, lines).map(|scheme| scheme.checks.get(Subject::Ground).unwrap().verdict)
}

const FIRM: &str = "class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm";

/// A hazard never helps, whatever the technique.
#[test]
fn hazards_never_help() {
    let severity = |verdict| match verdict {
        Verdict::Within => 0,
        Verdict::WithCare => 1,
        Verdict::NotDecided => 2,
        Verdict::Over => 3,
    };
    let hazards = ["obstructions", "swelling", "sensitive", "artesian", "karst", "contaminated"];
    for lines in ["", "spoil: slurry\nstem: { outside_diameter: none }\n", "spoil: vacuum\n", "pilot: drilled\n"] {
        // A pipe cannot be pulled without a stem: only the jacked one is asked there.
        let ask = |stretch: &str| {
            let text = one_stretch(stretch, lines);
            let text = if lines.contains("none") {
                text.edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "")
            } else {
                text
            };
            let drive = drive(&text);
            assess(&drive, &drive.candidates()[0], Method::PipeJacking).checks.get(Subject::Ground).unwrap().verdict
        };
        let plain = ask(FIRM);
        for hazard in hazards {
            let worse = ask(&format!("{FIRM}, hazards: [{hazard}]"));
            assert!(severity(worse) >= severity(plain), "{hazard}, {lines}: {worse:?} after {plain:?}");
            assert_ne!(worse, Verdict::Within, "{hazard}, {lines}");
        }
    }
}

/// Round inches are within: 2 in are no cobbles and 4 in no boulders, for a pilot as for a reamer; an auger in its casing and the
/// crusher of a machine take a third of their bore. The pipe is 338 mm outside: 112 mm, 4.4 in.
#[test]
fn stones_in_round_inches() {
    let stone = |stone: &str, lines: &str| {
        let stretch = format!("class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: {stone}");
        let text = one_stretch(&stretch, lines);
        let alone = lines.contains("none");
        let text = if alone { text.edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "") } else { text };
        let drive = drive(&text);
        let of = |index: usize, method| {
            let scheme = assess(&drive, drive.candidates().get(index)?, method);
            let check = *scheme.checks.get(Subject::Ground)?;
            Some((check.verdict, check.high().map(|(stone, takes)| (stone.si, takes.si))))
        };
        (of(0, Method::PipeJacking).unwrap(), of(1, Method::Pullback))
    };
    let (jacked, pulled) = stone("2 in", "");
    assert_eq!((jacked.0, pulled.unwrap().0), (Verdict::Within, Verdict::Within));
    // A bar tells the stone, and the largest that would do.
    let (jacked, pulled) = stone("2.1 in", "");
    let told = (Verdict::Over, Some((2.1 * 0.0254, 2.0 * 0.0254)));
    assert_eq!((jacked, pulled.unwrap()), ((Verdict::WithCare, None), told));
    // A single one of up to 80 mm is displaced by the pilot.
    // What only nobody tells bars nothing that a slurry machine takes.
    assert_eq!(stone("81 mm", "").0.0, Verdict::NotDecided);
    let jacked = stone("81 mm", "pilot: displacement\n").0;
    assert_eq!(jacked.0, Verdict::Over);
    assert!(jacked.1.is_some_and(|(stone, takes)| (stone - 0.081).abs() < 1e-9 && (takes - 0.08).abs() < 1e-9));
    for (largest, is_taken) in [("4 in", true), ("112 mm", true), ("113 mm", false), ("6 in", false)] {
        for lines in ["stem: { outside_diameter: none }\n", "spoil: slurry\nstem: { outside_diameter: none }\n"] {
            let (verdict, numbers) = stone(largest, lines).0;
            assert_eq!(verdict, if is_taken { Verdict::WithCare } else { Verdict::Over }, "{largest}, {lines}");
            let third = drive(&one_stretch(FIRM, "")).candidates()[0].outside_diameter().value / 3.0;
            assert!(is_taken || (numbers.unwrap().1 - third).abs() < 1e-6, "{numbers:?}");
        }
    }
}

/// Fill is rated once the file says that nothing obstructs it: with care, as nobody knows all of it.
#[test]
fn fill_waits_for_its_obstructions() {
    let fill = "class: fill, spt_n: 14, largest_stone: 1 in";
    let [jacked, pulled] = schemes(fill, "");
    for scheme in [jacked, pulled] {
        let check = scheme.checks.get(Subject::Ground).unwrap();
        assert_eq!(check.verdict, Verdict::NotDecided);
        assert_eq!(check.settled_by, [["ground[].hazards"], ["ground[].class"]]);
    }
    let known = |hazards: &str| grounds(&format!("{fill}, hazards: {hazards}"), "");
    assert_eq!(known("[]"), [Verdict::WithCare; 2]);
    assert_eq!(known("[obstructions]"), [Verdict::Over; 2]);
    // An open auger is no way through fill below water.
    let wet = one_stretch(
        &format!("{fill}, hazards: [], groundwater: 1 m"),
        "spoil: auger\nstem: { outside_diameter: none }\n",
    );
    let drive = drive(&wet.edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", ""));
    let wet = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    assert_eq!(wet.checks.get(Subject::Ground).unwrap().verdict, Verdict::Over);
}

#[test]
fn each_hazard_has_a_row() {
    let book = Handbook::embedded();
    for hazard in [
        GroundHazard::MixedFaceRock,
        GroundHazard::Obstructions,
        GroundHazard::Swelling,
        GroundHazard::Sensitive,
        GroundHazard::Artesian,
        GroundHazard::Karst,
        GroundHazard::Contaminated,
    ] {
        assert_eq!(book.ground_hazard().unwrap().rows.iter().filter(|row| row.value.hazard.value == hazard).count(), 1);
    }
}

#[test]
fn rock_beside_soil_is_a_mixed_face() {
    let [jacked, pulled] = grounds(&format!("{FIRM}, mixed_with: weak_rock"), "spoil: auger\n");
    assert_eq!((jacked, pulled), (Verdict::Over, Verdict::Over));
    // Nobody says that it is an auger, and a slurry machine may do.
    assert_eq!(grounds(&format!("{FIRM}, mixed_with: weak_rock"), "")[0], Verdict::NotDecided);
    // Two soils are none; a pilot that is pushed through hard clay asks for care before either pipe.
    let [jacked, pulled] = grounds(&format!("{FIRM}, mixed_with: hard_clay"), "");
    assert_eq!((jacked, pulled), (Verdict::WithCare, Verdict::WithCare));
}

/// Fine soil under head is not bored unless the treatment is named, and then never plainly.
#[test]
fn running_ground_needs_its_treatment() {
    for class in ["silt", "loose_sand", "medium_to_dense_sand"] {
        let stretch = format!("class: {class}, groundwater: 2.5 m, largest_stone: 0 mm");
        let [plain, _] = grounds(&stretch, "");
        assert!(matches!(plain, Verdict::Over | Verdict::NotDecided), "{class}: {plain:?}");
        // No pilot is pushed through grout.
        for (treatment, pilot) in [("dewatered", ""), ("grouted", "pilot: drilled\nspoil: auger\n")] {
            let treated =
                format!("{stretch}, treatment: {treatment}, spt_n: {}", if class == "loose_sand" { 6 } else { 12 });
            let [jacked, _] = schemes(&treated, pilot);
            let check = jacked.checks.get(Subject::Ground).unwrap();
            assert_eq!(check.verdict, Verdict::WithCare, "{class}, {treatment}");
            // Said to be the file's word.
            assert!(matches!(check.basis, Origin::Law(_) | Origin::Row(_)));
            assert!(
                drive(&one_stretch(&treated, ""))
                    .assumed()
                    .iter()
                    .any(|assumed| assumed.field == "ground[0].treatment")
            );
        }
    }
    // A slurry machine does not need it.
    let text = one_stretch(
        "class: medium_to_dense_sand, groundwater: 2.5 m, spt_n: 20, largest_stone: 0 mm",
        "spoil: slurry\nstem: { outside_diameter: none }\n",
    )
    .edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "");
    let drive = drive(&text);
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    assert_eq!(scheme.checks.get(Subject::Ground).unwrap().verdict, Verdict::Within);
}

/// No source gives friction or counts of rock and peat: loads are not decided unless the file gives both, or a drilled
/// stem lies in a bore that stands.
#[test]
fn ground_without_a_band_decides_nothing() {
    for class in ["weak_rock", "hard_rock", "peat"] {
        for scheme in schemes(&format!("class: {class}"), "pilot: displacement\n") {
            for check in scheme.checks.iter().filter(|check| check.subject.is_load()) {
                assert_eq!(check.verdict, Verdict::NotDecided, "{class}: {:?}", check.subject);
            }
        }
        let friction = "unit_friction: { low: 2 kPa, likely: 5 kPa, high: 9 kPa }";
        let [no_count, _] = schemes(&format!("class: {class}, {friction}"), "pilot: displacement\n");
        assert_eq!(no_count.checks.get(Subject::JackingThrust).unwrap().verdict, Verdict::NotDecided);
        let [both, _] = schemes(&format!("class: {class}, spt_n: 20, {friction}"), "");
        assert_ne!(both.checks.get(Subject::JackingThrust).unwrap().verdict, Verdict::NotDecided, "{class}");
    }
}

#[test]
fn what_cannot_be_is_refused_at_its_place() {
    for (text, wanted) in [
        (one_stretch(&format!("{FIRM}, treatment: dewatered"), ""), "nothing to treat"),
        (one_stretch(&format!("{FIRM}, hazards: [karst, karst]"), ""), "is given twice"),
        (one_stretch(&format!("{FIRM}, hazards: [kars]"), ""), "did you mean \"karst\"?"),
        (one_stretch(FIRM, "pilot: drilled\nstem: { outside_diameter: none }\n"), "there is no pilot"),
        (one_stretch(FIRM, "pilot: driled\n"), "did you mean \"drilled\"?"),
    ] {
        let error = read_drive(&text, &Handbook::embedded()).expect_err(wanted).to_string();
        assert!(error.contains(wanted) && error.contains("line"), "{wanted}: {error}");
    }
}
