//! A long list of proposed pipes, kept short on the page: the JSON holds all of it.

use super::{Page, sentence};
use crate::report::view::{Report, SchemeView};

/// Places of proposed pipes whose checks are printed.
const DETAILED: usize = 6;

/// A proposed pipe that its family bars from the method: told by reason and not in the ranking.
pub(super) fn is_impossible(scheme: &SchemeView) -> bool {
    scheme.proposed && !scheme.excluded.is_empty()
}

/// The schemes of the file, and the best of those that are proposed.
pub(super) fn detailed(report: &Report) -> impl Iterator<Item = &SchemeView> {
    report.schemes.iter().enumerate().filter(|(place, one)| *place < DETAILED || !one.proposed).map(|(_, one)| one)
}

impl Page {
    /// What cannot be put in this way, by reason.
    pub(super) fn impossible(&mut self, report: &Report) {
        let mut reasons: Vec<(&str, &str, Vec<String>)> = Vec::new();
        for scheme in report.schemes.iter().filter(|scheme| is_impossible(scheme)) {
            let Some(why) = scheme.excluded.first() else { continue };
            let name = format!("{} of {}", scheme.method, scheme.pipe);
            match reasons.iter_mut().find(|(reason, ..)| *reason == why.reason) {
                Some((.., names)) => names.push(name),
                None => reasons.push((&why.reason, &why.source, vec![name])),
            }
        }
        for (reason, source, names) in reasons {
            let text = format!("Barred, proposed: {}. {} ({source})", names.join(", "), sentence(reason));
            self.wrapped("     ", &text);
        }
    }

    /// How many are not told of one by one.
    pub(super) fn not_detailed(&mut self, report: &Report) {
        let all = report.schemes.iter().filter(|scheme| !scheme.checks.is_empty()).count();
        let shown = detailed(report).filter(|scheme| !scheme.checks.is_empty()).count();
        if shown < all {
            self.gap();
            let text = format!(
                "Checks and assumed values of {} more proposed schemes stand in the JSON (--format json); list a pipe \
                 under `candidates` to have them printed.",
                all - shown
            );
            self.wrapped("", &text);
        }
    }
}
