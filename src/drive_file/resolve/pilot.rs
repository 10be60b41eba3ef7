//! Which kind of pilot goes before.

use super::Resolved;
use super::material::can_be_pulled;
use crate::drive_file::{DriveFile, Hole, OrNone};
use crate::handbook::{Handbook, Pilot, Service};
use crate::quantity::{Measure, Ratio};
use crate::yaml::MayBe;

/// The kind of pilot that the file tells, or the one that its ground or its stem asks for: in rock, above the blows that a
/// pilot can be pushed through in the harder of clay and sand, by a wide stem, and before pipe that is pulled through fluid, a
/// drilled one.
pub(super) fn pilot_kind(file: &DriveFile, handbook: &Handbook) -> Resolved<Pilot> {
    /// Stems in m that are wider than those that are pushed, some 90 to 115 mm.
    const WIDE: f64 = 0.15;
    let told = file.pilot.given();
    let most = handbook.pilot_cone()?.iter().filter_map(|row| row.value.value.blows_most.as_ref());
    let most = most.map(|blows| blows.value).fold(Ratio::default(), Ratio::max);
    let hard = |stretch: &crate::drive_file::StretchFile| {
        stretch.class.value.is_rock()
            || stretch.mixed_with.as_ref().is_some_and(|other| other.value.is_rock())
            || stretch.spt_n.as_ref().is_some_and(|blows| blows.value > most)
    };
    let stem = file.stem.as_ref().map(|stem| stem.outside_diameter.value);
    let wide = stem.is_some_and(|stem| matches!(stem, OrNone::Some(diameter) if diameter.si() > WIDE));
    let through_fluid =
        file.pull.as_ref().is_some_and(|pull| pull.hole.as_ref().is_none_or(|hole| hole.value == Hole::Fluid));
    let all_pulled = match file.candidates.as_slice() {
        [] => file.service.value == Service::PressureMain,
        pipes => pipes.iter().all(|pipe| can_be_pulled(pipe.material.value)),
    };
    let wide = wide || through_fluid && all_pulled;
    Ok(told.unwrap_or(if wide || file.ground.iter().any(hard) { Pilot::Drilled } else { Pilot::Displacement }))
}
