//! What became of every check of a scheme.

use super::{Check, Draft, Need, Subject, Ways};

/// Why a check is absent.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum Absent {
    /// It says nothing of this drive, pipe or method, and why.
    NotApplicable(&'static str),
    /// The file does not give what it needs: see [`Subject::need`].
    Missing,
}

/// What became of a check: made, or why not.
pub(crate) type Outcome = Result<Draft, Absent>;

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

    /// What became of a subject.
    pub(crate) fn put(&mut self, subject: Subject, outcome: Result<Check, Absent>) {
        if let Some(of) = self.0.get_mut(subject as usize) {
            *of = outcome;
        }
    }

    /// The worse of two of each subject that one thing tells apart which is not known: over where both are, and where one
    /// is not made the other's. `ways` tell that thing.
    pub(crate) fn either(&mut self, other: &Self, ways: Ways) {
        for (one, other) in self.0.iter_mut().zip(&other.0) {
            *one = match (*one, *other) {
                (Ok(one), Ok(other)) => Ok(one.either(other, ways)),
                (Err(Absent::Missing), _) | (_, Err(Absent::Missing)) => Err(Absent::Missing),
                (Ok(made), Err(_)) | (Err(_), Ok(made)) => Ok(made.unless(None, ways)),
                (Err(why), Err(_)) => Err(why),
            };
        }
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

    /// What the file does not give, so that something goes unchecked, each once; not where another check asks for it as
    /// much as the drive needs.
    #[must_use]
    pub fn missing(&self) -> Vec<Need> {
        let all = || Subject::ALL.iter().zip(&self.0);
        let is_asked = |need| {
            let asks = |outcome: &Result<Check, Absent>| outcome.as_ref().is_ok_and(|check| check.is_required());
            all().any(|(subject, outcome)| subject.need() == Some(need) && asks(outcome))
        };
        let mut needs = Vec::new();
        for (subject, outcome) in all() {
            let need = subject.need().filter(|need| matches!(outcome, Err(Absent::Missing)) && !is_asked(*need));
            needs.extend(need.filter(|need| !needs.contains(need)));
        }
        needs
    }
}
