//! `jackpull handbook`: what is in the tables, and where each value comes from.

use super::input::handbook;
use super::output::{Outcome, columns, complain, print};
use crate::handbook::{Citation, Handbook, HandbookError, Written, line};
use crate::source::Mark;
use crate::yaml::did_you_mean;
use clap::{Args, ValueEnum};
use serde_json::{Map, Value, json};
use std::path::PathBuf;
use std::sync::Arc;
use textwrap::{Options, fill};

/// List the tables, print one, or look up a value and where it comes from.
#[derive(Debug, Args)]
#[command(after_help = "\
Examples:
  jackpull handbook                              the tables
  jackpull handbook clay_strength                the rows of one, with source, locator and mark
  jackpull handbook --row clay_strength/unknown  one row, and what uses it
  jackpull handbook --find bentonite             rows that speak of it")]
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
    /// Form of the output.
    #[arg(long, value_enum, default_value_t = Form::Text)]
    format: Form,
}

/// Form of the output.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Form {
    /// For reading: as wide as the terminal, up to 100 columns, and 100 in a file.
    Text,
    /// For programs: an array, of the tables or of the rows.
    Json,
}

impl Look {
    pub(super) fn run(&self) -> Outcome {
        let handbook = handbook(&self.tables).map_err(|faulty| faulty.text());
        let page = |handbook: Arc<Handbook>| self.page(&handbook).map_err(|message| format!("error: {message}\n"));
        match handbook.and_then(page) {
            Ok(page) => print(&page, Outcome::Chosen),
            Err(fault) => complain(&fault),
        }
    }

    fn page(&self, handbook: &Handbook) -> Result<String, String> {
        let Some(entries) = self.entries(handbook)? else {
            let list = match self.format {
                Form::Text => list(handbook),
                Form::Json => list_of_programs(handbook),
            };
            return list.map_err(|error| told(&error));
        };
        if let Form::Json = self.format {
            return Ok(format!("{:#}\n", entries.iter().map(Entry::object).collect::<Value>()));
        }
        let rows: String = entries.iter().map(Entry::whole).collect();
        match (&self.table, &self.find) {
            (Some(table), None) => {
                let title = handbook.title(table).map_err(|error| told(&error))?;
                Ok(format!("{}\n\n{rows}", fill(&format!("{table}: {title}"), columns())))
            }
            _ => Ok(rows),
        }
    }

    /// The rows that are asked for; `None` where it is the list of the tables.
    fn entries<'a>(&self, handbook: &'a Handbook) -> Result<Option<Vec<Entry<'a>>>, String> {
        let of = |table: &str| rows(handbook, table).map_err(|error| told(&error));
        if let Some(id) = &self.row {
            let Some((table, key)) = id.split_once('/') else {
                let all = handbook.citations().map_err(|error| told(&error))?;
                let of = all.iter().find(|(_, key, _)| key == id);
                let near = of.map(|(table, ..)| format!("did you mean \"{table}/{id}\"? ")).unwrap_or_default();
                return Err(format!("there is no row \"{id}\"\n  = {near}write TABLE/KEY"));
            };
            let mut rows = of(table)?;
            let Some(place) = rows.iter().position(|row| row.written.key == key) else {
                let keys: Vec<&str> = rows.iter().map(|row| row.written.key.as_str()).collect();
                let near = did_you_mean(key, &keys, &[]);
                return Err(format!(
                    "the table \"{table}\" has no row \"{key}\"\n  = {near}`jackpull handbook {table}` prints its rows"
                ));
            };
            return Ok(Some(vec![rows.swap_remove(place)]));
        }
        let tables = match (&self.table, &self.find) {
            (None, None) => return Ok(None),
            (Some(table), _) => vec![table.as_str()],
            (None, _) => Handbook::TABLES.to_vec(),
        };
        let mut entries = Vec::new();
        for table in tables {
            entries.extend(of(table)?);
        }
        if let Some(text) = &self.find {
            let lower = text.to_lowercase();
            entries.retain(|row| row.contains(&lower));
            if entries.is_empty() {
                return Err(format!("no row contains \"{lower}\""));
            }
        }
        Ok(Some(entries))
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
    table: &'static str,
    citation: &'a Citation,
    written: Written,
}

fn rows<'a>(handbook: &'a Handbook, table: &str) -> Result<Vec<Entry<'a>>, HandbookError> {
    let cited = handbook.rows_of(table)?;
    let table = Handbook::TABLES.iter().copied().find(|own| *own == table).unwrap_or_default();
    let written = handbook.written(table).unwrap_or_default();
    let entry = |(written, (_, citation))| Entry { table, citation, written };
    Ok(written.into_iter().zip(cited).map(entry).collect())
}

fn list(handbook: &Handbook) -> Result<String, HandbookError> {
    let mut page = String::new();
    for table in Handbook::TABLES {
        let first = format!("{table:<28}{:>4} rows  ", handbook.rows_of(table)?.len());
        let rest = " ".repeat(first.len());
        let options = Options::new(columns()).initial_indent(&first).subsequent_indent(&rest);
        page.push_str(&fill(handbook.title(table)?, options));
        page.push('\n');
    }
    // The bibliography says what was read; its own rows are no values.
    let all = handbook.citations()?;
    let values: Vec<Mark> = all.iter().filter(|(table, ..)| *table != "sources").map(|row| row.2.mark).collect();
    let of = |mark: &Mark| values.iter().filter(|own| *own == mark).count();
    let counts: Vec<String> = Mark::ALL.iter().map(|mark| format!("{} {mark}", of(mark))).collect();
    page.push_str(&format!("\n{}\n", fill(&format!("{} values: {}.", values.len(), counts.join("; ")), columns())));
    page.push_str("jackpull handbook TABLE prints one, --find TEXT looks in all, --row TABLE/KEY prints a row.\n");
    Ok(page)
}

fn list_of_programs(handbook: &Handbook) -> Result<String, HandbookError> {
    let table = |table: &&str| {
        let (title, rows) = (handbook.title(table)?, handbook.rows_of(table)?.len());
        Ok(json!({ "table": table, "title": title, "rows": rows }))
    };
    let tables: Value = Handbook::TABLES.iter().map(table).collect::<Result<_, HandbookError>>()?;
    Ok(format!("{tables:#}\n"))
}

impl Entry<'_> {
    /// The row as it is written: a table of single values has the column `value`.
    fn object(&self) -> Value {
        let columns = |columns: &[(String, String)]| -> Map<String, Value> {
            let name = |name: &str| if name.is_empty() { "value".to_owned() } else { name.to_owned() };
            columns.iter().map(|(own, text)| (name(own), json!(text))).collect()
        };
        let Citation { source, locator, mark, note, range, used_by } = self.citation;
        json!({
            "table": self.table,
            "key": self.written.key,
            "columns": columns(&self.written.columns),
            "replaces": self.written.replaced.as_deref().map(columns),
            "range": range,
            "source": source,
            "locator": locator,
            "mark": mark.key(),
            "note": note,
            "used_by": used_by,
        })
    }

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
            page.push_str(&fill(text, Options::new(columns()).initial_indent(first).subsequent_indent(&rest)));
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
