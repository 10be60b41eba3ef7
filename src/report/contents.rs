//! What a report is made of.

use super::document::WIDTH;
use crate::choice::robust::{Robustness, robustness};
use crate::choice::{Choice, Ranked};
use crate::drive::Drive;
use crate::drive_file::{DriveFile, InputError};
use crate::handbook::{Handbook, Method};
use crate::quantity::{Band, Force, Measure, Role, Shown};
use crate::vary::{self, InputTurns, Outcome, Pits};
use std::sync::Arc;

/// A choice, ready to print.
#[derive(Debug, Clone, Copy)]
#[must_use]
pub struct Report<'a> {
    pub(super) drive: &'a Drive,
    pub(super) choice: &'a Choice,
    pub(super) file: Option<&'a str>,
    pub(super) digest: Option<&'a str>,
    pub(super) written: Option<&'a str>,
    pub(super) inputs: Option<&'a DriveFile>,
    pub(super) beside: Option<&'a Beside>,
    pub(super) columns: usize,
}

/// What is looked at beside a choice: it takes the drive file, which is changed and chosen from again.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Beside {
    /// How far it depends on the weights.
    pub robustness: Option<Robustness>,
    /// Which single input turns it; `None` where the file is too long to look.
    pub turns: Option<Vec<InputTurns>>,
    /// What is chosen without lubrication; `None` where the file plans none.
    pub unlubricated: Option<Outcome>,
    /// The pits of the line.
    pub pits: Vec<Pits>,
}

impl Beside {
    /// Looks at all of it.
    ///
    /// # Errors
    /// If the file is faulty or a table malformed.
    pub fn of(file: &DriveFile, handbook: &Arc<Handbook>, drive: &Drive, choice: &Choice) -> Result<Self, InputError> {
        Ok(Self {
            robustness: robustness(choice),
            turns: vary::turns(file, handbook)?,
            unlubricated: vary::unlubricated(file, handbook)?,
            pits: vary::pits(file, handbook, drive, choice)?,
        })
    }
}

impl<'a> Report<'a> {
    /// Of what was chosen for a drive.
    pub const fn new(drive: &'a Drive, choice: &'a Choice) -> Self {
        Self { drive, choice, file: None, digest: None, written: None, inputs: None, beside: None, columns: WIDTH }
    }

    /// With the name of the drive file, by which a program knows the answer among many.
    pub const fn of_file(self, file: &'a str) -> Self {
        Self { file: Some(file), ..self }
    }

    /// With a digest of the text of the drive file, which tells the reader what was assessed.
    pub const fn with_digest(self, digest: &'a str) -> Self {
        Self { digest: Some(digest), ..self }
    }

    /// With the text of the drive file, which stands at the end of a report in full.
    pub const fn as_written(self, text: &'a str) -> Self {
        Self { written: Some(text), ..self }
    }

    /// With the drive file, whose numbers a program then finds in the answer.
    pub const fn with_inputs(self, file: &'a DriveFile) -> Self {
        Self { inputs: Some(file), ..self }
    }

    /// Its text in so many columns, in place of [`WIDTH`].
    pub const fn in_columns(self, columns: usize) -> Self {
        Self { columns, ..self }
    }

    /// With what was looked at beside the choice.
    pub const fn with(self, beside: &'a Beside) -> Self {
        Self { beside: Some(beside), ..self }
    }
}

/// A quantity in each of three levels, ready to print.
pub(super) fn levels<Q: Measure>(band: Band<Q>, role: Role) -> Band<Shown> {
    band.map(|level| Shown::of(level, role))
}

/// A force that the method makes: a thrust or a pull.
pub(super) fn forces(band: Band<Force>, method: Method) -> Band<Shown> {
    levels(band, if method == Method::Pullback { Role::Pull } else { Role::Thrust })
}

/// Checks and figures of an excluded scheme are nothing, and so is what goes with them.
pub(super) fn is_looked_at(ranked: &Ranked) -> bool {
    !ranked.scheme.is_excluded()
}
