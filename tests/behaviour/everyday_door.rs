//! Everyday files that the door takes: what only a maker tells is waited for, what says nothing is listed, and what only
//! some pipes need is asked for with those.

use crate::drives::{MAIN_PE, TOLD_CLAY, drive, main, sewer, text};
use crate::edit::Edit;
use crate::jacked;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};
use jackpull::choice::{Ranked, asks};
use jackpull::quantity::Measure;
use jackpull::{Drive, Handbook, Method, Standing, assess, choose, read_drive};

const PIPE: &str = "material: concrete, size: 1000 mm, outside_diameter: 1260 mm, inside_diameter: 1000 mm";

fn told(text: &str) -> Result<Drive, String> {
    read_drive(text, &Handbook::embedded()).map_err(|error| error.to_string())
}

fn end(pipe: &str) -> Check {
    let drive = drive(&jacked::text("steering: { joint_angle: 0.1 deg }", &[pipe]));
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    *scheme.checks.get(Subject::EndCapacity).unwrap()
}

fn first(text: &str) -> Ranked {
    choose(&drive(text)).unwrap().ranked.remove(0)
}

/// Words that the drive lists for a field.
fn listed(text: &str, field: &str) -> Option<String> {
    let drive = drive(text);
    let told = drive.assumed().iter().find(|assumed| assumed.field == field)?;
    Some(told.value.text(jackpull::quantity::UnitSystem::Si).to_string())
}

/// What is said to be unknown is left out; what must be there is not.
#[test]
fn what_is_not_known_can_be_said() {
    for (from, known, without) in [
        (", spt_n: 12", ", spt_n: unknown", ""),
        ("spt_n: 14, largest_stone: 0 mm", "spt_n: 14, largest_stone: unknown", "spt_n: 14"),
        ("rig: { thrust: 900 kN, pull: 500 kN }", "rig: { thrust: unknown, pull: unknown }", ""),
    ] {
        let answer = |to: &str| format!("{:?}", first(&text(|text| text.edit(from, to))).scheme.checks);
        assert_eq!(answer(known), answer(without), "{known}");
    }
    let refused = text(|text| text.edit("length: 60 m", "length: unknown"));
    assert!(told(&refused).unwrap_err().contains("length: expected a length, got \"unknown\""));
}

/// A packer, a scheme or a ratio of the joint makes no end area: clay of a size that no table has waits for its maker as it does
/// without them. Concrete with its wall and strength is never plain: six tenths of its section bear, and its maker confirms it.
#[test]
fn an_end_of_no_known_area_waits_for_its_maker() {
    let clay = "material: clay, size: 700 mm, outside_diameter: 862 mm, inside_diameter: 700 mm";
    let without = end(clay);
    assert_eq!(without.verdict, Verdict::NotDecided);
    for more in ["packer: { thickness: 13 mm }", "joint_stress_ratio: 0.4"] {
        let with = end(&format!("{clay}, {more}"));
        assert_eq!((with.verdict, with.settled_by), (without.verdict, without.settled_by), "{more}");
    }
    let concrete = format!("{PIPE}, strength: 41 MPa");
    let section = std::f64::consts::FRAC_PI_4 * (1.26 * 1.26 - 1.0);
    for more in ["", ", packer: { thickness: 13 mm }", ", joint_stress_ratio: 0.4", ", scheme: en_1916"] {
        let check = end(&format!("{concrete}{more}"));
        assert_eq!((check.verdict, check.care), (Verdict::WithCare, Some(Care::Condition)), "{more}");
    }
    let limit = |more: &str| end(&format!("{concrete}, joint_stress_ratio: 0.4{more}")).high().unwrap().1.si;
    let told = format!(", end_bearing_area: {} m2", 0.6 * section);
    assert_relative_eq!(limit(""), limit(&told), max_relative = 1e-9);
}

/// The maker's force counts, whatever else is told of the end: what then says nothing is listed, and changes nothing.
#[test]
fn the_force_of_the_maker_stands_beside_what_says_nothing() {
    let alone = format!("{PIPE}, rated_force: 4 MN");
    let force = |pipe: &str| end(pipe).high().unwrap().1.si;
    for (key, more) in [
        ("strength", "strength: 41 MPa"),
        ("cube_strength", "cube_strength: 50 MPa"),
        ("concrete_grade", "concrete_grade: c50"),
        ("scheme", "scheme: asce_27"),
        ("packer", "packer: { thickness: 13 mm }"),
        ("end_bearing_area", "end_bearing_area: 0.25 m2"),
    ] {
        let with = format!("{alone}, {more}");
        assert_eq!(force(&with), force(&alone), "{more}");
        let words = listed(&jacked::text("", &[&with]), &format!("candidates[0].{key}"));
        assert!(words.as_ref().is_some_and(|words| words.starts_with("not used: the maker's force")), "{words:?}");
    }
    // With area and strength both are limits: nothing of it is idle.
    let whole = format!("{alone}, strength: 41 MPa, end_bearing_area: 0.25 m2");
    assert_eq!(listed(&jacked::text("", &[&whole]), "candidates[0].strength"), None);
    // What no pipe can have stays a fault.
    let wide = format!("{alone}, packer: {{ thickness: 13 mm, outside_diameter: 1.3 m }}");
    assert!(told(&jacked::text("", &[&wide])).unwrap_err().contains("is wider than the pipe"));
}

