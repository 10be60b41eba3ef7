//! The thrust wall of a drive: against worked walls, and what no wall may do.

use crate::drives::{drive, text};
use crate::edit::Edit;
use jackpull::check::{Check, Subject, Verdict};
use jackpull::method::wall_needed;
use jackpull::quantity::{FromText, Length, Measure};
use jackpull::{Drive, Handbook, InputError, Method, Scheme, assess, explain, read_drive};
use proptest::prelude::*;

/// The shared drive, 6 m deep, with this water and this block at the launch pit.
fn with(water: &str, launch: &str) -> String {
    text(|text| {
        text.edit("launch: { invert_depth: 4.20 m }", &format!("launch: {{ invert_depth: 6 m, {launch} }}"))
            .edit("reception: { invert_depth: 3.96 m }", "reception: { invert_depth: 5.76 m }")
            .edit("groundwater: 5.5 m", &format!("groundwater: {water}"))
    })
}

const WALL: &str = "wall: { width: 3 m, height: 3 m, top_depth: 4 m }";

fn soil(moist: &str, saturated: &str, angle: &str) -> String {
    format!("soil: {{ moist: {moist}, saturated: {saturated}, friction_angle: {angle} }}")
}

fn jacked(drive: &Drive) -> Scheme {
    assess(drive, &drive.candidates()[0], Method::PipeJacking)
}

fn check(text: &str, subject: Subject) -> Option<Check> {
    jacked(&drive(text)).checks.get(subject).copied()
}

/// What the wall may be asked, N.
fn limit(text: &str) -> f64 {
    check(text, Subject::ThrustWall).unwrap().high().unwrap().1.si
}

/// 3 m by 3 m, its top 4 m down, 18 kN/m3, 30 deg: 2,985 kN of which 312 are of cohesion; buoyant 1,216 kN. Half of it
/// is allowed; two thirds with the movement checked.
#[test]
fn worked_wall_dry_and_wet() {
    let ground = soil("18 kN/m3", "18 kN/m3", "30 deg");
    let dry = limit(&with("none", &format!("{ground}, {WALL}")));
    assert!((dry - (2985e3 - 312e3) / 2.0).abs() < 0.5e3, "{dry}");
    let wet = limit(&with("0 m", &format!("{ground}, {WALL}")));
    assert!((wet - 1216e3 / 2.0).abs() < 0.5e3, "{wet}");
    let checked = WALL.edit("4 m }", "4 m, movement: checked }");
    let checked = limit(&with("none", &format!("{ground}, {checked}")));
    assert!((checked / dry - 2.0 / 1.5).abs() < 1e-12, "{checked}");
}

/// Without a depth of its top its middle is behind the axis of the pipe: with its top at t, 81 (6 t + 9) kN.
#[test]
fn a_wall_of_no_told_depth_stands_behind_the_axis() {
    let text =
        with("none", &format!("{}, {}", soil("18 kN/m3", "18 kN/m3", "30 deg"), WALL.edit(", top_depth: 4 m", "")));
    let top = 6.0 - drive(&text).candidates()[0].outside_diameter().si() / 2.0 - 1.5;
    let found = limit(&text);
    assert!((found / (81e3 * (6.0 * top + 9.0) / 2.0) - 1.0).abs() < 1e-9, "{found}");
}

/// Water at 5 m: one strip of 1 m above, one of 2 m below, 9 (72 + 9) + 9 (180 + 16) = 2,493 kN at 8 kN/m3 buoyant.
#[test]
fn water_cuts_the_wall() {
    let ground = "soil: { moist: 18 kN/m3, buoyant: 8 kN/m3, friction_angle: 30 deg }";
    let cut = limit(&with("5 m", &format!("{ground}, {WALL}")));
    assert!((cut - 2493e3 / 2.0).abs() < 1.0, "{cut}");
}

