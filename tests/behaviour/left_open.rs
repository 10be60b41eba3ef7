//! What a file leaves open bars nothing and betters nothing, and what it gives counts: whole drives, by their first line.

use crate::drives::{MAIN_PE, drive, main, sewer};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Rule, Subject, Verdict};
use jackpull::choice::{Ranked, asks};
use jackpull::handbook::Handbook;
use jackpull::{InputError, Method, Standing, assess, choose, read_drive};

fn first(text: &str) -> Ranked {
    choose(&drive(text)).unwrap().ranked.remove(0)
}

fn check(text: &str, subject: Subject) -> Check {
    let ranked = first(text);
    *ranked.scheme.checks.get(subject).unwrap_or_else(|| panic!("{subject:?} is not made of\n{text}"))
}

/// Likely and high demand and the limit, in SI base units.
fn numbers(check: &Check) -> [f64; 3] {
    let (likely, (high, limit)) = (check.likely().unwrap().0.si, check.high().unwrap());
    [likely, high.si, limit.si]
}

fn asked(text: &str) -> Vec<&'static str> {
    asks(&first(text)).into_iter().flat_map(|ask| ask.ways).flatten().collect()
}

fn fault(text: &str) -> String {
    match read_drive(text, &Handbook::embedded()) {
        Err(InputError::Faults(faults)) => faults.iter().map(ToString::to_string).collect(),
        other => panic!("{other:?}"),
    }
}

/// 300 ft of clay pipe in stiff clay, not lubricated.
fn everyday(more: &str) -> String {
    format!(
        "service: gravity_sewer\nlength: 295 ft\nlaunch: {{ invert_depth: 12 ft }}\ngrade: 1:200\ngroundwater: none\n\
         lubrication: none\nground: [{{ class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 0.5 in }}]\n\
         rig: {{ thrust: 100 tonf_us, pull: 60 kip }}\nsurface: {{ over: road }}\ncrossings: []\n{more}\
         candidates: [{{ material: clay, size: 10 in }}]\n"
    )
}

/// Behind a pilot that is pushed the clay is on the pipe: four times what the jacks give. Behind one that is drilled the bore
/// stands. Where the file says neither, it is asked.
#[test]
fn a_pilot_that_is_not_given_is_asked_for() {
    assert_eq!(first(&everyday("pilot: displacement\n")).standing, Standing::Barred);
    assert_ne!(first(&everyday("pilot: drilled\n")).standing, Standing::Barred);
    let open = everyday("");
    assert_eq!(first(&open).standing, Standing::Open);
    assert!(asked(&open).contains(&"pilot"), "{:?}", asked(&open));
    // In loose sand no bore stands, so that no pilot settles anything.
    let sand = open.edit("firm_to_very_stiff_clay, spt_n: 14", "loose_sand, spt_n: 6");
    assert_eq!(first(&sand).standing, Standing::Barred);
}

/// One stop of the plan takes no night away; a stop for each day's work is the nights.
#[test]
fn a_planned_stop_takes_no_night_away() {
    let long = sewer(|text| text.edit("work: { round_the_clock: true }\n", "work: { shifts_a_day: 1 }\n"));
    let with = |stops: &str| check(&format!("{long}stops: [{stops}]\n"), Subject::JackingThrust);
    let [likely, high, _] = numbers(&check(&long, Subject::JackingThrust));
    let [one_likely, one_high, _] = numbers(&with("{ at: 5 m }"));
    assert!(one_likely >= likely && one_high >= high, "{one_likely} {likely} {one_high} {high}");
    let each: Vec<String> = (1..60).map(|metre| format!("{{ at: {metre} m }}")).collect();
    let [_, each_high, _] = numbers(&with(&each.join(", ")));
    assert!(each_high <= high, "{each_high} {high}");
    let none = numbers(&check(&sewer(|text| text), Subject::JackingThrust))[1];
    assert!(each_high > none, "{each_high} {none}");
}

