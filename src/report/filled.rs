//! The drive file, and behind it what was taken for all that it leaves out, to be edited.

use super::Report;
use super::words::assumed_field;
use crate::drive::Assumed;
use crate::drive_file::fields::Spec;
use crate::handbook::Handbook;
use crate::quantity::UnitSystem;

const OPENING: &str = "# What the file leaves out, as assumed. A comment sets nothing: put what you know into the file,
# with your own value. Of a range or band each check uses the end that is safe for it.
";
const NO_FIELD: &str = "# Assumed besides, without a field in the file:
";

/// The text as it is and a comment for each value, so that it reads as before.
pub(super) fn text(file: &str, report: &Report<'_>, system: UnitSystem) -> String {
    let handbook = report.drive.handbook();
    let (fields, others): (Vec<&Assumed>, Vec<&Assumed>) =
        report.drive.assumed().iter().partition(|assumed| is_field(&assumed.field));
    let lines = |list: &[&Assumed]| list.iter().map(|assumed| line(assumed, handbook, system)).collect::<String>();
    let gap = if file.ends_with('\n') { "\n" } else { "\n\n" };
    format!("{file}{gap}{OPENING}{}{NO_FIELD}{}", lines(&fields), lines(&others))
}

fn line(assumed: &Assumed, handbook: &Handbook, system: UnitSystem) -> String {
    let reference = handbook.reference(assumed.origin);
    let (place, mark) = (reference.place(), reference.mark);
    format!("# {}: {}  # {place}, {mark}\n", assumed_field(assumed), assumed.value.text(system))
}

/// Whether it is the path of a field, places in lists apart.
fn is_field(path: &str) -> bool {
    let mut plain = String::new();
    let mut inside = false;
    for c in path.chars() {
        inside = c == '[' || inside && c != ']';
        if !inside || c == '[' {
            plain.push(c);
        }
    }
    !path.contains([' ', ':']) && Spec::at(&plain).is_some()
}
