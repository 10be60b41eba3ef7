//! Excavation, air and butt fusion.

use crate::quantity::{Length, Ratio, Time};
use crate::yaml::Words;

rows! {
    /// An excavation rule in one number.
    ExcavationRow {
        /// The rule.
        rule: must Words,
        /// Depth, height or distance.
        length: may Length,
    }

    /// Waiting time after a butt fusion.
    JointCoolingRow {
        /// What is waited for.
        what: must Words,
        /// Duration.
        time: must Time,
        /// Wall thickness that the duration is for each time.
        per_wall: may Length,
    }

    /// Butt fusion joints made.
    FusionRateRow {
        /// Smallest pipe size.
        size_from: may Length,
        /// Largest pipe size.
        size_to: must Length,
        /// Joints, low end.
        joints_low: must Ratio,
        /// Joints, high end.
        joints_high: must Ratio,
        /// In what time.
        per: must Words,
    }
}
