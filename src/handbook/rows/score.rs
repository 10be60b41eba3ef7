//! The criteria of the score, whose weights are a table.

use crate::yaml::key_words;

key_words! {
    /// What is valued when schemes are ranked. Each has one value function, the same for every drive and scheme; see
    /// [`choice`](crate::choice).
    #[derive(Hash)]
    pub enum CriterionKind: "a criterion of the score" {
        /// Margin of the loads.
        #[default]
        LoadMargin = "load_margin",
        /// Suitability of the ground.
        Ground = "ground",
        /// Certainty of line and grade, gravity sewers only.
        Grade = "grade",
        /// Length and diameter against the published range of the method.
        Size = "size",
        /// Movement of the ground.
        Movement = "movement",
        /// Room at the pits.
        Area = "area",
        /// Time on site.
        Time = "time",
        /// Cost.
        Cost = "cost",
    }
}

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
