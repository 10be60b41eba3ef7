//! Stress and force that a pulled pipe is allowed, by edition, duration and temperature: printed figures beside ours, each with its
//! tolerance, source and what ours rests on. Exit code 1 where one is outside.
//!
//! ```sh
//! cargo run --release --example pull_stress
//! cargo run --release --example pull_stress -- --format markdown
//! ```

#[path = "published_limits/book/mod.rs"]
mod book;

fn main() -> book::print::Ended {
    book::print::alone(&book::pull_stress::TOPIC)
}
