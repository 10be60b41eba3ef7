//! Settlement above the bore and traffic on it. Volume loss, trough width and closure are ratio spans.

use crate::quantity::{Length, Pressure, Ratio};
use crate::yaml::Words;

rows! {
    /// Traffic pressure by cover.
    LiveLoadRow {
        /// Design load.
        load: must Words,
        /// Cover.
        cover: must Length,
        /// Pressure at the pipe.
        pressure: must Pressure,
        /// Whether impact is included.
        impact: must Words,
    }

    /// Impact factor by cover.
    ImpactFactorRow {
        /// Highway or railway.
        load: must Words,
        /// Smallest cover.
        cover_from: must Length,
        /// Largest cover.
        cover_to: may Length,
        /// Factor on the load.
        factor: must Ratio,
    }
}