/// A tolerance that the file gives is a limit for a main too.
#[test]
fn a_tolerance_of_a_main_is_a_limit() {
    let open = main(|text| text);
    assert!(first(&open).scheme.checks.get(Subject::Invert).is_none());
    let tight = main(|text| text.edit("pilot:", "tolerance: 3 mm\npilot:"));
    assert_eq!(check(&tight, Subject::Invert).verdict, Verdict::Over);
}

/// Strings joined during the pull take time that the file has to give, whether it gives duration or rate.
#[test]
fn joints_made_during_the_pull_take_time() {
    let laid_out =
        |laydown: &str| main(|text| text.edit("duration: 5 h,", &format!("duration: 5 h, laydown: {laydown},")));
    assert!(fault(&laid_out("{ length: 12 m }")).starts_with("pull.laydown.joint_time: the pull stands for joints"));
    // 90 m and what is handled over it in strings of 50 m: one joint of 2 h.
    drive(&laid_out("{ length: 50 m, joint_time: 2 h }"));
    assert!(
        fault(&laid_out("{ length: 12 m, joint_time: 2 h }"))
            .contains("is shorter than the pull can be with its joints")
    );
    drive(&laid_out("{ length: 120 m }"));
}

/// Ductile iron in inches carries pressure by the wall that is left of casting and service: of 12 in, class 350, 0.28 - 0.08 -
/// (1.3 mm + 0.001 x 12 in) = 0.137 in, at half of the yield 0.137 x 270 MPa / 13.2 in = 2.80 MPa.
#[test]
fn iron_carries_by_its_net_wall() {
    let iron = "  - { material: ductile_iron, size: 12 in, joint_pull: 200 kN }\n";
    let pit = "duration: 9 h, laydown: { length: 6 m, place: pit, joint_time: 20 min },";
    let at = |pressure: &str| {
        main(|text| {
            text.edit(MAIN_PE, iron)
                .edit("duration: 5 h,", pit)
                .edit("pilot:", &format!("service_pressure: {pressure}\npilot:"))
        })
    };
    let [_, _, limit] = numbers(&check(&at("250 psi"), Subject::ServicePressure));
    assert_relative_eq!(limit, 2.80e6, max_relative = 0.005);
    assert_eq!(check(&at("250 psi"), Subject::ServicePressure).verdict, Verdict::Within);
    assert_eq!(check(&at("600 psi"), Subject::ServicePressure).verdict, Verdict::Over);
}

/// A slurry machine is steered itself: no pilot goes before it, unless the file says so.
#[test]
fn a_slurry_machine_has_no_pilot() {
    let machine = |more: &str| {
        format!(
            "service: gravity_sewer\nlength: 100 m\nlaunch: {{ invert_depth: 6 m, dewatered: true }}\ngrade: 0.5 %\n\
             groundwater: 2 m\nlubrication: logged\nspoil: slurry\n{more}\
             ground: [{{ class: medium_to_dense_sand, spt_n: 22, largest_stone: 20 mm }}]\n\
             rig: {{ thrust: 4000 kN, pull: 500 kN }}\nsurface: {{ over: road }}\ncrossings: []\n\
             candidates: [{{ material: concrete, size: 600 mm, outside_diameter: 760 mm, strength: 50 MPa, \
             end_bearing_area: 0.15 m2, crushing: 100 kN/m }}]\n"
        )
    };
    for more in ["", "pilot: none\n", "stem: { outside_diameter: none }\n"] {
        let text = machine(more);
        assert_eq!(drive(&text).technique(), "slurry machine", "{more}");
        assert_ne!(check(&text, Subject::Ground).verdict, Verdict::Over, "{more}");
    }
    assert_ne!(drive(&machine("pilot: displacement\n")).technique(), "slurry machine");
    let both = machine("pilot: none\nstem: { outside_diameter: 100 mm }\n");
    assert!(fault(&both).contains("a stem is the pilot"), "{}", fault(&both));
    // Nobody says how the soil leaves: an auger does not do in this sand, another may.
    let open = machine("").edit("spoil: slurry\n", "");
    assert_eq!(check(&open, Subject::Ground).verdict, Verdict::NotDecided);
    assert!(asked(&open).contains(&"spoil"), "{:?}", asked(&open));
    let auger = machine("").edit("spoil: slurry\n", "spoil: auger\npilot: displacement\n");
    assert_eq!(check(&auger, Subject::Ground).verdict, Verdict::Over);
}

