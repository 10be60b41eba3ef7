//! Why the first is first, in one sentence.

use super::asks::{Ask, Cause, asks, causes};
use super::rank::SAME;
use super::score::CriterionKind;
use super::standing::{self, Ranked, Standing};
use crate::check::{Care, Check, Rule, Subject, Verdict};
use crate::drive::{AssumedValue, Drive};
use crate::handbook::{Guidance, HandbookError, Method, Pilot};
use crate::method::{Stations, stations};
use crate::quantity::shown::decimal;
use crate::source::Origin;

pub(super) fn reason(drive: &Drive, ranked: &[Ranked]) -> Result<String, HandbookError> {
    let Some(first) = ranked.first() else { return Ok("there is no pipe to choose from".to_owned()) };
    if !first.standing.can_be_chosen() {
        let why = stops(drive, first)?;
        let would = if_settled(first).map_or_else(String::new, |would| format!(" and {would} once that is settled"));
        return Ok(match first.standing {
            Standing::Open => format!("no scheme can be chosen: {} comes closest{would}, but {why}", name(first)),
            _ => format!("no scheme can be chosen: {} comes closest, but is barred by {why}", name(first)),
        });
    }
    let behind = behind(drive, first);
    let gap = if behind.is_empty() { "" } else { "; " };
    Ok(format!("{} {}{gap}{behind}; {}", name(first), first.standing.label(), against(drive, ranked)?))
}

/// What stands behind the standing of a scheme: what governs and asks for care, what to write, or what bars it.
pub(crate) fn behind(drive: &Drive, first: &Ranked) -> String {
    match first.standing {
        Standing::Fits | Standing::WithCare => {
            // What leaves half of its limit governs nothing.
            let near = |check: &&Check| check.utilisation().is_none_or(|used| used > HALF);
            let done = |check: &Check| head(check).map_or_else(String::new, |what| format!(" with {what}"));
            let governed = first.scheme.governing().filter(near);
            let governed = governed.map(|check| format!("; governed by {}{}", at(check), done(check)));
            let text = format!("{}{}{}", governed.unwrap_or_default(), taken(drive, first), care(first));
            text.trim_start_matches("; ").to_owned()
        }
        Standing::Open => format!("{}{}", if_settled(first).unwrap_or("comes closest"), to_write(first)),
        Standing::Barred => match barred_by(drive, first) {
            by if !by.is_empty() => format!("barred by {by}"),
            // The pipe cannot be put in this way at all. A row that excludes one has its reason.
            by => first.scheme.excluded().next().map_or(by, |origin| {
                format!("barred: {}", exclusion(drive, origin).unwrap_or_default().trim_end_matches('.'))
            }),
        },
    }
}

/// What of the technique is taken for granted, and may bar the scheme where it is told otherwise: a drilled pilot, what
/// keeps a bore to its line, and the jacking stations that it takes.
fn taken(drive: &Drive, first: &Ranked) -> String {
    let is_taken = |field: &str, word: &str| {
        drive
            .assumed_for(first.candidate, first.scheme.method)
            .any(|one| one.field == field && matches!(&one.value, AssumedValue::Word(taken) if taken == word))
    };
    let on_line = first.scheme.checks.get(Subject::Invert).is_some();
    let pilot = is_taken("pilot", Pilot::Drilled.key()).then_some("a drilled pilot");
    let taken = [(Guidance::Laser, "a laser"), (Guidance::TotalStation, "a total station")];
    let guided = taken.into_iter().find(|(by, _)| on_line && is_taken("guidance", by.key())).map(|(_, words)| words);
    let is_loose = drive.guided.by == Guidance::None && first.scheme.method == Method::PipeJacking;
    let guided = guided.or(is_loose.then_some("nothing to steer it"));
    let stations = match stations(drive, &first.pipe, &first.scheme) {
        Some(Stations::Placed(placed)) => match placed.places.len() {
            1 => Some("a jacking station".to_owned()),
            several => Some(format!("{several} jacking stations")),
        },
        _ => None,
    };
    let all: Vec<String> = pilot.into_iter().chain(guided).map(str::to_owned).chain(stations).collect();
    if all.is_empty() { String::new() } else { format!("; with {}", all.join(" and ")) }
}

