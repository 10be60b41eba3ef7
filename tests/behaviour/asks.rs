//! What a drive that is not decided asks for: few lines, which settle it.

use crate::drives::drive;
use crate::edit::Edit;
use jackpull::check::{Care, Subject, Verdict};
use jackpull::choice::{Ask, Ranked, asks, not_decided};
use jackpull::handbook::Method;
use jackpull::{Standing, assess, choose};

/// A sewer of clay pipe or PE, as it is first asked about.
fn sewer(ground: &str, metres: u32, lubrication: &str, depth: u32) -> String {
    format!(
        "service: gravity_sewer\nlength: {metres} m\nlaunch: {{ invert_depth: {depth} m }}\ngrade: 1 %\ngroundwater: none\n\
         lubrication: {lubrication}\nground: [{{ {ground}, largest_stone: 10 mm }}]\nrig: {{ thrust: 1500 kN, pull: 500 kN }}\n\
         surface: {{ over: road }}\ncrossings: []\npull: {{ duration: 6 h, pipe_temperature: 20 degC }}\n\
         candidates: [{{ material: clay, size: 10 in, certificate: en_295_7 }}, {{ material: pe100, size: 315 mm, sdr: 11 }}]\n"
    )
}

const FIRM: &str = "class: firm_to_very_stiff_clay, spt_n: 14";

fn first(text: &str) -> Ranked {
    choose(&drive(text)).unwrap().ranked.remove(0)
}

/// The lines asked for, each the ways that would do.
fn lines(ranked: &Ranked) -> Vec<Vec<String>> {
    let ways = |ask: Ask| ask.ways.iter().map(|fields| fields.join(" and ")).collect();
    asks(ranked).into_iter().map(ways).collect()
}

/// Every check that is open names what settles it, and stands under one line; lines that settle more go first.
#[test]
fn every_open_check_stands_under_one_line() {
    let mut open = 0;
    for ground in
        [FIRM, "class: soft_clay, spt_n: 3", "class: medium_to_dense_sand, spt_n: 22", "class: silt, spt_n: 10"]
    {
        for (metres, lubrication, depth) in [(30, "metered", 3), (60, "none", 5), (90, "none", 3), (90, "metered", 5)] {
            let text = sewer(ground, metres, lubrication, depth);
            for ranked in choose(&drive(&text)).unwrap().ranked.iter().filter(|one| one.standing == Standing::Open) {
                open += 1;
                let told = asks(ranked);
                assert!(told.iter().all(|ask| ask.ways.is_empty() || ask.told.is_empty()), "{told:?}\n{text}");
                assert!(told.iter().flat_map(|ask| &ask.ways).all(|way| !way.is_empty()), "{told:?}\n{text}");
                assert!(told.is_sorted_by_key(|ask| std::cmp::Reverse(ask.checks.len())), "{told:?}");
                let mut settled: Vec<&str> = told.iter().flat_map(|ask| ask.checks.clone()).collect();
                let mut asked: Vec<&str> = not_decided(&ranked.scheme).map(|subject| subject.label()).collect();
                settled.sort_unstable();
                asked.sort_unstable();
                assert_eq!(settled, asked);
            }
        }
    }
    assert!(open > 12, "{open}");
}

/// Small clay pipe, 67 m in firm clay with a rig of 100 tons: more than a drive that stalls can be held below.
fn small(more: &str) -> String {
    format!(
        "service: gravity_sewer\nlength: 67 m\nlaunch: {{ invert_depth: 3.35 m }}\ngrade: 0.6 %\ngroundwater: none\n\
         lubrication: metered\nground: [{{ {FIRM}, largest_stone: 12 mm }}]\nrig: {{ thrust: 890 kN, pull: 445 kN }}\n\
         surface: {{ over: road }}\ncrossings: []\n{more}\
         candidates: [{{ material: clay, size: 8 in, certificate: astm_c1208, pipe_length: 1 m }}]\n"
    )
    .edit("spt_n: 14", "spt_n: 12")
}

