//! An equation used outside its range puts in doubt all that rests on it: nothing is decided by such a value.

use crate::drives::drive;
use crate::edit::Edit;
use crate::pull_works::{check, pulled, text};
use jackpull::check::{Subject, Verdict};
use jackpull::law::{Calc, Doubted};
use jackpull::laws::deflection::ScoredWall;
use jackpull::method::figures;
use jackpull::quantity::{FromText, Length, Measure, Ratio};
use jackpull::{Method, explain};

const SOFT: &str = "groundwater: none
ground: [{ class: soft_clay, spt_n: 3, largest_stone: 0 mm, soil: { moist: 18 kN/m3, friction_angle: 10 deg } }]";
const EXAMPLES: [&str; 3] = [
    include_str!("../../examples/fennbridge_kiln_bank.yaml"),
    include_str!("../../examples/fennbridge_mill_lane.yaml"),
    include_str!("../../examples/fennbridge_quarry_road.yaml"),
];
const PULLED: [&str; 6] = [
    "material: pe100, size: 315 mm, sdr: 17",
    "material: pvc_fused, size: 10 in, sdr: 18, joint_factor: 0.9",
    "material: pvc_restrained, size: 10 in, sdr: 18, joint_pull: 200 kN, joint_diameter: 14 in, joint_deflection: 2 deg, \
     pipe_length: 6 m",
    "material: steel, size: 12 in, wall: 0.375 in, steel_grade: api_5l_b",
    "material: ductile_iron, size: 300 mm, joint_pull: 300 kN, joint_deflection: 3 deg, pipe_length: 6 m",
    "material: clay, size: 10 in",
];

/// A wall scored beyond half of it, of which nothing is told.
fn scored(calc: &mut Calc, share: &str) -> Length {
    calc.law(ScoredWall { wall: Length::from_si(0.01), depth_share: Ratio::from_text(share).unwrap() })
}

#[test]
fn doubt_goes_with_the_value() {
    let calc = &mut Calc::silent();
    let [sure, beyond] = ["10 %", "60 %"].map(|share| calc.doubted(|calc| scored(calc, share)));
    let name = Some("wall after scoring");
    let by = |doubted: Doubted<_>| doubted.doubt().map(|equation| equation.name);
    assert_eq!((by(sure), by(beyond)), (None, name));
    assert!(sure.if_sure().is_some() && beyond.if_sure().is_none());
    assert_eq!(by(sure.zip(beyond).map(|(one, _)| one)), name);
    assert_eq!(by(beyond.zip(sure).map(|(_, other)| other)), name);
    assert_eq!(by(beyond.and_then(|_| sure)), name);
    assert_eq!(by(sure.and_then(|_| beyond)), name);
    let after = calc.doubted(|calc| calc.take(beyond));
    assert_eq!((by(after), calc.leftover()), (name, None));
    scored(calc, "60 %");
    assert_eq!(calc.leftover().map(|equation| equation.name), name);
}

/// Four metres of soft clay on a thin pipe that nothing supports: the form of its deflection ends at a tenth, where it fails
/// already.
#[test]
fn deflection_beyond_its_form_is_over() {
    let file = text("pressure_main", "60 m", "duration: 6 h", &format!("{SOFT}\ntraffic: none"), PULLED[0]);
    let bent = check(&pulled(&file), Subject::Deflection);
    assert!(bent.high().unwrap().0.si > 0.1);
    assert_eq!((bent.verdict, bent.doubt), (Verdict::Over, None));
}

