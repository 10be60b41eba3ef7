//! Bore, pipe and annulus across the line, with the pipe where it may come to lie.

use super::drawing::{At, Drawing, Figure, Scale, View};
use crate::conditions::invert_uncertainty;
use crate::handbook::Service;
use crate::quantity::{Length, Measure, Role};

const RADIUS: f64 = 82.0;
const CENTRE: At = (110.0, 96.0);
const HEIGHT: f64 = 192.0;

pub(super) fn draw(view: &View<'_>) -> Figure {
    let pipe = &view.first.pipe;
    let outside = pipe.outside_diameter.value;
    let opened = view.plan().opened();
    let annulus = opened - outside;
    let scale = Scale::new((0.0, opened.si() / 2.0), (0.0, RADIUS));
    let radius = |diameter: Length| scale.at(diameter.si() / 2.0);
    let wall =
        if view.plan().is_jacked() { pipe.pushed_wall() } else { pipe.pulled.as_ref().map(|pulled| pulled.wall()) };
    // Of rigid pipe the size is the bore.
    let inside = wall.map(|wall| outside - 2.0 * wall).or(pipe.jacked.as_ref().map(|_| pipe.nominal));
    let inside = inside.filter(|inside| *inside < outside);
    let mut drawing = Drawing::new(HEIGHT);
    drawing.rect("ground", (0.0, 0.0), (2.0 * CENTRE.0, HEIGHT));
    drawing.circle("open", CENTRE, RADIUS);
    let play = RADIUS - radius(outside);
    let low = (CENTRE.0, CENTRE.1 + play);
    drawing.circle("wall", low, radius(outside));
    if let Some(inside) = inside {
        drawing.circle("open", low, radius(inside));
    }
    if annulus > Length::default() {
        drawing.circle("ghost", (CENTRE.0, CENTRE.1 - play), radius(outside));
    }
    let text = |length, role| view.text(length, role);
    let mut told = vec![
        format!("bore {}", text(opened, Role::Diameter)),
        format!("pipe, {}: outside {}", pipe.label(), text(outside, Role::Diameter)),
    ];
    told.extend(inside.map(|inside| format!("inside {}", text(inside, Role::Diameter))));
    if annulus > Length::default() {
        told.push(format!("bore {} wider than the pipe", text(annulus, Role::Offset)));
        told.push("pipe at the bottom of the bore or (dashed) at its crown".to_owned());
    } else {
        told.push("no annulus: the pipe fills the bore".to_owned());
    }
    if view.drive.service == Service::GravitySewer {
        let most = invert_uncertainty(&view.plan()).high;
        let tolerance = text(view.drive.tolerance.value, Role::Offset);
        told.push(format!("invert uncertain by {}, tolerance {tolerance} either way", text(most, Role::Offset)));
    }
    for (place, line) in (0_u32..).zip(&told) {
        drawing.text("", (2.0 * CENTRE.0 + 16.0, 40.0 + 20.0 * f64::from(place)), line);
    }
    let title = "Across the bore, with the pipe where it may lie";
    drawing.finish("bore", title, told.join("; "))
}
