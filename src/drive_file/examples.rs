//! How a value of a field is written, for the advice of a fault: a wall in millimetres, a depth in metres.

use super::fields::Spec;
use crate::quantity::{Dim, UnitSystem, unit};
use crate::yaml::Fault;

/// How a value of the field at a path is written.
pub(super) fn example(path: &str, dim: Dim, system: UnitSystem) -> &'static str {
    let of_field = Spec::at(path).filter(|spec| spec.number.is_some_and(|number| number.role.dim() == dim));
    of_field.and_then(|spec| spec.example(system)).unwrap_or_else(|| unit::describe(dim).1)
}

/// The faults of a text with the example of each field in place of that of its dimension.
pub(super) fn by_field(faults: Vec<Fault>, text: &str) -> Vec<Fault> {
    let length = text.lines().find_map(|line| line.strip_prefix("length:")).unwrap_or_default();
    let length = length.split('#').next().unwrap_or_default();
    let system = unit::family(length.trim().trim_matches(['"', '\''])).unwrap_or_default();
    let one = |mut fault: Fault| {
        let number = Spec::at(&fault.path).and_then(|spec| spec.number);
        if let (Some(advice), Some(number)) = (&mut fault.complaint.advice, number) {
            let (_, general) = unit::describe(number.role.dim());
            let here = example(&fault.path, number.role.dim(), system);
            *advice = advice.replacen(&format!("example \"{general}\""), &format!("example \"{here}\""), 1);
        }
        fault
    };
    faults.into_iter().map(one).collect()
}
