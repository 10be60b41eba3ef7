//! One scheme: checks and figures, each with what it rests on below it, and the force along the drive.

use super::page::Page;
use crate::check::{Check, Sense};
use crate::choice::Ranked;
use crate::choice::reason::name;
use crate::conditions::{Plan, site_figures};
use crate::handbook::{HandbookError, Method};
use crate::method::{self, Figure, Point, Shove, SoilView, StageProfile, Stations, WallNeeded};
use crate::quantity::shown::decimal;
use crate::quantity::{Band, Force, Measure as _, Role, Shown};
use crate::report::contents::{forces, levels};
use crate::report::document::{Row, Table, WIDTH};
use crate::report::words::{self, ratio, verdict};
use textwrap::fill;

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
        let notes = [Some(self.origin(check.basis)), factor, words::note(check, self.system)];
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
            "{} wide and {} high, top {} below ground: the high thrust of {} at a safety factor of {}, the likely one at \
                {} or more, on {} ground behind it, without an opening",
            depth(wall.width),
            depth(wall.height),
            depth(wall.top),
            self.value(Shown::of(wall.thrust, Role::Thrust)),
            decimal(wall.left.si(), 2),
            decimal(wall.safety.value.si(), 2),
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

/// A body in the bore: its name and its force at a point.
type Body = (&'static str, fn(&Point) -> Option<Band<Force>>);

impl Page<'_> {
    /// All of it, of the first scheme.
    pub(super) fn along(&mut self, ranked: &Ranked) -> Result<(), HandbookError> {
        let (drive, pipe, scheme) = (self.drive, &ranked.pipe, &ranked.scheme);
        self.heading(&format!("Force along the drive: {}", name(ranked)));
        for stage in method::profile(drive, pipe, scheme.method) {
            self.stage(&stage);
        }
        let plan = method::shove_plan(drive, pipe, scheme);
        if !plan.is_empty() {
            self.heading("Shove plan: pipes at which something changes; all pipes are in the JSON");
            self.shove_plan(&plan);
        }
        let soil = method::friction_models(drive, pipe)?;
        if !soil.is_empty() {
            self.heading("Unit friction by published models: shown, never used for capacity");
            self.soil(ranked, &soil);
        }
        self.heading(&format!("Ground movement, pits and time: {}", name(ranked)));
        self.site_figures(ranked);
        Ok(())
    }

    /// The force is linear between the rows; two rows at one advance are a step.
    fn stage(&mut self, profile: &StageProfile) {
        let stage = profile.stage;
        let from = if stage.pulls { "reception" } else { "launch" };
        let bore = profile.bore.map(|bore| format!(", bore {}", self.value(Shown::of(bore, Role::Diameter))));
        self.wrapped("", &format!("{}{}, advance from the {from} pit", stage.title(), bore.unwrap_or_default()));
        let bodies = bodies(profile);
        let assisted = profile.points.iter().any(|point| point.on_tail.is_some());
        let names = || std::iter::once("on rig").chain(bodies.iter().map(|body| body.0));
        // The bodies stand four columns apart from the rig.
        let gap = |place| if place == 1 { "    " } else { "" };
        let heads =
            names().enumerate().map(|(place, name)| format!("{}{:>28}", gap(place), format!("{name}: likely, high")));
        let tail = if assisted { "on its tail: likely" } else { "" };
        let short_head = format!("{:>12}{}{tail:>22}", "", heads.collect::<String>());
        let pairs = names().flat_map(|name| [format!("{name}, likely"), format!("{name}, high")]);
        let head =
            std::iter::once("advance".to_owned()).chain(pairs).chain(assisted.then(|| tail.to_owned())).collect();
        let rows = profile.points.iter().map(|point| {
            let pair = |band: Option<Band<Force>>| {
                let band = band.map(|band| self.on(profile, band));
                band.map_or_else(Default::default, |band| [self.value(band.likely), self.value(band.high)])
            };
            let on = std::iter::once(Some(point.on_rig)).chain(bodies.iter().map(|(_, of)| of(point)));
            let tail = point.on_tail.map(|push| self.value(Shown::of(push.likely, Role::Thrust)));
            let tail = assisted.then(|| tail.unwrap_or_default());
            let advance = self.value(Shown::of(point.advance, Role::Distance));
            Row { cells: std::iter::once(advance).chain(on.flat_map(pair)).chain(tail).collect(), ..Row::default() }
        });
        let rows = rows.collect();
        self.table(Table { head, short_head, layout: stage_row, rows });
    }

    /// A force of a stage.
    fn on(&self, profile: &StageProfile, band: Band<Force>) -> Band<Shown> {
        forces(band, if profile.stage.pulls { Method::Pullback } else { Method::PipeJacking })
    }

    /// The greatest force of a stage on the rig.
    pub(super) fn sum(&self, ranked: &Ranked, part: &str) -> String {
        let stages = method::profile(self.drive, &ranked.pipe, ranked.scheme.method);
        let stages = stages.iter().filter(|profile| profile.stage.title() == part);
        let forces = stages.flat_map(|profile| profile.points.iter().map(|point| self.on(profile, point.on_rig)));
        let greater = |a: Shown, b: Shown| if b.si > a.si { b } else { a };
        forces.reduce(|a, b| a.with(b, greater)).map_or_else(String::new, |force| {
            format!(": total on the rig likely {}, high {}", self.precise(force.likely), self.precise(force.high))
        })
    }

    fn shove_plan(&mut self, plan: &[Shove]) {
        let row = |shove: &Shove| {
            let thrust = |force| self.value(Shown::of(force, Role::Thrust));
            let read = |pressure| self.value(Shown::of(pressure, Role::Strength));
            let (gauge, stop_gauge) =
                shove.gauge.map_or_else(Default::default, |(gauge, stop)| (read(gauge.likely), read(stop)));
            let to = self.value(Shown::of(shove.extent.1, Role::Distance));
            let (likely, stop, by) = (thrust(shove.force.likely), thrust(shove.stop), shove.stop_by.label().to_owned());
            Row { cells: vec![shove.number.to_string(), to, likely, gauge, stop, stop_gauge, by], ..Row::default() }
        };
        let rows = plan.iter().filter(|shove| shove.changes).map(row).collect();
        let head = ["pipe", "to", "likely", "gauge", "stop and ask", "gauge", "stop for"];
        self.table(Table::new(head, head, shove_row, rows));
    }

    fn soil(&mut self, ranked: &Ranked, soil: &[SoilView]) {
        for one in soil {
            let stress = |stress| self.value(Shown::of(stress, Role::UnitFriction));
            let at = one.at_crown;
            let stress = format!("total {}, effective {}", stress(at.total), stress(at.effective));
            let stretch = one.stretch;
            self.wrapped("", &format!("ground[{stretch}], deepest place: vertical stress at the crown {stress}"));
            for model in &one.models {
                let range = if model.in_range { "" } else { "; OUTSIDE ITS RANGE" };
                let band = self.band(levels(model.friction, Role::UnitFriction));
                let (name, over, note) = (model.name, model.over.label(), model.note);
                self.wrapped("    ", &format!("{name}: {band}, {over} ({note}{range})"));
            }
            for note in &one.notes {
                self.wrapped("    ", note);
            }
        }
        let models = method::model_forces(self.drive, &ranked.pipe, soil);
        if !models.is_empty() {
            let text = "friction on the whole pipe by the models that every stretch has, greatest at the far end:";
            self.wrapped("", text);
        }
        for model in models {
            let range = if model.in_range { "" } else { " (OUTSIDE ITS RANGE)" };
            let band = self.band(forces(model.force, ranked.scheme.method));
            self.wrapped("    ", &format!("{}: {band}{range}", model.name));
        }
    }

    /// Values of one figure a row, its source and note below the first of its kind.
    fn site_figures(&mut self, ranked: &Ranked) {
        let mut told: Vec<String> = Vec::new();
        let mut rows = Vec::new();
        for figure in site_figures(&Plan { drive: self.drive, pipe: &ranked.pipe, method: ranked.scheme.method }) {
            let values = figure.values.map(|band| band.map(|level| self.value(level)));
            let [low, likely, high] = values.map_or_else(
                || ["not known", "", ""].map(ToOwned::to_owned),
                |band| [band.low, band.likely, band.high],
            );
            let basis = figure.origin.map_or_else(String::new, |origin| format!(" [{}]", self.origin(origin)));
            let note = format!("{}{basis}", figure.note);
            let notes = if told.contains(&note) { Vec::new() } else { vec![note.clone()] };
            told.push(note);
            rows.push(Row { cells: vec![figure.what, low, likely, high], notes, page: None });
        }
        self.table(Table::new(["figure", "low", "likely", "high"], ["", "low", "likely", "high"], figure_row, rows));
    }
}

