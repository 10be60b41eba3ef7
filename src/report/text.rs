//! The report for a terminal or a file.

mod crew;
mod page;
mod plain;
mod proposed;
mod scheme;
pub(super) mod screen;
mod sure;

use super::contents::Report;
use super::document::Block;
use super::figures::figures;
use super::{cautions, words};
use crate::check::Sense;
use crate::choice::reason::name;
use crate::choice::{Choice, Criterion, Ranked, Standing, asks};
use crate::drive::Assumed;
use crate::drive_file::fields::Spec;
use crate::handbook::HandbookError;
use crate::method::{self, Scheme, Step};
use crate::quantity::shown::decimal;
use crate::quantity::{Role, Shown, UnitSystem};
use crate::source::Mark;
pub(super) use crew::page as crew;
pub(super) use page::MOST_GOVERNING;
use page::{Page, is_checked, sentence};
use proposed::{detailed, is_impossible};

/// Who answers for a sheet on paper.
const SIGNED: &str = "Made by ____________________  Checked by ____________________  Date ____________";

/// What is printed of a report.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Extent {
    /// A page of text: of the schemes behind the first only what is not within.
    Page,
    /// The sheet: figures, and neither assumed values nor working.
    Sheet,
    /// All of it.
    Full,
}

/// Blocks as text.
pub(super) fn printed(blocks: &[Block], columns: usize) -> String {
    plain::text(blocks, columns)
}

/// The report as text.
pub(super) fn page(report: &Report<'_>, system: UnitSystem, extent: Extent) -> Result<String, HandbookError> {
    Ok(printed(&blocks(report, system, extent)?, report.columns))
}

/// The answer first, then why.
pub(super) fn blocks(report: &Report<'_>, system: UnitSystem, extent: Extent) -> Result<Vec<Block>, HandbookError> {
    let Report { drive, choice, .. } = *report;
    let mut page = Page::new(drive, system);
    page.wrapped("", &words::answer(drive, choice));
    page.gap();
    page.wrapped("Drive    ", &drive.name);
    page.all("         ", words::facts(drive, system));
    page.wrapped("Why      ", &sentence(&words::why(drive, choice)?));
    page.asked(choice);
    if let Some(first) = choice.ranked.first() {
        page.first(first, report.beside);
    }
    if extent != Extent::Page {
        page.blocks.extend(figures(report, system).into_iter().map(Block::Figure));
    }

    page.heading("Ranking");
    for ranked in choice.ranked.iter().filter(|ranked| !is_impossible(drive, ranked)) {
        let equal = choice.ranked.iter().filter(|other| other.place == ranked.place).count() > 1;
        page.ranked(ranked, equal)?;
    }
    page.impossible(choice)?;
    let not_looked_at = words::not_looked_at(drive);
    if !not_looked_at.is_empty() {
        page.wrapped("     ", &format!("Not assessed: {}.", not_looked_at.join("; ")));
    }
    page.weights(choice);
    let first = choice.ranked.first().filter(|first| is_checked(first));
    if let Some(first) = first {
        page.checks(first)?;
    }
    page.heading("Not checked in this version");
    for item in cautions::not_checked(drive, choice) {
        page.wrapped("- ", item);
    }
    page.heading("Cautions");
    let own = first.map_or_else(|| Ok(Vec::new()), |first| cautions::of(drive, first, system))?;
    for caution in own.iter().map(String::as_str).chain(cautions::always()) {
        page.wrapped("- ", caution);
    }
    if let Some(beside) = report.beside {
        page.sure(beside, choice);
        page.line_of_drives(beside, choice);
    }
    if let Some(first) = first.filter(|_| extent != Extent::Sheet) {
        page.along(first)?;
    }
    if extent == Extent::Full {
        for ranked in choice.ranked.iter().skip(1).filter(|ranked| is_checked(ranked)) {
            page.checks(ranked)?;
        }
    } else {
        page.others(choice);
    }
    if let Some(first) = first.filter(|_| extent != Extent::Sheet) {
        page.assumed(choice);
        page.working(first);
    }
    if extent == Extent::Full {
        for ranked in choice.ranked.iter().skip(1).filter(|ranked| is_checked(ranked)) {
            page.working(ranked);
        }
        if let Some(text) = report.written {
            page.given(text);
        }
    }
    if extent != Extent::Page {
        page.wrapped("", SIGNED);
    }
    page.gap();
    let digest = report.digest.map_or_else(String::new, |digest| format!(", drive file {digest}"));
    page.wrapped("", &format!("jackpull {}{digest}", env!("CARGO_PKG_VERSION")));
    Ok(page.blocks)
}