/// The line that is asked for decides, whatever is written. Where a pit can be dug, how a drive that stalls is freed is a
/// condition, and no line. Where none can, what frees it has to be there: a dry drive has no second lubrication, and nobody puts
/// a station into a pipe of 10 in.
#[test]
fn the_line_that_is_asked_for_decides() {
    let planned = first(&sewer(FIRM, 90, "metered", 5));
    assert_eq!((planned.standing, lines(&planned)), (Standing::WithCare, Vec::<Vec<String>>::new()));
    // The likely force is near the limit: planned where a pit can be dug, whatever way is named.
    let held = sewer(FIRM, 45, "none", 4);
    assert_eq!(first(&held).standing, Standing::WithCare);
    assert_eq!(first(&format!("{held}if_stalled: second_lubrication\n")).standing, Standing::WithCare);
    // Under a railway none is: what is named has to be there.
    let rail = held.edit("over: road", "over: railway, railway_permits: uncased, allowed_settlement: 30 mm");
    let open = first(&rail);
    assert_eq!((open.standing, lines(&open)), (Standing::Open, vec![vec!["if_stalled".to_owned()]]));
    assert_eq!(first(&format!("{rail}if_stalled: rescue_pit\n")).standing, Standing::Open);
    let stations = rail.edit("pull: 500 kN }", "pull: 500 kN, station_thrust: 1000 kN }");
    assert_eq!(first(&format!("{stations}if_stalled: stations\n")).standing, Standing::Open);
    assert_eq!(first(&format!("{rail}if_stalled: second_lubrication\n")).standing, Standing::Open);
    // One that is lubricated has it, whatever else is looked at: a drive without any is one of the inputs.
    let wet = format!("{}if_stalled: second_lubrication\n", sewer(FIRM, 90, "metered", 5));
    let drive = drive(&wet);
    assert_eq!(choose(&drive).unwrap().ranked[0].standing, Standing::WithCare);
    assert_eq!(first(&small("")).standing, Standing::WithCare);
}

/// A wall and the ground behind it are asked for together, and a field with what it cannot be written without.
#[test]
fn what_goes_together_is_asked_for_together() {
    let casing = "service: casing\nlength: 25 m\nlaunch: { invert_depth: 2 m }\ngrade: 0.5 %\ngroundwater: none\n\
                  lubrication: none\nground: [{ class: silt, spt_n: 10, largest_stone: 10 mm }]\n\
                  rig: { thrust: 900 kN, pull: 100 kN }\nsurface: { over: road }\ncrossings: []\nspoil: auger\n\
                  pilot: none\nif_stalled: rescue_pit\n\
                  candidates: [{ material: steel, size: 20 in, wall: 9.5 mm, steel_grade: a139_b }]\n";
    let open = first(casing);
    assert_eq!(lines(&open)[0], ["launch.wall and launch.soil"], "{:?}", lines(&open));
    // What stands round a pulled ring is told alone; that grout stands there is told with the filling of the annulus.
    let main = "service: pressure_main\nlength: 128 m\nlaunch: { invert_depth: 3.4 m, dewatered: true }\ngrade: 0 %\n\
                groundwater: 1.8 m\nlubrication: none\n\
                ground: [{ class: medium_to_dense_sand, spt_n: 20, largest_stone: 12 mm }]\n\
                rig: { thrust: 445 kN, pull: 445 kN }\npilot: drilled\nsurface: { over: road }\n\
                pull: { duration: 6 h, pipe_temperature: 24 degC }\n\
                candidates: [{ material: pe4710, size: 10 in, sdr: 17 }]\n";
    let ways = ["annulus.soil_modulus", "annulus.filling and annulus.proof"];
    assert_eq!(lines(&first(main))[0], ways);
    let told =
        |annulus: &str| first(&main.edit("pilot:", &format!("annulus: {{ filling: grouted{annulus} }}\npilot:")));
    assert_eq!(lines(&told(""))[0], ["annulus.soil_modulus", "annulus.proof"]);
    for more in [", soil_modulus: 4 MPa", ", proof: proved"] {
        let left = lines(&told(more));
        let asked = left.iter().flatten().any(|way| way.contains("soil_modulus") || way.contains("proof"));
        assert!(!asked, "{more}: {left:?}");
    }
}