/// An advance, the force on the rig and on each body, likely and high, and the push at a tail.
fn stage_row(cells: &[String]) -> String {
    let [advance, rig, rig_high, bodies @ ..] = cells else { return cells.join(" ") };
    let gap = if bodies.len() > 1 { "    " } else { "" };
    let bodies: String = bodies
        .chunks(2)
        .map(|pair| match pair {
            [likely, high] => format!("{likely:>14}{high:>14}"),
            tail => format!("{:>22}", tail.concat()),
        })
        .collect();
    format!("{advance:>12}{rig:>14}{rig_high:>14}{gap}{bodies}")
}

fn shove_row(cells: &[String]) -> String {
    let [pipe, to, likely, gauge, stop, stop_gauge, by] = cells else { return cells.join(" ") };
    format!("{pipe:>5}{to:>10}{likely:>15}{gauge:>12}{stop:>16}{stop_gauge:>12}  {by}")
}

/// A long name stands over its values.
fn figure_row(cells: &[String]) -> String {
    const ROOM: usize = 58;
    let [what, low, likely, high] = cells else { return cells.join(" ") };
    let values = format!("{low:>14}{likely:>14}{high:>14}");
    if what.chars().count() < ROOM {
        format!("{what:<ROOM$}{values}")
    } else {
        format!("{}\n{:ROOM$}{values}", fill(what, WIDTH), "")
    }
}

/// What bears another force than the rig: the pipe, and what is driven out ahead of pipe or casing.
fn bodies(profile: &StageProfile) -> Vec<Body> {
    let all: [(Body, bool); 3] = [
        (("on pipe", |point| point.on_pipe), true),
        (("on casing", |point| point.on_casing), true),
        (("on stem", |point| point.on_stem), !profile.stage.pulls),
    ];
    let there = |of: fn(&Point) -> Option<Band<Force>>| profile.points.iter().any(|point| of(point).is_some());
    all.into_iter().filter_map(|(body, told)| (told && there(body.1)).then_some(body)).collect()
}
