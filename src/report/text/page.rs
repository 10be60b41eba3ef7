//! A report being written, part by part, with values in the units of the reader; what it says first.

use crate::check::{Care, Check, Subject, Verdict};
use crate::choice::Ranked;
use crate::choice::reason::{exclusion, with_verdict};
use crate::drive::Drive;
use crate::handbook::HandbookError;
use crate::quantity::shown::decimal;
use crate::quantity::{Band, Shown, UnitSystem};
use crate::report::contents::Beside;
use crate::report::document::{Block, Table};
use crate::report::words::ratio;
use crate::report::{cautions, words};
use crate::source::Origin;
use crate::vary::{Input, InputTurns, Outcome};

pub(super) fn is_checked(ranked: &Ranked) -> bool {
    ranked.scheme.checks.iter().next().is_some()
}

/// Capital at the start, full stop at the end.
pub(super) fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str().trim_end_matches('.'))
}

/// What is printed, of one drive in one family of units.
pub(super) struct Page<'a> {
    pub(super) blocks: Vec<Block>,
    pub(super) drive: &'a Drive,
    pub(super) system: UnitSystem,
}

impl<'a> Page<'a> {
    pub(super) const fn new(drive: &'a Drive, system: UnitSystem) -> Self {
        Self { blocks: Vec::new(), drive, system }
    }

    pub(super) fn value(&self, shown: Shown) -> String {
        shown.display(self.system).to_string()
    }

    /// With digits to compute with.
    pub(super) fn precise(&self, shown: Shown) -> String {
        shown.precise(self.system).to_string()
    }

    pub(super) fn band(&self, band: Band<Shown>) -> String {
        format!("{} / {} / {}", self.value(band.low), self.value(band.likely), self.value(band.high))
    }

    pub(super) fn origin(&self, origin: Origin) -> String {
        self.drive.handbook.reference(origin).to_string()
    }

    /// The same in short: the field, the row or the source, and the mark.
    pub(super) fn place(&self, origin: Origin) -> String {
        let reference = self.drive.handbook.reference(origin);
        let place = if let Origin::File(field) = origin { field.0.to_owned() } else { reference.place() };
        format!("{place}, {}", reference.mark)
    }

    pub(super) fn line(&mut self, text: &str) {
        self.blocks.push(Block::Line(text.to_owned()));
    }

    pub(super) fn gap(&mut self) {
        self.blocks.push(Block::Gap);
    }

    pub(super) fn heading(&mut self, title: &str) {
        self.blocks.push(Block::Heading(title.to_owned()));
    }

    pub(super) fn table(&mut self, table: Table) {
        self.blocks.push(Block::Table(table));
    }

    /// `first` at the start, the rest under its end.
    pub(super) fn wrapped(&mut self, first: &str, text: &str) {
        self.blocks.push(Block::Paragraph { lead: first.to_owned(), text: text.to_owned() });
    }

    /// Why a scheme is excluded, and by which source.
    pub(super) fn excluded(&self, origin: Origin) -> Result<(String, String), HandbookError> {
        let source = self.drive.handbook.reference(origin).source.to_owned();
        Ok((exclusion(self.drive, origin)?, source))
    }
}

/// Most checks that are told as governing.
pub(in crate::report) const MOST_GOVERNING: usize = 3;
/// Most conditions, and most things to find out, before the rest is left to the checks below.
const MOST_TOLD: usize = 8;

