//! A report being written, part by part, with values in the units of the reader.

use crate::choice::Ranked;
use crate::choice::reason::exclusion;
use crate::drive::Drive;
use crate::handbook::HandbookError;
use crate::quantity::{Band, Shown, UnitSystem};
use crate::report::document::{Block, Table};
use crate::source::Origin;

pub(super) fn is_checked(ranked: &Ranked) -> bool {
    ranked.scheme.checks.iter().next().is_some()
}

/// Capital at the start, full stop at the end.
pub(super) fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str().trim_end_matches('.'))
}

/// What is printed, of one drive in one family of units.
pub(super) struct Page<'a> {
    pub(super) blocks: Vec<Block>,
    pub(super) drive: &'a Drive,
    pub(super) system: UnitSystem,
}

impl<'a> Page<'a> {
    pub(super) const fn new(drive: &'a Drive, system: UnitSystem) -> Self {
        Self { blocks: Vec::new(), drive, system }
    }

    pub(super) fn value(&self, shown: Shown) -> String {
        shown.display(self.system).to_string()
    }

    /// With digits to compute with.
    pub(super) fn precise(&self, shown: Shown) -> String {
        shown.precise(self.system).to_string()
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
        self.blocks.push(Block::Line(text.to_owned()));
    }

    pub(super) fn gap(&mut self) {
        self.blocks.push(Block::Gap);
    }

    pub(super) fn heading(&mut self, title: &str) {
        self.blocks.push(Block::Heading(title.to_owned()));
    }

    pub(super) fn table(&mut self, table: Table) {
        self.blocks.push(Block::Table(table));
    }

    /// `first` at the start, the rest under its end.
    pub(super) fn wrapped(&mut self, first: &str, text: &str) {
        self.blocks.push(Block::Paragraph { lead: first.to_owned(), text: text.to_owned() });
    }

    /// Why a scheme is excluded, and by which source.
    pub(super) fn excluded(&self, origin: Origin) -> Result<(String, String), HandbookError> {
        let source = self.drive.handbook.reference(origin).source.to_owned();
        Ok((exclusion(self.drive, origin)?, source))
    }
}