/// Strength on cubes beside that on cylinders decides nothing, and is no fault.
#[test]
fn cubes_beside_cylinders_are_listed() {
    let pipe = format!("{PIPE}, strength: 40 MPa, end_bearing_area: 0.25 m2");
    let both = jacked::text("", &[&format!("{pipe}, cube_strength: 50 MPa")]);
    assert!(listed(&both, "candidates[0].cube_strength").unwrap().starts_with("not used: says nothing"));
    assert_eq!(end(&format!("{pipe}, cube_strength: 50 MPa")).high().unwrap().1.si, end(&pipe).high().unwrap().1.si);
}

/// What stands round a pipe can be told alone; what becomes of the annulus stays open then.
#[test]
fn soil_round_a_pipe_is_told_alone() {
    let with = |annulus: &str| main(|text| text.edit("pilot:", &format!("{annulus}pilot:")));
    let served = |text: &str| {
        let drive = drive(text);
        let scheme = assess(&drive, &drive.candidates()[0], Method::Pullback);
        *scheme.checks.get(Subject::Deflection).unwrap()
    };
    let (open, alone) = (served(&with("")), served(&with("annulus: { soil_modulus: 5 MPa }\n")));
    assert!(alone.high().unwrap().0.si < open.high().unwrap().0.si);
    assert!(told(&with("annulus: { grout_waste: 1.2 }\n")).unwrap_err().contains("add `filling: grouted`"));
    drive(&with("annulus: { filling: grouted, grout_waste: 1.2 }\n"));
}

/// A main under a creek whose bed begins and ends where the ground changes: the stretch that is full of water counts.
const CREEK: &str = "
service: pressure_main
length: 60 m
launch: { invert_depth: 4.8 m }
reception: { invert_depth: 4.8 m }
grade: 0 %
groundwater: 2.5 m
surface: { over: stream }
depths: [{ at: 20 m, invert_depth: 3 m }, { at: 35 m, invert_depth: 3 m }]
ground:
  - { to: 20 m, class: firm_to_very_stiff_clay, spt_n: 15, largest_stone: 0 mm }
  - { to: 35 m, class: firm_to_very_stiff_clay, spt_n: 15, largest_stone: 0 mm, groundwater: 0 m }
  - { class: firm_to_very_stiff_clay, spt_n: 15, largest_stone: 0 mm }
rig: { thrust: 450 kN, pull: 220 kN }
pull: { duration: 3 h, pipe_temperature: 24 degC }
candidates: [{ material: pe100, size: 250 mm, sdr: 11 }]
";

#[test]
fn a_bed_may_end_where_the_ground_changes() {
    drive(CREEK);
    assert_eq!(listed(CREEK, "ground[].groundwater"), None);
    // Where it goes on into the dry stretch that is taken to be full of water, and so are both at a boundary of two dry ones.
    for dry in [
        CREEK.edit("at: 35 m,", "at: 36 m,"),
        CREEK.edit("at: 20 m,", "at: 19 m,"),
        CREEK.edit(", groundwater: 0 m", ", groundwater: 1 m"),
    ] {
        assert!(listed(&dry, "ground[].groundwater").is_some_and(|taken| taken.contains("under the bed")), "{dry}");
    }
}

/// The grade gives the depth at the reception pit, of which more may be told without it; the launch pit needs its own.
#[test]
fn a_reception_pit_needs_no_depth_beside_the_grade() {
    let told_depth = main(|text| text);
    let wells = told_depth.edit("grade: 0.5 %", "reception: { dewatered: true }\ngrade: 0.5 %");
    assert_eq!(first(&wells).standing, first(&told_depth).standing);
    // Nothing of a main hangs on its grade: it is taken as level, which a sewer is not.
    let none = wells.edit("grade: 0.5 %\n", "");
    assert!(listed(&none, "reception.invert_depth").is_some_and(|taken| taken.contains("as deep as the launch pit")));
    assert!(told(&none.edit("pressure_main", "gravity_sewer")).unwrap_err().contains("and so is the grade"));
    let no_launch = told_depth.edit("invert_depth: 2 m", "dewatered: true");
    assert!(
        told(&no_launch).unwrap_err().starts_with("launch.invert_depth: the depth of the invert at the launch pit")
    );
}

