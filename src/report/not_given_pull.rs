//! Checks of a pull that are absent because the file does not give what they need.

use crate::drive::{Drive, HoleState, Pull};
use crate::handbook::Service;

/// What each absent check would need.
pub(super) fn of(drive: &Drive) -> impl Iterator<Item = &'static str> {
    let pull = drive.pull.as_ref().filter(|_| drive.candidates.iter().any(|pipe| pipe.pulled.is_some()));
    pull.into_iter().flat_map(|pull| of_pull(drive, pull)).flatten()
}

fn of_pull(drive: &Drive, pull: &Pull) -> [Option<&'static str>; 10] {
    let works = &pull.works;
    let soil = drive.stretches.iter().all(|stretch| stretch.soil.is_some());
    let fluid = works.hole == HoleState::Fluid;
    let main = drive.service == Service::PressureMain;
    let missing = |given: bool, what: &'static str| (!given).then_some(what);
    [
        missing(works.head_rating.is_some(), "rating of pull head and swivel (pull.pull_head.rating)"),
        missing(works.weak_link.is_some(), "setting of the weak link (pull.pull_head.weak_link)"),
        missing(
            pull.push_assist.is_none_or(|assist| assist.grip.is_some()),
            "grip at the tail (pull.push_assist.grip_rating)",
        ),
        missing(works.collapsed.is_some(), "bore that may fall on the pipe (pull.collapsed_bore)"),
        missing(works.laydown.is_some(), "room for the string, taken in one piece (pull.laydown)"),
        missing(works.reaction.is_some(), "what the rig leans on while it pulls (pull.reaction)"),
        missing(!fluid || soil, "break-out of fluid (ground[].soil of every stretch)"),
        missing(soil, "load and deflection in service (ground[].soil of every stretch)"),
        missing(drive.annulus.grout.is_some(), "collapse in grout (annulus)"),
        missing(!main || drive.in_service.vacuum.is_some(), "vacuum in the main (vacuum)"),
    ]
}
