//! `jackpull completions` and `jackpull man`: what a shell and a reader of manuals want, out of the arguments themselves.

use super::output::{Outcome, complain, print};
use clap::{Args, Command};
use clap_complete::Shell;
use clap_mangen::Man;

/// Print the completions of the arguments for a shell.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  jackpull completions bash > ~/.local/share/bash-completion/completions/jackpull  for the next shell")]
pub(super) struct Completions {
    /// The shell.
    shell: Shell,
}

/// Print a manual page in roff.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  jackpull man | man -l -         the manual
  jackpull man assess | man -l -  that of one verb")]
pub(super) struct Manual {
    /// That of this verb, in place of the whole.
    verb: Option<String>,
}

impl Completions {
    pub(super) fn run(&self, mut command: Command) -> Outcome {
        let mut script = Vec::new();
        let name = command.get_name().to_owned();
        clap_complete::generate(self.shell, &mut command, name, &mut script);
        print(&String::from_utf8_lossy(&script), Outcome::Chosen)
    }
}

impl Manual {
    pub(super) fn run(&self, mut command: Command) -> Outcome {
        command.build();
        let found = match &self.verb {
            None => Some(&command),
            Some(verb) => command.find_subcommand(verb),
        };
        let Some(found) = found else {
            return complain("error: there is no such verb\n  = `jackpull help` lists them\n");
        };
        let mut page = Vec::new();
        // Writing to memory always succeeds.
        let _ = Man::new(found.clone()).render(&mut page);
        print(&String::from_utf8_lossy(&page), Outcome::Chosen)
    }
}
