//! The schemes behind the first, in short: the checks that are not within.

use super::Page;
use super::proposed::detailed;
use super::sure::one_check;
use crate::report::view::{CheckView, Report, SchemeView};

impl Page {
    /// All checks and figures of one scheme.
    pub(super) fn checks(&mut self, scheme: &SchemeView) {
        self.heading(&format!("Checks: {} of {}, {}", scheme.method, scheme.pipe, scheme.standing));
        self.scheme(scheme);
    }

    pub(super) fn others(&mut self, report: &Report) {
        let mut others = detailed(report).skip(1).filter(|scheme| !scheme.checks.is_empty()).peekable();
        if others.peek().is_none() {
            return;
        }
        self.heading("Other schemes: what is not within, likely and high share of the limit (all of it: --full)");
        for scheme in others {
            let not_within: Vec<&CheckView> = scheme.checks.iter().filter(|check| check.verdict != "within").collect();
            let all = if not_within.is_empty() { ": every check within" } else { "" };
            self.wrapped("", &format!("{} of {}, {}{all}", scheme.method, scheme.pipe, scheme.standing));
            for check in not_within {
                self.wrapped("    ", &one_check(check));
            }
        }
        self.not_detailed(report);
    }
}
