//! Whole drives, good and bad, by what a pressure inside, a face, grout, a curve and traffic ask of them: the words are those of
//! an engineer who looks at the drive, not of the numbers.

use crate::drives::drive;
use crate::edit::Edit;
use jackpull::check::Subject;
use jackpull::choice::Standing;
use jackpull::choose;

/// How the best scheme stands, and the checks that are over in it.
fn stands(text: &str) -> (Standing, Vec<Subject>) {
    let ranked = choose(&drive(text)).unwrap().ranked;
    let over = ranked[0].scheme.checks.iter().filter(|check| check.verdict == jackpull::check::Verdict::Over);
    (ranked[0].standing, over.map(|check| check.subject).collect())
}

fn barred_by(text: &str, subject: Subject) {
    let (standing, over) = stands(text);
    assert!(standing == Standing::Barred && over.contains(&subject), "{standing:?} by {over:?}\n{text}");
}

fn can_be_chosen(text: &str) {
    let (standing, over) = stands(text);
    assert!(standing.can_be_chosen(), "{standing:?} by {over:?}\n{text}");
}

/// A water main under a field.
const MAIN: &str = "
service: pressure_main
length: 90 m
launch: { invert_depth: 2.2 m }
grade: 0.5 %
groundwater: none
lubrication: metered
pilot: drilled
surface: { over: open }
crossings: []
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }]
rig: { thrust: 400 kN, pull: 300 kN }
pull: { duration: 5 h, fluid_level: 1.4 m, pipe_temperature: 20 degC }
candidates: [{ material: pe100, size: 225 mm, sdr: 11 }]
";

/// PN 16 pipe carries 16 bar, and 22 with the surges of every day, but not 25 for good; PN 10 pipe does not carry 16. Half a bar held
/// inside does no harm; 24 bar burst it.
#[test]
fn a_main_is_chosen_for_its_pressure() {
    can_be_chosen(MAIN);
    let carries = |pressure: &str| MAIN.edit("grade:", &format!("service_pressure: {pressure}\ngrade:"));
    can_be_chosen(&carries("16 bar"));
    can_be_chosen(&carries("14 bar").edit("grade:", "surge: { recurring: 8 bar }\ngrade:"));
    barred_by(&carries("25 bar"), Subject::ServicePressure);
    barred_by(&carries("16 bar").edit("sdr: 11", "sdr: 17"), Subject::ServicePressure);
    let held = |pressure: &str| MAIN.edit("20 degC }", &format!("20 degC, inside_pressure: {pressure} }}"));
    can_be_chosen(&held("50 kPa"));
    barred_by(&held("2.4 MPa"), Subject::InsidePressure);
}

/// A sewer of concrete 5 m deep behind a slurry machine, in sand under water whose pits are drained.
const MACHINE: &str = "
service: gravity_sewer
length: 60 m
launch: { invert_depth: 5 m, dewatered: true }
reception: { invert_depth: 4.7 m, dewatered: true }
groundwater: 2 m
lubrication: logged
spoil: slurry
surface: { over: road }
crossings: []
work: { round_the_clock: true }
steering: { joint_angle: 0.1 deg }
ground: [{ class: medium_to_dense_sand, spt_n: 25, largest_stone: 10 mm }]
rig: { thrust: 4 MN, pull: 500 kN }
stem: { outside_diameter: none }
candidates: [{ material: concrete, size: 600 mm, strength: 50 MPa, pipe_length: 2 m, packer: { thickness: 15 mm }, crushing: c76_v }]
";

/// The face is held on condition; at a tenth of the water it runs in, at the weight of the ground it blows out.
#[test]
fn a_machine_holds_its_face() {
    can_be_chosen(MACHINE);
    let held = |low: &str, high: &str| {
        MACHINE.edit("surface:", &format!("face_pressure: {{ low: {low}, high: {high} }}\nsurface:"))
    };
    barred_by(&held("5 kPa", "15 kPa"), Subject::FaceSupport);
    barred_by(&held("110 kPa", "130 kPa"), Subject::FaceSupport);
    // Roads of either continent lie over such pipe.
    can_be_chosen(&MACHINE.edit("surface:", "load_code: en_1991_2\nsurface:"));
}

