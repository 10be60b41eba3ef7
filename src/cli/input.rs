//! Files that the command reads.

use super::faults::Faulty;
use crate::handbook::{Handbook, HandbookError};
use crate::yaml::{LARGEST_INPUT, text_of};
use std::fs::File;
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Name and bytes of a file, `-` for standard input, no more than one byte beyond what is read anyway.
pub(super) fn bytes(path: &Path) -> Result<(String, Vec<u8>), Faulty> {
    let most = LARGEST_INPUT as u64 + 1;
    let mut bytes = Vec::new();
    let read = if is_standard(path) {
        io::stdin().lock().take(most).read_to_end(&mut bytes)
    } else {
        File::open(path).and_then(|file| file.take(most).read_to_end(&mut bytes))
    };
    read.map_err(|error| unread(path, &error))?;
    Ok((path.display().to_string(), bytes))
}

/// Whether a path stands for standard input.
pub(super) fn is_standard(path: &Path) -> bool {
    path.as_os_str() == "-"
}

pub(super) fn unread(path: &Path, error: &io::Error) -> Faulty {
    Faulty::whole(&path.display().to_string(), format!("cannot be read: {error}"))
}

/// The drive files that a path stands for: itself, or the `*.yaml` of a folder by name, those of folders in it not.
pub(super) fn drive_files(path: &Path) -> Vec<Result<PathBuf, Faulty>> {
    if !path.is_dir() {
        return vec![Ok(path.to_owned())];
    }
    let entries = path.read_dir().and_then(Iterator::collect::<Result<Vec<_>, _>>);
    let mut files: Vec<PathBuf> = match entries {
        Ok(entries) => entries.into_iter().map(|entry| entry.path()).collect(),
        Err(error) => return vec![Err(unread(path, &error))],
    };
    files.retain(|file| file.extension().is_some_and(|ext| ext == "yaml"));
    files.sort();
    if files.is_empty() {
        return vec![Err(Faulty::whole(&path.display().to_string(), "has no drive file, no *.yaml, in it"))];
    }
    files.into_iter().map(Ok).collect()
}

/// The text of a file.
pub(super) fn text<'a>(name: &str, bytes: &'a [u8]) -> Result<&'a str, Faulty> {
    text_of(bytes).map_err(|fault| Faulty::new(name, &String::from_utf8_lossy(bytes), vec![fault]))
}

/// The embedded tables with the user's laid over them in turn.
pub(super) fn handbook(tables: &[PathBuf]) -> Result<Arc<Handbook>, Faulty> {
    let mut handbook = Handbook::embedded();
    for path in tables {
        let (name, bytes) = bytes(path)?;
        let text = text(&name, &bytes)?;
        let laid = handbook.with_overlay(&name, text).map_err(|error| of_overlay(&name, text, error))?;
        handbook = Arc::new(laid);
    }
    Ok(handbook)
}

/// Faults of an overlay that is being laid have places in its text.
fn of_overlay(name: &str, text: &str, error: HandbookError) -> Faulty {
    match error {
        HandbookError::Malformed { table, faults } if table == name => Faulty::new(name, text, faults),
        HandbookError::NoTable(id) => Faulty::new(name, text, vec![Handbook::no_table(text, &id)]),
        other => Faulty::whole(name, other.to_string()),
    }
}

/// Faults of the tables that show when a drive is put together: those of a file that is laid over are its own.
pub(super) fn of_tables(drive: &str, handbook: &Handbook, error: &HandbookError) -> Faulty {
    match handbook.blamed(error) {
        Some((name, text, fault)) => Faulty::new(name, text, vec![fault]),
        None => Faulty::whole(drive, error.to_string()),
    }
}
