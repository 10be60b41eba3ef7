//! A result read by another program: `jackpull assess --format json drive.yaml | cargo run --example read_result`.

use serde::Deserialize;
use std::error::Error;
use std::io::{Write, read_to_string, stdin, stdout};

#[derive(Deserialize)]
struct Report {
    answer: String,
    schemes: Vec<Scheme>,
}
#[derive(Deserialize)]
struct Scheme {
    method: String,
    pipe: String,
    standing: String,
    checks: Vec<Check>,
}
#[derive(Deserialize)]
struct Check {
    subject: String,
    utilisation: Option<f64>,
}

pub(crate) fn main() -> Result<(), Box<dyn Error>> {
    summary(&read_to_string(stdin())?, &mut stdout().lock())
}

/// The first line, and of each scheme its standing and every check past its limit.
pub(crate) fn summary(json: &str, out: &mut impl Write) -> Result<(), Box<dyn Error>> {
    let report: Report = serde_json::from_str(json)?;
    writeln!(out, "{}", report.answer)?;
    for Scheme { method, pipe, standing, checks } in report.schemes {
        let past = checks.iter().filter(|check| check.utilisation.is_some_and(|share| share > 1.0));
        let past: Vec<&str> = past.map(|check| check.subject.as_str()).collect();
        writeln!(out, "{method} of {pipe}: {standing}; past the limit: {}", past.join(", "))?;
    }
    Ok(())
}
