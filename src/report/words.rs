//! Sentences that both the page and the JSON hold.

use super::contents::is_looked_at;
use crate::check::Check;
use crate::choice::reason::{against, behind, capped, name};
use crate::choice::{Choice, Ranked, Standing};
use crate::drive::{Assumed, AssumedValue, Concern, Drive, Pipe};
use crate::handbook::{Family, HandbookError, Lubrication, Method, Pilot};
use crate::method::{self, Scheme, Stations, Step};
use crate::quantity::{Force, Length, Measure, Role, Shown, UnitSystem};
use crate::source::{Cited, Mark, Origin};

/// A slope that prints as nothing.
const LEVEL: f64 = 5e-5;

/// The answer in one line: what is chosen and what governs it, or what would have to be told, or what is in the way.
pub(super) fn answer(drive: &Drive, choice: &Choice) -> String {
    let Some(first) = choice.ranked.first() else { return "NO SCHEME FITS".to_owned() };
    let behind = behind(drive, first);
    match first.standing {
        Standing::Fits | Standing::WithCare => {
            let method = first.scheme.method.key().to_uppercase();
            let gap = if behind.is_empty() { "" } else { "; " };
            format!("{method}, {}: {}{gap}{behind}", first.pipe.label(), first.standing.label())
        }
        Standing::Open => format!("NOT DECIDED: {} {behind}", name(first)),
        Standing::Barred => {
            let gap = if behind.is_empty() { "" } else { ", " };
            format!("NO SCHEME FITS; closest: {}{gap}{behind}", name(first))
        }
    }
}

/// Why it is the answer, beside what the answer says.
pub(super) fn why(drive: &Drive, choice: &Choice) -> Result<String, HandbookError> {
    match choice.chosen() {
        Some(_) => against(drive, &choice.ranked),
        None => Ok(choice.reason.clone()),
    }
}

/// The drive in a few lines.
pub(super) fn facts(drive: &Drive, system: UnitSystem) -> Vec<String> {
    let text = |shown: Shown| shown.display(system).to_string();
    let service = drive.service.key().replace('_', " ");
    let slope = drive.grade.value.value.tan();
    let fall = if slope >= 0.0 { " rising to reception" } else { " falling to reception" };
    let length = text(Shown::of(drive.length.value, Role::Distance));
    let percent = text(Shown { si: slope.abs(), role: Role::Percent });
    let slope = if slope.abs() < LEVEL { "level".to_owned() } else { format!("{percent}{fall}") };
    let mut facts = vec![format!("{service}, {length} long, {slope}")];
    for stretch in &drive.stretches {
        let shown = |length| text(Shown::of(length, Role::Distance));
        let class = stretch.class.key().replace('_', " ");
        let other = stretch.mixed_with.map(|other| format!(", mixed with {}", other.key().replace('_', " ")));
        let other = other.unwrap_or_default();
        facts.push(format!("{} to {}: {class}{other}", shown(stretch.from), shown(stretch.to)));
    }
    let rating = |force: Cited<Force>, role| {
        if force.is_given() { text(Shown::of(force.value, role)) } else { "not chosen".to_owned() }
    };
    let (thrust, pull) = (rating(drive.rig.thrust, Role::Thrust), rating(drive.rig.pull, Role::Pull));
    let lubrication = match drive.lubrication {
        _ if !drive.lubrication_told => "lubrication not given".to_owned(),
        Lubrication::None => "no lubrication".to_owned(),
        some => format!("lubrication {}", some.key().replace('_', " ")),
    };
    facts.push(format!("rig: thrust {thrust}, pull {pull}; {lubrication}"));
    if drive.candidates.iter().any(|pipe| pipe.jacked.is_some()) {
        facts.push(format!("excavation, if jacked: {}{}", drive.technique, taken_for_granted(drive)));
    }
    facts.extend(drive.proposal(system));
    let laid: Vec<String> = drive.handbook.overlays().map(|(table, file)| format!("{file} ({table})")).collect();
    if !laid.is_empty() {
        facts.push(format!("tables laid over: {}", laid.join(", ")));
        facts.extend(drive.handbook.laid_rows());
    }
    facts
}

