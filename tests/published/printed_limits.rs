//! The printed limits and worked examples that `cargo run --example published_limits` re-runs: each agrees within its
//! tolerance, or is one that is not followed and differs.

use crate::book;
use crate::found::{Found, Outcome, Stop, pages};
use jackpull::Handbook;
use std::sync::Arc;

macro_rules! topics {
    ($($topic:ident),+) => {
        pages!($($topic),+);

        $(fn $topic(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
            agree(book::$topic::TOPIC.write, handbook, found)
        })+
    };
}
topics!(
    jacking_capacity,
    measured_drives,
    pull_stress,
    worked_pull,
    collapse,
    earth_load,
    thrust_wall,
    settlement,
    hydraulics
);

fn agree(write: book::Write, handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let figures = book::figures(write, handbook).map_err(|error| Stop(error.to_string()))?;
    for figure in figures.iter().filter(|figure| !figure.is_right()) {
        let to_be = if figure.is_not_followed { "must differ from" } else { "must be near" };
        found.push(format!("{}: {} {to_be} {} {}", figure.what, figure.ours, figure.printed, figure.unit));
    }
    Ok(())
}

/// A topic without a page would be printed and never tested.
#[test]
fn every_topic_is_a_page() {
    assert_eq!(PAGES.len(), book::TOPICS.len());
}
