//! `jackpull schema`: JSON Schema of the drive file, out of the declaration of its fields.

use super::output::{Outcome, print};
use crate::drive_file::DriveFile;
use crate::drive_file::fields::{Bounds, Number, Shape, Spec};
use crate::quantity::{Dim, unit};
use crate::report::JSON_SCHEMA;
use crate::yaml::{Form, UNKNOWN};
use clap::{Args, ValueEnum};
use serde_json::{Map, Value, json};

/// Print a JSON Schema (draft 2020-12) of the drive file, by which an editor completes and checks it, or of the answer.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  jackpull schema > drive.schema.json  of the drive file, for an editor
  jackpull schema --of result          of what assess --format json prints")]
pub(super) struct Schema {
    /// What it is of.
    #[arg(long, value_enum, default_value_t = Of::Drive)]
    of: Of,
}

/// What has a schema.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Of {
    /// The drive file.
    Drive,
    /// What `assess` prints as JSON.
    Result,
}

impl Schema {
    pub(super) fn run(&self) -> Outcome {
        if self.of == Of::Result {
            return print(JSON_SCHEMA, Outcome::Chosen);
        }
        let mut schema = members(json!({
            "$schema": "https://json-schema.org/draft/2020-12/schema",
            "title": "Drive file of jackpull",
        }));
        schema.extend(block(DriveFile::FIELDS));
        // A pattern is long: it stands once for each dimension, not at each field.
        let mut dims = Vec::new();
        dims_of(DriveFile::FIELDS, &mut dims);
        let quantities = dims.into_iter().map(|dim| (name(dim), quantity(dim))).collect();
        schema.insert("$defs".to_owned(), Value::Object(quantities));
        print(&format!("{:#}\n", Value::Object(schema)), Outcome::Chosen)
    }
}

/// The members of what is written as an object.
fn members(object: Value) -> Map<String, Value> {
    match object {
        Value::Object(members) => members,
        _ => Map::new(),
    }
}

/// The schema of a block of these fields.
fn block(specs: &[Spec]) -> Map<String, Value> {
    let properties = specs.iter().map(|spec| (spec.key, field(spec)));
    let required: Vec<&str> = specs.iter().filter(|spec| spec.must).map(|spec| spec.key).collect();
    object(properties, &required)
}

fn object<'a>(
    properties: impl Iterator<Item = (&'a str, Map<String, Value>)>,
    required: &[&str],
) -> Map<String, Value> {
    let properties: Map<String, Value> =
        properties.map(|(key, schema)| (key.to_owned(), Value::Object(schema))).collect();
    members(json!({
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": false,
    }))
}

/// The dimensions of the fields, each once.
fn dims_of(specs: &[Spec], dims: &mut Vec<Dim>) {
    for spec in specs {
        match spec.shape {
            Shape::One(form) | Shape::List(form) | Shape::Band(form) => {
                dims.extend(form.dim().filter(|dim| !dims.contains(dim)));
            }
            Shape::Block(specs) | Shape::Blocks(specs) => dims_of(specs, dims),
        }
    }
}

/// What a quantity of the dimension is called, as a key: `length`, `pressure_or_stress`.
fn name(dim: Dim) -> String {
    let words = unit::describe(dim).0;
    let words = words.strip_prefix("an ").or(words.strip_prefix("a ")).unwrap_or(words);
    let words = words.split_once(" (").map_or(words, |(words, _)| words);
    words.replace(|c: char| !c.is_ascii_alphanumeric(), "_")
}

/// The schema of a field, with what is said of it.
fn field(spec: &Spec) -> Map<String, Value> {
    let list = |items: Map<String, Value>| members(json!({ "type": "array", "items": items }));
    let mut schema = match spec.shape {
        Shape::One(form) => scalar(form, spec.number),
        Shape::List(form) => list(scalar(form, spec.number)),
        Shape::Band(form) => {
            let levels = ["low", "likely", "high"];
            object(levels.into_iter().map(|name| (name, scalar(form, spec.number))), &levels)
        }
        // The grade tells the depth of the other pit.
        Shape::Block(specs) if spec.key == "launch" => {
            let mut schema = block(specs);
            schema.insert("required".to_owned(), json!(["invert_depth"]));
            schema
        }
        Shape::Block(specs) => block(specs),
        Shape::Blocks(specs) => list(block(specs)),
    };
    if let (false, Some(forms)) = (spec.must, schema.get_mut("anyOf").and_then(Value::as_array_mut))
        && matches!(spec.shape, Shape::One(Form::Quantity(..)))
    {
        forms.push(json!({ "const": UNKNOWN }));
    }
    let left_out = spec.otherwise.map(|other| format!(" Left out: {other}.")).unwrap_or_default();
    schema.insert("description".to_owned(), json!(format!("{}{left_out}", spec.doc)));
    if let (Some(number), Shape::One(_)) = (spec.number, spec.shape) {
        let [si, us] = number.example;
        schema.insert("examples".to_owned(), if si == us { json!([si]) } else { json!([si, us]) });
    }
    schema
}