/// What of the technique is not told, where the ground or the stem lets no pilot be pushed.
fn taken_for_granted(drive: &Drive) -> &'static str {
    let is_told = |field| drive.candidates.iter().all(|pipe| pipe.is_told(field));
    let drilled = drive.assumed.iter().any(|one| {
        one.field == "pilot" && matches!(&one.value, AssumedValue::Word(word) if word == Pilot::Drilled.key())
    });
    match (drilled, is_told("spoil")) {
        (false, _) => "",
        (true, false) => " (neither is given: both assumed)",
        (true, true) => " (the pilot is assumed)",
    }
}

/// Methods that are left out for a pipe for want of a field.
pub(super) fn not_looked_at(drive: &Drive) -> Vec<String> {
    let mut list = Vec::new();
    for pipe in &drive.candidates {
        for method in [Method::PipeJacking, Method::Pullback] {
            if !method::is_offered(drive, pipe, method) {
                let needs = match (method, pipe.family()) {
                    (Method::PipeJacking, Family::DuctileIron) => "rated_force",
                    (Method::PipeJacking, _) => "its wall, and no pulling field",
                    (Method::Pullback, _) if drive.pull.is_none() => "pull",
                    (Method::Pullback, Family::DuctileIron) => "joint_pull or joint_pressure",
                    (Method::Pullback, _) => "no jacking field",
                };
                list.push(format!("{} of {} (needs {needs})", method.key(), pipe.label));
            }
        }
    }
    list
}

/// Fields that only the maker of a proposed pipe can fill.
pub(super) fn ask(ranked: &Ranked) -> Vec<&'static str> {
    let missing = ranked.pipe.not_given.iter().filter(|missing| missing.method() == ranked.scheme.method);
    missing.map(|missing| missing.field()).collect()
}

/// The verdict, and that it is a screen that is failed.
pub(super) fn verdict(check: &Check) -> String {
    let label = check.verdict.label();
    if check.is_failed_screen() { format!("{label} *") } else { label.to_owned() }
}

/// How far a limit is used.
pub(super) fn ratio(ratio: Option<f64>) -> String {
    ratio.map_or_else(|| "-".to_owned(), capped)
}

/// What a reader must know of a check.
pub(super) fn note(check: &Check, system: UnitSystem) -> Option<String> {
    match check.doubt {
        Some(equation) => Some(format!("outside the range of {}: {}", equation.name, equation.valid)),
        None => check.note.map(|note| in_units(note, system)),
    }
}

/// A text with quantities in both families of units, "3 m (10 ft)", in one of them.
fn in_units(text: &str, system: UnitSystem) -> String {
    let is_number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit()) || word == "x";
    let is_unit = |word: &str| matches!(word, "ft" | "in" | "psi" | "psf" | "lbf" | "pcf" | "degF");
    let mut told = String::new();
    let mut rest = text;
    while let Some((before, behind)) = rest.split_once(" (") {
        let Some((inside, after)) = behind.split_once(')') else { break };
        let mut words = inside.split(' ').rev();
        let in_us = words.next().is_some_and(is_unit) && words.all(is_number) && inside.contains(' ');
        // The unit, and as many numbers before it as stand in the bracket.
        let from = before.rmatch_indices(' ').nth(inside.split(' ').count() - 1).map_or(0, |(at, _)| at + 1);
        let (lead, si) = before.split_at(from);
        match (in_us, system) {
            (false, _) => told.push_str(&format!("{before} ({inside})")),
            (true, UnitSystem::Si) => told.push_str(&format!("{lead}{si}")),
            (true, UnitSystem::Us) => told.push_str(&format!("{lead}{inside}")),
        }
        rest = after;
    }
    told + rest
}

