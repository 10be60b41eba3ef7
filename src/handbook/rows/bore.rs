//! The bore: drilling fluid, reaming steps, overcut and clearance; short rules for a pull, walls of pulled steel.

use crate::quantity::{Length, LineLoad, Ratio};
use crate::yaml::{Words, key_words};

rows! {
    /// Volume of drilling fluid over volume of soil.
    FluidDemandRow {
        /// Soil.
        soil: must Words,
        /// Least ratio.
        low: must Ratio,
        /// High end, if one is printed.
        high: may Ratio,
    }

    /// Size of a reaming step, as a ratio or as a length.
    ReamStepRow {
        /// Where the habit applies.
        ground: must Words,
        /// Reamer diameter over the bore before it, low end.
        ratio_low: may Ratio,
        /// Reamer diameter over the bore before it, high end.
        ratio_high: may Ratio,
        /// Growth in diameter, low end.
        step_low: may Length,
        /// Growth in diameter, high end.
        step_high: may Length,
    }

    /// Overcut of a jacked or enlarged bore. Where only `high` is there, the source prints one value.
    HoleOvercutRow {
        /// Method.
        method: must Words,
        /// Radius or diameter.
        across: must Across,
        /// `typical`, or `most` for a limit.
        usage: must Words,
        /// Low end.
        low: may Length,
        /// High end.
        high: must Length,
    }

    /// Low, likely and high of a ratio.
    RatioLevelsRow {
        /// Low.
        low: must Ratio,
        /// Likely.
        likely: must Ratio,
        /// High.
        high: must Ratio,
    }

    /// Low, likely and high of a force per length.
    LineLoadLevelsRow {
        /// Low.
        low: must LineLoad,
        /// Likely.
        likely: must LineLoad,
        /// High.
        high: must LineLoad,
    }

    /// Numbers of a short rule for a pull. A column that is not there is another row's subject.
    PullRuleRow {
        /// Factor, share or coefficient.
        ratio: may Ratio,
        /// Length.
        length: may Length,
    }

    /// Least wall of a pulled steel pipe for a band of diameters, as a wall or as a ratio.
    SteelPullWallRow {
        /// Diameter that the row starts above (exclusive).
        size_over: may Length,
        /// Largest diameter (inclusive); none where the row is open above.
        size_to: may Length,
        /// Least wall.
        wall: may Length,
        /// Largest diameter over wall.
        diameter_over_wall: may Ratio,
    }
}

key_words! {
    /// What an overcut counts on.
    pub enum Across: "radius or diameter" {
        /// The radius: the gap on one side.
        #[default]
        Radius = "radius",
        /// The diameter: bore less pipe.
        Diameter = "diameter",
    }
}
