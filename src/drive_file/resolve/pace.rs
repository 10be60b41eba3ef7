//! How far the work gets in a shift, and the shifts beside the bore: the file's own, or a table's; prices are never assumed.

use super::{Resolved, Resolver};
use crate::drive::{ClayPace, FusionPace, Pace, Pit, Priced, Prices, Rate, SizedRate, Stretch, WorkShifts};
use crate::drive_file::fields::Key;
use crate::drive_file::{CandidateFile, PaceFile, VolumePriceFile};
use crate::handbook::{FusionRateRow, GroundClass, Row, Spoil, TechniqueRow};
use crate::quantity::{Band, Length, Measure, Ratio, Time};
use crate::source::Cited;
use crate::yaml::{Field, MayBe};

impl Resolver<'_> {
    pub(super) fn pace(
        &mut self,
        stretches: &[Stretch],
        technique: &TechniqueRow,
        pits: [&Pit; 2],
        shift: Cited<Time>,
    ) -> Resolved<Pace> {
        let own = |key: Key<PaceFile, Option<Field<Length>>>| {
            self.cited(key).map(|rate| Rate { low: rate.value, high: rate.value, origin: rate.origin })
        };
        let [pilot, casing, reaming, jacking, pullback] =
            [PaceFile::pilot, PaceFile::casing, PaceFile::reaming, PaceFile::jacking, PaceFile::pullback].map(own);
        let all = |holds: fn(GroundClass) -> bool| {
            stretches.iter().all(|stretch| holds(stretch.class) && stretch.mixed_with.is_none_or(holds))
        };
        let clay = all(GroundClass::is_clay);
        // No rate of the table is for rock.
        let soil = all(|class| !matches!(class, GroundClass::WeakRock | GroundClass::HardRock | GroundClass::Unknown));
        let guided = technique.tip.is_some() && technique.spoil.value == Spoil::Auger && clay;
        let in_clay = |given: Option<Rate>, key| (guided && given.is_none()).then(|| self.sized_rate(key)).transpose();
        let clay =
            ClayPace { pilot: in_clay(pilot, "pilot_only_clay")?, jacking: in_clay(jacking, "pilot_tube_clay")? };
        let pilot_in_pipe = guided && jacking.is_none() && pilot.is_none();
        let behind_casing = jacking;
        Ok(Pace {
            pilot: self.or_tabled(pilot, soil.then_some("pilot_guided"))?,
            casing: self.or_tabled(casing, soil.then_some("casing_cleared"))?,
            reaming: self.or_tabled(reaming, soil.then_some("reaming_pass"))?,
            jacking: self.or_tabled(jacking, soil.then_some(&technique.pace.value.0))?,
            behind_casing: self.or_tabled(behind_casing, Some("pipe_behind_casing"))?,
            pullback,
            pilot_in_pipe,
            clay,
            planned: self.handbook.planning_factor()?.span("weekly")?,
            shift_length: shift,
            shifts: self.work_shifts(pits)?,
            fusion: self.fusion()?,
            stick: self.handbook.length("string.stick")?,
            programme: self.cited(PaceFile::programme),
            prices: self.prices(),
        })
    }

    fn or_tabled(&self, given: Option<Rate>, key: Option<&str>) -> Resolved<Option<Rate>> {
        match (given, key) {
            (Some(rate), _) => Ok(Some(rate)),
            (None, Some(key)) => self.rate(key).map(Some),
            (None, None) => Ok(None),
        }
    }

    fn rate(&self, key: &str) -> Resolved<Rate> {
        let table = self.handbook.production_rate()?;
        let (low, high) = (table.cell(key, |row| &row.low)?, table.cell(key, |row| &row.high)?);
        let (low, high, origin) = (low.value, high.value, high.origin);
        table.holds(low.si() > 0.0 && low <= high, key, "low and high do not rise")?;
        Ok(Rate { low, high, origin })
    }

    /// A rate with the sizes of pipe that it is for: all of them where the row names none.
    fn sized_rate(&self, key: &'static str) -> Resolved<SizedRate> {
        let row = self.handbook.production_rate()?.row(key)?.value;
        let from = row.size_from.given().unwrap_or(Length::default());
        let to = row.size_to.given().unwrap_or(Length::from_si(f64::INFINITY));
        Ok(SizedRate { sizes: (from, to), rate: self.rate(key)? })
    }

    /// Fused joints a day, taken as a shift, by rising size.
    fn fusion(&self) -> Resolved<Vec<FusionPace>> {
        let table = self.handbook.fusion_rate()?;
        let pace = |row: Cited<&Row<FusionRateRow>>| {
            let Row { key, value, .. } = row.value;
            let (low, high) = (value.joints_low.value, value.joints_high.value);
            table.holds(low.si() > 0.0 && low <= high, key, "low and high do not rise")?;
            Ok(FusionPace { size_to: value.size_to.value, low, high, origin: row.origin })
        };
        let mut all: Vec<_> = table.iter().map(pace).collect::<Resolved<_>>()?;
        all.sort_by(|one, other| one.size_to.si().total_cmp(&other.size_to.si()));
        Ok(all)
    }

    /// Shifts for both pits, by their depths, and for the rest of the work.
    fn work_shifts(&self, pits: [&Pit; 2]) -> Resolved<WorkShifts> {
        let table = self.handbook.stage_shifts()?;
        let mut sum: Option<Cited<Band<Ratio>>> = None;
        for (pit, key) in pits.into_iter().zip(["launch_pit", "reception_pit"]) {
            let per = table.row(key)?.value.per_length.given();
            let per = per.filter(|per| per.si() > 0.0).ok_or_else(|| table.lacks(key))?;
            let shifts = table.levels(key)?.map(|band| band.map(|shifts| shifts * (pit.floor() / per)));
            sum = Some(sum.map_or(shifts, |sum| sum.map(|sum| sum.with(shifts.value, |a, b| a + b))));
        }
        let rows = WorkShifts::read(self.handbook, sum.ok_or_else(|| table.lacks("launch_pit"))?)?;
        let own =
            |key: Key<PaceFile, Option<Field<Ratio>>>, row| self.cited(key).map_or(row, |given| given.map(Band::same));
        Ok(WorkShifts {
            pits: own(PaceFile::pits, rows.pits),
            set_up: own(PaceFile::set_up, rows.set_up),
            grouting: own(PaceFile::grouting, rows.grouting),
            recovery: own(PaceFile::recovery, rows.recovery),
            ..rows
        })
    }

    fn prices(&self) -> Prices {
        let by_volume = |key: Key<PaceFile, Option<VolumePriceFile>>| {
            let price = (key.get)(self.file.pace.as_ref()?).as_ref()?;
            Some(Priced { price: Cited::given(price.price.value, key.spec.path()), per: price.per.value })
        };
        Prices {
            shift: self.cited(PaceFile::shift_price),
            setup: self.cited(PaceFile::setup_price),
            pit: self.cited(PaceFile::pit_price),
            spoil: by_volume(PaceFile::spoil_price),
            grout: by_volume(PaceFile::grout_price),
            pipes: self.file.candidates.iter().any(|candidate| candidate.price.is_some()),
            budget: self.cited(PaceFile::budget),
        }
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
