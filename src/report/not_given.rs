//! Checks that are absent because the file does not give what they need: what is absent, and the field.

use super::{around, not_given_pull};
use crate::check::Subject;
use crate::choice::Ranked;
use crate::drive::{Drive, Stretch};
use crate::handbook::{GroundClass, Method};

/// What each absent check of a scheme would need.
pub(super) fn of(drive: &Drive, ranked: &Ranked) -> Vec<&'static str> {
    let mut list = around::not_given(drive, ranked);
    if ranked.scheme.is_excluded() {
        return list;
    }
    let pipe = &ranked.pipe;
    if drive.reaction.as_ref().and_then(|reaction| reaction.wall.as_ref()).is_none() {
        list.push("thrust wall (launch.wall)");
    }
    if ranked.scheme.method == Method::PipeJacking
        && let Some(casing) = &pipe.casing
    {
        match casing.tube.as_deref() {
            None => list.push("strength of the casing (candidates[].casing_wall)"),
            Some(tube) if tube.free.is_none() => {
                list.push("casing in the pit as a column (candidates[].casing_free_length)");
            }
            Some(_) => {}
        }
        if casing.joint_thrust.is_none() {
            list.push("joints of the casing (candidates[].casing_joint_thrust)");
        }
    }
    list.extend(of_stem(drive, ranked));
    if drive.stretches.iter().any(is_untold_clay) {
        list.push("closed clay on the pipe (ground[].soil: undrained_strength, undrained_modulus)");
    }
    match ranked.scheme.method {
        Method::Pullback => list.extend(not_given_pull::of(drive)),
        Method::PipeJacking if pipe.service.is_none() => {
            list.push("strength of a rigid pipe in service (candidates[].crushing)");
        }
        Method::PipeJacking => {}
    }
    list
}

/// Checks of the stem and of torque: a rating that nothing is held against is said.
fn of_stem(drive: &Drive, ranked: &Ranked) -> impl Iterator<Item = &'static str> {
    let jacked = ranked.scheme.method == Method::PipeJacking;
    let absent = |subject| ranked.scheme.checks.get(subject).is_none();
    let (rig, stem) = (drive.rig.torque.is_some(), drive.stem.is_there());
    let rated = drive.rig.torque_through(&drive.stem).is_some();
    [
        (stem && absent(Subject::StemBuckling), "buckling of the pilot stem (stem.wall, stem.free_length)"),
        (stem && rated && absent(Subject::StemTorque), "torque of the pilot stem (stem.torque)"),
        (jacked && rig && absent(Subject::AugerTorque), "torque of the auger, where there is one (rig.auger_torque)"),
        (!jacked && rated && absent(Subject::ReamingTorque), "torque of the reamer (pull.reaming_torque)"),
    ]
    .into_iter()
    .filter_map(|(missing, what)| missing.then_some(what))
}

/// Clay of which the file does not tell whether it closes on a pipe.
fn is_untold_clay(stretch: &Stretch) -> bool {
    let is_clay = stretch.class.is_clay() || stretch.mixed_with.is_some_and(GroundClass::is_clay);
    let undrained = stretch.soil.as_ref().and_then(|soil| soil.undrained);
    is_clay && undrained.is_none_or(|undrained| undrained.modulus.is_none())
}
