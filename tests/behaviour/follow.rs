//! What a drive that is not decided asks for is written, with one usual value for each line, and read again: no line is a fault,
//! none is asked for twice, and it ends soon.

use crate::drives::drive;
use crate::edit::Edit;
use jackpull::check::{Subject, Verdict};
use jackpull::choice::{Ask, Ranked, asks};
use jackpull::{Drive, Handbook, Standing, choose, read_drive};
use serde_yaml::{Mapping, Value};
use std::collections::{BTreeMap, BTreeSet};

/// Rounds of asking in which it ends: what is told by its usual value may fall short of what would have done, and then asks for
/// what goes beside it (weight beside strength, a toe beside soft clay, wells once the water is known).
const ROUNDS: usize = 4;

/// What a busy engineer writes for each line that can be asked for.
const USUAL: &[(&str, &str)] = &[
    ("annulus.filling", "grouted"),
    ("annulus.grout_density", "1500 kg/m3"),
    ("annulus.grout_pressure", "50 kPa"),
    ("annulus.proof", "proved"),
    ("annulus.soil_modulus", "7 MPa"),
    ("candidates[].certificate", "en_295_7"),
    ("candidates[].crushing", "80 kN/m"),
    ("candidates[].joint_diameter", "340 mm"),
    ("candidates[].joint_factor", "0.9"),
    ("candidates[].rated_force", "1500 kN"),
    ("crossings[].clearance", "300 mm"),
    ("face_pressure", "{ low: 60 kPa, high: 75 kPa }"),
    ("ground[].hazards", "[]"),
    ("ground[].largest_stone", "20 mm"),
    ("ground[].soil", "{ moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg }"),
    ("ground[].soil.undrained_modulus", "20 MPa"),
    ("ground[].spt_n", "12"),
    ("ground[].unit_friction", "{ low: 2 kPa, likely: 5 kPa, high: 10 kPa }"),
    ("groundwater", "2 m"),
    ("guidance", "laser"),
    ("half_wave", "10 m"),
    ("launch.dewatered", "true"),
    ("launch.soil", "{ moist: 19 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg }"),
    ("launch.space", "{ length: 8 m, width: 5 m }"),
    ("launch.wall", "{ width: 4 m, height: 3 m, movement: checked }"),
    ("launch.wall_toe_depth", "9 m"),
    ("lubricant_pressure", "80 kPa"),
    ("pilot", "drilled"),
    ("pull.contents", "water"),
    ("pull.fluid_density", "1150 kg/m3"),
    ("pull.fluid_level", "0.5 m"),
    ("pull.fluid_stands_for", "12 h"),
    ("pull.ramp_room", "30 m"),
    ("pull.reaction", "{ area: 6 m2, allowable_pressure: 200 kPa }"),
    ("pull.returns", "{ flow: 300 L/min, plastic_viscosity: 0.02 Pa*s, yield_point: 8 Pa }"),
    ("reception.dewatered", "true"),
    ("reception.space", "{ length: 5 m, width: 4 m }"),
    ("reception.wall_toe_depth", "9 m"),
    ("spoil", "auger"),
    ("spoil: slurry", "slurry"),
    ("spoil: vacuum", "vacuum"),
    ("stem.free_length", "1 m"),
    ("stem.joint_pull", "500 kN"),
    ("stem.joint_thrust", "900 kN"),
    ("stem.outside_diameter", "100 mm"),
    ("stem.wall", "10 mm"),
    ("surface.allowed_settlement", "20 mm"),
    ("surface.allowed_slope", "0.4 %"),
    ("surface.over", "road"),
    ("surface.railway_permits", "uncased"),
    ("tolerance", "50 mm"),
    ("work.round_the_clock", "true"),
];

