//! The report for a terminal or a file of 100 columns.

mod along;
mod others;
mod proposed;
mod sure;

use super::view::{
    AssumedView, AtView, CheckView, FigureView, OriginView, Report, SchemeView, StepView, WallNeededView,
};
use crate::choice::reason::at;
use crate::quantity::shown::decimal;
use proposed::{detailed, is_impossible};
use textwrap::{Options, fill};

const WIDTH: usize = 100;

const SCREEN: &str = "* a screen: the likely demand is past the limit, which asks for care and never bars a scheme";

/// The answer in the first line, then why; of the schemes behind the first only the checks that are not within.
#[must_use]
pub fn text(report: &Report) -> String {
    page(report, false)
}

/// The same, with the tables of every scheme.
#[must_use]
pub fn text_in_full(report: &Report) -> String {
    page(report, true)
}

fn page(report: &Report, is_full: bool) -> String {
    let mut page = Page::default();
    page.wrapped("", &answer(report));
    page.gap();
    page.wrapped("Drive    ", &report.drive);
    for fact in &report.facts {
        page.wrapped("         ", fact);
    }
    page.wrapped("Why      ", &sentence(&report.reason));

    page.heading("Ranking");
    for scheme in report.schemes.iter().filter(|scheme| !is_impossible(scheme)) {
        let equal = report.schemes.iter().filter(|other| other.place == scheme.place).count() > 1;
        page.ranked(scheme, equal);
    }
    page.impossible(report);
    if !report.not_looked_at.is_empty() {
        page.wrapped("     ", &format!("Not looked at: {}.", report.not_looked_at.join("; ")));
    }
    page.weights(report);
    let first = report.schemes.first().filter(|first| !first.checks.is_empty());
    page.heading("Cautions");
    let own = first.map_or(&[][..], |first| &first.cautions);
    for caution in own.iter().map(String::as_str).chain(report.cautions.iter().copied()) {
        page.wrapped("- ", caution);
    }
    if let Some(first) = first {
        page.checks(first);
    }
    if let Some(sure) = &report.sure {
        page.sure(sure);
    }
    if let Some(line) = &report.line {
        page.line_of_drives(line);
    }
    if let Some(first) = first {
        page.heading(&format!("Force along the drive: {} of {}", first.method, first.pipe));
        page.stages(first);
        if !first.shove_plan.is_empty() {
            page.heading("Shove plan: the pipes at which something changes, all of them in the JSON");
            page.shove_plan(first);
        }
        if !first.soil.is_empty() {
            page.heading("Unit friction by published models: shown, never used for capacity");
            page.soil(first);
        }
        page.heading(&format!("Ground movement, pits and time: {} of {}", first.method, first.pipe));
        page.site_figures(first);
    }
    if is_full {
        for scheme in report.schemes.iter().skip(1).filter(|scheme| !scheme.checks.is_empty()) {
            page.checks(scheme);
        }
    } else {
        page.others(report);
    }
    if let Some(first) = first {
        page.assumed(report);
        page.heading(&format!("Working: {} of {}", first.method, first.pipe));
        page.working(report);
    }
    page.heading("Not checked in this version");
    if let Some(first) = report.schemes.first().filter(|first| !first.not_given.is_empty()) {
        page.wrapped("- ", &format!("not given in the file, so not checked: {}", first.not_given.join("; ")));
    }
    for item in &report.not_checked {
        page.wrapped("- ", item);
    }
    page.gap();
    page.line(&format!("jackpull {}, drive file {}", report.crate_version, report.drive_digest));
    page.0
}

fn answer(report: &Report) -> String {
    match &report.choice {
        Some(choice) => {
            let at = |check: &AtView| at(check.subject, check.utilisation);
            let governed =
                choice.governed_by.as_ref().map_or_else(String::new, |check| format!("; largest load: {}", at(check)));
            let care: Vec<String> = choice.with_care.iter().map(at).collect();
            let care = if care.is_empty() { String::new() } else { format!("; with care: {}", care.join(", ")) };
            format!("{}, {}: {}{governed}{care}", choice.method.to_uppercase(), choice.pipe, choice.standing)
        }
        None => "NO SCHEME FITS".to_owned(),
    }
}

/// The verdict, and that it is a screen that is failed.
fn verdict(check: &CheckView) -> String {
    if check.screen { format!("{} *", check.verdict) } else { check.verdict.to_owned() }
}

/// Capital at the start, full stop at the end.
fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let first = chars.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}.", chars.as_str().trim_end_matches('.'))
}

#[derive(Default)]
struct Page(String);

