//! The trough at the surface, across the line, in the ground that settles most.

use super::drawing::{At, Drawing, Figure, Scale, View};
use crate::check::Subject;
use crate::conditions::trough;
use crate::quantity::{Band, Length, Role};

/// Half of the width that is drawn, over the depth of the invert.
const WIDE: f64 = 1.5;
/// Points to either side.
const POINTS: i32 = 30;

pub(super) fn draw(view: &View<'_>) -> Option<Figure> {
    let plan = view.plan();
    let half = view.drive.site.cover.shallowest * WIDE;
    let offsets = (-POINTS..=POINTS).map(|place| half * (f64::from(place) / f64::from(POINTS)));
    let across: Vec<(Length, Band<Length>)> =
        offsets.map(|offset| Some((offset, trough(&plan, offset.abs())?))).collect::<Option<_>>()?;
    let most = trough(&plan, Length::default())?;
    let limit = view.first.scheme.checks.get(Subject::SurfaceSettlement).and_then(|check| check.high());
    let limit = limit.map(|(_, limit)| limit).filter(|limit| limit.role == Role::Settlement);
    let number = |length| view.number(length, Role::Settlement);
    let distance = |length: Length| view.number(length, Role::Distance);
    let deepest = limit.map_or(0.0, |limit| limit.in_units(view.system).0).max(number(most.high)) * 1.08;
    let x = Scale::new((-distance(half), distance(half)), (52.0, 520.0));
    let y = Scale::new((0.0, deepest), (26.0, 146.0));
    let mut drawing = Drawing::new(180.0);
    let (along, down) = (view.unit(Role::Distance), view.unit(Role::Settlement));
    drawing.axes(&x, &y, (&format!("from the axis, {along}"), &format!("settlement, {down}")));
    let line = |of: fn(&Band<Length>) -> Length| -> Vec<At> {
        across.iter().map(|(offset, band)| (x.at(distance(*offset)), y.at(number(of(band))))).collect()
    };
    drawing.path("low", line(|band| band.low));
    drawing.path("high", line(|band| band.high));
    drawing.path("likely", line(|band| band.likely));
    let text = |length| view.text(length, Role::Settlement);
    let mut labels = vec![
        (y.at(number(most.low)), format!("low {} (dotted)", text(most.low))),
        (y.at(number(most.likely)), format!("likely {} (thick)", text(most.likely))),
        (y.at(number(most.high)), format!("high {}", text(most.high))),
    ];
    if let Some(limit) = limit {
        let level = y.at(limit.in_units(view.system).0);
        drawing.line("limit", (x.start, level), (x.end, level));
        labels.push((level, format!("limit {}", view.value(limit))));
    }
    // Where the one goes over into the other the line bends.
    drawing.text("small", (x.start, y.end + 25.0), "high: the worse of a narrow and a wide trough");
    let told = labels.iter().map(|label| label.1.clone()).collect::<Vec<_>>().join(", ");
    drawing.labels("small", x.end + 6.0, labels);
    let title = "Settlement of the surface across the line: all lost ground and the annulus as far as it may close";
    Some(drawing.finish("settlement", title, told))
}
