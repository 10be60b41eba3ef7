//! Room for pits and plant, cover and clear distances, excavation, butt fusion.

use crate::quantity::{Area, Length, Ratio, Time};
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
