//! `jackpull assess FILE...`

use super::{Outcome, Units, complain, faults, print};
use crate::choice::choose;
use crate::drive_file::read_drive;
use crate::handbook::Handbook;
use crate::report;
use crate::yaml::LARGEST_INPUT;
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
    /// Units of the output.
    #[arg(long, value_enum, default_value_t = Units::Si)]
    units: Units,
}

impl Assess {
    pub(super) fn run(&self) -> Outcome {
        let handbook = Handbook::embedded();
        let mut worst = Outcome::Chosen;
        let mut pages = Vec::new();
        for file in &self.files {
            match self.one(file, &handbook) {
                Ok((page, outcome)) => {
                    worst = worst.max(outcome);
                    pages.push(page);
                }
                Err(message) => {
                    complain(&message);
                    worst = Outcome::Faulty;
                }
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

    /// The page of one file, or what is wrong with it.
    fn one(&self, path: &Path, handbook: &Arc<Handbook>) -> Result<(String, Outcome), String> {
        let name = path.display().to_string();
        let text = read(path).map_err(|message| format!("error: {name}: {message}\n"))?;
        let drive = read_drive(&text, handbook).map_err(|error| faults::render(&name, &text, &error))?;
        let of_table = |error| format!("error: {name}: {error}\n");
        let choice = choose(&drive).map_err(of_table)?;
        let report = report::report(&drive, &choice, self.units.into(), &digest(&text)).map_err(of_table)?;
        let outcome = if choice.chosen().is_some() { Outcome::Chosen } else { Outcome::NoneFits };
        let page = match self.format {
            Format::Text => report::text(&report),
            Format::Json => report::json(&report).map_err(|error| format!("error: {name}: {error}\n"))?,
        };
        Ok((page, outcome))
    }
}

/// The text of a file that is not larger than what is read anyway.
fn read(path: &Path) -> Result<String, String> {
    let file = File::open(path).map_err(|error| format!("cannot be read: {error}"))?;
    let mut bytes = Vec::new();
    let most = LARGEST_INPUT as u64 + 1;
    file.take(most).read_to_end(&mut bytes).map_err(|error| format!("cannot be read: {error}"))?;
    if bytes.len() > LARGEST_INPUT {
        return Err(format!("is larger than {LARGEST_INPUT} bytes; no drive file is"));
    }
    String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        format!("is not text in UTF-8 (byte {})", at + 1)
    })
}

fn digest(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().fold("sha256:".to_owned(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}
