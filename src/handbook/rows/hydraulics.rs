//! Slopes, roughness and self-cleaning of gravity sewers.

use crate::quantity::{Length, Pressure, Ratio, Velocity};
use crate::yaml::Words;

rows! {
    /// Least slope by size.
    SewerMinSlopeRow {
        /// Nominal size.
        size: must Length,
        /// Least slope.
        slope: must Ratio,
    }

    /// Manning roughness.
    ManningRow {
        /// Pipe material.
        material: must Words,
        /// Roughness.
        n: must Ratio,
    }

    /// Stress or velocity for self-cleaning.
    TractiveStressRow {
        /// What it is.
        what: must Words,
        /// Stress on the invert.
        stress: may Pressure,
        /// Velocity.
        velocity: may Velocity,
    }

    /// Accepted sag or error of position.
    SagLimitRow {
        /// What it is.
        what: must Words,
        /// Smallest size.
        size_from: may Length,
        /// Largest size.
        size_to: may Length,
        /// The most.
        high: may Length,
        /// As a share of the diameter.
        of_diameter: may Ratio,
    }
}
