//! `jackpull assess FILE...`

use super::faults::Faulty;
use super::{Outcome, Units, complain, print};
use crate::choice::choose;
use crate::drive_file::{InputError, read_drive};
use crate::handbook::{Handbook, HandbookError};
use crate::report;
use crate::yaml::{LARGEST_INPUT, text_of};
use clap::{Args, ValueEnum};
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::fs::File;
use std::io::Read as _;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Form of the output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Format {
    /// For reading, 100 columns.
    Text,
    /// For programs; an array where there is more than one file.
    Json,
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
    #[arg(long, value_enum, default_value_t = Units::Si)]
    units: Units,
}

impl Assess {
    pub(super) fn run(&self) -> Outcome {
        let handbook = match self.handbook() {
            Ok(handbook) => handbook,
            Err(faulty) => return self.complain(&faulty),
        };
        let mut worst = Outcome::Chosen;
        let mut pages = Vec::new();
        for file in &self.files {
            match self.one(file, &handbook) {
                Ok((page, outcome)) => {
                    worst = worst.max(outcome);
                    pages.push(page);
                }
                Err(faulty) => worst = self.complain(&faulty),
            }
        }
        let output = match (self.format, self.files.len()) {
            (Format::Json, 2..) => format!("[{}]\n", pages.join(",\n")),
            (Format::Json, _) => pages.iter().map(|page| format!("{page}\n")).collect(),
            (Format::Text, _) => pages.join("\n\n"),
        };
        match print(&output) {
            Ok(()) => worst,
            Err(outcome) => outcome,
        }
    }

    fn complain(&self, faulty: &Faulty) -> Outcome {
        complain(&match self.format {
            Format::Text => faulty.text(),
            Format::Json => faulty.json(),
        });
        Outcome::Faulty
    }

    /// The embedded tables with the user's laid over them in turn.
    fn handbook(&self) -> Result<Arc<Handbook>, Faulty> {
        let mut handbook = Handbook::embedded();
        for path in &self.tables {
            let (name, bytes) = bytes(path)?;
            let text = text(&name, &bytes)?;
            let laid = handbook.with_overlay(&name, text).map_err(|error| of_table(&name, text, error))?;
            handbook = Arc::new(laid);
        }
        Ok(handbook)
    }

    /// The page of one file, or what is wrong with it.
    fn one(&self, path: &Path, handbook: &Arc<Handbook>) -> Result<(String, Outcome), Faulty> {
        let (name, bytes) = bytes(path)?;
        let text = text(&name, &bytes)?;
        let drive = read_drive(text, handbook).map_err(|error| match error {
            InputError::Faults(faults) => Faulty::new(&name, text, faults),
            InputError::Handbook(error) => of_table(&name, "", error),
        })?;
        let choice = choose(&drive).map_err(|error| of_table(&name, "", error))?;
        let report = report::report(&drive, &choice, self.units.into(), &digest(&bytes));
        let report = report.map_err(|error| of_table(&name, "", error))?;
        let outcome = if choice.chosen().is_some() { Outcome::Chosen } else { Outcome::NoneFits };
        let page = match self.format {
            Format::Text => report::text(&report),
            Format::Json => report::json(&report).map_err(|error| Faulty::whole(&name, error.to_string()))?,
        };
        Ok((page, outcome))
    }
}

/// Faults of an overlay have places in its text; those of the handbook itself are of the whole.
fn of_table(name: &str, text: &str, error: HandbookError) -> Faulty {
    match error {
        HandbookError::Malformed { table, faults } if table == name => Faulty::new(name, text, faults),
        other => Faulty::whole(name, other.to_string()),
    }
}

fn text<'a>(name: &str, bytes: &'a [u8]) -> Result<&'a str, Faulty> {
    text_of(bytes).map_err(|fault| Faulty::new(name, &String::from_utf8_lossy(bytes), vec![fault]))
}

/// Name and bytes of a file, no more than one byte beyond what is read anyway.
fn bytes(path: &Path) -> Result<(String, Vec<u8>), Faulty> {
    let name = path.display().to_string();
    let most = LARGEST_INPUT as u64 + 1;
    let mut bytes = Vec::new();
    match File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes)) {
        Ok(_) => Ok((name, bytes)),
        Err(error) => Err(Faulty::whole(&name, format!("cannot be read: {error}"))),
    }
}

fn digest(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().fold("sha256:".to_owned(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}
