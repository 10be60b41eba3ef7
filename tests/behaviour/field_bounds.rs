//! What a number of the file may be at all, what it usually is, and what is told of the rest.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::check::{Subject, Verdict};
use jackpull::drive_file::fields::{Bounds, Number, Shape, Spec};
use jackpull::quantity::{Dim, UnitSystem};
use jackpull::yaml::Form;
use jackpull::{Choice, DriveFile, Handbook, InputError, Method, choose, read_drive};
use serde_json::{Value, json};

/// A number in SI base units.
fn written(dim: Dim, si: f64) -> Value {
    let factors = [("m", dim.length), ("kg", dim.mass), ("s", dim.time), ("K", dim.temperature), ("rad", dim.angle)];
    let power = |(unit, exponent): &(&str, i8)| match exponent {
        1 => (*unit).to_owned(),
        _ => format!("{unit}^{exponent}"),
    };
    let units: Vec<String> = factors.iter().filter(|(_, exponent)| *exponent != 0).map(power).collect();
    if units.is_empty() { json!(si) } else { json!(format!("{si:e} {}", units.join("*"))) }
}

/// A drive in which every field is given, each as its example.
fn every_field() -> Value {
    fn one(spec: &Spec, form: Form) -> Value {
        match (form, spec.number) {
            (_, Some(number)) => json!(number.example[0]),
            (Form::Word(words), None) => json!(words[0]),
            (Form::YesNo, None) => json!(true),
            (_, None) => json!("some words"),
        }
    }
    fn block(specs: &[Spec]) -> Value {
        let value = |spec: &Spec| match spec.shape {
            Shape::One(form) => one(spec, form),
            Shape::List(form) => json!([one(spec, form)]),
            Shape::Band(form) => json!({ "low": one(spec, form), "likely": one(spec, form), "high": one(spec, form) }),
            Shape::Block(specs) => block(specs),
            Shape::Blocks(specs) => json!([block(specs)]),
        };
        specs.iter().map(|spec| (spec.key.to_owned(), value(spec))).collect()
    }
    block(DriveFile::FIELDS)
}

/// Each number of a file with every field: its path as told, where it stands in the value, what is said of it.
fn numbers() -> Vec<(String, String, Number)> {
    fn walk(specs: &[Spec], path: &str, place: &str, found: &mut Vec<(String, String, Number)>) {
        for spec in specs {
            let dot = if path.is_empty() { "" } else { "." };
            let (path, place) = (format!("{path}{dot}{}", spec.key), format!("{place}/{}", spec.key));
            match (spec.shape, spec.number) {
                (Shape::One(_), Some(number)) => found.push((path, place, number)),
                (Shape::List(_), Some(number)) => found.push((format!("{path}[0]"), format!("{place}/0"), number)),
                (Shape::Band(_), Some(number)) => {
                    for level in ["low", "likely", "high"] {
                        found.push((format!("{path}.{level}"), format!("{place}/{level}"), number));
                    }
                }
                (Shape::Block(specs), _) => walk(specs, &path, &place, found),
                (Shape::Blocks(specs), _) => walk(specs, &format!("{path}[0]"), &format!("{place}/0"), found),
                (Shape::One(_) | Shape::List(_) | Shape::Band(_), None) => {}
            }
        }
    }
    let mut found = Vec::new();
    walk(DriveFile::FIELDS, "", "", &mut found);
    found
}

fn faults_of(drive: &Value) -> Vec<String> {
    let text = serde_yaml::to_string(drive).unwrap();
    let file = DriveFile::read(&text).unwrap_or_else(|error| panic!("{error}\n{text}"));
    match file.resolve(&Handbook::embedded()) {
        Err(InputError::Faults(faults)) => faults.iter().map(ToString::to_string).collect(),
        Err(error) => panic!("{error}"),
        Ok(_) => Vec::new(),
    }
}

/// What is out of bounds is told of every number of the file, and of none within.
#[test]
fn every_number_keeps_its_bounds() {
    let drive = every_field();
    let told = |drive: &Value, path: &str| {
        let begins = format!("{path}: expected ");
        let bounded =
            |fault: &String| fault.starts_with(&begins) && fault.contains(", got ") && !fault.contains(" beside ");
        faults_of(drive).into_iter().find(bounded)
    };
    let numbers = numbers();
    assert!(numbers.len() > 200, "{}", numbers.len());
    for (path, place, number) in &numbers {
        assert_eq!(told(&drive, path), None);
        let dim = number.role.dim();
        let (below, above) = match number.bounds {
            Bounds::UpTo(most) => (0.0, most * 1.001),
            Bounds::Within(least, most) => (least - 0.001 * (most - least).min(least.abs().max(1e-9)), most * 1.001),
        };
        for si in [below, above] {
            let mut faulty = drive.clone();
            *faulty.pointer_mut(place).unwrap() = written(dim, si);
            let fault = told(&faulty, path).unwrap_or_else(|| panic!("{path} of {si} is taken"));
            let slip = fault.contains("check the unit and the decimal point") || fault.contains("write for example");
            assert!(slip, "{fault}");
        }
    }
}

/// What is usual is possible, and the example of a field is usual.
#[test]
fn the_usual_lies_within_the_possible() {
    for (path, _, number) in numbers() {
        let Some((least, most)) = number.usual else { continue };
        let (from, to) = match number.bounds {
            Bounds::UpTo(to) => (0.0, to),
            Bounds::Within(from, to) => (from, to),
        };
        assert!(from <= least && least <= most && most <= to, "{path}: {least} to {most} in {from} to {to}");
    }
}

