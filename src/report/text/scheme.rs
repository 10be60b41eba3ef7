//! Checks and figures of one scheme, each with what it rests on below it.

use super::page::{Page, ratio, verdict};
use crate::check::{Check, Sense};
use crate::choice::Ranked;
use crate::choice::reason::name;
use crate::handbook::HandbookError;
use crate::method::{self, Figure, Stations, WallNeeded};
use crate::quantity::{Band, Force, Role, Shown};
use crate::report::contents::forces;
use crate::report::words;

const SCREEN: &str = "* a screen: the likely demand is past the limit, which asks for care and never bars a scheme";

/// Columns of a label and of the values behind it.
const BEFORE: usize = 70;

impl Page<'_> {
    /// All checks and figures of one scheme.
    pub(super) fn checks(&mut self, ranked: &Ranked) -> Result<(), HandbookError> {
        let (drive, pipe, scheme) = (self.drive, &ranked.pipe, &ranked.scheme);
        self.heading(&format!("Checks: {}, {}", name(ranked), ranked.standing.label()));
        if let Some(force) = scheme.force {
            let band = |page: &Self, band: Band<Force>| {
                let band = forces(band, scheme.method).map(|level| page.value(level));
                format!("low {}, likely {}, high {}", band.low, band.likely, band.high)
            };
            self.line(&format!("force on the pipe  {}", band(self, force)));
            if let Some(rig) = scheme.rig_force {
                self.line(&format!("force on the rig   {}", band(self, rig)));
            }
            if let Some(wall) = method::wall_needed(drive, pipe, scheme) {
                self.wall_needed(&wall);
            }
            let stations = method::stations(drive, pipe, scheme);
            if let Some(stations) = stations.filter(|stations| *stations != Stations::NotNeeded) {
                self.wrapped("jacking stations   ", &words::stations(&stations, self.system));
                self.wrapped("                   ", &self.origin(words::stations_by(drive, &stations)));
            }
            self.gap();
        }
        self.line(&format!(
            "{:<32}{:>12}{:>12}{:>14}{:>6}{:>6}  {}",
            "", "likely", "high", "limit", "likely", "high", "verdict"
        ));
        for check in scheme.checks.iter() {
            self.check(check);
        }
        if scheme.checks.iter().any(Check::is_failed_screen) {
            self.wrapped("", SCREEN);
        }
        self.wrapped("", &words::rests_on(scheme, drive));
        let figures = method::figures(drive, pipe, scheme.method)?;
        if !figures.is_empty() {
            self.gap();
        }
        for figure in &figures {
            self.figure(figure);
        }
        Ok(())
    }

    fn check(&mut self, check: &Check) {
        // With a space before it, so that no two run together.
        let value =
            |shown: Option<Shown>| shown.map_or_else(|| " -".to_owned(), |shown| format!(" {}", self.value(shown)));
        let (high, likely) = (check.high(), check.likely());
        let limit = match (high, check.sense) {
            (Some((_, limit)), Sense::AtLeast) => format!(" >= {}", self.value(limit)),
            (high, _) => value(high.map(|high| high.1)),
        };
        let (likely, high) = (value(likely.map(|likely| likely.0)), value(high.map(|high| high.0)));
        let values = format!("{likely:>12}{high:>12}{limit:>14}");
        // Long values take of the room of a short label.
        let room = BEFORE.saturating_sub(values.chars().count());
        self.line(&format!(
            "{:<room$}{values}{:>6}{:>6}  {}",
            check.subject.label(),
            ratio(check.likely_utilisation()),
            ratio(check.utilisation()),
            verdict(check)
        ));
        self.wrapped("    ", &self.origin(check.basis));
        if let Some(factor) = check.factor {
            self.wrapped("    ", &format!("with the factor {}", self.origin(factor)));
        }
        if let Some(note) = words::note(check) {
            self.wrapped("    ", &note);
        }
    }

    fn figure(&mut self, figure: &Figure) {
        let range = if figure.in_range { "" } else { "; OUTSIDE ITS RANGE" };
        let note = figure.note.map_or_else(String::new, |note| format!("; {note}"));
        let (label, value, place) = (figure.label, self.value(figure.value), self.place(figure.basis));
        self.wrapped("", &format!("{label}: {value} ({place}{range}){note}"));
    }

    fn wall_needed(&mut self, wall: &WallNeeded) {
        let depth = |depth| self.value(Shown::of(depth, Role::Depth));
        let text = format!(
            "{} wide and {} high, its top {} down, for {} at a safety of {} in the {} ground behind it, if it has no \
             opening",
            depth(wall.width),
            depth(wall.height),
            depth(wall.top),
            self.value(Shown::of(wall.thrust, Role::Thrust)),
            self.value(Shown::of(wall.safety.value, Role::Ratio)),
            if wall.is_undrained { "undrained" } else { "drained" }
        );
        self.wrapped("thrust wall needed ", &text);
        self.wrapped("                   ", &self.origin(wall.safety.origin));
    }
}
