//! What resolving has found, and how it tells what is wrong or assumed.

use crate::drive::{Assumed, AssumedValue, Concern, NotGiven};
use crate::drive_file::examples::example;
use crate::drive_file::flaw::Flaw;
use crate::handbook::{Handbook, HandbookError};
use crate::quantity::{Measure, Role, Shown, UnitSystem};
use crate::source::{Cited, FieldName, Origin};
use crate::yaml::{Complaint, Field, Handle};

/// What resolving has found so far.
pub(super) struct Resolver<'a> {
    pub(super) handbook: &'a Handbook,
    pub(super) flaws: Vec<Flaw>,
    pub(super) assumed: Vec<Assumed>,
    /// What is being resolved, and so what an assumed value concerns.
    pub(super) concern: Concern,
    /// What the maker of the pipe at hand has to say, while one is proposed; elsewhere its absence is a fault.
    pub(super) proposing: Option<Vec<NotGiven>>,
    /// The units that the file writes the length of the drive in, for what a fault computes.
    pub(super) system: UnitSystem,
    /// False where the length of the drive is faulty and another stands in for it.
    pub(super) length_is_told: bool,
}

impl Resolver<'_> {
    pub(super) fn flaw<T>(&mut self, at: &Field<T>, path: &str, complaint: impl Into<Complaint>) {
        self.flaw_at(at.handle(), path, complaint);
    }

    pub(super) fn flaw_at(&mut self, at: Handle, path: &str, complaint: impl Into<Complaint>) {
        // What a senseless value does elsewhere is mended with it.
        if !self.flaws.iter().any(|told| told.senseless && told.path == path) {
            self.flaws.push(Flaw { path: path.to_owned(), at, complaint: complaint.into(), senseless: false });
        }
    }

    /// Of a value that makes no sense itself: nothing else is told of it.
    pub(super) fn senseless<T>(&mut self, at: &Field<T>, path: &str, complaint: impl Into<Complaint>) {
        self.flaw(at, path, complaint);
        if let Some(last) = self.flaws.last_mut().filter(|last| last.path == path) {
            last.senseless = true;
        }
    }

    /// The value, which must be above zero.
    pub(super) fn positive<Q: Measure>(&mut self, field: &Field<Q>, path: &str, role: Role) -> Q {
        self.checked(field, path, role, field.value.si() > 0.0, "above zero")
    }

    /// The value, which must not be below zero.
    pub(super) fn not_negative<Q: Measure>(&mut self, field: &Field<Q>, path: &str, role: Role) -> Q {
        self.checked(field, path, role, field.value.si() >= 0.0, "of zero or more")
    }

    pub(super) fn checked<Q: Measure>(
        &mut self,
        field: &Field<Q>,
        path: &str,
        role: Role,
        fits: bool,
        expected: &str,
    ) -> Q {
        if !(fits && field.value.si().is_finite()) {
            let (what, _) = crate::quantity::unit::describe(Q::DIM);
            let example = example(path, Q::DIM, field.written_in().unwrap_or(self.system));
            let read = Shown::of(field.value, role).display(field.written_in().unwrap_or_default());
            let complaint = Complaint::from(format!("expected {what} {expected}, got {read}"));
            self.senseless(field, path, complaint.advise(format!("write for example \"{example}\"")));
        }
        field.value
    }

    pub(super) fn assume(&mut self, field: impl Into<String>, value: AssumedValue, origin: Origin) {
        self.assumed.push(Assumed { concern: self.concern, field: field.into(), value, origin, alike: 0 });
    }

    /// Resolves what concerns one part of the drive.
    pub(super) fn about<T>(&mut self, concern: Concern, resolve: impl FnOnce(&mut Self) -> T) -> T {
        let before = std::mem::replace(&mut self.concern, concern);
        let resolved = resolve(self);
        self.concern = before;
        resolved
    }

    /// Of the pull, whichever pipe was the first to need it.
    pub(super) fn assume_of_pull(&mut self, field: &str, value: AssumedValue, origin: Origin) {
        let known = |assumed: &Assumed| assumed.concern == Concern::Pull && assumed.field == field;
        if !self.assumed.iter().any(known) {
            self.about(Concern::Pull, |resolver| resolver.assume(field, value, origin));
        }
    }

    pub(super) fn assume_one_of_pull<Q: Measure>(&mut self, field: &str, value: Cited<Q>, role: Role) {
        self.assume_of_pull(field, AssumedValue::One(Shown::of(value.value, role)), value.origin);
    }

    /// For one stretch; stretches alike share one entry, so that a long list of them stays readable.
    pub(super) fn assume_alike(&mut self, stretch: &str, what: &str, value: AssumedValue, origin: Origin) {
        let alike =
            |known: &&mut Assumed| known.field.ends_with(what) && known.value == value && known.origin == origin;
        match self.assumed.iter_mut().find(alike) {
            Some(known) => known.alike += 1,
            None => self.assume(format!("{stretch}.{what}"), value, origin),
        }
    }

    pub(super) fn assume_one<Q: Measure>(&mut self, field: impl Into<String>, value: Cited<Q>, role: Role) {
        self.assume(field, AssumedValue::One(Shown::of(value.value, role)), value.origin);
    }

    /// The user's value, above zero, or the row's, which is then listed as assumed.
    pub(super) fn given_or<Q: Measure>(
        &mut self,
        given: Option<&Field<Q>>,
        name: &'static FieldName,
        role: Role,
        row: Cited<Q>,
    ) -> Cited<Q> {
        match given {
            Some(field) => Cited::given(self.positive(field, name.0, role), name),
            None => {
                self.assume_one(name.0, row, role);
                row
            }
        }
    }
}

/// Table row missing: said with what was looked for.
pub(super) fn no_row(table: &'static str, wanted: impl Into<String>) -> HandbookError {
    HandbookError::NoRow { table, wanted: wanted.into() }
}
