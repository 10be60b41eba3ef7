//! `assess --each`: a table with a drive in each row, laid over a drive file.

use super::faults::Faulty;
use super::input::{bytes, is_standard, text, unread};
use crate::drive_file::DriveFile;
use crate::drive_file::fields::Spec;
use crate::yaml::{self, Complaint, Fault, did_you_mean};
use csv::{ErrorKind, StringRecord, StringRecordsIntoIter};
use serde_json::{Map, Value};
use std::fs::File;
use std::io::{self, BufRead, BufReader};
use std::path::Path;
use std::sync::Arc;

/// A table that is read row by row, and the drive file beneath.
pub(super) struct Each {
    name: String,
    base: Value,
    columns: Arc<[Column]>,
    rows: StringRecordsIntoIter<Box<dyn BufRead>>,
    /// Lines that the reader of the table counts too few: of two characters at an end it reads the second with the next row.
    behind: u64,
    /// Whether there is any row.
    has_rows: bool,
}

/// What a column holds: a field of the drive file by its path and, in brackets, the unit of its numbers; or a note.
#[derive(Debug)]
pub(super) struct Column {
    header: String,
    path: String,
    unit: Option<String>,
    is_note: bool,
}

const NO_PLACE: (&str, &str) = (
    "does not fit the drive file that the row is laid over",
    "an entry of a list is written `ground[0]`, and none before it is left out",
);

const PARTED: &str = "its columns are parted by semicolons or tabs: save the table with commas between them, and with a \
    point in its numbers";
const EMPTY: &str = "has no row below its header: nothing is assessed";

impl Each {
    /// Reads the header of the table, and the drive file, which need not be whole.
    pub(super) fn open(table: &Path, base: &Path) -> Result<Self, Faulty> {
        let (base, bytes) = bytes(base)?;
        let base_text = text(&base, &bytes)?;
        let base = yaml::tree(base_text).map_err(|faults| Faulty::new(&base, base_text, faults))?;
        let name = table.display().to_string();
        let mut file: Box<dyn BufRead> = if is_standard(table) {
            Box::new(BufReader::new(io::stdin()))
        } else {
            Box::new(BufReader::new(File::open(table).map_err(|error| unread(table, &error))?))
        };
        let start = file.fill_buf().map_err(|error| unread(table, &error))?;
        let first = start.split(|byte| *byte == b'\n').next().unwrap_or_default();
        let behind = u64::from(first.ends_with(b"\r"));
        let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).from_reader(file);
        let header = reader.headers().map_err(|error| Faulty::whole(&name, told(&error)))?;
        if let [only] = header.iter().collect::<Vec<_>>().as_slice()
            && only.contains([';', '\t'])
        {
            return Err(Faulty::whole(&name, PARTED));
        }
        let columns: Arc<[Column]> = header.iter().map(Column::of).collect();
        let wrong = |(place, column): (usize, &Column)| {
            let before = columns.iter().take(place).any(|other| other.path == column.path);
            column.wrong(before).map(|complaint| column.fault(complaint))
        };
        let faults: Vec<Fault> = columns.iter().enumerate().filter_map(wrong).collect();
        let rows = reader.into_records();
        let each = Self { name, base, columns, rows, behind, has_rows: false };
        if faults.is_empty() { Ok(each) } else { Err(Faulty::new(&each.name, "", faults)) }
    }

    /// Its columns, to tell of a fault in a row by them.
    pub(super) fn columns(&self) -> Arc<[Column]> {
        Arc::clone(&self.columns)
    }

    /// The text of the drive file with a row laid over it. An empty cell leaves what is there.
    fn laid(&self, row: &StringRecord) -> Result<String, Vec<Fault>> {
        let mut drive = self.base.clone();
        let mut faults = Vec::new();
        for (column, cell) in self.columns.iter().zip(row).filter(|(column, cell)| !column.is_note && !cell.is_empty())
        {
            match (place(&mut drive, &column.path), column.value(cell)) {
                (Some(place), Ok(value)) => *place = value,
                (None, _) => faults.push(column.fault(NO_PLACE.into())),
                (_, Err(its)) => faults.extend(its.into_iter().map(|fault| column.fault(fault.complaint))),
            }
        }
        if faults.is_empty() { yaml::write(&drive).map_err(|fault| vec![fault]) } else { Err(faults) }
    }

    /// The drive of a row.
    fn read(&self, name: String, row: csv::Result<StringRecord>) -> Result<(String, Vec<u8>), Faulty> {
        let row = row.map_err(|error| Faulty::whole(&name, told(&error)))?;
        match self.laid(&row) {
            Ok(text) => Ok((name, text.into_bytes())),
            Err(faults) => Err(Faulty::new(&name, "", faults)),
        }
    }
}