/// One ground behind the wall and over the pipe: 2 m at 17 or 19, then 18 or 20 kN/m3, water at 3 m. At 4 and 7 m the
/// effective stress is 17 x 2 + 18 + 10.193 = 62.19 and 92.77 kPa; the wall bears three times their mean, 9 m2 of it. Of
/// clay at 20 kPa it bears the moist weight and the strength: 70 and 124 kPa and 40 more, though the whole stress over the
/// pipe is 72 and 132 kPa: water must not add.
#[test]
fn the_wall_and_the_pipe_feel_one_ground() {
    let water = 9.80665;
    let soil = "soil: { moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: 30 deg, surcharge: 8 kPa, layers: [{ \
                thickness: 2 m, moist: 17 kN/m3, saturated: 19 kN/m3, friction_angle: 25 deg }] }";
    let total = |depth: f64| 2.0 * 17.0 + 18.0 + (depth - 3.0) * 20.0;
    let effective = |depth: f64| total(depth) - (depth - 3.0) * water;
    let near = |one: f64, other: f64| assert!((one / other - 1.0).abs() < 1e-12, "{one} and {other}");
    let drained = limit(&with("3 m", &format!("{soil}, {WALL}")));
    near(drained, 9e3 * 3.0 * (effective(4.0) + effective(7.0)) / 2.0 / 2.0);
    let clay = soil.edit("surcharge: 8 kPa", "undrained_strength: 20 kPa");
    let moist = |depth: f64| 2.0 * 17.0 + (depth - 2.0) * 18.0;
    let undrained = limit(&with("3 m", &format!("{clay}, {WALL}")));
    near(undrained, 9e3 * ((moist(4.0) + moist(7.0)) / 2.0 + 2.0 * 20.0) / 2.0);
    // The same ground over the pipe, with the surcharge that a wall must do without.
    let over = with("3 m", "").edit_all("largest_stone: 20 mm }", &format!("largest_stone: 20 mm, {soil} }}"));
    let drive = drive(&over);
    let pipe = &drive.candidates()[0];
    let stress = jackpull::method::friction_models(&drive, pipe).unwrap()[0].at_crown;
    let crown = 6.0 - pipe.outside_diameter().si();
    near(stress.total.si(), (8.0 + total(crown)) * 1e3);
    near(stress.effective.si(), (8.0 + effective(crown)) * 1e3);
}

/// 20 kN/m3, the top 4 m down: 3 x 3 m2 of (20 x 5.5 + 2 x 50) kPa are 1,890 kN by the 50 kPa that the file tells, less than
/// what 45 deg would give; with 500 kPa they are 9,990 kN: clay is pushed for hours. Sand of such a strength bears the lesser.
#[test]
fn clay_of_a_strength_that_is_told_is_undrained() {
    let ground = |strength: &str| {
        let ground = soil("20 kN/m3", "20 kN/m3", "45 deg");
        ground.edit(" }", &format!(", undrained_strength: {strength} }}"))
    };
    let on = |strength: &str| with("none", &format!("{}, {WALL}", ground(strength)));
    for (strength, bears) in [("50 kPa", 1890e3), ("500 kPa", 9990e3)] {
        let found = limit(&on(strength));
        assert!((found - bears / 2.0).abs() < 1.0, "{found}");
    }
    let drained = limit(&with("none", &format!("{}, {WALL}", soil("20 kN/m3", "20 kN/m3", "45 deg"))));
    let sand = on("500 kPa").edit_all("firm_to_very_stiff_clay", "medium_to_dense_sand");
    assert_eq!(limit(&sand), drained);
}

