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

/// With a pilot that is pushed, by the word of the file.
fn pushed(text: String) -> String {
    text + "pilot: displacement\n"
}

/// Packer and line, or work through the night: either settles a long drive of clay pipe. What is written decides it.
#[test]
fn either_way_settles_it() {
    // Whether the pilot is drilled comes first: it leaves a bore that stands.
    assert_eq!(lines(&first(&sewer(FIRM, 90, "metered", 5))), [["pilot"]]);
    let long = pushed(sewer(FIRM, 90, "metered", 5));
    let open = first(&long);
    assert_eq!(open.standing, Standing::Open);
    assert_eq!(lines(&open), [["candidates[].packer and steering", "work.round_the_clock"]]);
    let night = format!("{long}work: {{ round_the_clock: true }}\n");
    let packed = long.edit("en_295_7 }", "en_295_7, packer: { thickness: 12 mm, modulus: 200 MPa } }");
    let packed = format!("{packed}steering: {{ joint_angle: 0.1 deg }}\n");
    for written in [night, packed] {
        assert_eq!(first(&written).standing, Standing::WithCare, "{written}");
    }
    // One of the two fields that go together does not.
    let half = format!("{long}steering: {{ joint_angle: 0.1 deg }}\n");
    assert_eq!(first(&half).standing, Standing::Open);
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
    assert_eq!(ground.told, ["ground[].spt_n", "ground[].largest_stone"]);
    let long = pushed(sewer(FIRM, 90, "metered", 5));
    let half = format!("{long}steering: {{ joint_angle: 0.1 deg }}\n");
    assert_eq!(lines(&first(&half)), [["candidates[].packer", "work.round_the_clock"]]);
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
    assert_eq!(told[0].checks, ["face, stability number", "pit base, heave"]);
}

/// *Would* is said where every open check passes with what is not told at its best, *could* where one was not made so or
/// fails so too: no wall that is usually built bears the thrust of a long drive on little ground.
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
    assert!(!would(&pushed(sewer(FIRM, 90, "metered", 5))));
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

/// A pull that stalls at the high level alone waits for how it is freed: a pit dug over it does, stations in a pipe that is
/// pulled do not, and nobody digs under tracks.
#[test]
fn a_pull_that_stalls_is_freed_by_a_pit() {
    let long = sewer(FIRM, 90, "none", 5);
    let pull = |text: &str| {
        let drive = drive(text);
        *assess(&drive, &drive.candidates()[1], Method::Pullback).checks.get(Subject::RigPull).unwrap()
    };
    let open = pull(&long);
    let (likely, high) = (open.likely_utilisation().unwrap(), open.utilisation().unwrap());
    assert!(likely < 1.0 && high > 1.25 / 1.1 && high < 2.5, "{likely} {high}");
    assert_eq!((open.verdict, open.settled_by), (Verdict::NotDecided, &[&["if_stalled"][..]][..]));
    let freed = |how: &str, over: &str| {
        pull(&format!("{}if_stalled: {how}\n", long.clone().edit("over: road", &format!("over: {over}"))))
    };
    let dug = freed("rescue_pit", "road");
    assert_eq!((dug.verdict, dug.care), (Verdict::WithCare, Some(Care::Condition)));
    assert_eq!(freed("second_lubrication", "road").verdict, Verdict::NotDecided);
    assert_eq!(freed("rescue_pit", "railway").verdict, Verdict::NotDecided);
}
