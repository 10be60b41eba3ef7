//! Printed limits, tables and worked examples, re-run: printed figure, ours, difference, tolerance with its reason,
//! source, locator, how it was read, the law or row that ours comes from, its mark and the line of code that puts them
//! together. Exit code 1 where one is outside its tolerance. A law `laws::TOPIC::NAME` stands in `src/laws/TOPIC.rs`, a row
//! `TABLE/KEY` in `tables/TABLE.yaml`; `jackpull handbook --row TABLE/KEY` prints it.
//!
//! ```sh
//! cargo run --release --example published_limits
//! cargo run --release --example published_limits -- --format markdown
//! cargo run --release --example published_limits -- --coverage
//! ```
//!
//! `--coverage` lists every law and every row in use with its mark, and how many of these figures rest on it and would not
//! agree were ours off by a tenth; of rows without any, whether another test notices twice of each number, or which is open.

mod book;
pub(crate) mod coverage;

use book::{Figure, Read, TOPICS, Topic, figures};
use jackpull::Handbook;
use jackpull::source::Mark;
use std::collections::BTreeSet;
use std::error::Error;
use std::io::{Write, stdout};
use std::process::ExitCode;

type Printed = Result<(), Box<dyn Error>>;

fn main() -> Result<ExitCode, Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let is_markdown = match arguments.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        [] | ["--format", "text"] => false,
        ["--format", "markdown"] => true,
        ["--coverage"] => return coverage::print(&mut stdout().lock()).map(|()| ExitCode::SUCCESS),
        _ => return Err("usage: published_limits [--format text|markdown | --coverage]".into()),
    };
    Ok(if print(&mut stdout().lock(), is_markdown)? { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Prints the book; whether every figure is right.
pub(crate) fn print(out: &mut impl Write, is_markdown: bool) -> Result<bool, Box<dyn Error>> {
    let handbook = Handbook::embedded();
    let mut all = Vec::new();
    for topic in &TOPICS {
        let figures = figures(topic.write, &handbook)?;
        if is_markdown {
            markdown(out, topic, &figures)?
        } else {
            text(out, topic, &figures)?
        }
        all.extend(figures);
    }
    sources(out, &handbook, &all)?;
    counts(out, &all)?;
    Ok(all.iter().all(Figure::is_right))
}

/// What a reader looks for first.
fn word(figure: &Figure) -> &'static str {
    match (figure.is_right(), figure.is_not_followed) {
        (true, false) => "agrees",
        (true, true) => "not followed",
        (false, _) => "OUTSIDE",
    }
}

/// The line of code that puts law, row and printed figure together.
fn place(figure: &Figure) -> String {
    format!("{}:{}", figure.code.file(), figure.code.line())
}

fn text(out: &mut impl Write, topic: &Topic, figures: &[Figure]) -> Printed {
    writeln!(out, "{}\n", topic.title)?;
    for figure in figures {
        let Numbers { printed, ours, off, within } = numbers(figure);
        writeln!(out, "{:<12}  {}: printed {printed}, ours {ours}, {off}", word(figure), figure.what)?;
        if figure.is_not_followed {
            writeln!(out, "              because {}", figure.why)?;
        } else {
            writeln!(out, "              within {within}: {}", figure.why)?;
        }
        writeln!(out, "              {}, {} ({})", figure.source, figure.locator, figure.read.label())?;
        writeln!(out, "              ours by {} ({}), {}", figure.by.join(", "), figure.mark, place(figure))?;
    }
    writeln!(out)?;
    Ok(())
}

fn markdown(out: &mut impl Write, topic: &Topic, figures: &[Figure]) -> Printed {
    writeln!(out, "## {}\n", topic.title)?;
    writeln!(
        out,
        "| | what | printed | ours | difference | tolerance, and why | source, locator | read | law or row | its mark |"
    )?;
    writeln!(out, "|---|---|---|---|---|---|---|---|---|---|")?;
    for figure in figures {
        let Numbers { printed, ours, off, within } = numbers(figure);
        let tolerance = if figure.is_not_followed { String::new() } else { format!("{within}: ") };
        let (by, read) = (figure.by.join(", "), figure.read.label());
        writeln!(
            out,
            "| {} | {} | {printed} | {ours} | {off} | {tolerance}{} | {}, {} | {read} | {by}, {} | {} |",
            word(figure),
            figure.what,
            figure.why,
            figure.source,
            figure.locator,
            place(figure),
            figure.mark,
        )?;
    }
    writeln!(out)?;
    Ok(())
}

struct Numbers {
    printed: String,
    ours: String,
    off: String,
    within: String,
}

/// Ours and the difference have one decimal more than the print.
fn numbers(figure: &Figure) -> Numbers {
    let (decimals, unit) = (figure.decimals, &figure.unit);
    let with_unit = |number: String| format!("{number} {unit}").trim_end().to_owned();
    Numbers {
        printed: with_unit(format!("{:.decimals$}", figure.printed)),
        ours: with_unit(format!("{:.*}", decimals + 1, figure.ours)),
        off: format!("{:+.*}", decimals + 1, figure.ours - figure.printed),
        within: format!("{:.*}", decimals + 1, figure.within),
    }
}

fn sources(out: &mut impl Write, handbook: &Handbook, all: &[Figure]) -> Printed {
    writeln!(out, "Sources\n")?;
    let bibliography = handbook.sources()?;
    for id in all.iter().map(|figure| figure.source).collect::<BTreeSet<_>>() {
        if let Some(row) = bibliography.get(id) {
            let row = row.value;
            writeln!(
                out,
                "- {id}: {}; {}, {}; {}",
                row.title.value.0, row.publisher.value.0, row.edition.value.0, row.consulted.value.0
            )?;
        } else {
            writeln!(out, "- {id}")?;
        }
    }
    writeln!(out)?;
    Ok(())
}

fn counts(out: &mut impl Write, all: &[Figure]) -> Printed {
    let count = |is: &dyn Fn(&Figure) -> bool| all.iter().filter(|figure| is(figure)).count();
    let outside = count(&|figure| !figure.is_right());
    let not_followed = count(&|figure| figure.is_not_followed);
    writeln!(
        out,
        "{} figures: {outside} outside their tolerance; {not_followed} printed and not followed, with the reason\n",
        all.len()
    )?;
    for read in Read::ALL {
        writeln!(out, "- printed figure {}: {}", read.label(), count(&|figure| figure.read == read))?;
    }
    for mark in Mark::ALL {
        writeln!(out, "- ours by what is {}: {}", mark, count(&|figure| figure.mark == mark))?;
    }
    Ok(())
}
