//! What lies around the bore: what the drive itself asks to beware of.

use crate::choice::Ranked;
use crate::conditions::{Plan, time_plan};
use crate::drive::{Drive, Pipe, Stretch};
use crate::handbook::{GroundClass, HandbookError, Method, Pilot};
use crate::quantity::{Length, Role, Shown, UnitSystem};

/// Cautions by what the drive contains. Local codes and licensed practice decide.
///
/// # Errors
/// If a table is malformed or lacks a row.
pub(super) fn cautions(drive: &Drive, ranked: &Ranked, system: UnitSystem) -> Result<Vec<String>, HandbookError> {
    let mut list = on_site(drive, ranked, system)?;
    list.push(
        "Vibration and noise: record the condition of nearby buildings before work starts. Keep the crane clear of \
            overhead \
         lines."
            .to_owned(),
    );
    list.extend(judged_time(drive, &ranked.pipe, ranked.scheme.method));
    Ok(list)
}

/// Those of them that the crew works by.
///
/// # Errors
/// If a table is malformed or lacks a row.
pub(super) fn on_site(drive: &Drive, ranked: &Ranked, system: UnitSystem) -> Result<Vec<String>, HandbookError> {
    let pipe = &ranked.pipe;
    let shown = |length, role| Shown::of(length, role).display(system).to_string();
    let mut list = pit_cautions(drive, system)?;
    if drive.stem.is_there() {
        let row = drive.handbook.pilot_limits()?.row("length_usual")?;
        if let Some(least) = row.value.low.as_ref().filter(|least| drive.length.value > least.value) {
            list.push(format!(
                "Sight line: beyond about {} heat, dust and moisture bend the beam to the target; prove the optics and \
                 survey the invert from the reception pit.",
                shown(least.value, Role::Distance)
            ));
        }
        let heave = drive.handbook.movement_caution()?.row("heave_of_pilot")?;
        // A bit cuts what the others push aside, and what widens its bore cuts too.
        if let Some(times) = heave.value.high.as_ref().filter(|_| drive.pilot == Pilot::Displacement) {
            let widest = drive.stem.head.max(pipe.passes.iter().copied().fold(Length::default(), Length::max));
            let needed = widest * times.value;
            let cover = drive.site.cover.shallowest - pipe.outside_diameter.value;
            let dense = |stretch: &Stretch| !matches!(stretch.class, GroundClass::LooseSand | GroundClass::SoftClay);
            if cover < needed && drive.stretches.iter().any(dense) {
                list.push(format!(
                    "Heave: cover is {}, less than {} over a displacing pilot or expander: dense ground and services \
                     above may lift. By how much cannot be predicted.",
                    shown(cover, Role::Depth),
                    shown(needed, Role::Depth)
                ));
            }
        }
    }
    if drive.stretches.iter().any(|stretch| stretch.class == GroundClass::Fill) {
        list.push(
            "Obstructions in fill: probe the line; a machine stopped by one needs a rescue pit over \
            it."
            .to_owned(),
        );
    }
    let rule = drive.handbook.separation()?.row("exposed_crossing")?.value;
    if let (Some(clear), Some(times)) = (&rule.clear, &rule.times) {
        let near = clear.value.max(pipe.bore.value * times.value);
        for crossing in &drive.site.crossings {
            let distance = crossing.axis_distance(pipe.outside_diameter.value) - pipe.bore.value / 2.0;
            if distance < near {
                list.push(format!(
                    "{} at {}: {} clear of the bore, closer than {}: dig down and expose it before boring.",
                    capital(&crossing.name),
                    shown(crossing.at, Role::Distance),
                    shown(distance, Role::Depth),
                    shown(near, Role::Depth)
                ));
            }
        }
    }
    if ranked.scheme.method == Method::Pullback {
        list.push(
            "Pullback: fit the weak link ahead of the pipe; warn the other pit by radio before every break-through \
                and before the tail enters."
                .to_owned(),
        );
    } else {
        list.push(
            "Jacking: nobody in the pit during a push; guard stem and auger; lock out before changing tools; clear \
                the \
             reception pit and keep people out before break-through."
                .to_owned(),
        );
    }
    Ok(list)
}

/// The stages whose shifts are no more than our judgement.
fn judged_time(drive: &Drive, pipe: &Pipe, method: Method) -> Option<String> {
    let plan = time_plan(&Plan { drive, pipe, method });
    let stages: Vec<&str> = plan.judged(&drive.handbook).collect();
    (!stages.is_empty()).then(|| {
        format!(
            "Time: no source was found for {}; those shifts are our own wide estimate. Give `pace`.",
            stages.join("; ")
        )
    })
}

/// What the depths of the pits ask for.
fn pit_cautions(drive: &Drive, system: UnitSystem) -> Result<Vec<String>, HandbookError> {
    let table = drive.handbook.excavation()?;
    let rule = |key: &'static str| {
        let row = table.get(key).and_then(|row| row.value.length.as_ref());
        row.map(|length| length.value).ok_or_else(|| table.lacks(key))
    };
    let text = |length: Length| Shown::of(length, Role::Depth).display(system).to_string();
    let deepest = drive.site.launch.floor().max(drive.site.reception.floor());
    let (system_from, engineer, air) = (rule("protective_system")?, rule("engineer")?, rule("air_test_depth")?);
    let (egress, setback) = (rule("egress_depth")?, rule("setback")?);
    let mut list = Vec::new();
    if deepest >= system_from && drive.site.surface.by_load_model {
        list.push(format!(
            "Pits {} deep: shoring, a safe way out, and spoil and plant back from the edge, as local law asks.",
            text(deepest)
        ));
    } else if deepest >= system_from {
        let engineer = if deepest > engineer { " by a registered engineer's design" } else { "" };
        list.push(format!(
            "Pits {} deep: shoring or another protective system{engineer}, a ladder from {} of depth on, spoil and plant \
             at least {} back from the edge (OSHA 1926 P; local law governs).",
            text(deepest),
            text(egress),
            text(setback)
        ));
    }
    if deepest > air {
        list.push(
            "Air in the pits: test for oxygen, explosive gas and hydrogen sulphide before entry and while people are below; \
             sewers and organic ground give off gas."
                .to_owned(),
        );
    }
    Ok(list)
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
