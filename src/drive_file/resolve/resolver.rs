//! What resolving has found, and how it tells what is wrong or assumed.

use crate::drive::{Assumed, AssumedValue, Concern, NotGiven, Unusual};
use crate::drive_file::DriveFile;
use crate::drive_file::examples::in_us_units;
use crate::drive_file::flaw::Flaw;
use crate::handbook::{Handbook, HandbookError};
use crate::quantity::{Measure, Role, Shown, UnitSystem};
use crate::source::{Cited, Origin};
use crate::yaml::{Complaint, Field, Handle};

/// What the handbook may fail at.
pub(super) type Resolved<T> = Result<T, HandbookError>;

/// What resolving has found so far.
pub(super) struct Resolver<'a> {
    pub(super) file: &'a DriveFile,
    pub(super) handbook: &'a Handbook,
    pub(super) flaws: Vec<Flaw>,
    pub(super) assumed: Vec<Assumed>,
    /// Values beyond what is usual.
    pub(super) unusual: Vec<Unusual>,
    /// What is being resolved, and so what an assumed value concerns.
    pub(super) concern: Concern,
    /// Whether the pipes of the file are looked at as proposed ones are.
    pub(super) is_sketch: bool,
    /// Whether a pipe is proposed: of one that the file lists most of what only its maker can tell is a fault where it is left
    /// out.
    pub(super) proposing: bool,
    /// What only its maker can tell of the pipe at the door.
    pub(super) not_given: Vec<NotGiven>,
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
        if !self.is_senseless(path) {
            let mut complaint = complaint.into();
            if self.system == UnitSystem::Us {
                complaint.advice = complaint.advice.map(|advice| in_us_units(&advice, path));
            }
            self.flaws.push(Flaw { path: path.to_owned(), at, complaint, senseless: false });
        }
    }

    /// Of a value that makes no sense itself: nothing else is told of it.
    pub(super) fn senseless(&mut self, at: Handle, path: &str, complaint: Complaint) {
        self.flaws.push(Flaw { path: path.to_owned(), at, complaint, senseless: true });
    }

    /// Whether a value of this path, or of one below it, makes no sense.
    pub(super) fn is_senseless(&self, path: &str) -> bool {
        let is_of =
            |told: &Flaw| told.path.strip_prefix(path).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'));
        self.flaws.iter().any(|told| told.senseless && is_of(told))
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
        // What stands behind the first dot, sought from the end.
        let is_of = |field: &str| {
            let stretch = field.strip_suffix(what).and_then(|stretch| stretch.strip_suffix('.'));
            stretch.is_some_and(|stretch| !stretch.contains('.'))
        };
        let alike = |known: &&mut Assumed| is_of(&known.field) && known.value == value && known.origin == origin;
        match self.assumed.iter_mut().find(alike) {
            Some(known) => known.alike += 1,
            None => self.assume(format!("{stretch}.{what}"), value, origin),
        }
    }

    pub(super) fn assume_one<Q: Measure>(&mut self, field: impl Into<String>, value: Cited<Q>, role: Role) {
        self.assume(field, AssumedValue::One(Shown::of(value.value, role)), value.origin);
    }
}

/// Table row missing: said with what was looked for.
pub(super) fn no_row(table: &'static str, wanted: impl Into<String>) -> HandbookError {
    HandbookError::NoRow { table, wanted: wanted.into() }
}

impl Resolver<'_> {
    /// The pipe at the door stays open for want of this.
    pub(super) fn ask_the_maker(&mut self, missing: NotGiven) {
        if !self.not_given.contains(&missing) {
            self.not_given.push(missing);
        }
    }
}
