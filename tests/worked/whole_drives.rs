//! Three drives worked by hand from their files to what decides them: force, pipe, wall, load in service, line and surface.
//! Forms of the guides, with the values of the tables that are named beside them.

use crate::found::{Found, Outcome, checked, close, pages, scheme};
use jackpull::check::Subject;
use jackpull::quantity::{Force, Length, LineLoad, Measure, Pressure, Ratio, Velocity};
use jackpull::{Handbook, Method, Scheme, read_drive};
use std::sync::Arc;

pages!(a_casing_is_jacked, a_sewer_is_jacked, a_main_is_pulled);

fn put(handbook: &Arc<Handbook>, file: &str, method: Method) -> Result<Scheme, crate::found::Stop> {
    scheme(&read_drive(file, handbook)?, method)
}

/// What a check holds at the high level, in SI base units: demand and limit.
fn high(scheme: &Scheme, subject: Subject) -> Result<(f64, f64), crate::found::Stop> {
    let numbers = checked(scheme, subject)?.high();
    let (demand, limit) = crate::found::needed(numbers, || format!("the numbers of {subject:?}"))?;
    Ok((demand.si, limit.si))
}

fn force(found: &mut Found, scheme: &Scheme, by_hand: [&str; 3]) -> Outcome {
    let force = crate::found::needed(scheme.force, || "the force".to_owned())?;
    for (got, by_hand) in [force.low, force.likely, force.high].into_iter().zip(by_hand) {
        close(found, "force on the pipe", got, by_hand, 1e-3);
    }
    Ok(())
}

/// Steel 610 x 12.7 mm, 40 m level, 4 m deep in dry clay that rubs with 2, 5 and 9 kPa.
/// Force: pi x 0.610 x 40 = 76.65 m2, with 30, 50 and 80 kN at the face: 183.3, 433.3 and 769.9 kN.
/// Rig: four fifths of 1,500 = 1,200 kN. Pipe: pi x 0.5973 x 0.0127 = 0.02383 m2 at 250/2 MPa: 2,979 kN.
/// Wall of 2.4 m round the axis at 3.695 m, from 2.495 to 4.895 m, Kp of 30 deg 3.0: 19/2 x 3 x (4.895^2 - 2.495^2) x 2.4 =
/// 1,213 kN, over 1.5 as its movement is checked 808.8.
/// Nothing steers it: it may rise by 1 % of 40 m. Surface: the axis then lies at 3.295 m, the trough is 0.4 x 3.295 = 1.318 m
/// wide; the annulus of pi/4 (0.64^2 - 0.61^2) = 0.02945 m2 and 1 % of the face, 0.00322, over 2.5066 x 1.318: 9.89 mm.
/// Face: 19 x 3.695 + 10 of traffic on it = 80.2 kPa over 80: 1.003.
fn a_casing_is_jacked(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const FILE: &str = "
service: casing
length: 40 m
launch: { invert_depth: 4 m, soil: { moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg }, wall: { width: 2.4 m, height: 2.4 m, movement: checked } }
grade: 0 %
groundwater: none
lubrication: none
pilot: none
spoil: auger
face: { low: 30 kN, likely: 50 kN, high: 80 kN }
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0 mm, hazards: [], unit_friction: { low: 2 kPa, likely: 5 kPa, high: 9 kPa }, soil: { moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 25 deg, undrained_strength: 80 kPa } }]
surface: { over: road }
crossings: []
rig: { thrust: 1500 kN, pull: 500 kN }
work: { round_the_clock: true }
candidates: [{ material: steel, size: 610 mm, outside_diameter: 610 mm, wall: 12.7 mm, yield_strength: 250 MPa, factor: 2, free_length: 3 m, bore: 640 mm }]
";
    let scheme = put(handbook, FILE, Method::PipeJacking)?;
    force(found, &scheme, ["183.3 kN", "433.3 kN", "769.9 kN"])?;
    let limit = |subject| high(&scheme, subject).map(|numbers| numbers.1);
    close(found, "rig", Force::from_si(limit(Subject::JackingThrust)?), "1200 kN", 1e-3);
    close(found, "section", Force::from_si(limit(Subject::EndCapacity)?), "2979 kN", 1e-3);
    close(found, "wall", Force::from_si(limit(Subject::ThrustWall)?), "808.8 kN", 1e-3);
    let settled = Length::from_si(high(&scheme, Subject::SurfaceSettlement)?.0);
    close(found, "settlement", settled, "9.89 mm", 1e-3);
    close(found, "face", Ratio::from_si(high(&scheme, Subject::FaceStability)?.0), "1.003", 1e-3);
    Ok(())
}

