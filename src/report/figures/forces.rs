//! The force on the rig along the drive, a plot a stage: band, stops, and the force never to pass.

use super::drawing::{At, Drawing, Figure, Scale, View};
use crate::method::{self, Point, StageProfile};
use crate::quantity::{Force, Length, Role};

const PLOT: f64 = 120.0;
const PANEL: f64 = PLOT + 58.0;
/// What is left free at either end, over the length.
const CLEAR: f64 = 0.02;
/// Times the high force up to which a limit is drawn.
const IN_SIGHT: f64 = 2.0;

pub(super) fn draw(view: &View<'_>) -> Option<Figure> {
    let (drive, pipe, scheme) = (view.drive, &view.first.pipe, &view.first.scheme);
    let stopped = method::profile(drive, pipe, scheme.method);
    let moving = method::moving(drive, pipe, scheme.method);
    if moving.is_empty() {
        return None;
    }
    let panels = u32::try_from(moving.len()).ok()?;
    let mut drawing = Drawing::new(PANEL * f64::from(panels));
    let mut told = Vec::new();
    for (place, (moving, stopped)) in (0_u32..).zip(moving.iter().zip(&stopped)) {
        told.push(panel(view, &mut drawing, PANEL * f64::from(place), moving, stopped));
    }
    let title = "Force on the rig along the drive, stage by stage";
    Some(drawing.finish("forces", title, told.join("; ")))
}

/// One stage; what it shows in words.
fn panel(view: &View<'_>, drawing: &mut Drawing, top: f64, moving: &StageProfile, stopped: &StageProfile) -> String {
    let force = |force: Force| view.number(force, Role::Thrust);
    let advance = |length: Length| view.number(length, Role::Distance);
    let most = |profile: &StageProfile, of: fn(&Point) -> Force| {
        profile.points.iter().map(of).fold(Force::default(), Force::max)
    };
    let bound = method::bound(view.drive, &view.first.scheme, stopped);
    let (likely, high) = (most(moving, |point| point.on_rig.likely), most(moving, |point| point.on_rig.high));
    let after = most(stopped, |point| point.on_rig.high);
    let in_sight = bound.force <= after * IN_SIGHT;
    let ceiling = force(if in_sight { bound.force.max(after) } else { after }) * 1.06;
    // A step at either end stands clear of the axis.
    let (end, clear) = (advance(view.drive.length.value), advance(view.drive.length.value) * CLEAR);
    let x = Scale::new((-clear, end + clear), (52.0, 480.0));
    let y = Scale::new((0.0, ceiling), (top + 26.0 + PLOT, top + 26.0));
    let pit = if moving.stage.pulls { "reception" } else { "launch" };
    let title = format!("{}, from the {pit} pit", moving.stage.title());
    drawing.text("strong", (x.start, top + 11.0), &title);
    drawing.axes(&x, &y, (&format!("advance, {}", view.unit(Role::Distance)), view.unit(Role::Thrust)));
    let spot = |point: &Point, of: Force| -> At { (x.at(advance(point.advance)), y.at(force(of))) };
    let line = |profile: &StageProfile, of: fn(&Point) -> Force| -> Vec<At> {
        profile.points.iter().map(|point| spot(point, of(point))).collect()
    };
    let (low_line, high_line) = (line(moving, |point| point.on_rig.low), line(moving, |point| point.on_rig.high));
    drawing.area("band", low_line.iter().copied().chain(high_line.iter().rev().copied()));
    if after > high {
        drawing.path("stop", line(stopped, |point| point.on_rig.high));
    }
    drawing.path("low", low_line.iter().copied());
    drawing.path("high", high_line.iter().copied());
    drawing.path("likely", line(moving, |point| point.on_rig.likely));
    let at_end = |profile: &StageProfile, of: fn(&Point) -> Force| {
        profile.points.last().map_or(0.0, |point| y.at(force(of(point))))
    };
    let text = |force: Force| view.text(force, Role::Thrust);
    let mut labels = vec![
        (at_end(moving, |point| point.on_rig.likely), format!("likely, up to {} (thick)", text(likely))),
        (at_end(moving, |point| point.on_rig.high), format!("high, up to {}", text(high))),
        (at_end(moving, |point| point.on_rig.low), "low (dotted)".to_owned()),
    ];
    if after > high {
        labels.push((y.at(force(after)), format!("high after a stop, {} (dashed)", text(after))));
    }
    let (never, by) = (format!("never above {}", text(bound.force)), bound.by.label());
    if in_sight {
        let level = y.at(force(bound.force));
        drawing.line("limit", (x.start, level), (x.end, level));
        drawing.text("small", (x.start + 6.0, level + 11.0), by);
        labels.push((level, never.clone()));
    } else {
        drawing.text("small", (x.start + 6.0, y.end + 2.0), &format!("{by}, off the scale"));
        labels.push((y.end - 8.0, never.clone()));
    }
    drawing.labels("small", x.end + 6.0, labels);
    format!("{title}: likely up to {}, high up to {}, {never}, {by}", text(likely), text(high))
}
