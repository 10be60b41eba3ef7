//! The crate as another crate sees it: a drive made in code, assessed and printed through published names alone.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs,
    reason = "a test that fails should stop"
)]

mod hostile;

use jackpull::drive_file::{
    CandidateFile, Certificate, DriveFile, Material, Over, PitFile, RigFile, StretchFile, SurfaceFile, WaterTable,
};
use jackpull::handbook::{GroundClass, Lubrication, Service};
use jackpull::quantity::{
    self, Force, FromText, Length, Measure, Pressure, Ratio, ThermodynamicTemperature, Time, UnitSystem,
};
use jackpull::report::Beside;
use jackpull::source::Origin;
use jackpull::yaml::Words;
use jackpull::{Handbook, Report, Standing, choose};

fn file() -> DriveFile {
    let stretch = StretchFile {
        spt_n: Some(quantity::number(12.0).into()),
        largest_stone: Some(quantity::millimetres(0.0).into()),
        ..StretchFile::new(GroundClass::FirmToVeryStiffClay)
    };
    let clay = CandidateFile {
        certificate: Some(Certificate::En295.into()),
        ..CandidateFile::new(Material::Clay, quantity::inches(10.0))
    };
    let (thrust, pull) = (quantity::kilonewtons(900.0), quantity::kilonewtons(500.0));
    let pit = PitFile::at(quantity::metres(4.2));
    DriveFile {
        name: Some(Words("Quarry Row".to_owned()).into()),
        grade: Some(quantity::percent(0.4).into()),
        lubrication: Some(Lubrication::Metered.into()),
        rig: Some(RigFile { thrust: Some(thrust.into()), pull: Some(pull.into()), ..RigFile::new() }),
        surface: Some(SurfaceFile { over: Some(Over::Road.into()), ..SurfaceFile::new() }),
        candidates: vec![clay],
        ..DriveFile::new(Service::GravitySewer, quantity::metres(60.0), pit, WaterTable::None, vec![stretch])
    }
}

#[test]
fn a_drive_made_in_code_is_assessed_and_printed() {
    let (file, handbook) = (file(), Handbook::embedded());
    let drive = file.resolve(&handbook).unwrap();
    let choice = choose(&drive).unwrap();
    let first = choice.chosen().unwrap();
    let named = format!("{} of {}: {}", first.scheme.method, first.pipe.label(), first.standing);
    // Nothing is told of its joints, so it fits on condition.
    assert_eq!((named.as_str(), first.standing), ("pipe jacking of clay 10 in: fits with care", Standing::WithCare));
    let governing = first.scheme.governing().unwrap();
    assert_eq!((governing.subject.to_string(), governing.verdict.to_string()), {
        ("pipe end, jacking force".to_owned(), "with care".to_owned())
    });
    let reference = handbook.reference(governing.basis).to_string();
    assert!(reference.contains('(') && !matches!(governing.basis, Origin::File(_)), "{reference}");

    let beside = Beside::of(&file, &handbook, &drive, &choice).unwrap();
    let report = Report::new(&drive, &choice).with(&beside);
    let [si, us] = [UnitSystem::Si, UnitSystem::Us].map(|system| report.text(system).unwrap());
    assert!(si.contains("Drive    Quarry Row\n") && si.contains("60.0 m long"), "{si}");
    assert!(us.contains("197 ft long") && !us.contains(" kN"), "{us}");
    let json: serde_json::Value = serde_json::from_str(&report.json(UnitSystem::Us).unwrap()).unwrap();
    assert_eq!((json["units"].as_str(), json["drive_digest"].as_str()), (Some("us"), None));
    assert_eq!(json["schemes"][0]["force"]["high"]["unit"], "kip");
    let pages = report.text_in_full(UnitSystem::Si).unwrap();
    assert!(pages.len() >= si.len());
}

/// A narrow terminal loses no word, and a line is no wider than it.
#[test]
fn a_text_is_as_wide_as_it_is_asked_to_be() {
    let (file, handbook) = (file(), Handbook::embedded());
    let drive = file.resolve(&handbook).unwrap();
    let choice = choose(&drive).unwrap();
    let written = file.to_yaml().unwrap();
    let report = Report::new(&drive, &choice).as_written(&written);
    let words = |page: &str| page.lines().filter(|line| !line.starts_with("---")).collect::<String>().replace(' ', "");
    let wide = report.text_in_full(UnitSystem::Si).unwrap();
    for columns in [60, 72, 100] {
        let page = report.in_columns(columns).text_in_full(UnitSystem::Si).unwrap();
        let widest = page.lines().map(|line| line.chars().count()).max();
        assert!(widest.is_some_and(|widest| widest <= columns), "{columns}: {widest:?}");
        assert_eq!(words(&page), words(&wide), "{columns}");
        assert_eq!(page == wide, columns == 100, "{columns}");
    }
}

/// Each short constructor against the same quantity read from text.
#[test]
fn short_constructors_are_exact() {
    fn same<Q: FromText + Measure>(short: fn(f64) -> Q, unit: &str) {
        let (one, read) = (short(37.25).si(), Q::from_text(&format!("37.25 {unit}")).unwrap().si());
        assert!((one - read).abs() <= 1e-15 * read.abs(), "{unit}: {one} for {read}");
    }
    same::<Length>(quantity::metres, "m");
    same::<Length>(quantity::millimetres, "mm");
    same::<Length>(quantity::feet, "ft");
    same::<Length>(quantity::inches, "in");
    same::<Force>(quantity::kilonewtons, "kN");
    same::<Force>(quantity::kips, "kip");
    same::<Pressure>(quantity::kilopascals, "kPa");
    same::<Pressure>(quantity::psi, "psi");
    same::<Ratio>(quantity::number, "");
    same::<Ratio>(quantity::percent, "%");
    same::<Time>(quantity::hours, "h");
    same::<ThermodynamicTemperature>(quantity::celsius, "degC");
    same::<ThermodynamicTemperature>(quantity::fahrenheit, "degF");
}