/// Concrete 1,440/1,200 mm, 120 m at 0.5 %, 6 m deep in dry sand of 18 kN/m3 that rubs with 1, 2 and 4 kPa.
/// Force: pi x 1.44 x 120 = 542.9 m2, with 150, 200 and 300 kN at the face and 12 kN/m x 120 m x 0.005 = 7.2 kN of weight:
/// 700.1, 1,292.9 and 2,478.7 kN.
/// Wall of 4 x 3 m round the axis at 5.28 m, from 3.78 to 6.78 m, Kp of 32 deg 3.2546: 18/2 x 3.2546 x (6.78^2 - 3.78^2) x 4 =
/// 3,712 kN, over 1.5 2,474.
/// In service: B = 1.48 m under 4.56 m, C = (1 - exp(-2 x 0.165 x 4.56/1.48))/(2 x 0.165) = 1.934, 1.934 x 18 x 1.48^2 =
/// 76.3 kN/m, by 3 where the annulus is grouted. A road at the shallow end, under 3.96 m (13.0 ft), between 235 psf at 12 ft
/// and 183 at 16: 222 psf, 10.6 kPa x 1.44 m = 15.3 kN/m, by 1.5. 1.5 x (25.4 + 10.2) = 53.4 kN/m.
/// Full pipe: 0.3^(2/3) x 0.005^(1/2) / 0.013 = 2.44 m/s. Face at the shallow end, 4.68 m to the axis: at most 0.9 x 18 x 4.68 =
/// 75.8 kPa. Lubricant there: the crown of the bore at 5.4 - 1.46 = 3.94 m bears 70.9 kPa.
fn a_sewer_is_jacked(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const FILE: &str = "
service: gravity_sewer
length: 120 m
launch: { invert_depth: 6 m, soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg }, wall: { width: 4 m, height: 3 m, movement: checked } }
grade: 0.5 %
groundwater: none
lubrication: metered
lubricant_pressure: 40 kPa
pilot: none
spoil: slurry
face: { low: 150 kN, likely: 200 kN, high: 300 kN }
face_pressure: { low: 40 kPa, high: 55 kPa }
ground: [{ class: medium_to_dense_sand, spt_n: 25, largest_stone: 0 mm, hazards: [], unit_friction: { low: 1 kPa, likely: 2 kPa, high: 4 kPa }, soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 32 deg } }]
surface: { over: road, allowed_settlement: 25 mm }
crossings: []
rig: { thrust: 4000 kN, pull: 500 kN }
work: { round_the_clock: true }
steering: { joint_angle: 0.1 deg }
tolerance: 30 mm
candidates: [{ material: concrete, size: 1200 mm, outside_diameter: 1440 mm, inside_diameter: 1200 mm, rated_force: 4000 kN, weight: 12 kN/m, crushing: 120 kN/m, bore: 1480 mm, annulus: grouted, packer: { thickness: 15 mm }, pipe_length: 2 m }]
";
    let scheme = put(handbook, FILE, Method::PipeJacking)?;
    force(found, &scheme, ["700.1 kN", "1292.9 kN", "2478.7 kN"])?;
    close(found, "wall", Force::from_si(high(&scheme, Subject::ThrustWall)?.1), "2474 kN", 1e-3);
    close(found, "load in service", LineLoad::from_si(high(&scheme, Subject::Crushing)?.0), "53.4 kN/m", 2e-3);
    close(found, "velocity", Velocity::from_si(high(&scheme, Subject::FullVelocity)?.0), "2.44 m/s", 2e-3);
    close(found, "face", Pressure::from_si(high(&scheme, Subject::FaceSupport)?.1), "75.8 kPa", 1e-3);
    close(found, "lubricant", Pressure::from_si(high(&scheme, Subject::LubricantPressure)?.1), "70.9 kPa", 1e-3);
    Ok(())
}

/// PE 100 of 315 x 28.6 mm, 60 m level and dry, laid out as one string of 70 m that comes down 15 deg, with 20 m to spare.
/// Its wall of 1.06 x 28.6 mm on the average weighs 1.06 x pi x 0.2864 x 0.0286 x 960 x 9.81 = 256.8 N/m.
/// Pull, likely: 0.8 of it over 60 m, 12.33 kN, and the last 20 m at 0.5 round two bends of 15 deg, 2.57 x exp(0.5 x 0.5236) =
/// 3.34: 15.66 kN. High twice that. Low: at 0.5 in the bore, most after 10 m, with 70 m still outside: 11.68 + 1.28 = 12.96.
/// Pipe: with a tenth of its wall scored pi x 0.28926 x 0.02574 = 0.02339 m2, at 1,150 psi 185.5 kN.
/// In service 10/1.25 = 8 MPa carry 2 x 8 x 28.6/286.4 = 1.598 MPa.
fn a_main_is_pulled(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    const FILE: &str = "
service: pressure_main
length: 60 m
launch: { invert_depth: 2.5 m }
grade: 0 %
groundwater: none
lubrication: none
pilot: drilled
ground: [{ class: hard_clay, spt_n: 35, largest_stone: 0 mm, hazards: [], bore_stands: true, soil: { moist: 20 kN/m3, saturated: 21 kN/m3, friction_angle: 25 deg, undrained_strength: 150 kPa } }]
surface: { over: open }
crossings: []
rig: { thrust: 400 kN, pull: 200 kN }
stem: { outside_diameter: 100 mm, head_diameter: 150 mm, wall: 10 mm, free_length: 1 m, joint_thrust: 400 kN, joint_pull: 300 kN }
work: { round_the_clock: true }
service_pressure: 800 kPa
vacuum: { pressure: 30 kPa, lasts: 1 h }
annulus: { soil_modulus: 5 MPa }
pull: { duration: 4 h, pipe_temperature: 20 degC, hole: dry_and_stable, welds: documented, laydown: { length: 70 m }, bend_radius: 30 m, ramp_angle: 15 deg, reamer: { low: 5 kN, likely: 10 kN, high: 20 kN } }
candidates: [{ material: pe100, size: 315 mm, sdr: 11 }]
";
    let scheme = put(handbook, FILE, Method::Pullback)?;
    force(found, &scheme, ["12.96 kN", "15.66 kN", "31.33 kN"])?;
    close(found, "tension", Force::from_si(high(&scheme, Subject::Tension)?.1), "185.5 kN", 1e-3);
    close(found, "pressure", Pressure::from_si(high(&scheme, Subject::ServicePressure)?.1), "1598 kPa", 1e-3);
    Ok(())
}
