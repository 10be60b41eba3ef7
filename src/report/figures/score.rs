//! The points of each score, criterion by criterion.

use super::drawing::{Drawing, Figure, Scale, View};
use crate::choice::Ranked;
use crate::choice::reason::name;
use crate::quantity::shown::decimal;

const ROW: f64 = 34.0;
/// Most schemes that are drawn.
const MOST: usize = 6;
/// Shades of the style that white figures stand on, and others.
const SHADES: [(&str, &str); 8] = [
    ("shade0", "light middle"),
    ("shade1", "middle"),
    ("shade2", "light middle"),
    ("shade3", "middle"),
    ("shade4", "light middle"),
    ("shade5", "middle"),
    ("shade6", "light middle"),
    ("shade7", "middle"),
];

pub(super) fn draw(view: &View<'_>) -> Option<Figure> {
    let schemes: Vec<&Ranked> = view.choice.ranked.iter().filter(|ranked| ranked.score.is_some()).take(MOST).collect();
    let criteria = &schemes.first()?.score.as_ref()?.criteria;
    let rows = u32::try_from(schemes.len()).ok()?;
    let lines = u32::try_from(criteria.len()).ok()?;
    let points = Scale::new((0.0, 100.0), (0.0, 560.0));
    let foot = 8.0 + ROW * f64::from(rows);
    let mut drawing = Drawing::new(foot + 14.0 * f64::from(lines));
    let mut told = Vec::new();
    for (place, ranked) in (0_u32..).zip(&schemes) {
        let Some(score) = &ranked.score else { continue };
        let top = ROW * f64::from(place);
        let standing = ranked.standing.label();
        drawing.text("small", (0.0, top + 10.0), &format!("{}, {standing}", name(ranked)));
        drawing.rect("bar", (0.0, top + 14.0), (points.end, 14.0));
        let mut from = 0.0;
        for (number, (criterion, (shade, class))) in (1_u32..).zip(score.criteria.iter().zip(SHADES.iter().cycle())) {
            let Some(own) = criterion.points().filter(|own| *own > 0.0) else { continue };
            let (left, right) = (points.at(from), points.at(from + own));
            drawing.rect(shade, (left, top + 14.0), (right - left, 14.0));
            if right - left > 12.0 {
                drawing.text(class, ((left + right) / 2.0, top + 25.0), &number.to_string());
            }
            from += own;
        }
        let open = points.at(score.most) - points.at(score.least);
        if open > 0.5 {
            drawing.rect("ghost", (points.at(score.least), top + 14.0), (open, 14.0));
        }
        let (least, most) = (decimal(score.least, 0), decimal(score.most, 0));
        let sum = if least == most { least } else { format!("{least} to {most}") };
        drawing.text("strong", (points.end + 8.0, top + 25.0), &sum);
        told.push(format!("{}: {sum}", name(ranked)));
    }
    for (number, criterion) in (1_u32..).zip(criteria) {
        let weight = decimal(100.0 * criterion.weight, 0);
        let line = format!("{number}  {}, {weight} of 100", criterion.kind.label());
        drawing.text("small", (0.0, foot + 14.0 * f64::from(number) - 6.0), &line);
    }
    let title = "Points of the score, of 100 (dashed: not known)";
    Some(drawing.finish("score", title, told.join("; ")))
}