/// An eye of 1 m at the axis of a dry wall in one ground: the pressure at the axis, K 18 z, on a circle.
#[test]
fn an_eye_is_taken_off() {
    let ground = soil("18 kN/m3", "18 kN/m3", "30 deg");
    let wall = WALL.edit("4 m }", "4 m, thrust_depth: 5.5 m, eye_diameter: 1 m }");
    let whole = limit(&with("none", &format!("{ground}, {WALL}")));
    let less = whole - limit(&with("none", &format!("{ground}, {wall}")));
    let eye = 3.0 * 18e3 * 5.5 * core::f64::consts::FRAC_PI_4 / 2.0;
    assert!((less - eye).abs() < 1.0, "{less} and {eye}");
}

/// A thrust in the lower half of a deep wall agrees with the ground; one near its top asks for care.
#[test]
fn the_thrust_meets_the_reaction() {
    let ground = soil("18 kN/m3", "18 kN/m3", "30 deg");
    let at = |depth: &str| {
        let wall = WALL.edit("4 m }", &format!("4 m, thrust_depth: {depth} }}"));
        check(&with("none", &format!("{ground}, {wall}")), Subject::WallLevel).unwrap()
    };
    // Centroid of a trapezium of 4 and 7: 3 (4 + 14) / (3 x 11) = 1.636 m below the top.
    let (off, middle) = at("5.636 m").high().unwrap();
    assert!(off.si < 0.001 && (middle.si - 0.5).abs() < 1e-12, "{off:?}");
    assert_eq!(at("5.636 m").verdict, Verdict::Within);
    assert_eq!(at("5 m").verdict, Verdict::WithCare);
    // 1.136 m off, more than twice a sixth of 3 m.
    assert_eq!(at("4.5 m").verdict, Verdict::NotDecided);
}

/// A quarter of 5 % of 3 m in clay, and of that the share of the thrust that it may bear, against a tolerance of centimetres:
/// care, unless the file says that it was checked.
#[test]
fn movement_asks_for_care() {
    let ground = soil("18 kN/m3", "18 kN/m3", "30 deg");
    let found = check(&with("none", &format!("{ground}, {WALL}")), Subject::WallMovement).unwrap();
    let (thrust, bears) =
        check(&with("none", &format!("{ground}, {WALL}")), Subject::ThrustWall).unwrap().high().unwrap();
    let share = (thrust.si / bears.si).min(1.0);
    assert!((found.high().unwrap().0.si - 0.0375 * share).abs() < 1e-12, "{share}");
    assert_eq!(found.verdict, if 0.0375 * share > 0.02 { Verdict::WithCare } else { Verdict::Within }, "{share}");
    // Taller in the same ground it bears more, and moves no more for it.
    let taller =
        check(&with("none", &format!("{ground}, {}", WALL.edit("height: 3 m", "height: 4 m"))), Subject::WallMovement);
    assert!(taller.unwrap().high().unwrap().0.si <= found.high().unwrap().0.si);
    let checked = WALL.edit("4 m }", "4 m, movement: checked }");
    assert!(check(&with("none", &format!("{ground}, {checked}")), Subject::WallMovement).is_none());
}

/// The thrust on the wall is the greatest of all stages that push; a pulled pipe has its stem pushed.
#[test]
fn all_stages_that_push_count() {
    let ground = soil("18 kN/m3", "18 kN/m3", "30 deg");
    let drive = drive(&with("none", &format!("{ground}, {WALL}")));
    for (pipe, method) in drive.candidates().iter().zip([Method::PipeJacking, Method::Pullback]) {
        let scheme = assess(&drive, pipe, method);
        let (demand, _) = scheme.checks.get(Subject::ThrustWall).unwrap().high().unwrap();
        let stages = jackpull::method::profile(&drive, pipe, method);
        let points = stages.iter().flat_map(|stage| &stage.points);
        let peak = points.filter_map(|point| point.on_wall).map(|band| band.high.si()).fold(0.0, f64::max);
        assert!((demand.si / peak - 1.0).abs() < 1e-12, "{method:?}");
    }
}

