//! Checks and figures of one scheme, each with what it rests on below it.

use super::page::Page;
use crate::check::{Check, Sense};
use crate::choice::Ranked;
use crate::choice::reason::name;
use crate::handbook::HandbookError;
use crate::method::{self, Figure, Stations, WallNeeded};
use crate::quantity::{Band, Force, Role, Shown};
use crate::report::contents::forces;
use crate::report::document::{Row, Table};
use crate::report::words::{self, ratio, verdict};

const SCREEN: &str = "* a screen: the likely demand is past usual practice, which asks for care but never bars a \
    scheme";

/// Columns of a label and of the values behind it.
const BEFORE: usize = 69;

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
            self.wrapped("force on the pipe  ", &band(self, force));
            if let Some(rig) = scheme.rig_force {
                self.wrapped("force on the rig   ", &band(self, rig));
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
        let head = ["check", "likely", "high", "limit", "likely share", "high share", "verdict"];
        let short = ["", "likely", "high", "limit", "likely", "high", "verdict"];
        let rows = scheme.checks.iter().map(|check| self.check(check)).collect();
        self.table(Table::new(head, short, laid_out, rows));
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

    /// A check, with what it rests on.
    fn check(&self, check: &Check) -> Row {
        // With a space before it, so that no two run together.
        let value =
            |shown: Option<Shown>| shown.map_or_else(|| " -".to_owned(), |shown| format!(" {}", self.value(shown)));
        let (high, likely) = (check.high(), check.likely());
        let limit = match (high, check.sense) {
            (Some((_, limit)), Sense::AtLeast) => format!(" >= {}", self.value(limit)),
            (high, _) => value(high.map(|high| high.1)),
        };
        let cells = vec![
            check.subject.label().to_owned(),
            value(likely.map(|likely| likely.0)),
            value(high.map(|high| high.0)),
            limit,
            ratio(check.likely_utilisation()),
            ratio(check.utilisation()),
            verdict(check),
        ];
        let factor = check.factor.map(|factor| format!("with the factor {}", self.origin(factor)));
        let notes = [Some(self.origin(check.basis)), factor, words::note(check)];
        Row { cells, notes: notes.into_iter().flatten().collect(), page: None }
    }

    fn figure(&mut self, figure: &Figure) {
        let range = if figure.in_range { "" } else { "; OUTSIDE ITS RANGE" };
        let note = figure.note.map_or_else(String::new, |note| format!("; {note}"));
        let (label, value, place) = (figure.label, self.value(figure.value), self.place(figure.basis));
        self.wrapped("- ", &format!("{label}: {value} ({place}{range}){note}"));
    }

    fn wall_needed(&mut self, wall: &WallNeeded) {
        let depth = |depth| self.value(Shown::of(depth, Role::Depth));
        let text = format!(
            "{} wide and {} high, top {} below ground, for {} at a safety factor of {} on {} ground behind it, \
                without an opening",
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

/// Long values take of the room of a short label.
fn laid_out(cells: &[String]) -> String {
    let [label, likely, high, limit, likely_share, high_share, verdict] = cells else { return cells.join(" ") };
    let values = format!("{likely:>12}{high:>12}{limit:>14}");
    let room = BEFORE.saturating_sub(values.chars().count());
    format!("{label:<room$}{values}{likely_share:>7}{high_share:>6}  {verdict}")
}
