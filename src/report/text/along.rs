//! What goes with the length of the drive: force, shove plan, friction by published models, ground movement and time.

use super::page::Page;
use crate::choice::Ranked;
use crate::choice::reason::name;
use crate::conditions::{Plan, site_figures};
use crate::handbook::{HandbookError, Method};
use crate::method::{self, Point, Shove, SoilView, StageProfile};
use crate::quantity::{Band, Force, Role, Shown};
use crate::report::contents::{forces, levels};

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
            self.heading("Shove plan: the pipes at which something changes, all of them in the JSON");
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
        self.line(&format!("{}{}, advance from the {from} pit", stage.title(), bore.unwrap_or_default()));
        let bodies = bodies(profile);
        let assisted = profile.points.iter().any(|point| point.on_tail.is_some());
        let tail = if assisted { "on its tail: likely" } else { "" };
        let heads: String = bodies.iter().map(|(name, _)| format!("{:>28}", format!("{name}: likely, high"))).collect();
        // The bodies stand four columns apart from the rig.
        let gap = if bodies.is_empty() { "" } else { "    " };
        let heads = format!("{:>12}{:>28}{gap}{heads}{tail:>22}", "", "on rig: likely, high");
        self.line(heads.trim_end());
        for point in &profile.points {
            let pair = |band| {
                let band = self.on(profile, band);
                format!("{:>14}{:>14}", self.value(band.likely), self.value(band.high))
            };
            let on: String = bodies.iter().map(|(_, of)| of(point).map_or_else(String::new, pair)).collect();
            let push = |push: Band<Force>| self.value(Shown::of(push.likely, Role::Thrust));
            let tail = point.on_tail.map_or_else(String::new, |tail| format!("{:>22}", push(tail)));
            let advance = self.value(Shown::of(point.advance, Role::Distance));
            self.line(&format!("{advance:>12}{}{gap}{on}{tail}", pair(point.on_rig)));
        }
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
            format!(": in all on the rig likely {}, high {}", self.value(force.likely), self.value(force.high))
        })
    }

    fn shove_plan(&mut self, plan: &[Shove]) {
        let row = |[pipe, to, likely, read, stop, stop_read, by]: [&str; 7]| {
            format!("{pipe:>5}{to:>10}{likely:>15}{read:>12}{stop:>16}{stop_read:>12}  {by}")
        };
        self.line(&row(["pipe", "to", "likely", "gauge", "stop and ask", "gauge", "set by"]));
        for shove in plan.iter().filter(|shove| shove.changes) {
            let thrust = |force| self.value(Shown::of(force, Role::Thrust));
            let read = |pressure| self.value(Shown::of(pressure, Role::Strength));
            let (gauge, stop_gauge) =
                shove.gauge.map_or_else(Default::default, |(gauge, stop)| (read(gauge.likely), read(stop)));
            let to = self.value(Shown::of(shove.extent.1, Role::Distance));
            let (likely, stop) = (thrust(shove.force.likely), thrust(shove.stop));
            let pipe = shove.number.to_string();
            self.line(&row([&pipe, &to, &likely, &gauge, &stop, &stop_gauge, shove.stop_by.label()]));
        }
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

    /// Values of one figure a line, its source and note below the first of its kind.
    fn site_figures(&mut self, ranked: &Ranked) {
        self.line(&format!("{:<58}{:>14}{:>14}{:>14}", "", "low", "likely", "high"));
        let mut told: Vec<String> = Vec::new();
        for figure in site_figures(&Plan { drive: self.drive, pipe: &ranked.pipe, method: ranked.scheme.method }) {
            let values = figure.values.map_or_else(
                || "not known".to_owned(),
                |band| {
                    let band = band.map(|level| self.value(level));
                    format!("{:>14}{:>14}{:>14}", band.low, band.likely, band.high)
                },
            );
            if figure.what.chars().count() < 58 {
                self.line(&format!("{:<58}{values}", figure.what));
            } else {
                self.wrapped("", &figure.what);
                self.line(&format!("{:<58}{values}", ""));
            }
            let basis = figure.origin.map_or_else(String::new, |origin| format!(" [{}]", self.origin(origin)));
            let note = format!("{}{basis}", figure.note);
            if !told.contains(&note) {
                self.wrapped("    ", &note);
                told.push(note);
            }
        }
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