/// A casing does not go round a bend of 150 m, welded to one.
#[test]
fn a_casing_is_pushed_straight() {
    let casing = "
service: casing
length: 40 m
launch: { invert_depth: 4.3 m }
grade: 0.5 %
groundwater: none
lubrication: metered
surface: { over: open }
crossings: []
ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm }]
rig: { thrust: 2 MN, pull: 500 kN }
candidates: [{ material: steel, size: 24 in, wall: 9.5 mm, steel_grade: a139_b }]
";
    can_be_chosen(casing);
    barred_by(&casing.edit("surface:", "steering: { curve_radius: 150 m }\nsurface:"), Subject::CurveBending);
}

/// A sewer that is pulled and grouted: gently it is well, pumped at more than the ground weighs it is not, and a thin pipe
/// waits for the grout to be told.
#[test]
fn grout_is_told_where_it_matters() {
    let sewer = MAIN
        .edit("pressure_main", "gravity_sewer")
        .edit("invert_depth: 2.2 m", "invert_depth: 4 m")
        .edit("grade: 0.5 %", "grade: 2 %\ntolerance: 200 mm")
        .edit("length: 90 m", "length: 60 m")
        .edit("20 degC }", "20 degC, reaction: { area: 4 m2, allowable_pressure: 150 kPa } }\nannulus: { filling: grouted, proof: proved }");
    can_be_chosen(&sewer);
    let told = |grout: &str| sewer.edit("proof: proved", &format!("proof: proved, grout_sets_in: 12 h, {grout}"));
    can_be_chosen(&told("grout_density: 1300 kg/m3, grout_pressure: 15 kPa"));
    barred_by(&told("grout_density: 1800 kg/m3, grout_pressure: 120 kPa"), Subject::GroutPressure);
    assert_eq!(stands(&sewer.edit("sdr: 11", "sdr: 17")).0, Standing::Open);
}

/// A sewer of ductile iron of 20 ft pipes, pushed 20 ft deep into a bore in hard clay that stands; and a creek 10 ft over a main
/// in firm clay.
#[test]
fn flexible_pipe_lies_deep_in_firm_ground() {
    let iron = "
service: gravity_sewer
length: 160 ft
launch: { invert_depth: 20 ft }
grade: 0.45 %
groundwater: none
lubrication: none
ground: [{ class: hard_clay, spt_n: 34, largest_stone: 0.5 in, hazards: [] }]
rig: { thrust: 60 tonf_us, pull: 50 tonf_us }
work: { round_the_clock: true }
spoil: vacuum
pilot: drilled
guidance: laser
stem: { outside_diameter: 10 in, head_diameter: 16 in, withdrawn: true }
tolerance: 2 in
surface: { over: road }
crossings: []
candidates: [{ material: ductile_iron, size: 12 in, wall: 0.31 in, rated_force: 60000 lbf, joint_diameter: 15.2 in, pipe_length: 20 ft }]
";
    can_be_chosen(iron);
    // Its sockets turn by more than a packed joint may, but not by what they are laid at in a trench.
    let turned = |angle: &str| iron.edit("tolerance:", &format!("steering: {{ joint_angle: {angle} }}\ntolerance:"));
    can_be_chosen(&turned("0.1 deg"));
    barred_by(&turned("1.2 deg"), Subject::JointAngle);
    let creek = "
service: pressure_main
length: 450 ft
launch: { invert_depth: 14 ft }
grade: 0 %
groundwater: 8 ft
lubrication: none
ground: [{ class: firm_to_very_stiff_clay, spt_n: 20, largest_stone: 0.5 in }]
rig: { thrust: 100000 lbf, pull: 100000 lbf }
pilot: drilled
surface: { over: open }
crossings: []
pull: { duration: 8 h, pipe_temperature: 75 degF, welds: documented, string_on: rollers, bend_radius: 100 ft, ramp_angle: 12 deg }
candidates: [{ material: pe4710, size: 16 in, sdr: 11 }]
";
    can_be_chosen(creek);
    // In soft clay all of the column comes down on it, and thinner pipe goes out of round in any ground.
    assert!(!stands(&creek.edit("firm_to_very_stiff_clay, spt_n: 20", "soft_clay, spt_n: 3")).0.can_be_chosen());
    barred_by(
        &creek.edit("sdr: 11", "sdr: 26").edit("pilot:", "annulus: { filling: open }\npilot:"),
        Subject::Deflection,
    );
}
