//! A long list of schemes, kept short on the page: the JSON holds all of it.

use super::page::{Page, is_checked, sentence};
use super::sure::one_check;
use crate::check::{Check, Verdict};
use crate::choice::reason::name;
use crate::choice::{Choice, Ranked, not_decided};
use crate::drive::Drive;
use crate::handbook::HandbookError;

/// Places of proposed pipes whose checks are printed.
const DETAILED: usize = 6;

/// A proposed pipe that its family bars from the method: told by reason and not in the ranking.
pub(super) fn is_impossible(drive: &Drive, ranked: &Ranked) -> bool {
    drive.is_proposed(ranked.candidate) && ranked.scheme.is_excluded()
}

/// The schemes of the file, and the best of those that are proposed.
pub(super) fn detailed<'a>(drive: &'a Drive, choice: &'a Choice) -> impl Iterator<Item = &'a Ranked> {
    let ranked = choice.ranked.iter().enumerate();
    ranked.filter(|(place, one)| *place < DETAILED || !drive.is_proposed(one.candidate)).map(|(_, one)| one)
}

impl Page<'_> {
    /// What cannot be put in this way, by reason.
    pub(super) fn impossible(&mut self, choice: &Choice) -> Result<(), HandbookError> {
        let mut reasons: Vec<((String, String), Vec<String>)> = Vec::new();
        for ranked in choice.ranked.iter().filter(|ranked| is_impossible(self.drive, ranked)) {
            let Some(origin) = ranked.scheme.excluded().next() else { continue };
            let why = self.excluded(origin)?;
            match reasons.iter_mut().find(|(reason, _)| *reason == why) {
                Some((_, names)) => names.push(name(ranked)),
                None => reasons.push((why, vec![name(ranked)])),
            }
        }
        for ((reason, source), names) in reasons {
            let text = format!("Barred, proposed: {}. {} ({source})", names.join(", "), sentence(&reason));
            self.wrapped("     ", &text);
        }
        Ok(())
    }

    /// How many are not told of one by one.
    fn not_detailed(&mut self, choice: &Choice) {
        let all = choice.ranked.iter().filter(|ranked| is_checked(ranked)).count();
        let shown = detailed(self.drive, choice).filter(|ranked| is_checked(ranked)).count();
        if shown < all {
            self.gap();
            let text = format!(
                "Checks and assumed values of {} more proposed schemes are in the JSON (--format json); list a pipe \
                 under `candidates` to have them printed.",
                all - shown
            );
            self.wrapped("", &text);
        }
    }
}

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
            let mut not_within: Vec<String> = not_within.into_iter().map(one_check).collect();
            let missing = not_decided(&ranked.scheme).filter(|subject| ranked.scheme.checks.get(*subject).is_none());
            not_within.extend(missing.map(|subject| format!("{} not made", subject.label())));
            let all = if not_within.is_empty() { ": every check within" } else { "" };
            self.wrapped("", &format!("{}, {}{all}", name(ranked), ranked.standing.label()));
            if !not_within.is_empty() {
                self.wrapped("    ", &not_within.join("; "));
            }
        }
        self.not_detailed(choice);
    }
}
