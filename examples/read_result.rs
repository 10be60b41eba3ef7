//! A result read by another program, as JSON from standard input.
//!
//! ```sh
//! jackpull assess --format json drive.yaml | cargo run --example read_result
//! ```

use serde_json::Value;
use std::error::Error;
use std::io::{Read, Write, stdin, stdout};

pub(crate) fn main() -> Result<(), Box<dyn Error>> {
    let mut text = String::new();
    stdin().read_to_string(&mut text)?;
    summary(&text, &mut stdout().lock())
}

/// The first line, and of each scheme its standing and the check with the highest utilisation.
pub(crate) fn summary(json: &str, out: &mut impl Write) -> Result<(), Box<dyn Error>> {
    let report: Value = serde_json::from_str(json)?;
    let words = |value: &Value| value.as_str().unwrap_or("?").to_owned();
    writeln!(out, "{}", words(&report["answer"]))?;
    for scheme in report["schemes"].as_array().ok_or("no schemes")? {
        write!(out, "{} of {}: {}", words(&scheme["method"]), words(&scheme["pipe"]), words(&scheme["standing"]))?;
        let checks = scheme["checks"].as_array().ok_or("no checks")?.iter();
        let used = checks.filter_map(|check| Some((check["utilisation"].as_f64()?, words(&check["subject"]))));
        if let Some((share, subject)) = used.max_by(|one, other| one.0.total_cmp(&other.0)) {
            write!(out, "; {subject} at {share:.2}")?;
        }
        writeln!(out)?;
    }
    Ok(())
}