/// The schema of one value.
fn scalar(form: Form, number: Option<Number>) -> Map<String, Value> {
    let quantity = |dim: Dim| json!({ "$ref": format!("#/$defs/{}", name(dim)) });
    members(match form {
        Form::Word(words) => json!({ "enum": words }),
        // A text such as 12 or true is one without quotes too.
        Form::Text => json!({ "type": ["string", "number", "boolean"] }),
        // The library writes it as a text.
        Form::YesNo => json!({ "enum": [true, false, "true", "false"] }),
        Form::Quantity(dim, absolute) if dim == Dim::NONE && !absolute => {
            json!({ "anyOf": [plain(number), quantity(dim)] })
        }
        Form::Quantity(dim, _) => json!({ "anyOf": [quantity(dim)] }),
        Form::OrWord(dim, words) => json!({ "anyOf": [{ "enum": words }, quantity(dim)] }),
        Form::OrKey(dim) => json!({ "anyOf": [{ "type": "string", "pattern": "^[A-Za-z]" }, quantity(dim)] }),
    })
}

/// A number without a unit, within its bounds.
fn plain(number: Option<Number>) -> Value {
    match number.map(|number| number.bounds) {
        None => json!({ "type": "number" }),
        Some(Bounds::UpTo(most)) => json!({ "type": "number", "exclusiveMinimum": 0, "maximum": most }),
        Some(Bounds::Within(least, most)) => json!({ "type": "number", "minimum": least, "maximum": most }),
    }
}

/// A number with a unit of the dimension.
fn quantity(dim: Dim) -> Value {
    const NUMBER: &str = r"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?";
    let unitless = if dim == Dim::NONE { "?" } else { "" };
    json!({ "type": "string", "pattern": format!(r"^\s*{NUMBER}\s*({}){unitless}\s*$", units(dim)) })
}

/// A pattern of the units of a dimension: one with an exponent, two by or over each other; of more factors or with
/// negative exponents all, which the reader sorts out.
fn units(wanted: Dim) -> String {
    let mut dims: Vec<Dim> = Vec::new();
    for unit in unit::UNITS {
        if !dims.contains(&unit.dim) {
            dims.push(unit.dim);
        }
    }
    let symbols = |fits: &dyn Fn(&unit::Unit) -> bool| {
        let fitting: Vec<&str> = unit::UNITS.iter().filter(|unit| fits(unit)).map(|unit| unit.symbol).collect();
        format!("({})", fitting.join("|"))
    };
    let power = |dim: Dim, exponent: i8| {
        let symbols = symbols(&|unit| unit.dim == dim && (unit.offset <= 0.0 || exponent == 1));
        match exponent {
            1 => symbols,
            2 => format!(r"{symbols}(\^?2|²)"),
            3 => format!(r"{symbols}(\^?3|³)"),
            _ => format!(r"{symbols}(\^?{exponent}|⁴)"),
        }
    };
    let factors: Vec<(Dim, i8)> = dims.iter().flat_map(|dim| (1..=4).map(|exponent| (*dim, exponent))).collect();
    let mut patterns = Vec::new();
    for (dim, exponent) in &factors {
        let Some(first) = Dim::NONE.times(*dim, *exponent) else { continue };
        if first == wanted && (wanted != Dim::NONE || *exponent == 1) {
            patterns.push(power(*dim, *exponent));
        }
        for (other, its) in factors.iter().filter(|(other, _)| *other != Dim::NONE && *dim != Dim::NONE) {
            if first.times(*other, *its) == Some(wanted) {
                patterns.push(format!(r"{}\s*[*·]\s*{}", power(*dim, *exponent), power(*other, *its)));
            }
            if first.times(*other, -*its) == Some(wanted) {
                patterns.push(format!(r"{}\s*/\s*{}", power(*dim, *exponent), power(*other, *its)));
            }
        }
    }
    let any = format!(r"{}(\^?-?\d|[²³⁴])?", symbols(&|unit| unit.offset <= 0.0));
    patterns.push(format!(r"{any}(\s*[*·/]\s*{any}){{2,}}"));
    patterns.push(format!(r"({any}\s*[*·/]\s*)*{}\^?-\d(\s*[*·/]\s*{any})*", symbols(&|unit| unit.offset <= 0.0)));
    patterns.join("|")
}
