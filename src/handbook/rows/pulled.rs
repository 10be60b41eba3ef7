//! Rows on pulled pipe: short rules, walls of steel.

use crate::quantity::{Length, Ratio};

rows! {
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