/// How the others stand against the first, where that can be chosen.
pub(crate) fn against(drive: &Drive, ranked: &[Ranked]) -> Result<String, HandbookError> {
    let Some(first) = ranked.first() else { return Ok(String::new()) };
    let opening = equals(ranked);
    // The rival is the best scheme of another kind, if there is one: that is the decision to defend.
    let other_kind =
        ranked.iter().skip(1).find(|other| other.scheme.method != first.scheme.method && !other.scheme.is_excluded());
    let Some(rival) = other_kind.or_else(|| ranked.get(1).filter(|other| !other.scheme.is_excluded())) else {
        return Ok(format!("{opening}no other was listed"));
    };
    let rival_name = name(rival);
    let leads = leads(first, rival);
    let argument = |other| argument(other, &leads);
    Ok(match rival.standing {
        standing if standing == first.standing && rival.place == first.place => {
            let but = if leads.is_empty() { String::new() } else { format!(" ({})", trade(&leads)) };
            format!("{opening}{rival_name} scores about the same{but}")
        }
        standing if standing == first.standing => {
            let two: Vec<String> = leads.iter().filter(|lead| lead.1 > 0.0).take(2).map(points).collect();
            format!(
                "{opening}it leads {rival_name} on {} of the score's 100 points{}",
                two.join(" and "),
                argument("the other scores")
            )
        }
        Standing::WithCare => {
            format!("{opening}{rival_name} fits with care{}{}", care(rival), argument("it scores"))
        }
        // What is open says itself that it is not decided.
        Standing::Open => format!("{opening}{rival_name} is {}{}", stops(drive, rival)?, argument(WOULD)),
        standing => {
            let (label, why) = (standing.label(), stops(drive, rival)?);
            format!("{opening}{rival_name} is {label}: {why}{}", argument(WOULD))
        }
    })
}

/// Schemes by the same method that share the first place: a tie is a tie, whoever is named first.
fn equals(ranked: &[Ranked]) -> String {
    let Some(first) = ranked.first() else { return String::new() };
    let rivals = ranked.iter().any(|other| other.scheme.method != first.scheme.method && !other.scheme.is_excluded());
    let shares = |other: &&Ranked| {
        other.place == first.place && other.standing == first.standing && other.scheme.method == first.scheme.method
    };
    // Without a rival of the other method the next scheme is the rival, and told as such.
    let equals = ranked.iter().skip(if rivals { 1 } else { 2 }).filter(shares);
    let names: Vec<String> = equals.map(name).collect();
    match names.as_slice() {
        [] => String::new(),
        [one] => format!("{one} scores about the same; "),
        [many @ .., last] => format!("{} and {last} score about the same; ", many.join(", ")),
    }
}

/// Method and pipe.
pub(crate) fn name(ranked: &Ranked) -> String {
    format!("{} of {}", ranked.scheme.method.key(), ranked.pipe.label())
}

/// The checks that came out so.
pub(crate) fn with_verdict(ranked: &Ranked, verdict: Verdict) -> impl Iterator<Item = &Check> {
    ranked.scheme.checks.iter().filter(move |check| check.verdict == verdict)
}

/// A check and how far its limit is used, where that is a number.
pub(crate) fn at(check: &Check) -> String {
    let subject = check.subject.label();
    match check.utilisation() {
        None => subject.to_owned(),
        // Jacks that are held below what may be borne: the high force would stall there.
        Some(used) if is_held(check) && used > 1.0 => {
            let likely =
                check.likely_utilisation().map_or_else(String::new, |likely| format!("likely {}, ", share(likely)));
            format!("{subject} ({likely}high {} of its limit: held to that)", share(used))
        }
        Some(used) if used > MOST_SHARE => format!("{subject} at over {} times its limit", decimal(MOST_SHARE, 0)),
        Some(used) => format!("{subject} at {}", share(used)),
    }
}

/// What stands at the head of the note of the ground, of what the ground bears and of the line: what it is, or what is done about it.
fn head(check: &Check) -> Option<&'static str> {
    let (what, _) = check.note?.split_once(": ")?;
    let is_asked = check.subject == Subject::Invert && check.is_required();
    (is_asked || matches!(check.subject, Subject::Ground | Subject::BreakOut)).then_some(what)
}

fn is_held(check: &Check) -> bool {
    check.care == Some(Care::Condition) && matches!(check.rule(), Some(Rule::Watched(_)))
}

/// A share of a limit up to which a check is not named.
const HALF: f64 = 0.5;

/// A share of a limit beyond which no number tells anything.
const MOST_SHARE: f64 = 10.0;

/// A share of a limit with as many digits as tell on which side of the limit it lies.
pub(crate) fn share(used: f64) -> String {
    const LEAST_OVER: f64 = 1.001;
    let is_told = |text: &String| used <= 1.0 || text.parse::<f64>().is_ok_and(|shown| shown > 1.0);
    let told = (2..=3).map(|digits| decimal(used, digits)).find(is_told);
    told.unwrap_or_else(|| decimal(LEAST_OVER, 3))
}

/// The same for a page, where a share past all experience is no more than that.
#[cfg(feature = "report")]
pub(crate) fn capped(used: f64) -> String {
    if used > MOST_SHARE { format!("over {}", decimal(MOST_SHARE, 0)) } else { share(used) }
}

