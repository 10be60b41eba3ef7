//! `schema` agrees with what the reader takes, by a validator of its own.

use crate::run::{SEWER, example, file, jackpull, stdout};
use jackpull::DriveFile;
use jackpull::drive_file::fields::{Shape, Spec};
use jackpull::yaml::Form;
use serde_json::{Value, json};
use sha2::Digest as _;

/// Says what is wrong with a drive.
struct Validator {
    schemas: boon::Schemas,
    index: boon::SchemaIndex,
}

impl Validator {
    fn new() -> Self {
        let output = jackpull(&["schema"]);
        assert_eq!(output.status.code(), Some(0));
        Self::of(serde_json::from_str(&stdout(&output)).unwrap())
    }

    fn of(schema: Value) -> Self {
        let mut compiler = boon::Compiler::new();
        compiler.add_resource("drive.json", schema).unwrap();
        let mut schemas = boon::Schemas::new();
        let index = compiler.compile("drive.json", &mut schemas).unwrap();
        Self { schemas, index }
    }

    fn takes(&self, drive: &Value) -> Result<(), String> {
        self.schemas.validate(drive, self.index).map_err(|error| format!("{error:#}"))
    }
}

fn parsed(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap()
}

fn examples() -> Vec<String> {
    let folder = std::fs::read_dir(example("")).unwrap().map(|entry| entry.unwrap().path());
    let drives = folder.filter(|path| path.extension().is_some_and(|extension| extension == "yaml"));
    let texts: Vec<String> = drives.map(|path| std::fs::read_to_string(path).unwrap()).collect();
    assert!(texts.len() > 5, "the drives of the examples are gone");
    texts
}

#[test]
fn examples_and_templates_are_valid() {
    let validator = Validator::new();
    let templates = ["gravity_sewer", "pressure_main", "casing"].into_iter().flat_map(|service| {
        ["si", "us"].map(|units| stdout(&jackpull(&["template", "--service", service, "--units", units])))
    });
    for text in examples().into_iter().chain(templates) {
        assert_eq!(validator.takes(&parsed(&text)), Ok(()), "{text}");
    }
}

/// A drive in which every field is given, each as its example.
fn every_field(us: usize) -> Value {
    fn one(spec: &Spec, form: Form, us: usize) -> Value {
        match (form, spec.number) {
            (_, Some(number)) => json!(number.example[us]),
            (Form::Word(words), None) => json!(words[0]),
            (Form::YesNo, None) => json!(true),
            (_, None) => json!("some words"),
        }
    }
    fn block(specs: &[Spec], us: usize) -> Value {
        let value = |spec: &Spec| match spec.shape {
            Shape::One(form) => one(spec, form, us),
            Shape::List(form) => json!([one(spec, form, us)]),
            Shape::Band(form) => {
                json!({ "low": one(spec, form, us), "likely": one(spec, form, us), "high": one(spec, form, us) })
            }
            Shape::Block(specs) => block(specs, us),
            Shape::Blocks(specs) => json!([block(specs, us)]),
        };
        specs.iter().map(|spec| (spec.key.to_owned(), value(spec))).collect()
    }
    block(DriveFile::FIELDS, us)
}

/// The reader takes the example of every field in both families of units, and so does the schema.
#[test]
fn the_example_of_every_field_is_read() {
    let validator = Validator::new();
    for us in [0, 1] {
        let drive = every_field(us);
        let text = serde_yaml::to_string(&drive).unwrap();
        let read = DriveFile::read(&text).unwrap_or_else(|error| panic!("{error}\n{text}"));
        assert_eq!(validator.takes(&drive), Ok(()), "{text}");
        // As the library writes it, in SI base units, it is valid too.
        let written = read.to_yaml().unwrap();
        assert_eq!(validator.takes(&parsed(&written)), Ok(()), "{written}");
    }
}

