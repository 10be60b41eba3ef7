//! Pressure classes of pipe for mains as their standards print them, against what a main may carry here, without a score.
//! ISO 4427: PE 100 of SDR 11 is PN 16, of SDR 17 PN 10, PE 80 of SDR 11 PN 12.5; a PN 16 pipe carries 13.9 bar at 30 degC
//! and 11.8 bar at 40 degC. PE4710 of DR 11 is of 200 psi, PE3408 of 160 psi, PE2406 of 126 psi. AWWA C900: DR 18 of
//! 235 psi, DR 25 of 165 psi. Steel of 35 ksi, 12.75 in with a wall of 0.25 in: 686 psi at half of its yield. Iron of
//! class 350 in 12 in has 0.14 in left of its wall of 0.28 in when allowances are taken off, for 350 psi and 100 psi of
//! surge. EN 545: class 40 of DN 250 may work at 40 bar. All recalled.

use crate::found::{Found, Outcome, Stop, checked, close, holds, needed, pages, q, scheme};
use jackpull::check::Subject;
use jackpull::quantity::Pressure;
use jackpull::{Handbook, Method, read_drive};
use std::sync::Arc;

pages!(classes, warm_ground, metal);

/// What a pulled main may carry, with no score in its wall.
fn carries(handbook: &Arc<Handbook>, candidate: &str, ground: &str) -> Result<Pressure, Stop> {
    let text = format!(
        "
service: pressure_main
length: 60 m
launch: {{ invert_depth: 6 m }}
grade: 0 %
groundwater: none
lubrication: none
ground: [{{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }}]
rig: {{ thrust: 60 MN, pull: 60 MN }}
work: {{ round_the_clock: true }}
pull: {{ duration: 6 h, pipe_temperature: 20 degC, score: 0 %, ground_temperature: {ground} }}
candidates: [{{ {candidate} }}]
"
    );
    let drive = read_drive(&text, handbook)?;
    let check = checked(&scheme(&drive, Method::Pullback)?, Subject::ServicePressure)?;
    let (_, limit) = needed(check.high(), || "what the main carries".to_owned())?;
    Ok(jackpull::quantity::Measure::from_si(limit.si))
}

fn classes(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (pipe, class) in [
        ("material: pe100, size: 200 mm, sdr: 11", "16 bar"),
        ("material: pe100, size: 200 mm, sdr: 17", "10 bar"),
        ("material: pe80, size: 200 mm, sdr: 11", "12.5 bar"),
        ("material: pe4710, size: 8 in, sdr: 11", "200 psi"),
        ("material: hdpe, size: 8 in, sdr: 11", "160 psi"),
        ("material: mdpe, size: 8 in, sdr: 11", "126 psi"),
        ("material: pvc_fused, size: 8 in, sdr: 18, joint_factor: 1", "235 psi"),
        ("material: pvc_fused, size: 8 in, sdr: 25, joint_factor: 1", "165 psi"),
    ] {
        close(found, pipe, carries(handbook, pipe, "12 degC")?, class, 0.015);
    }
    Ok(())
}

fn warm_ground(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for (ground, class) in [("20 degC", "16 bar"), ("30 degC", "13.9 bar"), ("40 degC", "11.8 bar")] {
        close(found, ground, carries(handbook, "material: pe100, size: 200 mm, sdr: 11", ground)?, class, 0.015);
    }
    Ok(())
}

fn metal(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let steel = "material: steel, size: 12 in, outside_diameter: 12.75 in, wall: 0.25 in, yield_strength: 35 ksi";
    close(found, steel, carries(handbook, steel, "12 degC")?, "686 psi", 0.005);
    let iron = "material: ductile_iron, size: 12 in, outside_diameter: 13.2 in, wall: 0.28 in, joint_pull: 250 kN, \
                joint_deflection: 3 deg, pipe_length: 6 m";
    let iron = carries(handbook, iron, "12 degC")?;
    holds(found, "iron of class 350 with its surge", q::<Pressure>("390 psi") < iron && iron < q("450 psi"));
    let metric = "material: ductile_iron, size: 250 mm, joint_pull: 150 kN, joint_deflection: 3 deg, pipe_length: 6 m";
    close(found, metric, carries(handbook, metric, "12 degC")?, "40 bar", 0.015);
    Ok(())
}
