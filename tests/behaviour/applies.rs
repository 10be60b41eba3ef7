//! Every field of a pipe, with every material and way: it is used, or refused by name.

use crate::edit::Edit;
use jackpull::drive_file::CandidateFile;
use jackpull::quantity::UnitSystem;
use jackpull::{Handbook, read_drive};

/// A pipe of each row: name, whether the file tells a pull, and what is written of it.
const PIPES: [(&str, bool, &str); 15] = [
    ("clay", false, "material: clay, size: 10 in"),
    ("concrete", false, "material: concrete, size: 1000 mm, strength: 50 MPa"),
    (
        "GRP",
        false,
        "material: grp, size: 300 mm, outside_diameter: 376 mm, end_bearing_area: 0.01 m2, strength: 80 MPa",
    ),
    (
        "polymer concrete",
        false,
        "material: polymer_concrete, size: 300 mm, outside_diameter: 400 mm, end_bearing_area: 0.01 m2, strength: 90 MPa",
    ),
    ("jacked steel", false, "material: steel, size: 18 in, wall: 10 mm"),
    ("pulled steel", true, "material: steel, size: 12 in, steel_grade: api_5l_b"),
    ("steel both ways", true, "material: steel, size: 12 in, wall: 10 mm, steel_grade: api_5l_b"),
    ("jacked iron", false, "material: ductile_iron, size: 300 mm, rated_force: 900 kN"),
    ("pulled iron", true, "material: ductile_iron, size: 300 mm, joint_pull: 300 kN"),
    ("iron both ways", true, "material: ductile_iron, size: 300 mm, rated_force: 900 kN, joint_pull: 300 kN"),
    ("fibre cement", false, "material: fibre_cement, size: 600 mm, outside_diameter: 740 mm, rated_force: 1500 kN"),
    ("PVC", false, "material: pvc, size: 12 in, rated_force: 90 kN"),
    ("fused PVC", true, "material: pvc_fused, size: 12 in, sdr: 18, joint_factor: 0.9"),
    ("restrained PVC", true, "material: pvc_restrained, size: 12 in, sdr: 18, joint_pull: 90 kN"),
    ("PE", true, "material: pe100, size: 315 mm, sdr: 11"),
];

/// The pipe as it is resolved with what is assumed of it, or the fault.
fn resolved(pulled: bool, pipe: &str) -> Result<String, String> {
    let pull = if pulled {
        "stem: { outside_diameter: 100 mm }\n\
         pull: { duration: 6 h, pipe_temperature: 25 degC, laydown: { length: 6 m, place: pit, joint_time: 20 min } }\n"
    } else {
        ""
    };
    let text = format!(
        "service: pressure_main\nlength: 60 m\nlaunch: {{ invert_depth: 4.2 m }}\ngrade: 0 %\ngroundwater: none\n\
         lubrication: metered\nrig: {{ thrust: 900 kN, pull: 500 kN }}\n\
         ground: [{{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }}]\n\
         {pull}candidates: [{{ {pipe} }}]\n"
    );
    match read_drive(&text, &Handbook::embedded()) {
        Ok(drive) => Ok(format!("{:?} {:?}", drive.candidates(), drive.assumed())),
        Err(fault) => Err(fault.to_string()),
    }
}

/// A value of a field that fits, other than what would be taken without it.
fn value(key: &str, pipe: &str) -> String {
    let of = |large: &str, middle: &str, small: &str| {
        let size = if pipe.contains("1000 mm") {
            large
        } else if pipe.contains("18 in") {
            middle
        } else {
            small
        };
        size.to_owned()
    };
    match key {
        "wall" => of("120 mm", "11 mm", "11 mm"),
        "outside_diameter" => of("1300 mm", "480 mm", "330 mm"),
        "inside_diameter" => "240 mm".to_owned(),
        "series" => "iso".to_owned(),
        "certificate" => "astm_c1208".to_owned(),
        "steel_grade" => "a139_b".to_owned(),
        "concrete_grade" => "type_50".to_owned(),
        "scheme" => "cn_annex_e".to_owned(),
        "packer" => "{ thickness: 12 mm, inside_diameter: 200 mm }".to_owned(),
        "annulus" => "grouted".to_owned(),
        "passes" => "[200 mm]".to_owned(),
        "price" => "{ price: 250, per: 1 m }".to_owned(),
        "crushing" => "60 kN/m".to_owned(),
        "joint_deflection" => "3 deg".to_owned(),
        "joint_diameter" => of("1400 mm", "500 mm", "400 mm"),
        "casing" => "1400 mm".to_owned(),
        "bore" => of("1500 mm", "520 mm", "500 mm"),
        "casing_yield_strength" => "300 MPa".to_owned(),
        "casing_factor" => "3".to_owned(),
        "factor" => "4".to_owned(),
        "casing_free_length" => "4 m".to_owned(),
        "joint_stress_ratio" => "0.4".to_owned(),
        "ovality" => "0.5 %".to_owned(),
        "joint_factor" | "joint_deflection_factor" => "0.8".to_owned(),
        _ => {
            let spec = CandidateFile::FIELDS.iter().find(|spec| spec.key == key).unwrap();
            spec.example(UnitSystem::Si).unwrap_or_else(|| panic!("an example of {key}")).to_owned()
        }
    }
}