fn told(change: &[(&str, &str)]) -> String {
    let text = text(|text| change.iter().fold(text, |text, (from, to)| text.edit(from, to)));
    match read_drive(&text, &Handbook::embedded()) {
        Err(error) => error.to_string(),
        Ok(_) => panic!("taken:\n{text}"),
    }
}

/// Slips that were once taken, each told at its field.
#[test]
fn what_cannot_be_is_refused() {
    let rig = "thrust: 900 kN";
    let ground = "spt_n: 12, largest_stone: 20 mm";
    for (from, to, wanted) in [
        ("groundwater: 5.5 m", "groundwater: 55 km", "groundwater: expected a length from 0.00 m to 200.00 m"),
        ("duration: 6 h", "duration: 1e-300 s", "pull.duration: expected a duration from "),
        (rig, "thrust: 300 MN", "rig.thrust: expected a force from "),
        ("rig:", "tolerance: 30 km\nrig:", "tolerance: expected a length from 2 mm to 500 mm"),
        ("25 degC", "25 degC, inside_pressure: 20 MPa", "pull.inside_pressure: expected a pressure or stress from "),
        ("material: clay, size: 10 in", "material: concrete, size: 600 mm, strength: 20 GPa", "strength: expected"),
        ("material: clay, size: 10 in", "material: concrete, size: 600 mm, strength: 180 MPa", "beside the material"),
        (
            ground,
            "spt_n: 12, largest_stone: 20 mm, soil: { moist: 2 kN/m3, friction_angle: 25 deg }",
            "ground[0].soil.moist: expected",
        ),
        (
            ground,
            "spt_n: 12, largest_stone: 20 mm, soil: { moist: 18 kN/m3, friction_angle: 25 deg, undrained_strength: 5000 kPa }",
            "ground[0].soil.undrained_strength: expected a pressure or stress from 1.00 kPa to 2000.00 kPa",
        ),
        (
            ground,
            "spt_n: 12, largest_stone: 20 mm, soil: { moist: 18 kN/m3, friction_angle: 25 deg, undrained_strength: 1000 kPa }",
            "beside the class of the ground",
        ),
        (
            ground,
            "spt_n: 12, largest_stone: 20 mm, unit_friction: { low: 0 kPa, likely: 0 kPa, high: 0 kPa }",
            "ground[0].unit_friction.high: expected",
        ),
        (
            ground,
            "spt_n: 12, largest_stone: 20 mm, unit_friction: { low: 3 Pa, likely: 8 Pa, high: 20 Pa }",
            "ground[0].unit_friction.high: expected",
        ),
    ] {
        let message = told(&[(from, to)]);
        assert!(message.contains(wanted), "{to}: no {wanted} in {message}");
    }
}

/// A slope without its % is a slip; one that is flat enough may be meant.
#[test]
fn a_slope_without_a_unit_is_a_slip() {
    let with = |grade: &str| text(|text| text.edit("reception: { invert_depth: 3.96 m }", &format!("grade: {grade}")));
    let taken = |grade: &str| read_drive(&with(grade), &Handbook::embedded()).map_err(|error| error.to_string());
    let bare = taken("0.2").unwrap_err();
    let wanted =
        "grade: expected a slope with its %, got 0.2, which is 20 % (write \"0.2 %\", or \"20 %\" if that is meant)";
    assert!(bare.starts_with(wanted), "{bare}");
    assert!(taken("-0.4").unwrap_err().contains("grade: expected a plain number or a percentage from -30"));
    assert!(taken("0.004").is_ok() && taken("0.4 %").is_ok());
    assert!(taken(".nan").unwrap_err().contains("grade"), "{:?}", taken(".nan").err());
    assert!(taken(".inf").unwrap_err().contains("grade"));
}

fn choice(text: &str) -> Choice {
    choose(&drive(text)).unwrap()
}

/// What is beyond the usual is used and told, and fits with care at best where it counts.
#[test]
fn what_is_seldom_is_told_and_asks_for_care() {
    let usual = |choice: &Choice, method| {
        let ranked = choice.ranked.iter().find(|ranked| ranked.scheme.method == method && !ranked.scheme.is_excluded());
        ranked.unwrap().scheme.checks.get(Subject::Usual).map(|check| check.verdict)
    };
    let both = |change: &dyn Fn(String) -> String| {
        let choice = choice(&text(change));
        [Method::PipeJacking, Method::Pullback].map(|method| usual(&choice, method))
    };
    let care = Some(Verdict::WithCare);
    assert_eq!(both(&|text| text), [None, None]);
    for (from, to, wanted) in [
        ("thrust: 900 kN", "thrust: 9000 kN", [care, care]),
        ("rig:", "tolerance: 200 mm\nrig:", [care, care]),
        ("rig:", "steering: { joint_angle: 0.4 deg }\nrig:", [care, None]),
        ("25 degC", "25 degC, ramp_angle: 30 deg", [None, care]),
        ("material: clay, size: 10 in", "material: clay, size: 10 in, bore: 480 mm", [care, None]),
        ("largest_stone: 0 mm", "largest_stone: 400 mm", [care, care]),
    ] {
        assert_eq!(both(&|text| text.edit(from, to)), wanted, "{to}");
    }
    let drive = drive(&text(|text| text.edit("thrust: 900 kN", "thrust: 9000 kN")));
    let told: Vec<String> = drive.unusual_for(0, Method::PipeJacking).map(|one| one.text(UnitSystem::Si)).collect();
    let wanted =
        "rig.thrust: 9000.0 kN is outside the usual 20.0 kN to 8000.0 kN; what depends on it fits with care at best.";
    assert_eq!(told, [wanted]);
}
