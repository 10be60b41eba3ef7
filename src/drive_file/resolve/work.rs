//! When people work, and what holds the jacks.

use super::{Resolved, Resolver};
use crate::drive::{Rig, Work};
use crate::drive_file::{IfStalled, PaceFile, RigFile, WorkFile};
use crate::quantity::{Measure, Ratio};
use crate::source::{Cited, Equation, Origin};

/// Shifts of a day where the file gives none.
const ONE_SHIFT: Equation = Equation::judged(
    "shifts of a day",
    "1",
    "usual work by day; whoever works through the night says so",
    "work by shifts",
);
/// Hours of a day, in s.
const DAY: f64 = 86_400.0;

impl Resolver<'_> {
    /// When people work. A day of shifts without a gap goes round the clock.
    pub(super) fn work(&mut self) -> Resolved<Work> {
        let (work, pace) = (self.file.work.as_ref(), self.file.pace.as_ref());
        let own = work.and_then(|work| self.take("work", work, WorkFile::shift_length));
        let row = self.handbook.duration("time.shift")?;
        let shift = match (own, pace.filter(|pace| pace.shift_length.is_some())) {
            (Some(own), None) => own,
            (own, pace) => {
                let of_pace = self.or_row("pace", pace, PaceFile::shift_length, row);
                if let Some(work) = work.filter(|_| own.is_some_and(|own| own.value != of_pace.value)) {
                    let why = ("is not that of `pace.shift_length`", "give it once");
                    self.wrong("work", work, WorkFile::shift_length, why);
                }
                own.unwrap_or(of_pace)
            }
        };
        let told = work.and_then(|work| self.take("work", work, WorkFile::shifts_a_day));
        let shifts_a_day = told.unwrap_or(Cited::new(Ratio::from_si(1.0), Origin::Law(&ONE_SHIFT)));
        let worked = shift.value * shifts_a_day.value;
        if let Some(work) = work.filter(|_| worked.si() > DAY) {
            let why = ("makes more than a day of its shifts", "see shift_length");
            self.wrong("work", work, WorkFile::shifts_a_day, why);
        }
        let says = work.and_then(|work| work.round_the_clock.as_ref()).is_some_and(|field| field.value);
        Ok(Work { shift, shifts_a_day, round_the_clock: says || worked.si() >= DAY })
    }

    /// What the jacks are held to, against what they can do.
    pub(super) fn check_held(&mut self, file: &RigFile, rig: &Rig) {
        if rig.held_to.is_some_and(|held| held.value > rig.thrust.value) {
            self.wrong("rig", file, RigFile::held_to, ("is more than the rig thrusts", "see rig.thrust"));
        }
    }

    /// Stations that are to free a drive must be there.
    pub(super) fn check_stalled(&mut self) {
        let stations = self.file.if_stalled.as_ref().filter(|field| field.value == IfStalled::Stations);
        if let Some(field) = stations.filter(|_| self.file.rig.station_thrust.is_none()) {
            let why = ("needs the thrust of a station", "add `rig: { station_thrust: ... }`");
            self.flaw(field, "if_stalled", why);
        }
    }
}