/// A wall that is too weak bars the scheme, and one that is not given is asked for.
#[test]
fn a_wall_that_is_not_given_is_sized() {
    let ground = soil("18 kN/m3", "18 kN/m3", "30 deg");
    let small = "wall: { width: 0.5 m, height: 0.5 m, top_depth: 5.6 m }";
    assert_eq!(
        check(&with("none", &format!("{ground}, {small}")), Subject::ThrustWall).unwrap().verdict,
        Verdict::Over
    );
    let drive = drive(&with("none", &ground));
    let scheme = jacked(&drive);
    assert!(scheme.checks.get(Subject::ThrustWall).unwrap().is_required());
    let needed = wall_needed(&drive, &drive.candidates()[0], &scheme).unwrap();
    let [width, height, top] = [needed.width, needed.height, needed.top].map(|length| length.si());
    // Put in as it is said, it is used to the full: by the likely thrust, or by the high one down to what is left.
    let wall = format!("wall: {{ width: {width} m, height: {height} m, top_depth: {top} m }}");
    let check = check(&with("none", &format!("{ground}, {wall}")), Subject::ThrustWall).unwrap();
    let (likely, high) = (check.likely_utilisation().unwrap(), check.utilisation().unwrap());
    let left = (needed.left / needed.safety.value).si();
    assert!((high * left - 1.0).abs() < 1e-6 && likely < 1.0 + 1e-6, "{likely} {high} {left}");
    // The one width of the page is that which is asked for.
    let (asked, _) = scheme.checks.get(Subject::ThrustWall).unwrap().high().unwrap();
    assert!((asked.si / width - 1.0).abs() < 1e-6, "{asked:?} {width}");
}

#[test]
fn a_wall_touches_no_heap_and_works_as_it_is_shown() {
    let ground = soil("18 kN/m3", "19 kN/m3", "30 deg").edit(" }", ", undrained_strength: 60 kPa }");
    let drive = drive(&with("5 m", &format!("{ground}, {WALL}")));
    let pipe = &drive.candidates()[0];
    let measured = allocation_counter::measure(|| {
        std::hint::black_box(assess(&drive, pipe, Method::PipeJacking));
    });
    assert_eq!(measured.count_total, 0);
    let (scheme, sheet) = explain(&drive, pipe, Method::PipeJacking);
    assert_eq!(scheme, jacked(&drive));
    let (_, limit) = scheme.checks.get(Subject::ThrustWall).unwrap().high().unwrap();
    assert!(sheet.steps().iter().any(|step| step.part == "thrust wall" && step.result.si == limit.si));
}

#[test]
fn faults_of_the_wall_are_located() {
    let ground = soil("18 kN/m3", "19 kN/m3", "30 deg");
    let wall = |more: &str| format!("wall: {{ width: 3 m, height: 3 m, {more} }}");
    for (launch, part) in [
        (format!("{ground}, wall: {{ width: 0 m, height: 3 m }}"), "launch.wall.width: expected a length above zero"),
        (format!("{ground}, {}", wall("top_depth: 6.5 m")), "launch.wall.top_depth: the thrust goes past a wall"),
        (
            format!("{ground}, {}", wall("spread: 3")),
            "launch.wall.spread: expected a plain number or a percentage from 1 to 2.5, got 3",
        ),
        (format!("{ground}, {}", wall("safety: 1.5")), "launch.wall.safety: expected a number from 2 to 10"),
        (
            format!("{ground}, {}", wall("safety: 1.4, movement: checked")),
            "launch.wall.safety: expected a number from 1.5",
        ),
        (format!("{ground}, {}", wall("eye_diameter: 3 m")), "launch.wall.eye_diameter: leaves nothing of the wall"),
        (format!("{ground}, {}", wall("movement: cheked")), "launch.wall.movement: expected how the movement"),
    ] {
        let text = with("3 m", &launch);
        let Err(InputError::Faults(faults)) = read_drive(&text, &Handbook::embedded()) else { panic!("{launch}") };
        let shown: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert!(shown.iter().any(|fault| fault.starts_with(part) && fault.contains(" at line ")), "{part}: {shown:?}");
    }
    let reception = text(|text| text.edit("3.96 m }", "3.96 m, wall: { width: 3 m, height: 3 m } }"));
    let Err(InputError::Faults(faults)) = read_drive(&reception, &Handbook::embedded()) else { panic!("no fault") };
    assert!(faults[0].to_string().starts_with("reception.wall: there is no thrust wall in the reception pit"));
}

