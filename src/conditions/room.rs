//! Cover over the bore, and the clear distance to what it crosses.

use super::opened;
use crate::check::{Check, Checks, Subject};
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::law::{Calc, Recorder};
use crate::laws::room::{ClearDistance, LeastCover};
use crate::quantity::{Band, Length, Role};
use crate::source::Cited;

const JACKED: &str = "least cover by habit; a railway or a road has rules of its own";
const ROAD: &str = "for drilled crossings with room to steer; the road authority decides";
const RAIL: &str =
    "one railway's rule, counted from the surface as if it were the bottom of the tie; its own rules count";
const HABIT: &str = "habit where the owner asks for nothing; high with the pilot off by its accuracy";
const OWNER: &str = "as its owner asks; high with the pilot off by its accuracy";

pub(super) fn checks<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    cover(calc, drive, pipe, method, checks);
    clearance(calc, drive, pipe, method, checks);
}

fn cover<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    let rules = &drive.site.cover;
    let outside_diameter = pipe.outside_diameter.value;
    let there = rules.shallowest - outside_diameter / 2.0 - opened(pipe, method) / 2.0;
    let surface = &drive.site.surface;
    if method == Method::PipeJacking {
        calc.part("least cover");
        let (least, times) = rules.jacked;
        let need = calc.law(LeastCover { outside_diameter, times: times.value, least });
        let check = Check::at_least(Subject::Cover, Role::Depth, there, Cited::new(need, times.origin));
        checks.add_worse(check.as_screen().with_note(JACKED));
    }
    // Rows of a pulled pipe are for roads: nothing is known of other ground.
    if method == Method::Pullback && surface.road {
        let row = rules.drilled.iter().find(|(to, _)| to.is_none_or(|to| outside_diameter <= to));
        if let Some((_, need)) = row {
            let check = Check::at_least(Subject::Cover, Role::Depth, there, *need);
            checks.add_worse(check.as_screen().with_note(ROAD));
        }
    }
    if surface.railway {
        let check = Check::at_least(Subject::Cover, Role::Depth, there, rules.rail);
        checks.add_worse(check.as_screen().with_note(RAIL));
    }
}

fn clearance<R: Recorder>(calc: &mut Calc<R>, drive: &Drive, pipe: &Pipe, method: Method, checks: &mut Checks) {
    let rules = &drive.site.cover;
    let bore = opened(pipe, method);
    for crossing in &drive.site.crossings {
        calc.part("clear distance of services");
        let clear = crossing.axis_distance(pipe.outside_diameter.value) - bore / 2.0;
        let off = clear - drive.pilot_accuracy.value;
        let supply = Band { low: clear, likely: clear, high: off };
        let need = calc.doubted(|calc| match (crossing.clearance, method) {
            (Some(asked), _) => asked,
            (None, Method::PipeJacking) => {
                let times = rules.clear_jacked;
                let least = Length::default();
                let diameter = pipe.outside_diameter.value;
                Cited::new(calc.law(ClearDistance { diameter, times: times.value, least }), times.origin)
            }
            (None, Method::Pullback) => {
                let (least, times) = rules.clear_drilled;
                Cited::new(calc.law(ClearDistance { diameter: bore, times: times.value, least }), times.origin)
            }
        });
        let need = need.map(|need| need.map(Band::same));
        let check = Check::at_least_by_level(Subject::ServiceClearance, Role::Depth, supply, need);
        // A bore that meets the service is no matter of habit.
        let meets = clear <= Length::default();
        let check = if crossing.clearance.is_some() || meets {
            check.with_note(OWNER)
        } else {
            check.as_screen().with_note(HABIT)
        };
        checks.add_worse(check);
    }
}