const STEEL: &str = "  - { material: steel, size: 12 in, wall: 8 mm, steel_grade: api_5l_b }\n";

/// Lubrication is for what is pushed: where every pipe is pulled it may be left out, and nothing hangs on it.
#[test]
fn lubrication_is_asked_for_with_a_pipe_that_is_pushed() {
    let pulled = main(|text| text);
    let silent = pulled.edit("lubrication: none\n", "");
    let (one, other) = (choose(&drive(&pulled)).unwrap(), choose(&drive(&silent)).unwrap());
    assert_eq!(one.reason.to_string(), other.reason.to_string());
    let clay = sewer(|text| text.edit("lubrication: metered\n", ""));
    assert!(told(&clay).unwrap_err().contains("lubrication: the lubrication of a pipe that is pushed is missing"));
    // Steel goes in either way: pushed it is dry, and rubs no less than if the file says so.
    let either = silent.edit(MAIN_PE, STEEL);
    assert_eq!(listed(&either, "lubrication").as_deref(), Some("none"));
    let thrust = |text: &str| {
        let drive = drive(text);
        let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
        scheme.force.unwrap().high.si()
    };
    let said =
        |word: &str| thrust(&pulled.edit(MAIN_PE, STEEL).edit("lubrication: none", &format!("lubrication: {word}")));
    for word in ["none", "not_metered", "metered", "logged"] {
        assert!(thrust(&either) >= said(word), "{word}");
    }
}

/// The wall of iron and steel may be as warm as it will; that of plastic is taken as hot as the tables go, and the pull as a day.
#[test]
fn a_pull_that_is_not_told_is_hot_and_long() {
    let steel = main(|text| text.edit(MAIN_PE, STEEL));
    let silent = steel.edit(", pipe_temperature: 20 degC", "");
    let (one, other) = (choose(&drive(&steel)).unwrap(), choose(&drive(&silent)).unwrap());
    assert_eq!(one.reason.to_string(), other.reason.to_string());
    assert_eq!(listed(&silent, "pull.pipe_temperature"), None);
    let plastic = main(|text| text.edit(", pipe_temperature: 20 degC", ""));
    assert_eq!(listed(&plastic, "pull.pipe_temperature").as_deref(), Some("40.0 degC"));
}

/// A curve of 150 ft is none that pipe is jacked on, and no slip of unit: the checks bar it.
#[test]
fn a_tight_curve_is_barred_by_the_checks() {
    let tight = sewer(|text| text.edit("joint_angle: 0.1 deg", "curve_radius: 150 ft"));
    assert_eq!(first(&tight).standing, Standing::Barred);
    assert!(told(&tight.edit("150 ft", "9 m")).unwrap_err().contains("check the unit"));
}

/// Soft clay of two blows has no 96 kPa, 48 kPa a blow: soil handbooks tell 3.5 to 7 kPa.
#[test]
fn a_strength_far_beyond_the_blows_is_a_fault() {
    let clay = |class: &str, blows: u32, strength: &str| {
        let told_clay = format!("class: {class}, spt_n: {blows}, soil: {{ undrained_strength: {strength} }}");
        told(&text(|text| text.edit("class: firm_to_very_stiff_clay, spt_n: 12", &told_clay)))
    };
    for (class, blows, strength) in
        [("soft_clay", 2, "96 kPa"), ("soft_clay", 3, "90 kPa"), ("firm_to_very_stiff_clay", 30, "25 kPa")]
    {
        let message = clay(class, blows, strength).map(|_| ()).unwrap_err();
        assert!(message.contains("beside the blow count"), "{class} {blows} {strength}: {message}");
    }
    for (class, blows, strength) in [
        ("soft_clay", 0, "12 kPa"),
        ("soft_clay", 1, "25 kPa"),
        ("soft_clay", 2, "40 kPa"),
        ("firm_to_very_stiff_clay", 12, "75 kPa"),
        ("hard_clay", 40, "250 kPa"),
    ] {
        clay(class, blows, strength).unwrap();
    }
}

