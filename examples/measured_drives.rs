//! Forces of measured drives and of rules of thumb: printed figures beside ours, each with its
//! tolerance, source and what ours rests on. Exit code 1 where one is outside.
//!
//! ```sh
//! cargo run --release --example measured_drives
//! cargo run --release --example measured_drives -- --format markdown
//! ```

#[path = "published_limits/book/mod.rs"]
mod book;

fn main() -> book::print::Ended {
    book::print::alone(&book::measured_drives::TOPIC)
}