/// Habits that nearly every drive is beyond: by number, where another is named.
const EVERYWHERE: [Subject; 2] = [Subject::WallMovement, Subject::BackFall];

/// What is named first of all that asks for care.
const BEFORE_PLANT: [Subject; 4] = [Subject::Ground, Subject::PitBoiling, Subject::PitHeave, Subject::Cover];

/// Most checks named for one reason in one line.
const MOST_NAMED: usize = 2;

/// What asks for care beside what governs, by its reason: by name what the ground and the line ask for, by number what plant
/// that is not told has to bear.
pub(crate) fn care(ranked: &Ranked) -> String {
    const KINDS: [(Care, &str); 5] = [
        (Care::Narrow, "high end over"),
        (Care::Condition, "subject to"),
        (Care::Data, "find out"),
        (Care::Noted, "watch"),
        (Care::Screen, "beyond usual practice"),
    ];
    let governs = ranked.scheme.governing().map(|check| check.subject);
    let mut text = String::new();
    for (kind, label) in KINDS {
        let of_kind = |check: &&Check| check.care == Some(kind) && governs != Some(check.subject);
        // What has to be done about the ground, and about what moves over the bore, is named.
        let of_ground = |check: &Check| {
            let moves = matches!(check.subject, Subject::SurfaceSettlement | Subject::ServiceSettlement);
            moves || BEFORE_PLANT.contains(&check.subject) || head(check).is_some()
        };
        let by_number =
            |check: &&Check| check.is_required() && !of_ground(check) || EVERYWHERE.contains(&check.subject);
        let (plant, mut named): (Vec<&Check>, Vec<&Check>) =
            with_verdict(ranked, Verdict::WithCare).filter(of_kind).partition(by_number);
        // Ground and pits before plant.
        named.sort_by_key(|check| !BEFORE_PLANT.contains(&check.subject));
        // A force that is held tells no share, nor what is not given.
        let is_short = |check: &Check| is_held(check) || check.utilisation() == Some(0.0);
        let one = |check: &Check| match head(check) {
            Some(what) => what.to_owned(),
            None if is_short(check) => check.subject.label().to_owned(),
            None => at(check),
        };
        let names: Vec<String> = named.iter().take(MOST_NAMED).map(|check| one(check)).collect();
        match (plant.len() + named.len() - names.len(), names.is_empty()) {
            (0, true) => {}
            (_, true) if kind == Care::Screen => {
                let names: Vec<&str> = plant.iter().map(|check| check.subject.label()).collect();
                text.push_str(&format!("; {label}: {}", names.join("; ")));
            }
            (1, true) => text.push_str("; one condition"),
            (count, true) => text.push_str(&format!("; {count} conditions")),
            (0, false) => text.push_str(&format!("; {label}: {}", names.join("; "))),
            (more, false) => text.push_str(&format!("; {label}: {} and {more} more", names.join("; "))),
        }
    }
    text
}

/// What an open scheme would be, or could, where not every open check is known to pass at its best.
pub(crate) fn if_settled(ranked: &Ranked) -> Option<&'static str> {
    let settled = ranked.if_settled.as_ref()?;
    Some(match (settled.standing, settled.is_shown) {
        (Standing::Fits, true) => "would fit",
        (Standing::Fits, false) => "could fit",
        (_, true) => "would fit with care",
        (_, false) => "could fit with care",
    })
}

/// Most lines asked for in the first one.
const MOST_ASKED: usize = 2;

/// What to write so that an open scheme is decided, in a few words; empty for any other.
pub(crate) fn to_write(ranked: &Ranked) -> String {
    let asks = asks(ranked);
    let (lines, unsettled): (Vec<&Ask>, Vec<&Ask>) = asks.iter().partition(|ask| !ask.ways.is_empty());
    let mut parts: Vec<String> = lines.iter().take(MOST_ASKED).map(|ask| ask.line()).collect();
    let more = lines.len().saturating_sub(MOST_ASKED);
    if more > 0 {
        parts.push(format!("{more} more"));
    }
    let write = if parts.is_empty() { String::new() } else { format!("; write {}", parts.join("; ")) };
    let mended = |ask: &&Ask| match ask.mend {
        None => ask.checks.join("; "),
        Some(mend) => format!("{} ({mend})", ask.checks.join("; ")),
    };
    let unsettled: Vec<String> = unsettled.iter().map(mended).collect();
    let settle = if unsettled.is_empty() { String::new() } else { format!("; settle {}", unsettled.join("; ")) };
    format!("{write}{settle}")
}

