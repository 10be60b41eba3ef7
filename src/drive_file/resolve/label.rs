//! Names of pipes that would read alike.

use super::pipe::size_text;
use crate::drive::Pipe;
use crate::drive_file::{CandidateFile, CrushingFile, Series};
use crate::quantity::{Length, Measure, Ratio, Role, Shown, UnitSystem};
use crate::yaml::Field;

/// Adds to the names of pipes that read alike what was given of each and not of all of them. Each pipe comes with its
/// place in the file. Sizes are told as they were most likely written, the rest in the units of the file.
pub(super) fn tell_apart(files: &[CandidateFile], pipes: &mut [(usize, Pipe)], system: UnitSystem) {
    let plain: Vec<(String, Vec<String>)> = pipes
        .iter()
        .map(|(index, pipe)| {
            (pipe.label.clone(), files.get(*index).map(|file| extras(file, system)).unwrap_or_default())
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

/// A size in the unit it was most likely written in: inches where they are whole sixteenths and the millimetres are no
/// multiple of five.
pub(super) fn as_given(size: Length) -> String {
    let whole = |number: f64| (number - number.round()).abs() < 0.01;
    let sixteenths = Shown::of(size, Role::Diameter).in_units(UnitSystem::Us).0 * 16.0;
    // 254 mm is 10 in, 300 mm is not 11.81 in.
    let inches = whole(sixteenths) && !whole(size.si() * 200.0);
    size_text(size, if inches { Series::Ips } else { Series::Iso })
}

/// A size in the family of units that the file writes it in.
pub(super) fn as_written(size: &Field<Length>) -> String {
    match size.written_in() {
        Some(UnitSystem::Us) => size_text(size.value, Series::Ips),
        Some(UnitSystem::Si) => size_text(size.value, Series::Iso),
        None => as_given(size.value),
    }
}

/// What was given beside designation and size, each in a few words.
fn extras(file: &CandidateFile, system: UnitSystem) -> Vec<String> {
    fn shown<Q: Measure>(name: &str, field: Option<&Field<Q>>, role: Role, system: UnitSystem) -> Option<String> {
        field.map(|field| format!("{name} {}", Shown::of(field.value, role).display(system)))
    }
    let size =
        |name: &str, field: &Option<Field<_>>| field.as_ref().map(|field| format!("{name} {}", as_given(field.value)));
    let plain =
        |name: &str, field: &Option<Field<Ratio>>| field.as_ref().map(|field| format!("{name} {}", field.value.si()));
    [
        size("OD", &file.outside_diameter),
        size("wall", &file.wall),
        shown("weight", file.weight.as_ref(), Role::LineWeight, system),
        shown("end area", file.end_bearing_area.as_ref(), Role::Area, system),
        shown("ovality", file.ovality.as_ref(), Role::Percent, system),
        file.certificate.as_ref().map(|field| format!("certificate {}", field.value.key())),
        plain("factor", &file.factor),
        shown("ID", file.inside_diameter.as_ref(), Role::Diameter, system),
        shown("strength", file.strength.as_ref(), Role::Strength, system),
        shown("cube strength", file.cube_strength.as_ref(), Role::Strength, system),
        shown("design strength", file.design_strength.as_ref(), Role::Strength, system),
        shown("yield", file.yield_strength.as_ref(), Role::Strength, system),
        file.steel_grade.as_ref().map(|field| format!("grade {}", field.value.0)),
        file.concrete_grade.as_ref().map(|field| format!("grade {}", field.value.0)),
        file.scheme.as_ref().map(|field| format!("scheme {}", field.value.key())),
        shown("rated", file.rated_force.as_ref(), Role::Thrust, system),
        shown("pipes of", file.pipe_length.as_ref(), Role::Distance, system),
        file.packer.as_ref().and_then(|packer| shown("packer", Some(&packer.thickness), Role::Wall, system)),
        shown("free length", file.free_length.as_ref(), Role::Distance, system),
        plain("joint stress ratio", &file.joint_stress_ratio),
        plain("joint factor", &file.joint_factor),
        shown("joint pull", file.joint_pull.as_ref(), Role::Pull, system),
        shown("joint pressure", file.joint_pressure.as_ref(), Role::Pressure, system),
        shown("deflection", file.joint_deflection.as_ref(), Role::Angle, system),
        size("joint", &file.joint_diameter),
        size("casing", &file.casing),
        size("casing wall", &file.casing_wall),
        shown("casing yield", file.casing_yield_strength.as_ref(), Role::Strength, system),
        plain("casing factor", &file.casing_factor),
        shown("casing free", file.casing_free_length.as_ref(), Role::Distance, system),
        shown("casing joint", file.casing_joint_thrust.as_ref(), Role::Thrust, system),
        size("bore", &file.bore),
        file.crushing.as_ref().map(|field| match &field.value {
            CrushingFile::Strength(strength) => {
                format!("crushing {}", Shown::of(*strength, Role::LineWeight).display(system))
            }
            CrushingFile::Class(class) => format!("class {class}"),
        }),
        file.annulus.as_ref().map(|field| format!("annulus {}", field.value.key())),
        file.passes.as_ref().map(|passes| {
            let sizes: Vec<String> = passes.iter().map(|pass| as_given(pass.value)).collect();
            format!("passes {}", sizes.join(" and "))
        }),
    ]
    .into_iter()
    .flatten()
    .collect()
}