/// Concrete whose scheme is left open is judged by EN 1916, the lesser of the published schemes, with care; it is barred only
/// where ASCE 27 does not bear it either. One limit is told, whatever the force.
#[test]
fn a_scheme_of_concrete_that_is_left_open_bars_nothing() {
    let concrete = |more: &str| {
        everyday(
            "pilot: displacement\nspoil: auger\nwork: { round_the_clock: true }\nsteering: { joint_angle: 0.1 deg }\n",
        )
        .edit("thrust: 100 tonf_us", "thrust: 400 tonf_us")
        .edit(
            "material: clay, size: 10 in",
            &format!(
                "material: concrete, size: 24 in, outside_diameter: 30 in, strength: 50 MPa, \
                     end_bearing_area: 0.16 m2, packer: {{ thickness: 15 mm }}{more}"
            ),
        )
    };
    let end = |more: &str| check(&concrete(more), Subject::EndCapacity);
    let limit = |more| numbers(&end(more))[2];
    let (ours, asce, en) = (limit(", scheme: default"), limit(", scheme: asce_27"), limit(", scheme: en_1916"));
    assert!(ours < en && en <= asce, "{ours} {asce} {en}");
    assert_eq!(limit(""), en);
    assert_eq!(end(", scheme: default").verdict, Verdict::Over);
    // Drives so short that their high force lies below all, and between ours and EN 1916.
    let [likely, high, _] = numbers(&end(""));
    let at = |length: f64| {
        check(&concrete("").edit("length: 295 ft", &format!("length: {length:.1} ft")), Subject::EndCapacity)
    };
    for force in [0.9 * ours, f64::midpoint(ours, en)] {
        let check = at(295.0 * force / high);
        assert_eq!((check.verdict, check.care), (Verdict::WithCare, Some(Care::Condition)));
        assert!(check.note.is_some_and(|note| note.contains("EN 1916")), "{:?}", check.note);
        assert_eq!(numbers(&check)[2], en);
    }
    assert_eq!(at(295.0 * 2.5 * asce / likely).verdict, Verdict::Over);
    // No scheme passes a force on without a packer at an angle that is told to be large.
    let turned = concrete("").edit("packer: { thickness: 15 mm }", "pipe_length: 2 m").edit("0.1 deg", "0.45 deg");
    let short = turned.edit("length: 295 ft", "length: 60 ft");
    assert_eq!(check(&short, Subject::EndCapacity).verdict, Verdict::NotDecided);
}

/// A wall that bears the likely thrust and not the high one is spared by jacks that are set to what it bears.
#[test]
fn jacks_are_set_to_what_a_wall_bears() {
    let wall = |more: &str| {
        sewer(|text| {
            text.edit("width: 2.6 m, height: 2.6 m", "width: 1.5 m, height: 1.5 m")
                .edit("work: { round_the_clock: true }\n", &format!("work: {{ round_the_clock: true }}\n{more}"))
        })
    };
    let open = check(&wall(""), Subject::ThrustWall);
    let [likely, high, limit] = numbers(&open);
    assert!(likely < limit && limit < high, "{likely} {limit} {high}");
    assert_eq!((open.verdict, open.care), (Verdict::WithCare, Some(Care::Condition)));
    let rail = wall("").edit("over: road", "over: railway");
    // It stands in the launch pit, whatever lies over the line.
    assert_eq!(check(&rail, Subject::ThrustWall).verdict, Verdict::WithCare);
}

