//! A page being written: lines of 100 columns, values in the units of the reader.

use crate::check::Check;
use crate::choice::Ranked;
use crate::choice::reason::{capped, exclusion};
use crate::drive::Drive;
use crate::handbook::HandbookError;
use crate::quantity::{Band, Shown, UnitSystem};
use crate::source::Origin;
use textwrap::{Options, fill};

const WIDTH: usize = 100;

pub(super) fn is_checked(ranked: &Ranked) -> bool {
    ranked.scheme.checks.iter().next().is_some()
}

/// The verdict, and that it is a screen that is failed.
pub(super) fn verdict(check: &Check) -> String {
    let label = check.verdict.label();
    if check.is_failed_screen() { format!("{label} *") } else { label.to_owned() }
}

/// How far a limit is used.
pub(super) fn ratio(ratio: Option<f64>) -> String {
    ratio.map_or_else(|| "-".to_owned(), capped)
}

/// Capital at the start, full stop at the end.
pub(super) fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str().trim_end_matches('.'))
}

/// What is printed, of one drive in one family of units.
pub(super) struct Page<'a> {
    pub(super) text: String,
    pub(super) drive: &'a Drive,
    pub(super) system: UnitSystem,
}

impl Page<'_> {
    pub(super) fn value(&self, shown: Shown) -> String {
        shown.display(self.system).to_string()
    }

    pub(super) fn band(&self, band: Band<Shown>) -> String {
        format!("{} / {} / {}", self.value(band.low), self.value(band.likely), self.value(band.high))
    }

    pub(super) fn origin(&self, origin: Origin) -> String {
        self.drive.handbook.reference(origin).to_string()
    }

    /// The same in short: the field, the row or the source, and the mark.
    pub(super) fn place(&self, origin: Origin) -> String {
        let reference = self.drive.handbook.reference(origin);
        let place = if let Origin::File(field) = origin { field.0.to_owned() } else { reference.place() };
        format!("{place}, {}", reference.mark)
    }

    pub(super) fn line(&mut self, text: &str) {
        self.text.push_str(text.trim_end());
        self.text.push('\n');
    }

    pub(super) fn gap(&mut self) {
        self.text.push('\n');
    }

    pub(super) fn heading(&mut self, title: &str) {
        self.gap();
        self.wrapped("", title);
        self.line(&"-".repeat(title.chars().count().min(WIDTH)));
    }

    /// `first` at the start, the rest under its end.
    pub(super) fn wrapped(&mut self, first: &str, text: &str) {
        // A text of one short line, which no word can make wider than its bytes, needs no looking for where to break it.
        if first.len() + text.len() <= WIDTH && !text.is_empty() && !text.contains('\n') {
            return self.line(&format!("{first}{text}"));
        }
        let rest = " ".repeat(first.chars().count());
        let options = Options::new(WIDTH).initial_indent(first).subsequent_indent(&rest);
        let filled = fill(text, options);
        for line in filled.lines() {
            self.line(line);
        }
    }

    /// Why a scheme is excluded, and by which source.
    pub(super) fn excluded(&self, origin: Origin) -> Result<(String, String), HandbookError> {
        let source = self.drive.handbook.reference(origin).source.to_owned();
        Ok((exclusion(self.drive, origin)?, source))
    }
}