/// The usual value of a line; a few hang on the drive.
fn usual(field: &str, drive: &Drive, ranked: &Ranked, text: &str) -> String {
    let guarded = ["over: railway", "over: stream"].iter().any(|over| text.contains(over));
    match field {
        "if_stalled" => if guarded { "second_lubrication" } else { "rescue_pit" }.to_owned(),
        // Wells do not draw down what a stream feeds.
        "ground[].treatment" => if text.contains("over: stream") { "grouted" } else { "dewatered" }.to_owned(),
        "ground[].soil.undrained_strength" => match drive.stretches()[0].class() {
            jackpull::handbook::GroundClass::SoftClay => "18 kPa",
            jackpull::handbook::GroundClass::HardClay => "200 kPa",
            _ => "75 kPa",
        }
        .to_owned(),
        "candidates[].bore" => format!("{:.0} mm", (ranked.pipe.outside_diameter().value + 0.025) * 1e3),
        _ => match USUAL.iter().find(|(key, _)| *key == field) {
            Some((_, value)) => (*value).to_owned(),
            None => panic!("nobody tells what is usual for {field}\n{text}"),
        },
    }
}

/// Writes a value at a path, in each block of a list; of a block that is there what it lacks.
fn write(at: &mut Value, path: &[&str], value: &Value) {
    let [key, rest @ ..] = path else { return };
    if at.is_null() {
        *at = Value::Mapping(Mapping::new());
    }
    let block = at.as_mapping_mut().unwrap();
    if let Some(list) = key.strip_suffix("[]") {
        block[list].as_sequence_mut().unwrap().iter_mut().for_each(|one| write(one, rest, value));
        return;
    }
    let entry = block.entry(Value::from(*key)).or_insert(Value::Null);
    match (rest, entry.as_mapping_mut(), value) {
        ([], Some(there), Value::Mapping(more)) => {
            for (key, value) in more {
                there.entry(key.clone()).or_insert_with(|| value.clone());
            }
        }
        ([], ..) => *entry = value.clone(),
        _ => write(entry, rest, value),
    }
}

/// What came of following what one drive asks for.
#[derive(Debug, Default)]
struct Followed {
    rounds: usize,
    /// Checks that were said to be settled by lines, and those of them that still ask for others.
    promised: usize,
    broken: Vec<String>,
}

fn follow(text: &str) -> Followed {
    let mut file: Value = serde_yaml::from_str(text).unwrap();
    let mut followed = Followed::default();
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    let mut promised: BTreeMap<&str, String> = BTreeMap::new();
    loop {
        let text = serde_yaml::to_string(&file).unwrap();
        let drive = read_drive(&text, &Handbook::embedded())
            .unwrap_or_else(|fault| panic!("after {promised:?}\n{fault}\n{text}"));
        let first = choose(&drive).unwrap().ranked.remove(0);
        if first.standing != Standing::Open {
            return followed;
        }
        let asked = asks(&first);
        for ask in &asked {
            for (check, by) in ask.checks.iter().filter_map(|check| promised.get_key_value(check)) {
                followed.broken.push(format!("{check} by {by}, then {}", ask.line()));
            }
        }
        let lines: Vec<&Ask> = asked.iter().filter(|ask| !ask.ways.is_empty()).collect();
        if lines.is_empty() {
            return followed;
        }
        followed.rounds += 1;
        assert!(followed.rounds <= ROUNDS, "asks on for {lines:?}\n{text}");
        promised =
            lines.iter().flat_map(|ask| ask.checks.iter().map(|check| (*check, ask.ways[0].join(" and ")))).collect();
        followed.promised += promised.len();
        let mut fields: Vec<&str> = lines.iter().flat_map(|ask| ask.ways[0].iter().copied()).collect();
        fields.sort_by_key(|field| field.matches('.').count());
        fields.dedup();
        for field in fields {
            assert!(seen.insert(field), "{field} is asked for again\n{text}");
            let value = serde_yaml::from_str(&usual(field, &drive, &first, &text)).unwrap();
            let path: Vec<&str> = field.split(':').next().unwrap().split('.').collect();
            write(&mut file, &path, &value);
        }
    }
}

