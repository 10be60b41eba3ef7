//! Shifts of the work beside the bore, and prices: the file's, or wide bands of our own; prices are never assumed.

use super::{Resolved, Resolver, no_row};
use crate::drive::{Pit, Priced, Prices, WorkShifts};
use crate::drive_file::fields::Key;
use crate::drive_file::{CandidateFile, PaceFile, VolumePriceFile};
use crate::handbook::rising;
use crate::quantity::{Band, Length, Measure, Ratio, Volume};
use crate::source::Cited;
use crate::yaml::{Field, MayBe};

/// A row's band, and the length it is for each time.
fn band(resolver: &Resolver<'_>, key: &'static str) -> Resolved<(Cited<Band<Ratio>>, Option<Length>)> {
    let row = resolver.handbook.stage_shifts()?.row(key)?;
    let (low, likely, high) = (row.value.low.value, row.value.likely.value, row.value.high.value);
    let band = rising("stage_shifts", key, Band { low, likely, high })?;
    Ok((Cited::new(band, row.origin), row.value.per_length.given()))
}

/// Shifts for both pits, by their depths.
pub(super) fn both_pits(resolver: &Resolver<'_>, pits: [&Pit; 2]) -> Resolved<Cited<Band<Ratio>>> {
    let mut sum: Option<Cited<Band<Ratio>>> = None;
    for (pit, key) in pits.into_iter().zip(["launch_pit", "reception_pit"]) {
        let (shifts, per) = band(resolver, key)?;
        let per = per.filter(|per| per.si() > 0.0).ok_or_else(|| no_row("stage_shifts", key))?;
        let shifts = shifts.map(|band| band.map(|shifts| shifts * (pit.floor() / per)));
        sum = Some(sum.map_or(shifts, |sum| sum.map(|sum| sum.with(shifts.value, |a, b| a + b))));
    }
    sum.ok_or_else(|| no_row("stage_shifts", "launch_pit"))
}

pub(super) fn work_shifts(
    resolver: &mut Resolver<'_>,
    given: Option<&PaceFile>,
    both_pits: Cited<Band<Ratio>>,
) -> Resolved<WorkShifts> {
    let rows = |resolver: &Resolver<'_>, key| band(resolver, key).map(|row| row.0);
    let (set_up, grouting) = (rows(resolver, "set_up")?, rows(resolver, "grouting")?);
    let (ramp, weld) = (rows(resolver, "ramp")?, rows(resolver, "weld")?);
    let (restrained_joint, recovery) = (rows(resolver, "restrained_joint")?, rows(resolver, "recovery")?);
    let mut own = |key: Key<PaceFile, Option<Field<Ratio>>>, row| {
        let given = given.and_then(|pace| resolver.take("pace", pace, key));
        given.map_or(row, |given| given.map(Band::same))
    };
    Ok(WorkShifts {
        pits: own(PaceFile::pits, both_pits),
        set_up: own(PaceFile::set_up, set_up),
        ramp,
        weld,
        restrained_joint,
        grouting: own(PaceFile::grouting, grouting),
        recovery: own(PaceFile::recovery, recovery),
    })
}

impl Resolver<'_> {
    pub(super) fn prices(&mut self) -> Prices {
        let pipes = self.file.candidates.iter().any(|candidate| candidate.price.is_some());
        let Some(pace) = self.file.pace.as_ref() else { return Prices { pipes, ..Prices::default() } };
        if pace.shift_price.is_none() {
            let why = ("means nothing without the price of a shift", "add `shift_price: 4000`");
            self.wrong("pace", pace, PaceFile::budget, why);
        }
        let mut own = |key: Key<PaceFile, Option<Field<Ratio>>>| self.take("pace", pace, key);
        let [shift, setup, pit, budget] =
            [PaceFile::shift_price, PaceFile::setup_price, PaceFile::pit_price, PaceFile::budget].map(&mut own);
        let spoil = self.by_volume(pace, PaceFile::spoil_price);
        let grout = self.by_volume(pace, PaceFile::grout_price);
        Prices { shift, setup, pit, spoil, grout, pipes, budget }
    }

    fn by_volume(&mut self, pace: &PaceFile, key: Key<PaceFile, Option<VolumePriceFile>>) -> Option<Priced<Volume>> {
        let path = key.spec.name("pace");
        (key.get)(pace)
            .as_ref()
            .map(|price| Priced { price: Cited::given(price.price.value, path), per: price.per.value })
    }

    /// Price of a listed pipe. A sum without one of the pipes would look cheap.
    pub(super) fn pipe_price(&mut self, index: usize, candidate: &CandidateFile) -> Option<Priced<Length>> {
        let path = format!("candidates[{index}].price");
        if candidate.price.is_none() && self.file.candidates.iter().any(|other| other.price.is_some()) {
            let why = ("has no price, and another pipe has one", "price every pipe of the list, or none");
            self.flaw(&candidate.size, &path, why);
        }
        candidate.price.as_ref().map(|price| Priced {
            price: Cited::given(price.price.value, CandidateFile::price.spec.name("candidates[]")),
            per: price.per.value,
        })
    }
}
