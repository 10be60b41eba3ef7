//! The report as JSON. The form has a version; a key is added freely, and none changes without another version.

mod scheme;
mod sure;

use super::contents::Report;
use super::{cautions, words};
use crate::check::{Check, Verdict};
use crate::choice::reason::with_verdict;
use crate::drive::Drive;
use crate::drive_file::DriveFile;
use crate::handbook::{HandbookError, Method};
use crate::quantity::{Band, Shown, UnitSystem};
use crate::source::Origin;
use serde_json::{Map, Value};

/// Version of the form.
const FORM: u32 = 1;

/// A JSON object, written like a struct; `..` takes over the members of another.
macro_rules! object {
    ($($key:ident: $value:expr),* $(; ..$other:expr $(, $more:ident: $rest:expr)*)? $(,)?) => {{
        let mut object = Map::new();
        $(object.insert(stringify!($key).to_owned(), Value::from($value));)*
        $(
            object.extend($other);
            $(object.insert(stringify!($more).to_owned(), Value::from($rest));)*
        )?
        object
    }};
}
use object;

/// The report as one object.
pub(super) fn whole(report: &Report<'_>, system: UnitSystem) -> Result<Value, HandbookError> {
    let json = Json { drive: report.drive, system };
    let choice = report.choice;
    let schemes: Vec<_> = choice.ranked.iter().map(|ranked| json.scheme(ranked)).collect::<Result<_, _>>()?;
    let tables = report.drive.handbook().overlays().map(|(table, file)| object! { table: table, file: file });
    Ok(Value::from(object! {
        version: FORM,
        crate_version: env!("CARGO_PKG_VERSION"),
        file: report.file,
        drive: report.drive.name(),
        drive_digest: report.digest,
        units: match system {
            UnitSystem::Si => "si",
            UnitSystem::Us => "us",
        },
        answer: words::answer(report.drive, choice),
        choice: choice.chosen().map(|first| object! {
            method: first.scheme.method.key(),
            method_code: method_code(first.scheme.method),
            pipe: first.pipe.label(),
            standing: first.standing.label(),
            standing_code: first.standing.code(),
            score: json.score(first),
            reason: choice.reason.as_str(),
            with_care: array(with_verdict(first, Verdict::WithCare).map(at)),
            governed_by: first.scheme.governing().map(at),
        }),
        reason: choice.reason.as_str(),
        schemes: schemes,
        cautions: array(cautions::always().into_iter()),
        not_checked: array(cautions::not_checked(report.drive, choice)),
        not_looked_at: words::not_looked_at(report.drive),
        tables: array(tables),
        facts: words::facts(report.drive, system),
        inputs: report.inputs.map(|file| json.inputs(file)),
        sure: report.beside.map(|beside| json.sure(beside, choice)),
        line: report.beside.and_then(|beside| json.line(beside, choice)),
        working: choice.ranked.first().map_or_else(Vec::new, |first| json.working(first)),
    }))
}

/// For programs.
const fn method_code(method: Method) -> &'static str {
    match method {
        Method::PipeJacking => "pipe_jacking",
        Method::Pullback => "pullback",
    }
}

fn array<V: Into<Value>>(list: impl Iterator<Item = V>) -> Vec<Value> {
    list.map(Into::into).collect()
}

/// Without those of its members that are `null`.
fn where_there(mut object: Map<String, Value>, members: &[&str]) -> Map<String, Value> {
    object.retain(|key, value| !(value.is_null() && members.contains(&key.as_str())));
    object
}

/// A check by name, and how far its limit is used.
fn at(check: &Check) -> Map<String, Value> {
    object! { subject: check.subject.label(), code: check.subject.code(), utilisation: check.utilisation() }
}

/// Values of one drive in one family of units.
#[derive(Clone, Copy)]
struct Json<'a> {
    drive: &'a Drive,
    system: UnitSystem,
}

impl Json<'_> {
    fn value(&self, shown: Shown) -> Map<String, Value> {
        let (value, unit) = shown.in_units(self.system);
        object! { value: value, unit: unit }
    }

    /// The numbers of the drive file, each by its path.
    fn inputs(&self, file: &DriveFile) -> Vec<Value> {
        let mut inputs = Vec::new();
        file.each_number(|path, shown| {
            inputs.push(object! { path: path; ..self.value(shown) }.into());
        });
        inputs
    }

    fn band(&self, band: Band<Shown>) -> Map<String, Value> {
        object! { low: self.value(band.low), likely: self.value(band.likely), high: self.value(band.high) }
    }

    /// Source, locator and mark, as they stand among the members of what rests on them.
    fn source(&self, origin: Origin) -> Map<String, Value> {
        let reference = self.drive.handbook().reference(origin);
        object! { source: reference.source, at: reference.locator, mark: reference.mark.key() }
    }

    /// The same and the row, where it is one.
    fn basis(&self, origin: Origin) -> Map<String, Value> {
        object! { ; ..self.source(origin), row: self.drive.handbook().reference(origin).row_id() }
    }

    /// The same as an object of its own.
    fn origin(&self, origin: Origin) -> Map<String, Value> {
        object! { ; ..self.basis(origin), replaces: self.replaces(origin) }
    }

    /// What the embedded row says, where a user's table took its place.
    fn replaces(&self, origin: Origin) -> Option<String> {
        self.drive.handbook().reference(origin).replaces
    }
}
