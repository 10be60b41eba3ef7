//! What the methods are used for, how far they reach and how well they hold line and grade.

use crate::quantity::{Length, Ratio};
use crate::yaml::Words;

rows! {
    /// A ratio as one value or a span; what the source leaves out is absent.
    RatioSpanRow {
        /// What the ratio is.
        what: must Words,
        /// Case or ground that it is for.
        case: may Words,
        /// What it is a share of.
        of: may Words,
        /// The value, or the mean where there is a span too.
        value: may Ratio,
        /// Low end, or the least where there is no high end.
        low: may Ratio,
        /// High end, or the most where there is no low end.
        high: may Ratio,
    }

    /// A pipe material listed for a method.
    MethodMaterialRow {
        /// Method.
        method: must Words,
        /// Material.
        material: must Words,
    }

    /// Tolerance or error of line and grade, plus or minus.
    LineToleranceRow {
        /// Method.
        method: must Words,
        /// Whether it is asked for, reached or a locating error.
        kind: must Words,
        /// Low end, as a share.
        share_low: may Ratio,
        /// High end, as a share.
        share_high: may Ratio,
        /// What it is a share of.
        share_of: may Words,
    }

    /// A limit or figure of pilot-tube boring.
    PilotLimitRow {
        /// What it is.
        what: must Words,
        /// Low end of a length.
        low: may Length,
        /// High end of a length.
        high: may Length,
    }

    /// Length put in per shift or day.
    ProductionRateRow {
        /// Method and conditions.
        method: must Words,
        /// Low end.
        low: may Length,
        /// High end.
        high: may Length,
        /// Smallest nominal size of pipe that it is for.
        size_from: may Length,
        /// Largest nominal size of pipe that it is for.
        size_to: may Length,
        /// Shift or day.
        per: must Words,
    }

    /// Shifts for one piece of work beside the bore.
    StageShiftsRow {
        /// The work.
        what: must Words,
        /// Shifts, low.
        low: must Ratio,
        /// Shifts, likely.
        likely: must Ratio,
        /// Shifts, high.
        high: must Ratio,
        /// Depth that they are for each time.
        per_length: may Length,
    }
}
