//! `jackpull assess FILE...`

use super::each::{Column, Each, of_row};
use super::faults::Faulty;
use super::input::{bytes, drive_files, handbook, is_standard, of_tables, text};
use super::list::{Answer, Format, List, row};
use super::output::{Outcome, Progress, columns, complain, print, write_figures};
use super::threads::shared_out;
use super::units::{self, Units};
use crate::choice::{Standing, choose};
use crate::drive_file::{DriveFile, InputError};
use crate::handbook::Handbook;
use crate::report::{Beside, Order, Report, WIDTH};
use clap::{Args, ValueEnum};
use sha2::{Digest, Sha256};
use std::collections::HashSet;
use std::fmt::Write as _;
use std::num::NonZero;
use std::path::PathBuf;
use std::sync::Arc;

/// What counts as no success beside what always does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum FailOn {
    /// A scheme that only fits with care.
    Care,
}

/// Assess the pipes of one or more drive files and rank them.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  jackpull assess sewer.yaml                                the page for one drive
  jackpull assess --format html --full sewer.yaml > s.html  the sheet with its working
  jackpull assess --format crew sewer.yaml                  the page for the crew
  jackpull assess --format html --out pages drives/         a page for each drive, and an index
  jackpull assess --format csv --each drives.csv base.yaml  a row for each row of a table
  jackpull assess --format schedule --sort file drives/     all drives on one page")]
pub(super) struct Assess {
    /// Drive files, folders of them, or - for standard input.
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// Table (CSV; - for standard input) with a drive in each row, laid over the one drive file: each header is the path of a field and its unit, such
    /// as `length [m]` or `ground[0].spt_n`.
    #[arg(long, value_name = "TABLE.csv")]
    each: Option<PathBuf>,
    /// Form of the output.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    /// Table files laid over the tables of the handbook, in this order.
    #[arg(long, value_name = "FILE")]
    tables: Vec<PathBuf>,
    /// Units of the output.
    #[arg(long, value_enum, help = "Units of the output [default: those of the length of the drive]")]
    units: Option<Units>,
    /// Standing that counts as failure: the exit code is then that of a drive for which nothing fits.
    #[arg(long, value_enum, value_name = "STANDING")]
    fail_on: Option<FailOn>,
    /// Order of the schedule and of the index.
    #[arg(long, value_enum, default_value_t = Sort::Standing)]
    sort: Sort,
    /// Threads that share the drives; the output is the same for any number.
    #[arg(long, value_name = "NUMBER", default_value = "1")]
    threads: NonZero<usize>,
    /// Print the tables of every scheme, not only the first; in a sheet, assumed values and working too.
    #[arg(long)]
    full: bool,
    /// Folder to write the figures of each drive to, as SVG named after its file.
    #[arg(long, value_name = "DIR")]
    figures: Option<PathBuf>,
    /// Folder to write each answer to, in a file named after its drive; of web pages with an index.
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
}

/// Order of a page of many drives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Sort {
    /// What asks for work first, and of those what uses most of its limit.
    Standing,
    /// As the files or rows come.
    File,
    /// What uses most of its limit first.
    Utilisation,
}

impl From<Sort> for Order {
    fn from(sort: Sort) -> Self {
        match sort {
            Sort::Standing => Self::Standing,
            Sort::File => Self::File,
            Sort::Utilisation => Self::Utilisation,
        }
    }
}

/// The columns of a table that drives come from.
type Columns = Option<Arc<[Column]>>;

/// Name and bytes of one drive after another.
type Drives<'a> = Box<dyn Iterator<Item = Result<(String, Vec<u8>), Faulty>> + 'a>;

/// Drives read ahead for each of several threads: enough that those of one thread are soon no harder than another's.
const AHEAD: usize = 16;

impl Assess {
    pub(super) fn run(&self) -> Outcome {
        self.all().unwrap_or_else(|faulty| self.complain(&faulty))
    }

