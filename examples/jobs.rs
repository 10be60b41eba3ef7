//! The table of jobs that were built or refused, with what the tool says of each. Exit code 1 where fewer than nine of
//! ten come out as an engineer would have it, or one that does not has no reason beside it.
//!
//! ```sh
//! cargo run --release --example jobs
//! cargo run --release --example jobs -- --format markdown
//! ```

#[path = "../tests/fixtures/jobs.rs"]
mod told;

use jackpull::Handbook;
use std::error::Error;
use std::io::{Write, stdout};
use std::process::ExitCode;

fn main() -> Result<ExitCode, Box<dyn Error>> {
    let is_markdown = std::env::args().skip(1).eq(["--format", "markdown"]);
    Ok(if print(&mut stdout().lock(), is_markdown)? { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Prints the jobs; whether enough are right.
pub(crate) fn print(out: &mut impl Write, is_markdown: bool) -> Result<bool, Box<dyn Error>> {
    let (table, handbook) = (told::table()?, Handbook::embedded());
    let (mut right, mut is_told) = (0, true);
    if is_markdown {
        writeln!(
            out,
            "## Jobs\n\n| | job | what happened | an engineer | the tool | taken | source, locator | mark |"
        )?;
        writeln!(out, "|---|---|---|---|---|---|---|---|")?;
    } else {
        writeln!(out, "Jobs\n")?;
    }
    for job in &table.jobs {
        let said = job.said(&table, &handbook)?;
        let is_right = job.is_right(&said);
        right += usize::from(is_right);
        is_told &= is_right == job.wrong.is_none();
        let (sign, answers) = (if is_right { "right" } else { "WRONG" }, job.answers.join(" or "));
        let by =
            if said.held_back_by.is_empty() { String::new() } else { format!(" by {}", said.held_back_by.join(", ")) };
        let why = job.wrong.as_ref().map_or_else(String::new, |why| format!("; wrong because {why}"));
        let says = format!("{}{by}{why}", told::word(said.standing));
        let taken: Vec<String> =
            job.taken(&table).iter().map(|taken| format!("{}: {}", taken.line, taken.why)).collect();
        if is_markdown {
            let (taken, what) = (taken.join("; "), format!("{} ({})", job.what, job.method));
            let from = format!("{}, {} | {}", job.source, job.locator, job.mark);
            writeln!(out, "| {sign} | {what} | {} | {answers} | {says} | {taken} | {from} |", job.happened)?;
            continue;
        }
        writeln!(out, "{sign}  {} ({})", job.what, job.method)?;
        writeln!(out, "       {}", job.happened)?;
        writeln!(out, "       {}, {} ({})", job.source, job.locator, job.mark)?;
        for taken in taken {
            writeln!(out, "       taken  {taken}")?;
        }
        writeln!(out, "       an engineer: {answers}; the tool: {says}")?;
    }
    let all = table.jobs.len();
    writeln!(out, "\n{right} of {all} jobs as an engineer would have it; at least nine of ten are asked for")?;
    Ok(is_told && right * 10 >= all * 9)
}