/// The wall of a casing under a railway: one that is not given is asked for, with what the railway asks standing in.
#[test]
fn a_wall_under_a_railway_is_asked_for() {
    let casing = |wall: &str| {
        format!(
            "service: casing\nlength: 28 m\nlaunch: {{ invert_depth: 5.6 m }}\ngrade: 0.5 %\ngroundwater: none\n\
             lubrication: metered\npilot: displacement\n\
             ground: [{{ class: firm_to_very_stiff_clay, spt_n: 15, largest_stone: 40 mm }}]\n\
             rig: {{ thrust: 2000 kN, pull: 500 kN }}\nspoil: auger\nsurface: {{ over: railway }}\ncrossings: []\n\
             candidates: [{{ material: steel, size: 813 mm, bore: 823 mm, yield_strength: 235 MPa{wall} }}]\n"
        )
    };
    assert_eq!(check(&casing(", wall: 9.5 mm"), Subject::LeastWall).verdict, Verdict::Over);
    assert_eq!(check(&casing(", wall: 14.3 mm"), Subject::LeastWall).verdict, Verdict::Within);
    let open = casing("");
    assert_eq!(check(&open, Subject::LeastWall).verdict, Verdict::NotDecided);
    assert!(asked(&open).contains(&"candidates[].wall"));
    assert!(!first(&open).scheme.checks.iter().any(|check| check.verdict == Verdict::Over));
}

/// A pipe beside which the bore may come to lie on a service touches it, whoever the owner is.
#[test]
fn a_bore_that_may_touch_a_service_is_barred() {
    let beside = |metres: f64| {
        main(|text| {
            text.edit("pilot: drilled", "pilot: walked_over")
                .edit("crossings: []", &format!("crossings: [{{ at: 40 m, depth: 1.8 m, beside: {metres} m }}]"))
        })
    };
    assert_eq!(check(&beside(0.2), Subject::ServiceClearance).verdict, Verdict::Over);
    assert_ne!(check(&beside(1.5), Subject::ServiceClearance).verdict, Verdict::Over);
}

/// The slope beside a settlement that the owner of a service limits is a screen; one that the owner gives is a limit.
#[test]
fn a_slope_beside_a_given_settlement_is_a_screen() {
    let near = |limits: &str| {
        sewer(|text| {
            text.edit("crossings: []", &format!("crossings: [{{ at: 30 m, depth: 3.2 m, kind: water main{limits} }}]"))
        })
    };
    let habit = check(&near(", allowed_settlement: 40 mm"), Subject::ServiceSlope);
    assert_eq!(habit.rule(), Some(Rule::Screen));
    let given = check(&near(", allowed_settlement: 40 mm, allowed_slope: 0.1 %"), Subject::ServiceSlope);
    assert_ne!(given.rule(), Some(Rule::Screen));
    assert_eq!(given.verdict, Verdict::Over);
}

/// The same under a railway, whose engineer gives the settlement.
#[test]
fn a_slope_under_a_railway_is_a_screen_beside_its_settlement() {
    let rail = |limits: &str| {
        sewer(|text| text.edit("over: road", &format!("over: railway, railway_permits: uncased{limits}")))
    };
    let slope = |limits: &str| check(&rail(limits), Subject::SurfaceSlope).rule();
    assert_eq!(slope(", allowed_settlement: 10 mm"), Some(Rule::Screen));
    assert_ne!(slope(", allowed_settlement: 10 mm, allowed_slope: 0.2 %"), Some(Rule::Screen));
    assert_eq!(slope(""), Some(Rule::Screen));
}

