//! One pipe put in by one method.

use crate::check::{Check, Checks, Rule, Verdict, Ways};
use crate::handbook::Method;
use crate::law::Doubted;
use crate::quantity::{Band, Force};
use crate::source::Origin;
use core::cmp::Ordering;

/// One pipe put in by one method: its force band and its checks.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Scheme {
    /// The method.
    pub method: Method,
    /// Greatest force on the pipe along the drive; absent where the scheme is excluded before any force.
    pub force: Option<Band<Force>>,
    /// Greatest force on the rig over all stages.
    pub rig_force: Option<Band<Force>>,
    /// Greatest thrust on the wall of the launch pit over all stages that push.
    pub thrust: Option<Doubted<Band<Force>>>,
    /// The checks.
    pub checks: Checks,
    pub(super) excluded: [Option<Origin>; 2],
}

impl Scheme {
    /// A scheme that no check was made of, and what bars it: a pipe can be excluded by its method and by its service.
    #[inline]
    pub(super) fn barred_by(method: Method, mut bars: impl Iterator<Item = Origin>) -> Self {
        Self {
            method,
            force: None,
            rig_force: None,
            thrust: None,
            checks: Checks::none("the pipe is not put in so"),
            excluded: [bars.next(), bars.next()],
        }
    }

    /// The worse of two that one thing tells apart which is not known; `ways` tell it.
    pub(super) fn either(&mut self, other: &Self, ways: Ways) {
        let most = |one: Option<Band<Force>>, other: Option<Band<Force>>| {
            one.zip(other).map(|(one, other)| one.with(other, Force::max)).or(one).or(other)
        };
        let high = |thrust: &Doubted<Band<Force>>| thrust.in_spite_of_doubt().high;
        self.thrust = match (self.thrust, other.thrust) {
            (Some(one), Some(other)) => Some(if high(&other) > high(&one) { other } else { one }),
            (one, other) => one.or(other),
        };
        self.force = most(self.force, other.force);
        self.rig_force = most(self.rig_force, other.rig_force);
        self.checks.either(&other.checks, ways);
    }

    /// The check that governs: the worst, and of those the one whose limit is used most at the high level. Screens,
    /// requirements and ratings without numbers do not.
    #[must_use]
    pub fn governing(&self) -> Option<&Check> {
        self.counting().max_by(|a, b| by_use(a, b))
    }

    /// The checks that may govern, the one that does first.
    #[must_use]
    pub fn governed(&self) -> Vec<&Check> {
        let mut checks: Vec<&Check> = self.counting().collect();
        checks.sort_by(|a, b| by_use(b, a));
        checks
    }

    /// Checks with a limit of which a share is used: neither a habit nor what is asked of the contractor.
    fn counting(&self) -> impl Iterator<Item = &Check> {
        let counts = |check: &&Check| !matches!(check.rule(), Some(Rule::Screen | Rule::Required));
        let has_share =
            |check: &&Check| check.utilisation().is_some_and(|used| used > 0.0) || check.verdict == Verdict::Over;
        self.checks.iter().filter(counts).filter(has_share)
    }

    /// Whether a property of the pipe family bars the scheme before any number.
    #[must_use]
    pub fn is_excluded(&self) -> bool {
        self.excluded().next().is_some()
    }

    /// Rows of the table `exclusion` that bar the scheme.
    pub fn excluded(&self) -> impl Iterator<Item = Origin> {
        self.excluded.iter().flatten().copied()
    }
}

/// The graver verdict first, of what is over ground, rules and geometry, and then the limit that is used more.
fn by_use(a: &Check, b: &Check) -> Ordering {
    let used = |check: &Check| check.utilisation().unwrap_or(0.0);
    let leads = |check: &Check| check.verdict == Verdict::Over && check.subject.is_of_place();
    a.verdict.cmp(&b.verdict).then(leads(a).cmp(&leads(b))).then(used(a).total_cmp(&used(b)))
}