impl Page<'_> {
    /// What to write so that the first is decided, a line a field, where it is open.
    fn asked(&mut self, choice: &Choice) {
        if let Some(first) = choice.ranked.first().filter(|first| first.standing == Standing::Open) {
            self.asked_of(first);
        }
    }

    fn asked_of(&mut self, ranked: &Ranked) {
        let mut label = "Write    ";
        for ask in asks(ranked) {
            let fields = ask
                .ways
                .iter()
                .enumerate()
                .flat_map(|(way, fields)| fields.iter().enumerate().map(move |(place, path)| (way, place, *path)));
            for (way, place, path) in fields {
                let field = path.split(": ").next().unwrap_or(path);
                let says = Spec::at(field).map_or_else(String::new, |spec| {
                    format!("{}; {}", spec.doc.trim_end_matches('.').replace("\n", " "), spec.may_be(self.system))
                });
                let settles = match (way, place) {
                    (0, 0) => format!(" (settles {})", ask.checks.join("; ")),
                    (_, 0) => String::new(),
                    _ => " (needed together with the line above)".to_owned(),
                };
                let or = if way > 0 && place == 0 { "or " } else { "" };
                self.wrapped(label, &format!("{or}{path}: {says}{settles}"));
                label = "         ";
            }
        }
    }

    fn ranked(&mut self, ranked: &Ranked, equal: bool) -> Result<(), HandbookError> {
        let score = ranked.score.as_ref().map_or_else(String::new, |score| {
            let (least, most) = (format!("{:.0}", score.least), format!("{:.0}", score.most));
            if least == most { format!(", score {least}") } else { format!(", score {least} to {most}") }
        });
        let proposed = if self.drive.is_proposed(ranked.candidate) { " (proposed)" } else { "" };
        let name = format!("{}{proposed}", name(ranked));
        let place = format!("{}{}", if equal { "=" } else { "" }, ranked.place);
        let standing = ranked.standing.label();
        self.wrapped(&format!("{place:>3}  "), &format!("{name}: {standing}{score}"));
        if let Some(settled) = &ranked.if_settled {
            let open: Vec<&str> = settled.open.iter().map(|subject| subject.label()).collect();
            let ask = match words::ask(ranked).join(" and ") {
                ask if ask.is_empty() => ask,
                ask => format!("; needs {ask} from its maker"),
            };
            let place = match settled.place {
                1 => "first".to_owned(),
                place => format!("{place} at best"),
            };
            let open = open.join("; ");
            self.wrapped("     ", &format!("would rank {place} once this is settled: {open}{ask}"));
        }
        for origin in ranked.scheme.excluded() {
            let (reason, source) = self.excluded(origin)?;
            self.wrapped("     ", &format!("{} ({source})", sentence(&reason)));
        }
        if let Some(score) = &ranked.score {
            let part = |part: &Criterion| {
                let (label, weight) = (part.kind.label(), 100.0 * part.weight);
                let (Some(value), Some(points)) = (part.value, part.points()) else {
                    return format!("{label}: not known yet (weight {weight:.0})");
                };
                let raw = part.raw.map_or_else(String::new, |raw| format!(" ({})", self.value(raw)));
                format!("{label}{raw} {} x {weight:.0} = {}", decimal(value, 2), decimal(points, 0))
            };
            self.wrapped("     ", &score.criteria.iter().map(part).collect::<Vec<_>>().join(", "));
        }
        Ok(())
    }

    /// Where the weights come from, once.
    fn weights(&mut self, choice: &Choice) {
        let Some(score) = choice.ranked.iter().find_map(|ranked| ranked.score.as_ref()) else { return };
        let given = |given: bool| {
            let is = |part: &&Criterion| (self.drive.handbook.reference(part.basis).mark == Mark::Given) == given;
            score.criteria.iter().filter(is).map(|part| part.kind.label()).collect::<Vec<_>>().join(", ")
        };
        let (ours, yours) = (given(false), given(true));
        let ours = if ours.is_empty() { ours } else { format!(" Weights by our judgement: {ours}.") };
        let yours = if yours.is_empty() { yours } else { format!(" Weights given: {yours}.") };
        let text = format!(
            "Points: value (0 to 1) x weight. The value of a load is 1 less its likely utilisation.{ours}{yours} Change \
             the weights with `weights`."
        );
        self.wrapped("     ", &text);
    }

    /// What each scheme assumes, in the order of the ranking, and each thing once.
    fn assumed(&mut self, choice: &Choice) {
        let mut told: Vec<&Assumed> = Vec::new();
        let drive = self.drive;
        for ranked in detailed(drive, choice) {
            let opening = if told.is_empty() { "Assumed" } else { "More assumed" };
            let more: Vec<&Assumed> = words::assumed(drive, ranked).filter(|assumed| !told.contains(assumed)).collect();
            if !more.is_empty() {
                self.heading(&format!("{opening} for {}", name(ranked)));
            }
            for assumed in &more {
                let name = words::assumed_name(assumed, ranked);
                self.wrapped("", &format!("{name}: {}", assumed.value.text(self.system)));
                self.wrapped("    ", &self.origin(assumed.origin));
            }
            told.extend(more);
        }
    }

    /// Each equation in full where it first stands in a part, by name after that; the same step once, with every level
    /// that it is of.
    fn working(&mut self, ranked: &Ranked) {
        let (scheme, sheet) = method::explain(self.drive, &ranked.pipe, ranked.scheme.method);
        self.heading(&format!("Working: {}", name(ranked)));
        let mut steps = sheet.steps();
        while let Some(first) = steps.first() {
            let end = steps.iter().position(|step| step.part != first.part).unwrap_or(steps.len());
            let (part, rest) = steps.split_at(end);
            self.part(ranked, part);
            steps = rest;
        }
        self.shares(&scheme);
    }

    fn part(&mut self, ranked: &Ranked, steps: &[Step]) {
        let mut lines: Vec<(&Step, Vec<&str>, String)> = Vec::new();
        for step in steps {
            let input = |(name, shown): &(&str, Shown)| format!("{name} {}", self.precise(*shown));
            let inputs: Vec<String> = step.inputs.iter().map(input).collect();
            let text = format!("{} => {}", inputs.join(", "), self.precise(step.result));
            match lines.iter_mut().find(|line| line.0.equation.form == step.equation.form && line.2 == text) {
                Some((_, levels, _)) if step.level.is_empty() || levels.contains(&step.level) => {}
                Some((_, levels, _)) => levels.push(step.level),
                None => lines.push((step, vec![step.level], text)),
            }
        }
        let Some(part) = steps.first().map(|step| step.part) else { return };
        self.wrapped("", &format!("{part}{}", self.sum(ranked, part)));
        let mut last = "";
        let mut forms: Vec<&str> = Vec::new();
        for (step, levels, text) in lines {
            let equation = step.equation;
            if equation.name != last {
                last = equation.name;
                if forms.contains(&equation.form) {
                    self.wrapped("  ", equation.name);
                } else {
                    forms.push(equation.form);
                    self.wrapped("  ", &format!("{}: {}  [{}]", equation.name, equation.form, cited(step)));
                }
            }
            let of = words::whose(step, self.drive, &ranked.pipe);
            let tags: Vec<&str> = of.into_iter().chain(levels.into_iter().filter(|level| !level.is_empty())).collect();
            let tags = if tags.is_empty() { String::new() } else { format!("{}: ", tags.join(", ")) };
            self.wrapped("    ", &format!("{tags}{text}"));
        }
    }

    /// The share of each limit that is used, with the digits to work it out.
    fn shares(&mut self, scheme: &Scheme) {
        const SENSES: [(Sense, &str, &str); 2] = [
            (Sense::AtMost, "share of a limit", "share = max(demand / limit, 0)"),
            (Sense::AtLeast, "share of what is there", "share = max(needed / there, 0)"),
        ];
        self.wrapped("", "checks");
        for (sense, name, form) in SENSES {
            self.wrapped("  ", &format!("{name}: {form}  [each limit as cited with its check]"));
            for check in scheme.checks.iter().filter(|check| check.sense == sense) {
                let levels = [("likely", check.likely()), ("high", check.high())];
                let used = [check.likely_utilisation(), check.utilisation()];
                for ((level, case), used) in levels.into_iter().zip(used) {
                    let (Some((demand, limit)), Some(used)) = (case, used) else { continue };
                    let [demand, limit] = [demand, limit].map(|value| self.precise(value));
                    let share = self.precise(Shown { si: used, role: Role::Ratio });
                    let inputs = match sense {
                        Sense::AtMost => format!("demand {demand}, limit {limit}"),
                        Sense::AtLeast => format!("there {demand}, needed {limit}"),
                    };
                    self.wrapped("    ", &format!("{}, {level}: {inputs} => {share}", check.subject.label()));
                }
            }
        }
    }

    /// What was assessed, as it was written.
    fn given(&mut self, text: &str) {
        self.heading("Drive file");
        for line in text.lines() {
            self.line(line);
        }
    }
}

fn cited(step: &Step) -> String {
    let equation = step.equation;
    let range = if step.in_range { String::new() } else { format!("; OUTSIDE ITS RANGE: {}", equation.valid) };
    format!("{}, {}{range}", equation.source, equation.mark)
}