/// Metric clay of which the maker's force is not told must bear the high force, against what a maker usually allows of its size;
/// jacks are held to that where the likely force is within, and more than that waits for the maker, and bars nothing.
#[test]
fn the_force_of_metric_clay_is_asked_for_against_what_is_usual() {
    let end = |size: &str, length: &str| {
        let text = IN_SAND
            .edit("size: 10 in", &format!("size: {size}, packer: {{ thickness: 10 mm }}"))
            .edit("class: medium_to_dense_sand, spt_n: 22", "class: firm_to_very_stiff_clay, spt_n: 14")
            .edit("length: 300 ft", &format!("length: {length}"));
        check(&text, Subject::EndCapacity)
    };
    let asked = end("250 mm", "30 m");
    assert_eq!((asked.verdict, asked.care), (Verdict::WithCare, Some(Care::Condition)), "{asked:?}");
    assert_eq!(asked.high().unwrap().1.si, 810e3);
    let held = end("200 mm", "60 m");
    assert!(held.utilisation().unwrap() > 1.0 && held.likely_utilisation().unwrap() < 0.8, "{held:?}");
    assert_eq!((held.verdict, held.care), (Verdict::WithCare, Some(Care::Condition)));
    let long = check(&IN_SAND.edit("size: 10 in", "size: 150 mm, packer: { thickness: 10 mm }"), Subject::EndCapacity);
    assert!(long.utilisation().unwrap() > 1.0, "{long:?}");
    assert_eq!((long.verdict, long.settled_by[0]), (Verdict::NotDecided, &["candidates[].rated_force"][..]));
    // No force is recalled of this size.
    assert_eq!(end("1000 mm", "30 m").high(), None);
}

/// What a jacking pipe of a size that no table has bears is its maker's to say: where the file tells nothing of its end it is not
/// decided, and asked for.
#[test]
fn the_force_that_a_pipe_bears_is_asked_for() {
    for pipe in [
        "material: pvc, size: 400 mm, outside_diameter: 427 mm, wall: 25 mm",
        "material: clay, size: 450 mm, outside_diameter: 590 mm, inside_diameter: 450 mm",
    ] {
        let text = everyday("pilot: drilled\n").edit("material: clay, size: 10 in", pipe);
        let text = text.edit("thrust: 100 tonf_us", "thrust: 400 tonf_us");
        let open = first(&text);
        assert_eq!(open.standing, Standing::Open, "{pipe}");
        assert!(asked(&text).contains(&"candidates[].rated_force"), "{pipe}: {:?}", asked(&text));
        let rated = text.edit(pipe, &format!("{pipe}, rated_force: 2 MN"));
        assert!(!asked(&rated).contains(&"candidates[].rated_force"), "{pipe}: {:?}", asked(&rated));
    }
}

/// A sewer of 10 in, 300 ft in sand.
const IN_SAND: &str = "
service: gravity_sewer
length: 300 ft
grade: 0.8 %
launch: { invert_depth: 12 ft }
groundwater: none
lubrication: metered
ground: [{ class: medium_to_dense_sand, spt_n: 22, largest_stone: 0 in, hazards: [] }]
rig: { thrust: 200 kip, pull: 150 kip }
surface: { over: road }
crossings: []
pilot: drilled
spoil: auger
if_stalled: rescue_pit
candidates: [{ material: clay, size: 10 in }]
";

/// Clay of no certificate has 48.3 MPa on the safe side and 75 at best (minima of ASTM C1208 and EN 295-7): what only the
/// better bears waits for the certificate, and no default bars it.
#[test]
fn clay_of_no_certificate_waits_for_it() {
    let of = |more: &str| IN_SAND.edit("size: 10 in", &format!("size: 10 in{more}"));
    let end = |more: &str| check(&of(more), Subject::EndCapacity);
    assert_eq!(end(", certificate: astm_c1208").verdict, Verdict::Over);
    assert_eq!(end(", certificate: en_295_7").verdict, Verdict::WithCare);
    for silent in ["", ", certificate: unknown"] {
        assert_eq!(end(silent).verdict, Verdict::NotDecided, "{silent}");
    }
    assert_eq!(end("").settled_by, [["candidates[].certificate"]]);
    // What is over with the better too is over.
    let long = of("").edit("300 ft", "900 ft");
    assert_eq!(check(&long, Subject::EndCapacity).verdict, Verdict::Over);
}