/// Steel whose grade is not told is the least of the table on the safe side, and the usual casing at best: never better than
/// one that is told.
#[test]
fn steel_of_no_grade_is_the_least() {
    let steel = "material: steel, size: 24 in, wall: 0.375 in";
    let at = |more: &str| end(&format!("{steel}{more}"));
    let limit = |check: &Check| check.high().unwrap().1.si;
    let untold = at("");
    for grade in ["a139_a", "a139_b", "api_5l_b", "a252_3"] {
        assert!(limit(&untold) <= limit(&at(&format!(", steel_grade: {grade}"))), "{grade}");
    }
    assert_eq!(limit(&untold), limit(&at(", steel_grade: a139_a")));
    assert!(limit(&untold) < limit(&at(", yield_strength: 235 MPa")));
    // What bars the least and not the usual is not decided, and the grade settles it.
    let text = |grade: &str| {
        let force = 0.97 * limit(&at(", steel_grade: a139_b"));
        let friction = force / (std::f64::consts::PI * 0.6096 * 80.0);
        let levels = format!("low: {friction} Pa, likely: {friction} Pa, high: {friction} Pa");
        jacked::text("", &[&format!("{steel}{grade}")])
            .edit("low: 4 kPa, likely: 7 kPa, high: 7 kPa", &levels)
            .edit("pull: 1 MN }", "pull: 1 MN, held_to: 50 MN }")
    };
    let drive = drive(&text(""));
    let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
    let check = scheme.checks.get(Subject::EndCapacity).unwrap();
    assert_eq!(check.verdict, Verdict::NotDecided, "{check:?}");
    assert_eq!(check.settled_by, [["candidates[].steel_grade"].as_slice()]);
}

/// A key in the wrong block is shown to its own.
#[test]
fn a_key_in_the_wrong_block_is_shown_where_it_belongs() {
    for (key, value) in [("contents", "empty"), ("string_on", "rollers"), ("welds", "documented")] {
        let message = told(&main(|text| format!("{text}{key}: {value}\n"))).unwrap_err();
        assert!(message.contains("it belongs under `pull`"), "{message}");
    }
    let inside = sewer(|text| text.edit("steering: { ", "steering: { tolerance: 30 mm, "));
    assert!(told(&inside).unwrap_err().contains("it belongs at the top level of the file"));
    // A guess goes before.
    let slip = sewer(|text| text.edit("launch:\n  invert_depth", "launch:\n  depth"));
    assert!(told(&slip).unwrap_err().contains("did you mean \"invert_depth\"?"));
}

/// Nothing else is asked for beside what the maker has to tell: the clay pipe of the shared sewer with its own packer.
#[test]
fn a_told_packer_asks_for_no_area() {
    let asked = |text: &str| -> Vec<&'static str> {
        asks(&first(text)).into_iter().flat_map(|ask| ask.ways).flatten().collect()
    };
    let other = TOLD_CLAY.edit("size: 10 in", "size: 250 mm, outside_diameter: 360 mm, inside_diameter: 250 mm");
    let waits = asked(&sewer(|text| text.edit(TOLD_CLAY, &other)));
    assert!(waits.contains(&"candidates[].rated_force"), "{waits:?}");
}

