//! The command: arguments, files, exit codes. One file per verb.

mod assess;
mod each;
mod faults;
mod handbook;
mod input;
mod list;
mod output;
mod schema;
mod screen;
mod shell;
mod template;
mod threads;
mod units;

use clap::{CommandFactory as _, FromArgMatches as _, Parser, Subcommand};
use std::io::{self, Write as _};
use std::process::ExitCode;

/// With a digest of the tables that are built in: another one may answer otherwise.
const VERSION: &str = concat!(env!("CARGO_PKG_VERSION"), " (tables sha256:", env!("JACKPULL_TABLES"), ")");

/// Which trenchless method and which pipe for a bore on grade, and why.
#[derive(Debug, Parser)]
#[command(name = "jackpull", version = VERSION, about)]
struct Arguments {
    #[command(subcommand)]
    verb: Verb,
}

#[derive(Debug, Subcommand)]
enum Verb {
    /// Assess the pipes of one or more drive files and rank them.
    Assess(assess::Assess),
    /// From a few facts, show what stands against each method and what it needs.
    Screen(screen::Screen),
    /// List the tables, print one, or look up a value and where it comes from.
    Handbook(handbook::Look),
    /// Print a commented drive file to start from.
    Template(template::Template),
    /// Print a JSON Schema of the drive file, for editors, or of the answer, for programs.
    Schema(schema::Schema),
    /// Print the completions of the arguments for a shell.
    Completions(shell::Completions),
    /// Print a manual page.
    Man(shell::Manual),
}

/// Runs the command. Exit code 0: a scheme fits or fits with care; 1: assessed, none does; 2: input or output is
/// wrong, and with several drives refused one more for each, up to 101.
#[must_use]
pub fn run() -> ExitCode {
    let command = Arguments::command().term_width(output::columns());
    let parsed = command.try_get_matches().and_then(|matches| Arguments::from_arg_matches(&matches));
    let verb = match parsed {
        Ok(arguments) => arguments.verb,
        Err(told) => return written(&told),
    };
    match verb {
        Verb::Assess(assess) => assess.run(),
        Verb::Screen(screen) => screen.run(),
        Verb::Handbook(look) => look.run(),
        Verb::Template(template) => template.run(),
        Verb::Schema(schema) => schema.run(),
        Verb::Completions(completions) => completions.run(Arguments::command()),
        Verb::Man(manual) => manual.run(Arguments::command()),
    }
    .into()
}

/// Help, version or what is wrong with the arguments: help that nobody can read is no success.
fn written(told: &clap::Error) -> ExitCode {
    let code = ExitCode::from(u8::try_from(told.exit_code()).unwrap_or(u8::MAX));
    match told.print().and_then(|()| io::stdout().flush()) {
        Ok(()) => code,
        Err(error) => output::complain(&format!("error: cannot write the help: {error}\n")).into(),
    }
}
