//! When people work, planned stops, and how much harder things move after one.

use super::{Resolved, Resolver};
use crate::drive::{AssumedValue, Restart, RestartByGround, Rests, Work};
use crate::drive_file::{PaceFile, WorkFile};
use crate::handbook::Lubrication;
use crate::quantity::{Length, Measure, Ratio, Role};
use crate::source::{Cited, Equation, Origin};

/// What is taken where the file plans no stops and the work stands at night.
const NIGHTS: Equation = Equation::judged(
    "stops of more than a shift",
    "a night wherever a stage takes more than a day by its slow pace, the worst place counted, unless a stop of the file is there for each day",
    "work by shifts stands each night",
    "work that does not go on round the clock",
);

/// Most stops of one drive.
const MOST_STOPS: usize = 200;

impl Resolver<'_> {
    /// The planned stops, and what any stop does.
    pub(super) fn rests(&mut self, work: &Work, length: Length) -> Resolved<Rests> {
        let planned = self.stops(length);
        if work.shifts_between_nights().is_some() {
            self.assume_word("stops", "a night in each stage of more than a day", Origin::Law(&NIGHTS));
        }
        let stands = !planned.is_empty() || work.shifts_between_nights().is_some();
        let (clay, granular) = match self.file.lubricated() {
            Lubrication::None | Lubrication::NotMetered => ("clay", "granular"),
            Lubrication::Metered => ("clay_metered", "granular"),
            Lubrication::Logged => ("logged", "logged"),
        };
        let casing = RestartByGround {
            clay: self.restart("clay", false)?,
            granular: self.restart("granular", false)?,
            rock: self.restart("rock", false)?,
        };
        let pipe = RestartByGround {
            clay: self.restart(clay, stands)?,
            granular: self.restart(granular, stands)?,
            rock: casing.rock,
        };
        let slow = (self.handbook.length("rest.pilot")?, self.handbook.length("rest.pushed")?);
        let breakdown = self.handbook.ratio("rest.breakdown")?;
        Ok(Rests { planned, stem: self.restart("stem", stands)?, casing, pipe, breakdown, slow })
    }

    fn restart(&mut self, key: &str, tell: bool) -> Resolved<Restart> {
        let table = self.handbook.restart_factor()?;
        let (likely, high) = (table.cell(key, |row| &row.likely)?, table.cell(key, |row| &row.high)?);
        let rises = likely.value.si() >= 1.0 && likely.value <= high.value;
        table.holds(rises, key, "likely and high do not rise from 1")?;
        if tell {
            let value = AssumedValue::range(likely.value, high.value, Role::Ratio);
            let what =
                format!("restart after a stop, {}: factor on the likely and on the high friction", row_name(key));
            self.assume(what, value, likely.origin);
        }
        Ok(Restart { likely: likely.value, high: high.value })
    }

    /// Planned stops, in order.
    fn stops(&mut self, length: Length) -> Vec<Length> {
        if let Some(one_too_many) = self.file.stops.get(MOST_STOPS) {
            self.flaw(&one_too_many.at, &format!("stops[{MOST_STOPS}].at"), format!("more than {MOST_STOPS} stops"));
            return Vec::new();
        }
        let mut stops = Vec::new();
        for (index, stop) in self.file.stops.iter().enumerate() {
            let path = format!("stops[{index}]");
            let at = stop.at.value;
            if at > length {
                self.flaw_of_length(&stop.at, &format!("{path}.at"), "lies beyond the drive");
            }
            stops.push(at);
        }
        stops.sort_by(|one, other| one.si().total_cmp(&other.si()));
        stops
    }
}

/// The ground and the lubrication of a row, in words.
fn row_name(key: &str) -> &str {
    match key {
        "clay" => "clay and silt, lubrication none or not metered",
        "clay_metered" => "clay and silt, lubrication metered",
        "granular" => "sand and gravel",
        "logged" => "lubrication logged",
        "stem" => "pilot stem",
        other => other,
    }
}

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
        let row = self.handbook.duration("time.shift")?;
        let shift = match self.cited(WorkFile::shift_length) {
            Some(own) => own,
            None => self.or_row(PaceFile::shift_length, row),
        };
        let told = self.cited(WorkFile::shifts_a_day);
        let shifts_a_day = told.unwrap_or(Cited::new(Ratio::from_si(1.0), Origin::Law(&ONE_SHIFT)));
        let worked = shift.value * shifts_a_day.value;
        if worked.si() > DAY {
            self.wrong(WorkFile::shifts_a_day, ("makes more than a day of its shifts", "see shift_length"));
        }
        let says = self.given(WorkFile::round_the_clock) == Some(true);
        Ok(Work { shift, shifts_a_day, round_the_clock: says || worked.si() >= DAY })
    }
}
