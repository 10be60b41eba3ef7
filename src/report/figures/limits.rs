//! What share of each limit is used, likely and high.

use super::drawing::{Drawing, Figure, Scale, View, WIDTH};
use crate::check::Check;
use crate::report::words::{ratio, verdict};

const ROW: f64 = 16.0;
/// Beyond it a bar is cut.
const MOST: f64 = 1.25;

pub(super) fn draw(view: &View<'_>) -> Option<Figure> {
    let shared = |check: &&Check| check.utilisation().is_some();
    let checks: Vec<&Check> = view.first.scheme.checks.iter().filter(shared).collect();
    let rows = u32::try_from(checks.len()).ok().filter(|rows| *rows > 0)?;
    let bars = Scale::new((0.0, MOST), (210.0, 450.0));
    let mut drawing = Drawing::new(18.0 + ROW * f64::from(rows));
    let mut told = Vec::new();
    for (place, check) in (0_u32..).zip(&checks) {
        let top = 16.0 + ROW * f64::from(place);
        let (likely, high) = (check.likely_utilisation(), check.utilisation());
        let width = |share: Option<f64>| bars.at(share.unwrap_or(0.0).clamp(0.0, MOST)) - bars.start;
        drawing.rect("bar", (bars.start, top), (bars.end - bars.start, ROW - 5.0));
        drawing.rect("shade1", (bars.start, top), (width(high), ROW - 5.0));
        drawing.rect("shade0", (bars.start, top), (width(likely), ROW - 5.0));
        let foot = top + ROW - 7.0;
        drawing.text("", (0.0, foot), check.subject.label());
        let cut = if high.is_some_and(|high| high > MOST) { " >" } else { "" };
        drawing.text("small strong end", (bars.end + 44.0, foot), &format!("{}{cut}", ratio(high)));
        let against = check.high().map_or_else(String::new, |(demand, limit)| {
            format!("{} {} {}", view.value(demand), check.sense.of(), view.value(limit))
        });
        drawing.text("small", (bars.end + 54.0, foot), &against);
        drawing.text("small end", (WIDTH, foot), &verdict(check));
        told.push(format!("{} {} {}", check.subject.label(), ratio(high), verdict(check)));
    }
    drawing.line("axis", (bars.at(1.0), 12.0), (bars.at(1.0), 16.0 + ROW * f64::from(rows)));
    drawing.text("small middle", (bars.at(1.0), 9.0), "1.00");
    let title = "Share of each limit that is used: dark likely, pale high";
    Some(drawing.finish("limits", title, told.join("; ")))
}
