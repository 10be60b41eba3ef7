//! The report as JSON.

use super::Report;

/// One object, keys in a fixed order, two spaces deep.
///
/// # Errors
/// If the writer fails, which no report of finite numbers makes it do.
pub fn json(report: &Report) -> Result<String, serde_json::Error> {
    serde_json::to_string_pretty(report)
}
