//! Earth and live load on a pipe, and the strength it needs in service: printed figures beside ours, each with its
//! tolerance, source and what ours rests on. Exit code 1 where one is outside.
//!
//! ```sh
//! cargo run --release --example earth_load
//! cargo run --release --example earth_load -- --format markdown
//! ```

#[path = "published_limits/book/mod.rs"]
mod book;

fn main() -> book::print::Ended {
    book::print::alone(&book::earth_load::TOPIC)
}
