//! How far the work gets in a shift: the file's own rates, or a table's where it has one for the work.

use super::shifts::{both_pits, work_shifts};
use super::{Resolved, Resolver};
use crate::drive::{ClayPace, FusionPace, Pace, Pit, Rate, SizedRate, Stem, Stretch};
use crate::drive_file::PaceFile;
use crate::drive_file::fields::Key;
use crate::handbook::{GroundClass, HandbookError, Spoil};
use crate::quantity::{Length, Measure, Time};
use crate::source::Cited;
use crate::yaml::{Field, MayBe};

impl Resolver<'_> {
    pub(super) fn pace(
        &mut self,
        stretches: &[Stretch],
        stem: &Stem,
        pits: [&Pit; 2],
        shift: Cited<Time>,
    ) -> Resolved<Pace> {
        let given = self.file.pace.as_ref();
        let mut own = |key: Key<PaceFile, Option<Field<Length>>>| {
            let rate = given.and_then(|pace| self.take("pace", pace, key))?;
            Some(Rate { low: rate.value, high: rate.value, origin: rate.origin })
        };
        let [pilot, casing, reaming, jacking, pullback] =
            [PaceFile::pilot, PaceFile::casing, PaceFile::reaming, PaceFile::jacking, PaceFile::pullback].map(&mut own);
        let spoil = self.file.spoil.given().unwrap_or(Spoil::Auger);
        let all = |holds: fn(GroundClass) -> bool| {
            stretches.iter().all(|stretch| holds(stretch.class) && stretch.mixed_with.is_none_or(holds))
        };
        let clay = all(GroundClass::is_clay);
        // No rate of the table is for rock.
        let soil = all(|class| !matches!(class, GroundClass::WeakRock | GroundClass::HardRock | GroundClass::Unknown));
        let guided = stem.is_there() && spoil == Spoil::Auger && clay;
        let cleared = match spoil {
            Spoil::Slurry => "jacking_machine",
            Spoil::OpenEdge => "jacking_hand",
            Spoil::Auger | Spoil::Vacuum => "jacking_cleared",
        };
        let in_clay = |given: Option<Rate>, key| (guided && given.is_none()).then(|| self.sized_rate(key)).transpose();
        let clay =
            ClayPace { pilot: in_clay(pilot, "pilot_only_clay")?, jacking: in_clay(jacking, "pilot_tube_clay")? };
        let pilot_in_pipe = guided && jacking.is_none() && pilot.is_none();
        let behind_casing = jacking;
        Ok(Pace {
            pilot: self.or_tabled(pilot, soil.then_some("pilot_guided"))?,
            casing: self.or_tabled(casing, soil.then_some("casing_cleared"))?,
            reaming: self.or_tabled(reaming, soil.then_some("reaming_pass"))?,
            jacking: self.or_tabled(jacking, soil.then_some(cleared))?,
            behind_casing: self.or_tabled(behind_casing, Some("pipe_behind_casing"))?,
            pullback,
            pilot_in_pipe,
            clay,
            planned: self.handbook.planning_factor()?.span("weekly")?,
            shift_length: shift,
            shifts: {
                let both = both_pits(self, pits)?;
                work_shifts(self, given, both)?
            },
            fusion: self.fusion()?,
            stick: self.handbook.length("string.stick")?,
            programme: given.and_then(|pace| self.take("pace", pace, PaceFile::programme)),
            prices: self.prices(),
        })
    }

    fn or_tabled(&self, given: Option<Rate>, key: Option<&'static str>) -> Resolved<Option<Rate>> {
        match (given, key) {
            (Some(rate), _) => Ok(Some(rate)),
            (None, Some(key)) => self.rate(key).map(Some),
            (None, None) => Ok(None),
        }
    }

    fn rate(&self, key: &'static str) -> Resolved<Rate> {
        let table = self.handbook.production_rate()?;
        let (low, high) = (table.cell(key, |row| &row.low)?, table.cell(key, |row| &row.high)?);
        let (low, high, origin) = (low.value, high.value, high.origin);
        if !(low.si() > 0.0 && low <= high) {
            return Err(HandbookError::Unfit {
                table: "production_rate",
                row: key.to_owned(),
                why: "low and high do not rise",
            });
        }
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
        let mut all = Vec::new();
        for row in self.handbook.fusion_rate()?.iter() {
            let (origin, key, row) = (row.origin, &row.value.key, &row.value.value);
            let (low, high) = (row.joints_low.value, row.joints_high.value);
            if !(low.si() > 0.0 && low <= high) {
                let why = "low and high do not rise";
                return Err(HandbookError::Unfit { table: "fusion_rate", row: key.clone(), why });
            }
            all.push(FusionPace { size_to: row.size_to.value, low, high, origin });
        }
        all.sort_by(|one, other| one.size_to.si().total_cmp(&other.size_to.si()));
        Ok(all)
    }
}
