//! The drive from the side: ground, water, pits, pipe and services.

use super::drawing::{At, Drawing, Figure, Scale, View, WIDTH};
use crate::quantity::{Length, Measure, Role};
use crate::report::words;

/// Room for a pit at either end.
const PIT: f64 = 30.0;
/// Over the ground, without and with the names of services.
const TOP: (f64, f64) = (12.0, 34.0);
const DRAWN: f64 = 150.0;
/// Least height of the pipe in the drawing.
const THIN: f64 = 4.0;

pub(super) fn draw(view: &View<'_>) -> Option<Figure> {
    let drive = view.drive;
    let slope = drive.grade.value.tan();
    let top = if drive.site.crossings.is_empty() { TOP.0 } else { TOP.1 };
    let (length, outside) = (drive.length.value, view.first.pipe.outside_diameter.value);
    // Levels over the invert at the launch pit.
    let invert = |place: Length| slope * place;
    let ground: Vec<(Length, Length)> =
        drive.places().map(|(_, (place, depth))| (place, invert(place) + depth)).collect();
    let pits = [(&drive.site.launch, Length::default()), (&drive.site.reception, length)];
    let floors = pits.map(|(pit, place)| invert(place) + pit.invert - pit.floor());
    let highest = ground.iter().map(|point| point.1).reduce(Length::max)?;
    let lowest = floors.into_iter().chain([invert(length), Length::default()]).reduce(Length::min)?;
    let margin = (highest - lowest) * 0.12;

    let across = Scale::new((0.0, length.si()), (PIT + 6.0, WIDTH - PIT - 6.0));
    let up = Scale::new(((lowest - margin).si(), highest.si()), (top + DRAWN, top));
    let at = |place: Length, level: Length| -> At { (across.at(place.si()), up.at(level.si())) };
    let stretches = &drive.stretches;
    let legend = words::facts(drive, view.system);
    let mut drawing = Drawing::new(top + DRAWN + 12.0 + 13.0 * f64::from(u32::try_from(stretches.len()).ok()?));

    let (launch_top, reception_top) = (ground.first()?.1, ground.last()?.1);
    let edges = [(0.0, up.at(launch_top.si())), (WIDTH, up.at(reception_top.si()))];
    let surface: Vec<At> =
        [edges[0]].into_iter().chain(ground.iter().map(|point| at(point.0, point.1))).chain([edges[1]]).collect();
    let foot = top + DRAWN;
    drawing.area("ground", surface.iter().copied().chain([(WIDTH, foot), (0.0, foot)]));
    drawing.path("axis low", surface);
    for (number, (stretch, fact)) in (1_u32..).zip(stretches.iter().zip(legend.iter().skip(1))) {
        if stretch.to < length {
            drawing.line("thin", at(stretch.to, highest), (across.at(stretch.to.si()), foot));
        }
        let middle = across.at((stretch.from.si() + stretch.to.si()) / 2.0);
        drawing.text("strong middle", (middle, foot - 6.0), &number.to_string());
        if let Some(table) = stretch.way.table {
            let level = |place| invert(place) + stretch.way.invert(place) - table;
            let ends = [stretch.from, stretch.to].map(|place| at(place, level(place)));
            if ends.iter().all(|end| end.1 <= foot) {
                drawing.line("water", ends[0], ends[1]);
                drawing.text("small", (ends[0].0 + 4.0, ends[0].1 - 3.0), "water");
            }
        }
        let line = foot + 2.0 + 13.0 * f64::from(number);
        drawing.text("small", (0.0, line), &format!("{number}  {fact}"));
    }
    for ((pit, place), (left, above)) in pits.into_iter().zip([(6.0, launch_top), (WIDTH - PIT - 6.0, reception_top)]) {
        let (roof, floor) = (up.at(above.si()), up.at((invert(place) + pit.invert - pit.floor()).si()));
        drawing.rect("open", (left, roof), (PIT, floor.max(up.at(invert(place).si())) - roof));
    }
    let high = (up.at(0.0) - up.at(outside.si())).max(THIN);
    let [start, end] = [Length::default(), length].map(|place| at(place, invert(place)));
    drawing.area("wall", [start, end, (end.0, end.1 - high), (start.0, start.1 - high)]);
    for (place, crossing) in drive.site.crossings.iter().enumerate() {
        let level = invert(crossing.at) + crossing.invert - crossing.depth;
        let spot = at(crossing.at, level);
        let class = if crossing.beside > Length::default() { "ghost" } else { "open" };
        drawing.circle(class, spot, 4.0);
        // Neighbours stand on two heights.
        let height = if place % 2 == 0 { 9.0 } else { 20.0 };
        drawing.text("small middle", (spot.0.clamp(60.0, WIDTH - 60.0), height), &crossing.name);
        drawing.line("thin", (spot.0, height + 2.0), (spot.0, spot.1 - 4.0));
    }
    let depth = |length| view.text(length, Role::Depth);
    drawing.text("small", (0.0, top - 5.0), &format!("launch, invert {} down", depth(drive.site.launch.invert)));
    let reception = format!("reception, invert {} down", depth(drive.site.reception.invert));
    drawing.text("small end", (WIDTH, top - 5.0), &reception);
    let cover = depth(drive.site.cover.shallowest - outside);
    let pipe = format!("{}, cover at least {cover}", view.first.pipe.label());
    drawing.text("strong middle", (WIDTH / 2.0, start.1.min(end.1) - high - 6.0), &pipe);
    let steeper = (up.at(0.0) - up.at(1.0)) / (across.at(1.0) - across.at(0.0));
    let title = &format!("Long section, heights drawn {steeper:.0} times the lengths");
    let facts = legend.iter().take(1 + stretches.len()).map(String::as_str).collect::<Vec<_>>().join("; ");
    Some(drawing.finish("long_section", title, format!("{facts}; {pipe}")))
}
