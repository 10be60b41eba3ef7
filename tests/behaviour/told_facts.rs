//! What a file tells is held against what else it tells and against what can be: whole drives, good and bad, and the sums
//! by hand beside them.

use crate::drives::{MAIN_PE, TOLD_CLAY, drive, main, sewer};
use crate::edit::Edit;
use approx::assert_relative_eq;
use jackpull::check::{Care, Check, Subject, Verdict};
use jackpull::choice::{Ranked, asks};
use jackpull::{Handbook, Standing, choose, read_drive};

fn first(text: &str) -> Ranked {
    choose(&drive(text)).unwrap().ranked.remove(0)
}

fn check(text: &str, subject: Subject) -> Check {
    let ranked = first(text);
    *ranked.scheme.checks.get(subject).unwrap_or_else(|| panic!("{subject:?} is not made of\n{text}"))
}

fn limit(check: &Check) -> f64 {
    check.high().unwrap().1.si
}

fn asked(text: &str) -> Vec<&'static str> {
    asks(&first(text)).into_iter().flat_map(|ask| ask.ways).flatten().collect()
}

fn fault(text: &str) -> String {
    read_drive(text, &Handbook::embedded()).unwrap_err().to_string()
}

/// The main of this folder with another pipe and service pressure, strings joined in the pit.
fn main_of(pipe: &str, pressure: &str) -> String {
    let pit = "duration: 9 h, laydown: { length: 6 m, place: pit, joint_time: 20 min },";
    main(|text| {
        text.edit(MAIN_PE, &format!("  - {{ {pipe} }}\n"))
            .edit("duration: 5 h,", pit)
            .edit("pilot:", &format!("service_pressure: {pressure}\npilot:"))
    })
}

/// Iron of EN 545, DN 250 of class 40: the least wall, 3.9 mm, carries 2 x 3.9 x 420 / (3 x (274 - 3.9)) = 4.04 MPa. A wall
/// of the file is nominal: 5.5 mm less 1.3 mm and 0.001 x 250 mm leaves 3.95 mm, for 4.10 MPa.
#[test]
fn metric_iron_carries_by_its_least_wall() {
    let iron = "material: ductile_iron, size: 250 mm, joint_pull: 150 kN";
    let least = check(&main_of(iron, "1 MPa"), Subject::ServicePressure);
    assert_eq!(least.verdict, Verdict::Within);
    assert_relative_eq!(limit(&least), 4.043e6, max_relative = 1e-3);
    let nominal = check(&main_of(&format!("{iron}, wall: 5.5 mm"), "1 MPa"), Subject::ServicePressure);
    assert_relative_eq!(limit(&nominal), 4.096e6, max_relative = 1e-3);
    // No score of the pull is asked for: none is taken of iron.
    let over = main_of(iron, "6 MPa");
    assert_eq!(check(&over, Subject::ServicePressure).verdict, Verdict::Over);
    assert!(!asked(&over).contains(&"pull.score"));
}

/// A class above what the wall gives is the wall's: SDR 11 of PE 100 carries 16 bar, whatever it is called;
/// a lesser class is that of the pipe.
#[test]
fn a_class_is_no_more_than_the_wall_bears() {
    let carries = |class: &str| {
        let text = main(|text| {
            text.edit("sdr: 11", &format!("sdr: 11{class}")).edit("pilot:", "service_pressure: 2 MPa\npilot:")
        });
        check(&text, Subject::ServicePressure)
    };
    let (by_wall, high) = (carries(""), carries(", pressure_class: 2.5 MPa"));
    assert_eq!(high.verdict, Verdict::Over);
    assert_relative_eq!(limit(&high), limit(&by_wall));
    assert_relative_eq!(limit(&carries(", pressure_class: 1 MPa")), 1e6);
}

/// A joint holds no more than its barrel tears at, an end no more than its whole ring crushes at over 1.5: clay of 10 in has
/// 0.046 m2, at 150 MPa 4.6 MN.
#[test]
fn ratings_are_bounded_by_the_section() {
    let joint = fault(&main_of("material: ductile_iron, size: 200 mm, wall: 6.4 mm, joint_pull: 9 MN", "1 MPa"));
    assert!(joint.contains("joint_pull: expected a force") && joint.contains("what the barrel bears"), "{joint}");
    for pipe in [
        "material: clay, size: 10 in, rated_force: 35 MN",
        "material: grp, size: 300 mm, outside_diameter: 324 mm, wall: 24 mm, rated_force: 65 MN",
        "material: ductile_iron, size: 300 mm, rated_force: 90 MN",
        "material: concrete, size: 500 mm, outside_diameter: 660 mm, rated_force: 17 MN, crushing: 68 kN/m",
    ] {
        let told = fault(&sewer(|text| text.edit(TOLD_CLAY, &format!("  - {{ {pipe} }}\n"))));
        assert!(told.contains("rated_force: expected a force"), "{told}");
    }
}

