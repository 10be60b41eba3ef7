//! The output and the error stream, and how a run ended.

use super::faults::Faulty;
use crate::report::{Figure, WIDTH};
use std::fs;
use std::io::{self, IsTerminal as _, Write as _};
use std::path::Path;
use std::process::ExitCode;

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Outcome {
    /// A scheme fits or fits with care.
    Chosen,
    /// Assessed; no scheme fits.
    NoneFits,
    /// Input or output is wrong: so many drives were refused, or the whole run, which counts as one.
    Faulty(usize),
}

impl Outcome {
    /// Of a run refused as a whole, or the one drive of it.
    pub(super) const FAULTY: Self = Self::Faulty(1);
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> Self {
        Self::from(match outcome {
            Outcome::Chosen => 0,
            Outcome::NoneFits => 1,
            Outcome::Faulty(refused) => 1 + u8::try_from(refused).unwrap_or(u8::MAX).min(MOST_TOLD),
        })
    }
}

/// Refused drives that an exit code tells apart; from 126 on a shell has its own meanings.
const MOST_TOLD: u8 = 100;

/// Writes the result, and passes on how the run ended. A reader that has gone away is told nothing, and is no success.
pub(super) fn print(text: &str, outcome: Outcome) -> Outcome {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => outcome,
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => Outcome::FAULTY,
        Err(error) => complain(&format!("error: cannot write the result: {error}\n")),
    }
}

/// Fewest columns that a text is laid out in.
const LEAST_WIDTH: usize = 60;

/// Columns of a text on the output: those of a terminal, as far as the text can use them, and of a file always as many.
pub(super) fn columns() -> usize {
    terminal_size::terminal_size_of(io::stdout())
        .map_or(WIDTH, |(width, _)| usize::from(width.0).clamp(LEAST_WIDTH, WIDTH))
}

/// Messages go to the error stream; if that fails there is nobody to tell.
fn tell(text: &str) {
    let _ = io::stderr().lock().write_all(text.as_bytes());
}

/// Tells what is wrong, and how the run ends by that.
pub(super) fn complain(text: &str) -> Outcome {
    tell(text);
    Outcome::FAULTY
}

/// Writes figures into a folder, made where it is not there, each called by the drive file, or its row, and what it shows.
pub(super) fn write_figures(folder: &Path, drive: &str, figures: &[Figure]) -> Result<(), Faulty> {
    let stem = stem(drive);
    fs::create_dir_all(folder).map_err(|error| unwritten(folder, &error))?;
    figures.iter().try_for_each(|figure| write_page(folder, &format!("{stem}_{}.svg", figure.name), &figure.svg))
}

/// What a drive is called in a folder of files: as its own file, or its row.
pub(super) fn stem(drive: &str) -> String {
    let name = Path::new(drive).file_name().unwrap_or_default().to_string_lossy();
    name.strip_suffix(".yaml").unwrap_or(&name).replace(':', "_")
}

/// Writes a page into a folder, made where it is not there.
pub(super) fn write_page(folder: &Path, name: &str, page: &str) -> Result<(), Faulty> {
    fs::create_dir_all(folder).map_err(|error| unwritten(folder, &error))?;
    let (path, aside) = (folder.join(name), folder.join(format!(".{name}.part")));
    // Whole or not at all, whatever stops the writing.
    fs::write(&aside, page).and_then(|()| fs::rename(&aside, &path)).map_err(|error| {
        let _ = fs::remove_file(&aside);
        unwritten(&path, &error)
    })
}

/// How many drives are done, on the error stream and for a terminal alone.
pub(super) struct Progress {
    is_shown: bool,
    done: usize,
}

impl Progress {
    /// Of several drives whose answers do not themselves appear on the terminal.
    pub(super) fn new(is_many: bool, is_quiet: bool) -> Self {
        let is_seen = !is_quiet && io::stdout().is_terminal();
        Self { is_shown: is_many && !is_seen && io::stderr().is_terminal(), done: 0 }
    }

    /// One more.
    pub(super) fn step(&mut self) {
        self.done += 1;
        if self.is_shown {
            tell(&format!("\r{} drives", self.done));
        }
    }

    /// Takes the line away, before something else is written.
    pub(super) fn clear(&self) {
        if self.is_shown {
            tell("\r\x1b[K");
        }
    }
}

/// A file or folder that could not be written.
pub(super) fn unwritten(path: &Path, error: &io::Error) -> Faulty {
    Faulty::whole(&path.display().to_string(), format!("cannot be written: {error}"))
}