fn length(metres: f64) -> String {
    Length::from_si(metres).to_text()
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Wider, higher, deeper, of more friction: no weaker. Under more water, with an eye: no stronger.
    #[test]
    fn a_wall_runs_as_it_must(
        width in 1.0..5.0_f64, height in 1.0..5.0_f64, top in 0.5..5.5_f64, angle in 15.0..44.0_f64, water in 0.0..9.0_f64,
        strength in 5.0..200.0_f64, eye in 0.1..0.9_f64,
    ) {
        let at = |width: f64, height: f64, top: f64, angle: f64, water: f64, eye: Option<f64>| {
            let eye = eye.map_or_else(String::new, |eye| format!(", eye_diameter: {}", length(eye)));
            let ground = format!(
                "soil: {{ moist: 18 kN/m3, saturated: 20 kN/m3, friction_angle: {angle} deg, undrained_strength: {strength} \
                 kPa, layers: [{{ thickness: 2 m, moist: 17 kN/m3, saturated: 19 kN/m3, friction_angle: 25 deg }}] }}"
            );
            let depths = format!("top_depth: {}, thrust_depth: {}", length(top), length(top + 0.5 * height));
            let wall = format!("wall: {{ width: {}, height: {}, {depths}{eye} }}", length(width), length(height));
            limit(&with(&length(water), &format!("{ground}, {wall}")))
        };
        let base = at(width, height, top, angle, water, None);
        let no_less = base * (1.0 - 1e-12);
        prop_assert!(base > 0.0);
        prop_assert!(at(width * 1.1, height, top, angle, water, None) >= no_less);
        prop_assert!(at(width, height * 1.1, top, angle, water, None) >= no_less);
        prop_assert!(at(width, height, top, angle + 1.0, water, None) >= no_less);
        prop_assert!(at(width, height, top, angle, water + 0.5, None) >= no_less, "less water took off resistance");
        prop_assert!(at(width, height, top, angle, water, Some(eye)) < base);
        // Deeper in one ground: the layer above has another friction angle.
        if top >= 2.0 {
            prop_assert!(at(width, height, top + 0.3, angle, water, None) >= no_less);
        }
    }
}

/// A wall reaches no higher than 0.6 of the depth of the floor, 0.6 x (6 + 1) = 4.2 m, and is as wide as it then has to be:
/// unlubricated, in weak ground, it is. K_p of 5 deg is 1.191.
#[test]
fn a_wall_that_is_wider_than_high_is_sized() {
    let ground = soil("16 kN/m3", "16 kN/m3", "5 deg");
    let strong = with("none", &ground).edit("900 kN", "4500 kN");
    let drive = drive(&strong.edit("lubrication: metered", "lubrication: none"));
    let needed = wall_needed(&drive, &drive.candidates()[0], &jacked(&drive)).unwrap();
    let [width, height, top] = [needed.width, needed.height, needed.top].map(|length| length.si());
    assert!((height - 4.2).abs() < 1e-9 && width > height, "{width} x {height}");
    // By hand, with nothing but effective stress: half of 1.191 x 16 (top + bottom)/2 over its face is what it may be asked, and
    // of the high thrust what is left.
    let passive = 1.190_954 * 16e3 * (top + top + height) / 2.0 * height * width;
    assert!((passive / needed.left.si() / needed.thrust.si() - 1.0).abs() < 1e-5, "{passive} for {:?}", needed.thrust);
}
