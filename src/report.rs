//! A choice as text or JSON: the answer first, then why, with the source and mark of every number.

mod around;
mod build;
mod cautions;
mod jacks;
mod json;
mod not_given;
mod not_given_pull;
mod sure;
mod text;
mod view;

pub use build::report;
pub use jacks::{ShoveView, StationsView};
pub use json::json;
pub use sure::{
    Beside, ContestView, InputTurnsView, LineView, NameView, PitsView, ShareView, ShiftView, SureView, TurnView,
};
pub use text::{text, text_in_full};
pub use view::{
    AssumedView, AtView, BandView, CheckView, ChoiceView, CriterionView, ExcludedView, FigureView, InputView,
    ModelView, OriginView, PointView, Report, SchemeView, ScoreView, SettledView, SiteFigureView, SoilModelsView,
    StageView, StepView, TableView, ValueView, WallNeededView,
};
