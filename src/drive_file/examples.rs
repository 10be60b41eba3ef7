//! How a value of a field is written, for the advice of a fault: a wall in millimetres, a depth in metres.

use super::fields::{Shape, Spec};
use super::schema::DriveFile;
use crate::quantity::{Dim, UnitSystem, unit};
use crate::yaml::{Fault, Form};

impl Spec {
    /// The field at a path of the drive file, such as `candidates[3].packer.thickness` or `candidates[].packer`.
    #[must_use]
    pub fn at(path: &str) -> Option<&'static Self> {
        let mut specs = DriveFile::FIELDS;
        let mut found: Option<&'static Self> = None;
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
}

/// How a value of the field at a path is written.
pub(super) fn example(path: &str, dim: Dim, system: UnitSystem) -> &'static str {
    let of_field = Spec::at(path).filter(|spec| spec.number.is_some_and(|number| number.role.dim() == dim));
    of_field.and_then(|spec| spec.example(system)).unwrap_or_else(|| unit::describe(dim).1)
}

/// Advice such as "add `wall: 10 mm`" for a file in US units: each value that it writes behind a key is the example of that
/// field, and so is the one that it gives for the field of the path. Of nothing the unit alone changes.
pub(super) fn in_us_units(advice: &str, path: &str) -> String {
    const FOR_EXAMPLE: &str = "write for example \"";
    let us = |spec: &'static Spec| spec.example(UnitSystem::Us).unwrap_or_default();
    if let (Some(rest), Some(spec)) =
        (advice.strip_prefix(FOR_EXAMPLE), Spec::at(path).filter(|spec| spec.number.is_some()))
        && let Some((_, rest)) = rest.split_once('"')
    {
        return format!("{FOR_EXAMPLE}{}\"{rest}", us(spec));
    }
    let mut told = String::new();
    let mut rest = advice;
    while let Some((before, value)) = rest.split_once(": ") {
        let key_from = before.rfind(|c: char| !(c.is_ascii_lowercase() || c == '_')).map_or(0, |place| place + 1);
        let (_, key) = before.split_at(key_from);
        let end = value.find(['`', ',', '}']).unwrap_or(value.len());
        let (value, after) = value.split_at(end);
        let spec =
            Some(key).filter(|_| value.starts_with(|c: char| c.is_ascii_digit())).and_then(|key| with_unit(key, value));
        let advised = match spec.map_or(value.trim_end(), us).split_once(' ') {
            Some((_, unit)) if value.starts_with("0 ") => format!("0 {unit}"),
            _ => spec.map_or(value.trim_end(), us).to_owned(),
        };
        told.push_str(before);
        told.push_str(": ");
        told.push_str(&advised);
        told.push_str(if value.ends_with(' ') { " " } else { "" });
        rest = after;
    }
    told + rest
}

/// The field of a key whose example is in the unit of a value, else one with an example in a unit of its own.
fn with_unit(key: &str, value: &str) -> Option<&'static Spec> {
    fn all(specs: &'static [Spec], key: &str, found: &mut Vec<&'static Spec>) {
        for spec in specs {
            if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
                all(inner, key, found);
            } else if spec.key == key
                && spec.number.is_some_and(|number| number.example.iter().all(|text| text.contains(' ')))
            {
                found.push(spec);
            }
        }
    }
    let unit = |text: &str| text.trim().split_once(' ').map_or(String::new(), |(_, unit)| unit.to_owned());
    let mut found = Vec::new();
    all(DriveFile::FIELDS, key, &mut found);
    let same = |spec: &&&'static Spec| spec.example(UnitSystem::Si).is_some_and(|example| unit(example) == unit(value));
    found.iter().find(same).or(found.first()).copied()
}

/// The blocks that know a key, of few: "belongs under `pull`".
fn belongs(key: &str) -> Option<String> {
    const FEW: usize = 2;
    fn all(specs: &'static [Spec], key: &str, found: &mut Vec<&'static str>) {
        for spec in specs {
            if spec.key == key {
                found.extend(spec.names.iter().map(|name| name.0));
            } else if let Shape::Block(inner) | Shape::Blocks(inner) = spec.shape {
                all(inner, key, found);
            }
        }
    }
    let mut found = Vec::new();
    all(DriveFile::FIELDS, key, &mut found);
    found.dedup();
    let block = |path: &&str| match path.strip_suffix(key)?.trim_end_matches(['.', '[', ']']) {
        "" => Some("at the top level of the file".to_owned()),
        block => Some(format!("under `{}`", block.replace("[]", ""))),
    };
    let blocks: Vec<String> = found.iter().filter_map(block).collect();
    (!blocks.is_empty() && blocks.len() <= FEW).then(|| format!("it belongs {}", blocks.join(" or ")))
}

/// How a block is begun: with what must be there, else its first two fields.
fn begun(specs: &'static [Spec], system: UnitSystem) -> String {
    let field = |spec: &Spec| {
        let word = match spec.shape {
            Shape::One(Form::Word(words)) => words.first().copied(),
            _ => None,
        };
        spec.example(system).or(word).map(|value| format!("{}: {value}", spec.key))
    };
    let must: Vec<String> = specs.iter().filter(|spec| spec.must).filter_map(field).collect();
    let first = if must.is_empty() { specs.iter().take(2).filter_map(field).collect() } else { must };
    format!("{{ {} }}", first.join(", "))
}

/// The faults of a text with the example of each field in place of that of its dimension, and a key that is not known
/// where it stands shown to where it is.
pub(super) fn by_field(faults: Vec<Fault>, text: &str) -> Vec<Fault> {
    let length = text.lines().find_map(|line| line.strip_prefix("length:")).unwrap_or_default();
    let length = length.split('#').next().unwrap_or_default();
    let system = unit::family(length.trim().trim_matches(['"', '\''])).unwrap_or_default();
    let one = |mut fault: Fault| {
        let message = fault.complaint.message.strip_prefix("the key \"");
        let guessed = fault.complaint.advice.as_ref().is_some_and(|advice| advice.starts_with("did you mean"));
        let unknown = message.and_then(|told| told.strip_suffix("\" is not known here")).filter(|_| !guessed);
        if let Some(place) = unknown.and_then(belongs) {
            fault.complaint.advice = Some(place);
            return fault;
        }
        let spec = Spec::at(&fault.path);
        if let (Some(advice), Some(Shape::Block(inner))) = (&mut fault.complaint.advice, spec.map(|spec| spec.shape)) {
            *advice = advice.replacen("{ key: value }", &begun(inner, system), 1);
        }
        let number = spec.and_then(|spec| spec.number);
        if let (Some(advice), Some(number)) = (&mut fault.complaint.advice, number) {
            let (_, general) = unit::describe(number.role.dim());
            let here = example(&fault.path, number.role.dim(), system);
            *advice = advice.replacen(&format!("example \"{general}\""), &format!("example \"{here}\""), 1);
        }
        fault
    };
    faults.into_iter().map(one).collect()
}