/// The setting itself is held against pipe, head and joint, as far as the rig can pull: the higher the worse, but for one
/// that is hardly above the limit.
#[test]
fn a_weak_link_above_the_pipe_is_over() {
    let link = |head: &str| {
        let text = main(|text| text.edit("duration: 5 h,", &format!("duration: 5 h, pull_head: {{ {head} }},")));
        check(&text, Subject::WeakLink)
    };
    let [low, high] = ["weak_link: 150 kN", "weak_link: 240 kN"].map(link);
    assert_eq!([low.verdict, high.verdict], [Verdict::Over; 2]);
    assert_relative_eq!(high.utilisation().unwrap() / low.utilisation().unwrap(), 240.0 / 150.0, max_relative = 1e-9);
    // No more comes on it than the rig has, 250 kN.
    assert_eq!(link("weak_link: 900 kN").high().unwrap().0.si, 250e3);
    let round = link("weak_link: 36 kN, rating: 35 kN");
    assert_eq!((round.verdict, round.care), (Verdict::WithCare, Some(Care::Condition)));
    let head = link("weak_link: 36 kN, rating: 9 kN");
    assert_eq!(head.verdict, Verdict::Over);
    assert_relative_eq!(head.utilisation().unwrap(), 4.0, max_relative = 1e-9);
}

/// 8 m of bore that has fallen in, 20 kN/m3 x 1.82 m x pi 0.18 m x 8 m at 0.4: 66 kN more on rig, link and pipe. An upper
/// bound bars nothing, and a pit frees the string; the link parts before.
#[test]
fn a_bore_that_has_fallen_in_is_on_rig_and_link() {
    let told = |head: &str, freed: &str| {
        main(|text| {
            let collapsed = format!(
                "duration: 5 h, {head}collapsed_bore: {{ length: 8 m, unit_weight: 20 kN/m3, friction: 0.4 }},"
            );
            text.edit("duration: 5 h,", &collapsed).edit("pilot:", &format!("{freed}pilot:"))
        })
    };
    let open = told("", "");
    let fallen = check(&open, Subject::CollapsedBore);
    let peak = first(&open).scheme.force.unwrap().high.value;
    assert_relative_eq!(fallen.high().unwrap().0.si - peak, 65.9e3, max_relative = 1e-2);
    assert_eq!(first(&open).standing, Standing::Open);
    assert!(asked(&open).contains(&"if_stalled"));
    let freed = check(&told("", "if_stalled: rescue_pit\n"), Subject::CollapsedBore);
    assert_eq!((freed.verdict, freed.care), (Verdict::WithCare, Some(Care::Condition)));
    let linked = check(&told("pull_head: { weak_link: 20 kN }, ", "if_stalled: rescue_pit\n"), Subject::CollapsedBore);
    assert_eq!((linked.verdict, limit(&linked)), (Verdict::NotDecided, 20e3));
}

/// Ground that is drained, and a pit in it that is not.
#[test]
fn a_pit_is_not_wet_in_drained_ground() {
    let wet = |dewatered: &str| {
        sewer(|text| {
            text.edit(
                "class: firm_to_very_stiff_clay, spt_n: 14",
                "class: medium_to_dense_sand, spt_n: 22, treatment: dewatered",
            )
            .edit("groundwater: 5.5 m", "groundwater: 1 m")
            .edit("reception: { invert_depth: 3.60 m }", &format!("reception: {{ invert_depth: 3.60 m{dewatered} }}"))
        })
    };
    assert!(fault(&wet(", dewatered: false")).contains("reception.dewatered: is false"));
    drive(&wet(", dewatered: true"));
    drive(&wet(""));
}

/// A pipe set into a bore that stands in rock.
fn set_in(head: &str, pipe: &str) -> String {
    format!(
        "service: gravity_sewer\nlength: 40 m\nlaunch: {{ invert_depth: 4.2 m }}\ngrade: 0.7 %\ngroundwater: none\n\
         lubrication: none\nground: [{{ class: weak_rock, hazards: [] }}]\nrig: {{ thrust: 670 kN, pull: 450 kN }}\n\
         pilot: drilled\nspoil: vacuum\nstem: {{ outside_diameter: 200 mm, head_diameter: {head}, withdrawn: true }}\n\
         surface: {{ over: road }}\ncrossings: []\ncandidates: [{{ {pipe} }}]\n"
    )
}

/// Clay of 10 in is 338.1 mm wide: a bore of 338.3 mm is none for it, one of 350 mm leaves 5.9 mm. Iron of 8 in, 230 mm, goes
/// into 267 mm; whether its sockets do, the file has to say.
#[test]
fn a_pipe_needs_play_in_the_bore_it_is_set_into() {
    let clay = "material: clay, size: 10 in, certificate: astm_c1208, pipe_length: 1 m";
    let stands = |head, pipe: &str| check(&set_in(head, pipe), Subject::BoreStands);
    assert_eq!(stands("338.3 mm", clay).verdict, Verdict::NotDecided);
    assert_eq!(stands("350 mm", clay).care, Some(Care::Condition));
    let iron =
        |joint: &str| format!("material: ductile_iron, size: 8 in, rated_force: 445 kN, pipe_length: 5.5 m{joint}");
    assert!(asked(&set_in("267 mm", &iron(""))).contains(&"candidates[].joint_diameter"));
    assert_eq!(stands("267 mm", &iron(", joint_diameter: 290 mm")).verdict, Verdict::Over);
    assert_eq!(stands("267 mm", &iron(", joint_diameter: 250 mm")).care, Some(Care::Condition));
}

