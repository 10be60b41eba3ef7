//! jackpull from Python, every result in plain dicts and lists.

use jackpull::drive_file::DriveFile;
use jackpull::quantity::UnitSystem;
use jackpull::report::Beside;
use jackpull::{Handbook, Report, choose, read_drive};
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;
use serde_json::{Value, json};
use std::fmt::Display;

/// Assesses the text of a drive file: the object that `jackpull assess --format json` prints, without name and digest of
/// the file. A faulty file is a `ValueError` that tells its faults.
#[pyfunction]
#[pyo3(signature = (text, *, us_units = false))]
fn assess<'py>(py: Python<'py>, text: &str, us_units: bool) -> PyResult<Bound<'py, PyAny>> {
    let handbook = Handbook::embedded();
    let drive = read_drive(text, &handbook).map_err(told)?;
    let file = DriveFile::read(text).map_err(told)?;
    let choice = choose(&drive).map_err(told)?;
    let beside = Beside::of(&file, &handbook, &drive, &choice).map_err(told)?;
    let system = if us_units { UnitSystem::Us } else { UnitSystem::Si };
    loaded(py, &Report::new(&drive, &choice).with(&beside).json_line(system).map_err(told)?)
}

/// Every equation: what it computes, form, source, place in it, mark and range.
#[pyfunction]
fn laws(py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
    let laws = jackpull::laws::equations().map(|law| {
        json!({
            "name": law.name, "form": law.form, "source": law.source, "locator": law.locator,
            "mark": law.mark.to_string(), "valid": law.valid,
        })
    });
    loaded(py, &laws.collect::<Value>().to_string())
}

/// Every table by name: its rows by key, each with its columns as written, source, place in it and mark.
#[pyfunction]
fn tables(py: Python<'_>) -> PyResult<Bound<'_, PyAny>> {
    let handbook = Handbook::embedded();
    let mut tables = serde_json::Map::new();
    for table in Handbook::TABLES {
        let cited = handbook.rows_of(table).map_err(told)?;
        let written = handbook.written(table).unwrap_or_default();
        let rows = written.into_iter().zip(cited).map(|(row, (_, cited))| {
            let columns: Value = row.columns.into_iter().map(|(name, text)| (name, Value::from(text))).collect();
            let row_of = json!({
                "columns": columns, "source": cited.source, "locator": cited.locator, "mark": cited.mark.to_string(),
            });
            (row.key, row_of)
        });
        tables.insert((*table).to_owned(), rows.collect());
    }
    loaded(py, &Value::Object(tables).to_string())
}

fn loaded<'py>(py: Python<'py>, json: &str) -> PyResult<Bound<'py, PyAny>> {
    py.import("json")?.call_method1("loads", (json,))
}

fn told(error: impl Display) -> PyErr {
    PyValueError::new_err(error.to_string())
}

/// The module.
#[pymodule]
fn jackpull_python(module: &Bound<'_, PyModule>) -> PyResult<()> {
    module.add_function(wrap_pyfunction!(assess, module)?)?;
    module.add_function(wrap_pyfunction!(laws, module)?)?;
    module.add_function(wrap_pyfunction!(tables, module)?)
}
