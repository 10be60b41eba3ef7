//! `jackpull assess FILE...`

use super::faults::Faulty;
use super::input::{bytes, handbook, of_tables, text};
use super::output::{Outcome, complain, print};
use super::units::{self, Units};
use crate::choice::{Standing, choose};
use crate::drive_file::{DriveFile, InputError};
use crate::handbook::Handbook;
use crate::report::{Beside, Report};
use clap::{Args, ValueEnum};
use sha2::{Digest, Sha256};
use std::collections::HashSet;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Form of the output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Format {
    /// For reading, 100 columns.
    Text,
    /// The drive file with a comment for each value that was taken for what it leaves out, to be edited.
    Filled,
    /// For programs; an array where there is more than one file, with the faults of a faulty one in its place.
    Json,
}

/// What counts as no success beside what always does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum FailOn {
    /// A scheme that only fits with care.
    Care,
}

/// Assess the pipes of one or more drive files and rank them.
#[derive(Debug, Args)]
pub(super) struct Assess {
    /// Drive files.
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// Form of the output.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
    /// Table files laid over the tables of the handbook, in this order.
    #[arg(long, value_name = "FILE")]
    tables: Vec<PathBuf>,
    /// Units of the output.
    #[arg(long, value_enum, help = "Units of the output [default: those of the length of the drive]")]
    units: Option<Units>,
    /// Standing that is no success: the exit code is then that of a drive for which nothing fits.
    #[arg(long, value_enum, value_name = "STANDING")]
    fail_on: Option<FailOn>,
    /// Text with the tables of every scheme, not of the first alone.
    #[arg(long)]
    full: bool,
}

impl Assess {
    pub(super) fn run(&self) -> Outcome {
        let handbook = match handbook(&self.tables) {
            Ok(handbook) => handbook,
            Err(faulty) => return self.complain(&faulty),
        };
        let mut worst = Outcome::Chosen;
        let mut pages = Vec::new();
        // A fault of a table is that of every drive, and told once.
        let mut told = HashSet::new();
        for file in &self.files {
            match self.one(file, &handbook) {
                Ok((page, outcome)) => {
                    worst = worst.max(outcome);
                    pages.push(page);
                }
                Err(faulty) => {
                    worst = Outcome::Faulty;
                    let json = faulty.json();
                    // An array has an entry for each file, whatever becomes of the others.
                    if self.format == Format::Json && self.files.len() > 1 {
                        pages.push(json.trim_end().to_owned());
                    }
                    if told.insert(json) {
                        self.complain(&faulty);
                    }
                }
            }
        }
        let output = match (self.format, self.files.len()) {
            (Format::Json, 2..) => format!("[{}]\n", pages.join(",\n")),
            (Format::Json, _) => pages.iter().map(|page| format!("{page}\n")).collect(),
            (Format::Text, _) => pages.join("\n\n"),
            (Format::Filled, _) => pages.concat(),
        };
        print(&output, worst)
    }

    fn complain(&self, faulty: &Faulty) -> Outcome {
        complain(&match self.format {
            Format::Text | Format::Filled => faulty.text(),
            Format::Json => faulty.json(),
        });
        Outcome::Faulty
    }

    /// The page of one file, or what is wrong with it.
    fn one(&self, path: &Path, handbook: &Arc<Handbook>) -> Result<(String, Outcome), Faulty> {
        let (name, bytes) = bytes(path)?;
        let text = text(&name, &bytes)?;
        let of_tables = |error| of_tables(&name, handbook, &error);
        let faulty = |error| match error {
            InputError::Faults(faults) => Faulty::new(&name, text, faults),
            InputError::Handbook(error) => of_tables(error),
        };
        let file = DriveFile::read(text).map_err(faulty)?;
        let drive = file.drive(text, handbook).map_err(faulty)?;
        let choice = choose(&drive).map_err(of_tables)?;
        let system = self.units.map_or_else(|| units::of(text), Into::into);
        let beside = Beside::of(&file, handbook, &drive, &choice).map_err(faulty)?;
        let digest = digest(&bytes);
        let report = Report::new(&drive, &choice).with_digest(&digest).with(&beside);
        let passes = |standing| standing == Standing::Fits || self.fail_on.is_none();
        let chosen = choice.chosen().filter(|first| passes(first.standing));
        let outcome = if chosen.is_some() { Outcome::Chosen } else { Outcome::NoneFits };
        let page = match self.format {
            Format::Text if self.full => report.text_in_full(system),
            Format::Text => report.text(system),
            Format::Filled => Ok(report.filled(text, system)),
            Format::Json => report.json(system),
        };
        Ok((page.map_err(of_tables)?, outcome))
    }
}

fn digest(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold("sha256:".to_owned(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}
