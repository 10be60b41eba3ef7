//! Printed limits, tables and worked examples, re-run: printed figure, ours, difference, tolerance with its reason,
//! source, locator, how it was read, the law or row that ours comes from, its mark and the line of code that puts them
//! together; then jobs that were built or refused. Exit code 1 where a figure is outside its tolerance, or fewer than
//! nine of ten jobs come out as an engineer would have it. A law `laws::TOPIC::NAME` stands in `src/laws/TOPIC.rs`, a row
//! `TABLE/KEY` in `tables/TABLE.yaml`; `jackpull handbook --row TABLE/KEY` prints it.
//!
//! ```sh
//! cargo run --release --example published_limits
//! cargo run --release --example published_limits -- --format markdown
//! cargo run --release --example published_limits -- --coverage
//! ```
//!
//! Each topic is a program of its own beside this folder: `cargo run --release --example collapse`.
//!
//! `--coverage` lists every law and every row in use with its mark and the pages, in `tests`, of which one objects where the
//! law or any number of the row gives a tenth more: printed pages in `published`, recalled ones in `recalled`, those that
//! another hand worked out in `worked`. What no page notices is told with the reason, and so are figures here that rest on it.

pub(crate) mod book;
pub(crate) mod coverage;
#[path = "../jobs.rs"]
#[allow(dead_code, reason = "this program calls what `main` calls")]
mod jobs;
#[path = "../../tests/fixtures/tenth.rs"]
#[allow(dead_code, reason = "the tests write the list")]
mod noticed;

use book::print::{self as figures, Ended};
use std::error::Error;
use std::io::{Write, stdout};
use std::process::ExitCode;

fn main() -> Ended {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let out = &mut stdout().lock();
    if arguments == ["--coverage"] {
        return coverage::print(out).map(|()| ExitCode::SUCCESS);
    }
    let usage = "usage: published_limits [--format text|markdown | --coverage]";
    let is_markdown = figures::is_markdown(&arguments).ok_or(usage)?;
    figures::ended(print(out, is_markdown)?)
}

/// Prints the book; whether every figure is right, and enough jobs are.
pub(crate) fn print(out: &mut impl Write, is_markdown: bool) -> Result<bool, Box<dyn Error>> {
    let is_right = figures::print(out, &book::TOPICS.each_ref(), is_markdown)?;
    Ok(jobs::print(out, is_markdown)? && is_right)
}
