//! `jackpull screen`: what a few facts say, before there is a drive file.

use super::faults::Faulty;
use super::input::{handbook, of_tables};
use super::output::{Outcome, columns, complain, print, unwritten};
use super::units::Units;
use crate::choice::{Standing, choose};
use crate::drive_file::{DriveFile, Facts, InputError};
use crate::handbook::Handbook;
use crate::report::{self, Report};
use crate::vary::{self, Screen as Screening};
use clap::Args;
use std::fs::{self, File};
use std::io::{ErrorKind, Write as _};
use std::path::PathBuf;
use std::sync::Arc;

/// From a few facts, show what stands against each method and what it needs; nothing is chosen yet.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  jackpull screen --pipe \"clay 10 in\" --length 300ft --soil \"stiff clay\"
  jackpull screen --pipe \"24 in steel casing\" --length 30m --soil \"loose sand\" --depth 4m --water 2m
  jackpull screen --pipe \"VCP 12 in\" --pipe \"HDPE 12 in DR 11\" --length 300ft --soil silt --write drive.yaml")]
pub(super) struct Screen {
    /// Pipe, repeatable: material, size and what else is known, such as "clay 10 in" or "PE4710 10 in DR 11".
    #[arg(long = "pipe", required = true, value_name = "WORDS")]
    pipes: Vec<String>,
    /// From pit to pit.
    #[arg(long)]
    length: String,
    /// The ground, such as "stiff clay" or "loose sand".
    #[arg(long, value_name = "WORDS")]
    soil: String,
    /// Depth of the water table, or none.
    #[arg(long, value_name = "DEPTH")]
    water: Option<String>,
    /// Depth of the invert.
    #[arg(long)]
    depth: Option<String>,
    /// Rise from launch to reception.
    #[arg(long, allow_hyphen_values = true)]
    grade: Option<String>,
    /// What the pipe carries: sewer, main or casing.
    #[arg(long, value_name = "WORDS")]
    service: Option<String>,
    /// Units of the output [default: those of the length]
    #[arg(long, value_enum)]
    units: Option<Units>,
    /// Table files laid over the tables of the handbook, in this order.
    #[arg(long, value_name = "FILE")]
    tables: Vec<PathBuf>,
    /// Write a drive file to go on with; the file must not exist yet.
    #[arg(long, value_name = "FILE")]
    write: Option<PathBuf>,
}

/// Where faults of the arguments are.
const ARGUMENTS: &str = "the command line";

const HEADER: &str = "\
# From a few facts. Replace by what you know what is only assumed by our own judgement: the depth and
# the water at the worst case looked at, the least rig that would do, and
";

impl Screen {
    pub(super) fn run(&self) -> Outcome {
        match handbook(&self.tables).and_then(|handbook| self.page(&handbook)) {
            Ok((page, outcome)) => print(&page, outcome),
            Err(faulty) => complain(&faulty.text()),
        }
    }

    /// The page, and whether any scheme is left.
    fn page(&self, handbook: &Arc<Handbook>) -> Result<(String, Outcome), Faulty> {
        let faulty = |error| match error {
            InputError::Faults(faults) => Faulty::new(ARGUMENTS, "", faults),
            InputError::Handbook(error) => of_tables(ARGUMENTS, handbook, &error),
        };
        let pipes: Vec<&str> = self.pipes.iter().map(String::as_str).collect();
        let facts = Facts {
            pipes: &pipes,
            length: &self.length,
            soil: &self.soil,
            water: self.water.as_deref(),
            depth: self.depth.as_deref(),
            grade: self.grade.as_deref(),
            service: self.service.as_deref(),
        };
        let screen = vary::screen(&facts, handbook).map_err(faulty)?;
        if let Some(path) = &self.write {
            let text = self.file(&screen, handbook).map_err(faulty)?;
            let written = File::create_new(path).and_then(|mut file| file.write_all(text.as_bytes()));
            written.map_err(|error| {
                // A file that was there before is left alone.
                if error.kind() != ErrorKind::AlreadyExists {
                    let _ = fs::remove_file(path);
                }
                unwritten(path, &error)
            })?;
        }
        let system = self.units.map_or(screen.system, Into::into);
        let page = report::screen(&screen, system, columns()).map_err(|error| faulty(error.into()))?;
        let is_left = screen.schemes().iter().any(|screened| screened.best.1.standing != Standing::Barred);
        Ok((page, if is_left { Outcome::Chosen } else { Outcome::NoneFits }))
    }

    /// The drive file to go on with, and what is taken for all that it leaves out.
    fn file(&self, screen: &Screening, handbook: &Arc<Handbook>) -> Result<String, InputError> {
        let text = screen.file()?;
        let taken = screen.taken.join(", ");
        let text = format!("{HEADER}# {taken}\n{text}");
        let drive = DriveFile::read(&text)?.sketched(handbook)?;
        let choice = choose(&drive)?;
        let system = self.units.map_or(screen.system, Into::into);
        Ok(Report::new(&drive, &choice).filled(&text, system))
    }
}