/// What bars a scheme, each cause once.
pub(crate) fn barred_by(drive: &Drive, ranked: &Ranked) -> String {
    let of = |check: &&Check| match check.utilisation() {
        None if check.subject == Subject::Ground => unsuited(drive, ranked, check),
        Some(used) if check.subject == Subject::Ground => {
            format!("ground, stones {} times the largest it takes", share(used))
        }
        Some(_) if matches!(check.subject, Subject::Diameter | Subject::Sight) => match check.note {
            Some(note) => format!("{}: {note}", at(check)),
            None => at(check),
        },
        Some(_) => at(check),
        None if check.likely().is_some() => format!("{} past its limit", check.subject.label()),
        None => match check.note {
            Some(note) => format!("{}: {note}", check.subject.label()),
            None => format!("{} unsuitable", check.subject.label()),
        },
    };
    let one = |cause: &Cause<'_>| cause.checks.iter().map(of).collect::<Vec<_>>().join(" and ");
    causes(ranked).iter().map(one).collect::<Vec<_>>().join("; ")
}

/// Ground that a technique is not for: by what its row says of it where the check has no reason of its own.
fn unsuited(drive: &Drive, ranked: &Ranked, check: &Check) -> String {
    let reference = drive.handbook.reference(check.basis);
    let words = reference.words().split_once(", ").map_or("unsuitable", |(_, words)| words);
    match (check.note, ranked.scheme.method) {
        (Some(note), _) => format!("ground: {note}"),
        (None, Method::PipeJacking) => format!("ground: {words}: not done by {}", drive.technique),
        (None, Method::Pullback) => format!("ground: {words}: not done by pulling"),
    }
}

/// What keeps a scheme from being chosen.
fn stops(drive: &Drive, ranked: &Ranked) -> Result<String, HandbookError> {
    let mut texts: Vec<String> = Vec::new();
    for origin in ranked.scheme.excluded() {
        texts.push(exclusion(drive, origin)?.trim_end_matches('.').to_owned());
    }
    if ranked.standing == Standing::Open {
        // What no line settles is named with what is told of it.
        let asks = asks(ranked);
        let by_line = |label: &&str| asks.iter().any(|ask| !ask.ways.is_empty() && ask.checks.contains(label));
        let open: Vec<&str> = standing::not_decided(&ranked.scheme).map(Subject::label).filter(by_line).collect();
        let open = if open.is_empty() { "not decided".to_owned() } else { format!("not decided: {}", open.join("; ")) };
        texts.push(format!("{open}{}", to_write(ranked)));
    } else {
        texts.extend(Some(barred_by(drive, ranked)).filter(|text| !text.is_empty()));
    }
    if texts.is_empty() {
        texts.push("nothing about it could be checked".to_owned());
    }
    Ok(texts.join("; "))
}

/// The sentence of a row of the table `exclusion`.
pub(crate) fn exclusion(drive: &Drive, origin: Origin) -> Result<String, HandbookError> {
    let table = drive.handbook.exclusion()?;
    let found = table.iter().find(|row| row.origin == origin);
    Ok(found.map_or_else(String::new, |row| row.value.value.reason.value.0.clone()))
}

/// Criteria in which one scheme leads the other by points worth printing, the greatest lead first.
pub(crate) fn leads(first: &Ranked, rival: &Ranked) -> Vec<(CriterionKind, f64)> {
    let (Some(own), Some(its)) = (&first.score, &rival.score) else { return Vec::new() };
    let pairs = own.criteria.iter().filter_map(|criterion| {
        let other = its.criteria.iter().find(|other| other.kind == criterion.kind)?;
        Some((criterion.kind, criterion.least() - other.least()))
    });
    let mut leads: Vec<(CriterionKind, f64)> = pairs.filter(|(_, lead)| lead.abs() >= SAME).collect();
    leads.sort_by(|a, b| b.1.total_cmp(&a.1));
    leads
}

fn points(lead: &(CriterionKind, f64)) -> String {
    format!("{} by {:.0}", lead.0.label(), lead.1.abs())
}

/// Of a rival that cannot be chosen.
const WOULD: &str = "it would score";

/// The criterion that speaks most for the rival.
fn argument(other: &str, leads: &[(CriterionKind, f64)]) -> String {
    match leads.last().filter(|lead| lead.1 < 0.0) {
        Some((kind, lead)) => format!("; {other} {:.0} more on {}", lead.abs(), kind.label()),
        None => String::new(),
    }
}

/// What each of two equal schemes has before the other.
fn trade(leads: &[(CriterionKind, f64)]) -> String {
    let one = leads.first().filter(|lead| lead.1 > 0.0).map(|lead| format!("ahead on {}", points(lead)));
    let other = leads.last().filter(|lead| lead.1 < 0.0).map(|lead| format!("behind on {}", points(lead)));
    [one, other].into_iter().flatten().collect::<Vec<_>>().join(", ")
}
