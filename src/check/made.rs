//! One check: its numbers, and how they come out.

use super::{Care, Levels, Limit, Rule, Sense, Subject, Verdict, Ways};
use crate::law::{Doubt, Doubted};
use crate::quantity::{Band, Measure, Ratio, Role, Shown};
use crate::source::{Cited, Origin};
use core::ops::Deref;

/// Share of a limit that is lost in computing with it.
const ROUNDING: f64 = 1e-9;

/// Demand and limit of one case, in SI base units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Case {
    /// Demand, or supply where it must be at least the limit.
    pub demand: f64,
    /// Limit.
    pub limit: f64,
}

impl Case {
    fn passes(self, sense: Sense) -> Option<bool> {
        // What is told as the limit itself passes, whatever its last binary digit came to.
        let spare = ROUNDING * self.limit.abs();
        (self.demand.is_finite() && self.limit.is_finite()).then_some(match sense {
            Sense::AtMost => self.demand <= self.limit + spare,
            Sense::AtLeast => self.demand >= self.limit - spare,
        })
    }

    fn utilisation(self, sense: Sense) -> Option<f64> {
        let (over, under) = match sense {
            Sense::AtMost => (self.demand, self.limit),
            Sense::AtLeast => (self.limit, self.demand),
        };
        let share = over / under;
        // The limit may be so small that the quotient is no number.
        let share = if (share - 1.0).abs() <= ROUNDING { 1.0 } else { share };
        (under > 0.0 && under.is_finite() && share.is_finite()).then_some(share.max(0.0))
    }
}

/// Demand and limit, likely and high.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Cases {
    likely: Case,
    high: Case,
}

impl Cases {
    /// How they come out by a rule.
    fn judged(self, rule: Rule, sense: Sense) -> (Verdict, Option<Care>) {
        let (Some(likely), Some(high)) = (self.likely.passes(sense), self.high.passes(sense)) else {
            return (Verdict::NotDecided, None);
        };
        // Where the limit leaves no share to tell, what does not pass is past it by any number.
        let past = |case: Case, most: f64| case.utilisation(sense).is_none_or(|used| used > most);
        match rule {
            Rule::Required if high => (Verdict::WithCare, Some(Care::Condition)),
            Rule::Required if past(self.high, Rule::PAST_ALL) => (Verdict::Over, None),
            Rule::Required => (Verdict::NotDecided, None),
            Rule::Screen if likely && high => (Verdict::Within, None),
            Rule::Screen if !likely && past(self.likely, Rule::PAST_ALL) => (Verdict::NotDecided, None),
            Rule::Screen => (Verdict::WithCare, Some(Care::Screen)),
            Rule::High if high => (Verdict::Within, None),
            Rule::High => (Verdict::Over, None),
            Rule::Likely(_) | Rule::Watched(_) if !likely => (Verdict::Over, None),
            Rule::Likely(_) | Rule::Watched(_) if high => (Verdict::Within, None),
            Rule::Likely(most) | Rule::Watched(most) if !past(self.high, most.si()) => {
                (Verdict::WithCare, Some(Care::Narrow))
            }
            Rule::Likely(_) => (Verdict::Over, None),
            Rule::Watched(_) => (Verdict::NotDecided, None),
        }
    }
}

/// The numbers of a check: on the safe side of all that is not known, and at its best where something is not.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Numbers {
    role: Role,
    cases: Cases,
    best: Option<Cases>,
}

/// One check, decided.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
#[must_use]
pub struct Check {
    /// What is checked.
    pub subject: Subject,
    /// How it came out.
    pub verdict: Verdict,
    /// Why it asks for care, where it does.
    pub care: Option<Care>,
    made: Draft,
}

impl Deref for Check {
    type Target = Draft;

    fn deref(&self) -> &Draft {
        &self.made
    }
}

