//! The report as plain data: what the text prints and what the JSON holds.

use super::jacks::{ShoveView, StationsView};
use super::sure::{LineView, SureView};
use serde::Serialize;

/// Version of the JSON form.
pub(super) const FORM: u32 = 1;

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
    /// The checks that ask for care.
    pub with_care: Vec<AtView>,
    /// The load check whose limit is used most.
    pub governed_by: Option<AtView>,
}

/// A check by name, and how far its limit is used.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AtView {
    /// What is checked.
    pub subject: &'static str,
    /// High demand over limit, where it is a number.
    pub utilisation: Option<f64>,
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
    /// Points of the score's 100, `null` where the value is not known.
    pub points: Option<f64>,
    /// Mark of the weight.
    pub weight_mark: &'static str,
    /// Table and row of the weight, where it is one.
    pub weight_row: Option<String>,
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

/// A square thrust wall that would do, with its middle behind the axis of the pipe.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WallNeededView {
    /// Width.
    pub width: ValueView,
    /// Height.
    pub height: ValueView,
    /// Depth of its top.
    pub top_depth: ValueView,
    /// Greatest thrust, high.
    pub thrust: ValueView,
    /// Resistance over thrust.
    pub safety: ValueView,
    /// Whether clay that cannot drain bears less here.
    pub undrained: bool,
    /// Source of the safety factor.
    pub source: String,
    /// Its locator.
    pub at: String,
    /// Its mark.
    pub mark: &'static str,
    /// Its table and row.
    pub row: Option<String>,
    #[serde(skip)]
    pub(super) basis: OriginView,
}

/// A stage and the force along it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StageView {
    /// What moves.
    pub stage: &'static str,
    /// True when it is pulled back from the launch pit.
    pub pulled: bool,
    /// The bore that a reamer makes.
    pub bore: Option<ValueView>,
    /// Points in the order of advance; the force is linear between them.
    pub points: Vec<PointView>,
}

/// Soil of one stretch, beside the band: shown, never used for capacity.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SoilModelsView {
    /// Position of the stretch in the file.
    pub stretch: usize,
    /// Total vertical stress at the crown, in the deepest place.
    pub total_stress: Option<ValueView>,
    /// Effective vertical stress there.
    pub effective_stress: Option<ValueView>,
    /// Unit friction by each model.
    pub models: Vec<ModelView>,
    /// What is to be known of all of them, and what could not be worked out.
    pub notes: Vec<&'static str>,
}

/// Unit friction by one model.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ModelView {
    /// Name of the set.
    pub model: &'static str,
    /// What part of the stretch it speaks of: mean over the stretch, deepest place, or any place.
    pub over: &'static str,
    /// Unit friction.
    pub friction: BandView,
    /// False where it was used outside its range.
    pub in_range: bool,
    /// What a reader must know.
    pub note: &'static str,
}

/// Friction on the whole pipe by a model that every stretch has; it only grows, so it is greatest at the far end.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ModelForceView {
    /// Name of the set.
    pub model: &'static str,
    /// Friction force.
    pub force: BandView,
    /// False where it was used outside its range in some stretch.
    pub in_range: bool,
}

/// Force at one advance.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PointView {
    /// How far what moves has come.
    pub advance: ValueView,
    /// On the rig.
    pub on_rig: BandView,
    /// On the thrust wall; absent while the rig pulls.
    pub on_wall: Option<BandView>,
    /// On the stem where it is loaded most, while it is in the bore.
    pub on_stem: Option<BandView>,
    /// On the casing where it is loaded most, while it is in the bore.
    pub on_casing: Option<BandView>,
    /// On the product pipe, where it is in the bore.
    pub on_pipe: Option<BandView>,
    /// Push of the machine at the tail of a pulled pipe.
    pub on_tail: Option<BandView>,
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
    /// True where the likely demand is past the limit of a screen, which asks for care and never bars.
    pub screen: bool,
    /// Source of the limit.
    pub source: String,
    /// Locator of the limit.
    pub at: String,
    /// Mark of the limit.
    pub mark: &'static str,
    /// Table and row of the limit, where it is one.
    pub row: Option<String>,
    /// Table and row, or source, of a factor in the limit beside it; `mark` is the weaker of the two.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub factor: Option<OriginView>,
    /// What the embedded row of the limit says, where a user's table took its place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub replaces: Option<String>,
    /// Note.
    pub note: Option<String>,
    /// Likely demand.
    pub likely_demand: Option<ValueView>,
    /// Limit at the likely demand.
    pub likely_limit: Option<ValueView>,
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
    /// The same by the name of the pipe; empty where it is not of one pipe.
    #[serde(skip)]
    pub(super) name: String,
    /// What was taken.
    pub value: String,
    /// Source.
    pub source: String,
    /// Locator.
    pub at: String,
    /// Mark.
    pub mark: &'static str,
    /// Table and row, where it is one.
    pub row: Option<String>,
    /// What the embedded row says, where a user's table took its place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub replaces: Option<String>,
    #[serde(skip)]
    pub(super) basis: OriginView,
}

