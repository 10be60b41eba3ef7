//! Shifts of the work beside the bore, and prices: the file's, or wide bands of our own; prices are never assumed.

use super::{Resolver, no_row};
use crate::drive::{Pit, Priced, Prices, WorkShifts};
use crate::drive_file::{CandidateFile, DriveFile, PaceFile, VolumePriceFile};
use crate::handbook::{HandbookError, rising};
use crate::quantity::{Band, Length, Measure, Ratio, Role, Volume};
use crate::source::{Cited, FieldName};
use crate::yaml::{Complaint, Field};

/// A row's band, and the length it is for each time.
fn band(resolver: &Resolver<'_>, key: &'static str) -> Result<(Cited<Band<Ratio>>, Option<Length>), HandbookError> {
    let row = resolver.handbook.stage_shifts()?.get(key).ok_or_else(|| no_row("stage_shifts", key))?;
    let (low, likely, high) = (row.value.low.value, row.value.likely.value, row.value.high.value);
    let band = rising("stage_shifts", key, Band { low, likely, high })?;
    Ok((Cited::new(band, row.origin), row.value.per_length.as_ref().map(|per| per.value)))
}

/// Shifts for both pits, by their depths.
pub(super) fn both_pits(resolver: &Resolver<'_>, pits: [&Pit; 2]) -> Result<Cited<Band<Ratio>>, HandbookError> {
    let mut sum: Option<Cited<Band<Ratio>>> = None;
    for (pit, key) in pits.into_iter().zip(["launch_pit", "reception_pit"]) {
        let (shifts, per) = band(resolver, key)?;
        let per = per.filter(|per| per.si() > 0.0).ok_or_else(|| no_row("stage_shifts", key))?;
        let shifts = shifts.map(|band| band.map(|shifts| shifts * (pit.floor() / per)));
        sum = Some(sum.map_or(shifts, |sum| sum.map(|sum| sum.with(shifts.value, |a, b| a + b))));
    }
    sum.ok_or_else(|| no_row("stage_shifts", "launch_pit"))
}

pub(super) fn works(
    resolver: &mut Resolver<'_>,
    given: Option<&PaceFile>,
    both_pits: Cited<Band<Ratio>>,
) -> Result<WorkShifts, HandbookError> {
    let rows = |resolver: &Resolver<'_>, key| band(resolver, key).map(|row| row.0);
    let (set_up, grouting) = (rows(resolver, "set_up")?, rows(resolver, "grouting")?);
    let (ramp, weld) = (rows(resolver, "ramp")?, rows(resolver, "weld")?);
    let (restrained_joint, recovery) = (rows(resolver, "restrained_joint")?, rows(resolver, "recovery")?);
    let mut own = |field: Option<&Field<Ratio>>, name: &'static FieldName, row| match field {
        Some(field) => Cited::given(Band::same(resolver.not_negative(field, name.0, Role::Shifts)), name),
        None => row,
    };
    Ok(WorkShifts {
        pits: own(given.and_then(|pace| pace.pits.as_ref()), &FieldName("pace.pits"), both_pits),
        set_up: own(given.and_then(|pace| pace.set_up.as_ref()), &FieldName("pace.set_up"), set_up),
        ramp,
        weld,
        restrained_joint,
        grouting: own(given.and_then(|pace| pace.grouting.as_ref()), &FieldName("pace.grouting"), grouting),
        recovery: own(given.and_then(|pace| pace.recovery.as_ref()), &FieldName("pace.recovery"), recovery),
    })
}

impl Resolver<'_> {
    pub(super) fn prices(&mut self, file: &DriveFile) -> Prices {
        let pipes = file.candidates.iter().any(|candidate| candidate.price.is_some());
        let Some(pace) = file.pace.as_ref() else { return Prices { pipes, ..Prices::default() } };
        let mut own = |field: Option<&Field<Ratio>>, name| field.map(|field| self.rating(field, name, Role::Count));
        let shift = own(pace.shift_price.as_ref(), &FieldName("pace.shift_price"));
        let setup = own(pace.setup_price.as_ref(), &FieldName("pace.setup_price"));
        let pit = own(pace.pit_price.as_ref(), &FieldName("pace.pit_price"));
        let budget = own(pace.budget.as_ref(), &FieldName("pace.budget"));
        if let (Some(field), None) = (&pace.budget, &pace.shift_price) {
            let complaint = Complaint::from("means nothing without the price of a shift");
            self.flaw(field, "pace.budget", complaint.advise("add `shift_price: 4000`"));
        }
        let spoil = self.by_volume(pace.spoil_price.as_ref(), &FieldName("pace.spoil_price"), "pace.spoil_price");
        let grout = self.by_volume(pace.grout_price.as_ref(), &FieldName("pace.grout_price"), "pace.grout_price");
        Prices { shift, setup, pit, spoil, grout, pipes, budget }
    }

    fn by_volume(
        &mut self,
        price: Option<&VolumePriceFile>,
        name: &'static FieldName,
        path: &str,
    ) -> Option<Priced<Volume>> {
        price.map(|price| Priced {
            price: Cited::given(self.positive(&price.price, &format!("{path}.price"), Role::Count), name),
            per: self.positive(&price.per, &format!("{path}.per"), Role::Volume),
        })
    }

    /// Price of a listed pipe. A sum without one of the pipes would look cheap.
    pub(super) fn pipe_price(
        &mut self,
        index: usize,
        candidate: &CandidateFile,
        file: &DriveFile,
    ) -> Option<Priced<Length>> {
        let path = format!("candidates[{index}].price");
        if candidate.price.is_none() && file.candidates.iter().any(|other| other.price.is_some()) {
            let complaint = Complaint::from("has no price, and another pipe has one");
            self.flaw(&candidate.size, &path, complaint.advise("price every pipe of the list, or none"));
        }
        candidate.price.as_ref().map(|price| Priced {
            price: Cited::given(
                self.positive(&price.price, &format!("{path}.price"), Role::Count),
                &FieldName("candidates[].price"),
            ),
            per: self.positive(&price.per, &format!("{path}.per"), Role::Distance),
        })
    }
}
