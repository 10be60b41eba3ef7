//! The command: arguments, files, exit codes. One file per verb.

mod assess;
mod faults;
mod handbook;
mod input;
mod template;
mod units;

use clap::{Parser, Subcommand, ValueEnum};
use std::io::{self, Write as _};
use std::process::ExitCode;

/// Which trenchless method and which pipe for a bore on grade, and why.
#[derive(Debug, Parser)]
#[command(name = "jackpull", version, about, max_term_width = 100)]
struct Arguments {
    #[command(subcommand)]
    verb: Verb,
}

#[derive(Debug, Subcommand)]
enum Verb {
    /// Assess the pipes of one or more drive files and rank them.
    Assess(assess::Assess),
    /// List the tables, print one, or look for a value and where it comes from.
    Handbook(handbook::Look),
    /// Print a commented drive file to start from.
    Template(template::Template),
}

/// Units of the output.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Units {
    /// Metres, kilonewtons, kilopascals.
    Si,
    /// Feet, kips of 1,000 lbf, pounds per square inch.
    Us,
}

impl From<Units> for crate::quantity::UnitSystem {
    fn from(units: Units) -> Self {
        match units {
            Units::Si => Self::Si,
            Units::Us => Self::Us,
        }
    }
}

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Outcome {
    /// A scheme fits or fits with care.
    Chosen,
    /// Assessed; no scheme fits.
    NoneFits,
    /// Input or output is wrong.
    Faulty,
}

/// Runs the command. Exit code 0: a scheme fits or fits with care; 1: assessed, none does; 2: input or output is
/// wrong.
#[must_use]
pub fn run() -> ExitCode {
    let outcome = match Arguments::parse().verb {
        Verb::Assess(assess) => assess.run(),
        Verb::Handbook(look) => look.run(),
        Verb::Template(template) => template.run(),
    };
    match outcome {
        Outcome::Chosen => ExitCode::SUCCESS,
        Outcome::NoneFits => ExitCode::from(1),
        Outcome::Faulty => ExitCode::from(2),
    }
}

/// Writes the result; a reader that has gone away is no fault.
fn print(text: &str) -> Result<(), Outcome> {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            complain(&format!("error: cannot write the result: {error}\n"));
            Err(Outcome::Faulty)
        }
        _ => Ok(()),
    }
}

/// Messages go to the error stream; if that fails there is nobody to tell.
fn complain(text: &str) {
    let _ = io::stderr().lock().write_all(text.as_bytes());
}
