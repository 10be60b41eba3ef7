//! Force bands along the drive, stage by stage. They are linear between the points.

use super::along::{Point, StageProfile};
use super::pullback::{self, force::Pulling};
use super::rest::Put;
use super::stage::{Body, Stage, pushed, walk_pushed};
use crate::drive::{Drive, Pipe, Rests, Work};
use crate::handbook::Method;
use crate::law::Calc;
use crate::quantity::{Band, Force};

/// The stages of a scheme with the force along each; empty for a scheme that is excluded.
#[must_use]
pub fn profile(drive: &Drive, pipe: &Pipe, method: Method) -> Vec<StageProfile> {
    let along = |stage: Stage| {
        let mut points = Vec::new();
        walk_pushed(&mut Calc::silent(), Put::of(drive, pipe, method), stage, |advance, force| {
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
        (Method::PipeJacking, Some(_), ..) => Stage::of_jacking(drive, pipe).map(along).collect(),
        (Method::Pullback, _, Some(pulled), Some(pull)) => {
            [vec![along(Stage::STEM)], pullback::profiles(Pulling { drive, pipe, pulled, pull })].concat()
        }
        _ => Vec::new(),
    }
}

/// The greatest force on the rig in each stage that pushes a jacked pipe in, on the safe side of what is not told. No check is
/// made.
pub fn pushes<'a>(drive: &'a Drive, pipe: &'a Pipe) -> impl Iterator<Item = (Stage, Band<Force>)> + 'a {
    let put = Put::of(drive, pipe, Method::PipeJacking);
    let greatest = move |stage| pushed(&mut Calc::silent(), put, stage).in_spite_of_doubt().on_rig;
    Stage::of_jacking(drive, pipe).map(move |stage| (stage, greatest(stage)))
}

/// The stages with the force along each while they move: without what stops and nights add.
#[must_use]
pub fn moving(drive: &Drive, pipe: &Pipe, method: Method) -> Vec<StageProfile> {
    let rests = Rests { planned: Vec::new(), ..drive.rests.clone() };
    let work = Work { round_the_clock: true, ..drive.work };
    profile(&Drive { rests, work, ..drive.clone() }, pipe, method)
}