impl Page {
    fn line(&mut self, text: &str) {
        self.0.push_str(text.trim_end());
        self.0.push('\n');
    }

    fn gap(&mut self) {
        self.0.push('\n');
    }

    fn heading(&mut self, title: &str) {
        self.gap();
        self.wrapped("", title);
        self.line(&"-".repeat(title.chars().count().min(WIDTH)));
    }

    /// `first` at the start, the rest under its end.
    fn wrapped(&mut self, first: &str, text: &str) {
        let rest = " ".repeat(first.chars().count());
        let options = Options::new(WIDTH).initial_indent(first).subsequent_indent(&rest);
        let filled = fill(text, options);
        for line in filled.lines() {
            self.line(line);
        }
    }

    fn ranked(&mut self, scheme: &SchemeView, equal: bool) {
        let score = scheme.score.as_ref().map_or_else(String::new, |score| {
            let (least, most) = (format!("{:.0}", score.least), format!("{:.0}", score.most));
            if least == most { format!("score {least}") } else { format!("score {least} to {most}") }
        });
        let name = format!("{} of {}", scheme.method, scheme.pipe);
        let name = if scheme.proposed { format!("{name} (proposed)") } else { name };
        let place = format!("{}{}", if equal { "=" } else { "" }, scheme.place);
        self.wrapped(&format!("{place:>3}  "), format!("{name:<48}  {:<15} {score}", scheme.standing).trim_end());
        if let Some(settled) = &scheme.if_settled {
            let open = settled.open.join("; ");
            let ask = match settled.ask.join(" and ") {
                ask if ask.is_empty() => ask,
                ask => format!("; its maker has to give {ask}"),
            };
            self.wrapped("     ", &format!("would rank {} at best if this is settled: {open}{ask}", settled.place));
        }
        for excluded in &scheme.excluded {
            self.wrapped("     ", &format!("{} ({})", sentence(&excluded.reason), excluded.source));
        }
        if let Some(score) = &scheme.score {
            let part = |part: &super::view::CriterionView| {
                let number = |number: Option<f64>, decimals| number.map_or("?".to_owned(), |n| decimal(n, decimals));
                let raw = part.raw.as_ref().map_or_else(String::new, |raw| format!(" ({})", raw.text));
                let (value, points) = (number(part.value, 2), number(part.points, 0));
                format!("{}{raw} {value} x {:.0} = {points}", part.label, 100.0 * part.weight)
            };
            self.wrapped("     ", &score.criteria.iter().map(part).collect::<Vec<_>>().join(", "));
        }
    }

    /// Where the weights come from, once.
    fn weights(&mut self, report: &Report) {
        let Some(score) = report.schemes.iter().find_map(|scheme| scheme.score.as_ref()) else { return };
        let given = |given: bool| {
            let own = score.criteria.iter().filter(|part| (part.weight_mark == "given") == given);
            own.map(|part| part.label).collect::<Vec<_>>().join(", ")
        };
        let (ours, yours) = (given(false), given(true));
        let ours = if ours.is_empty() { ours } else { format!(" Our judgement: {ours}.") };
        let yours = if yours.is_empty() { yours } else { format!(" Given: {yours}.") };
        let text = format!(
            "Points: value from 0 to 1 x weight. The value of a load is 1 less its likely utilisation.{ours}{yours} \
             Change the weights with `weights`."
        );
        self.wrapped("     ", &text);
    }

    fn scheme(&mut self, scheme: &SchemeView) {
        if let Some(force) = &scheme.force {
            let band = |band: &super::view::BandView| {
                format!("low {}, likely {}, high {}", band.low.text, band.likely.text, band.high.text)
            };
            self.line(&format!("force on the pipe  {}", band(force)));
            if let Some(rig) = &scheme.rig_force {
                self.line(&format!("force on the rig   {}", band(rig)));
            }
            if let Some(wall) = &scheme.wall_needed {
                self.wall_needed(wall);
            }
            if let Some(stations) = scheme.stations.as_ref().filter(|stations| stations.is_told) {
                self.wrapped("jacking stations   ", &stations.says);
                self.wrapped("                   ", &origin(&stations.basis));
            }
            self.gap();
        }
        self.line(&format!(
            "{:<26}{:>14}{:>14}{:>16}{:>7}{:>7}  {}",
            "", "likely", "high", "limit", "likely", "high", "verdict"
        ));
        for check in &scheme.checks {
            self.check(check);
        }
        if scheme.checks.iter().any(|check| check.screen) {
            self.wrapped("", SCREEN);
        }
        if !scheme.figures.is_empty() {
            self.gap();
        }
        for figure in &scheme.figures {
            self.figure(figure);
        }
    }

