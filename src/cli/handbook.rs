//! `jackpull handbook`: what is in the tables, and where each value comes from.

use super::input::handbook;
use super::output::{Outcome, complain, print};
use crate::handbook::{Citation, Handbook, HandbookError, Written, line};
use crate::source::Mark;
use crate::yaml::did_you_mean;
use clap::Args;
use std::path::PathBuf;
use textwrap::{Options, fill};

/// List the tables, print one, or look up a value and where it comes from.
#[derive(Debug, Args)]
pub(super) struct Look {
    /// Table to print; all are listed without one.
    table: Option<String>,
    /// Rows that contain this text anywhere, in all tables or the one named.
    #[arg(long, value_name = "TEXT")]
    find: Option<String>,
    /// One row, as TABLE/KEY.
    #[arg(long, value_name = "ID", conflicts_with_all = ["table", "find"])]
    row: Option<String>,
    /// Table files laid over the tables of the handbook, in this order.
    #[arg(long, value_name = "FILE")]
    tables: Vec<PathBuf>,
}

const WIDTH: usize = 100;

impl Look {
    pub(super) fn run(&self) -> Outcome {
        let handbook = match handbook(&self.tables) {
            Ok(handbook) => handbook,
            Err(faulty) => {
                complain(&faulty.text());
                return Outcome::Faulty;
            }
        };
        match self.page(&handbook) {
            Ok(page) => print(&page, Outcome::Chosen),
            Err(message) => {
                complain(&format!("error: {message}\n"));
                Outcome::Faulty
            }
        }
    }

    fn page(&self, handbook: &Handbook) -> Result<String, String> {
        let of = |table| rows(handbook, table).map_err(|error| told(&error));
        if let Some(id) = &self.row {
            let Some((table, key)) = id.split_once('/') else {
                let all = handbook.citations().map_err(|error| told(&error))?;
                let of = all.iter().find(|(_, key, _)| key == id);
                let near = of.map(|(table, ..)| format!("did you mean \"{table}/{id}\"? ")).unwrap_or_default();
                return Err(format!("there is no row \"{id}\"\n  = {near}write TABLE/KEY"));
            };
            let rows = of(table)?;
            return rows.iter().find(|row| row.written.key == key).map(Entry::whole).ok_or_else(|| {
                let keys: Vec<&str> = rows.iter().map(|row| row.written.key.as_str()).collect();
                let near = did_you_mean(key, &keys, &[]);
                format!(
                    "the table \"{table}\" has no row \"{key}\"\n  = {near}`jackpull handbook {table}` prints its rows"
                )
            });
        }
        let tables = match &self.table {
            Some(table) => vec![table.as_str()],
            None => Handbook::TABLES.to_vec(),
        };
        match (&self.table, &self.find) {
            (None, None) => list(handbook).map_err(|error| told(&error)),
            (Some(table), None) => {
                let entries: String = of(table)?.iter().map(Entry::whole).collect();
                let title = handbook.title(table).map_err(|error| told(&error))?;
                Ok(format!("{}\n\n{entries}", fill(&format!("{table}: {title}"), WIDTH)))
            }
            (_, Some(text)) => {
                let text = text.to_lowercase();
                let mut found = String::new();
                for table in tables {
                    found.extend(of(table)?.iter().filter(|row| row.contains(&text)).map(Entry::whole));
                }
                if found.is_empty() { Err(format!("no row contains \"{text}\"")) } else { Ok(found) }
            }
        }
    }
}

/// What is wrong, with the table that was probably meant.
fn told(error: &HandbookError) -> String {
    match error {
        HandbookError::NoTable(id) if id.contains('/') => format!("{error}\n  = --row {id} prints a row"),
        HandbookError::NoTable(id) => {
            let near = did_you_mean(id, Handbook::TABLES, &[]);
            format!("{error}\n  = {near}`jackpull handbook` lists the tables, --find TEXT looks in all")
        }
        other => other.to_string(),
    }
}

/// A row with all that is known of it.
struct Entry<'a> {
    table: &'a str,
    citation: &'a Citation,
    written: Written,
}

fn rows<'a>(handbook: &'a Handbook, table: &'a str) -> Result<Vec<Entry<'a>>, HandbookError> {
    let cited = handbook.rows_of(table)?;
    let written = handbook.written(table).unwrap_or_default();
    let entry = |(written, (_, citation))| Entry { table, citation, written };
    Ok(written.into_iter().zip(cited).map(entry).collect())
}

fn list(handbook: &Handbook) -> Result<String, HandbookError> {
    let mut page = String::new();
    for table in Handbook::TABLES {
        let first = format!("{table:<28}{:>4} rows  ", handbook.rows_of(table)?.len());
        let rest = " ".repeat(first.len());
        let options = Options::new(WIDTH).initial_indent(&first).subsequent_indent(&rest);
        page.push_str(&fill(handbook.title(table)?, options));
        page.push('\n');
    }
    // The bibliography says what was read; its own rows are no values.
    let all = handbook.citations()?;
    let values: Vec<Mark> = all.iter().filter(|(table, ..)| *table != "sources").map(|row| row.2.mark).collect();
    let of = |mark: &Mark| values.iter().filter(|own| *own == mark).count();
    let counts: Vec<String> = Mark::ALL.iter().map(|mark| format!("{} {mark}", of(mark))).collect();
    page.push_str(&format!("\n{}\n", fill(&format!("{} values: {}.", values.len(), counts.join("; ")), WIDTH)));
    page.push_str("jackpull handbook TABLE prints one, --find TEXT looks in all, --row TABLE/KEY prints a row.\n");
    Ok(page)
}

impl Entry<'_> {
    fn id(&self) -> String {
        format!("{}/{}", self.table, self.written.key)
    }

    fn contains(&self, lower: &str) -> bool {
        let Citation { source, locator, note, range, .. } = self.citation;
        [self.id(), self.written.line(), source.clone(), locator.clone()]
            .iter()
            .chain(note)
            .chain(range)
            .any(|text| text.to_lowercase().contains(lower))
    }

    fn whole(&self) -> String {
        let Citation { source, locator, mark, note, range, used_by } = self.citation;
        let mut page = String::new();
        let mut put = |first: &str, text: &str| {
            let rest = " ".repeat(first.len());
            page.push_str(&fill(text, Options::new(WIDTH).initial_indent(first).subsequent_indent(&rest)));
            page.push('\n');
        };
        put("", &self.id());
        put("    value    ", &self.written.line());
        if let Some(replaced) = &self.written.replaced {
            put("    replaces ", &line(replaced));
        }
        if let Some(range) = range {
            put("    range    ", range);
        }
        put("    source   ", &format!("{source}: {locator} ({mark})"));
        if let Some(note) = note {
            put("    note     ", note);
        }
        put("    used by  ", used_by);
        page.push('\n');
        page
    }
}
