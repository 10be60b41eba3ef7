//! What a file would have to tell so that a scheme that is open is decided, and what is in the way of one that is barred.

use super::ranking::Ranked;
use super::standing::not_decided;
use crate::check::{Check, Subject, Verdict, Ways};
use crate::method::Scheme;
use crate::quantity::Shown;

/// Lines to write, and the checks that they settle.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ask {
    /// Ways to settle them, any of which does, each the paths in the drive file that go together; empty where no field is
    /// known to settle it.
    pub ways: Vec<&'static [&'static str]>,
    /// Labels of the checks that are open for want of them.
    pub checks: Vec<&'static str>,
}

/// What would have to be told of a scheme that is open: the fewest lines that settle all of it, the one that settles most
/// first, and last what none settles.
#[must_use]
pub fn asks(scheme: &Scheme) -> Vec<Ask> {
    let ways_of = |subject: Subject| {
        let own = scheme.checks.get(subject).map_or(&[][..], |check| check.settled_by);
        if own.is_empty() { subject.need().map_or(&[][..], |need| need.ways) } else { own }
    };
    let (mut open, none): (Vec<Subject>, Vec<Subject>) =
        not_decided(scheme).partition(|subject| !ways_of(*subject).is_empty());
    let mut asks = Vec::new();
    while let Some(way) = settles_most(&open, ways_of) {
        let (settled, left) = open.iter().partition(|subject| ways_of(**subject).contains(&way));
        let settled: Vec<Subject> = settled;
        let others = settled.first().map_or(&[][..], |subject| ways_of(*subject)).iter().copied();
        let same = others.filter(|other| *other != way && settled.iter().all(|one| ways_of(*one).contains(other)));
        let ways = [way].into_iter().chain(same).collect();
        asks.push(Ask { ways, checks: settled.iter().map(|subject| subject.label()).collect() });
        open = left;
    }
    asks.extend(none.iter().map(|subject| Ask { ways: Vec::new(), checks: vec![subject.label()] }));
    asks
}

/// The way that settles most of what is open, of equal ones the first told.
fn settles_most(open: &[Subject], ways_of: impl Fn(Subject) -> Ways) -> Option<&'static [&'static str]> {
    let count = |way: &[&str]| open.iter().filter(|subject| ways_of(**subject).contains(&way)).count();
    let ways = open.iter().flat_map(|subject| ways_of(*subject)).copied();
    ways.rev().max_by_key(|way| count(way))
}

/// What bars a scheme: one demand, and every check that it is too much for.
#[derive(Debug, Clone)]
pub struct Cause<'a> {
    /// The likely demand, where it is a number that several checks share.
    pub demand: Option<Shown>,
    /// The checks that are over, the worst first.
    pub checks: Vec<&'a Check>,
}

/// What bars a scheme, each cause once, the one with the most excess first.
#[must_use]
pub fn causes(ranked: &Ranked) -> Vec<Cause<'_>> {
    let mut causes: Vec<Cause<'_>> = Vec::new();
    let used = |check: &Check| check.utilisation().unwrap_or(f64::INFINITY);
    for check in ranked.scheme.checks.iter().filter(|check| check.verdict == Verdict::Over) {
        let demand = check.likely().map(|(demand, _)| demand);
        let same = |cause: &&mut Cause<'_>| {
            cause
                .demand
                .zip(demand)
                .is_some_and(|(one, other)| one.role == other.role && one.si.to_bits() == other.si.to_bits())
        };
        match causes.iter_mut().find(same) {
            Some(cause) => cause.checks.push(check),
            None => causes.push(Cause { demand, checks: vec![check] }),
        }
    }
    for cause in &mut causes {
        cause.checks.sort_by(|a, b| used(b).total_cmp(&used(a)));
    }
    let worst = |cause: &Cause<'_>| cause.checks.first().map_or(0.0, |check| used(check));
    causes.sort_by(|a, b| worst(b).total_cmp(&worst(a)));
    causes
}
