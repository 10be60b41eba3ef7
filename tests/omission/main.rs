//! Silence never helps: a field that is left out makes no scheme better than it was with what is usual told; and it bars none
//! by itself.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs,
    reason = "a test that fails should stop"
)]

mod jobs;

use jackpull::check::Verdict;
use jackpull::choice::{Ranked, Standing};
use jackpull::drive_file::fields::{Shape, Spec};
use jackpull::{DriveFile, Handbook, choose};
use jobs::{Chance, job};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// Fields whose absence may be the better answer, each with its reason.
const EXCEPTIONS: &[(&str, &str)] = &[
    ("candidates", "without a pipe there is no answer"),
    ("needed_inside_diameter", "a question: pipes are proposed"),
    ("design_depth", "goes with that question"),
    ("name", "a title"),
    ("line", "another question: how far apart the pits may be"),
    ("grade", "with both depths it tells of uneven ground, which silence takes as level: another line"),
    ("reception", "with a grade it tells of uneven ground: another line"),
    ("depths", "a dip that is told"),
    ("ground.hazards", "states something bad"),
    ("ground.mixed_with", "states something bad"),
    ("ground.bore_stands", "may state that the bore falls in"),
    ("ground.soil.surcharge", "states a load on the surface"),
    ("stem.withdrawn", "another way to put the pipe in: without it the pipe pushes the stem out"),
    ("carrier", "another question: whether a pipe has room in the casing"),
    ("carrier.grade", "states a fall that the casing does not have"),
    ("clearing", "states time for which the work stands"),
    ("clearing.water", "states water that fills tanks"),
    ("clearing.emptying", "states time for which the work stands"),
    ("plug", "states that a casing is kept against water"),
    ("stops", "more than nights are stated"),
    ("steering.curve_radius", "states a curve"),
    ("pull.push_assist", "states a machine and its free length"),
    ("pull.winch", "another way to put the pipe in: without it the stem pulls a reamer and the pipe"),
    ("pull.collapsed_bore", "states something bad"),
    ("face_pressure", "what is told may not hold the face"),
    ("lubricant_pressure", "what is told may break out"),
    ("load_code", "an owner's code, which may be the heavier one"),
    ("service_pressure", "an owner's wish; silence leaves what the main carries to the owner"),
    ("surge", "states more pressure beside that of service"),
    ("surge.recurring", "states more pressure beside that of service"),
    ("surge.occasional", "states more pressure beside that of service"),
    ("pull.fluid_density", "a fluid that is told may be heavier than that of the table"),
    ("candidates.pressure_class", "a class that is told may be low"),
    ("candidates.crushing", "a class that is told may be low"),
    ("pull.ground_temperature", "may state ground that is warmer than the class of a plastic main is for"),
    ("pull.inside_pressure", "states a pressure that the wall bears too"),
    ("surface.allowed_slope", "an owner's wish: a pavement follows the trough, and few limit it beside the settlement"),
    ("crossings", "states a service and what its owner allows"),
    ("crossings.clearance", "an owner's wish"),
    ("crossings.allowed_slope", "an owner's wish, whom few ask for it beside the settlement"),
    ("crossings.beside", "states that a service runs along"),
    ("tolerance", "an owner's wish"),
    ("pace.programme", "an owner's wish"),
    ("pace.budget", "an owner's wish"),
    ("rig", "one that is yet to be chosen is asked to be strong enough"),
    ("rig.thrust", "a rating that is told may be low"),
    ("rig.pull", "a rating that is told may be low"),
    ("rig.torque", "a rating that is told may be low"),
    ("rig.held_to", "states a limit"),
    ("candidates.passes", "a figure until it is told, and it says that the pipe is pulled"),
    ("candidates.bore", "a figure until it is told"),
    ("pull.reamer", "a resistance that is told may be more than that of the table"),
    ("pull.bend_radius", "a figure until it is told"),
    ("candidates.rated_force", "a rating that is told may be low"),
    ("candidates.scheme", "a scheme that is asked for may be tighter than the default"),
    ("candidates.casing_joint_thrust", "a rating that is told may be low"),
    ("candidates.joint_pull", "a rating that is told may be low"),
    ("pull.pull_head", "a rating that is told may be low, a setting high"),
    ("pull.pull_head.rating", "a rating that is told may be low"),
    ("pull.pull_head.weak_link", "a setting that is told may be above what the pipe bears"),
];

/// Fields without which a scheme may be barred, each with its reason: what is told mends something.
const REMEDIES: &[(&str, &str)] = &[
    ("ground.treatment", "keeps water from the face"),
    ("surface.railway_permits", "the leave of the railway"),
    ("launch.soil", "better ground behind the wall than that of the stretch, which the file tells"),
    ("ground.unit_friction", "friction that was measured may be below all that the table has"),
    ("annulus", "grout keeps the ground from settling"),
    (
        "rig.auger_torque",
        "the contractor's torque may be less than the least that the rule for screw conveyors makes of the auger",
    ),
];

