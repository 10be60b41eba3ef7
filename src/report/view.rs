//! A choice as plain data with every origin spelled out: what the text prints and what the JSON holds.

use super::cautions;
use crate::check::Check;
use crate::choice::reason::{exclusion, governing};
use crate::choice::{Choice, Ranked};
use crate::drive::{Assumed, AssumedValue, Drive};
use crate::handbook::{HandbookError, Method};
use crate::method::{self, Sheet, StageProfile, Step};
use crate::quantity::{Band, Force, Role, Shown, UnitSystem};
use crate::source::Origin;
use serde::Serialize;

/// Version of the JSON form.
const FORM: u32 = 1;

/// A number with its unit.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ValueView {
    /// Number.
    pub value: f64,
    /// Unit; empty for a ratio.
    pub unit: &'static str,
    #[serde(skip)]
    pub(super) text: String,
}

impl ValueView {
    fn of(shown: Shown, system: UnitSystem) -> Self {
        let (value, unit) = shown.in_units(system);
        Self { value, unit, text: shown.display(system).to_string() }
    }
}

/// Where a number comes from, in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OriginView {
    /// Source id.
    pub source: String,
    /// Locator in the source; the field for a given value.
    pub at: String,
    /// Mark.
    pub mark: &'static str,
    /// Table and row, where it is one.
    pub row: Option<String>,
    /// What the embedded row says, where a user's table took its place.
    pub replaces: Option<String>,
    #[serde(skip)]
    pub(super) label: &'static str,
}

/// The answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChoiceView {
    /// Method.
    pub method: &'static str,
    /// Pipe.
    pub pipe: String,
    /// Standing.
    pub standing: &'static str,
    /// Score.
    pub score: Option<ScoreView>,
    /// Why, in one sentence.
    pub reason: String,
    #[serde(skip)]
    pub(super) governed_by: Option<(&'static str, f64)>,
}

/// Least and most the score can be.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ScoreView {
    /// Unknown criteria at 0.
    pub least: f64,
    /// Unknown criteria at 1.
    pub most: f64,
    /// Its parts.
    pub criteria: Vec<CriterionView>,
}

/// One part of a score.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CriterionView {
    /// Criterion.
    pub criterion: &'static str,
    /// The figure behind it.
    pub raw: Option<ValueView>,
    /// 0 to 1, `null` where not known.
    pub value: Option<f64>,
    /// Share of the score.
    pub weight: f64,
    #[serde(skip)]
    pub(super) label: &'static str,
}

/// Low, likely and high.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BandView {
    /// Low; for comparison with measurements only.
    pub low: ValueView,
    /// Likely.
    pub likely: ValueView,
    /// High.
    pub high: ValueView,
}

/// A stage and the force along it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StageView {
    /// What moves.
    pub stage: &'static str,
    /// True when it is pulled back from the launch pit.
    pub pulled: bool,
    /// Points in the order of advance; the force is linear between them.
    pub points: Vec<PointView>,
}

/// Force at one advance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PointView {
    /// How far what moves has come.
    pub advance: ValueView,
    /// On the rig.
    pub on_rig: BandView,
    /// On the product pipe, where it is in the bore.
    pub on_pipe: Option<BandView>,
}

/// One check. `demand` and `limit` are those of the high level, which decides *within*.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CheckView {
    /// What is checked.
    pub subject: &'static str,
    /// High demand.
    pub demand: Option<ValueView>,
    /// Limit at the high demand.
    pub limit: Option<ValueView>,
    /// Which side of the limit is safe.
    pub sense: &'static str,
    /// High demand over limit, or need over supply.
    pub utilisation: Option<f64>,
    /// Verdict.
    pub verdict: &'static str,
    /// Source of the limit.
    pub source: String,
    /// Locator of the limit.
    pub at: String,
    /// Mark of the limit.
    pub mark: &'static str,
    /// What the embedded row of the limit says, where a user's table took its place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub replaces: Option<String>,
    /// Note.
    pub note: Option<String>,
    /// Likely demand.
    pub likely_demand: Option<ValueView>,
    /// Likely demand over its limit.
    pub likely_utilisation: Option<f64>,
    #[serde(skip)]
    pub(super) basis: OriginView,
}

/// An assumed value.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AssumedView {
    /// Field that would give it.
    pub field: String,
    /// What was taken.
    pub value: String,
    /// Source.
    pub source: String,
    /// Locator.
    pub at: String,
    /// Mark.
    pub mark: &'static str,
    /// What the embedded row says, where a user's table took its place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub replaces: Option<String>,
    #[serde(skip)]
    pub(super) basis: OriginView,
}

