//! Whole jobs: what the tool says of them from what their sources tell beforehand and nothing else, against what a
//! competent engineer would say who knows no more. Built jobs are told more often than refused ones, and successes more
//! often than failures; the table has both.

use crate::told::{Said, Table, table, word};
use jackpull::Handbook;
use std::collections::BTreeSet;

/// Every job with what is said of it.
fn said(table: &Table) -> Vec<Said> {
    let handbook = Handbook::embedded();
    table.jobs.iter().map(|job| job.said(table, &handbook).unwrap_or_else(|error| panic!("{error}"))).collect()
}

/// Nine of ten at least, and those that are not are named with the reason. None is named that is right.
#[test]
fn nine_of_ten_jobs_come_out_as_an_engineer_would_have_it() {
    let table = table().unwrap();
    let all = said(&table);
    let right = table.jobs.iter().zip(&all).filter(|(job, said)| job.is_right(said)).count();
    assert!(table.jobs.len() >= 30 && right * 10 >= table.jobs.len() * 9, "{right} of {} right", table.jobs.len());
    let surprises: Vec<String> = table
        .jobs
        .iter()
        .zip(&all)
        .filter(|(job, said)| job.is_right(said) != job.wrong.is_none())
        .map(|(job, said)| {
            let (says, wanted) = (word(said.standing), job.answers.join(" or "));
            format!("{}: {says} by {}; wanted {wanted}", job.what, said.held_back_by.join(", "))
        })
        .collect();
    assert!(surprises.is_empty(), "{}", surprises.join("\n"));
}

/// A table in which every answer is accepted, or every job was built, would test nothing.
#[test]
fn the_table_can_fail() {
    let table = table().unwrap();
    let refused: Vec<_> = table.jobs.iter().filter(|job| job.happened.starts_with("refused")).collect();
    assert!(refused.len() * 4 >= table.jobs.len(), "{} refused", refused.len());
    for job in &table.jobs {
        let accepts = |answer: &str| job.answers.iter().any(|accepted| accepted == answer);
        let (chosen, barred) = (accepts("fits") || accepts("with care"), accepts("barred"));
        assert!(chosen != barred, "{}: {:?}", job.what, job.answers);
        assert_eq!(barred, job.happened.starts_with("refused"), "{}", job.what);
        let words = ["fits", "with care", "not decided", "barred"];
        assert!(job.answers.iter().all(|answer| words.contains(&answer.as_str())), "{}", job.what);
        if let Some(wrong) = &job.wrong {
            assert!(wrong.len() > 20, "{}", job.what);
        }
    }
}

/// Nothing told is taken again, each line that is taken says why, and each job says where it is from.
#[test]
fn what_is_taken_is_not_told() {
    let table = table().unwrap();
    let mut used = BTreeSet::new();
    for job in &table.jobs {
        assert!(job.source.len() > 10 && job.locator.len() > 3, "{}", job.what);
        assert!(["published", "memory", "common_practice"].contains(&job.mark.as_str()), "{}", job.what);
        for name in &job.taken_by_name {
            assert!(table.taken.contains_key(name), "{}: {name}", job.what);
            used.insert(name.clone());
        }
        let key = |line: &str| line.split(':').next().unwrap_or_default().to_owned();
        let mut keys: BTreeSet<String> = job.told.lines().filter(|line| !line.starts_with(' ')).map(key).collect();
        for taken in job.taken(&table) {
            assert!(taken.why.len() > 5, "{}: {}", job.what, taken.line);
            assert!(keys.insert(key(&taken.line)), "{}: {} is told, or taken twice", job.what, taken.line);
        }
    }
    let unused: Vec<_> = table.taken.keys().filter(|name| !used.contains(*name)).collect();
    assert!(unused.is_empty(), "taken by no job: {unused:?}");
}