    fn all(&self) -> Result<Outcome, Faulty> {
        let handbook = handbook(&self.tables)?;
        let (mut drives, columns) = self.drives()?;
        let is_many = self.each.is_some() || self.files.len() > 1 || self.files.iter().any(|path| path.is_dir());
        let mut list = List::new(self.format, is_many, self.out.clone(), self.sort.into())?;
        let has_schedule = list.has_schedule();
        let mut progress = Progress::new(is_many, self.out.is_some() || has_schedule);
        let (mut worst, mut refused) = (Outcome::Chosen, 0);
        let mut told = HashSet::new();
        let answered = |drive: Result<(String, Vec<u8>), Faulty>| {
            let (name, bytes) = drive?;
            let answer = self.one(&name, &bytes, &handbook, has_schedule).map_err(|faulty| match &columns {
                Some(columns) if faulty.name() == name => of_row(faulty, columns),
                _ => faulty,
            });
            answer.map(|answer| (name, answer))
        };
        // One thread waits for nothing but the drive at hand.
        let ahead = if self.threads.get() == 1 { 1 } else { self.threads.get() * AHEAD };
        loop {
            let batch: Vec<_> = drives.by_ref().take(ahead).collect();
            if batch.is_empty() {
                progress.clear();
                return Ok(print(&list.end()?, worst));
            }
            for answered in shared_out(self.threads, batch, answered) {
                let answered = answered.and_then(|(name, answer)| {
                    let outcome = answer.outcome;
                    Ok((list.answer(&name, answer)?, outcome))
                });
                progress.step();
                let entry = match answered {
                    Ok((entry, outcome)) => {
                        worst = worst.max(outcome);
                        entry
                    }
                    Err(faulty) => {
                        progress.clear();
                        refused += 1;
                        worst = Outcome::Faulty(refused);
                        // A fault of a table is that of every drive, and told once.
                        let is_of_table = handbook.overlays().any(|(_, file)| file == faulty.name());
                        if !is_of_table || told.insert(faulty.json()) {
                            self.complain(&faulty);
                        }
                        list.faults(&faulty)
                    }
                };
                if print(&entry, Outcome::Chosen) != Outcome::Chosen {
                    return Ok(Outcome::FAULTY);
                }
            }
        }
    }

    /// Name and text of every drive, and the columns of the table where they come from one.
    fn drives(&self) -> Result<(Drives<'_>, Columns), Faulty> {
        let Some(table) = &self.each else {
            let files = self.files.iter().flat_map(|path| drive_files(path));
            return Ok((Box::new(files.map(|file| bytes(&file?))), None));
        };
        let [base] = self.files.as_slice() else {
            return Err(Faulty::whole(
                &table.display().to_string(),
                "its rows are laid over one drive file: name no other",
            ));
        };
        if is_standard(table) && is_standard(base) {
            return Err(Faulty::whole("-", "is the table or the drive file, not both"));
        }
        let each = Each::open(table, base)?;
        let columns = each.columns();
        Ok((Box::new(each), Some(columns)))
    }

    fn complain(&self, faulty: &Faulty) -> Outcome {
        complain(&match self.format {
            Format::Json | Format::Ndjson => faulty.json(),
            _ => faulty.text(),
        })
    }

    /// The page of one file, or what is wrong with it.
    fn one(&self, name: &str, bytes: &[u8], handbook: &Arc<Handbook>, has_schedule: bool) -> Result<Answer, Faulty> {
        let text = text(name, bytes)?;
        let of_tables = |error| of_tables(name, handbook, &error);
        let faulty = |error| match error {
            InputError::Faults(faults) => Faulty::new(name, text, faults),
            InputError::Handbook(error) => of_tables(error),
        };
        let file = DriveFile::read(text).map_err(faulty)?;
        let drive = file.drive(text, handbook).map_err(faulty)?;
        let choice = choose(&drive).map_err(of_tables)?;
        let system = self.units.map_or_else(|| units::of(text), Into::into);
        let digest = digest(bytes);
        // A page in a file is the same whoever makes it.
        let columns = if self.out.is_some() { WIDTH } else { columns() };
        let report = Report::new(&drive, &choice)
            .in_columns(columns)
            .of_file(name)
            .with_digest(&digest)
            .as_written(text)
            .with_inputs(&file);
        if let Some(folder) = &self.figures {
            write_figures(folder, name, &report.figures(system))?;
        }
        let passes = |standing| standing == Standing::Fits || self.fail_on.is_none();
        let chosen = choice.chosen().filter(|first| passes(first.standing));
        let outcome = if chosen.is_some() { Outcome::Chosen } else { Outcome::NoneFits };
        // What a row and a drive file do not tell is not looked at.
        let beside = || Beside::of(&file, handbook, &drive, &choice).map_err(faulty);
        let page = match self.format {
            Format::Text if self.full => report.with(&beside()?).text_in_full(system),
            Format::Text => report.with(&beside()?).text(system),
            Format::Html => report.with(&beside()?).html(system, self.full),
            Format::Markdown => report.with(&beside()?).markdown(system, self.full),
            Format::Crew => report.crew(system),
            Format::Filled => Ok(report.filled(text, system)),
            Format::Json => report.with(&beside()?).json(system),
            Format::Ndjson => report.with(&beside()?).json_line(system).map(|line| format!("{line}\n")),
            Format::Csv => Ok(row(name, &report.row(), "")),
            Format::Schedule => Ok(String::new()),
        };
        let entry = has_schedule.then(|| report.entry());
        Ok(Answer { page: page.map_err(of_tables)?, entry, outcome })
    }
}

fn digest(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold("sha256:".to_owned(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}