/// Fields whose absence alone still bars, each with what is wrong: the list may only shrink.
const BARRING: &[(&str, &str)] =
    &[("pilot", "before a jacked pipe a pilot that is not told is one that is pushed, at best too")];

/// Fields whose absence still helps, each with what is wrong: the list may only shrink.
const OPEN: &[(&str, &str)] = &[];

/// Where in a drive stands what may be left out.
fn optional(specs: &[Spec], value: &Value, pointer: &str, found: &mut Vec<String>) {
    for spec in specs {
        let Some(inner) = value.get(spec.key) else { continue };
        let at = format!("{pointer}/{}", spec.key);
        if !spec.must {
            found.push(at.clone());
        }
        match spec.shape {
            Shape::Block(specs) => optional(specs, inner, &at, found),
            Shape::Blocks(specs) => {
                for (index, one) in inner.as_array().unwrap().iter().enumerate() {
                    optional(specs, one, &format!("{at}/{index}"), found);
                }
            }
            Shape::One(_) | Shape::List(_) | Shape::Band(_) => {}
        }
    }
}

/// Every field of the declaration that may be left out, without places in lists.
fn declared(specs: &[Spec], path: &str, found: &mut BTreeSet<String>) {
    for spec in specs {
        let at = if path.is_empty() { spec.key.to_owned() } else { format!("{path}.{}", spec.key) };
        if !spec.must {
            found.insert(at.clone());
        }
        if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
            declared(inner, &at, found);
        }
    }
}

/// The path of a pointer, without places in lists.
fn path(pointer: &str) -> String {
    let keys = pointer.split('/').filter(|key| !key.is_empty() && !key.starts_with(|c: char| c.is_ascii_digit()));
    keys.collect::<Vec<_>>().join(".")
}

fn without(drive: &Value, pointer: &str) -> Value {
    let mut less = drive.clone();
    let (block, key) = pointer.rsplit_once('/').unwrap();
    assert!(less.pointer_mut(block).unwrap().as_object_mut().unwrap().remove(key).is_some(), "{pointer}");
    less
}

