//! A demand against a limit: typed at the door, erased inside.

mod subject;
mod table;

pub use subject::{Need, Subject};
pub(crate) use table::checks;

use crate::law::{Doubt, Doubted};
use crate::quantity::{Band, Measure, Role, Shown};
use crate::source::{Cited, Origin, printed};

printed!(Verdict: label, Sense: label, Subject: label);

/// How a check came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// The high demand is within the limit.
    Within,
    /// The likely demand is within the limit, the high one is not.
    WithCare,
    /// The likely demand is over the limit.
    Over,
    /// Something needed to judge is unknown, or an equation was used outside its range.
    NotDecided,
}

impl Verdict {
    /// As printed and as written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Within => "within",
            Self::WithCare => "with care",
            Self::Over => "over",
            Self::NotDecided => "not decided",
        }
    }
}

/// Which side of the limit is safe.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sense {
    /// The demand must not exceed the limit.
    AtMost,
    /// The supply must not fall below the need.
    AtLeast,
}

impl Sense {
    /// As written in JSON.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::AtMost => "at most",
            Self::AtLeast => "at least",
        }
    }
}

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
        (self.demand.is_finite() && self.limit.is_finite()).then_some(match sense {
            Sense::AtMost => self.demand <= self.limit,
            Sense::AtLeast => self.demand >= self.limit,
        })
    }

    fn utilisation(self, sense: Sense) -> Option<f64> {
        let (over, under) = match sense {
            Sense::AtMost => (self.demand, self.limit),
            Sense::AtLeast => (self.limit, self.demand),
        };
        let share = over / under;
        // The limit may be so small that the quotient is no number.
        (under > 0.0 && under.is_finite() && share.is_finite()).then_some(share.max(0.0))
    }
}

/// What the numbers of a check are.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Numbers {
    /// Likely and high case.
    Cases { role: Role, likely: Case, high: Case },
    /// A rating without numbers.
    None,
}

/// One check, of a subject that the table of checks names once it is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Check<S = Subject> {
    /// What is checked.
    pub subject: S,
    /// How it came out.
    pub verdict: Verdict,
    /// Which side is safe.
    pub sense: Sense,
    /// Where the limit comes from.
    pub basis: Origin,
    /// Where a factor in the limit comes from, beside its basis.
    pub factor: Option<Origin>,
    /// The equation used outside its range, if any.
    pub doubt: Doubt,
    /// What a reader must know of this check.
    pub note: Option<&'static str>,
    numbers: Numbers,
}

/// Low, likely and high of one thing, with the doubt in it: a value alone is the same at each level and sure.
pub trait Levels<Q> {
    /// Level by level.
    fn levels(self) -> Doubted<Band<Q>>;
}

impl<Q: Measure> Levels<Q> for Q {
    fn levels(self) -> Doubted<Band<Q>> {
        Band::same(self).levels()
    }
}

impl<Q: Measure> Levels<Q> for Band<Q> {
    fn levels(self) -> Doubted<Self> {
        Doubted::sure(self)
    }
}

impl<Q: Measure> Levels<Q> for Doubted<Band<Q>> {
    fn levels(self) -> Self {
        self
    }
}

/// What a demand is held against, and where it comes from; it may depend on the level itself.
pub trait Limit<Q> {
    /// Level by level.
    fn limit(self) -> Doubted<Cited<Band<Q>>>;
}

impl<Q: Measure> Limit<Q> for Cited<Q> {
    fn limit(self) -> Doubted<Cited<Band<Q>>> {
        self.map(Band::same).limit()
    }
}

impl<Q: Measure> Limit<Q> for Cited<Band<Q>> {
    fn limit(self) -> Doubted<Self> {
        Doubted::sure(self)
    }
}

impl<Q: Measure> Limit<Q> for Doubted<Cited<Q>> {
    fn limit(self) -> Doubted<Cited<Band<Q>>> {
        self.map(|limit| limit.map(Band::same))
    }
}

impl<Q: Measure> Limit<Q> for Doubted<Cited<Band<Q>>> {
    fn limit(self) -> Self {
        self
    }
}

