//! Answers one after another, each written when it is ready: nothing is held for the end.

use super::faults::Faulty;
use crate::report::COLUMNS;
use clap::ValueEnum;
use std::mem;

/// Form of the output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For reading, 100 columns.
    Text,
    /// A web page that stands alone, with figures, for screen and paper; `--full` with assumed values and working.
    Html,
    /// The same as Markdown, its figures in words.
    Markdown,
    /// One page for the crew: forces to expect and to stop at, what to write down.
    Crew,
    /// The drive file with a comment for each value that was taken for what it leaves out, to be edited.
    Filled,
    /// For programs; an array where there is more than one file, with the faults of a faulty one in its place.
    Json,
    /// The same, each in one line, with the faults of a faulty file in the place of its answer.
    Ndjson,
    /// A table with a row for each drive: its answer, or its faults.
    Csv,
}

/// What stands round the answers of one run.
pub(super) struct List {
    format: Format,
    is_many: bool,
    is_first: bool,
}

impl List {
    /// Of one drive, or of as many as come.
    pub(super) const fn new(format: Format, is_many: bool) -> Self {
        Self { format, is_many, is_first: true }
    }

    /// A page of that form, with what parts it from the one before.
    pub(super) fn answer(&mut self, page: &str) -> String {
        let end = if self.format == Format::Json && !self.is_many { "\n" } else { "" };
        format!("{}{page}{end}", self.before())
    }

    /// What stands in the place of the answer of a faulty file; a page and a single object are left out.
    pub(super) fn faults(&mut self, faulty: &Faulty) -> String {
        let entry = match self.format {
            Format::Json if self.is_many => faulty.json().trim_end().to_owned(),
            Format::Ndjson => faulty.json(),
            Format::Csv => row(faulty.name(), &[const { String::new() }; COLUMNS.len()], &faulty.line()),
            _ => return String::new(),
        };
        format!("{}{entry}", self.before())
    }

    /// What closes it; a list of nothing is opened first.
    pub(super) fn end(mut self) -> String {
        let opened = if self.is_first { self.before() } else { String::new() };
        let closed = if self.format == Format::Json && self.is_many { "]\n" } else { "" };
        format!("{opened}{closed}")
    }

    fn before(&mut self) -> String {
        let is_first = mem::take(&mut self.is_first);
        match self.format {
            Format::Json if is_first && self.is_many => "[".to_owned(),
            Format::Csv if is_first => row("file", &COLUMNS, "faults"),
            Format::Json if !is_first => ",\n".to_owned(),
            Format::Text | Format::Crew | Format::Markdown if !is_first => "\n\n".to_owned(),
            _ => String::new(),
        }
    }
}

/// A line of the table.
pub(super) fn row<T: AsRef<[u8]>>(file: &str, columns: &[T], faults: &str) -> String {
    let mut line = csv::WriterBuilder::new().from_writer(Vec::new());
    let cells = [file.as_bytes()].into_iter().chain(columns.iter().map(AsRef::as_ref)).chain([faults.as_bytes()]);
    // Writing to memory always succeeds, and text stays text.
    let written = line.write_record(cells).ok().and_then(|()| line.into_inner().ok());
    written.and_then(|line| String::from_utf8(line).ok()).unwrap_or_default()
}
