//! Thrust walls, pits and their bases, columns of steel: printed figures beside ours, each with its
//! tolerance, source and what ours rests on. Exit code 1 where one is outside.
//!
//! ```sh
//! cargo run --release --example thrust_wall
//! cargo run --release --example thrust_wall -- --format markdown
//! ```

#[path = "published_limits/book/mod.rs"]
mod book;

fn main() -> book::print::Ended {
    book::print::alone(&book::thrust_wall::TOPIC)
}