/// A demand that must not exceed a limit.
#[must_use]
pub fn at_most<Q: Measure>(role: Role, demand: impl Levels<Q>, limit: impl Limit<Q>) -> Check<()> {
    Check::new((), role, Sense::AtMost, demand.levels(), limit.limit())
}

/// A supply that must be at least a need.
#[must_use]
pub fn at_least<Q: Measure>(role: Role, supply: impl Levels<Q>, need: impl Limit<Q>) -> Check<()> {
    Check::new((), role, Sense::AtLeast, supply.levels(), need.limit())
}

/// A judgement without numbers.
#[must_use]
pub const fn rated(verdict: Verdict, basis: Origin) -> Check<()> {
    let (sense, numbers) = (Sense::AtMost, Numbers::None);
    Check { subject: (), verdict, sense, basis, factor: None, doubt: None, note: None, numbers }
}

impl<S: Copy> Check<S> {
    fn new<Q: Measure>(
        subject: S,
        role: Role,
        sense: Sense,
        demand: Doubted<Band<Q>>,
        limit: Doubted<Cited<Band<Q>>>,
    ) -> Self {
        debug_assert_eq!(Q::DIM, role.dim(), "role {role:?} does not fit what is checked");
        let both = demand.zip(limit);
        let doubt = both.doubt();
        let (demand, limit) = both.in_spite_of_doubt();
        let cases = demand.with(limit.value, |demand, limit| Case { demand: demand.si(), limit: limit.si() });
        let verdict = match (doubt, cases.likely.passes(sense), cases.high.passes(sense)) {
            (Some(_), ..) | (None, None, _) | (None, _, None) => Verdict::NotDecided,
            (None, Some(false), _) => Verdict::Over,
            (None, Some(true), Some(false)) => Verdict::WithCare,
            (None, Some(true), Some(true)) => Verdict::Within,
        };
        let numbers = Numbers::Cases { role, likely: cases.likely, high: cases.high };
        Self { subject, verdict, sense, basis: limit.origin, factor: None, doubt, note: None, numbers }
    }

    /// The check of a subject.
    #[must_use]
    pub(crate) fn of<T>(self, subject: T) -> Check<T> {
        let Self { verdict, sense, basis, factor, doubt, note, numbers, .. } = self;
        Check { subject, verdict, sense, basis, factor, doubt, note, numbers }
    }

    /// The worse of two, by verdict, then by how far the limit is used.
    #[must_use]
    pub(crate) fn worse(self, other: Self) -> Self {
        let rank = |check: &Self| match check.verdict {
            Verdict::Within => 0,
            Verdict::WithCare => 1,
            Verdict::NotDecided => 2,
            Verdict::Over => 3,
        };
        let used = |check: &Self| check.utilisation().unwrap_or(f64::INFINITY);
        if (rank(&other), used(&other)) > (rank(&self), used(&self)) { other } else { self }
    }

    /// A screen: past the limit it asks for care, it never excludes.
    #[must_use]
    pub fn as_screen(self) -> Self {
        let verdict = if self.verdict == Verdict::Over { Verdict::WithCare } else { self.verdict };
        Self { verdict, ..self }
    }

    /// Never a plain pass: *with care*, and why.
    #[must_use]
    pub fn as_caution(self, note: &'static str) -> Self {
        let verdict = if self.verdict == Verdict::Within { Verdict::WithCare } else { self.verdict };
        Self { verdict, ..self }.with_note(note)
    }

    /// Never a pass, and why; a check that is over stays so.
    #[must_use]
    pub fn undecided(self, note: &'static str) -> Self {
        let verdict = if self.verdict == Verdict::Over { Verdict::Over } else { Verdict::NotDecided };
        Self { verdict, ..self }.with_note(note)
    }

    /// Not decided where there is doubt.
    #[must_use]
    pub fn in_doubt(self, doubt: Doubt) -> Self {
        let verdict = if doubt.is_some() { Verdict::NotDecided } else { self.verdict };
        Self { verdict, doubt: self.doubt.or(doubt), ..self }
    }

    /// Past the limit in the likely case already, and asking for care only: a screen.
    #[must_use]
    pub fn is_failed_screen(&self) -> bool {
        let likely = match self.numbers {
            Numbers::Cases { likely, .. } => likely.passes(self.sense),
            Numbers::None => None,
        };
        self.verdict == Verdict::WithCare && likely == Some(false)
    }