/// What the checks of a scheme rest on beside the limits whose marks stand with them.
pub(super) fn rests_on(scheme: &Scheme, drive: &Drive) -> String {
    let mark = |check: &Check| check.mark(&drive.handbook);
    let better = scheme.checks.iter().filter(|check| mark(check) != Mark::Judgement);
    let better: Vec<String> = better.map(|check| format!("{} ({})", check.subject.label(), mark(check))).collect();
    let but = if better.is_empty() { String::new() } else { format!(", except for {}", better.join(", ")) };
    format!("Marks are those of the limits. The weakest input to each check is {}{but}.", Mark::Judgement)
}

/// Stations in a few words.
pub(super) fn stations(stations: &Stations, system: UnitSystem) -> String {
    let text = |length, role| Shown::of(length, role).display(system).to_string();
    let thrust = |force| Shown::of(force, Role::Thrust).display(system).to_string();
    match stations {
        Stations::NotNeeded => "none needed".to_owned(),
        Stations::TooSmall(inside, least) => format!(
            "not possible: {} inside is less than the {} that people can enter; the high force alone would want them",
            text(*inside, Role::Diameter),
            text(*least, Role::Diameter)
        ),
        Stations::NotGiven => "would be needed: give rig.station_thrust".to_owned(),
        Stations::NoUse => "would be needed but are of no use: they cannot push their own sections".to_owned(),
        Stations::Placed(placed) => {
            let at: Vec<String> = placed.places.iter().map(|place| text(*place, Role::Distance)).collect();
            format!(
                "{} by the high force, {} behind the face at the end of the drive, each of {}, at work from {} at the \
                 main jacks; through the pipe behind the hindmost {} reach the wall, all of it while it enters the bore; the force along the drive is told without them",
                placed.places.len(),
                at.join(" and "),
                thrust(placed.capacity),
                thrust(placed.start),
                thrust(placed.on_wall)
            )
        }
    }
}

/// What decides on stations: the least diameter that people enter, or the shares by which they are placed.
pub(super) const fn stations_by(drive: &Drive, stations: &Stations) -> Origin {
    let rules = &drive.stations;
    if matches!(stations, Stations::TooSmall(..)) { rules.entry.origin } else { rules.first.origin }
}

/// What is assumed for a scheme.
pub(super) fn assumed<'a>(drive: &'a Drive, ranked: &Ranked) -> impl Iterator<Item = &'a Assumed> {
    let is_looked_at = is_looked_at(ranked);
    drive.assumed_for(ranked.candidate, ranked.scheme.method).filter(move |_| is_looked_at)
}

/// The field that would give it.
pub(super) fn assumed_field(assumed: &Assumed) -> String {
    match assumed.alike {
        0 => assumed.field.clone(),
        more => format!("{} (and {more} more alike)", assumed.field),
    }
}

/// The same by the name of the pipe, where it is of one pipe.
pub(super) fn assumed_name(assumed: &Assumed, ranked: &Ranked) -> String {
    match assumed.concern {
        Concern::Pipe(_) => {
            let of_pipe = assumed.field.split_once(']').map_or(assumed.field.as_str(), |(_, of_pipe)| of_pipe);
            format!("{}: {}", ranked.pipe.label(), of_pipe.trim_start_matches(['.', ':', ' ']))
        }
        _ => assumed_field(assumed),
    }
}

/// Whose friction a step of the working is, told by its diameter where no two bodies have the same.
pub(super) fn whose(step: &Step, drive: &Drive, pipe: &Pipe) -> Option<&'static str> {
    if !step.is_friction() {
        return None;
    }
    let (_, diameter) = step.inputs.iter().find(|(name, _)| *name == "outside_diameter")?;
    let bodies = [
        (Some(drive.stem.outside_diameter.value), "of the stem"),
        (pipe.casing_diameter(), "of the casing"),
        (Some(pipe.outside_diameter.value), "of the pipe"),
    ];
    let same = |body: &&(Option<Length>, &'static str)| {
        body.0.is_some_and(|body| (body.si() - diameter.si).abs() <= 1e-9 * diameter.si)
    };
    let mut found = bodies.iter().filter(same);
    match (found.next(), found.next()) {
        (Some(one), None) => Some(one.1),
        _ => None,
    }
}
