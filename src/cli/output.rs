//! The output and the error stream, and how a run ended.

use super::faults::Faulty;
use crate::report::Figure;
use std::fs;
use std::io::{self, Write as _};
use std::path::Path;

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Outcome {
    /// A scheme fits or fits with care.
    Chosen,
    /// Assessed; no scheme fits.
    NoneFits,
    /// Input or output is wrong.
    Faulty,
}

/// Writes the result, and passes on how the run ended. A reader that has gone away is told nothing, and is no success.
pub(super) fn print(text: &str, outcome: Outcome) -> Outcome {
    let mut out = io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => outcome,
        Err(error) => {
            if error.kind() != io::ErrorKind::BrokenPipe {
                complain(&format!("error: cannot write the result: {error}\n"));
            }
            Outcome::Faulty
        }
    }
}

/// Messages go to the error stream; if that fails there is nobody to tell.
pub(super) fn complain(text: &str) {
    let _ = io::stderr().lock().write_all(text.as_bytes());
}

/// Writes figures into a folder, made where it is not there, each called by the drive file, or its row, and what it shows.
pub(super) fn write_figures(folder: &Path, drive: &str, figures: &[Figure]) -> Result<(), Faulty> {
    let name = Path::new(drive).file_name().unwrap_or_default().to_string_lossy();
    let stem = name.strip_suffix(".yaml").unwrap_or(&name).replace(':', "_");
    fs::create_dir_all(folder).map_err(|error| unwritten(folder, &error))?;
    figures.iter().try_for_each(|figure| {
        let path = folder.join(format!("{stem}_{}.svg", figure.name));
        fs::write(&path, &figure.svg).map_err(|error| unwritten(&path, &error))
    })
}

/// A file or folder that could not be written.
pub(super) fn unwritten(path: &Path, error: &io::Error) -> Faulty {
    Faulty::whole(&path.display().to_string(), format!("cannot be written: {error}"))
}