    /// With the factor that is in its limit.
    #[must_use]
    pub const fn with_factor(self, factor: Option<Origin>) -> Self {
        Self { factor, ..self }
    }

    /// With a note for the reader.
    #[must_use]
    pub const fn with_note(self, note: &'static str) -> Self {
        Self { note: Some(note), ..self }
    }

    /// Demand and limit at the high level, which decides *within*.
    #[must_use]
    pub const fn high(&self) -> Option<(Shown, Shown)> {
        self.pair(true)
    }

    /// Demand and limit at the likely level.
    #[must_use]
    pub const fn likely(&self) -> Option<(Shown, Shown)> {
        self.pair(false)
    }

    const fn pair(&self, high_level: bool) -> Option<(Shown, Shown)> {
        match self.numbers {
            Numbers::Cases { role, likely, high } => {
                let case = if high_level { high } else { likely };
                Some((Shown { si: case.demand, role }, Shown { si: case.limit, role }))
            }
            Numbers::None => None,
        }
    }

    /// High demand over limit (inverted where the supply must be at least the need); `None` where the divisor is
    /// not positive, the quotient is beyond all numbers, or there are none.
    #[must_use]
    pub fn utilisation(&self) -> Option<f64> {
        match self.numbers {
            Numbers::Cases { high, .. } => high.utilisation(self.sense),
            Numbers::None => None,
        }
    }

    /// As [`Check::utilisation`], at the likely level, by which schemes are ranked.
    #[must_use]
    pub fn likely_utilisation(&self) -> Option<f64> {
        match self.numbers {
            Numbers::Cases { likely, .. } => likely.utilisation(self.sense),
            Numbers::None => None,
        }
    }
}

/// Why a check is absent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Absent {
    /// It says nothing of this drive, pipe or method, and why.
    NotApplicable(&'static str),
    /// The file does not give what it needs: see [`Subject::need`].
    Missing,
}

/// What became of a check: made, or why not.
pub(crate) type Outcome = Result<Check<()>, Absent>;

/// Goes on only where something holds.
pub(crate) const fn only(holds: bool, else_why: &'static str) -> Result<(), Absent> {
    if holds { Ok(()) } else { Err(Absent::NotApplicable(else_why)) }
}

/// What became of every check of a scheme.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Checks([Result<Check, Absent>; Subject::COUNT]);

impl Checks {
    /// None was made, and why.
    #[must_use]
    pub const fn none(why: &'static str) -> Self {
        Self([Err(Absent::NotApplicable(why)); Subject::COUNT])
    }

    /// One outcome a subject, in their order.
    pub(crate) const fn of(outcomes: [Result<Check, Absent>; Subject::COUNT]) -> Self {
        Self(outcomes)
    }

    /// The checks that were made, in the order of [`Subject`].
    pub fn iter(&self) -> impl Iterator<Item = &Check> {
        self.0.iter().flatten()
    }

    /// The check of one subject, where it was made.
    #[must_use]
    pub fn get(&self, subject: Subject) -> Option<&Check> {
        self.outcome(subject).ok()
    }

    /// The check of one subject, or why it was not made.
    ///
    /// # Errors
    /// Why it is absent.
    pub fn outcome(&self, subject: Subject) -> Result<&Check, Absent> {
        match self.0.get(subject as usize) {
            Some(outcome) => outcome.as_ref().map_err(|absent| *absent),
            None => Err(Absent::Missing),
        }
    }

    /// What the file does not give, so that something goes unchecked, each once.
    pub fn missing(&self) -> impl Iterator<Item = Need> {
        let missing =
            || Subject::ALL.iter().zip(&self.0).filter(|(_, outcome)| matches!(outcome, Err(Absent::Missing)));
        let needs = missing().filter_map(|(subject, _)| subject.need());
        needs.enumerate().filter_map(move |(place, need)| {
            let before = missing().filter_map(|(subject, _)| subject.need()).take(place);
            (!before.into_iter().any(|told| told == need)).then_some(need)
        })
    }
}
