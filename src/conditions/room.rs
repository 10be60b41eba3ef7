//! Cover over the bore, and the clear distance to what it crosses.

use super::plan::Plan;
use crate::check::{Absent, Care, Draft, Outcome, Rule, Verdict, Ways, at_least, only, rated};
use crate::law::Calc;
use crate::laws::room::{ClearDistance, LeastCover};
use crate::quantity::{Band, Length, Measure, Ratio, Role};
use crate::source::Cited;

const LEAST: &str = "with less cover than this the ground can cave to the surface";
const LOCATE: &str = "no services are given: locate and expose them before the drive, and list them";
const JACKED: &str = "usual least cover; a railway or road authority has its own rules";
const ROAD: &str = "for drilled crossings with room to steer; the road authority decides";
const RAIL: &str =
    "one railway's rule, measured from the surface as if that were the base of tie; the owner's own rules govern";
const STREAM: &str =
    "under a stream: with the permit of its owner, and deeper than a flood scours its bed; find out both";
const BED_RULE: &str = "least cover of a sewer below the bed of a stream: deepen the drive";
const RUNWAY: &str = "usual least cover, under a runway: its operator decides on less";
const DRIFTS: &str = "high: with the bore up from its line by what it may be off, since nothing in it steers it";
const HALF: &str = "less than half of the usual least cover: deepen the drive";
const PERMIT: &str = "much less than the usual least cover under a road: with the written consent of its authority, and the surface watched";
/// The usual least cover over what there is from which a road asks for more than a habit: our judgement.
const SHALLOW_UNDER_ROAD: f64 = 1.5;
const SHALLOW: &str =
    "less than half of what a drilled road crossing usually has: with the consent of the road authority";
const BED: &str =
    "the bed of the stream is not given: `depths`, the invert below the surface between the pits, and below the bed";
/// Least clear distance in m that an owner can be written to ask for.
const LEAST_CLEARANCE: f64 = 0.05;
const HABIT: &str = "usual practice where the owner sets no limit; high: with the pilot off line by its accuracy";
const MEETS: &str = "nothing is left between bore and service with the pilot off line by its accuracy: shift the line";
const OWNER: &str = "as its owner requires; high: with the pilot off line by its accuracy";

/// Under a railway by its rule, for any bore by what no ground can do with less of, by habit for what is pushed, and for
/// what is pulled under a road or under nobody knows what; the worst counts.
pub(crate) fn cover(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let (rules, surface) = (&at.drive.site.cover, &at.drive.site.surface);
    let (outside_diameter, bore) = (at.pipe.outside_diameter.value, at.opened());
    let there = rules.shallowest - outside_diameter / 2.0 - bore / 2.0;
    calc.part("least cover");
    let guided = &at.drive.guided;
    let risen = Band { high: there - guided.drift(), ..Band::same(there) };
    let left = |need| {
        let check = at_least(Role::Depth, risen, need);
        if guided.at_best.is_some() { check.at_best(at_least(Role::Depth, there, need)) } else { check }
    };
    let mut times = |(least, times): (Length, Cited<Ratio>), outside_diameter| {
        times.map(|times| calc.law(LeastCover { outside_diameter, times, least }))
    };
    let least = left(times(rules.least, bore)).by(Rule::High).with_note(LEAST);
    // Rows of a pulled pipe are for roads: nothing is known of other ground.
    let size = outside_diameter.min(at.pipe.nominal);
    let fits = |(to, _): &&(Option<Length>, _)| to.is_none_or(|to| size <= to);
    let under_road = surface.road || !surface.is_told;
    let drilled = rules.drilled.iter().find(fits).filter(|_| under_road && !at.is_jacked());
    let by_rule = |need, note| left(need).by(Rule::High).with_note(note);
    let screen = |need, note| left(need).as_screen().with_note(note);
    let past_all = |check: &Draft| check.verdict() == Verdict::NotDecided;
    // The depth is told: what is past all experience is over, since no line of the file would settle it.
    let of_jacked = (at.is_jacked() || drilled.is_some()).then(|| times(rules.jacked, outside_diameter));
    let jacked = of_jacked.filter(|_| at.is_jacked()).map(|need| {
        let check = screen(need, JACKED);
        let runway = surface.guarded && !surface.railway && !surface.stream;
        match (past_all(&check), runway) {
            (true, _) => by_rule(need, HALF),
            // What comes up in a runway is found by an aircraft.
            (false, true) => by_rule(need, RUNWAY),
            // Nor does a casing that nothing steers come up past half of it.
            (false, false) if surface.road && check.utilisation().is_some_and(|used| used > SHALLOW_UNDER_ROAD) => {
                check.with_care(Care::Condition, PERMIT).worse(by_rule(need.map(|need| need / 2.0), HALF))
            }
            (false, false) => check.worse(by_rule(need.map(|need| need / 2.0), HALF)),
        }
    });
    let road = drilled.zip(of_jacked).map(|((_, need), of_jacked)| {
        let check = screen(*need, ROAD);
        match (past_all(&check), screen(of_jacked, SHALLOW)) {
            (false, _) => check,
            (true, jacked) if !past_all(&jacked) => jacked.with_care(Care::Condition, SHALLOW),
            (true, _) if surface.is_told => by_rule(*need, HALF),
            // Where nobody tells of a road, there may be none.
            (true, _) => by_rule(*need, HALF).by_habit(),
        }
    });
    let rail = surface.railway.then(|| by_rule(rules.rail, RAIL));
    // A habit that is not kept below a stream is no matter of habit: its owner and its floods decide.
    let below = |check: Draft| {
        if surface.stream && check.verdict() == Verdict::WithCare {
            check.with_care(Care::Condition, STREAM)
        } else {
            check
        }
    };
    let stream = surface.stream.then(|| {
        let usual = below(screen(rules.stream, STREAM));
        let check = rules.bed.map_or(usual, |least| by_rule(least, BED_RULE).worse(usual));
        if rules.bed_is_told { check } else { check.undecided(BED) }
    });
    let checks = [jacked.map(below), road, rail, stream].into_iter().flatten();
    let check = checks.fold(least, Draft::worse);
    let settled: Ways = match (surface.stream && !rules.bed_is_told, surface.is_told) {
        (true, _) => &[&["depths"]],
        (false, false) => &[&["surface.over"]],
        (false, true) if guided.at_best.is_some() => &[&["guidance"]],
        (false, true) => &[],
    };
    let drifts = check.verdict() != Verdict::Within && check.utilisation() > check.likely_utilisation();
    let check = if drifts { check.with_note(DRIFTS) } else { check };
    Ok(check.settled_by(settled))
}

