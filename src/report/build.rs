//! A choice spelled out as plain data, every origin in words.

use super::jacks::{self, ShoveView, StationsView};
use super::view::*;
use super::{cautions, not_given};
use crate::check::{Check, Subject, Verdict};
use crate::choice::reason::{exclusion, governing, with_verdict};
use crate::choice::{Choice, Ranked};
use crate::conditions::{SiteFigure, site_figures};
use crate::drive::{Assumed, AssumedValue, Drive, Pipe};
use crate::handbook::{Family, HandbookError, Method, Service};
use crate::method::{self, Figure, ModelForce, Sheet, SoilView, StageProfile, Step};
use crate::quantity::{Band, Force, Length, Measure, Role, Shown, UnitSystem};
use crate::source::{Mark, Origin};

impl ValueView {
    fn of(shown: Shown, system: UnitSystem) -> Self {
        let (value, unit) = shown.in_units(system);
        Self { value, unit, text: shown.display(system).to_string() }
    }
}

/// Spells a choice out. `digest` identifies the text of the drive file.
///
/// # Errors
/// If the handbook is malformed.
pub fn report(drive: &Drive, choice: &Choice, system: UnitSystem, digest: &str) -> Result<Report, HandbookError> {
    let view = View { drive, system };
    let chosen = choice.chosen();
    let is_jacked = |ranked: &Ranked| ranked.scheme.method == Method::PipeJacking && !ranked.scheme.is_excluded();
    let any_jacked = choice.ranked.iter().any(is_jacked);
    Ok(Report {
        version: FORM,
        crate_version: env!("CARGO_PKG_VERSION"),
        drive: drive.name.clone(),
        drive_digest: digest.to_owned(),
        units: match system {
            UnitSystem::Si => "si",
            UnitSystem::Us => "us",
        },
        choice: chosen.map(|first| ChoiceView {
            method: first.scheme.method.key(),
            pipe: view.pipe(first),
            standing: first.standing.label(),
            score: view.score(first),
            reason: choice.reason.clone(),
            with_care: with_verdict(first, Verdict::WithCare).map(at).collect(),
            governed_by: governing(first).map(at),
        }),
        reason: choice.reason.clone(),
        schemes: choice.ranked.iter().map(|ranked| view.scheme(ranked)).collect::<Result<_, _>>()?,
        cautions: cautions::ALWAYS.to_vec(),
        not_checked: cautions::NOT_CHECKED
            .iter()
            .copied()
            .filter(|item| any_jacked || !cautions::JACKED.contains(item))
            .collect(),
        not_looked_at: not_looked_at(drive),
        tables: view.tables().map(|(table, file)| TableView { table, file: file.to_owned() }).collect(),
        facts: view.facts(),
        sure: None,
        line: None,
        working: choice.ranked.first().map_or_else(Vec::new, |first| view.working(first)),
    })
}

/// A method that is left out for a pipe for want of a field.
fn not_looked_at(drive: &Drive) -> Vec<String> {
    let mut list = Vec::new();
    for pipe in &drive.candidates {
        for method in [Method::PipeJacking, Method::Pullback] {
            if !method::is_offered(drive, pipe, method) {
                let needs = match (method, pipe.family()) {
                    (Method::PipeJacking, Family::DuctileIron) => "rated_force",
                    (Method::PipeJacking, _) => "its wall, and no field of a pulled pipe",
                    (Method::Pullback, _) if drive.pull.is_none() => "pull",
                    (Method::Pullback, Family::DuctileIron) => "joint_pull or joint_pressure",
                    (Method::Pullback, _) => "no field of a jacked pipe",
                };
                list.push(format!("{} of {} (needs {needs})", method.key(), pipe.label));
            }
        }
    }
    list
}

fn at(check: &Check) -> AtView {
    at_subject(check.subject, check.utilisation())
}

pub(super) const fn at_subject(subject: Subject, utilisation: Option<f64>) -> AtView {
    AtView { subject: subject.label(), utilisation }
}

/// A slope that prints as nothing.
const LEVEL: f64 = 5e-5;

pub(super) struct View<'a> {
    pub(super) drive: &'a Drive,
    pub(super) system: UnitSystem,
}

