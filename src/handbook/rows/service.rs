//! What a rigid pipe bears in service, by the test between three edges.

use crate::quantity::{Length, LineLoad, Pressure, Ratio};
use crate::yaml::Words;

rows! {
    /// How far a flexible pipe may go out of round.
    DeflectionLimitRow {
        /// Least ratio of outside diameter to wall that the row is for; none where it is for any.
        ratio_from: may Ratio,
        /// Greatest deflection.
        most: must Ratio,
    }

    /// Crushing strength by class: force per length of pipe over its diameter.
    CrushingClassRow {
        /// Standard.
        standard: must Words,
        /// Class.
        class: must Words,
        /// At a crack of 0.01 in.
        cracked: may Pressure,
        /// Ultimate.
        ultimate: must Pressure,
    }

    /// Crushing strength by nominal size.
    ClayCrushingRow {
        /// Nominal size.
        size: must Length,
        /// Least force per length.
        strength: must LineLoad,
    }
}