/// The worst of what is crossed.
pub(crate) fn clearance(at: &Plan<'_>, calc: &mut Calc) -> Outcome {
    let rules = &at.drive.site.cover;
    if !at.drive.site.crossings_are_told {
        let origin = rules.exposed.1.origin;
        return Ok(rated(Verdict::Within, origin).with_care(Care::Data, LOCATE).settled_by(&[&["crossings"]]));
    }
    only(!at.drive.site.crossings.is_empty(), "the file says that there are none")?;
    let (bore, outside_diameter) = (at.opened(), at.pipe.outside_diameter.value);
    let checks = at.drive.site.crossings.iter().map(|crossing| {
        calc.part("clear distance of services");
        let clear = crossing.axis_distance(outside_diameter) - bore / 2.0;
        let guided = &at.drive.guided;
        let left = |error: Band<Length>| Band { high: clear - error.high, ..Band::same(clear) };
        let gas = Some(rules.clear_gas).filter(|_| crossing.gas);
        let need = calc.doubted(|calc| {
            crossing.clearance.unwrap_or_else(|| {
                let (diameter, least, times) = if at.is_jacked() {
                    (outside_diameter, Length::default(), rules.clear_jacked)
                } else {
                    let beside = crossing.beside > Length::default();
                    let (least, times) = if beside { rules.clear_drilled } else { rules.exposed };
                    (bore, least, times)
                };
                let need = times.map(|times| calc.law(ClearDistance { diameter, times, least }));
                gas.filter(|gas| gas.value > need.value).unwrap_or(need)
            })
        });
        let check = at_least(Role::Depth, left(guided.error.value), need);
        // A bore that meets the service, or leaves less than any owner could be written to ask for, is no matter of habit.
        let best = left(guided.at_best.unwrap_or(guided.error.value)).high;
        let meets = left(guided.error.value).high <= Length::default() || best < Length::from_si(LEAST_CLEARANCE);
        let check = match guided.at_best {
            Some(best) => check.at_best(at_least(Role::Depth, left(best), need)).settled_by(&[&["guidance"]]),
            None => check.settled_by(&[&["crossings[].clearance"]]),
        };
        match gas {
            _ if crossing.clearance.is_some() => check.with_note(OWNER),
            _ if meets => check.by(Rule::High).with_note(MEETS),
            // Its owner decides.
            Some(_) => check.by_habit().with_note(HABIT),
            None => check.as_screen().with_note(HABIT),
        }
    });
    checks.reduce(Draft::worse).ok_or(Absent::Missing)
}