/// Why a scheme is excluded.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ExcludedView {
    /// Sentence.
    pub reason: String,
    /// Source.
    pub source: String,
}

/// One scheme.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SchemeView {
    /// Method.
    pub method: &'static str,
    /// Pipe.
    pub pipe: String,
    /// Standing.
    pub standing: &'static str,
    /// Why it is excluded.
    pub excluded: Vec<ExcludedView>,
    /// Score.
    pub score: Option<ScoreView>,
    /// Greatest force on the pipe.
    pub force: Option<BandView>,
    /// Greatest force on the rig over all stages.
    pub rig_force: Option<BandView>,
    /// Force along the drive, stage by stage.
    pub stages: Vec<StageView>,
    /// Checks.
    pub checks: Vec<CheckView>,
    /// Assumed values.
    pub assumed: Vec<AssumedView>,
    /// Cautions.
    pub cautions: Vec<String>,
}

/// One drive's answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Report {
    /// Version of this form.
    pub version: u32,
    /// Version of the crate.
    pub crate_version: &'static str,
    /// Name of the drive.
    pub drive: String,
    /// Digest of the drive file.
    pub drive_digest: String,
    /// Units, `si` or `us`.
    pub units: &'static str,
    /// The choice.
    pub choice: Option<ChoiceView>,
    /// Why, also where nothing is chosen.
    pub reason: String,
    /// Schemes, best first.
    pub schemes: Vec<SchemeView>,
    /// What goes with every result.
    pub cautions: Vec<&'static str>,
    /// What was not checked.
    pub not_checked: Vec<&'static str>,
    #[serde(skip)]
    pub(super) facts: Vec<String>,
    #[serde(skip)]
    pub(super) working: Vec<StepView>,
}

/// One step of the working of the first scheme.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct StepView {
    pub(super) part: &'static str,
    pub(super) name: &'static str,
    pub(super) form: &'static str,
    pub(super) inputs: String,
    pub(super) result: String,
    pub(super) cited: String,
}

/// Spells a choice out. `digest` identifies the text of the drive file.
///
/// # Errors
/// If the handbook is malformed.
pub fn report(drive: &Drive, choice: &Choice, system: UnitSystem, digest: &str) -> Result<Report, HandbookError> {
    let view = View { drive, system };
    let chosen = choice.chosen();
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
            governed_by: governing(first).and_then(|check| Some((check.subject.label(), check.utilisation()?))),
        }),
        reason: choice.reason.clone(),
        schemes: choice.ranked.iter().map(|ranked| view.scheme(ranked)).collect::<Result<_, _>>()?,
        cautions: cautions::ALWAYS.to_vec(),
        not_checked: cautions::NOT_CHECKED.to_vec(),
        facts: view.facts(),
        working: choice.ranked.first().map_or_else(Vec::new, |first| view.working(first)),
    })
}

struct View<'a> {
    drive: &'a Drive,
    system: UnitSystem,
}