/// The stresses of PE are tabled for no longer than days: what is worked out from them for three years is in doubt, the
/// ramp that leaves them room with it, but for a radius that the file gives.
#[test]
fn a_ramp_by_a_stress_in_doubt_is_not_decided() {
    let file = |pull: &str| {
        let pull = format!("duration: 700 h, ramp_room: 200 m, pull_head: {{ weak_link: 1 kN }}, {pull}");
        pulled(&text("pressure_main", "60 m", &pull, SOFT, PULLED[0]))
    };
    let taken = file("score: 0 %");
    for subject in
        [Subject::Tension, Subject::WeakLink, Subject::BendRadius, Subject::RampRoom, Subject::StrainWithBend]
    {
        assert_eq!(check(&taken, subject).verdict, Verdict::NotDecided, "{subject:?}");
    }
    let given = file("bend_radius: 100 m");
    assert_eq!(check(&given, Subject::RampRoom).verdict, Verdict::Within);
    assert_eq!(check(&given, Subject::WeakLink).verdict, Verdict::NotDecided);
}

/// Over drives at the ends of their ranges, with all that a pull may have.
#[test]
fn no_doubt_is_left_over() {
    let rests = [
        "traffic: none",
        "traffic: railway\nannulus: { filling: grouted, grout_density: 1800 kg/m3, grout_pressure: 300 kPa, grout_sets_in: 12 h }",
        "traffic: none\nvacuum: { pressure: 100 kPa, lasts: 6 h }",
    ];
    let pulls = [
        "duration: 700 h, ramp_room: 20 m",
        "duration: 6 h, push_assist: { force: 20 kN, free_length: 4 m }, pull_head: { weak_link: 60 kN, rating: 70 kN }",
        "duration: 3 h, ground_temperature: 5 degC, collapsed_bore: { length: 3 m, unit_weight: 20 kN/m3 }",
    ];
    let mut files: Vec<String> = EXAMPLES.map(str::to_owned).to_vec();
    for pipe in PULLED {
        for rest in rests {
            for pull in pulls {
                let wet = text("pressure_main", "600 m", pull, &format!("{SOFT}\n{rest}"), pipe);
                files.push(
                    wet.edit("groundwater: none", "groundwater: 1 m").edit("moist:", "saturated: 20 kN/m3, moist:"),
                );
                files.push(text("pressure_main", "60 m", pull, &format!("{SOFT}\n{rest}"), pipe));
            }
        }
    }
    let mut out_of_range = 0;
    for file in &files {
        let drive = drive(file);
        for pipe in drive.candidates() {
            for method in [Method::PipeJacking, Method::Pullback] {
                let (_, sheet) = explain(&drive, pipe, method);
                assert_eq!(sheet.leftover(), None, "{method:?} {file}");
                out_of_range += sheet.steps().iter().filter(|step| !step.in_range).count();
                // Figures look for their own.
                figures(&drive, pipe, method).unwrap();
            }
        }
    }
    assert!(out_of_range > 100, "{out_of_range}");
}

/// Out of the range of a law on its bad side what fails by its value fails: a wall that the collapse pressure of its pull is
/// far too much for, a ramp of seven diameters, iron of which casting and service leave no wall.
#[test]
fn beyond_a_range_on_its_bad_side_is_over() {
    let pe = |sdr: &str, pull: &str| {
        let pull = format!("duration: 6 h, {pull}");
        pulled(&text(
            "pressure_main",
            "200 m",
            &pull,
            &format!("{SOFT}\ntraffic: none"),
            &format!("material: pe100, size: 315 mm, sdr: {sdr}"),
        ))
    };
    let bent = pe("11", "ramp_room: 200 m, bend_radius: 2.5 m");
    for subject in [Subject::BendRadius, Subject::TensionAndBending, Subject::StrainWithBend] {
        let check = check(&bent, subject);
        assert_eq!(
            (check.verdict, check.doubt.is_some() || subject == Subject::BendRadius),
            (Verdict::Over, true),
            "{subject:?}"
        );
    }
    let iron = "material: ductile_iron, size: 8 in, wall: 0.13 in, joint_pull: 30000 lbf, joint_deflection: 5 deg, \
                pipe_length: 20 ft";
    let thin =
        pulled(&text("pressure_main", "60 m", "duration: 6 h", &format!("{SOFT}\nservice_pressure: 10 bar"), iron));
    let held = check(&thin, Subject::ServicePressure);
    assert_eq!((held.verdict, held.doubt.is_some()), (Verdict::Over, true));
}
