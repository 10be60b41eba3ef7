//! The built command: exit codes, what goes to which stream, and what it prints.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs,
    reason = "a test that fails should stop"
)]

#[path = "../fixtures/edit.rs"]
mod edit;

mod assess;
mod choosing;
mod crew;
mod each;
mod examples;
mod faults;
mod figures;
mod filled;
mod golden;
mod handbook;
mod jacked;
mod many;
mod run;
mod schedule;
mod schema;
mod screen;
mod sheet;
mod shell;
mod stem;
mod stories;
mod surroundings;
mod template;
mod told;
mod working;
mod works;
