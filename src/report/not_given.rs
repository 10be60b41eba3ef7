//! Checks that are absent because the file does not give what they need.

use crate::drive::{Capacity, Drive, JackedPipe, Pipe};
use crate::handbook::Family;

/// What each absent check would need.
pub(super) fn of(drive: &Drive) -> impl Iterator<Item = &'static str> {
    let wall = drive.reaction.as_ref().and_then(|reaction| reaction.wall.as_ref());
    let any = |wanted: fn(&Pipe, &JackedPipe) -> bool| {
        drive.candidates.iter().any(|pipe| pipe.jacked.as_ref().is_some_and(|jacked| wanted(pipe, jacked)))
    };
    let rigid = any(|pipe, _| {
        matches!(pipe.family, Family::Clay | Family::Concrete | Family::PolymerConcrete) && pipe.service.is_none()
    });
    let packer = any(|_, jacked| {
        !matches!(jacked.capacity, Capacity::Steel(_) | Capacity::Rated) && jacked.joint.packer.is_none()
    });
    let free = any(|_, jacked| matches!(jacked.capacity, Capacity::Steel(_)) && jacked.free.is_none());
    let one_way = drive.pull.is_none() && any(|pipe, _| matches!(pipe.family, Family::Steel | Family::DuctileIron));
    [
        packer.then_some(
            "not given: the packer of a jacked pipe (candidates[].packer) and the line (steering): its joints are taken \
             to bear over the whole face",
        ),
        free.then_some("not given: the free length of steel pipe in the pit (free_length), and so no check as a column"),
        one_way.then_some("not given: how pipe is pulled (pull): steel and iron are looked at as jacked only"),
        rigid.then_some(
            "not given: the crushing strength of a rigid pipe (candidates[].crushing), and so no check in service",
        ),
        wall.is_none().then_some("not given: the thrust wall (launch.wall), and so no check of it"),
    ]
    .into_iter()
    .flatten()
}
