//! Faults of what is told of a pull and of the pipe that is pulled: each with its place.

use crate::drives::text;
use crate::edit::Edit;
use jackpull::yaml::Fault;
use jackpull::{Handbook, InputError, read_drive};

fn faults(text: &str) -> Vec<String> {
    match read_drive(text, &Handbook::embedded()) {
        Err(InputError::Faults(faults)) => faults.iter().map(Fault::to_string).collect(),
        Err(error) => panic!("{error}"),
        Ok(_) => Vec::new(),
    }
}

const PE: &str = "  - { material: pe100, size: 315 mm, sdr: 11 }\n";

/// Another candidate in place of the PE pipe, or another pull.
fn assert_fault(candidate: Option<&str>, pull: Option<&str>, more: &str, part: &str) {
    let text = text(|text| {
        let text = match candidate {
            Some(candidate) => text.edit(PE, &format!("  - {{ {candidate} }}\n")),
            None => text,
        };
        let text = match pull {
            Some(pull) => text.edit("pull: { duration: 6 h,", &format!("pull: {{ {pull},")),
            None => text,
        };
        text + more
    });
    let found = faults(&text);
    assert!(found.iter().any(|fault| fault.starts_with(part) && fault.contains(" at line ")), "{part}: {found:?}");
}

/// No joint, no strength: nothing is assumed for what holds a string together.
#[test]
fn joints_are_asked_for() {
    let fused = "material: pvc_fused, size: 10 in, sdr: 18";
    let restrained = "material: pvc_restrained, size: 10 in, sdr: 18";
    let iron = "material: ductile_iron, size: 10 in, wall: 0.3 in";
    for (candidate, part) in [
        (
            format!("{fused}, joint_factor: 1.2"),
            "candidates[1].joint_factor: expected a plain number or a percentage of at most 1",
        ),
        (
            format!("{fused}, joint_factor: 1, joint_pull: 9 kN"),
            "candidates[1].joint_pull: is for pipe with restrained",
        ),
        (
            format!("{restrained}, joint_pull: 9 kN, joint_pressure: 900 kPa"),
            "candidates[1].joint_pressure: the maker's",
        ),
        (
            format!("{restrained}, joint_pull: 9 kN, joint_deflection: 3 deg"),
            "candidates[1].pipe_length: the laying length of the pipe is missing",
        ),
        (
            format!("{iron}, joint_pull: 9 kN, joint_deflection: 30 deg, pipe_length: 6 m"),
            "candidates[1].joint_deflection: expected an angle from 0.1 deg to 11.0 deg",
        ),
        (format!("{restrained}, joint_pull: 9 kN, joint_diameter: 9 in"), "candidates[1].joint_diameter: is smaller"),
    ] {
        assert_fault(Some(&candidate), None, "", part);
    }
}

#[test]
fn dimensions_and_steel_are_asked_for() {
    for (candidate, part) in [
        ("material: pvc_fused, size: 11 in, sdr: 18, joint_factor: 1", "candidates[1].size: no pipe of 11 in in the"),
        ("material: pvc_fused, size: 10 in, joint_factor: 1", "candidates[1].sdr: the wall of the PVC pipe is missing"),
        ("material: pvc_fused, size: 10 in, sdr: 18, wall: 9 mm, joint_factor: 1", "candidates[1].sdr: give either"),
        (
            "material: pvc_fused, size: 10 in, sdr: 3, joint_factor: 1",
            "candidates[1].sdr: expected a plain number or a percentage from 5 to 50",
        ),
        (
            "material: ductile_iron, size: 10 in, outside_diameter: 11.4 in, joint_pull: 9 kN",
            "candidates[1].wall: the wall of the iron pipe is",
        ),
        ("material: steel, size: 10 in", "candidates[1].steel_grade: the yield strength of the steel is missing"),
        (
            "material: steel, size: 10 in, steel_grade: best",
            "candidates[1].steel_grade: no yield strength of the grade \"best\" in the table (there are casing_least,",
        ),
        // A design strength is no yield strength.
        ("material: steel, size: 10 in, steel_grade: q235_design_low", "candidates[1].steel_grade: no yield strength"),
        (
            "material: steel, size: 10 in, steel_grade: api_5l_b, yield_strength: 35 ksi",
            "candidates[1].yield_strength: give either steel_grade or yield_strength",
        ),
        (
            "material: steel, size: 10 in, steel_grade: api_5l_b, ovality: 2 %",
            "candidates[1].ovality: the check of outside pressure holds for steel pipe at most 1 % out of round",
        ),
        (
            "material: steel, size: 11 in, steel_grade: api_5l_b",
            "candidates[1].size: no steel pipe of 11 in in the table (there are 100 mm, 4 in, 4.5 in, 150 mm, 6 in, 168.3 mm, 200",
        ),
        ("material: steel, size: 10 in, steel_grade: api_5l_b, sdr: 11", "candidates[1].sdr: a steel pipe has no"),
        (
            "material: pe100, size: 315 mm, sdr: 11, yield_strength: 240 MPa",
            "candidates[1].yield_strength: is for steel",
        ),
    ] {
        assert_fault(Some(candidate), None, "", part);
    }
}

