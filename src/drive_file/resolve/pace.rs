//! How far the work gets in a shift: the file's own rates, or a table's where it has one for the work.

use super::site::span;
use super::{Resolver, no_row};
use crate::drive::{Pace, Rate, Stem, Stretch};
use crate::drive_file::DriveFile;
use crate::handbook::{GroundClass, HandbookError, Spoil};
use crate::quantity::{Length, Measure, Role};
use crate::source::{FieldName, Origin};
use crate::yaml::Field;

impl Resolver<'_> {
    pub(super) fn pace(&mut self, file: &DriveFile, stretches: &[Stretch], stem: &Stem) -> Result<Pace, HandbookError> {
        let given = file.pace.as_ref();
        let mut own = |field: Option<&Field<Length>>, name: &'static FieldName| {
            field.map(|field| {
                let rate = self.positive(field, name.0, Role::Distance);
                Rate { low: rate, high: rate, origin: Origin::File(name) }
            })
        };
        let pilot = own(given.and_then(|pace| pace.pilot.as_ref()), &FieldName("pace.pilot"));
        let casing = own(given.and_then(|pace| pace.casing.as_ref()), &FieldName("pace.casing"));
        let reaming = own(given.and_then(|pace| pace.reaming.as_ref()), &FieldName("pace.reaming"));
        let jacking = own(given.and_then(|pace| pace.jacking.as_ref()), &FieldName("pace.jacking"));
        let pullback = own(given.and_then(|pace| pace.pullback.as_ref()), &FieldName("pace.pullback"));
        let spoil = file.spoil.as_ref().map_or(Spoil::Auger, |field| field.value);
        let is_clay =
            |class| matches!(class, GroundClass::SoftClay | GroundClass::FirmToVeryStiffClay | GroundClass::HardClay);
        let clay = stretches.iter().all(|stretch| is_clay(stretch.class) && stretch.mixed_with.is_none_or(is_clay));
        let guided = stem.is_there() && spoil == Spoil::Auger && clay;
        let tabled = match spoil {
            Spoil::Auger if guided => Some("pilot_tube_clay"),
            Spoil::Slurry => Some("jacking_machine"),
            Spoil::OpenEdge => Some("jacking_hand"),
            Spoil::Auger | Spoil::Vacuum => None,
        };
        let pilot_rate = if pilot.is_none() && guided { Some(self.rate("pilot_only_clay")?) } else { pilot };
        let jacking_rate = match (jacking, tabled) {
            (Some(rate), _) => Some(rate),
            (None, Some(key)) => Some(self.rate(key)?),
            (None, None) => None,
        };
        Ok(Pace {
            pilot: pilot_rate,
            casing,
            reaming,
            jacking: jacking_rate,
            pullback,
            pilot_in_pipe: guided && jacking.is_none() && pilot.is_none(),
            planned: span(self.handbook.planning_factor()?, "weekly")?,
            shift_price: given
                .and_then(|pace| pace.shift_price.as_ref())
                .map(|field| self.rating(field, &FieldName("pace.shift_price"), Role::Count)),
            setup_price: given
                .and_then(|pace| pace.setup_price.as_ref())
                .map(|field| self.rating(field, &FieldName("pace.setup_price"), Role::Count)),
        })
    }

    fn rate(&self, key: &'static str) -> Result<Rate, HandbookError> {
        let missing = || no_row("production_rate", key);
        let row = self.handbook.production_rate()?.get(key).ok_or_else(missing)?;
        let low = row.value.low.as_ref().ok_or_else(missing)?.value;
        let high = row.value.high.as_ref().ok_or_else(missing)?.value;
        if !(low.si() > 0.0 && low <= high) {
            return Err(HandbookError::Unfit {
                table: "production_rate",
                row: key.to_owned(),
                why: "low and high do not rise",
            });
        }
        Ok(Rate { low, high, origin: row.origin })
    }
}