impl View<'_> {
    fn value(&self, shown: Shown) -> ValueView {
        ValueView::of(shown, self.system)
    }

    fn text(&self, shown: Shown) -> String {
        shown.display(self.system).to_string()
    }

    fn origin(&self, origin: Origin) -> OriginView {
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

    fn scheme(&self, ranked: &Ranked) -> Result<SchemeView, HandbookError> {
        let excluded = ranked.scheme.excluded().map(|origin| {
            let reason = exclusion(self.drive, origin)?;
            Ok(ExcludedView { reason, source: self.origin(origin).source })
        });
        let pulled = ranked.scheme.method == Method::Pullback;
        let band = |band| self.band(band, pulled);
        Ok(SchemeView {
            method: ranked.scheme.method.key(),
            pipe: self.pipe(ranked),
            standing: ranked.standing.label(),
            excluded: excluded.collect::<Result<_, HandbookError>>()?,
            score: self.score(ranked),
            force: ranked.scheme.force.map(band),
            rig_force: ranked.scheme.rig_force.map(band),
            stages: self.stages(ranked),
            checks: ranked.scheme.checks.iter().map(|check| self.check(check)).collect(),
            assumed: self.assumed(ranked),
            cautions: cautions::of(self.drive, ranked, self.system)?,
        })
    }

    fn band(&self, band: Band<Force>, pulled: bool) -> BandView {
        let role = if pulled { Role::Pull } else { Role::Thrust };
        let band = band.map(|force| Shown::of(force, role));
        BandView { low: self.value(band.low), likely: self.value(band.likely), high: self.value(band.high) }
    }

    fn stages(&self, ranked: &Ranked) -> Vec<StageView> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate) else { return Vec::new() };
        let view = |profile: StageProfile| {
            let pulled = profile.stage.pulls;
            let points = profile.points.iter().map(|point| PointView {
                advance: self.value(Shown::of(point.advance, Role::Distance)),
                on_rig: self.band(point.on_rig, pulled),
                on_pipe: point.on_pipe.map(|band| self.band(band, pulled)),
            });
            StageView { stage: profile.stage.title(), pulled, points: points.collect() }
        };
        method::profile(self.drive, pipe, ranked.scheme.method).into_iter().map(view).collect()
    }

    fn score(&self, ranked: &Ranked) -> Option<ScoreView> {
        let score = ranked.score.as_ref()?;
        let criteria = score.criteria.iter().map(|criterion| CriterionView {
            criterion: criterion.kind.key(),
            raw: criterion.raw.map(|raw| self.value(raw)),
            value: criterion.value,
            weight: criterion.weight,
            label: criterion.kind.label(),
        });
        Some(ScoreView { least: score.least, most: score.most, criteria: criteria.collect() })
    }

    fn check(&self, check: &Check) -> CheckView {
        let basis = self.origin(check.basis);
        CheckView {
            subject: check.subject.label(),
            demand: check.high().map(|(demand, _)| self.value(demand)),
            limit: check.high().map(|(_, limit)| self.value(limit)),
            sense: check.sense.label(),
            utilisation: check.utilisation(),
            verdict: check.verdict.label(),
            source: basis.source.clone(),
            at: basis.at.clone(),
            mark: basis.mark,
            replaces: basis.replaces.clone(),
            note: match check.doubt {
                Some(equation) => Some(format!("outside the range of {}: {}", equation.name, equation.valid)),
                None => check.note.map(ToOwned::to_owned),
            },
            likely_demand: check.likely().map(|(demand, _)| self.value(demand)),
            likely_utilisation: check.likely_utilisation(),
            basis,
        }
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
            } else {
                !(pulled && field.contains("jacked pipe"))
            }
        };
        let view = |assumed: &Assumed| {
            let basis = self.origin(assumed.origin);
            AssumedView {
                field: match assumed.alike {
                    0 => assumed.field.clone(),
                    more => format!("{} (and {more} more alike)", assumed.field),
                },
                value: self.assumed_value(&assumed.value),
                source: basis.source.clone(),
                at: basis.at.clone(),
                mark: basis.mark,
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
        let fall = if slope >= 0.0 { "rising to reception" } else { "falling to reception" };
        let length = self.text(Shown::of(drive.length.value, Role::Distance));
        let percent = Shown { si: slope.abs(), role: Role::Percent }.display(self.system).to_string();
        let mut facts = vec![format!("{service}, {length} long, {percent} {fall}")];
        for stretch in &drive.stretches {
            let shown = |length| self.text(Shown::of(length, Role::Distance));
            let class = stretch.class.key().replace('_', " ");
            facts.push(format!("{} to {}: {class}", shown(stretch.from), shown(stretch.to)));
        }
        let thrust = self.text(Shown::of(drive.rig.thrust.value, Role::Thrust));
        let pull = self.text(Shown::of(drive.rig.pull.value, Role::Pull));
        facts.push(format!(
            "rig: thrust {thrust}, pull {pull}; lubrication {}",
            drive.lubrication.key().replace('_', " ")
        ));
        facts
    }

    fn working(&self, ranked: &Ranked) -> Vec<StepView> {
        let Some(pipe) = self.drive.candidates.get(ranked.candidate) else { return Vec::new() };
        let (_, sheet): (_, Sheet) = method::explain(self.drive, pipe, ranked.scheme.method);
        sheet.steps().iter().map(|step| self.step(step)).collect()
    }

    fn step(&self, step: &Step) -> StepView {
        let inputs = step.inputs.iter().map(|(name, shown)| format!("{name} {}", self.text(*shown)));
        let range = if step.in_range { "" } else { "; OUTSIDE ITS RANGE: " };
        let valid = if step.in_range { "" } else { step.equation.valid };
        StepView {
            part: step.part,
            name: step.equation.name,
            form: step.equation.form,
            inputs: inputs.collect::<Vec<_>>().join(", "),
            result: self.text(step.result),
            cited: format!("{}, {}{range}{valid}", step.equation.source, step.equation.mark.label()),
        }
    }
}
