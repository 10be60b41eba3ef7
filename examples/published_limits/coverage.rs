//! Which laws and rows a figure from outside would notice, and which none.

use super::book::print::place;
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
    let here = |rests: &dyn Fn(&Figure) -> bool| {
        let first = close.iter().find(|figure| rests(figure))?;
        let number = close.iter().filter(|figure| rests(figure)).count();
        let more = if number > 1 { format!(" and {} more", number - 1) } else { String::new() };
        Some(format!("{}, {} ({}){more}", first.source, first.what, place(first)))
    };
    let (mut figured, mut bare) = (0, 0);
    for equation in equations() {
        let told = here(&|figure| figure.equations.contains(&equation));
        *if told.is_some() { &mut figured } else { &mut bare } += 1;
        let told = told.unwrap_or_else(|| "no figure here".to_owned());
        writeln!(out, "law {} ({}): {told}", equation.name, equation.mark)?;
    }
    writeln!(out, "laws: {figured} with figures here, {bare} without")?;
    let (mut figured, mut twice, mut open) = (0, 0, 0);
    for (table, key, citation) in handbook.citations()? {
        if table == "sources" || citation.used_by == "nothing yet" {
            continue;
        }
        let row = format!("{table}/{key}");
        let untested = UNTESTED.lines().find(|line| line.starts_with(&format!("{row}/")));
        let (count, told) = if let Some(told) = here(&|figure| figure.by.iter().any(|by| by.ends_with(&row))) {
            (&mut figured, told)
        } else if let Some((cell, reason)) = untested.and_then(|line| line.split_once("  ")) {
            (&mut open, format!("open, {cell}: {reason}"))
        } else {
            (&mut twice, "a test notices twice of each number".to_owned())
        };
        *count += 1;
        writeln!(out, "row {row} ({}): {told}", citation.mark)?;
    }
    writeln!(
        out,
        "rows: {figured} with figures here, {twice} of which other tests notice twice, {open} with an open number"
    )?;
    Ok(())
}

/// Would not agree were ours a tenth larger or smaller.
fn is_close(figure: &Figure) -> bool {
    !figure.is_not_followed && figure.within < 0.1 * figure.printed.abs()
}
