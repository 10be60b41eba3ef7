//! Values of the file by the keys of their fields, cited by their paths.

use super::{Resolved, Resolver};
use crate::drive::AssumedValue;
use crate::drive_file::band::BandFile;
use crate::drive_file::fields::{Given, Key};
use crate::quantity::{Band, Measure, Ratio, Role};
use crate::source::{Cited, Origin};
use crate::yaml::{Complaint, Field};

/// Path of a field of the block at a path of the file.
fn place<B, V>(path: &str, key: Key<B, V>) -> String {
    let key = key.spec.key;
    if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") }
}

impl Resolver<'_> {
    /// The number of a field of the block at this path of the file, cited.
    pub(super) fn take<B, Q: Measure, V: Given<Q>>(
        &mut self,
        path: &str,
        block: &B,
        key: Key<B, V>,
    ) -> V::Of<Cited<Q>> {
        (key.get)(block).made(|field| Cited::given(field.value, key.spec.name(path)))
    }

    /// The number of a field, or the row's, which is then listed as assumed.
    pub(super) fn or_row<B, Q: Measure>(
        &mut self,
        path: &str,
        block: Option<&B>,
        key: Key<B, Option<Field<Q>>>,
        row: Cited<Q>,
    ) -> Cited<Q> {
        match block.and_then(|block| self.take(path, block, key)) {
            Some(given) => given,
            None => {
                if let Some(number) = key.spec.number {
                    self.assume_one(place(path, key), row, number.role);
                }
                row
            }
        }
    }

    /// A band whose levels rise.
    pub(super) fn band<B, Q: Measure + PartialOrd>(
        &mut self,
        path: &str,
        block: &B,
        key: Key<B, Option<BandFile<Q>>>,
    ) -> Option<Band<Q>> {
        let BandFile { low, likely, high } = (key.get)(block).as_ref()?;
        let path = place(path, key);
        let band = Band { low: low.value, likely: likely.value, high: high.value };
        let rises = band.low <= band.likely && band.likely <= band.high;
        if !rises && !self.is_senseless(&path) {
            self.flaw(likely, &path, "expected low, likely and high in rising order");
        }
        Some(band)
    }

    /// Two numbers of which neither means anything without the other, each with what is missing beside it where it stands
    /// alone, and what to add.
    pub(super) fn both<B, P: Measure, Q: Measure>(
        &mut self,
        path: &str,
        block: &B,
        (one, beside_one, add_other): (Key<B, Option<Field<P>>>, &str, &str),
        (other, beside_other, add_one): (Key<B, Option<Field<Q>>>, &str, &str),
    ) -> Option<(P, Q)> {
        match ((one.get)(block), (other.get)(block)) {
            (Some(one), Some(other)) => Some((one.value, other.value)),
            (Some(_), None) => {
                self.wrong(path, block, one, (beside_one, add_other));
                None
            }
            (None, Some(_)) => {
                self.wrong(path, block, other, (beside_other, add_one));
                None
            }
            (None, None) => None,
        }
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

    /// Says what is wrong with a field, where it is given.
    pub(super) fn wrong<B, Q, V: Given<Q>>(
        &mut self,
        path: &str,
        block: &B,
        key: Key<B, V>,
        complaint: impl Into<Complaint>,
    ) {
        (key.get)(block).made(|field| self.flaw(field, &place(path, key), complaint));
    }
}
