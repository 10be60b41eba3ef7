//! `jackpull template`: a commented drive file to start from.

use super::{Outcome, print};
use clap::Args;

/// Print a commented drive file to start from.
#[derive(Debug, Args)]
pub(super) struct Template {}

const TEXT: &str = include_str!("template.yaml");

impl Template {
    #[expect(clippy::unused_self, reason = "every verb runs alike")]
    pub(super) fn run(&self) -> Outcome {
        match print(TEXT) {
            Ok(()) => Outcome::Chosen,
            Err(outcome) => outcome,
        }
    }
}