/// A check as it is made. The table of checks names it, and says who decides where the check does not.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
#[must_use]
pub struct Draft {
    /// Which side is safe.
    pub sense: Sense,
    /// Where the limit comes from.
    pub basis: Origin,
    /// Where a factor in the limit comes from, beside its basis.
    pub factor: Option<Origin>,
    /// The equation used outside its range, if any.
    pub doubt: Doubt,
    /// Whether that may spare a check that is over.
    may_spare: bool,
    /// What a reader must know of this check.
    pub note: Option<&'static str>,
    /// What would settle it, where it is not what the table of checks names.
    pub settled_by: Ways,
    /// None of a rating.
    numbers: Option<Numbers>,
    /// Who decides; of the table of checks where the check says nothing.
    rule: Option<Rule>,
    /// It comes out no better than so, and why.
    least: (Verdict, Option<Care>),
    /// Whether it can be over: a limit of our own alone bars nothing.
    bars: bool,
}

/// A demand that must not exceed a limit.
pub fn at_most<Q: Measure>(role: Role, demand: impl Levels<Q>, limit: impl Limit<Q>) -> Draft {
    Draft::new(role, Sense::AtMost, demand.levels(), limit.limit())
}

/// A supply that must be at least a need.
pub fn at_least<Q: Measure>(role: Role, supply: impl Levels<Q>, need: impl Limit<Q>) -> Draft {
    Draft::new(role, Sense::AtLeast, supply.levels(), need.limit())
}

/// What the contractor has to bring, against the most that is usual.
pub fn required<Q: Measure>(role: Role, asked: impl Levels<Q>, usual: impl Limit<Q>) -> Draft {
    at_most(role, asked, usual).by(Rule::Required)
}

/// A judgement without numbers.
pub const fn rated(verdict: Verdict, basis: Origin) -> Draft {
    let care = if matches!(verdict, Verdict::WithCare) { Some(Care::Noted) } else { None };
    Draft {
        sense: Sense::AtMost,
        basis,
        factor: None,
        doubt: None,
        may_spare: false,
        note: None,
        settled_by: &[],
        numbers: None,
        rule: None,
        least: (verdict, care),
        bars: true,
    }
}

impl Draft {
    fn new<Q: Measure>(role: Role, sense: Sense, demand: Doubted<Band<Q>>, limit: Doubted<Cited<Band<Q>>>) -> Self {
        debug_assert_eq!(Q::DIM, role.dim(), "role {role:?} does not fit what is checked");
        let both = demand.zip(limit);
        let (doubt, may_spare) = (both.doubt(), both.may_spare());
        let (demand, limit) = both.in_spite_of_doubt();
        let cases = demand.with(limit.value, |demand, limit| Case { demand: demand.si(), limit: limit.si() });
        let cases = Cases { likely: cases.likely, high: cases.high };
        let numbers = Some(Numbers { role, cases, best: None });
        Self { sense, doubt, may_spare, numbers, ..rated(Verdict::Within, limit.origin) }
    }

    /// The check of a subject, decided by the rule of the table unless it has one of its own.
    pub(crate) fn of(self, subject: Subject, rule: Rule) -> Check {
        self.by(self.rule.unwrap_or(rule)).named(subject)
    }

    fn named(self, subject: Subject) -> Check {
        let (verdict, care) = self.decided();
        Check { subject, verdict, care, made: self }
    }

    /// The worse of two, by verdict, then by how far the limit is used.
    pub(crate) fn worse(self, other: Self) -> Self {
        let used = |check: &Self| check.utilisation().unwrap_or(f64::INFINITY);
        if (other.verdict(), used(&other)) > (self.verdict(), used(&self)) { other } else { self }
    }

    /// The same with every default at its best: what fails on the safe side of what is not known and passes so is not
    /// decided, and nothing is over by a default alone.
    pub(crate) fn at_best(self, best: Self) -> Self {
        let best_may_spare = best.may_spare;
        let best = best.numbers.map(|best| best.cases);
        let numbers = self.numbers.map(|numbers| Numbers { best: best.or(numbers.best), ..numbers });
        let may_spare = self.may_spare || self.doubt.is_some() && best_may_spare;
        Self { numbers, may_spare, ..self }
    }
}

