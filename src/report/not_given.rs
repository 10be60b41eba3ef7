//! Checks that are absent because the file does not give what they need.

use crate::drive::Drive;

/// What each absent check would need.
pub(super) fn of(drive: &Drive) -> impl Iterator<Item = &'static str> {
    let wall = drive.reaction.as_ref().and_then(|reaction| reaction.wall.as_ref());
    [wall.is_none().then_some("not given: the thrust wall (launch.wall), and so no check of it")].into_iter().flatten()
}
