//! The criteria of the score, whose weights are a table.

use crate::yaml::key_words;

/// What is valued when schemes are ranked. Each has one value function, the same for every drive and scheme; see
/// [`choice`](crate::choice).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum CriterionKind {
    /// Margin of the loads.
    #[default]
    LoadMargin,
    /// Suitability of the ground.
    Ground,
    /// Certainty of line and grade, gravity sewers only.
    Grade,
    /// Length and diameter against the published range of the method.
    Size,
    /// Movement of the ground.
    Movement,
    /// Room at the pits.
    Area,
    /// Time on site.
    Time,
    /// Cost.
    Cost,
}
key_words!(CriterionKind, "a criterion of the score", {
    "load_margin" => CriterionKind::LoadMargin,
    "ground" => CriterionKind::Ground,
    "grade" => CriterionKind::Grade,
    "size" => CriterionKind::Size,
    "movement" => CriterionKind::Movement,
    "area" => CriterionKind::Area,
    "time" => CriterionKind::Time,
    "cost" => CriterionKind::Cost,
});

impl CriterionKind {
    /// All criteria, in the order of a report.
    pub const ALL: [Self; 8] =
        [Self::LoadMargin, Self::Ground, Self::Grade, Self::Size, Self::Movement, Self::Area, Self::Time, Self::Cost];

    /// As printed.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::LoadMargin => "load margin",
            Self::Ground => "ground suitability",
            Self::Grade => "line and grade",
            Self::Size => "length and diameter",
            Self::Movement => "ground movement",
            Self::Area => "working area",
            Self::Time => "time on site",
            Self::Cost => "cost",
        }
    }
}