/// Said of a check that is over by one of two waters.
const EITHER: &str = "the depth of the water table is not known: with the water at the ground surface, or none, whichever is \
                      worse; by the other it is not over";

impl Check {
    /// The worse of this, where water stands, and another without it: over where both are. What both wait for is what the
    /// other does: what is done against water is asked for once it is told.
    pub(super) fn either(self, other: Self, ways: Ways) -> Self {
        let used = |check: &Self| check.utilisation().unwrap_or(f64::INFINITY);
        let other_is_worse = (other.verdict, used(&other)) > (self.verdict, used(&self));
        let (worse, better) = if other_is_worse { (other, self) } else { (self, other) };
        match (worse.verdict, better.verdict) {
            (Verdict::NotDecided, Verdict::NotDecided) => {
                Self { made: worse.made.settled_by(other.made.settled_by), ..worse }
            }
            (one, two) if one == two => worse,
            _ => worse.unless(Some(better), ways),
        }
    }

    /// Not decided where it is over or not decided, since it may be that it is not made, or made so: that thing settles it.
    pub(super) fn unless(self, better: Option<Self>, ways: Ways) -> Self {
        match self.verdict {
            Verdict::Within | Verdict::WithCare => return self,
            Verdict::NotDecided => return Self { made: self.made.settled_by(ways), ..self },
            Verdict::Over => {}
        }
        let best = better.and_then(|better| better.made.numbers).map(|numbers| numbers.best.unwrap_or(numbers.cases));
        let numbers = self.numbers.map(|numbers| Numbers { best, ..numbers });
        let least = if self.least.0 == Verdict::Over { (Verdict::NotDecided, None) } else { self.least };
        let made = Draft { bars: false, least, numbers, ..self.made };
        made.with_note(EITHER).settled_by(ways).named(self.subject)
    }

    /// What it comes out as with every default at its best, where it is not decided and passes so; nothing where it does
    /// not, where no best is known, and where more than numbers keeps it from being decided.
    #[must_use]
    pub fn passes_at_best(&self) -> Option<Verdict> {
        let rule = self.rule?;
        let (Verdict::NotDecided, None, true) = (self.verdict, self.doubt, self.least.0 < Verdict::NotDecided) else {
            return None;
        };
        let (verdict, _) = self.numbers?.best?.judged(rule, self.sense);
        (verdict < Verdict::NotDecided).then(|| verdict.max(self.least.0))
    }

    /// Past the limit in the likely case already, and asking for care only: a screen.
    #[must_use]
    pub fn is_failed_screen(&self) -> bool {
        let likely = self.numbers.and_then(|numbers| numbers.cases.likely.passes(self.sense));
        self.verdict == Verdict::WithCare && likely == Some(false)
    }
}