/// No toe counts in a pit of which nobody tells the width: both pits are asked for with theirs, in one round.
#[test]
fn a_toe_is_asked_for_with_its_pit() {
    let pits = |launch: &str, reception: &str| {
        format!(
            "service: gravity_sewer\nlength: 300 ft\nlaunch: {{ invert_depth: 18 ft, sealed_base: true{launch} }}\n\
             grade: 0.25 %\ngroundwater: 6 ft\nlubrication: logged\n\
             ground: [{{ class: soft_clay, spt_n: 3, largest_stone: 0 in, soil: {{ undrained_strength: 500 psf }} }}]\n\
             rig: {{ thrust: 250 tonf_us, pull: 10 tonf_us }}\nwork: {{ round_the_clock: true }}\nspoil: slurry\n\
             pilot: none\nface_pressure: {{ low: 9 psi, high: 11 psi }}\ntolerance: 1 in\n\
             surface: {{ over: road, allowed_settlement: 1 in }}\ncrossings: []\nif_stalled: rescue_pit\n\
             reception: {{ invert_depth: 17.25 ft, sealed_base: true{reception} }}\n\
             candidates: [{{ material: grp, size: 30 in, outside_diameter: 32 in, wall: 1.6 in, rated_force: 200 tonf_us, \
             pipe_length: 10 ft }}]\n"
        )
    };
    let open = asks(&first(&pits("", "")));
    let heave = open.iter().find(|ask| ask.checks == ["pit base, heave"]).unwrap();
    let both = "launch.space and launch.wall_toe_depth and reception.space and reception.wall_toe_depth";
    assert_eq!(heave.line(), both);
    let toe = |depth: &str| format!(", wall_toe_depth: {depth}, space: {{ length: 20 ft, width: 12 ft }}");
    let heave = |depth: &str| *first(&pits(&toe(depth), &toe(depth))).scheme.checks.get(Subject::PitHeave).unwrap();
    assert_ne!(heave("22 ft").verdict, Verdict::Within);
    assert_eq!(heave("90 ft").verdict, Verdict::Within);
}

/// Nothing is asked for that the file tells: what no field settles is said to be open, with what is told of it. Of a way of two
/// fields the one that is told is left out.
#[test]
fn what_is_told_is_not_asked_for() {
    // No table rates a bore cleared by vacuum in silt of 45 blows, and both fields that may decide it are told.
    let silt = format!("{}spoil: vacuum\npilot: drilled\n", sewer("class: silt, spt_n: 45", 30, "metered", 4));
    let open = first(&silt.edit(", { material: pe100, size: 315 mm, sdr: 11 }", ""));
    let unsettled: Vec<Ask> = asks(&open).into_iter().filter(|ask| ask.ways.is_empty()).collect();
    let ground = unsettled.iter().find(|ask| ask.checks == ["ground"]).unwrap_or_else(|| panic!("{unsettled:?}"));
    assert_eq!(ground.told, ["spoil", "pilot"]);
    let half = small("work: { round_the_clock: false }\n");
    let fields = |ranked: &Ranked| asks(ranked).into_iter().flat_map(|ask| ask.ways).flatten().collect::<Vec<_>>();
    for ranked in choose(&drive(&half)).unwrap().ranked {
        let asked = fields(&ranked);
        let once: std::collections::BTreeSet<&str> = asked.iter().copied().collect();
        assert_eq!(once.len(), asked.len(), "{asked:?}");
    }
}

/// Two checks that one field settles are one line: strength of soft clay for the face and for the base of the pit.
#[test]
fn one_field_is_one_line() {
    let soft = sewer("class: soft_clay, spt_n: 3", 30, "metered", 5);
    let open = first(&soft);
    let told = asks(&open);
    assert_eq!(lines(&open), [["ground[].soil.undrained_strength"]]);
    assert_eq!(told[0].checks, ["clay, closing on the pipe", "face, stability number", "pit base, heave"]);
}

