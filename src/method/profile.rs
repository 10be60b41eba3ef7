//! Force bands along the drive, stage by stage. They are linear between the points.

use super::stage::{Body, Stage, walk_pushed};
use super::{jacking, pullback};
use crate::drive::{Drive, Pipe};
use crate::handbook::Method;
use crate::law::{Calc, Silent};
use crate::quantity::{Band, Force, Length};

/// Force at one advance. Two points at the same advance are a step, where the front meets other ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// How far what moves has come: from the launch pit when pushed, from the reception pit when pulled.
    pub advance: Length,
    /// On the rig.
    pub on_rig: Band<Force>,
    /// On the thrust wall behind the rig; a pull leans on the other face of the launch pit.
    pub on_wall: Option<Band<Force>>,
    /// On the stem where it is loaded most, while it is in the bore.
    pub on_stem: Option<Band<Force>>,
    /// On the casing where it is loaded most, while it is in the bore.
    pub on_casing: Option<Band<Force>>,
    /// On the product pipe, where it is in the bore.
    pub on_pipe: Option<Band<Force>>,
    /// Push of the machine at the tail of the pipe, where one helps the pull: low and likely as far as the pull needs
    /// it, high the whole.
    pub on_tail: Option<Band<Force>>,
}

/// A stage and the force along it.
#[derive(Debug, Clone, PartialEq)]
pub struct StageProfile {
    /// The stage.
    pub stage: Stage,
    /// The bore that a reamer makes.
    pub bore: Option<Length>,
    /// Points in the order of advance.
    pub points: Vec<Point>,
}

/// The stages of a scheme with the force along each; empty for a scheme that is excluded.
#[must_use]
pub fn profile(drive: &Drive, pipe: &Pipe, method: Method) -> Vec<StageProfile> {
    let pushed = |stage: Stage| {
        let mut points = Vec::new();
        walk_pushed(&mut Calc::new(Silent), drive, pipe, stage, |advance, force| {
            // What comes in bears all that the rig pushes, what it drives out the rest of its own.
            let on = |body| {
                if stage.behind == body {
                    Some(force.on_rig)
                } else {
                    (stage.ahead == Some(body)).then_some(force.on_ahead)
                }
            };
            points.push(Point {
                advance,
                on_rig: force.on_rig,
                on_wall: Some(force.on_rig),
                on_stem: on(Body::Stem),
                on_casing: on(Body::Casing),
                on_pipe: on(Body::Pipe),
                on_tail: None,
            });
        });
        StageProfile { stage, bore: None, points }
    };
    if pipe.bars(method).next().is_some() {
        return Vec::new();
    }
    match (method, &pipe.jacked, &pipe.pulled, &drive.pull) {
        (Method::PipeJacking, Some(_), ..) => jacking::stages(pipe).iter().copied().map(pushed).collect(),
        (Method::Pullback, _, Some(pulled), Some(pull)) => {
            [vec![pushed(Stage::STEM)], pullback::profiles(drive, pipe, pulled, pull)].concat()
        }
        _ => Vec::new(),
    }
}