/// Each fault is refused by the schema where the reader refuses it.
#[test]
fn a_faulty_drive_is_refused() {
    let validator = Validator::new();
    let drive = every_field(0);
    let faults: &[(&str, Value)] = &[
        ("/length", json!("60")),
        ("/length", json!(60)),
        ("/length", json!("60 kN")),
        ("/length", json!("60 m2")),
        ("/length", json!("60 metres")),
        ("/length", json!("sixty m")),
        ("/length", json!(["60 m"])),
        ("/service", json!("sewer")),
        ("/groundwater", json!("nowhere")),
        ("/launch", json!("4 m")),
        ("/launch", json!({})),
        ("/launch", json!({ "invert_depth": "4 m", "depth": "4 m" })),
        ("/rig/thrust", json!("900 kPa")),
        ("/rig/thrust", json!("900 kN/m")),
        ("/face", json!({ "low": "1 kN", "high": "2 kN" })),
        ("/ground", json!({ "class": "silt" })),
        ("/ground/0/class", json!("mud")),
        ("/ground/0/spt_n", json!(-12)),
        ("/ground/0/hazards/0", json!("wolves")),
        ("/ground/0/soil/moist", json!("18 kg/m3")),
        ("/candidates/0/sdr", json!(4)),
        ("/candidates/0/crushing", json!("20 kPa")),
        ("/candidates/0/passes", json!("400 mm")),
        ("/candidates/0/price/price", json!("250 m")),
        ("/pull/pipe_temperature", json!("25 deg")),
    ];
    for (place, value) in faults {
        let mut faulty = drive.clone();
        let at = faulty.pointer_mut(place).unwrap_or_else(|| panic!("{place}"));
        assert_ne!(at, value);
        *at = value.clone();
        assert!(validator.takes(&faulty).is_err(), "{place}: {value}");
    }
    for key in ["service", "length", "launch", "groundwater", "ground"] {
        let mut faulty = drive.clone();
        assert!(faulty.as_object_mut().unwrap().remove(key).is_some());
        assert!(validator.takes(&faulty).is_err(), "{key}");
        assert!(DriveFile::read(&serde_yaml::to_string(&faulty).unwrap()).is_err(), "{key}");
    }
}

/// Each field is told what it is, and no key or label stands for two.
#[test]
fn every_field_is_told() {
    fn walk(specs: &[Spec], told: &mut usize) {
        for (index, spec) in specs.iter().enumerate() {
            *told += 1;
            let path = spec.names[0].0;
            assert!(spec.doc.len() > 4 && spec.doc.ends_with('.'), "{path}: {}", spec.doc);
            assert!(path.ends_with(spec.key), "{path}");
            assert!(specs[..index].iter().all(|other| other.key != spec.key), "{path}");
            let alike = |other: &&Spec| spec.label.is_some() && other.label == spec.label;
            // A grade is one of steel or of concrete, and no pipe has both.
            assert!(specs[..index].iter().find(alike).is_none_or(|_| spec.label == Some("grade")), "{path}");
            if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
                walk(inner, told);
            }
        }
    }
    let mut told = 0;
    walk(DriveFile::FIELDS, &mut told);
    assert!(told > 200, "{told}");
}

/// What is kept of the schema of an answer: a change of it is told to those who read answers, and by another `version`
/// where it takes something away.
const OF_RESULT: &str = "f2be6f8e3373f8d2ee540fdd4ebbcc3cae80928492c1b3b57c1da6c215540cdf";