/// *Would* is said where every open check passes with what is not told at its best, *could* where one was not made so or
/// fails so too: silt of 45 blows that no table rates for a vacuum.
#[test]
fn would_is_more_than_could() {
    let would = |text: &str| {
        let choice = choose(&drive(text)).unwrap();
        let open = &choice.ranked[0];
        let settled = open.if_settled.as_ref().unwrap();
        let passes = not_decided(&open.scheme)
            .all(|subject| open.scheme.checks.get(subject).is_some_and(|check| check.passes_at_best().is_some()));
        assert_eq!(settled.is_shown, passes);
        let says = |word: &str| choice.reason.contains(&format!(" {word} fit"));
        assert_eq!((says("would"), says("could")), (passes, !passes), "{}", choice.reason);
        passes
    };
    assert!(would(&sewer("class: soft_clay, spt_n: 3", 30, "metered", 5)));
    assert!(!would(&sewer(FIRM, 150, "metered", 5)));
}

/// Of two schemes that are open the one that asks for fewer lines leads, whatever its score.
#[test]
fn the_fewest_lines_lead() {
    let mut seen = 0;
    for (metres, depth) in [(60, 3), (60, 5), (90, 3), (90, 5)] {
        let ranked = choose(&drive(&sewer(FIRM, metres, "none", depth))).unwrap().ranked;
        let open: Vec<&Ranked> = ranked.iter().filter(|one| one.standing == Standing::Open).collect();
        seen += usize::from(open.len() > 1);
        assert!(open.is_sorted_by_key(|one| lines(one).len()));
    }
    assert!(seen > 0);
}

/// A pull that stalls at the high level alone is planned for where a pit can be dug over it. Nobody digs under tracks: there it
/// waits for how it is freed, and no pit does, unless the rig is far stronger than what is likely.
#[test]
fn a_pull_that_stalls_is_freed_by_a_pit() {
    let long = sewer(FIRM, 90, "none", 5).edit("pull: 500 kN", "pull: 400 kN");
    let pull = |text: &str| {
        let drive = drive(text);
        *assess(&drive, &drive.candidates()[1], Method::Pullback).checks.get(Subject::RigPull).unwrap()
    };
    let planned = pull(&long);
    let (likely, high) = (planned.likely_utilisation().unwrap(), planned.utilisation().unwrap());
    assert!(likely > 0.5 && likely < 1.0 && high > 1.25 / 1.1 && high < 2.5, "{likely} {high}");
    assert_eq!((planned.verdict, planned.care), (Verdict::WithCare, Some(Care::Condition)));
    let rail = long.edit("over: road", "over: railway");
    let open = pull(&rail);
    assert_eq!((open.verdict, open.settled_by), (Verdict::NotDecided, &[&["if_stalled"][..]][..]));
    assert_eq!(pull(&format!("{rail}if_stalled: rescue_pit\n")).verdict, Verdict::NotDecided);
    let strong = pull(&rail.edit("pull: 400 kN", "pull: 700 kN"));
    assert!(strong.likely_utilisation().unwrap() < 0.5 && strong.verdict < Verdict::NotDecided, "{:?}", strong.verdict);
}

/// A pulled pipe whose invert is likely past the usual tolerance asks for one line, a wider tolerance, and does not lead over a
/// jacked one that keeps it and asks for as many. With that tolerance told it does.
#[test]
fn what_likely_passes_leads_over_what_asks_for_less() {
    let both = sewer(FIRM, 90, "metered", 5).edit("thrust: 1500 kN", "thrust: 500 kN");
    let ranked = choose(&drive(&both)).unwrap().ranked;
    let [jacked, pulled] = [Method::PipeJacking, Method::Pullback].map(|method| {
        let open = |one: &&Ranked| one.scheme.method == method && one.standing == Standing::Open;
        ranked.iter().find(open).unwrap_or_else(|| panic!("no {method:?} is open"))
    });
    assert!(lines(pulled).contains(&vec!["tolerance".to_owned()]), "{:?}", lines(pulled));
    assert!(
        lines(jacked).len() >= lines(pulled).len() && jacked.place < pulled.place,
        "{} {}",
        jacked.place,
        pulled.place
    );
    let sand = sewer("class: medium_to_dense_sand, spt_n: 22", 45, "none", 4);
    let wide =
        first(&sand.edit("surface:", "tolerance: 200 mm\nsurface:").edit("pull: {", "pull: { fluid_level: 2.8 m,"));
    assert_eq!(wide.scheme.method, Method::Pullback);
}