/// A scheme: the place of its pipe, and its method.
type Name = (usize, &'static str);

/// How a scheme stands, and which of its checks are not within.
struct Stands {
    standing: Standing,
    held_back: BTreeSet<String>,
}

/// How every scheme stands; the fault where the file is refused.
fn stands(drive: &Value) -> Result<BTreeMap<Name, Stands>, String> {
    let file = DriveFile::read(&drive.to_string()).map_err(|error| error.to_string())?;
    let drive = file.resolve(&Handbook::embedded()).map_err(|error| error.to_string())?;
    let ranked = choose(&drive).map_err(|error| error.to_string())?.ranked;
    let one = |one: Ranked| {
        let held_back = one.scheme.checks.iter().filter(|check| check.verdict != Verdict::Within);
        let held_back = held_back.map(|check| format!("{} {}", check.subject.label(), check.verdict.label())).collect();
        ((one.candidate, one.scheme.method.key()), Stands { standing: one.standing, held_back })
    };
    Ok(ranked.into_iter().map(one).collect())
}

/// What silence made better.
fn helped(before: &BTreeMap<Name, Stands>, after: &BTreeMap<Name, Stands>) -> Option<String> {
    let chosen = |all: &BTreeMap<Name, Stands>| all.values().any(|one| one.standing.can_be_chosen());
    after.iter().find_map(|(name, now)| {
        let then = before.get(name);
        let (could, can) = (then.is_some_and(|then| then.standing.can_be_chosen()), now.standing.can_be_chosen());
        let fits = now.standing == Standing::Fits && then.is_some_and(|then| then.standing == Standing::WithCare);
        // A scheme that was not looked at may be chosen beside others, not where nothing could be.
        let new = can && then.is_none() && !chosen(before);
        let gone = then.map(|then| then.held_back.difference(&now.held_back).cloned().collect::<Vec<_>>().join("; "));
        let label = then.map_or("not looked at", |then| then.standing.label());
        (can && !could && then.is_some() || fits || new).then(|| {
            format!("{} {}: {label} -> {}, without: {}", name.0, name.1, now.standing.label(), gone.unwrap_or_default())
        })
    })
}

/// What silence alone bars, with the checks that were not over before.
fn barred(before: &BTreeMap<Name, Stands>, after: &BTreeMap<Name, Stands>) -> Option<String> {
    let bars = |one: &Stands| one.standing == Standing::Barred;
    after.iter().filter(|(_, now)| bars(now)).find_map(|(name, now)| {
        let then = before.get(name).filter(|then| !bars(then))?;
        let over = now.held_back.difference(&then.held_back).filter(|check| check.ends_with(Verdict::Over.label()));
        let over = over.cloned().collect::<Vec<_>>().join("; ");
        Some(format!("{} {}: {} -> barred by {over}", name.0, name.1, then.standing.label()))
    })
}

/// Drives looked at, and fields of each that are left out in turn: more of both where the whole run asks for it.
fn size() -> (usize, usize) {
    match std::env::var("OMISSION_DRIVES").ok().and_then(|drives| drives.parse().ok()) {
        Some(drives) => (drives, usize::MAX),
        None => (600, 3),
    }
}

#[test]
fn silence_never_helps() {
    let (drives, fields) = size();
    let mut chance = Chance::new(17);
    let (mut seen, mut taken, mut refused) = (BTreeMap::<String, usize>::new(), 0, Vec::new());
    let mut found: BTreeMap<String, (usize, String, Value)> = BTreeMap::new();
    let mut bars: BTreeMap<String, (usize, String, Value)> = BTreeMap::new();
    let mut choosable = 0;
    for _ in 0..drives {
        let drive = job(&mut chance);
        let before = match stands(&drive) {
            Ok(before) => before,
            Err(error) => {
                refused.push(error);
                continue;
            }
        };
        taken += 1;
        choosable += usize::from(before.values().any(|one| one.standing.can_be_chosen()));
        let mut places = Vec::new();
        optional(DriveFile::FIELDS, &drive, "", &mut places);
        places.retain(|place| EXCEPTIONS.iter().all(|(field, _)| *field != path(place)));
        // Those first that were left out the least so far.
        places.sort_by_key(|place| seen.get(&path(place)).copied().unwrap_or_default());
        places.truncate(fields);
        for place in places {
            let name = path(&place);
            *seen.entry(name.clone()).or_insert(0) += 1;
            let Ok(after) = stands(&without(&drive, &place)) else { continue };
            if let Some(how) = barred(&before, &after) {
                bars.entry(name.clone()).and_modify(|known| known.0 += 1).or_insert((1, how, drive.clone()));
            }
            if let Some(how) = helped(&before, &after) {
                found.entry(name).and_modify(|known| known.0 += 1).or_insert((1, how, drive.clone()));
            }
        }
    }
    let mut all = BTreeSet::new();
    declared(DriveFile::FIELDS, "", &mut all);
    // There is no thrust wall in that pit.
    let refused_there = ["reception.soil", "reception.wall"];
    let unseen: Vec<&String> = all
        .iter()
        .filter(|field| !seen.contains_key(*field) && EXCEPTIONS.iter().all(|(known, _)| known != field))
        .filter(|field| refused_there.iter().all(|block| !field.starts_with(block)))
        .collect();
    // Where nothing can be chosen there is nothing to spoil, and where all can there is nothing to better.
    assert!(choosable * 12 > taken && choosable * 10 < taken * 9, "{choosable} of {taken} can be chosen");
    let told: Vec<String> = found
        .iter()
        .filter(|(field, _)| OPEN.iter().all(|(known, _)| known != field))
        .map(|(field, (count, how, drive))| format!("{field} ({count}): {how}\n  {drive}"))
        .collect();
    assert!(taken * 4 > drives * 3, "{taken} of {drives} taken: {:?}", refused.iter().take(20).collect::<Vec<_>>());
    let bars: Vec<String> = bars
        .iter()
        .filter(|(field, _)| REMEDIES.iter().chain(BARRING).all(|(known, _)| known != field))
        .map(|(field, (count, how, drive))| format!("{field} ({count}): {how}\n  {drive}"))
        .collect();
    assert!(bars.is_empty(), "left out, these bar:\n{}", bars.join("\n"));
    assert!(
        told.is_empty() && unseen.is_empty(),
        "left out, these help:\n{}\nnever left out: {unseen:?}",
        told.join("\n")
    );
}

/// Each exception is a field of the declaration, and named once.
#[test]
fn exceptions_are_fields() {
    let mut all = BTreeSet::new();
    declared(DriveFile::FIELDS, "", &mut all);
    let named: BTreeSet<&str> = EXCEPTIONS.iter().map(|(field, _)| *field).collect();
    assert_eq!(named.len(), EXCEPTIONS.len());
    for (field, why) in EXCEPTIONS.iter().chain(OPEN).chain(REMEDIES).chain(BARRING) {
        assert!(all.contains(*field), "{field}");
        assert!(why.len() > 5, "{field}");
    }
}
