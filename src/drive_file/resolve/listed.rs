//! A pipe that is being resolved, and its fields by their keys.

use super::Resolver;
use super::label::as_written;
use crate::drive::Pull;
use crate::drive_file::CandidateFile;
use crate::drive_file::fields::{Given, Key, Keys};
use crate::handbook::TechniqueRow;
use crate::quantity::shown::plain;
use crate::quantity::{Length, Measure, Ratio};
use crate::source::Cited;
use crate::yaml::{Complaint, Field, ToScalar};

/// A field of a pipe that may be left out.
pub(super) type Optional<Q> = Key<CandidateFile, Option<Field<Q>>>;

/// A pipe as it is listed in the file or proposed.
#[derive(Clone, Copy)]
pub(super) struct Listed<'a> {
    pub(super) path: &'a str,
    pub(super) pipe: &'a CandidateFile,
    /// How it is pulled, where it is.
    pub(super) pull: Option<&'a Pull>,
    /// Nominal size.
    pub(super) size: Length,
    /// What goes before it, where it is pushed.
    pub(super) technique: &'a TechniqueRow,
}

impl Listed<'_> {
    /// Path of a field of it.
    pub(super) fn at(&self, key: &str) -> String {
        format!("{}.{key}", self.path)
    }

    /// Whether any of these is given.
    pub(super) fn gives(&self, keys: Keys) -> bool {
        let mut any = false;
        self.pipe.each(&mut |field, _, value| any |= keys.has(field) && !value.is_absent());
        any
    }

    /// Whether the string is joined in the pit, straight.
    pub(super) fn is_joined_in_pit(pull: &Pull) -> bool {
        pull.works.laydown.is_some_and(|laydown| laydown.in_pit)
    }
}

impl Resolver<'_> {
    /// The number of a field within its bounds.
    pub(super) fn own<Q: Measure, V: Given<Q>>(
        &mut self,
        of: &Listed<'_>,
        key: Key<CandidateFile, V>,
    ) -> V::Of<Cited<Q>> {
        key.cited(of.path, of.pipe)
    }

    /// The user's number, else the row's, which is then listed as assumed.
    pub(super) fn own_or<Q: Measure>(&mut self, of: &Listed<'_>, key: Optional<Q>, row: Cited<Q>) -> Cited<Q> {
        self.or_row_at(of.path, of.pipe, key, row)
    }

    /// The same for a ratio of a range of its own.
    pub(super) fn ratio_or(
        &mut self,
        of: &Listed<'_>,
        key: Optional<Ratio>,
        (least, most): (f64, f64),
        row: Cited<Ratio>,
    ) -> Cited<Ratio> {
        let Some(field) = (key.get)(of.pipe) else { return self.own_or(of, key, row) };
        if !(field.value.si() >= least && field.value.si() <= most) {
            let read = plain(field.value.si());
            self.fault(of, key, format!("expected a number from {least} to {most}, got {read}"));
        }
        Cited::given(field.value, key.spec.name(of.path))
    }

    /// What is wrong with a field that is given.
    pub(super) fn fault<T: ToScalar>(&mut self, of: &Listed<'_>, key: Optional<T>, complaint: impl Into<Complaint>) {
        self.wrong_at(of.path, of.pipe, key, complaint);
    }

    /// What is missing of a pipe, told at another field of it.
    pub(super) fn lacks<T>(&mut self, at: &Field<T>, path: &str, what: impl Into<String>, advice: &str) {
        self.flaw(at, path, (what.into(), advice));
    }

    /// The wall of the file, which leaves a bore.
    pub(super) fn given_wall(&mut self, of: &Listed<'_>, outside_diameter: Length) -> Option<Cited<Length>> {
        let wall = self.own(of, CandidateFile::wall)?;
        if 2.0 * wall.value >= outside_diameter {
            self.fault(of, CandidateFile::wall, "leaves no bore inside the pipe");
        }
        Some(wall)
    }

    /// A size that no table has, with those that there are.
    pub(super) fn no_such_size(&mut self, of: &Listed<'_>, what: [&str; 2], advice: String) {
        let [before, after] = what;
        let message = format!("{before} {} {after}", as_written(&of.pipe.size));
        self.lacks(&of.pipe.size, &of.at("size"), message, &advice);
    }
}