/// A pilot that is located from the surface, 2 to 5 % of 2.2 m off its line: 110 mm against 50 mm. No survey of it is surer.
#[test]
fn a_walk_over_is_no_survey_of_itself() {
    let invert = |tolerance: &str| {
        let text = main(|text| {
            text.edit("pressure_main", "gravity_sewer")
                .edit("length: 90 m", "length: 20 m")
                .edit("invert_depth: 2 m", "invert_depth: 2.2 m")
                .edit("0.5 %", "2 %")
                .edit(
                    "pilot: drilled",
                    &format!(
                        "pilot: walked_over\ntolerance: {tolerance}\nannulus: {{ filling: open, spacers: 35 mm }}"
                    ),
                )
        });
        check(&text, Subject::Invert)
    };
    let tight = invert("50 mm");
    assert_eq!(tight.verdict, Verdict::Over);
    assert!(tight.utilisation().is_some_and(|used| used > 2.0), "{:?}", tight.utilisation());
    assert_eq!(invert("150 mm").verdict, Verdict::Within);
}

/// Stones beyond the cobbles of the row, up to a third of the bore, are for the crusher, with care.
#[test]
fn boulders_before_a_machine_ask_for_care() {
    let ground = |stone: &str| {
        let text = format!(
            "service: gravity_sewer\nlength: 100 m\nlaunch: {{ invert_depth: 6 m, dewatered: true }}\nreception: {{ \
             invert_depth: 5.5 m, dewatered: true }}\ngroundwater: 3 m\nlubrication: logged\nspoil: slurry\npilot: none\n\
             ground: [{{ class: medium_to_dense_sand, spt_n: 24, largest_stone: {stone} }}]\n\
             rig: {{ thrust: 4000 kN, pull: 100 kN }}\nsurface: {{ over: road }}\ncrossings: []\n\
             candidates: [{{ material: concrete, size: 900 mm, outside_diameter: 1100 mm, strength: 50 MPa, end_bearing_area: 0.25 m2, crushing: 90 kN/m }}]\n"
        );
        check(&text, Subject::Ground)
    };
    let [cobbles, boulders] = ["90 mm", "300 mm"].map(ground);
    assert_eq!(boulders.verdict, Verdict::WithCare);
    assert_ne!(boulders.basis, cobbles.basis, "the row of cobbles says nothing of them");
    assert_eq!(ground("400 mm").verdict, Verdict::Over);
}

/// Beside a gas main less than is usual waits for its owner; a water main there asks for care.
#[test]
fn a_gas_main_waits_for_its_owner() {
    let beside = |service: &str| {
        sewer(|text| {
            text.edit("crossings: []", &format!("crossings: [{{ at: 20 m, depth: 3.8 m, beside: 0.4 m, {service} }}]"))
        })
    };
    let gas = beside("kind: gas main");
    assert_eq!(check(&gas, Subject::ServiceClearance).verdict, Verdict::NotDecided);
    assert!(asked(&gas).contains(&"crossings[].clearance"));
    assert_eq!(check(&beside("kind: water main"), Subject::ServiceClearance).verdict, Verdict::WithCare);
    assert_eq!(check(&beside("kind: gas main, clearance: 50 mm"), Subject::ServiceClearance).verdict, Verdict::Within);
}

/// Under a road an annulus is to be kept full; what one moves that the file leaves open is for the owner to allow.
#[test]
fn an_open_annulus_is_not_kept_full() {
    let settles = |annulus: &str| {
        let text = main(|text| text.edit("over: open", "over: road").edit("pilot:", &format!("{annulus}pilot:")));
        check(&text, Subject::SurfaceSettlement)
    };
    assert_eq!(settles("").care, Some(Care::Condition));
    let open = settles("annulus: { filling: open }\n");
    assert_eq!((open.verdict, open.care), (Verdict::WithCare, Some(Care::Condition)));
    assert!(open.note.is_some_and(|note| note.contains("have him allow this much")), "{open:?}");
}

/// Water in silt does not lessen what the surface settles by.
#[test]
fn wet_silt_settles_no_less() {
    let settles = |water: &str| {
        let text = sewer(|text| {
            text.edit(
                "class: firm_to_very_stiff_clay, spt_n: 14, largest_stone: 20 mm",
                "class: silt, spt_n: 12, largest_stone: 0 mm",
            )
            .edit("groundwater: 5.5 m", &format!("groundwater: {water}"))
        });
        check(&text, Subject::SurfaceSettlement).high().unwrap().0.si
    };
    assert!(settles("3 m") >= settles("5.5 m"), "{} {}", settles("3 m"), settles("5.5 m"));
}
