//! The schemes behind the first, in short: the checks that are not within.

use super::page::{Page, is_checked};
use super::proposed::detailed;
use super::sure::one_check;
use crate::check::{Check, Verdict};
use crate::choice::Choice;
use crate::choice::reason::name;

impl Page<'_> {
    pub(super) fn others(&mut self, choice: &Choice) {
        let drive = self.drive;
        let mut others = detailed(drive, choice).skip(1).filter(|ranked| is_checked(ranked)).peekable();
        if others.peek().is_none() {
            return;
        }
        self.heading(
            "Other schemes: checks that are not within, with likely and high share of the limit (--full: \
            all checks)",
        );
        for ranked in others {
            let checks = ranked.scheme.checks.iter();
            let not_within: Vec<&Check> = checks.filter(|check| check.verdict != Verdict::Within).collect();
            let all = if not_within.is_empty() { ": every check within" } else { "" };
            self.wrapped("", &format!("{}, {}{all}", name(ranked), ranked.standing.label()));
            let not_within: Vec<String> = not_within.into_iter().map(one_check).collect();
            if !not_within.is_empty() {
                self.wrapped("    ", &not_within.join("; "));
            }
        }
        self.not_detailed(choice);
    }
}