/// PVC is pulled neither in the cold nor hot.
#[test]
fn pvc_has_its_temperatures() {
    let fused = "material: pvc_fused, size: 10 in, sdr: 18, joint_factor: 0.9";
    let text = text(|text| text.edit(PE, &format!("  - {{ {fused} }}\n")).edit("25 degC", "4 degC"));
    let found = faults(&text);
    let part = "pull.pipe_temperature: PVC pipe is pulled between 5 degC and 60 degC only";
    assert!(found.iter().any(|fault| fault.starts_with(part)), "{found:?}");
}

#[test]
fn what_comes_with_a_pull_is_checked() {
    let part = "pull.laydown.joint_time: the pull stands for joints, and how long is missing";
    assert_fault(None, Some("rate: 10 m/h, laydown: { length: 30 m }"), "", part);
    for (pull, part) in [
        ("hole: dry_and_stable, unit_drag: 9 Pa", "pull.unit_drag: there is no fluid in a dry bore"),
        ("hole: dry_and_stable, contents: slurry", "pull.contents: there is no fluid in a dry bore"),
        ("score: 60 %", "pull.score: expected a plain number or a percentage from 0.00 % to 50.00 %, got 60.00 %"),
        ("collapsed_bore: { length: 70 m, unit_weight: 20 kN/m3 }", "pull.collapsed_bore.length: is longer than the"),
        ("laydown: { length: 0 m }", "pull.laydown.length: expected a length above zero"),
        (
            "laydown: { length: 6 m, place: pit, joint_time: 20 min }, ramp_angle: 9 deg",
            "pull.ramp_angle: a string joined in the pit",
        ),
        ("stem_removal: { every: 3 m, takes: 4 min }", "pull.stem_removal: the duration that is given holds its stops"),
        (
            "stem_removal: { every: 1 mm, takes: 4 min }",
            "pull.stem_removal.every: expected a length from 0.3 m to 12.0 m",
        ),
        (
            "ground_temperature: 90 degC",
            "pull.ground_temperature: expected a temperature from -5.0 degC to 45.0 degC, got 90.0 degC",
        ),
        ("pull_head: { rating: 0 kN }", "pull.pull_head.rating: expected a force above zero"),
        (
            "returns: { flow: -1 L/s, plastic_viscosity: 0.1 Pa*s, yield_point: 1 Pa }",
            "pull.returns.flow: expected a flow",
        ),
    ] {
        assert_fault(None, Some(&format!("duration: 6 h, {pull}")), "", part);
    }
    // Water over the invert, and asserted to be dry.
    let wet =
        text(|text| text.edit("groundwater: 5.5 m", "groundwater: 2 m").edit("6 h,", "6 h, hole: dry_and_stable,"));
    assert!(faults(&wet).iter().any(|fault| fault.starts_with("pull.hole: groundwater stands over the invert")));
}

#[test]
fn annulus_and_vacuum_are_checked() {
    for (more, part) in [
        ("annulus: { filling: open, grout_waste: 1.2 }\n", "annulus.grout_waste: the annulus is not grouted"),
        ("annulus: { filling: open, proof: proved }\n", "annulus.proof: the annulus is not grouted"),
        (
            "annulus: { filling: grouted, grout_density: 1500 kg/m3 }\n",
            "annulus.grout_density: says nothing of the load without the pressure of the grout",
        ),
        (
            "annulus: { filling: grouted, grout_pressure: 50 kPa }\n",
            "annulus.grout_pressure: says nothing of the load without the density of the grout",
        ),
        (
            "annulus: { filling: grouted, grout_waste: 0.5 }\n",
            "annulus.grout_waste: expected a plain number or a percentage from 1 to 5, got 0.5",
        ),
        (
            "annulus: { filling: open, spacers: 90 mm }\n",
            "annulus.spacers: PE100 315 mm SDR 11 with spacers on both sides does not go into its bore",
        ),
        ("vacuum: { pressure: 80 kPa, lasts: 1 h }\n", "vacuum.pressure: is for a pressure main"),
        (
            "vacuum: { pressure: 120 kPa, lasts: 1 h }\n",
            "vacuum.pressure: expected a pressure or stress from 0 kPa to 101 kPa",
        ),
    ] {
        assert_fault(None, None, more, part);
    }
}

/// A pull with everything reads back from what is written out.
#[test]
fn the_whole_pull_is_written_and_read_back() {
    let text = text(|text| {
        text.edit(
            "6 h,",
            "6 h, hole: fluid, unit_drag: 345 Pa, inside_pressure: 9 kPa, score: 5 %, contents: slurry, ramp_room: 20 m, \
             collapsed_bore: { length: 2 m, unit_weight: 20 kN/m3, friction: 0.4 }, pull_head: { rating: 90 kN }, \
             laydown: { length: 40 m, place: ground, joint_time: 1 h }, reaction: { area: 2 m2, allowable_pressure: 90 kPa }, \
             ground_temperature: 9 degC,",
        ) + "annulus: { filling: grouted, spacers: 9 mm, grout_density: 1500 kg/m3, grout_pressure: 9 kPa }\n"
    });
    let file = jackpull::DriveFile::read(&text).unwrap();
    let again = file.to_yaml().unwrap();
    assert_eq!(jackpull::DriveFile::read(&again).unwrap().to_yaml().unwrap(), again);
    assert!(read_drive(&again, &Handbook::embedded()).is_ok());
}