/// Pipes of every kind as a drawing has them, with how they are put in.
const PIPES: &[(&str, &str, &str)] = &[
    ("gravity_sewer", "{ material: clay, size: 10 in, certificate: en_295_7 }", ""),
    ("gravity_sewer", "{ material: clay, size: 10 in }", ""),
    (
        "gravity_sewer",
        "{ material: concrete, size: 600 mm, strength: 40 MPa, pipe_length: 2 m }",
        "spoil: slurry\npilot: none\n",
    ),
    (
        "gravity_sewer",
        "{ material: grp, size: 500 mm, outside_diameter: 530 mm, wall: 25 mm, strength: 90 MPa, rated_force: 1200 kN }",
        "spoil: slurry\npilot: none\n",
    ),
    (
        "gravity_sewer",
        "{ material: polymer_concrete, size: 400 mm, outside_diameter: 550 mm, inside_diameter: 400 mm, strength: 90 MPa }",
        "spoil: slurry\npilot: none\n",
    ),
    (
        "gravity_sewer",
        "{ material: pvc, size: 300 mm, outside_diameter: 315 mm, wall: 12 mm, rated_force: 250 kN }",
        "",
    ),
    (
        "casing",
        "{ material: steel, size: 610 mm, wall: 12.7 mm, yield_strength: 235 MPa }",
        "spoil: auger\npilot: none\n",
    ),
    (
        "casing",
        "{ material: steel, size: 750 mm, outside_diameter: 762 mm, wall: 12.7 mm, steel_grade: a139_b }",
        "spoil: slurry\npilot: none\n",
    ),
    ("pressure_main", "{ material: ductile_iron, size: 300 mm, rated_force: 500 kN }", ""),
    ("gravity_sewer", "{ material: pe100, size: 315 mm, sdr: 11 }", PULLED),
    ("pressure_main", "{ material: pe100, size: 180 mm, sdr: 17 }", PULLED),
    ("pressure_main", "{ material: pvc_fused, size: 12 in, sdr: 18 }", PULLED),
    (
        "pressure_main",
        "{ material: ductile_iron, size: 12 in, wall: 0.3 in, joint_pull: 300 kN, joint_deflection: 3 deg, pipe_length: 6 m }",
        PULLED,
    ),
    ("pressure_main", "{ material: steel, size: 12 in, wall: 0.375 in, steel_grade: api_5l_b }", PULLED),
];
const PULLED: &str = "pilot: drilled\npull: { duration: 6 h, pipe_temperature: 20 degC }\n";

/// Ground as the borings have it, or a part of that.
const GROUNDS: &[&str] = &[
    "class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 20 mm",
    "class: firm_to_very_stiff_clay",
    "class: soft_clay, spt_n: 3",
    "class: hard_clay, spt_n: 35",
    "class: medium_to_dense_sand, spt_n: 20, largest_stone: 20 mm",
    "class: medium_to_dense_sand",
    "class: loose_sand, spt_n: 7",
    "class: silt, spt_n: 10, largest_stone: 0 mm",
    "class: silt",
    "class: gravel, spt_n: 30",
    "class: weak_rock",
    "class: hard_rock",
    "class: fill, spt_n: 9",
];

const WATERS: [&str; 3] = ["none", "2 m", "unknown"];
const SURFACES: [&str; 4] = [
    "",
    "surface: { over: road }\ncrossings: []\n",
    "surface: { over: railway }\ncrossings: []\n",
    "surface: { over: stream }\ncrossings: []\ndepths: [{ at: 30 m, invert_depth: 3.5 m }]\n",
];

/// A drive of 60 m, 4 m deep.
fn job((service, pipe, plan): (&str, &str, &str), ground: &str, water: &str, over: &str) -> String {
    format!(
        "service: {service}\nlength: 60 m\nlaunch: {{ invert_depth: 4 m }}\nreception: {{ invert_depth: 4 m }}\ngrade: 0.6 %\n\
         groundwater: {water}\nlubrication: metered\nground: [{{ {ground} }}]\nrig: {{ thrust: 2000 kN, pull: 500 kN }}\n\
         {over}{plan}candidates: [{pipe}]\n"
    )
}

