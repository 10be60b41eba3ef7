//! Cover over the bore, and the clear distance to what it crosses.

use super::plan::Plan;
use crate::check::{Absent, Care, Check, Outcome, Rule, Verdict, Ways, at_least, only, rated};
use crate::law::{Calc, Recorder};
use crate::laws::room::{ClearDistance, LeastCover};
use crate::quantity::{Band, Length, Ratio, Role};
use crate::source::Cited;

const LEAST: &str = "with less cover than this the ground can cave to the surface";
const LOCATE: &str = "no services are given: locate and expose them before the drive, and list them";
const JACKED: &str = "usual least cover; a railway or road authority has its own rules";
const ROAD: &str = "for drilled crossings with room to steer; the road authority decides";
const RAIL: &str =
    "one railway's rule, measured from the surface as if that were the base of tie; the owner's own rules govern";
const STREAM: &str = "by the rule of other pipelines under wider waters, from the bed; its owner and scour govern";
const BED: &str =
    "the bed of the stream is not given: `depths`, the invert below the surface between the pits, and below the bed";
const HABIT: &str = "usual practice where the owner sets no limit; high: with the pilot off line by its accuracy";
const OWNER: &str = "as its owner requires; high: with the pilot off line by its accuracy";

/// Under a railway by its rule, for any bore by what no ground can do with less of, by habit for what is pushed, and for
/// what is pulled under a road or under nobody knows what; the worst counts.
pub(crate) fn cover<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    let (rules, surface) = (&at.drive.site.cover, &at.drive.site.surface);
    let (outside_diameter, bore) = (at.pipe.outside_diameter.value, at.opened());
    let there = rules.shallowest - outside_diameter / 2.0 - bore / 2.0;
    calc.part("least cover");
    let mut times = |(least, times): (Length, Cited<Ratio>), outside_diameter| {
        times.map(|times| calc.law(LeastCover { outside_diameter, times, least }))
    };
    let least = at_least(Role::Depth, there, times(rules.least, bore)).by(Rule::High).with_note(LEAST);
    let jacked = at.is_jacked().then(|| times(rules.jacked, outside_diameter));
    // Rows of a pulled pipe are for roads: nothing is known of other ground.
    let fits = |(to, _): &&(Option<Length>, _)| to.is_none_or(|to| outside_diameter <= to);
    let under_road = surface.road || !surface.is_told;
    let drilled = rules.drilled.iter().find(fits).filter(|_| under_road && !at.is_jacked());
    let habit = |need, note| at_least(Role::Depth, there, need).as_screen().with_note(note);
    let road = drilled.map(|(_, need)| habit(*need, ROAD));
    let rail = surface.railway.then(|| at_least(Role::Depth, there, rules.rail).by(Rule::High).with_note(RAIL));
    let stream = surface.stream.then(|| {
        let check = habit(rules.stream, STREAM);
        if rules.bed_is_told { check } else { check.undecided(BED) }
    });
    let checks = [jacked.map(|need| habit(need, JACKED)), road, rail, stream].into_iter().flatten();
    let settled: Ways = if surface.stream && !rules.bed_is_told {
        &[&["depths"]]
    } else if surface.is_told {
        &[&["launch.invert_depth"]]
    } else {
        &[&["surface.over"]]
    };
    Ok(checks.fold(least, Check::worse).settled_by(settled))
}

/// The worst of what is crossed.
pub(crate) fn clearance<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
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
        // A bore that meets the service is no matter of habit.
        let meets = left(guided.error.value).high <= Length::default();
        let check = match guided.at_best {
            Some(best) => check.at_best(at_least(Role::Depth, left(best), need)).settled_by(&[&["guidance"]]),
            None => check.settled_by(&[&["crossings[].clearance"]]),
        };
        match gas {
            _ if crossing.clearance.is_some() || meets => check.with_note(OWNER),
            // Its owner decides.
            Some(_) => check.by_habit().with_note(HABIT),
            None => check.as_screen().with_note(HABIT),
        }
    });
    checks.reduce(Check::worse).ok_or(Absent::Missing)
}
