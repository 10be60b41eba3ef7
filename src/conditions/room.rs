//! Cover over the bore, and the clear distance to what it crosses.

use super::plan::Plan;
use crate::check::{Absent, Check, Outcome, at_least};
use crate::law::{Calc, Recorder};
use crate::laws::room::{ClearDistance, LeastCover};
use crate::quantity::{Band, Length, Role};

const JACKED: &str = "least cover by habit; a railway or a road has rules of its own";
const ROAD: &str = "for drilled crossings with room to steer; the road authority decides";
const RAIL: &str =
    "one railway's rule, counted from the surface as if it were the bottom of the tie; its own rules count";
const HABIT: &str = "habit where the owner asks for nothing; high with the pilot off by its accuracy";
const OWNER: &str = "as its owner asks; high with the pilot off by its accuracy";

/// By habit for a jacked pipe, by the rules for what lies over it for any; the worst counts.
pub(crate) fn cover<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    let (rules, surface) = (&at.drive.site.cover, &at.drive.site.surface);
    let outside_diameter = at.pipe.outside_diameter.value;
    let there = rules.shallowest - outside_diameter / 2.0 - at.opened() / 2.0;
    let against = |need, note| at_least(Role::Depth, there, need).as_screen().with_note(note);
    let jacked = at.is_jacked().then(|| {
        calc.part("least cover");
        let (least, times) = rules.jacked;
        times.map(|times| calc.law(LeastCover { outside_diameter, times, least }))
    });
    // Rows of a pulled pipe are for roads: nothing is known of other ground.
    let fits = |(to, _): &&(Option<Length>, _)| to.is_none_or(|to| outside_diameter <= to);
    let drilled = rules.drilled.iter().find(fits).filter(|_| surface.road && !at.is_jacked());
    let road = drilled.map(|(_, need)| against(*need, ROAD));
    let rail = surface.railway.then(|| against(rules.rail, RAIL));
    let checks = [jacked.map(|need| against(need, JACKED)), road, rail].into_iter().flatten();
    checks.reduce(Check::worse).ok_or(Absent::Missing)
}

/// The worst of what is crossed.
pub(crate) fn clearance<R: Recorder>(at: &Plan<'_>, calc: &mut Calc<R>) -> Outcome {
    let rules = &at.drive.site.cover;
    let (bore, outside_diameter) = (at.opened(), at.pipe.outside_diameter.value);
    let checks = at.drive.site.crossings.iter().map(|crossing| {
        calc.part("clear distance of services");
        let clear = crossing.axis_distance(outside_diameter) - bore / 2.0;
        let supply = Band { high: clear - at.drive.pilot_error.value.high, ..Band::same(clear) };
        let need = calc.doubted(|calc| {
            crossing.clearance.unwrap_or_else(|| {
                let (diameter, least, times) = if at.is_jacked() {
                    (outside_diameter, Length::default(), rules.clear_jacked)
                } else {
                    let beside = crossing.beside > Length::default();
                    let (least, times) = if beside { rules.clear_drilled } else { rules.exposed };
                    (bore, least, times)
                };
                times.map(|times| calc.law(ClearDistance { diameter, times, least }))
            })
        });
        let check = at_least(Role::Depth, supply, need);
        // A bore that meets the service is no matter of habit.
        let meets = clear <= Length::default();
        let check = check.settled_by(&["crossings[].clearance"]);
        if crossing.clearance.is_some() || meets { check.with_note(OWNER) } else { check.as_screen().with_note(HABIT) }
    });
    checks.reduce(Check::worse).ok_or(Absent::Missing)
}