/// A drilled pilot in ground that no table rates one in is held by its fluid, as a pulled pipe is: with care in sand, silt and
/// soft clay above water. Where a vacuum would not do, the file says how the soil is removed.
#[test]
fn a_drilled_pilot_is_held_by_its_fluid() {
    let ground = |class: &str, spoil: &str| {
        let text = IN_SAND.edit("class: medium_to_dense_sand, spt_n: 22", class).edit("spoil: auger\n", spoil);
        check(&text, Subject::Ground)
    };
    for class in ["class: medium_to_dense_sand, spt_n: 22", "class: silt, spt_n: 10", "class: loose_sand, spt_n: 8"] {
        assert_eq!(ground(class, "spoil: auger\n").verdict, Verdict::WithCare, "{class}");
    }
    let silent = ground("class: loose_sand, spt_n: 8", "");
    assert_eq!((silent.verdict, silent.settled_by), (Verdict::NotDecided, &[&["spoil"][..]][..]));
    assert_eq!(ground("class: silt, spt_n: 10", "").verdict, Verdict::WithCare);
    assert_eq!(ground("class: loose_sand, spt_n: 8", "spoil: vacuum\n").verdict, Verdict::Over);
}

/// A thrust wall that is not told: one as wide as is usual does with the jacks set to what it bears. In clay of which the blows
/// are told it bears as clay does for the hours of a push, more than drained ground: no soil is asked for.
#[test]
fn the_widest_usual_wall_does_with_the_jacks_set_to_it() {
    let shallow = |ground: &str, more: &str| {
        IN_SAND
            .edit("class: medium_to_dense_sand, spt_n: 22", ground)
            .edit("invert_depth: 12 ft", "invert_depth: 8 ft")
            .edit("if_stalled: rescue_pit\n", more)
    };
    let wall = |ground: &str, more: &str| check(&shallow(ground, more), Subject::ThrustWall);
    let silt = |more: &str| {
        let text = shallow("class: silt, spt_n: 14", more).edit("length: 300 ft", "length: 150 ft");
        check(&text, Subject::ThrustWall)
    };
    let set = silt("if_stalled: rescue_pit\n");
    assert_eq!((set.verdict, set.care), (Verdict::WithCare, Some(Care::Condition)));
    assert!(set.note.is_some_and(|note| note.contains("set the jacks")), "{:?}", set.note);
    assert_eq!(silt("").verdict, Verdict::WithCare);
    let by_blows = wall("class: firm_to_very_stiff_clay, spt_n: 14", "if_stalled: rescue_pit\n");
    assert_eq!(by_blows.verdict, Verdict::WithCare, "{:?}", by_blows.note);
    let untold = wall("class: firm_to_very_stiff_clay", "if_stalled: rescue_pit\n");
    let (told, untold) = (by_blows.high().unwrap(), untold.high().unwrap());
    assert!(told.0.si / told.1.si < untold.0.si / untold.1.si, "{told:?} {untold:?}");
}

