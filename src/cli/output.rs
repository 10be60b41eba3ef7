//! The output and the error stream, and how a run ended.

use std::io::{self, Write as _};

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
