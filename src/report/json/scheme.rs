//! One scheme as JSON: its standing and score, checks, forces, figures and what it assumes.

use super::{Json, array, method_code, object, where_there};
use crate::check::{Care, Check};
use crate::choice::reason::exclusion;
use crate::choice::{Criterion, Ranked, asks};
use crate::conditions::{Plan, site_figures};
use crate::handbook::{HandbookError, Method};
use crate::method::{self, FrictionModel, Shove, Stations, Step};
use crate::quantity::{Length, Role, Shown};
use crate::report::contents::{forces, is_looked_at, levels};
use crate::report::{cautions, words};
use serde_json::{Map, Value};

impl Json<'_> {
    pub(super) fn scheme(&self, ranked: &Ranked) -> Result<Map<String, Value>, HandbookError> {
        let (drive, pipe, scheme) = (self.drive, &ranked.pipe, &ranked.scheme);
        let excluded = scheme.excluded().map(|origin| {
            let reason = exclusion(drive, origin)?;
            Ok(object! { reason: reason, source: drive.handbook().reference(origin).source })
        });
        let band = |band| self.band(forces(band, scheme.method));
        let soil = if is_looked_at(ranked) { method::friction_models(drive, pipe)? } else { Vec::new() };
        let model_forces = method::model_forces(drive, pipe, &soil);
        let site =
            if is_looked_at(ranked) { site_figures(&Plan { drive, pipe, method: scheme.method }) } else { Vec::new() };
        Ok(object! {
            method: scheme.method.key(),
            method_code: method_code(scheme.method),
            pipe: pipe.label(),
            standing: ranked.standing.label(),
            standing_code: ranked.standing.code(),
            place: ranked.place,
            proposed: drive.is_proposed(ranked.candidate),
            if_settled: ranked.if_settled.as_ref().map(|settled| object! {
                place: settled.place,
                standing: settled.standing.label(),
                standing_code: settled.standing.code(),
                shown: settled.is_shown,
                open: array(settled.open.iter().map(|subject| subject.label())),
                open_codes: array(settled.open.iter().map(|subject| subject.code())),
                ask: words::ask(ranked),
                write: array(asks(ranked).into_iter().map(|ask| object! {
                    ways: array(ask.ways.into_iter()),
                    settles: ask.checks,
                    told: ask.told,
                })),
            }),
            excluded: excluded.collect::<Result<Vec<_>, HandbookError>>()?,
            score: self.score(ranked),
            force: scheme.force.map(band),
            rig_force: scheme.rig_force.map(band),
            wall_needed: self.wall_needed(ranked),
            stations: self.stations(ranked),
            shove_plan: array(method::shove_plan(drive, pipe, scheme).iter().map(|shove| self.shove(shove))),
            stages: array(method::profile(drive, pipe, scheme.method).iter().map(|stage| self.stage(stage))),
            soil: array(soil.iter().map(|soil| self.soil(soil))),
            model_forces: array(model_forces.into_iter().map(|model| object! {
                model: model.name,
                force: band(model.force),
                in_range: model.in_range,
            })),
            checks: array(scheme.checks.iter().map(|check| self.check(check))),
            site_figures: array(site.into_iter().map(|figure| self.site_figure(figure))),
            not_given: cautions::not_given(drive, ranked),
            figures: self.figures(ranked)?,
            assumed: array(words::assumed(drive, ranked).map(|assumed| self.assumed(assumed))),
            cautions: cautions::of(drive, ranked, self.system)?,
        })
    }

    pub(super) fn score(&self, ranked: &Ranked) -> Option<Map<String, Value>> {
        let score = ranked.score.as_ref()?;
        let criterion = |criterion: &Criterion| {
            let weight = self.drive.handbook().reference(criterion.basis);
            object! {
                criterion: criterion.kind.key(),
                raw: criterion.raw.map(|raw| self.value(raw)),
                value: criterion.value,
                weight: criterion.weight,
                points: criterion.points(),
                weight_mark: weight.mark.key(),
                weight_row: weight.row_id(),
            }
        };
        Some(object! {
            least: score.least,
            most: score.most,
            criteria: array(score.criteria.iter().map(criterion)),
        })
    }

    /// Demand and limit are those of the high level, which decides *within*.
    pub(super) fn check(&self, check: &Check) -> Map<String, Value> {
        let value = |shown: Option<Shown>| shown.map(|shown| self.value(shown));
        let (high, likely) = (check.high(), check.likely());
        let mut object = object! {
            subject: check.subject.label(),
            code: check.subject.code(),
            demand: value(high.map(|high| high.0)),
            limit: value(high.map(|high| high.1)),
            sense: check.sense.label(),
            utilisation: check.utilisation(),
            verdict: check.verdict.label(),
            verdict_code: check.verdict.code(),
            care: check.care.map(Care::label),
            care_code: check.care.map(Care::code),
            required: check.is_required(),
            screen: check.is_failed_screen();
            ..self.basis(check.basis),
            factor: check.factor.map(|factor| self.origin(factor)),
            weakest_mark: check.mark(self.drive.handbook()).key(),
            replaces: self.replaces(check.basis),
            note: words::note(check, self.system),
            likely_demand: value(likely.map(|likely| likely.0)),
            likely_limit: value(likely.map(|likely| likely.1)),
            likely_utilisation: check.likely_utilisation(),
            best_demand: value(check.best().map(|best| best.0)),
            best_limit: value(check.best().map(|best| best.1))
        };
        if let Some(factor) = check.factor {
            let mark = |origin| self.drive.handbook().reference(origin).mark;
            object.insert("mark".to_owned(), mark(check.basis).weaker(mark(factor)).key().into());
        }
        where_there(object, &["care", "care_code", "factor", "replaces", "best_demand", "best_limit"])
    }

    fn wall_needed(&self, ranked: &Ranked) -> Option<Map<String, Value>> {
        let needed = method::wall_needed(self.drive, &ranked.pipe, &ranked.scheme)?;
        Some(object! {
            width: self.value(Shown::of(needed.width, Role::Depth)),
            height: self.value(Shown::of(needed.height, Role::Depth)),
            top_depth: self.value(Shown::of(needed.top, Role::Depth)),
            thrust: self.value(Shown::of(needed.thrust, Role::Thrust)),
            safety: self.value(Shown::of(needed.safety.value, Role::Ratio)),
            left_of_safety: self.value(Shown::of(needed.left, Role::Ratio)),
            undrained: needed.is_undrained;
            ..self.basis(needed.safety.origin)
        })
    }

    fn stations(&self, ranked: &Ranked) -> Option<Map<String, Value>> {
        let stations = method::stations(self.drive, &ranked.pipe, &ranked.scheme)?;
        let thrust = |force| self.value(Shown::of(force, Role::Thrust));
        let placed = match &stations {
            Stations::Placed(placed) => Some(placed),
            _ => None,
        };
        let place = |place: &Length| self.value(Shown::of(*place, Role::Distance));
        Some(object! {
            says: words::stations(&stations, self.system),
            places: array(placed.iter().flat_map(|placed| &placed.places).map(place)),
            capacity: placed.map(|placed| thrust(placed.capacity)),
            start: placed.map(|placed| thrust(placed.start)),
            on_wall: placed.map(|placed| thrust(placed.on_wall));
            ..self.source(words::stations_by(self.drive, &stations))
        })
    }

    fn shove(&self, shove: &Shove) -> Map<String, Value> {
        let (from, to) = shove.extent;
        object! {
            pipe: shove.number,
            from: self.value(Shown::of(from, Role::Distance)),
            to: self.value(Shown::of(to, Role::Distance)),
            force: self.band(levels(shove.force, Role::Thrust)),
            stop: self.value(Shown::of(shove.stop, Role::Thrust)),
            stop_by: shove.stop_by.label(),
            stop_by_code: shove.stop_by.code(),
            gauge: shove.gauge.map(|(read, _)| self.band(levels(read, Role::Strength))),
            stop_gauge: shove.gauge.map(|(_, stop)| self.value(Shown::of(stop, Role::Strength))),
        }
    }

    fn stage(&self, profile: &method::StageProfile) -> Map<String, Value> {
        let pulled = profile.stage.pulls;
        let method = if pulled { Method::Pullback } else { Method::PipeJacking };
        let band = |band| self.band(forces(band, method));
        let points = profile.points.iter().map(|point| {
            object! {
                advance: self.value(Shown::of(point.advance, Role::Distance)),
                on_rig: band(point.on_rig),
                on_wall: point.on_wall.map(band),
                on_stem: point.on_stem.map(band),
                on_casing: point.on_casing.map(band),
                on_pipe: point.on_pipe.map(band),
                on_tail: point.on_tail.map(|push| self.band(levels(push, Role::Thrust))),
            }
        });
        object! {
            stage: profile.stage.title(),
            pulled: pulled,
            bore: profile.bore.map(|bore| self.value(Shown::of(bore, Role::Diameter))),
            points: array(points),
        }
    }

    fn soil(&self, soil: &method::SoilView) -> Map<String, Value> {
        let pressure = |pressure| self.value(Shown::of(pressure, Role::UnitFriction));
        let model = |model: &FrictionModel| {
            object! {
                model: model.name,
                over: model.over.label(),
                friction: self.band(levels(model.friction, Role::UnitFriction)),
                in_range: model.in_range,
                note: model.note,
            }
        };
        object! {
            stretch: soil.stretch,
            total_stress: pressure(soil.at_crown.total),
            effective_stress: pressure(soil.at_crown.effective),
            models: array(soil.models.iter().map(model)),
            notes: soil.notes.as_slice(),
        }
    }

    fn site_figure(&self, figure: crate::conditions::SiteFigure) -> Map<String, Value> {
        let reference = figure.origin.map(|origin| self.drive.handbook().reference(origin));
        object! {
            topic: figure.topic.label(),
            what: figure.what,
            values: figure.values.map(|values| self.band(values)),
            source: reference.as_ref().map(|reference| reference.source),
            at: reference.as_ref().map(|reference| reference.locator),
            mark: reference.as_ref().map(|reference| reference.mark.key()),
            note: figure.note,
        }
    }

    fn figures(&self, ranked: &Ranked) -> Result<Vec<Value>, HandbookError> {
        let figures = method::figures(self.drive, &ranked.pipe, ranked.scheme.method)?;
        Ok(array(figures.into_iter().map(|figure| {
            object! {
                label: figure.label,
                value: self.value(figure.value);
                ..self.basis(figure.basis),
                in_range: figure.in_range,
                note: figure.note
            }
        })))
    }

    fn assumed(&self, assumed: &crate::drive::Assumed) -> Map<String, Value> {
        let object = object! {
            field: words::assumed_field(assumed),
            value: assumed.value.text(self.system);
            ..self.origin(assumed.origin)
        };
        where_there(object, &["replaces"])
    }

    /// The laws behind a scheme, evaluated.
    pub(super) fn working(&self, ranked: &Ranked) -> Vec<Value> {
        let (_, sheet) = method::explain(self.drive, &ranked.pipe, ranked.scheme.method);
        array(sheet.steps().iter().map(|step| self.step(step, ranked)))
    }

    fn step(&self, step: &Step, ranked: &Ranked) -> Map<String, Value> {
        let equation = step.equation;
        let inputs = step.inputs.iter().map(|(name, shown)| object! { name: *name, value: self.value(*shown) });
        let object = object! {
            part: step.part,
            name: equation.name,
            of: words::whose(step, self.drive, &ranked.pipe),
            form: equation.form,
            inputs: array(inputs),
            result: self.value(step.result),
            source: equation.source,
            at: equation.locator,
            mark: equation.mark.key(),
            valid: equation.valid,
            in_range: step.in_range,
        };
        where_there(object, &["of"])
    }
}