    fn figure(&mut self, figure: &FigureView) {
        let range = if figure.in_range { "" } else { "; OUTSIDE ITS RANGE" };
        let note = figure.note.map_or_else(String::new, |note| format!("; {note}"));
        let basis = match &figure.row {
            Some(row) => format!("{row}, {}", figure.basis.label),
            None => format!("{}, {}", figure.basis.source, figure.basis.label),
        };
        self.wrapped("", &format!("{}: {} ({basis}{range}){note}", figure.label, figure.value.text));
    }

    fn shove_plan(&mut self, scheme: &SchemeView) {
        let row = |[pipe, to, likely, read, stop, stop_read, by]: [&str; 7]| {
            format!("{pipe:>5}{to:>10}{likely:>15}{read:>12}{stop:>16}{stop_read:>12}  {by}")
        };
        self.line(&row(["pipe", "to", "likely", "gauge", "stop and ask", "gauge", "set by"]));
        for shove in scheme.shove_plan.iter().filter(|shove| shove.changes) {
            let read = shove.gauge.as_ref().map_or("", |gauge| gauge.likely.text.as_str());
            let stop_read = shove.stop_gauge.as_ref().map_or("", |stop| stop.text.as_str());
            let (pipe, likely) = (shove.pipe.to_string(), &shove.force.likely.text);
            self.line(&row([&pipe, &shove.to.text, likely, read, &shove.stop.text, stop_read, shove.stop_by]));
        }
    }

    fn wall_needed(&mut self, wall: &WallNeededView) {
        let case = if wall.undrained { "undrained" } else { "drained" };
        let text = format!(
            "{} wide and {} high, its top {} down, for {} at a safety of {} in the {case} ground behind it, if it has \
             no opening",
            wall.width.text, wall.height.text, wall.top_depth.text, wall.thrust.text, wall.safety.text
        );
        self.wrapped("thrust wall needed ", &text);
        self.wrapped("                   ", &origin(&wall.basis));
    }

    fn check(&mut self, check: &CheckView) {
        let value =
            |view: &Option<super::view::ValueView>| view.as_ref().map_or("-".to_owned(), |view| view.text.clone());
        let ratio = |ratio: Option<f64>| ratio.map_or("-".to_owned(), |ratio| decimal(ratio, 2));
        let limit = match &check.limit {
            Some(limit) if check.sense == "at least" => format!(">= {}", limit.text),
            limit => value(limit),
        };
        self.line(&format!(
            "{:<26}{:>14}{:>14}{limit:>16}{:>7}{:>7}  {}",
            check.subject,
            value(&check.likely_demand),
            value(&check.demand),
            ratio(check.likely_utilisation),
            ratio(check.utilisation),
            verdict(check)
        ));
        self.wrapped("    ", &origin(&check.basis));
        if let Some(factor) = &check.factor {
            self.wrapped("    ", &format!("with the factor {}", origin(factor)));
        }
        if let Some(note) = &check.note {
            self.wrapped("    ", note);
        }
    }

    fn soil(&mut self, scheme: &SchemeView) {
        for soil in &scheme.soil {
            let stress = match (&soil.total_stress, &soil.effective_stress) {
                (Some(total), Some(effective)) => format!("total {}, effective {}", total.text, effective.text),
                _ => "not known below water without the saturated unit weight".to_owned(),
            };
            self.wrapped(
                "",
                &format!("ground[{}], deepest place: vertical stress at the crown {stress}", soil.stretch),
            );
            for model in &soil.models {
                let range = if model.in_range { "" } else { "; OUTSIDE ITS RANGE" };
                let band = &model.friction;
                self.wrapped(
                    "    ",
                    &format!(
                        "{}: {} / {} / {}, {} ({}{range})",
                        model.model, band.low.text, band.likely.text, band.high.text, model.over, model.note
                    ),
                );
            }
            for note in &soil.notes {
                self.wrapped("    ", note);
            }
        }
        if !scheme.model_forces.is_empty() {
            self.wrapped(
                "",
                "friction on the whole pipe by the models that every stretch has, greatest at the far end:",
            );
        }
        for model in &scheme.model_forces {
            let range = if model.in_range { "" } else { " (OUTSIDE ITS RANGE)" };
            let (name, band) = (model.model, &model.force);
            self.wrapped(
                "    ",
                &format!("{name}: {} / {} / {}{range}", band.low.text, band.likely.text, band.high.text),
            );
        }
    }

