//! Figures that are no checks: what has to be built, ordered or waited for.

use super::figure::{Figure, Figures};
use super::jacking;
use super::pullback::{self, force::Pulling};
use crate::drive::{Drive, Pipe};
use crate::handbook::{HandbookError, Method};

/// The figures of a scheme; none where it is excluded.
///
/// # Errors
/// If a table is malformed or lacks a row.
pub fn figures(drive: &Drive, pipe: &Pipe, method: Method) -> Result<Vec<Figure>, HandbookError> {
    let mut figures = Figures::default();
    if pipe.bars(method).next().is_some() {
        return Ok(figures.list);
    }
    if let (Method::Pullback, Some(pulled), Some(pull)) = (method, &pipe.pulled, &drive.pull) {
        pullback::figures::figures(&mut figures, Pulling { drive, pipe, pulled, pull })?;
    }
    if let (Method::PipeJacking, Some(jacked)) = (method, &pipe.jacked) {
        jacking::figures::figures(&mut figures, drive, pipe, jacked);
    }
    debug_assert_eq!(figures.calc.leftover(), None, "a figure has lost a doubt");
    Ok(figures.list)
}
