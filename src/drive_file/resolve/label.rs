//! Sizes of pipes as they are named, and names that would read alike.

use crate::drive::Pipe;
pub(super) use crate::drive_file::size::as_given;
use crate::drive_file::size::in_units;
use crate::drive_file::{CandidateFile, Series};
use crate::quantity::{Length, Measure, UnitSystem};
use crate::yaml::Field;

/// Sizes closer than this are the same nominal size.
const SAME_SIZE: f64 = 5e-4;

pub(super) fn same_size(a: Length, b: Length) -> bool {
    (a.si() - b.si()).abs() < SAME_SIZE
}

/// A nominal size as the series writes it.
pub(super) fn size_text(size: Length, series: Series) -> String {
    in_units(size, if series == Series::Iso { UnitSystem::Si } else { UnitSystem::Us })
}

/// Adds to the names of pipes that read alike what was given of each and not of all of them. Each pipe comes with its
/// place in the file. Sizes are told as they were most likely written, the rest in the units of the file.
pub(super) fn tell_apart(files: &[CandidateFile], pipes: &mut [(usize, Pipe)], system: UnitSystem) {
    let reads_alike = |one: &Pipe| pipes.iter().filter(|(_, other)| other.label == one.label).count() > 1;
    let plain: Vec<(String, Vec<String>)> = pipes
        .iter()
        .map(|(index, pipe)| {
            let file = files.get(*index).filter(|_| reads_alike(pipe));
            (pipe.label.clone(), file.map(|file| extras(file, system)).unwrap_or_default())
        })
        .collect();
    let mut taken: Vec<String> = Vec::new();
    for ((index, pipe), (label, own)) in pipes.iter_mut().zip(&plain) {
        let alike = |extra: &&String| plain.iter().all(|(other, its)| other != label || its.contains(extra));
        for extra in own.iter().filter(|extra| !alike(extra)) {
            pipe.label.push_str(", ");
            pipe.label.push_str(extra);
        }
        if taken.contains(&pipe.label) {
            pipe.label.push_str(&format!(", candidates[{index}]"));
        }
        taken.push(pipe.label.clone());
    }
}

/// A size in the family of units that the file writes it in.
pub(super) fn as_written(size: &Field<Length>) -> String {
    match size.written_in() {
        Some(UnitSystem::Us) => in_units(size.value, UnitSystem::Us),
        Some(UnitSystem::Si) => in_units(size.value, UnitSystem::Si),
        None => as_given(size.value),
    }
}

/// What was given beside designation and size, each in a few words.
fn extras(file: &CandidateFile, system: UnitSystem) -> Vec<String> {
    let mut all = Vec::new();
    file.each(&mut |_, spec, value| {
        if let (Some(label), Some(shown)) = (spec.label, value.shown(spec, system)) {
            all.push(format!("{label} {shown}"));
        }
    });
    all
}
