//! Jacking stations and the shove plan of a drive: against sums by hand, and what neither may do.

use crate::drives::drive;
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Subject, Verdict};
use jackpull::method::{PlacedStations, Shove, Stations, StopBy, profile, shove_plan, stations};
use jackpull::quantity::Measure;
use jackpull::{Drive, Handbook, InputError, Method, Scheme, assess, read_drive};
use proptest::prelude::*;

/// A level drive of 1.5 m pipe without a stem, with this friction all along and nothing but `face` at the head.
fn text(length: f64, size: &str, friction: f64, face: f64, rig: &str, more: &str) -> String {
    format!(
        "service: casing\nlength: {length} m\nlaunch: {{ invert_depth: 6 m }}\ngrade: 0 %\ngroundwater: none\n\
         lubrication: none\nwork: {{ round_the_clock: true }}\nground: [{{ class: firm_to_very_stiff_clay, spt_n: 10, largest_stone: 0 mm, \
         unit_friction: {{ low: 1 kPa, likely: {friction} kPa, high: {friction} kPa }} }}]\n\
         rig: {{ thrust: 3 MN, pull: 1 MN{rig} }}\nstem: {{ outside_diameter: none }}\n\
         face: {{ low: {face} kN, likely: {face} kN, high: {face} kN }}\ncandidates:\n\
         \x20 - {{ material: clay, size: {size}, outside_diameter: 1.5 m, end_bearing_area: 0.9 m2, \
         certificate: en_295_7{more} }}\n"
    )
}

fn found(text: &str) -> Stations {
    let drive = drive(text);
    let pipe = &drive.candidates()[0];
    stations(&drive, pipe, &assess(&drive, pipe, Method::PipeJacking)).unwrap()
}

fn placed(text: &str) -> PlacedStations {
    match found(text) {
        Stations::Placed(placed) => placed,
        other => panic!("{other:?}"),
    }
}

const STATION: &str = ", station_thrust: 2 MN";

/// 5 kPa on 1.5 m are 23.56 kN/m. Stations of 2 MN: 60 % less 300 kN of face is 38.2 m, 80 % is 67.9 m; main jacks of
/// 80 % of 3 MN 101.9 m. 300 m: 1 + ceil((300 - 38.2 - 101.9) / 67.9) = 4.
#[test]
fn stations_by_hand() {
    let got = placed(&text(300.0, "1300 mm", 5.0, 300.0, STATION, ""));
    let places: Vec<f64> = got.places.iter().map(|place| place.si()).collect();
    let (first, next) = (38.197, 67.906);
    assert_eq!(places.len(), 4);
    for (index, place) in (0..).zip(&places) {
        assert_relative_eq!(*place, first + f64::from(index) * next, max_relative = 1e-4);
    }
    assert_relative_eq!(got.start.si(), 0.9 * 2e6, max_relative = 1e-12);
    // 1 kPa of low friction holds 4.712 kN/m behind the hindmost.
    let tail = 4712.39 * (300.0 - places[3]);
    assert_relative_eq!(got.on_wall.si(), 2e6 - tail, max_relative = 1e-6);
    // Rounded down to whole pipes.
    let whole = placed(&text(300.0, "1300 mm", 5.0, 300.0, STATION, ", pipe_length: 2.5 m"));
    assert_eq!(whole.places[..2].iter().map(|place| place.si()).collect::<Vec<_>>(), [37.5, 105.0]);
}

