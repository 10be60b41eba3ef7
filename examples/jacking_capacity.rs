//! Force that a pipe end is allowed in jacking, by the codes and makers that print one: printed figures beside ours, each with its
//! tolerance, source and what ours rests on. Exit code 1 where one is outside.
//!
//! ```sh
//! cargo run --release --example jacking_capacity
//! cargo run --release --example jacking_capacity -- --format markdown
//! ```

#[path = "published_limits/book/mod.rs"]
mod book;

fn main() -> book::print::Ended {
    book::print::alone(&book::jacking_capacity::TOPIC)
}
