//! Answers one after another, each written when it is ready: nothing is held for the end.

use super::faults::Faulty;
use super::output::{Outcome, columns, stem, write_page};
use crate::report::{COLUMNS, Entry, Order, Schedule};
use clap::ValueEnum;
use std::collections::HashSet;
use std::mem;
use std::path::PathBuf;

/// Form of the output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For reading: as wide as the terminal, up to 100 columns, and 100 in a file.
    Text,
    /// A web page that stands alone, with figures, for screen and paper; `--full` with assumed values and working.
    Html,
    /// The same as Markdown, its figures in words.
    Markdown,
    /// One page for the crew: forces to expect and to stop at, what to write down.
    Crew,
    /// The drive file with a comment for each value assumed for what it leaves out, to be edited.
    Filled,
    /// For programs; an array where there is more than one file, with the faults of a faulty one in its place.
    Json,
    /// The same, each in one line, with the faults of a faulty file in the place of its answer.
    Ndjson,
    /// A table with a row for each drive: its answer, or its faults.
    Csv,
    /// One page with a row for each drive, in the order of --sort.
    Schedule,
}

impl Format {
    /// The end of the name of a file of that form, where each drive has one.
    const fn extension(self) -> Option<&'static str> {
        match self {
            Self::Text | Self::Crew => Some("txt"),
            Self::Html => Some("html"),
            Self::Markdown => Some("md"),
            Self::Filled => Some("yaml"),
            Self::Json => Some("json"),
            Self::Ndjson | Self::Csv | Self::Schedule => None,
        }
    }
}

/// The answer for one drive.
pub(super) struct Answer {
    pub(super) page: String,
    /// Its row on a page of all, where one is wanted.
    pub(super) entry: Option<Entry>,
    pub(super) outcome: Outcome,
}

/// What stands round the answers of one run.
pub(super) struct List {
    format: Format,
    is_many: bool,
    is_first: bool,
    /// The folder that each answer is a file in, and the names of those.
    folder: Option<PathBuf>,
    names: HashSet<String>,
    schedule: Schedule,
}

impl List {
    /// Of one drive, or of as many as come, to the output or each in a file of its own.
    ///
    /// # Errors
    /// Where the form is none for that.
    pub(super) fn new(format: Format, is_many: bool, folder: Option<PathBuf>, order: Order) -> Result<Self, Faulty> {
        if format == Format::Html && is_many && folder.is_none() {
            return Err(Faulty::whole(
                "--format html",
                "is a web page for each drive: name a folder for them with --out",
            ));
        }
        if folder.is_some() && format.extension().is_none() {
            return Err(Faulty::whole("--out", "is for forms that have a page for each drive"));
        }
        let (names, schedule) = (HashSet::new(), Schedule::new(order));
        Ok(Self { format, is_many, is_first: true, folder, names, schedule })
    }

    /// Whether a page of all drives comes at the end.
    pub(super) fn has_schedule(&self) -> bool {
        self.format == Format::Schedule || self.format == Format::Html && self.folder.is_some()
    }

    /// A page of that form, with what parts it from the one before; nothing where it goes to a file.
    pub(super) fn answer(&mut self, drive: &str, answer: Answer) -> Result<String, Faulty> {
        let file = self.folder.as_ref().zip(self.format.extension());
        let file = file.map(|(folder, extension)| (folder, format!("{}.{extension}", stem(drive))));
        if let Some((folder, name)) = &file {
            if !self.names.insert(name.clone()) || name == INDEX {
                return Err(Faulty::whole(
                    drive,
                    format!("{name} is the page of another drive: give the file another name"),
                ));
            }
            write_page(folder, name, &answer.page)?;
        }
        let name = file.map(|(_, name)| name);
        let is_written = name.is_some();
        if let Some(entry) = answer.entry {
            self.schedule.add(entry, name.map(|name| address(&name)));
        }
        if is_written || self.format == Format::Schedule {
            return Ok(String::new());
        }
        let end = if self.format == Format::Json && !self.is_many { "\n" } else { "" };
        Ok(format!("{}{}{end}", self.before(), answer.page))
    }

    /// What stands in the place of the answer of a faulty file; a page and a single object are left out.
    pub(super) fn faults(&mut self, faulty: &Faulty) -> String {
        let entry = match self.format {
            _ if self.has_schedule() => {
                self.schedule.add(Entry::faulty(faulty.name(), faulty.line()), None);
                return String::new();
            }
            _ if self.folder.is_some() => return String::new(),
            Format::Json if self.is_many => faulty.json().trim_end().to_owned(),
            Format::Ndjson => faulty.json(),
            Format::Csv => row(faulty.name(), &[const { String::new() }; COLUMNS.len()], &faulty.line()),
            _ => return String::new(),
        };
        format!("{}{entry}", self.before())
    }

    /// What closes it; a list of nothing is opened first.
    pub(super) fn end(mut self) -> Result<String, Faulty> {
        match &self.folder {
            Some(folder) if self.has_schedule() => {
                write_page(folder, INDEX, &self.schedule.html())?;
                return Ok(String::new());
            }
            Some(_) => return Ok(String::new()),
            None if self.has_schedule() => return Ok(self.schedule.text(columns())),
            None => {}
        }
        let opened = if self.is_first { self.before() } else { String::new() };
        let closed = if self.format == Format::Json && self.is_many { "]\n" } else { "" };
        Ok(format!("{opened}{closed}"))
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

/// The page of all drives in a folder of web pages.
const INDEX: &str = "index.html";

/// The address of a file beside the page: what has a meaning in one is written by its number.
fn address(name: &str) -> String {
    let one = |byte: u8| match byte {
        b'-' | b'_' | b'.' | b'0'..=b'9' | b'A'..=b'Z' | b'a'..=b'z' => char::from(byte).to_string(),
        _ => format!("%{byte:02X}"),
    };
    name.bytes().map(one).collect()
}

/// A line of the table.
pub(super) fn row<T: AsRef<[u8]>>(file: &str, columns: &[T], faults: &str) -> String {
    let mut line = csv::WriterBuilder::new().from_writer(Vec::new());
    let cells = [file.as_bytes()].into_iter().chain(columns.iter().map(AsRef::as_ref)).chain([faults.as_bytes()]);
    // Writing to memory always succeeds, and text stays text.
    let written = line.write_record(cells).ok().and_then(|()| line.into_inner().ok());
    written.and_then(|line| String::from_utf8(line).ok()).unwrap_or_default()
}