/// With the four stations at work the first pushes 300 + 23.56 x 38.2 = 1,200 kN, each further one 23.56 x 67.9 = 1,600 kN
/// and the main jacks the last 58.1 m, 1,369 kN, or a section that enters: 1,600 kN. Without them 7,369 kN.
#[test]
fn forces_are_those_of_the_stations_at_work() {
    let checks = |text: &str| {
        let drive = drive(text);
        assess(&drive, &drive.candidates()[0], Method::PipeJacking)
    };
    let (with, without) =
        (checks(&text(300.0, "1300 mm", 5.0, 300.0, STATION, "")), checks(&text(300.0, "1300 mm", 5.0, 300.0, "", "")));
    let demand = |scheme: &Scheme, subject| scheme.checks.get(subject).unwrap().high().unwrap().0.si;
    for subject in [Subject::JackingThrust, Subject::EndCapacity] {
        assert_relative_eq!(demand(&with, subject), 1.6e6, max_relative = 1e-4);
    }
    assert_relative_eq!(demand(&without, Subject::JackingThrust), 300e3 + 23_561.9 * 300.0, max_relative = 1e-5);
    assert_relative_eq!(with.thrust.unwrap().if_sure().unwrap().high.si(), 1.6e6, max_relative = 1e-4);
    let end = with.checks.get(Subject::EndCapacity).unwrap();
    assert_eq!((end.verdict, end.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(without.checks.get(Subject::JackingThrust).unwrap().verdict, Verdict::Over);
    // A short drive needs none, and people cannot enter a smaller pipe.
    let short = |more: &str| demand(&checks(&text(60.0, "1300 mm", 5.0, 300.0, more, "")), Subject::JackingThrust);
    assert_eq!(short(STATION), short(""));
    let small = |more: &str| demand(&checks(&text(300.0, "1100 mm", 5.0, 300.0, more, "")), Subject::JackingThrust);
    assert_eq!(small(STATION), small(""));
}

/// After a planned stop 1.5 times the high friction moves in clay: sections of the further stations shrink by as much.
#[test]
fn a_planned_stop_shortens_the_sections() {
    let moving = text(300.0, "1300 mm", 5.0, 300.0, STATION, "");
    let (moving, stopped) = (placed(&moving), placed(&moving.edit("rig: {", "stops: [{ at: 150 m }]\nrig: {")));
    let next = |placed: &PlacedStations| (placed.places[1] - placed.places[0]).si();
    assert_relative_eq!(next(&moving) / next(&stopped), 1.5, max_relative = 1e-9);
    assert!(stopped.places.len() >= moving.places.len());
}

/// A station, as the main jacks, pushes no more than the pipe end bears, and uphill carries the weight of its section.
#[test]
fn pipe_end_and_grade_count() {
    let drive = text(300.0, "1300 mm", 5.0, 300.0, ", station_thrust: 60 MN", "");
    let weak = placed(&drive.edit("end_bearing_area: 0.9 m2", "end_bearing_area: 0.1 m2"));
    assert!(weak.capacity.si() < 5e6, "{:?}", weak.capacity);
    let at = |grade: &str| {
        let text = text(300.0, "1300 mm", 5.0, 300.0, STATION, ", weight: 20 kN/m");
        let text = text.edit("grade: 0 %", &format!("grade: {grade}")).edit("invert_depth: 6 m", "invert_depth: 30 m");
        placed(&text).places[0].si()
    };
    // 20 kN/m on a slope of 5 % are 0.999 kN/m beside 23.562.
    assert_relative_eq!(at("0 %") / at("5 %"), (23.562 + 0.998_8) / 23.562, max_relative = 1e-4);
}

/// People enter DN 1200, which is 48 in among metric sizes.
#[test]
fn a_station_goes_into_dn_1200() {
    assert!(matches!(found(&text(300.0, "1200 mm", 5.0, 300.0, STATION, "")), Stations::Placed(..)));
}

/// Nothing where the jacks do it alone; no option where people cannot enter; no figure without the thrust of a station.
#[test]
fn what_stations_cannot_do_is_said() {
    assert_eq!(found(&text(60.0, "1300 mm", 5.0, 300.0, STATION, "")), Stations::NotNeeded);
    assert!(matches!(found(&text(300.0, "1100 mm", 5.0, 300.0, STATION, "")), Stations::TooSmall(..)));
    assert_eq!(found(&text(300.0, "1300 mm", 5.0, 300.0, "", "")), Stations::NotGiven);
    assert_eq!(found(&text(300.0, "1300 mm", 5.0, 1300.0, STATION, "")), Stations::NoUse);
}

fn plan(drive: &Drive) -> Vec<Shove> {
    let pipe = &drive.candidates()[0];
    shove_plan(drive, pipe, &assess(drive, pipe, Method::PipeJacking))
}

/// 23.56 kN/m and 300 kN: 417.8 kN at the end of the second pipe of 2.5 m; at 0.95 from 0.05 m2 8.80 MPa. The last pipe
/// is the shorter one.
#[test]
fn shove_plan_by_hand() {
    let drive = drive(&text(61.0, "1300 mm", 5.0, 300.0, ", cylinder_area: 50000 mm2", ", pipe_length: 2.5 m"));
    let plan = plan(&drive);
    assert_eq!(plan.len(), 25);
    let second = plan[1];
    assert_relative_eq!(second.force.high.si(), 300e3 + 23_561.9 * 5.0, max_relative = 1e-6);
    assert_relative_eq!(second.gauge.unwrap().0.high.si(), 417_809.7 / 0.95 / 0.05, max_relative = 1e-5);
    let last = plan[24];
    assert_eq!((last.extent.0.si(), last.extent.1.si()), (60.0, 61.0));
    assert_eq!(plan.iter().filter(|shove| shove.changes).map(|shove| shove.number).collect::<Vec<_>>(), [1, 25]);
    assert_eq!(last.stop_by, StopBy::Expected);
}

/// Once more is expected at worst than the rig gives, the rig is where to stop.
#[test]
fn the_least_of_all_limits_stops() {
    let plan = plan(&drive(&text(150.0, "1300 mm", 5.0, 300.0, "", ", pipe_length: 2.5 m")));
    // (3000 - 300) / 23.56 = 114.6 m.
    let switch = plan.iter().find(|shove| shove.stop_by != StopBy::Expected).unwrap();
    assert_eq!((switch.extent.0.si(), switch.stop_by, switch.changes), (112.5, StopBy::Rig, true));
    assert_eq!(switch.stop.si(), 3e6);
}

#[test]
fn faults_of_the_jacks_are_located() {
    for (rig, more, part) in [
        (", efficiency: 0.9", "", "rig.efficiency: says nothing without the piston area"),
        (
            ", cylinder_area: 1 m2, efficiency: 1.2",
            "",
            "rig.efficiency: expected a plain number or a percentage from 0.5 to 1, got 1.2",
        ),
        (", cylinder_area: 0 m2", "", "rig.cylinder_area: expected an area above zero"),
        (", station_thrust: 0 kN", "", "rig.station_thrust: expected a force above zero"),
        ("", ", pipe_length: 0 m", "candidates[0].pipe_length: expected a length above zero"),
        ("", ", pipe_length: 1 mm", "candidates[0].pipe_length: expected a length from 0.3 m to 15.0 m"),
    ] {
        let text = text(60.0, "1300 mm", 5.0, 300.0, rig, more);
        let Err(InputError::Faults(faults)) = read_drive(&text, &Handbook::embedded()) else { panic!("{rig}{more}") };
        let shown: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert!(shown.iter().any(|fault| fault.starts_with(part) && fault.contains(" at line ")), "{part}: {shown:?}");
    }
    let pulled = crate::drives::text(|text| text.edit("sdr: 11", "sdr: 11, pipe_length: 2 m"));
    let Err(InputError::Faults(faults)) = read_drive(&pulled, &Handbook::embedded()) else { panic!("no fault") };
    assert!(faults[0].to_string().starts_with("candidates[1].pipe_length: is for pipe with joints"));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// More friction or length: no fewer stations. Each section is within the share of its station.
    #[test]
    fn stations_run_as_they_must(length in 80.0..400.0_f64, friction in 2.0..15.0_f64, face in 0.0..600.0_f64) {
        let count = |length: f64, friction: f64| match found(&text(length, "1300 mm", friction, face, STATION, "")) {
            Stations::NotNeeded => 0,
            Stations::Placed(placed) => placed.places.len(),
            other => panic!("{other:?}"),
        };
        let base = count(length, friction);
        prop_assert!(count(length, friction * 1.2) >= base);
        prop_assert!(count(length * 1.2, friction) >= base);
        if let Stations::Placed(placed) = found(&text(length, "1300 mm", friction, face, STATION, "")) {
            let per_metre = friction * 1e3 * core::f64::consts::PI * 1.5;
            let places: Vec<f64> = placed.places.iter().map(|place| place.si()).collect();
            prop_assert!(face * 1e3 + per_metre * places[0] <= 0.6 * 2e6 * (1.0 + 1e-9));
            for pair in places.windows(2) {
                prop_assert!(per_metre * (pair[1] - pair[0]) <= 0.8 * 2e6 * (1.0 + 1e-9));
            }
            // What is left to the main jacks.
            prop_assert!(per_metre * (length - places.last().unwrap()) <= 0.8 * 3e6 * (1.0 + 1e-9));
        }
    }

    /// The plan is the profile cut into pipes: its peak is that of the profile, and no pipe passes it.
    #[test]
    fn the_plan_is_the_profile(length in 10.0..120.0_f64, friction in 1.0..15.0_f64, segment in 0.7..4.0_f64) {
        let drive = drive(&text(length, "1300 mm", friction, 100.0, "", &format!(", pipe_length: {segment} m")));
        let plan = plan(&drive);
        let stages = profile(&drive, &drive.candidates()[0], Method::PipeJacking);
        let peak = stages.last().unwrap().points.iter().map(|point| point.on_rig.high.si()).fold(0.0, f64::max);
        let most = plan.iter().map(|shove| shove.force.high.si()).fold(0.0, f64::max);
        prop_assert!((most / peak - 1.0).abs() < 1e-12);
        prop_assert_eq!(plan.last().unwrap().extent.1, drive.length());
        for pair in plan.windows(2) {
            prop_assert_eq!(pair[0].extent.1, pair[1].extent.0);
            prop_assert!(pair[0].force.high <= pair[1].force.high);
        }
        prop_assert!(plan.iter().all(|shove| shove.stop <= shove.force.high));
    }
}

/// 1.8 m of 10, 20 and 25 kPa are 56.5, 113 and 141 kN/m: 0.8 of 3,000 kN pushes 42, 21 and 15 m in whole pipes of 3 m. Less than
/// 40 m from one station to the next asks for care, less than half of that is over; the first line tells how many there are, and none
/// stands outside the bore.
#[test]
fn stations_are_counted_and_stand_apart() {
    let of = |friction: f64, thrust: &str, station: &str| {
        format!(
            "service: casing\nlength: 250 m\nlaunch: {{ invert_depth: 8.5 m }}\ngrade: 0 %\ngroundwater: none\n\
             lubrication: none\nspoil: slurry\npilot: none\nguidance: gyro\nwork: {{ round_the_clock: true }}\n\
             surface: {{ over: open }}\nface_pressure: {{ low: 40 kPa, high: 80 kPa }}\n\
             ground: [{{ class: gravel, spt_n: 20, largest_stone: 0 mm, \
             unit_friction: {{ low: 1 kPa, likely: 2 kPa, high: {friction} kPa }} }}]\n\
             rig: {{ thrust: {thrust}, station_thrust: {station} }}\nif_stalled: stations\n\
             candidates: [{{ material: concrete, size: 1500 mm, outside_diameter: 1800 mm, inside_diameter: 1500 mm, \
             strength: 50 MPa, rated_force: 9 MN, crushing: 300 kN/m, pipe_length: 3 m, packer: {{ thickness: 18 mm }} }}]\n"
        )
    };
    let spaced = |text: &str| {
        let drive = drive(text);
        let scheme = assess(&drive, &drive.candidates()[0], Method::PipeJacking);
        (placed(text).places, scheme.checks.get(Subject::StationSpacing).copied())
    };
    for (friction, apart, verdict) in
        [(10.0, 42.0, Verdict::Within), (20.0, 21.0, Verdict::WithCare), (25.0, 15.0, Verdict::Over)]
    {
        let (places, check) = spaced(&of(friction, "10 MN", "3 MN"));
        assert!((places[1] - places[0]).si() - apart < 1e-6, "{places:?}");
        let check = check.unwrap();
        assert_eq!((check.verdict, check.high().unwrap().0.si), (verdict, apart));
    }
    let reason = jackpull::choose(&drive(&of(10.0, "10 MN", "3 MN"))).unwrap().reason;
    assert!(reason.contains("jacking stations"), "{reason}");
    let (places, _) = spaced(&of(10.0, "3 MN", "8 MN"));
    assert!(places.iter().all(|place| place.si() <= 250.0), "{places:?}");
}