/// Water of which nobody knows how deep it lies counts at the surface and not at all, whichever is worse: what passes by
/// both passes, what is over by both is over, and what is over by one alone waits for the water.
#[test]
fn water_that_is_not_known_is_asked_for() {
    let at = |water: &str, text: &str| {
        let drive = drive(&text.edit("groundwater: 5.5 m", &format!("groundwater: {water}")));
        assess(&drive, &drive.candidates()[0], Method::PipeJacking)
    };
    let mut waits = 0;
    for text in [
        sewer(|text| text),
        sewer(|text| text.edit("firm_to_very_stiff_clay, spt_n: 14", "medium_to_dense_sand, spt_n: 20")),
        sewer(|text| text.edit("firm_to_very_stiff_clay, spt_n: 14", "silt, spt_n: 8")),
        sewer(|text| text.edit("thrust: 900 kN", "thrust: 100 kN")),
        sewer(|text| {
            text.edit("firm_to_very_stiff_clay, spt_n: 14", "medium_to_dense_sand, spt_n: 20")
                .edit("rig:", "spoil: auger\nrig:")
        }),
    ] {
        let (unknown, wet, dry) = (at("unknown", &text), at("0 m", &text), at("none", &text));
        for &subject in Subject::ALL {
            let made = |scheme: &jackpull::Scheme| scheme.checks.get(subject).map(|check| check.verdict);
            let Some(verdict) = made(&unknown) else {
                assert!(made(&wet).is_none() || made(&dry).is_none(), "{}", subject.label());
                continue;
            };
            let told: Vec<Verdict> = [made(&wet), made(&dry)].into_iter().flatten().collect();
            // Known it may be anywhere between, and never worse than what is not known.
            assert!(told.iter().all(|told| verdict >= *told || *told == Verdict::Over), "{}", subject.label());
            let over = told.iter().filter(|told| **told == Verdict::Over).count();
            assert_eq!(verdict == Verdict::Over, over == 2, "{}: {told:?}", subject.label());
            let by_water = told.len() == 1 || told[0] != told[1];
            if by_water && verdict >= Verdict::NotDecided {
                waits += over;
                let check = unknown.checks.get(subject).unwrap();
                assert_eq!(check.verdict, Verdict::NotDecided, "{}", subject.label());
                assert_eq!(check.settled_by, [["groundwater"].as_slice()], "{}", subject.label());
            }
        }
        assert!(unknown.force.unwrap().high >= wet.force.unwrap().high.max(dry.force.unwrap().high));
        let listed = listed(&text.edit("groundwater: 5.5 m", "groundwater: unknown"), "groundwater");
        assert!(listed.unwrap().starts_with("at the ground surface, and none"));
    }
    assert!(waits > 0);
    // It is asked for, though the file has the key.
    let sand = sewer(|text| {
        text.edit("firm_to_very_stiff_clay, spt_n: 14", "medium_to_dense_sand, spt_n: 20")
            .edit("groundwater: 5.5 m", "groundwater: unknown")
    });
    let asked: Vec<&str> = asks(&first(&sand)).into_iter().flat_map(|ask| ask.ways).flatten().collect();
    assert!(asked.contains(&"groundwater"), "{asked:?}");
    // Of one stretch alone too.
    let stretch = sewer(|text| text.edit("spt_n: 14,", "spt_n: 14, groundwater: unknown,"));
    assert!(listed(&stretch, "ground[].groundwater").is_some());
    // Ground water under a stream stands at its bed, whatever is not known elsewhere.
    drive(&CREEK.edit("groundwater: 2.5 m", "groundwater: unknown"));
    let message = told(&sewer(|text| text.edit("groundwater: 5.5 m", "groundwater: deep"))).unwrap_err();
    assert!(message.contains("\"none\" or \"unknown\""), "{message}");
}

/// Steel of European grades yields by its name, and by 10 MPa less in walls over 16 mm; EN 1916 names a class by its strength.
#[test]
fn grades_and_classes_of_europe_are_known() {
    for (grade, wall, yields) in [
        ("s235", "10 mm", 235e6),
        ("s275", "12 mm", 275e6),
        ("s275", "20 mm", 265e6),
        ("s355", "16 mm", 355e6),
        ("p235", "8 mm", 235e6),
    ] {
        let steel = |strength: &str| {
            end(&format!("material: steel, size: 1016 mm, wall: {wall}, {strength}")).high().unwrap().1.si
        };
        let told = steel(&format!("yield_strength: {} MPa", yields / 1e6));
        assert!((steel(&format!("steel_grade: {grade}")) - told).abs() < 1.0, "{grade} {wall}");
    }
    let crushing = |more: &str| {
        let drive = drive(&jacked::text("surface: { over: road }", &[&format!("{PIPE}, strength: 41 MPa{more}")]));
        let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
        scheme.checks.get(Subject::Crushing).unwrap().high().unwrap().1.si
    };
    assert!((crushing(", crushing: en_1916_120") - 120e3).abs() < 1.0);
    // Untold, more than class II bears is asked for, up to class V, 3,750 lbf/ft2: class I is made from 60 in on.
    assert!((crushing("") - 3_750.0 * 47.880_26).abs() < 1.0);
}

/// What a usual value does for is taken and listed: the edge of an open shield, and a joint that is turned on its ramp.
#[test]
fn an_edge_and_a_turned_joint_are_taken_as_usual() {
    let open = text(|text| {
        text.edit("rig:", "spoil: open_edge\nrig:")
            .edit("stem: { outside_diameter: 100 mm, head_diameter: 100 mm }\n", "pilot: none\n")
            .edit("pull: { duration: 6 h, pipe_temperature: 25 degC }\n", "")
            .edit("  - { material: pe100, size: 315 mm, sdr: 11 }\n", "")
    });
    assert_eq!(listed(&open, "cutting_edge").as_deref(), Some("25.0 mm"));
    let iron = "  - { material: ductile_iron, size: 300 mm, wall: 8 mm, joint_pressure: 25 bar, joint_deflection: 3 deg, pipe_length: 5.5 m }\n";
    let main = main(|text| text.edit(MAIN_PE, iron));
    assert!(listed(&main, "candidates[0].joint_deflection_factor").is_some());
}