/// Each pipe in each ground, with a water and a surface in turn.
#[test]
fn what_is_asked_for_can_be_written_and_decides() {
    let mut all = Followed::default();
    let (mut asking, mut drives) = ([0; ROUNDS + 1], 0);
    for (row, pipe) in PIPES.iter().enumerate() {
        for (column, ground) in GROUNDS.iter().enumerate() {
            let over = SURFACES[(row + 2 * column) % 4];
            // A stream stands over its bed.
            let water = if over.contains("stream") { "0 m" } else { WATERS[(row + column) % 3] };
            let text = job(*pipe, ground, water, over);
            let one = follow(&text);
            asking[one.rounds] += 1;
            drives += 1;
            all.promised += one.promised;
            all.broken.extend(one.broken);
        }
    }
    let kept = 1.0 - all.broken.len() as f64 / all.promised as f64;
    all.broken.sort();
    assert!(drives > 150 && asking[1] > 60, "{drives} {asking:?}");
    assert!(asking[3..].iter().sum::<usize>() * 18 <= drives && asking[4] < 3, "{asking:?}");
    assert!(kept >= 0.82, "{kept}\n{}", all.broken.join("\n"));
}

fn first(text: &str) -> Ranked {
    choose(&drive(text)).unwrap().ranked.remove(0)
}

/// The ways that settle a check of what leads.
fn ways(text: &str, subject: Subject) -> Vec<String> {
    let asked = asks(&first(text));
    let of = asked.iter().find(|ask| ask.checks.contains(&subject.label()));
    of.map_or_else(Vec::new, |ask| ask.ways.iter().map(|way| way.join(" and ")).collect())
}

/// What keeps ground from being rated is asked for, all of it and nothing else: a closed face under water waits for the stones
/// alone, an auger for what is done against the water as well, fill for what obstructs it too.
#[test]
fn ground_asks_for_what_its_rating_hangs_on() {
    let casing = |ground: &str, spoil: &str| {
        let pipe = "{ material: steel, size: 610 mm, wall: 12.7 mm, yield_strength: 235 MPa }";
        job(("casing", pipe, &format!("spoil: {spoil}\npilot: none\n")), ground, "2 m", SURFACES[1])
    };
    let of = |ground: &str, spoil: &str| ways(&casing(ground, spoil), Subject::Ground);
    const STONE: &str = "ground[].largest_stone";
    assert_eq!(of("class: medium_to_dense_sand, spt_n: 20", "slurry"), [STONE]);
    assert_eq!(of("class: fill, spt_n: 9, largest_stone: 20 mm", "slurry"), ["ground[].hazards"]);
    assert_eq!(of("class: fill, spt_n: 9", "slurry"), [format!("{STONE} and ground[].hazards")]);
    assert_eq!(of("class: fill, spt_n: 9, hazards: []", "slurry"), [STONE]);
}

/// Another hazard that is named tells nothing of what obstructs fill; that nothing does, or that something does, is told.
#[test]
fn a_named_hazard_does_not_clear_fill() {
    let verdict = |hazards: &str| {
        let ground = format!("class: fill, spt_n: 9, largest_stone: 20 mm{hazards}");
        let text = job(("gravity_sewer", "{ material: clay, size: 10 in }", ""), &ground, "none", SURFACES[1]);
        first(&text).scheme.checks.get(Subject::Ground).unwrap().verdict
    };
    assert_eq!(verdict(""), Verdict::NotDecided);
    assert_eq!(verdict(", hazards: [contaminated]"), Verdict::NotDecided);
    assert_eq!(verdict(", hazards: []"), Verdict::WithCare);
    assert_eq!(verdict(", hazards: [obstructions]"), Verdict::Over);
}

/// A drive in clay whose bore may close on stem and pipe asks for the strength of the clay and its hazards where they alone
/// settle the thrust.
#[test]
fn clay_that_may_close_asks_for_its_strength() {
    let text = "service: gravity_sewer\nlength: 300 ft\nlaunch: { invert_depth: 14 ft }\ngrade: 0.5 %\ngroundwater: none\n\
                lubrication: metered\n\
                ground: [{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0 in }]\n\
                rig: { thrust: 60 kip, pull: 100 kip }\npilot: drilled\nspoil: vacuum\nstem: { outside_diameter: 10 in }\n\
                surface: { over: road }\ncrossings: []\nwork: { round_the_clock: true }\n\
                candidates: [{ material: clay, size: 10 in, certificate: astm_c1208 }]\n";
    let asked = "ground[].soil.undrained_strength and ground[].hazards";
    assert_eq!(ways(text, Subject::JackingThrust), [asked]);
    assert_eq!(ways(text, Subject::StemThrust), [asked]);
    let told =
        text.edit("largest_stone: 0 in", "largest_stone: 0 in, hazards: [], soil: { undrained_strength: 100 kPa }");
    let checks = first(&told).scheme.checks;
    let passes = |subject| checks.get(subject).unwrap().verdict < Verdict::NotDecided;
    assert!(passes(Subject::JackingThrust) && passes(Subject::StemThrust));
}