/// Where an open scheme would stand at best.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SettledView {
    /// Place.
    pub place: usize,
    /// What is not decided.
    pub open: Vec<&'static str>,
    /// Fields of a candidate that the maker of the pipe has to fill.
    pub ask: Vec<&'static str>,
}

/// A figure that is no check.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FigureView {
    /// What it is.
    pub label: &'static str,
    /// Its value.
    pub value: ValueView,
    /// Source of what it rests on.
    pub source: String,
    /// Locator there.
    pub at: String,
    /// Mark.
    pub mark: &'static str,
    /// Table and row, where it is one.
    pub row: Option<String>,
    /// False where an equation was used outside its range.
    pub in_range: bool,
    /// Note.
    pub note: Option<&'static str>,
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
    /// Place in the ranking; equal ones share it.
    pub place: usize,
    /// True where the pipe is proposed, not listed in the file.
    pub proposed: bool,
    /// Where an open scheme would stand.
    pub if_settled: Option<SettledView>,
    /// Why it is excluded.
    pub excluded: Vec<ExcludedView>,
    /// Score.
    pub score: Option<ScoreView>,
    /// Greatest force on the pipe.
    pub force: Option<BandView>,
    /// Greatest force on the rig over all stages.
    pub rig_force: Option<BandView>,
    /// A thrust wall that would do, where the ground behind it is given and the wall is not.
    pub wall_needed: Option<WallNeededView>,
    /// Intermediate jacking stations.
    pub stations: Option<StationsView>,
    /// Shove plan, where the length of a pipe is given.
    pub shove_plan: Vec<ShoveView>,
    /// Force along the drive, stage by stage.
    pub stages: Vec<StageView>,
    /// Friction models, for the stretches whose soil the file tells.
    pub soil: Vec<SoilModelsView>,
    /// Friction on the whole pipe by the models that every stretch has.
    pub model_forces: Vec<ModelForceView>,
    /// Checks.
    pub checks: Vec<CheckView>,
    /// Ground movement, pits and time.
    pub site_figures: Vec<SiteFigureView>,
    /// What the file does not give, so that a check of it is absent.
    pub not_given: Vec<&'static str>,
    /// Figures that are no checks.
    pub figures: Vec<FigureView>,
    /// Assumed values.
    pub assumed: Vec<AssumedView>,
    /// Cautions.
    pub cautions: Vec<String>,
}

/// A figure of ground movement, pits or time, which decides nothing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SiteFigureView {
    /// `ground movement`, `pits` or `time`.
    pub topic: &'static str,
    /// What it is.
    pub what: String,
    /// Low, likely and high; `null` where it is not known.
    pub values: Option<BandView>,
    /// Source, where there is one.
    pub source: Option<String>,
    /// Locator.
    pub at: Option<String>,
    /// Mark.
    pub mark: Option<&'static str>,
    /// Note.
    pub note: &'static str,
    #[serde(skip)]
    pub(super) basis: Option<OriginView>,
}

/// A user's file laid over a table.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct TableView {
    /// The table.
    pub table: &'static str,
    /// Name of the file.
    pub file: String,
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
    /// Methods that are left out for a pipe, and the field that is wanting.
    pub not_looked_at: Vec<String>,
    /// The user's tables.
    pub tables: Vec<TableView>,
    /// The drive in a few lines.
    pub facts: Vec<String>,
    /// How sure the choice is, where it was looked at.
    pub sure: Option<SureView>,
    /// Pits and drives of the line, where the file tells of one.
    pub line: Option<LineView>,
    /// The working of the first scheme.
    pub working: Vec<StepView>,
}

/// One law, evaluated.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StepView {
    /// The part of the working.
    pub part: &'static str,
    /// What it computes.
    pub name: &'static str,
    /// Whose friction it is, where that can be told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub of: Option<&'static str>,
    /// The equation, with the names of the arguments.
    pub form: &'static str,
    /// The arguments.
    pub inputs: Vec<InputView>,
    /// The result.
    pub result: ValueView,
    /// Source id.
    pub source: &'static str,
    /// Locator in the source.
    pub at: &'static str,
    /// Mark.
    pub mark: &'static str,
    /// Range of validity.
    pub valid: &'static str,
    /// False where it was used outside that range.
    pub in_range: bool,
    #[serde(skip)]
    pub(super) label: &'static str,
}

/// An argument of a law.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct InputView {
    /// Its name in the equation.
    pub name: &'static str,
    /// Its value.
    pub value: ValueView,
}