impl Draft {
    /// How it comes out so far.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        self.decided().0
    }

    /// Its verdict and why it asks for care, by its numbers, its rule and what holds it back.
    pub(crate) fn decided(&self) -> (Verdict, Option<Care>) {
        // Until the table has spoken any high demand asks for care only.
        let rule = self.rule.unwrap_or(Rule::Likely(Ratio::from_si(f64::INFINITY)));
        let judged = match self.numbers {
            Some(Numbers { cases, best, .. }) => {
                let judged = cases.judged(rule, self.sense);
                let spared = || best.is_some_and(|best| best.judged(rule, self.sense).0 != Verdict::Over);
                if judged.0 == Verdict::Over && (!self.bars || spared()) { (Verdict::NotDecided, None) } else { judged }
            }
            None => (Verdict::Within, None),
        };
        let is_over = judged.0 == Verdict::Over && !self.may_spare;
        if self.doubt.is_some() && !is_over {
            (Verdict::NotDecided, None)
        } else if judged.0 > self.least.0 || judged.0 == self.least.0 && self.least.1 != Some(Care::Condition) {
            judged
        } else {
            self.least
        }
    }

    #[inline]
    fn no_better(self, least: (Verdict, Option<Care>)) -> Self {
        let least = if least.0 > self.least.0 { least } else { self.least };
        Self { least, ..self }
    }

    /// Decided by a rule of its own.
    #[inline]
    pub fn by(self, rule: Rule) -> Self {
        Self { rule: Some(rule), ..self }
    }

    /// A screen: past the limit it asks for care, and bars nothing.
    pub fn as_screen(self) -> Self {
        self.by(Rule::Screen)
    }

    /// A habit up to twice its limit; what is past that is over.
    pub fn to_twice(self) -> Self {
        let likely = self.numbers.and_then(|numbers| numbers.cases.likely.utilisation(self.sense));
        self.by(if likely.is_none_or(|used| used > Rule::PAST_ALL) { Rule::High } else { Rule::Screen })
    }

    /// Never a plain pass: *with care*, and why.
    pub fn as_caution(self, note: &'static str) -> Self {
        self.with_care(Care::Noted, note)
    }

    /// Never a plain pass, for a reason.
    #[inline]
    pub fn with_care(self, care: Care, note: &'static str) -> Self {
        self.no_better((Verdict::WithCare, Some(care))).with_note(note)
    }

    /// Never a pass, and why; a check that is over stays so.
    pub fn undecided(self, note: &'static str) -> Self {
        self.no_better((Verdict::NotDecided, None)).with_note(note)
    }

    /// Not decided where there is doubt.
    pub fn in_doubt(self, doubt: Doubt) -> Self {
        if doubt.is_none() {
            return self;
        }
        Self { doubt: self.doubt.or(doubt), may_spare: true, ..self }
    }

    /// Whether it tells what the contractor has to bring, with the most that is usual for its limit.
    #[must_use]
    pub fn is_required(&self) -> bool {
        self.rule == Some(Rule::Required)
    }

    /// Who decides.
    #[must_use]
    pub const fn rule(&self) -> Option<Rule> {
        self.rule
    }

    /// With the factor that is in its limit.
    pub const fn with_factor(self, factor: Option<Origin>) -> Self {
        Self { factor, ..self }
    }

    /// Held against a limit that is ours alone, in place of one that the file does not tell: not decided where it is over.
    pub(crate) fn by_habit(self) -> Self {
        Self { bars: false, ..self }
    }

    /// With a note for the reader.
    #[inline]
    pub const fn with_note(self, note: &'static str) -> Self {
        Self { note: Some(note), ..self }
    }

    /// With the ways to settle it.
    #[inline]
    pub const fn settled_by(self, ways: Ways) -> Self {
        Self { settled_by: ways, ..self }
    }

    /// Demand and limit at the high level, which decides *within*.
    #[must_use]
    pub fn high(&self) -> Option<(Shown, Shown)> {
        self.numbers.map(|numbers| shown(numbers.role, numbers.cases.high))
    }

    /// Demand and limit at the likely level.
    #[must_use]
    pub fn likely(&self) -> Option<(Shown, Shown)> {
        self.numbers.map(|numbers| shown(numbers.role, numbers.cases.likely))
    }

    /// Demand and limit at the high level with every default at its best, where one enters that decides.
    #[must_use]
    pub fn best(&self) -> Option<(Shown, Shown)> {
        self.numbers.and_then(|numbers| Some(shown(numbers.role, numbers.best?.high)))
    }

    /// High demand over limit (inverted where the supply must be at least the need); `None` where the divisor is
    /// not positive, the quotient is beyond all numbers, or there are none.
    #[must_use]
    pub fn utilisation(&self) -> Option<f64> {
        self.numbers.and_then(|numbers| numbers.cases.high.utilisation(self.sense))
    }

    /// As [`Draft::utilisation`], at the likely level, by which schemes are ranked.
    #[must_use]
    pub fn likely_utilisation(&self) -> Option<f64> {
        self.numbers.and_then(|numbers| numbers.cases.likely.utilisation(self.sense))
    }
}

const fn shown(role: Role, case: Case) -> (Shown, Shown) {
    (Shown { si: case.demand, role }, Shown { si: case.limit, role })
}