/// Codes of checks: more come freely, none goes without another `version`.
const CODES: &str = "\
    stem_thrust stem_buckling stem_snaking stem_joint stem_torque auger_torque auger_drag casing_thrust \
    casing_section casing_column casing_joint jacking_thrust end_capacity joint_angle curve_bending pipe_column \
    collapse_while_pushed tension tension_and_bending collapse steel_interaction steel_interaction_normal strain \
    strain_with_bend inside_pressure pull_head weak_link weak_link_pull pushed_tail tail_snaking tail_grip \
    collapsed_bore collapse_in_grout collapse_in_service vacuum service_pressure deflection pull_reaction break_out \
    reamed_bore grout_pressure ramp_room rig_pull reaming_pull stem_pull reaming_torque reaming_step bore \
    bend_radius thrust_wall wall_level wall_movement least_wall crushing invert carrier_room carrier_grade \
    bore_stands clay_closes ground usual length diameter least_slope back_fall sag grade_floor flow_capacity \
    self_cleaning cover railway_casing surface_settlement surface_slope service_settlement service_slope \
    service_clearance face_stability face_support pit_heave pit_boiling pit_uplift plug pit_length pit_width \
    reception_length reception_width launch_area reception_area crane_lift jack_stroke programme";

/// Every answer in every form of JSON keeps to the schema of answers, with the numbers of its file among them, and so does
/// the answer for a file that is refused.
#[test]
fn answers_keep_to_their_schema() {
    let output = jackpull(&["schema", "--of", "result"]);
    let schema: Value = serde_json::from_str(&stdout(&output)).unwrap();
    let validator = Validator::of(schema.clone());
    let codes: Vec<String> = jackpull::check::Subject::ALL.iter().map(|subject| subject.code()).collect();
    let gone: Vec<&str> = CODES.split_whitespace().filter(|code| !codes.iter().any(|other| other == code)).collect();
    assert!(gone.is_empty(), "{gone:?} of {codes:?}");
    let digest: String = sha2::Sha256::digest(schema.to_string()).iter().map(|byte| format!("{byte:02x}")).collect();
    assert_eq!(digest, OF_RESULT, "the schema of answers has changed");

    let folder = example("");
    let full = stdout(&jackpull(&["template", "--service", "pressure_main"])) + "line: { length: 400 m }\n";
    let faulty = file("of_result_faulty.yaml", b"length: 3\n");
    let more = [file("of_result_full.yaml", full.as_bytes()), file("of_result.yaml", SEWER.as_bytes()), faulty];
    let [full, sewer, faulty] = &more;
    let mut answers = 0;
    for units in ["si", "us"] {
        let lines =
            stdout(&jackpull(&["assess", "--units", units, "--format", "ndjson", &folder, full, sewer, faulty]));
        for line in lines.lines() {
            let answer: Value = serde_json::from_str(line).unwrap();
            assert_eq!(validator.takes(&answer), Ok(()), "{units}: {line}");
            answers += 1;
        }
        let list = stdout(&jackpull(&["assess", "--units", units, "--format", "json", sewer, faulty]));
        assert_eq!(validator.takes(&serde_json::from_str(&list).unwrap()), Ok(()), "{list}");
    }
    assert!(answers > 16, "{answers}");
    let mut answer: Value =
        serde_json::from_str(&stdout(&jackpull(&["assess", "--units", "us", "--format", "json", sewer]))).unwrap();
    let input = |path: &str| {
        let inputs = answer["inputs"].as_array().unwrap();
        let input = inputs.iter().find(|input| input["path"] == path).unwrap_or_else(|| panic!("{path} in {inputs:?}"));
        (input["value"].as_f64().unwrap(), input["unit"].as_str().unwrap().to_owned())
    };
    // 40 m over 0.3048, and 1,500 kN over 4.448222.
    let ((length, feet), (thrust, kips)) = (input("length"), input("rig.thrust"));
    assert!((length - 131.2336).abs() < 1e-3 && feet == "ft", "{length} {feet}");
    assert!((thrust - 337.213).abs() < 1e-2 && kips == "kip", "{thrust} {kips}");
    assert_eq!(input("candidates[0].size"), (10.0, "in".to_owned()));
    // One key more is no answer of this schema.
    answer["more"] = json!(1);
    assert!(validator.takes(&answer).is_err());
}
