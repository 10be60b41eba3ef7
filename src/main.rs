//! The command `jackpull`.

use std::process::ExitCode;

fn main() -> ExitCode {
    jackpull::cli::run()
}
