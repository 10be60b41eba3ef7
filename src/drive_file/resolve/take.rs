//! Values of the file by the keys of their fields, cited by their paths.

use super::{Resolved, Resolver};
use crate::drive::AssumedValue;
use crate::drive_file::Sole;
use crate::drive_file::band::BandFile;
use crate::drive_file::fields::{Key, Value};
use crate::quantity::{Band, Measure, Ratio, Role};
use crate::source::{Cited, Origin};
use crate::yaml::{Complaint, Field};

/// Path of a field of the block at a path of the file.
fn place<B, V>(path: &str, key: Key<B, V>) -> String {
    let key = key.spec.key;
    if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") }
}

impl<'a> Resolver<'a> {
    /// A field of a block that stands once, where both are written.
    pub(super) fn field<B: Sole + 'a, T>(&self, key: Key<B, Option<Field<T>>>) -> Option<&'a Field<T>> {
        (key.get)(B::in_file(self.file)?).as_ref()
    }

    /// Its value.
    pub(super) fn given<B: Sole + 'a, T: Copy>(&self, key: Key<B, Option<Field<T>>>) -> Option<T> {
        self.field(key).map(|field| field.value)
    }

    /// Its number, cited.
    pub(super) fn cited<B: Sole, Q: Measure>(&self, key: Key<B, Option<Field<Q>>>) -> Option<Cited<Q>> {
        key.cited("", B::in_file(self.file)?)
    }

    /// The same, or the row's, which is then listed as assumed.
    pub(super) fn or_row<B: Sole, Q: Measure>(&mut self, key: Key<B, Option<Field<Q>>>, row: Cited<Q>) -> Cited<Q> {
        self.cited(key).unwrap_or_else(|| self.row_for(key.spec.path().0.to_owned(), key, row))
    }

    /// The same of a block of a list.
    pub(super) fn or_row_at<B, Q: Measure>(
        &mut self,
        path: &str,
        block: &B,
        key: Key<B, Option<Field<Q>>>,
        row: Cited<Q>,
    ) -> Cited<Q> {
        key.cited(path, block).unwrap_or_else(|| self.row_for(place(path, key), key, row))
    }

    fn row_for<B, V, Q: Measure>(&mut self, place: String, key: Key<B, V>, row: Cited<Q>) -> Cited<Q> {
        if let Some(number) = key.spec.number {
            self.assume_one(place, row, number.role);
        }
        row
    }

    /// A band whose levels rise, of a block that stands once.
    pub(super) fn band<B: Sole, Q: Measure + PartialOrd>(
        &mut self,
        key: Key<B, Option<BandFile<Q>>>,
    ) -> Option<Band<Q>> {
        self.band_at(key.spec.path().0, (key.get)(B::in_file(self.file)?).as_ref()?)
    }

    /// The same of the band at a path.
    pub(super) fn band_at<Q: Measure + PartialOrd>(&mut self, path: &str, file: &BandFile<Q>) -> Option<Band<Q>> {
        let BandFile { low, likely, high } = file;
        let band = Band { low: low.value, likely: likely.value, high: high.value };
        let rises = band.low <= band.likely && band.likely <= band.high;
        if !rises && !self.is_senseless(path) {
            self.flaw(likely, path, "expected low, likely and high in rising order");
        }
        Some(band)
    }

    /// A value of the handbook that is always taken: listed as assumed.
    pub(super) fn taken<Q: Measure>(
        &mut self,
        what: impl Into<String>,
        row: Resolved<Cited<Q>>,
        role: Role,
    ) -> Resolved<Cited<Q>> {
        let row = row?;
        self.assume_one(what, row, role);
        Ok(row)
    }

    /// The ratio of a row of the handbook that is always taken.
    pub(super) fn taken_ratio(&mut self, what: &str, row: &str) -> Resolved<Cited<Ratio>> {
        self.taken(what, self.handbook.ratio(row), Role::Ratio)
    }

    /// Lists a band as assumed.
    pub(super) fn assume_band<Q: Measure>(
        &mut self,
        field: impl Into<String>,
        band: Band<Q>,
        role: Role,
        origin: Origin,
    ) {
        self.assume(field, AssumedValue::band(band, role), origin);
    }

    /// Lists words as assumed.
    pub(super) fn assume_word(&mut self, field: impl Into<String>, word: &str, origin: Origin) {
        self.assume(field, AssumedValue::Word(word.to_owned()), origin);
    }

    /// Says what is wrong with a field of a block that stands once, where it is given.
    pub(super) fn wrong<B: Sole, V: Value>(&mut self, key: Key<B, V>, complaint: impl Into<Complaint>) {
        if let Some((at, rest)) = B::in_file(self.file).and_then(|block| (key.get)(block).place()) {
            self.flaw_at(at, &format!("{}{rest}", key.spec.path().0), complaint);
        }
    }

    /// The same of the block at a path.
    pub(super) fn wrong_at<B, V: Value>(
        &mut self,
        path: &str,
        block: &B,
        key: Key<B, V>,
        complaint: impl Into<Complaint>,
    ) {
        if let Some((at, rest)) = (key.get)(block).place() {
            self.flaw_at(at, &format!("{}{rest}", place(path, key)), complaint);
        }
    }
}
