//! A choice as text or JSON: the answer first, then why, with the source and mark of every number. Nothing is spelled
//! out before it is printed: both read what the library gives, and units are chosen here alone.
//!
//! ```
//! use jackpull::quantity::UnitSystem;
//! use jackpull::report::Report;
//! use jackpull::{Handbook, choose, read_drive};
//!
//! let drive = read_drive(include_str!("../examples/fennbridge_mill_lane.yaml"), &Handbook::embedded())?;
//! let choice = choose(&drive)?;
//! let report = Report::new(&drive, &choice);
//! assert!(report.text(UnitSystem::Us)?.starts_with(&choice.ranked[0].scheme.method.key().to_uppercase()));
//! assert!(report.json(UnitSystem::Si)?.starts_with('{'));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod around;
mod cautions;
mod json;
mod not_given;
mod not_given_pull;
mod text;
mod words;

use crate::choice::robust::{Robustness, robustness};
use crate::choice::{Choice, Ranked};
use crate::drive::Drive;
use crate::drive_file::{DriveFile, InputError};
use crate::handbook::{Handbook, HandbookError, Method};
use crate::quantity::{Band, Force, Measure, Role, Shown, UnitSystem};
use crate::vary::{self, InputTurns, Outcome, Pits};
use std::sync::Arc;

/// A choice, ready to print.
#[derive(Debug, Clone, Copy)]
pub struct Report<'a> {
    drive: &'a Drive,
    choice: &'a Choice,
    digest: Option<&'a str>,
    beside: Option<&'a Beside>,
}

/// What is looked at beside a choice: it takes the drive file, which is changed and chosen from again.
#[derive(Debug, Clone)]
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
    #[must_use]
    pub const fn new(drive: &'a Drive, choice: &'a Choice) -> Self {
        Self { drive, choice, digest: None, beside: None }
    }

    /// With a digest of the text of the drive file, which tells the reader what was assessed.
    #[must_use]
    pub const fn with_digest(self, digest: &'a str) -> Self {
        Self { digest: Some(digest), ..self }
    }

    /// With what was looked at beside the choice.
    #[must_use]
    pub const fn with(self, beside: &'a Beside) -> Self {
        Self { beside: Some(beside), ..self }
    }

    /// For a terminal or a file of 100 columns. Of the schemes behind the first only the checks that are not within.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn text(&self, system: UnitSystem) -> Result<String, HandbookError> {
        text::page(self, system, false)
    }

    /// The same, with the tables of every scheme.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn text_in_full(&self, system: UnitSystem) -> Result<String, HandbookError> {
        text::page(self, system, true)
    }

    /// For programs: one object, keys in a fixed order, two spaces deep.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn json(&self, system: UnitSystem) -> Result<String, HandbookError> {
        json::text(self, system)
    }
}

/// A quantity in each of three levels, ready to print.
fn levels<Q: Measure>(band: Band<Q>, role: Role) -> Band<Shown> {
    band.map(|level| Shown::of(level, role))
}

/// A force that the method makes: a thrust or a pull.
fn forces(band: Band<Force>, method: Method) -> Band<Shown> {
    levels(band, if method == Method::Pullback { Role::Pull } else { Role::Thrust })
}

/// Checks and figures of an excluded scheme are nothing, and so is what goes with them.
fn is_looked_at(ranked: &Ranked) -> bool {
    !ranked.scheme.is_excluded()
}
