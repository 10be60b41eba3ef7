//! Which laws and rows a figure from outside would notice, and which none.

use super::book::{Figure, TOPICS, figures};
use jackpull::Handbook;
use jackpull::laws::equations;
use std::error::Error;
use std::io::Write;

/// Numbers whose double no test notices, each with the reason: `table/row/column`, two spaces, reason.
const UNTESTED: &str = include_str!("../../tests/published/untested.txt");

/// Every law, then every row in use, with its mark and what would notice.
pub(crate) fn print(out: &mut impl Write) -> Result<(), Box<dyn Error>> {
    let handbook = Handbook::embedded();
    let mut close = Vec::new();
    for topic in &TOPICS {
        close.extend(figures(topic.write, &handbook)?.into_iter().filter(is_close));
    }
    let here = |rests: &dyn Fn(&Figure) -> bool| close.iter().filter(|figure| rests(figure)).count();
    for equation in equations() {
        let told = match here(&|figure| figure.equations.contains(&equation)) {
            0 => "no figure here".to_owned(),
            number => format!("{number} figures here"),
        };
        writeln!(out, "law {} ({}): {told}", equation.name, equation.mark)?;
    }
    let (mut figured, mut tested, mut open) = (0, 0, 0);
    for (table, key, citation) in handbook.citations()? {
        if table == "sources" || citation.used_by == "nothing yet" {
            continue;
        }
        let row = format!("{table}/{key}");
        let number = here(&|figure| figure.by.iter().any(|by| by.ends_with(&row)));
        let untested = UNTESTED.lines().find(|line| line.starts_with(&format!("{row}/")));
        let told = match (number, untested.and_then(|line| line.split_once("  "))) {
            (0, Some((cell, reason))) => {
                open += 1;
                format!("open, {cell}: {reason}")
            }
            (0, None) => {
                tested += 1;
                "a test notices twice of each number".to_owned()
            }
            _ => {
                figured += 1;
                format!("{number} figures here")
            }
        };
        writeln!(out, "row {row} ({}): {told}", citation.mark)?;
    }
    writeln!(out, "rows: {figured} with figures here, {tested} that other tests notice, {open} with an open number")?;
    Ok(())
}

/// Would not agree were ours a tenth larger or smaller.
fn is_close(figure: &Figure) -> bool {
    !figure.is_not_followed && figure.within < 0.1 * figure.printed.abs()
}
