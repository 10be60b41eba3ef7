//! The page for the crew, of the scheme that leads: what to expect, where to stop and ask, what to write down.

use super::page::Page;
use super::plain;
use crate::check::{Care, Check, Subject, Verdict};
use crate::choice::reason::with_verdict;
use crate::choice::{Ranked, Standing};
use crate::conditions::Plan;
use crate::drive::PulledPipe;
use crate::handbook::{HandbookError, Method, Pilot};
use crate::method::{self, Body, Bound, Gain, Shove, Stage, StageProfile, StopBy};
use crate::quantity::shown::decimal;
use crate::quantity::{Measure, Ratio, Role, Shown, UnitSystem};
use crate::report::contents::{Report, levels};
use crate::report::{around, cautions, words};
use crate::source::{Cited, FieldName};

/// Most rows of a stage at which nothing changes.
const MOST_ROWS: usize = 4;

const ROD: FieldName = FieldName("pull.stem_removal.every");

const BARRED: &str = "No page for the crew: no scheme may be built as given in the file.";
const OPEN: &str = "Not decided: for planning only, until what is asked for is given.";
const GAIN: &str = "shows the friction before a pipe is in the bore. The force on the stem rises by (low / likely / \
    high); above the high value stop and ask";
const PE: &str = ": PE loses strength the longer it is held";
const RECORD: [&str; 3] = [
    "for each pipe and stem section: number, time, force or gauge at start and end, line and level at the target",
    "lubricant or bore fluid pumped and returned; spoil against advance; water and stones",
    "each stop: from when to when, and the force to restart",
];

/// The page, or why there is none.
pub(in crate::report) fn page(report: &Report<'_>, system: UnitSystem) -> Result<String, HandbookError> {
    let Report { drive, choice, .. } = *report;
    let mut page = Page::new(drive, system);
    page.wrapped("", &words::answer(drive, choice));
    page.gap();
    let Some(first) = choice.ranked.first().filter(|first| first.standing != Standing::Barred) else {
        page.wrapped("", BARRED);
        return Ok(plain::text(&page.blocks, report.columns));
    };
    if first.standing == Standing::Open {
        page.wrapped("", OPEN);
    }
    page.wrapped("Drive    ", &drive.name);
    page.all("         ", words::facts(drive, system).iter().take(1 + drive.stretches.len()));
    let moving = method::moving(drive, &first.pipe, first.scheme.method);
    page.stages(first, &moving)?;
    page.gap();
    page.all("Pilot    ", page.pilot(&moving));
    page.all("Stops    ", page.stops(first));
    page.all("Pull     ", page.pull(first));
    page.all("Bring    ", page.bring(first));
    page.all("Record   ", RECORD);
    let beware = around::on_site(drive, first, system)?;
    page.all("Beware   ", beware.iter().map(String::as_str).chain(cautions::ON_SITE));
    Ok(plain::text(&page.blocks, report.columns))
}

