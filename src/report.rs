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
mod contents;
mod document;
mod figures;
mod filled;
mod html;
mod json;
mod markdown;
mod row;
mod schedule;
mod text;
mod words;

pub use contents::{Beside, Report};
pub use document::WIDTH;
pub use figures::{Drawing, Figure, Scale};
#[doc(hidden)]
pub use row::COLUMNS;
pub use schedule::{Entry, Order, Schedule};

/// JSON Schema (draft 2020-12) of what [`Report::json`] makes, and the command for several drives.
pub const JSON_SCHEMA: &str = include_str!("report/result.schema.json");

use crate::handbook::HandbookError;
use crate::quantity::UnitSystem;
use crate::vary::Screen;
use text::Extent;

/// A page of so many columns, of what a few facts say of the ways to build a drive; nothing is chosen on it.
///
/// # Errors
/// If the handbook is malformed.
pub fn screen(screen: &Screen, system: UnitSystem, columns: usize) -> Result<String, HandbookError> {
    text::screen::page(screen, system, columns)
}

impl Report<'_> {
    /// For a terminal or a file. Of the schemes behind the first only the checks that are not within.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn text(&self, system: UnitSystem) -> Result<String, HandbookError> {
        text::page(self, system, Extent::Page)
    }

    /// The same, with the tables of every scheme.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn text_in_full(&self, system: UnitSystem) -> Result<String, HandbookError> {
        text::page(self, system, Extent::Full)
    }

    /// A sheet with figures as one web page that stands alone, for screen and paper: first page, figures, checks and
    /// cautions, and in full assumed values and working too.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn html(&self, system: UnitSystem, in_full: bool) -> Result<String, HandbookError> {
        Ok(html::page(&self.drive.name, &text::blocks(self, system, sheet(in_full))?))
    }

    /// The same as Markdown, its figures told in words.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn markdown(&self, system: UnitSystem, in_full: bool) -> Result<String, HandbookError> {
        Ok(markdown::page(&self.drive.name, &text::blocks(self, system, sheet(in_full))?))
    }

    /// One page for the crew, of the scheme that leads: forces to expect and to stop at, by pipe and by section of the stem.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn crew(&self, system: UnitSystem) -> Result<String, HandbookError> {
        text::crew(self, system)
    }

    /// The figures of the scheme that leads, as SVG: long section, forces, limits, bore, settlement, score. What has
    /// nothing to draw is left out.
    #[must_use]
    pub fn figures(&self, system: UnitSystem) -> Vec<Figure> {
        figures::figures(self, system)
    }

    /// The text of the drive file, and a comment with its source for each value that was taken for what it leaves out: it
    /// reads as before, and is there to be edited.
    #[must_use]
    pub fn filled(&self, file: &str, system: UnitSystem) -> String {
        filled::text(file, self, system)
    }

    /// For programs: one object, keys in a fixed order, two spaces deep.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn json(&self, system: UnitSystem) -> Result<String, HandbookError> {
        json::whole(self, system).map(|object| format!("{object:#}"))
    }

    /// The same in one line.
    ///
    /// # Errors
    /// If the handbook is malformed.
    pub fn json_line(&self, system: UnitSystem) -> Result<String, HandbookError> {
        json::whole(self, system).map(|object| object.to_string())
    }

    /// One row of a list of many drives: the answer and what it rests on, in the order of [`COLUMNS`].
    #[must_use]
    pub fn row(&self) -> [String; COLUMNS.len()] {
        row::row(self)
    }

    /// One row of a page of many drives.
    #[must_use]
    pub fn entry(&self) -> Entry {
        Entry::of(self)
    }
}

const fn sheet(in_full: bool) -> Extent {
    if in_full { Extent::Full } else { Extent::Sheet }
}