    /// Values of one figure a line, its source and note below the first of its kind.
    fn site_figures(&mut self, scheme: &SchemeView) {
        self.line(&format!("{:<58}{:>14}{:>14}{:>14}", "", "low", "likely", "high"));
        let mut told: Vec<String> = Vec::new();
        for figure in &scheme.site_figures {
            let values = figure.values.as_ref().map_or_else(
                || "not known".to_owned(),
                |band| format!("{:>14}{:>14}{:>14}", band.low.text, band.likely.text, band.high.text),
            );
            if figure.what.chars().count() < 58 {
                self.line(&format!("{:<58}{values}", figure.what));
            } else {
                self.wrapped("", &figure.what);
                self.line(&format!("{:<58}{values}", ""));
            }
            let basis = figure.basis.as_ref().map_or_else(String::new, |basis| format!(" [{}]", origin(basis)));
            let note = format!("{}{basis}", figure.note);
            if !told.contains(&note) {
                self.wrapped("    ", &note);
                told.push(note);
            }
        }
    }

    /// What each scheme assumes, in the order of the ranking, and each thing once.
    fn assumed(&mut self, report: &Report) {
        let mut told: Vec<&AssumedView> = Vec::new();
        for scheme in detailed(report) {
            let opening = if told.is_empty() { "Assumed" } else { "More assumed" };
            let more: Vec<&AssumedView> = scheme.assumed.iter().filter(|assumed| !told.contains(assumed)).collect();
            if !more.is_empty() {
                self.heading(&format!("{opening} for {} of {}", scheme.method, scheme.pipe));
            }
            for assumed in &more {
                let name = if assumed.name.is_empty() { &assumed.field } else { &assumed.name };
                self.wrapped("", &format!("{name}: {}", assumed.value));
                self.wrapped("    ", &origin(&assumed.basis));
            }
            told.extend(more);
        }
    }

    /// Each equation in full where it first stands in a part, by name after that; the same step once.
    fn working(&mut self, report: &Report) {
        let mut part = "";
        let mut last = "";
        let mut forms: Vec<&str> = Vec::new();
        let mut lines: Vec<(&str, String)> = Vec::new();
        for step in &report.working {
            if step.part != part {
                part = step.part;
                last = "";
                forms.clear();
                lines.clear();
                self.wrapped("", &format!("{part}{}", sum(report, part)));
            }
            let inputs: Vec<String> =
                step.inputs.iter().map(|input| format!("{} {}", input.name, input.value.text)).collect();
            let of = step.of.map_or_else(String::new, |of| format!("{of}: "));
            let line = (step.form, format!("{of}{} => {}", inputs.join(", "), step.result.text));
            if lines.contains(&line) {
                continue;
            }
            if step.name != last {
                last = step.name;
                if forms.contains(&step.form) {
                    self.line(&format!("  {}", step.name));
                } else {
                    forms.push(step.form);
                    self.wrapped("  ", &format!("{}: {}  [{}]", step.name, step.form, cited(step)));
                }
            }
            self.wrapped("    ", &line.1);
            lines.push(line);
        }
    }
}

/// The greatest force of a stage on the rig.
fn sum(report: &Report, part: &str) -> String {
    let stages = report.schemes.first().into_iter().flat_map(|first| &first.stages);
    let mut points = stages.filter(|stage| stage.stage == part).flat_map(|stage| &stage.points);
    let Some(first) = points.next() else { return String::new() };
    let (likely, high) = points.fold((&first.on_rig.likely, &first.on_rig.high), |(likely, high), point| {
        let greater = |a: &'_ super::view::ValueView, b: &super::view::ValueView| b.value > a.value;
        (
            if greater(likely, &point.on_rig.likely) { &point.on_rig.likely } else { likely },
            if greater(high, &point.on_rig.high) { &point.on_rig.high } else { high },
        )
    });
    format!(": in all on the rig likely {}, high {}", likely.text, high.text)
}

fn cited(step: &StepView) -> String {
    let range = if step.in_range { String::new() } else { format!("; OUTSIDE ITS RANGE: {}", step.valid) };
    format!("{}, {}{range}", step.source, step.label)
}

fn origin(basis: &OriginView) -> String {
    match (&basis.row, &basis.replaces) {
        (Some(row), Some(replaced)) => {
            format!("{row}: {}, {} ({}), in place of {replaced}", basis.source, basis.at, basis.label)
        }
        (Some(row), None) => format!("{row}: {}, {} ({})", basis.source, basis.at, basis.label),
        (None, _) => format!("{}: {} ({})", basis.source, basis.at, basis.label),
    }
}