/// How a drive that stalls is freed is left to the contractor only where a pit can be dug, under what the file tells and no deeper
/// than is usual, or where the likely force is no more than five sevenths of what the jacks are set to.
#[test]
fn what_stalls_is_planned_for_only_where_a_pit_can_be_dug() {
    let end = |change: &dyn Fn(String) -> String| {
        let text = IN_SAND
            .edit("size: 10 in", "size: 10 in, certificate: astm_c1208, packer: { thickness: 12 mm }")
            .edit("if_stalled: rescue_pit\n", "")
            .edit("class: medium_to_dense_sand, spt_n: 22", "class: hard_clay, spt_n: 34");
        check(&change(text), Subject::EndCapacity)
    };
    let planned = end(&|text| text);
    let (_, (high, limit)) = (planned.likely().unwrap(), planned.high().unwrap());
    assert!(high.si > 1.1 * limit.si, "{high:?} {limit:?}");
    assert_eq!((planned.verdict, planned.care), (Verdict::WithCare, Some(Care::Condition)));
    assert!(planned.note.is_some_and(|note| note.contains("how a drive that stalls is freed")), "{:?}", planned.note);
    let of = |from: &str, to: &str, feet: u32| {
        end(&|text| text.edit(from, to).edit("length: 300 ft", &format!("length: {feet} ft")))
    };
    for (from, to, [long, half]) in [
        ("invert_depth: 12 ft", "invert_depth: 40 ft", [400, 135]),
        ("surface: { over: road }\n", "", [700, 300]),
        ("over: road", "over: runway", [700, 300]),
    ] {
        let long = of(from, to, long);
        assert!(long.likely_utilisation().unwrap() > 0.6, "{:?}", long.likely_utilisation());
        assert_eq!(long.verdict, Verdict::NotDecided, "{to}");
        let half = of(from, to, half);
        assert!(half.likely_utilisation().unwrap() < 0.6 && half.utilisation().unwrap() > 1.0, "{half:?}");
        assert_eq!(half.verdict, Verdict::WithCare, "{to}");
    }
}

/// No pit is dug to a drive that stalls where the ground runs and more water stands over it than one stage of wells draws down.
#[test]
fn no_pit_is_left_to_the_contractor_deep_under_water() {
    let end = |water: &str| {
        let text = IN_SAND
            .edit("size: 10 in", "size: 10 in, certificate: astm_c1208, packer: { thickness: 12 mm }")
            .edit("if_stalled: rescue_pit\n", "")
            .edit("invert_depth: 12 ft", "invert_depth: 22 ft")
            .edit("groundwater: none", &format!("groundwater: {water}"))
            .edit("pilot: drilled\nspoil: auger", "pilot: none\nspoil: slurry")
            .edit("length: 300 ft", "length: 160 ft");
        check(&text, Subject::EndCapacity)
    };
    let [dry, wet] = ["none", "6 ft"].map(end);
    assert!(wet.likely_utilisation().unwrap() < 1.0 && wet.utilisation().unwrap() > 1.1, "{wet:?}");
    assert_eq!((dry.verdict, wet.verdict), (Verdict::WithCare, Verdict::NotDecided), "{dry:?}");
    assert_eq!(wet.settled_by, &[&["if_stalled"][..]][..]);
}

/// What lies over the bore is no service.
#[test]
fn a_railway_is_no_service() {
    let crossed = IN_SAND.edit("crossings: []", "crossings: [{ at: 100 ft, depth: 1 ft, kind: railway }]");
    assert!(fault(&crossed).contains("surface.over"), "{}", fault(&crossed));
}

/// A count that is told of a mixed face was driven in both of its grounds: silt in it holds the stem as silt of that count does.
#[test]
fn a_mixed_face_holds_the_stem_by_its_count() {
    let stem = "stem: { outside_diameter: 100 mm, head_diameter: 120 mm, wall: 10 mm, free_length: 1 m, joint_thrust: 900 kN }\n";
    let text = IN_SAND.edit("pilot: drilled\n", &format!("pilot: displacement\n{stem}"));
    let limit = |class: &str| {
        let text = text.edit("class: medium_to_dense_sand, spt_n: 22", class);
        check(&text, Subject::StemBuckling).high().unwrap().1.si
    };
    let mixed = limit("class: firm_to_very_stiff_clay, mixed_with: silt, spt_n: 9");
    assert!(mixed > 0.0);
    assert_relative_eq!(mixed, limit("class: silt, spt_n: 9"), max_relative = 1e-9);
}

