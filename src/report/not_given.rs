//! Checks that are absent because the file does not give what they need.

use crate::drive::Drive;

/// What each absent check would need.
pub(super) fn of(drive: &Drive) -> impl Iterator<Item = &'static str> {
    let wall = drive.reaction.as_ref().and_then(|reaction| reaction.wall.as_ref());
    let rigid = drive.candidates.iter().any(|pipe| pipe.jacked.is_some() && pipe.service.is_none());
    [
        rigid.then_some(
            "not given: the crushing strength of a rigid pipe (candidates[].crushing), and so no check in service",
        ),
        wall.is_none().then_some("not given: the thrust wall (launch.wall), and so no check of it"),
    ]
    .into_iter()
    .flatten()
}
