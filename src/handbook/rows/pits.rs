//! Room for pits and plant, cover and clear distances.

use crate::quantity::{Area, Length, Ratio};
use crate::yaml::Words;

rows! {
    /// Size of a pit, or an addition to the pipe or machine.
    ShaftSizeRow {
        /// Jacking, launch or reception.
        pit: must Words,
        /// Method.
        method: must Words,
        /// Which side of the pit.
        side: must Words,
        /// What the figure is added to; absent where it is the side itself.
        added_to: may Words,
        /// The figure.
        value: may Length,
        /// Low end, or the least.
        low: may Length,
        /// High end, or the most.
        high: may Length,
    }

    /// Area needed at the launch.
    WorkAreaRow {
        /// Work.
        what: must Words,
        /// Area, low end.
        area_low: may Area,
        /// Area, high end.
        area_high: may Area,
    }

    /// Least cover.
    MinimumCoverRow {
        /// Method.
        method: must Words,
        /// Smallest diameter.
        diameter_from: may Length,
        /// Largest diameter.
        diameter_to: may Length,
        /// Ground it is limited to.
        ground: may Words,
        /// Least cover.
        cover: may Length,
        /// Least cover over outside diameter, low end.
        times_low: may Ratio,
        /// Least cover over outside diameter, high end.
        times_high: may Ratio,
    }

    /// A clear distance.
    SeparationRow {
        /// Between what.
        what: must Words,
        /// Least distance.
        clear: may Length,
        /// Least distance as a multiple.
        times: may Ratio,
        /// What it is a multiple of.
        times_of: may Words,
    }
}
