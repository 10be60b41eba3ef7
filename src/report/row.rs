//! One drive as a row of a table of many.

use super::{Report, text::MOST_GOVERNING, words};
use crate::check::{Check, Subject};
use crate::choice::{Ask, Ranked, asks, not_decided};

/// What stands in each column of [`Report::row`].
pub const COLUMNS: [&str; 11] = [
    "drive",
    "answer",
    "standing",
    "method",
    "pipe",
    "governing check",
    "utilisation",
    "mark",
    "governing checks",
    "needed and not decided",
    "fields to write",
];

/// The answer and what is behind it for the first scheme; empty where there is nothing to tell.
pub(super) fn row(report: &Report<'_>) -> [String; COLUMNS.len()] {
    let first = report.choice.ranked.first();
    let of = |tell: &dyn Fn(&Ranked) -> String| first.map_or_else(String::new, tell);
    let governing = first.and_then(|first| first.scheme.governing());
    let utilisation = governing.and_then(|check| check.utilisation());
    [
        report.drive.name().to_owned(),
        words::answer(report.drive, report.choice),
        of(&|first| first.standing.label().to_owned()),
        of(&|first| first.scheme.method.key().to_owned()),
        of(&|first| first.pipe.label().to_owned()),
        governing.map_or_else(String::new, |check| check.subject.label().to_owned()),
        utilisation.map_or_else(String::new, |used| used.to_string()),
        governing.map_or_else(String::new, |check| check.mark(report.drive.handbook()).key().to_owned()),
        of(&|first| {
            let used = |check: &Check| Some(format!("{}={:.3}", check.subject.code(), check.utilisation()?));
            let told = |check| Some(format!("{} ({})", used(check)?, check.mark(report.drive.handbook()).key()));
            first.scheme.governed().into_iter().take(MOST_GOVERNING).filter_map(told).collect::<Vec<_>>().join("; ")
        }),
        of(&|first| not_decided(&first.scheme).map(Subject::label).collect::<Vec<_>>().join("; ")),
        of(&|first| {
            asks(first).iter().filter(|ask| !ask.ways.is_empty()).map(Ask::line).collect::<Vec<_>>().join("; ")
        }),
    ]
}
