//! The table of jobs that were built or refused, with what the tool says of each.
//!
//! ```sh
//! cargo run --example jobs
//! ```

#[path = "../tests/fixtures/jobs.rs"]
mod told;

use jackpull::Handbook;
use std::error::Error;
use std::io::{Write, stdout};

pub(crate) fn main() -> Result<(), Box<dyn Error>> {
    let (table, handbook) = (told::table()?, Handbook::embedded());
    let mut out = stdout().lock();
    let mut right = 0;
    for job in &table.jobs {
        let said = job.said(&table, &handbook)?;
        right += usize::from(job.is_right(&said));
        let sign = if job.is_right(&said) { "right" } else { "WRONG" };
        writeln!(out, "{sign}  {} ({})", job.what, job.method)?;
        writeln!(out, "       {}", job.happened)?;
        writeln!(out, "       {}, {} ({})", job.source, job.locator, job.mark)?;
        for taken in job.taken(&table) {
            writeln!(out, "       taken  {}: {}", taken.line, taken.why)?;
        }
        let says = told::word(said.standing);
        writeln!(out, "       an engineer: {}; the tool: {says}", job.answers.join(" or "))?;
        if !said.held_back_by.is_empty() {
            writeln!(out, "       by {}", said.held_back_by.join(", "))?;
        }
        if let Some(why) = &job.wrong {
            writeln!(out, "       wrong because {why}")?;
        }
    }
    writeln!(out, "{right} of {} as an engineer would have it", table.jobs.len())?;
    Ok(())
}
