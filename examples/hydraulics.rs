//! Part-full pipes and least slopes of sewers: printed figures beside ours, each with its
//! tolerance, source and what ours rests on. Exit code 1 where one is outside.
//!
//! ```sh
//! cargo run --release --example hydraulics
//! cargo run --release --example hydraulics -- --format markdown
//! ```

#[path = "published_limits/book/mod.rs"]
mod book;

fn main() -> book::print::Ended {
    book::print::alone(&book::hydraulics::TOPIC)
}
