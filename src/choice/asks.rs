//! What a file would have to tell so that a scheme that is open is decided, and what is in the way of one that is barred.

use super::ranking::Ranked;
use super::standing::not_decided;
use crate::check::{Check, Verdict};
use crate::quantity::Shown;

/// Fields to write, and how many checks they settle.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ask {
    /// Paths in the drive file; empty where no field is known to settle it.
    pub fields: &'static [&'static str],
    /// Labels of the checks that are open for want of them.
    pub checks: Vec<&'static str>,
}

/// What would have to be told of a scheme that is open, the fields that settle most first.
#[must_use]
pub fn asks(ranked: &Ranked) -> Vec<Ask> {
    let mut asks: Vec<Ask> = Vec::new();
    for subject in not_decided(&ranked.scheme) {
        let own = ranked.scheme.checks.get(subject).map_or(&[][..], |check| check.settled_by);
        let fields = if own.is_empty() { subject.need().map_or(&[][..], |need| need.fields) } else { own };
        match asks.iter_mut().find(|ask| ask.fields == fields && !fields.is_empty()) {
            Some(ask) => ask.checks.push(subject.label()),
            None => asks.push(Ask { fields, checks: vec![subject.label()] }),
        }
    }
    // What a field can settle goes before what none can.
    asks.sort_by_key(|ask| (ask.fields.is_empty(), usize::MAX - ask.checks.len()));
    asks
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
