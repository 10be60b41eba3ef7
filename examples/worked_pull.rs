//! The long worked pulls of the handbooks, step by step: printed figures beside ours, each with its
//! tolerance, source and what ours rests on. Exit code 1 where one is outside.
//!
//! ```sh
//! cargo run --release --example worked_pull
//! cargo run --release --example worked_pull -- --format markdown
//! ```

#[path = "published_limits/book/mod.rs"]
mod book;

fn main() -> book::print::Ended {
    book::print::alone(&book::worked_pull::TOPIC)
}
