//! The drives of a run on one page: a row for each, what asks for work first.

use super::document::{Block, Row, Table};
use super::{Report, html, text, words};
use crate::choice::Standing;
use crate::choice::reason::{behind, name};
use std::cmp::Reverse;

const TITLE: &str = "Schedule of drives";
/// Standings in the order of the page; before them stands what was not assessed.
const ORDER: [Standing; 4] = [Standing::Barred, Standing::Open, Standing::WithCare, Standing::Fits];
const FAULTY: &str = "faulty";

/// One drive of a run, as its row tells it.
#[derive(Debug, Clone)]
pub struct Entry {
    drive: String,
    standing: Option<Standing>,
    used: Option<f64>,
    scheme: String,
    why: String,
}

impl Entry {
    /// Of a drive that was assessed.
    pub(super) fn of(report: &Report<'_>) -> Self {
        let first = report.choice.ranked.first();
        Self {
            drive: report.drive.name().to_owned(),
            standing: Some(first.map_or(Standing::Barred, |first| first.standing)),
            used: first.and_then(|first| first.scheme.governing()?.utilisation()),
            scheme: first.map_or_else(String::new, name),
            why: first.map_or_else(String::new, |first| behind(report.drive, first)),
        }
    }

    /// Of a file that is faulty, and what is wrong with it.
    #[must_use]
    pub fn faulty(file: &str, faults: String) -> Self {
        Self { drive: file.to_owned(), standing: None, used: None, scheme: String::new(), why: faults }
    }

    fn label(&self) -> &'static str {
        self.standing.map_or(FAULTY, Standing::label)
    }
}

/// What comes first on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Order {
    /// What asks for work: by standing, then by how far the governing limit is used.
    #[default]
    Standing,
    /// What was added first.
    File,
    /// What uses most of the limit that governs; behind it what has no such number.
    Utilisation,
}

impl Order {
    const fn note(self) -> &'static str {
        match self {
            Self::Standing => "Worst first.",
            Self::File => "In the order of the files.",
            Self::Utilisation => "Greatest share first.",
        }
    }
}

/// The rows of a run, each with the address of its page where it has one.
#[derive(Debug, Clone, Default)]
pub struct Schedule {
    rows: Vec<(Entry, Option<String>)>,
    order: Order,
}

impl Schedule {
    /// Of no drive yet.
    #[must_use]
    pub const fn new(order: Order) -> Self {
        Self { rows: Vec::new(), order }
    }

    /// Adds a drive.
    pub fn add(&mut self, entry: Entry, page: Option<String>) {
        self.rows.push((entry, page));
    }

    /// For a terminal or a file of so many columns.
    #[must_use]
    pub fn text(self, columns: usize) -> String {
        text::printed(&self.blocks(), columns)
    }

    /// As one web page that stands alone, but for the pages that it leads to.
    #[must_use]
    pub fn html(self) -> String {
        html::page(TITLE, &self.blocks())
    }

    /// Of what is alike as they came.
    fn blocks(mut self) -> Vec<Block> {
        let place = |entry: &Entry| ORDER.iter().position(|standing| Some(*standing) == entry.standing);
        let used = |entry: &Entry| Reverse(entry.used.map(f64::to_bits));
        match self.order {
            Order::Standing => self.rows.sort_by_key(|(entry, _)| (place(entry), used(entry))),
            Order::File => {}
            Order::Utilisation => self.rows.sort_by_key(|(entry, _)| used(entry)),
        }
        let labels = std::iter::once(FAULTY).chain(ORDER.iter().map(|standing| standing.label()));
        let counts = labels.map(|label| (label, self.rows.iter().filter(|(entry, _)| entry.label() == label).count()));
        let counts: Vec<String> =
            counts.filter(|(_, count)| *count > 0).map(|(label, count)| format!("{count} {label}")).collect();
        let drives = if self.rows.len() == 1 { "drive" } else { "drives" };
        let answer = format!("{} {drives}: {}", self.rows.len(), counts.join(", "));
        let rows = self.rows.into_iter().map(|(entry, page)| {
            let label = entry.label().to_owned();
            let notes = Some(entry.why).filter(|why| !why.is_empty()).into_iter().collect();
            Row { cells: vec![entry.drive, words::ratio(entry.used), label, entry.scheme], notes, page }
        });
        let rows = rows.collect();
        let head = ["drive", "share of limit", "standing", "scheme"];
        let table = Table::new(head, ["drive", "share", "standing", "scheme"], laid_out, rows);
        let note = format!("{} The share is that of the limit that governs, at the high level.", self.order.note());
        let paragraph = |text: String| Block::Paragraph { lead: String::new(), text };
        vec![paragraph(answer), Block::Gap, Block::Table(table), Block::Gap, paragraph(note)]
    }
}

fn laid_out(cells: &[String]) -> String {
    let [drive, used, standing, scheme] = cells else { return cells.join(" ") };
    let of = if scheme.is_empty() { String::new() } else { format!(": {scheme}") };
    format!("{used:>6}  {standing:<15} {drive}{of}")
}
