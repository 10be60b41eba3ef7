//! Why the first is first, in one sentence.

use super::rank::SAME;
use super::ranking::Ranked;
use super::score::CriterionKind;
use super::standing::Standing;
use crate::check::{Check, Verdict};
use crate::drive::Drive;
use crate::handbook::HandbookError;
use crate::quantity::shown::decimal;
use crate::source::Origin;

pub(super) fn reason(drive: &Drive, ranked: &[Ranked]) -> Result<String, HandbookError> {
    let Some(first) = ranked.first() else { return Ok("there is no pipe to choose from".to_owned()) };
    if !first.standing.can_be_chosen() {
        let why = stops(drive, first)?;
        return Ok(match first.standing {
            Standing::Open => format!("nothing can be chosen: {} comes nearest, but {why}", name(first)),
            _ => format!("nothing can be chosen: even {} is barred, since {why}", name(first)),
        });
    }
    let governed = first.scheme.governing();
    let governed = governed.map_or_else(String::new, |check| format!("; largest load: {}", at(check)));
    let care = list(first, Verdict::WithCare);
    let care = if care.is_empty() { care } else { format!("; with care: {care}") };
    let opening = format!("{} {}{governed}{care}", name(first), first.standing.label());
    let opening = format!("{opening}{}", equals(ranked));
    // The rival is the best scheme of another kind, if there is one: that is the decision to defend.
    let other_kind =
        ranked.iter().skip(1).find(|other| other.scheme.method != first.scheme.method && !other.scheme.is_excluded());
    let Some(rival) = other_kind.or_else(|| ranked.get(1).filter(|other| !other.scheme.is_excluded())) else {
        return Ok(format!("{opening}; no other scheme is possible"));
    };
    let rival_name = name(rival);
    let leads = leads(first, rival);
    let argument = argument(&leads);
    Ok(match rival.standing {
        standing if standing == first.standing && rival.place == first.place => {
            let but = if leads.is_empty() { String::new() } else { format!(" ({})", trade(&leads)) };
            format!("{opening}; {rival_name} scores about the same{but}")
        }
        standing if standing == first.standing => {
            let two: Vec<String> = leads.iter().filter(|lead| lead.1 > 0.0).take(2).map(points).collect();
            format!("{opening}; it leads {rival_name} on {} of the score's 100 points{argument}", two.join(" and "))
        }
        Standing::WithCare => {
            format!("{opening}; {rival_name} asks for care: {}{argument}", list(rival, Verdict::WithCare))
        }
        standing => format!("{opening}; {rival_name} is {}: {}{argument}", standing.label(), stops(drive, rival)?),
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
        [one] => format!("; {one} scores about the same"),
        [many @ .., last] => format!("; {} and {last} score about the same", many.join(", ")),
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
    let used = check.utilisation();
    used.map_or_else(|| subject.to_owned(), |used| format!("{subject} at {}", decimal(used, 2)))
}

fn list(ranked: &Ranked, verdict: Verdict) -> String {
    let texts = with_verdict(ranked, verdict).map(|check| match check.likely_utilisation() {
        Some(likely) if verdict == Verdict::Over => {
            format!("{} is over at {}", check.subject.label(), decimal(likely, 2))
        }
        None if verdict == Verdict::Over && check.likely().is_some() => {
            format!("{} is over its limit", check.subject.label())
        }
        _ if verdict == Verdict::WithCare => at(check),
        _ if verdict == Verdict::Over => format!("{} is unsuitable", check.subject.label()),
        _ if verdict == Verdict::NotDecided => format!("{} is not decided", check.subject.label()),
        _ => check.subject.label().to_owned(),
    });
    texts.collect::<Vec<_>>().join(", ")
}

/// What keeps a scheme from being chosen.
fn stops(drive: &Drive, ranked: &Ranked) -> Result<String, HandbookError> {
    let mut texts: Vec<String> = Vec::new();
    for origin in ranked.scheme.excluded() {
        texts.push(exclusion(drive, origin)?.trim_end_matches('.').to_owned());
    }
    let verdict = if ranked.standing == Standing::Open { Verdict::NotDecided } else { Verdict::Over };
    let checks = list(ranked, verdict);
    if !checks.is_empty() {
        texts.push(checks);
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

/// The criterion that speaks most for the rival.
fn argument(leads: &[(CriterionKind, f64)]) -> String {
    match leads.last().filter(|lead| lead.1 < 0.0) {
        Some(lead) => format!("; the other's best argument is {}", points(lead)),
        None => String::new(),
    }
}

/// What each of two equal schemes has before the other.
fn trade(leads: &[(CriterionKind, f64)]) -> String {
    let one = leads.first().filter(|lead| lead.1 > 0.0).map(|lead| format!("ahead on {}", points(lead)));
    let other = leads.last().filter(|lead| lead.1 < 0.0).map(|lead| format!("behind on {}", points(lead)));
    [one, other].into_iter().flatten().collect::<Vec<_>>().join(", ")
}