impl Page<'_> {
    /// The force by pipe and by section of the stem, while it moves and after a stop.
    fn stages(&mut self, first: &Ranked, moving: &[StageProfile]) -> Result<(), HandbookError> {
        let (drive, pipe, scheme) = (self.drive, &first.pipe, &first.scheme);
        let stem_length = match drive.pull.as_ref().and_then(|pull| pull.works.rods) {
            Some((told, _)) => Cited::given(told, &ROD),
            None => drive.handbook.length("usual.stem_free")?,
        };
        let of_pipe = Plan { drive, pipe, method: scheme.method }.pipe_length();
        for (moving, stopped) in moving.iter().zip(method::profile(drive, pipe, scheme.method)) {
            let stage = moving.stage;
            let title = match drive.pilot {
                Pilot::Drilled | Pilot::WalkedOver if stage == Stage::STEM => "pilot stem drilled in",
                _ => stage.title(),
            };
            let (word, piece) = if stage.ahead.is_some() && stage.pulls || stage.behind == Body::Stem {
                ("stem", stem_length)
            } else {
                ("pipe", of_pipe)
            };
            let from = if stage.pulls { "reception" } else { "launch" };
            let bore = moving.bore.map(|bore| format!(" to a bore of {}", self.value(Shown::of(bore, Role::Diameter))));
            let (bore, counted) = (bore.unwrap_or_default(), self.value(Shown::of(piece.value, Role::Depth)));
            let mark = drive.handbook.reference(piece.origin).mark;
            self.gap();
            self.wrapped("", &format!("{title}{bore}, from the {from} pit, by {word} sections of {counted} ({mark})"));
            let bound = method::bound(drive, scheme, &stopped);
            let [moving, stopped] =
                [moving, &stopped].map(|profile| method::shoves(drive, scheme, profile, piece.value));
            self.rows(word, &moving, &stopped);
            self.never(word, stage, bound, &stopped);
        }
        Ok(())
    }

    fn rows(&mut self, word: &str, moving: &[Shove], stopped: &[Shove]) {
        let raised = moving.iter().zip(stopped).any(|(moving, stopped)| stopped.force.high > moving.force.high);
        let row = |[number, to]: [&str; 2], [expected, stop]: [&str; 2], [after, stop_after]: [&str; 2]| {
            let after = if raised { format!("{after:>21}{stop_after:>20}") } else { String::new() };
            format!("{number:>5}{to:>10}{expected:>20}{stop:>20}{after}")
        };
        self.line(&row([word, "to"], ["expected", "stop and ask"], ["after a stop", "stop and ask"]));
        let each = moving.len().div_ceil(MOST_ROWS).max(1);
        for (moving, stopped) in moving.iter().zip(stopped) {
            if moving.changes || stopped.changes || moving.number.is_multiple_of(each) {
                let [[expected, stop], [after, stop_after]] = [moving, stopped].map(|shove| self.cells(shove));
                let (number, to) = (moving.number.to_string(), self.value(Shown::of(moving.extent.1, Role::Distance)));
                self.line(&row([&number, &to], [&expected, &stop], [&after, &stop_after]));
            }
        }
    }

    /// What is expected and where to stop, each with the gauge where its area is told.
    fn cells(&self, shove: &Shove) -> [String; 2] {
        let read = shove.gauge.map(|(force, stop)| [force.likely, stop]);
        let read = read.map(|read| read.map(|read| format!("  {}", self.value(Shown::of(read, Role::Strength)))));
        let [likely, stop] = read.unwrap_or_default();
        let force = |force| self.value(Shown::of(force, Role::Thrust));
        [format!("{}{likely}", force(shove.force.likely)), format!("{}{stop}", force(shove.stop))]
    }

    /// The force that no reading may pass, and from where on it is less than the high one.
    fn never(&mut self, word: &str, stage: Stage, bound: Bound, plan: &[Shove]) {
        let gauge = method::gauge(self.drive, bound.force).filter(|_| !stage.pulls);
        let gauge = gauge.map(|gauge| format!(" ({} on the gauge)", self.value(Shown::of(gauge, Role::Strength))));
        let (force, gauge) = (self.value(Shown::of(bound.force, Role::Thrust)), gauge.unwrap_or_default());
        let place = match bound.by {
            StopBy::Asked(_) => "not given; asked to bear this".to_owned(),
            _ => self.place(bound.origin),
        };
        let set = if bound.by == StopBy::Rig { "" } else { "; the rig can give more: set it to this" };
        let met = plan.iter().find(|shove| shove.stop_by != StopBy::Expected);
        let met = met.map(|shove| format!("; below the high force from {word} {} on", shove.number));
        let met = met.unwrap_or_default();
        self.wrapped("      ", &format!("Never above {force}{gauge}: {} ({place}){set}{met}.", bound.by.label()));
    }

    /// What the pilot tells of the friction, before a pipe is in the bore.
    fn pilot(&self, moving: &[StageProfile]) -> Vec<String> {
        let stem = moving.first().filter(|profile| profile.stage == Stage::STEM && self.drive.stem.is_there());
        let gains = stem.map_or_else(Vec::new, StageProfile::gains);
        let told = |gain: &Gain| {
            let [from, to] = [gain.extent.0, gain.extent.1].map(|at| self.value(Shown::of(at, Role::Distance)));
            format!("from {from} to {to}: {}", self.band(levels(gain.per_length, Role::LineWeight)))
        };
        let mut lines: Vec<String> = gains.iter().map(told).collect();
        if !lines.is_empty() {
            lines.insert(0, GAIN.to_owned());
        }
        lines
    }

    /// What a stop of more than a shift does.
    fn stops(&self, first: &Ranked) -> Vec<String> {
        let (drive, method) = (self.drive, first.scheme.method);
        let stem = ("the stem", drive.rests.stem);
        let pipe = ("the pipe", drive.rests.of_pipe(&drive.stretches));
        let factor = |ratio: Ratio| decimal(ratio.si(), 2);
        let bodies =
            [Some(stem).filter(|_| drive.stem.is_there()), Some(pipe).filter(|_| method == Method::PipeJacking)];
        let told = bodies.into_iter().flatten().map(|(body, restart)| {
            format!("{body} {} (likely) to {} (high)", factor(restart.likely), factor(restart.high))
        });
        let times = told.collect::<Vec<_>>().join(", ");
        let counted = match (drive.rests.planned.is_empty(), drive.work.shifts_between_nights()) {
            (false, None) => "The planned stops are counted above, and no other.",
            (false, Some(_)) => {
                "The planned stops are counted above, and nights where they are further apart than a day's work."
            }
            (true, Some(_)) => "Nights are counted above, where the stage takes more than a day.",
            (true, None) => "No stop is counted above.",
        };
        let times = format!("after more than a shift the friction to restart is times {times}. {counted}");
        let breakdown = cautions::breakdown(drive, first, self.system);
        std::iter::once(times).chain(breakdown).collect()
    }

    /// What the contractor has to bring, in short.
    fn bring(&self, first: &Ranked) -> Option<String> {
        let asked = |check: &Check| match check.high().filter(|_| check.is_required()) {
            Some((demand, _)) => format!("{} {}", check.subject.label(), self.value(demand)),
            None => check.subject.label().to_owned(),
        };
        let care = with_verdict(first, Verdict::WithCare).filter(|check| check.care == Some(Care::Condition));
        let asked: Vec<String> = care.map(asked).collect();
        (!asked.is_empty()).then(|| format!("the answer depends on these, as in the report: {}", asked.join("; ")))
    }

    /// What a pulled string is not to be asked for.
    fn pull(&self, first: &Ranked) -> Vec<String> {
        let (Method::Pullback, Some(pull)) = (first.scheme.method, &self.drive.pull) else { return Vec::new() };
        let limits = |subject| first.scheme.checks.get(subject).and_then(|check| check.high());
        let mut lines = Vec::new();
        if let Some((set, most)) = limits(Subject::WeakLink) {
            let (set, most) = (self.value(set), self.value(most));
            lines.push(match pull.works.weak_link {
                Some(_) => format!("weak link set to {set}, no more than {most}"),
                None => format!("weak link: one that parts above {set}, the likely pull, and at no more than {most}"),
            });
        }
        if let Some((_, most)) = limits(Subject::BreakOut).filter(|(_, most)| most.role == Role::Pressure) {
            lines.push(format!("bore fluid: no more than {} at the crown of the bore", self.value(most)));
        }
        let rate = self.value(Shown::of(self.drive.length.value / pull.duration, Role::Rate));
        let duration = self.value(Shown::of(pull.duration, Role::Duration));
        let held = if matches!(first.pipe.pulled, Some(PulledPipe::Pe(_))) { PE } else { "" };
        lines.push(format!("{duration} in all, stops included, or {rate} on average: take no longer{held}"));
        lines
    }
}
