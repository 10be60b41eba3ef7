//! Polyethylene pipe: walls, outside diameters, strength and stiffness over time and temperature.

use crate::quantity::{Length, MassDensity, Pressure, Ratio, ThermodynamicTemperature, Time};
use crate::yaml::Words;

rows! {
    /// A PE pipe of a series that lists walls.
    PeWallRow {
        /// Nominal outside diameter.
        size: must Length,
        /// Standard dimension ratio.
        sdr: must Ratio,
        /// Minimum wall.
        wall: must Length,
    }

    /// A PE pipe of a series whose wall is outside diameter over dimension ratio.
    PeOutsideRow {
        /// Nominal size.
        size: must Length,
        /// Outside diameter.
        outside_diameter: must Length,
    }

    /// What a PE material designation stands for in the tables that use other designations.
    PeMaterialRow {
        /// Density.
        density: must MassDensity,
        /// Short-term tensile yield strength at 73 degF.
        tensile_yield: must Pressure,
        /// Column of American pull stress tables.
        american: must Words,
        /// Column of the German pull stress sheet, or `none`.
        german: must Words,
        /// Modulus column that is safe against collapse.
        soft: must Words,
        /// Modulus column that is safe for bending stress.
        stiff: must Words,
    }

    /// Allowable pull stress by edition, material and duration.
    PullStressRow {
        /// The edition the row belongs to; editions are never mixed in one row.
        edition: must Words,
        /// Material column of that edition.
        material: must Words,
        /// Longest duration the stress is for.
        up_to: must Time,
        /// The stress.
        stress: must Pressure,
        /// Pipe temperature the stress is for.
        at: must ThermodynamicTemperature,
    }

    /// A factor by duration.
    DurationFactorRow {
        /// The edition the factor belongs to.
        edition: must Words,
        /// Longest duration.
        up_to: must Time,
        /// The factor.
        factor: must Ratio,
    }

    /// Apparent modulus by material and duration of load.
    ModulusRow {
        /// Material column.
        material: must Words,
        /// Duration of the load.
        duration: must Time,
        /// The modulus at 73 degF.
        modulus: must Pressure,
    }

    /// A multiplier by pipe temperature.
    TemperatureFactorRow {
        /// The set the point belongs to.
        set: must Words,
        /// Pipe temperature.
        at: must ThermodynamicTemperature,
        /// The multiplier.
        factor: must Ratio,
    }
}
