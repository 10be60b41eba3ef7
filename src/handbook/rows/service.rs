//! What a pipe in service bears and carries: strength of rigid pipe, traffic over it, slopes and roughness of sewers.

use crate::quantity::{Length, LineLoad, Pressure, Ratio, Velocity};
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
