//! Figures as text and as tables of Markdown, and how many there are.

use super::{Figure, Read, Topic, figures};
use jackpull::Handbook;
use jackpull::source::Mark;
use std::collections::BTreeSet;
use std::error::Error;
use std::io::{Write, stdout};
use std::process::ExitCode;

type Printed = Result<(), Box<dyn Error>>;

/// How a program ends.
pub(crate) type Ended = Result<ExitCode, Box<dyn Error>>;

/// The program of one topic: exit code 1 where a figure is outside its tolerance.
pub(crate) fn alone(topic: &Topic) -> Ended {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let is_markdown = is_markdown(&arguments).ok_or("the arguments may be: --format text|markdown")?;
    ended(print(&mut stdout().lock(), &[topic], is_markdown)?)
}

pub(crate) fn is_markdown(arguments: &[String]) -> Option<bool> {
    match arguments.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        [] | ["--format", "text"] => Some(false),
        ["--format", "markdown"] => Some(true),
        _ => None,
    }
}

pub(crate) fn ended(is_right: bool) -> Ended {
    Ok(if is_right { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Prints topics, their sources and how many figures there are of what kind; whether every figure is right.
pub(crate) fn print(out: &mut impl Write, topics: &[&Topic], is_markdown: bool) -> Result<bool, Box<dyn Error>> {
    let handbook = Handbook::embedded();
    let mut all = Vec::new();
    for topic in topics {
        let figures = figures(topic.write, &handbook)?;
        if is_markdown {
            markdown(out, topic, &figures)?
        } else {
            text(out, topic, &figures)?
        }
        all.push((topic.name, figures));
    }
    sources(out, &handbook, all.iter().flat_map(|(_, figures)| figures))?;
    counts(out, &all)?;
    Ok(all.iter().all(|(_, figures)| figures.iter().all(Figure::is_right)))
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
pub(crate) fn place(figure: &Figure) -> String {
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

fn sources<'a>(out: &mut impl Write, handbook: &Handbook, all: impl Iterator<Item = &'a Figure>) -> Printed {
    writeln!(out, "Sources\n")?;
    let bibliography = handbook.sources()?;
    for id in all.map(|figure| figure.source).collect::<BTreeSet<_>>() {
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

/// A heading, and which figures are counted under it.
type Column = (String, Box<dyn Fn(&Figure) -> bool>);

/// How many figures of each topic, by how the printed one was read and by the mark of what ours rests on.
fn counts(out: &mut impl Write, topics: &[(&str, Vec<Figure>)]) -> Printed {
    let mut columns: Vec<Column> = vec![
        ("figures".to_owned(), Box::new(|_| true)),
        ("outside tolerance".to_owned(), Box::new(|figure| !figure.is_right())),
        ("not followed".to_owned(), Box::new(|figure| figure.is_not_followed)),
    ];
    columns.extend(
        Read::ALL.map(|read| -> Column { (read.label().to_owned(), Box::new(move |figure| figure.read == read)) }),
    );
    table(out, "printed figure", topics, &columns)?;
    let marks = Mark::ALL.map(|mark| -> Column { (mark.to_string(), Box::new(move |figure| figure.mark == mark)) });
    table(out, "ours by what is", topics, &marks)
}

fn table(out: &mut impl Write, lead: &str, topics: &[(&str, Vec<Figure>)], columns: &[Column]) -> Printed {
    let heads: String = columns.iter().map(|(head, _)| format!(" {head} |")).collect();
    writeln!(out, "| {lead:<16} |{heads}")?;
    let lines: String = columns.iter().map(|(head, _)| format!("{}:|", "-".repeat(head.len() + 1))).collect();
    writeln!(out, "|{}|{lines}", "-".repeat(18))?;
    let mut row = |name: &str, figures: &[&Figure]| -> Printed {
        let count = |(head, of): &Column| {
            let number = figures.iter().filter(|figure| of(figure)).count();
            format!(" {number:>0$} |", head.len())
        };
        let cells: String = columns.iter().map(count).collect();
        Ok(writeln!(out, "| {name:<16} |{cells}")?)
    };
    for (name, figures) in topics {
        row(name, &figures.iter().collect::<Vec<_>>())?;
    }
    if topics.len() > 1 {
        row("all", &topics.iter().flat_map(|(_, figures)| figures).collect::<Vec<_>>())?;
    }
    Ok(writeln!(out)?)
}