/// No pilot is pushed through ground that grout has bound; one that is drilled goes through it, and one that is not told waits.
#[test]
fn grouted_ground_is_drilled() {
    let ground = |pilot: &str| {
        let text = IN_SAND
            .edit("groundwater: none", "groundwater: 8 ft")
            .edit("hazards: []", "hazards: [], treatment: grouted")
            .edit("pilot: drilled\n", pilot);
        check(&text, Subject::Ground).verdict
    };
    assert_eq!(ground("pilot: displacement\n"), Verdict::Over);
    assert_eq!(ground("pilot: drilled\n"), Verdict::WithCare);
    assert_eq!(ground(""), Verdict::NotDecided);
}

/// Where nobody tells the count of a soft ground its least bars no stem: it is asked for.
#[test]
fn a_count_that_is_not_told_bars_no_stem() {
    let stem = "stem: { outside_diameter: 100 mm, head_diameter: 120 mm, wall: 10 mm, free_length: 1 m, joint_thrust: 900 kN }\n";
    let text = IN_SAND.edit("pilot: drilled\n", &format!("pilot: displacement\n{stem}")).edit("300 ft", "100 ft");
    let of = |class: &str| check(&text.edit("class: medium_to_dense_sand, spt_n: 22", class), Subject::StemBuckling);
    let untold = of("class: firm_to_very_stiff_clay, mixed_with: silt");
    assert_eq!((untold.verdict, untold.settled_by), (Verdict::NotDecided, &[&["ground[].spt_n"][..]][..]));
    assert_eq!(of("class: silt, spt_n: 9").verdict, Verdict::Within);
}

/// A string under fluid up to the ground of which nothing is told waits for the level that it is pumped to, or for what fills
/// it: 1.5 t/m3 over 6 m are 88 kPa, and 1.2 m of fall leave 18 kPa. Told to be empty under that column it is over.
#[test]
fn a_string_waits_for_what_is_in_it_and_over_it() {
    let string = |pull: &str| {
        format!(
            "service: gravity_sewer\nlength: 60 m\nlaunch: {{ invert_depth: 6 m }}\ngrade: 2 %\ngroundwater: none\n\
             lubrication: none\nground: [{{ class: firm_to_very_stiff_clay, spt_n: 12, largest_stone: 0 mm }}]\n\
             rig: {{ thrust: 500 kN, pull: 500 kN }}\npilot: drilled\ntolerance: 200 mm\nsurface: {{ over: open }}\ncrossings: []\n\
             pull: {{ duration: 6 h, pipe_temperature: 20 degC{pull} }}\n\
             candidates: [{{ material: pe100, size: 315 mm, sdr: 17 }}]\n"
        )
    };
    let of = |pull: &str| {
        let drive = crate::drives::drive(&string(pull));
        *assess(&drive, &drive.candidates()[0], Method::Pullback).checks.get(Subject::Collapse).unwrap()
    };
    let open = of("");
    assert_eq!(open.verdict, Verdict::NotDecided);
    let of_string = |field: &&str| ["pull.fluid_level", "pull.contents"].contains(field);
    assert!(open.settled_by.iter().all(|way| way.iter().any(of_string)), "{:?}", open.settled_by);
    assert_eq!(of(", fluid_level: 0 m, contents: empty, fluid_density: 1500 kg/m3").verdict, Verdict::Over);
}

/// A drilled pilot and a laser that nobody tells stand in the first line; told, they do not.
#[test]
fn what_of_the_technique_is_taken_stands_in_the_first_line() {
    let reason = |text: &str| choose(&crate::drives::drive(text)).unwrap().reason;
    let silent = sewer(|text| text);
    assert!(reason(&silent).contains("; with a laser"), "{}", reason(&silent));
    let told = silent.edit("lubrication: metered\n", "lubrication: metered\nguidance: laser\npilot: displacement\n");
    assert!(!reason(&told).contains("; with a"), "{}", reason(&told));
}