impl View<'_> {
    pub(super) fn value(&self, shown: Shown) -> ValueView {
        ValueView::of(shown, self.system)
    }

    fn text(&self, shown: Shown) -> String {
        shown.display(self.system).to_string()
    }

    fn mark(&self, origin: Origin) -> Mark {
        match origin {
            Origin::Row(row) => {
                self.drive.handbook.citation(row).map_or(Mark::Judgement, |(.., citation)| citation.mark)
            }
            Origin::Law(equation) => equation.mark,
            Origin::File(_) => Mark::Given,
        }
    }

    pub(super) fn origin(&self, origin: Origin) -> OriginView {
        match origin {
            Origin::Row(row) => match self.drive.handbook.citation(row) {
                Some((table, key, citation)) => OriginView {
                    source: citation.source.clone(),
                    at: citation.locator.clone(),
                    mark: citation.mark.key(),
                    row: Some(format!("{table}/{key}")),
                    replaces: self.drive.handbook.replaced(row),
                    label: citation.mark.label(),
                },
                None => OriginView {
                    source: String::new(),
                    at: String::new(),
                    mark: "",
                    row: None,
                    replaces: None,
                    label: "",
                },
            },
            Origin::Law(equation) => OriginView {
                source: equation.source.to_owned(),
                at: equation.locator.to_owned(),
                mark: equation.mark.key(),
                row: None,
                replaces: None,
                label: equation.mark.label(),
            },
            Origin::File(field) => OriginView {
                source: "drive file".to_owned(),
                at: field.0.to_owned(),
                mark: crate::source::Mark::Given.key(),
                row: None,
                replaces: None,
                label: crate::source::Mark::Given.label(),
            },
        }
    }

    fn pipe(&self, ranked: &Ranked) -> String {
        self.drive.candidates.get(ranked.candidate).map_or_else(String::new, |pipe| pipe.label.clone())
    }

    /// Fields that only the maker of a proposed pipe can fill.
    fn ask(&self, ranked: &Ranked) -> Vec<&'static str> {
        let pipe = self.drive.candidates.get(ranked.candidate);
        let missing = pipe.map_or(&[][..], |pipe| &pipe.not_given);
        let missing = missing.iter().filter(|missing| missing.method() == ranked.scheme.method);
        missing.map(|missing| missing.field()).collect()
    }

    fn scheme(&self, ranked: &Ranked) -> Result<SchemeView, HandbookError> {
        let excluded = ranked.scheme.excluded().map(|origin| {
            let reason = exclusion(self.drive, origin)?;
            Ok(ExcludedView { reason, source: self.origin(origin).source })
        });
        let pulled = ranked.scheme.method == Method::Pullback;
        let band = |band| self.band(band, pulled);
        let (soil, model_forces) = self.soil(ranked)?;
        Ok(SchemeView {
            method: ranked.scheme.method.key(),
            pipe: self.pipe(ranked),
            standing: ranked.standing.label(),
            place: ranked.place,
            proposed: self.drive.is_proposed(ranked.candidate),
            if_settled: ranked.if_settled.as_ref().map(|settled| SettledView {
                place: settled.place,
                open: settled.open.iter().map(|subject| subject.label()).collect(),
                ask: self.ask(ranked),
            }),
            excluded: excluded.collect::<Result<_, HandbookError>>()?,
            score: self.score(ranked),
            force: ranked.scheme.force.map(band),
            rig_force: ranked.scheme.rig_force.map(band),
            wall_needed: self.wall_needed(ranked),
            stations: self.stations(ranked),
            shove_plan: self.shove_plan(ranked),
            stages: self.stages(ranked),
            soil,
            model_forces,
            site_figures: self.site_figures(ranked),
            not_given: not_given::of(self.drive, ranked),
            checks: ranked.scheme.checks.iter().map(|check| self.check(check)).collect(),
            figures: self.figures(ranked)?,
            assumed: self.assumed(ranked),
            cautions: cautions::of(self.drive, ranked, self.system)?,
        })
    }

    fn band(&self, band: Band<Force>, pulled: bool) -> BandView {
        let role = if pulled { Role::Pull } else { Role::Thrust };
        let band = band.map(|force| Shown::of(force, role));
        BandView { low: self.value(band.low), likely: self.value(band.likely), high: self.value(band.high) }
    }

    fn stations(&self, ranked: &Ranked) -> Option<StationsView> {
        let pipe = self.drive.candidates.get(ranked.candidate)?;
        let stations = method::stations(self.drive, pipe, &ranked.scheme)?;
        let rules = &self.drive.stations;
        let origins = [rules.entry.origin, rules.first.origin].map(|origin| self.origin(origin));
        Some(jacks::stations(&stations, origins, |shown| self.value(shown)))
    }

    fn shove_plan(&self, ranked: &Ranked) -> Vec<ShoveView> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate) else { return Vec::new() };
        let plan = method::shove_plan(self.drive, pipe, &ranked.scheme);
        plan.iter().map(|shove| jacks::shove(shove, |shown| self.value(shown))).collect()
    }

    fn wall_needed(&self, ranked: &Ranked) -> Option<WallNeededView> {
        let pipe = self.drive.candidates.get(ranked.candidate)?;
        let needed = method::wall_needed(self.drive, pipe, &ranked.scheme)?;
        let safety = self.origin(needed.safety.origin);
        Some(WallNeededView {
            width: self.value(Shown::of(needed.side, Role::Depth)),
            height: self.value(Shown::of(needed.side, Role::Depth)),
            top_depth: self.value(Shown::of(needed.top, Role::Depth)),
            thrust: self.value(Shown::of(needed.thrust, Role::Thrust)),
            safety: self.value(Shown::of(needed.safety.value, Role::Ratio)),
            undrained: needed.is_undrained,
            source: safety.source.clone(),
            at: safety.at.clone(),
            mark: safety.mark,
            row: safety.row.clone(),
            basis: safety,
        })
    }

    fn stages(&self, ranked: &Ranked) -> Vec<StageView> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate) else { return Vec::new() };
        let view = |profile: StageProfile| {
            let pulled = profile.stage.pulls;
            let points = profile.points.iter().map(|point| PointView {
                advance: self.value(Shown::of(point.advance, Role::Distance)),
                on_rig: self.band(point.on_rig, pulled),
                on_wall: point.on_wall.map(|band| self.band(band, pulled)),
                on_stem: point.on_stem.map(|band| self.band(band, pulled)),
                on_casing: point.on_casing.map(|band| self.band(band, pulled)),
                on_pipe: point.on_pipe.map(|band| self.band(band, pulled)),
                on_tail: point.on_tail.map(|band| self.band(band, false)),
            });
            let bore = profile.bore.map(|bore| self.value(Shown::of(bore, Role::Diameter)));
            StageView { stage: profile.stage.title(), pulled, bore, points: points.collect() }
        };
        method::profile(self.drive, pipe, ranked.scheme.method).into_iter().map(view).collect()
    }

    fn soil(&self, ranked: &Ranked) -> Result<(Vec<SoilModelsView>, Vec<ModelForceView>), HandbookError> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate).filter(|_| !ranked.scheme.is_excluded()) else {
            return Ok((Vec::new(), Vec::new()));
        };
        let pressure = |pressure| self.value(Shown::of(pressure, Role::UnitFriction));
        let view = |soil: SoilView| SoilModelsView {
            stretch: soil.stretch,
            total_stress: soil.at_crown.map(|stress| pressure(stress.total)),
            effective_stress: soil.at_crown.map(|stress| pressure(stress.effective)),
            models: soil
                .models
                .iter()
                .map(|model| ModelView {
                    model: model.name,
                    over: model.over.label(),
                    friction: BandView {
                        low: pressure(model.friction.low),
                        likely: pressure(model.friction.likely),
                        high: pressure(model.friction.high),
                    },
                    in_range: model.in_range,
                    note: model.note,
                })
                .collect(),
            notes: soil.notes,
        };
        let views = method::friction_models(self.drive, pipe)?;
        let pulled = ranked.scheme.method == Method::Pullback;
        let force = |model: ModelForce| ModelForceView {
            model: model.name,
            force: self.band(model.force, pulled),
            in_range: model.in_range,
        };
        let forces = method::model_forces(self.drive, pipe, &views).into_iter().map(force).collect();
        Ok((views.into_iter().map(view).collect(), forces))
    }

    fn site_figures(&self, ranked: &Ranked) -> Vec<SiteFigureView> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate).filter(|_| !ranked.scheme.is_excluded()) else {
            return Vec::new();
        };
        let view = |figure: SiteFigure| {
            let basis = figure.origin.map(|origin| self.origin(origin));
            SiteFigureView {
                topic: figure.topic,
                what: figure.what,
                values: figure.values.map(|band| BandView {
                    low: self.value(band.low),
                    likely: self.value(band.likely),
                    high: self.value(band.high),
                }),
                source: basis.as_ref().map(|basis| basis.source.clone()),
                at: basis.as_ref().map(|basis| basis.at.clone()),
                mark: basis.as_ref().map(|basis| basis.mark),
                note: figure.note,
                basis,
            }
        };
        site_figures(self.drive, pipe, ranked.scheme.method).into_iter().map(view).collect()
    }

    fn score(&self, ranked: &Ranked) -> Option<ScoreView> {
        let score = ranked.score.as_ref()?;
        let criteria = score.criteria.iter().map(|criterion| {
            let basis = self.origin(criterion.basis);
            CriterionView {
                criterion: criterion.kind.key(),
                raw: criterion.raw.map(|raw| self.value(raw)),
                value: criterion.value,
                weight: criterion.weight,
                points: criterion.points(),
                weight_mark: basis.mark,
                weight_row: basis.row,
                label: criterion.kind.label(),
            }
        });
        Some(ScoreView { least: score.least, most: score.most, criteria: criteria.collect() })
    }

    pub(super) fn check(&self, check: &Check) -> CheckView {
        let basis = self.origin(check.basis);
        CheckView {
            subject: check.subject.label(),
            demand: check.high().map(|(demand, _)| self.value(demand)),
            limit: check.high().map(|(_, limit)| self.value(limit)),
            sense: check.sense.label(),
            utilisation: check.utilisation(),
            verdict: check.verdict.label(),
            screen: check.is_failed_screen(),
            source: basis.source.clone(),
            at: basis.at.clone(),
            mark: match check.factor {
                Some(factor) => self.mark(check.basis).weaker(self.mark(factor)).key(),
                None => basis.mark,
            },
            factor: check.factor.map(|factor| self.origin(factor)),
            row: basis.row.clone(),
            replaces: basis.replaces.clone(),
            note: match check.doubt {
                Some(equation) => Some(format!("outside the range of {}: {}", equation.name, equation.valid)),
                None => check.note.map(ToOwned::to_owned),
            },
            likely_demand: check.likely().map(|(demand, _)| self.value(demand)),
            likely_limit: check.likely().map(|(_, limit)| self.value(limit)),
            likely_utilisation: check.likely_utilisation(),
            basis,
        }
    }

    fn figures(&self, ranked: &Ranked) -> Result<Vec<FigureView>, HandbookError> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate) else { return Ok(Vec::new()) };
        let view = |figure: Figure| {
            let basis = self.origin(figure.basis);
            FigureView {
                label: figure.label,
                value: self.value(figure.value),
                source: basis.source.clone(),
                at: basis.at.clone(),
                mark: basis.mark,
                row: basis.row.clone(),
                in_range: figure.in_range,
                note: figure.note,
                basis,
            }
        };
        Ok(method::figures(self.drive, pipe, ranked.scheme.method)?.into_iter().map(view).collect())
    }

    /// What was assumed for the drive, the method and this pipe.
    fn assumed(&self, ranked: &Ranked) -> Vec<AssumedView> {
        let own = format!("candidates[{}]", ranked.candidate);
        let applies = |assumed: &&Assumed| {
            let field = assumed.field.as_str();
            let pulled = ranked.scheme.method == Method::Pullback;
            if field.starts_with("candidates[") {
                // Not the prefix alone: candidates[1] is not candidates[12].
                field.strip_prefix(own.as_str()).is_some_and(|rest| rest.starts_with(['.', ':']))
            } else if field.starts_with("pull") {
                pulled
            } else if matches!(field, "tolerance" | "pilot accuracy") {
                self.drive.service == Service::GravitySewer
            } else {
                let jacked =
                    matches!(field, "spoil" | "pilot") || field.starts_with("face") || field.contains("jacked pipe");
                !(pulled && jacked)
            }
        };
        let view = |assumed: &Assumed| {
            let basis = self.origin(assumed.origin);
            AssumedView {
                field: match assumed.alike {
                    0 => assumed.field.clone(),
                    more => format!("{} (and {more} more alike)", assumed.field),
                },
                name: match assumed.field.strip_prefix(own.as_str()) {
                    Some(rest) => format!("{}: {}", self.pipe(ranked), rest.trim_start_matches(['.', ':', ' '])),
                    None => String::new(),
                },
                value: self.assumed_value(&assumed.value),
                source: basis.source.clone(),
                at: basis.at.clone(),
                mark: basis.mark,
                row: basis.row.clone(),
                replaces: basis.replaces.clone(),
                basis,
            }
        };
        if ranked.scheme.is_excluded() {
            return Vec::new();
        }
        self.drive.assumed.iter().filter(applies).map(view).collect()
    }

    fn assumed_value(&self, value: &AssumedValue) -> String {
        match value {
            AssumedValue::One(shown) => self.text(*shown),
            AssumedValue::Band(band) => {
                format!("{} / {} / {}", self.text(band.low), self.text(band.likely), self.text(band.high))
            }
            AssumedValue::Word(word) => word.clone(),
        }
    }

    fn facts(&self) -> Vec<String> {
        let drive = self.drive;
        let service = drive.service.key().replace('_', " ");
        let slope = drive.grade.value.value.tan();
        let fall = if slope >= 0.0 { " rising to reception" } else { " falling to reception" };
        let length = self.text(Shown::of(drive.length.value, Role::Distance));
        let percent = Shown { si: slope.abs(), role: Role::Percent }.display(self.system).to_string();
        let slope = if slope.abs() < LEVEL { "level".to_owned() } else { format!("{percent}{fall}") };
        let mut facts = vec![format!("{service}, {length} long, {slope}")];
        for stretch in &drive.stretches {
            let shown = |length| self.text(Shown::of(length, Role::Distance));
            let class = stretch.class.key().replace('_', " ");
            let other = stretch.mixed_with.map(|other| format!(", mixed with {}", other.key().replace('_', " ")));
            let other = other.unwrap_or_default();
            facts.push(format!("{} to {}: {class}{other}", shown(stretch.from), shown(stretch.to)));
        }
        let thrust = self.text(Shown::of(drive.rig.thrust.value, Role::Thrust));
        let pull = self.text(Shown::of(drive.rig.pull.value, Role::Pull));
        facts.push(format!(
            "rig: thrust {thrust}, pull {pull}; lubrication {}",
            drive.lubrication.key().replace('_', " ")
        ));
        facts.push(format!("ground opened for a jacked pipe: {}", drive.technique));
        facts.extend(drive.proposed.as_ref().map(|proposed| proposed.sentence(drive, self.system)));
        let laid: Vec<String> = self.tables().map(|(table, file)| format!("{file} ({table})")).collect();
        if !laid.is_empty() {
            facts.push(format!("tables laid over: {}", laid.join(", ")));
        }
        facts
    }

    fn tables(&self) -> impl Iterator<Item = (&'static str, &str)> {
        self.drive.handbook.overlays()
    }

    fn working(&self, ranked: &Ranked) -> Vec<StepView> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate) else { return Vec::new() };
        let (_, sheet): (_, Sheet) = method::explain(self.drive, pipe, ranked.scheme.method);
        sheet.steps().iter().map(|step| StepView { of: self.whose(step, pipe), ..self.step(step) }).collect()
    }

    /// Whose friction it is, told by its diameter where no two bodies have the same.
    fn whose(&self, step: &Step, pipe: &Pipe) -> Option<&'static str> {
        if !step.is_friction() {
            return None;
        }
        let (_, diameter) = step.inputs.iter().find(|(name, _)| *name == "outside_diameter")?;
        let bodies = [
            (Some(self.drive.stem.outside_diameter.value), "of the stem"),
            (pipe.casing_diameter(), "of the casing"),
            (Some(pipe.outside_diameter.value), "of the pipe"),
        ];
        let same = |body: &&(Option<Length>, &'static str)| {
            body.0.is_some_and(|body| (body.si() - diameter.si).abs() <= 1e-9 * diameter.si)
        };
        let mut found = bodies.iter().filter(same);
        match (found.next(), found.next()) {
            (Some(one), None) => Some(one.1),
            _ => None,
        }
    }

    fn step(&self, step: &Step) -> StepView {
        let inputs = step.inputs.iter().map(|(name, shown)| InputView { name, value: self.value(*shown) });
        let equation = step.equation;
        StepView {
            part: step.part,
            name: equation.name,
            of: None,
            form: equation.form,
            inputs: inputs.collect(),
            result: self.value(step.result),
            source: equation.source,
            at: equation.locator,
            mark: equation.mark.key(),
            valid: equation.valid,
            in_range: step.in_range,
            label: equation.mark.label(),
        }
    }
}
