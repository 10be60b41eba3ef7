//! The force along the drive, stage by stage: on the rig and on what lies in the bore.

use super::Page;
use crate::report::view::{BandView, PointView, SchemeView, StageView};

/// A body in the bore: its name and its force at a point.
type Body = (&'static str, fn(&PointView) -> Option<&BandView>);

impl Page {
    /// The force is linear between the rows; two rows at one advance are a step.
    pub(super) fn stages(&mut self, scheme: &SchemeView) {
        for stage in &scheme.stages {
            let from = if stage.pulled { "reception" } else { "launch" };
            let bore = stage.bore.as_ref().map_or_else(String::new, |bore| format!(", bore {}", bore.text));
            self.line(&format!("{}{bore}, advance from the {from} pit", stage.stage));
            let bodies = bodies(stage);
            let assisted = stage.points.iter().any(|point| point.on_tail.is_some());
            let tail = if assisted { "on its tail: likely" } else { "" };
            let heads: String =
                bodies.iter().map(|(name, _)| format!("{:>28}", format!("{name}: likely, high"))).collect();
            // The bodies stand four columns apart from the rig.
            let gap = if bodies.is_empty() { "" } else { "    " };
            let heads = format!("{:>12}{:>28}{gap}{heads}{tail:>22}", "", "on rig: likely, high");
            self.line(heads.trim_end());
            for point in &stage.points {
                let on: String = bodies.iter().map(|(_, of)| of(point).map_or_else(String::new, pair)).collect();
                let tail = point.on_tail.as_ref().map_or_else(String::new, |band| format!("{:>22}", band.likely.text));
                self.line(&format!("{:>12}{}{gap}{on}{tail}", point.advance.text, pair(&point.on_rig)));
            }
        }
    }
}

fn pair(band: &BandView) -> String {
    format!("{:>14}{:>14}", band.likely.text, band.high.text)
}

/// What bears another force than the rig: the pipe, and what is driven out ahead of pipe or casing.
fn bodies(stage: &StageView) -> Vec<Body> {
    let all: [(Body, bool); 3] = [
        (("on pipe", |point| point.on_pipe.as_ref()), true),
        (("on casing", |point| point.on_casing.as_ref()), true),
        (("on stem", |point| point.on_stem.as_ref()), !stage.pulled),
    ];
    let there = |of: fn(&PointView) -> Option<&BandView>| stage.points.iter().any(|point| of(point).is_some());
    all.into_iter().filter_map(|(body, told)| (told && there(body.1)).then_some(body)).collect()
}