/// The strength of a clay tells nothing of its weight, which is asked for beside it.
#[test]
fn strength_alone_is_not_all_of_the_soil() {
    let ground = "class: soft_clay, spt_n: 3, largest_stone: 0 mm, soil: { undrained_strength: 18 kPa }";
    let soft =
        |ground: &str| job(("gravity_sewer", "{ material: clay, size: 10 in }", ""), ground, "none", SURFACES[1]);
    assert_eq!(ways(&soft(ground), Subject::FaceStability), ["ground[].soil"]);
    let told = ground.edit("strength: 18 kPa", "strength: 18 kPa, moist: 18 kN/m3, friction_angle: 22 deg");
    let check = *first(&soft(&told)).scheme.checks.get(Subject::FaceStability).unwrap();
    assert_ne!(check.verdict, Verdict::NotDecided);
}

/// A list or a block that is said to be unknown is left out; what must be there is still missed.
#[test]
fn lists_and_blocks_may_be_unknown() {
    let text = job(PIPES[1], GROUNDS[0], "none", "");
    let silent = choose(&drive(&text)).unwrap();
    let same = |text: &str| {
        let other = choose(&drive(text)).unwrap();
        assert_eq!(silent.reason, other.reason, "{text}");
    };
    same(&format!("{text}crossings: unknown\nsurface: unknown\ncarrier: unknown\nstops: unknown\nface: unknown\n"));
    same(&text.edit("invert_depth: 4 m }\nreception", "invert_depth: 4 m, soil: unknown, wall: unknown }\nreception"));
    same(
        &text.edit(
            "largest_stone: 20 mm",
            "largest_stone: 20 mm, hazards: unknown, soil: unknown, unit_friction: unknown",
        ),
    );
    let fault = |text: &str| read_drive(text, &Handbook::embedded()).unwrap_err().to_string();
    assert!(fault(&format!("{text}crossings: none\n")).contains("expected a list"));
    assert!(fault(&text.edit("launch: { invert_depth: 4 m }", "launch: unknown")).contains("launch"));
}

/// A string that collapses on the safe side is asked for the fewest lines that spare it, all in one: how low the fluid is kept and
/// what drives its returns, neither of which does alone. Where the file tells what lies over it the fluid presses no harder than the
/// ground bears, and water in the string does.
#[test]
fn a_string_that_may_collapse_asks_for_what_spares_it() {
    let main = |more: &str| {
        format!(
            "service: pressure_main\nlength: 120 m\nlaunch: {{ invert_depth: 4 m }}\ngrade: 0.2 %\ngroundwater: none\n\
             lubrication: none\n\
             ground: [{{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 20 mm }}]\n\
             rig: {{ thrust: 200 kN, pull: 200 kN }}\npilot: drilled\ncrossings: []\n\
             pull: {{ duration: 8 h, pipe_temperature: 20 degC{more} }}\n\
             candidates: [{{ material: pe100, size: 200 mm, sdr: 17 }}]\n"
        )
    };
    const BOTH: &str = "pull.fluid_level and pull.returns";
    assert_eq!(ways(&main(""), Subject::Collapse), [BOTH]);
    let verdict = |more: &str| first(&main(more)).scheme.checks.get(Subject::Collapse).unwrap().verdict;
    const LOW: &str = ", fluid_level: 3.9 m";
    const THIN: &str = ", returns: { flow: 200 L/min, plastic_viscosity: 0.01 Pa*s, yield_point: 3 Pa }";
    assert_eq!(verdict(LOW), Verdict::NotDecided);
    assert_eq!(verdict(THIN), Verdict::NotDecided);
    assert_eq!(verdict(&format!("{LOW}{THIN}")), Verdict::Within);
    let open = main("").edit("crossings: []", "surface: { over: open }\ncrossings: []");
    assert_eq!(ways(&open, Subject::Collapse), ["pull.contents"]);
}