impl Page<'_> {
    /// What an owner has to know of the first scheme before the tables.
    pub(super) fn first(&mut self, first: &Ranked, beside: Option<&Beside>) {
        self.list(
            "Governs  ",
            first.scheme.governed().into_iter().take(MOST_GOVERNING).map(|check| self.used(check)).collect(),
        );
        let turns = beside.and_then(|beside| beside.turns.as_deref()).filter(|_| first.standing.can_be_chosen());
        let no_more = turns.unwrap_or_default().iter().filter_map(|turns| self.no_more(turns));
        let mut find_out = self.of(first, Care::Data);
        find_out.extend(no_more);
        self.list("Only if  ", self.of(first, Care::Condition));
        self.list("Find out ", find_out);
        self.list("Watch    ", self.of(first, Care::Noted));
        let untold = if is_checked(first) { cautions::not_given(self.drive, first) } else { Vec::new() };
        if !untold.is_empty() {
            self.wrapped("Missing  ", &format!("not given, so not checked: {}.", untold.join("; ")));
        }
    }

    fn list(&mut self, label: &str, mut lines: Vec<String>) {
        let more = lines.len().saturating_sub(MOST_TOLD);
        if more > 0 {
            lines.truncate(MOST_TOLD);
            lines.push(format!("and {more} more: see the checks"));
        }
        self.all(label, lines);
    }

    /// Each line, the label before the first.
    pub(super) fn all(&mut self, label: &str, lines: impl IntoIterator<Item = impl AsRef<str>>) {
        let rest = " ".repeat(label.len());
        for (place, line) in lines.into_iter().enumerate() {
            self.wrapped(if place == 0 { label } else { &rest }, line.as_ref());
        }
    }

    /// A check with its demand, its limit and the weakest mark of what enters it.
    fn used(&self, check: &Check) -> String {
        let Some((demand, limit)) = check.high() else { return check.subject.label().to_owned() };
        // What the file leaves out is no demand yet.
        if check.care == Some(Care::Condition) && demand.si <= 0.0 {
            return format!("{}: not given; limit {}", check.subject.label(), self.value(limit));
        }
        let mark = check.mark(&self.drive.handbook);
        let (label, used, of) = (check.subject.label(), ratio(check.utilisation()), check.sense.of());
        format!(
            "{label}: {} {of} {}, {used}, {} ({mark})",
            self.value(demand),
            self.value(limit),
            check.verdict.label()
        )
    }

    /// Ground that a table rates so, by what it says of it.
    fn rated(&self, origin: Origin) -> String {
        let reference = self.drive.handbook.reference(origin);
        format!("goes, but with care: {} ({})", reference.words(), reference.mark)
    }

    /// What asks for care for one reason: what the contractor has to bring, or what has to be so.
    fn of(&self, ranked: &Ranked, care: Care) -> Vec<String> {
        let told = |check: &Check| {
            let asked = check.high().filter(|_| check.is_required());
            let asked = asked.map_or_else(String::new, |(demand, _)| format!("{}; ", self.value(demand)));
            let note = match check.subject {
                Subject::Usual => {
                    let beyond = self.drive.unusual_for(ranked.candidate, ranked.scheme.method);
                    beyond.map(|unusual| unusual.text(self.system)).collect::<Vec<_>>().join(" ")
                }
                Subject::Ground if check.note.is_none() => self.rated(check.basis),
                _ => words::note(check, self.system).unwrap_or_else(|| self.origin(check.basis)),
            };
            format!("{}: {asked}{note}", check.subject.label())
        };
        let mut checks: Vec<&Check> =
            with_verdict(ranked, Verdict::WithCare).filter(|check| check.care == Some(care)).collect();
        // What is nearest to turning first; of what has no number nobody knows.
        let used = |check: &Check| check.utilisation().unwrap_or(1.0);
        checks.sort_by(|a, b| used(b).total_cmp(&used(a)));
        checks.into_iter().map(told).collect()
    }

    /// What nobody knows for certain before the drive, where nothing can be chosen beyond a value of it.
    fn no_more(&self, turns: &InputTurns) -> Option<String> {
        if !matches!(turns.input, Input::Friction | Input::Stone) {
            return None;
        }
        let turn = turns.above.filter(|turn| turn.to == Outcome::Nothing)?;
        let label = turns.input.label();
        Some(match turns.input {
            Input::Friction => {
                let times = decimal((turn.at.si * 100.0).floor() / 100.0, 2);
                format!("{label}: nothing fits if it is {times} times the assumed band or more")
            }
            _ => format!("{label}: nothing fits at {} or more", self.value(turn.at)),
        })
    }
}