/// What a field says nothing without, in one material or another.
fn beside(key: &str) -> &'static [&'static str] {
    match key {
        "casing_wall" | "casing_joint_thrust" => &[", casing: 1400 mm"],
        "casing_yield_strength" | "casing_factor" | "casing_free_length" => &[", casing: 1400 mm, casing_wall: 12 mm"],
        "annulus" => &[", crushing: 60 kN/m"],
        "outside_diameter" => &[", end_bearing_area: 0.02 m2", ", end_bearing_area: 0.2 m2", ", wall: 9 mm"],
        "wall" => &["", ", end_bearing_area: 0.2 m2"],
        "joint_deflection" => &[", pipe_length: 6 m"],
        _ => &[],
    }
}

/// What was read and counted for nothing once.
const ONCE_IGNORED: [(&str, &[&str]); 2] = [
    ("clay", &["wall", "ovality"]),
    (
        "pulled iron",
        &[
            "inside_diameter",
            "strength",
            "cube_strength",
            "design_strength",
            "concrete_grade",
            "scheme",
            "packer",
            "end_squareness",
            "free_length",
        ],
    ),
];

/// What says that a pipe is put in in another way than the one at hand, which has a row of its own here.
const OTHER_WAY: [(&str, &[&str]); 2] = [
    (
        "pulled steel",
        &["inside_diameter", "factor", "design_strength", "scheme", "rated_force", "free_length", "casing"],
    ),
    ("jacked iron", &["joint_pull", "joint_pressure"]),
];

#[test]
fn every_field_is_used_or_refused_by_name() {
    let (mut used, mut refused, mut wrong) = (0, 0, Vec::new());
    for (name, pulled, pipe) in PIPES {
        for spec in CandidateFile::FIELDS {
            let key = spec.key;
            let other_way = OTHER_WAY.iter().any(|(of, keys)| *of == name && keys.contains(&key));
            if other_way || pipe.contains(&format!("{key}:")) {
                continue;
            }
            // Steel says by it alone that the check of outside pressure holds.
            let value = if (name, key) == ("pulled steel", "ovality") { "2 %".to_owned() } else { value(key, pipe) };
            // The wall stands for the dimension ratio.
            let ratio = [", sdr: 18", ", sdr: 11"].into_iter().find(|ratio| key == "wall" && pipe.contains(ratio));
            let instead = ratio.map_or_else(|| pipe.into(), |ratio| pipe.edit(ratio, ""));
            let without = |beside: &str| resolved(pulled, &format!("{pipe}{beside}"));
            let with = |beside: &str| resolved(pulled, &format!("{instead}{beside}, {key}: {value}"));
            // Where what goes with it does not apply either, it is tried alone.
            let beside = beside(key).iter().find(|beside| with(beside).is_ok()).copied().unwrap_or_default();
            let without = without(beside).or_else(|_| without("")).unwrap_or_else(|fault| panic!("{name}: {fault}"));
            let with = with(beside);
            let once_ignored = ONCE_IGNORED.iter().any(|(of, keys)| *of == name && keys.contains(&key));
            match with {
                Ok(with) if with == without => wrong.push(format!("{name}: {key} counts for nothing")),
                Ok(_) if once_ignored => wrong.push(format!("{name}: {key} is not refused")),
                Ok(_) => used += 1,
                Err(fault) if fault.contains(&format!("candidates[0].{key}")) => refused += 1,
                Err(fault) => wrong.push(format!("{name}: {key}: {fault}")),
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(used > 150 && refused > 150, "{used} used, {refused} refused");
}

/// A field that is foreign both ways is told once.
#[test]
fn a_foreign_field_is_refused_once() {
    for (name, pulled, pipe) in PIPES {
        let key = if name == "PE" { "steel_grade: a139_b" } else { "certificate: astm_c1208" };
        if name == "clay" {
            continue;
        }
        let fault = resolved(pulled, &format!("{pipe}, {key}")).unwrap_err();
        let told = fault.matches("candidates[0].").count();
        assert_eq!(told, 1, "{name}: {fault}");
    }
}