impl Iterator for Each {
    type Item = Result<(String, Vec<u8>), Faulty>;

    fn next(&mut self) -> Option<Self::Item> {
        loop {
            let Some(row) = self.rows.next() else {
                // Nothing assessed is no success.
                let is_told = std::mem::replace(&mut self.has_rows, true);
                return (!is_told).then(|| Err(Faulty::whole(&self.name, EMPTY)));
            };
            let position = row.as_ref().map_or_else(csv::Error::position, StringRecord::position);
            let line = position.map(|at| at.line() + self.behind);
            let name = line.map_or_else(|| self.name.clone(), |line| format!("{}:{line}", self.name));
            return Some(match row {
                // What a spreadsheet leaves below its last row.
                Ok(row) if row.iter().all(str::is_empty) => continue,
                row => {
                    self.has_rows = true;
                    self.read(name, row)
                }
            });
        }
    }
}

impl Column {
    fn of(header: &str) -> Self {
        let (path, unit) = match header.strip_suffix(']').and_then(|header| header.rsplit_once(" [")) {
            Some((path, unit)) => (path.trim_end(), Some(unit.trim().to_owned())),
            None => (header, None),
        };
        Self { header: header.to_owned(), path: path.to_owned(), unit, is_note: header.starts_with('#') }
    }

    /// What is wrong with its header.
    fn wrong(&self, stands_before: bool) -> Option<Complaint> {
        if self.is_note {
            return None;
        }
        if stands_before {
            return Some("stands in the header twice".into());
        }
        if Spec::at(&self.path).is_some() {
            return None;
        }
        let keys: Vec<&str> = DriveFile::FIELDS.iter().map(|spec| spec.key).collect();
        let first = self.path.split(['.', '[']).next().unwrap_or_default();
        let near = if keys.contains(&first) { String::new() } else { did_you_mean(first, &keys, &[]) };
        let advice =
            format!("{near}write the path of a field, such as `ground[0].spt_n` or `length [m]`; `# ...` is a note");
        Some(Complaint { message: "is no field of the drive file".to_owned(), advice: Some(advice) })
    }

    fn fault(&self, complaint: Complaint) -> Fault {
        Fault { path: self.header.clone(), complaint, place: None }
    }

    /// A cell as a value of the drive file: a number has the unit of its column, a list or a block is written as there.
    fn value(&self, cell: &str) -> Result<Value, Vec<Fault>> {
        match &self.unit {
            Some(unit) if cell.parse::<f64>().is_ok() => Ok(format!("{cell} {unit}").into()),
            _ if cell.starts_with(['[', '{']) => yaml::tree(cell),
            _ => Ok(cell.into()),
        }
    }
}

/// The place at a path, made where it is not there yet; `None` where something else is in the way.
fn place<'a>(drive: &'a mut Value, path: &str) -> Option<&'a mut Value> {
    path.split('.').try_fold(drive, |block, part| {
        let (key, index) = part.split_once('[').map_or((part, None), |(key, index)| (key, Some(index)));
        if block.is_null() {
            *block = Map::new().into();
        }
        let value = block.as_object_mut()?.entry(key).or_insert(Value::Null);
        let Some(index) = index else { return Some(value) };
        let index: usize = index.strip_suffix(']')?.parse().ok()?;
        if value.is_null() {
            *value = Vec::<Value>::new().into();
        }
        let list = value.as_array_mut()?;
        if list.len() == index {
            list.push(Value::Null);
        }
        list.get_mut(index)
    })
}

/// Faults of a drive that was made of a row: by the header of their column, without places in a text that nobody wrote.
pub(super) fn of_row(faulty: Faulty, columns: &[Column]) -> Faulty {
    faulty.unseen(|path| columns.iter().find(|column| column.path == path).map(|column| column.header.clone()))
}

fn told(error: &csv::Error) -> String {
    match error.kind() {
        ErrorKind::UnequalLengths { expected_len, len, .. } => {
            format!("{len} cells, where the header has {expected_len}")
        }
        ErrorKind::Utf8 { .. } => "the text is not UTF-8".to_owned(),
        _ => format!("cannot be read: {error}"),
    }
}
