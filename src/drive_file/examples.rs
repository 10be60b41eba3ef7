//! How a value of a field is written, for the advice of a fault: a wall in millimetres, a depth in metres.

use super::fields::{Shape, Spec};
use super::schema::DriveFile;
use crate::quantity::{Dim, UnitSystem, unit};
use crate::yaml::Fault;

/// What is said of the field at a path, such as `candidates[3].packer.thickness`.
fn at(path: &str) -> Option<&'static Spec> {
    let mut specs = DriveFile::FIELDS;
    let mut found: Option<&'static Spec> = None;
    for key in path.split('.').map(|part| part.split('[').next().unwrap_or_default()) {
        // Low, likely and high are told of together.
        if found.is_some_and(|spec| matches!(spec.shape, Shape::Band(_))) {
            break;
        }
        let spec = specs.iter().find(|spec| spec.key == key)?;
        if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
            specs = inner;
        }
        found = Some(spec);
    }
    found
}

/// How a value of the field at a path is written.
pub(super) fn example(path: &str, dim: Dim, system: UnitSystem) -> &'static str {
    let of_field = at(path).filter(|spec| spec.number.is_some_and(|number| number.role.dim() == dim));
    of_field.and_then(|spec| spec.example(system)).unwrap_or_else(|| unit::describe(dim).1)
}

/// The faults of a text with the example of each field in place of that of its dimension.
pub(super) fn by_field(faults: Vec<Fault>, text: &str) -> Vec<Fault> {
    let length = text.lines().find_map(|line| line.strip_prefix("length:")).unwrap_or_default();
    let length = length.split('#').next().unwrap_or_default();
    let system = unit::family(length.trim().trim_matches(['"', '\''])).unwrap_or_default();
    let one = |mut fault: Fault| {
        let number = at(&fault.path).and_then(|spec| spec.number);
        if let (Some(advice), Some(number)) = (&mut fault.complaint.advice, number) {
            let (_, general) = unit::describe(number.role.dim());
            let here = example(&fault.path, number.role.dim(), system);
            *advice = advice.replacen(&format!("example \"{general}\""), &format!("example \"{here}\""), 1);
        }
        fault
    };
    faults.into_iter().map(one).collect()
}
