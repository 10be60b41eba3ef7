//! The jacks: gauge and stations; length of a pipe that is pushed.

use super::listed::Listed;
use super::{Resolved, Resolver};
use crate::drive::{Gauge, StationRules};
use crate::drive_file::{CandidateFile, RigFile};
use crate::handbook::HandbookError;
use crate::quantity::{Length, Ratio};
use crate::yaml::MayBe;

/// Most pipes in one drive.
const MOST_SEGMENTS: f64 = 2_000.0;

impl Resolver<'_> {
    pub(super) fn gauge(&mut self, rig: &RigFile) -> Resolved<Option<Gauge>> {
        let Some(cylinder_area) = rig.cylinder_area.given() else {
            let why = ("says nothing without the piston area of the jacks", "add `cylinder_area: 50000 mm2`");
            self.wrong("rig", rig, RigFile::efficiency, why);
            return Ok(None);
        };
        let row = self.handbook.jacking_station()?.factor("efficiency", |row| &row.high)?;
        let efficiency = self.or_row("rig", Some(rig), RigFile::efficiency, row).value;
        Ok(Some(Gauge { cylinder_area, efficiency }))
    }

    pub(super) fn stations(&mut self, rig: &RigFile) -> Resolved<StationRules> {
        let table = self.handbook.jacking_station()?;
        let share = |key| {
            let row = table.factor(key, |row| &row.value)?;
            let whole = Ratio::from(1.0);
            let unfit = HandbookError::Unfit { table: table.id, row: String::from(key), why: "is more than the whole" };
            if row.value <= whole { Ok(row) } else { Err(unfit) }
        };
        Ok(StationRules {
            first: share("first_station")?,
            next: share("next_stations")?,
            start: share("start")?,
            main: share("main_jacks")?,
            entry: self.handbook.length("stations.person_entry")?,
            thrust: rig.station_thrust.given(),
        })
    }

    /// Length of one pipe that is pushed, for the shove plan.
    pub(super) fn segment(&mut self, of: &Listed<'_>, is_jacked: bool) -> Option<Length> {
        let length = self.own(of, CandidateFile::pipe_length).filter(|_| is_jacked)?.value;
        if self.file.length.value / length > Ratio::from(MOST_SEGMENTS) {
            let message = format!("makes more than {MOST_SEGMENTS} pipes of the drive");
            self.fault(of, CandidateFile::pipe_length, message);
        }
        Some(length)
    }
}
