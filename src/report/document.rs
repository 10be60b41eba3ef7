//! A report in its parts, before it is text, a web page or Markdown: each thing is worded once.

use super::figures::Figure;
use std::fmt;

/// Columns of a text in a file; tables are laid out for them.
pub const WIDTH: usize = 100;

/// A part of a report.
#[derive(Debug)]
pub(super) enum Block {
    /// Heading of a section.
    Heading(String),
    /// A paragraph, and what stands before its first line.
    Paragraph { lead: String, text: String },
    /// A line of laid-out columns.
    Line(String),
    /// A table.
    Table(Table),
    /// A figure; text has none.
    Figure(Figure),
    /// A blank line of text.
    Gap,
}

/// What the lead of a paragraph makes of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lead<'a> {
    /// Nothing before it.
    None,
    /// One of a list.
    Bullet,
    /// A word that it explains.
    Term(&'a str),
    /// More to the word before it.
    More,
    /// A note to what stands over it.
    Note,
}

impl<'a> Lead<'a> {
    /// Widest lead of a note; under a word the text stands farther in.
    const NOTE: usize = 4;

    pub(super) fn of(lead: &'a str) -> Self {
        match lead.trim() {
            "" if lead.is_empty() => Self::None,
            "" if lead.len() <= Self::NOTE => Self::Note,
            "" => Self::More,
            "-" => Self::Bullet,
            word => Self::Term(word),
        }
    }
}

/// Rows of values below their headings.
pub(super) struct Table {
    /// Heading of each column, in full.
    pub(super) head: Vec<String>,
    /// The same as a line of text.
    pub(super) short_head: String,
    /// A row as text.
    pub(super) layout: fn(&[String]) -> String,
    pub(super) rows: Vec<Row>,
}

/// Cells of a row, what it tells first, notes to it, and the address of the page that tells more.
#[derive(Debug, Default)]
pub(super) struct Row {
    pub(super) cells: Vec<String>,
    pub(super) notes: Vec<String>,
    pub(super) page: Option<String>,
}

impl Table {
    /// Headings in full and as text, how a row is laid out as text, and the rows.
    pub(super) fn new<const N: usize>(
        head: [&str; N],
        short_head: [&str; N],
        layout: fn(&[String]) -> String,
        rows: Vec<Row>,
    ) -> Self {
        let [head, short_head] = [head, short_head].map(|head| head.map(ToOwned::to_owned).to_vec());
        Self { head, short_head: layout(&short_head), layout, rows }
    }
}

impl fmt::Debug for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Table").field("head", &self.head).field("rows", &self.rows).finish_non_exhaustive()
    }
}
