//! Polyethylene pipe: walls, outside diameters, strength and stiffness over time and temperature.

use crate::quantity::{Length, MassDensity, Pressure, Ratio, ThermodynamicTemperature, Time};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// A PE pipe of a series that lists walls.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PeWallRow {
    /// Nominal outside diameter.
    pub size: Field<Length>,
    /// Standard dimension ratio.
    pub sdr: Field<Ratio>,
    /// Minimum wall.
    pub wall: Field<Length>,
}

/// A PE pipe of a series whose wall is outside diameter over dimension ratio.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PeOutsideRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Outside diameter.
    pub outside_diameter: Field<Length>,
}

/// What a PE material designation stands for in the tables that use other designations.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PeMaterialRow {
    /// Density.
    pub density: Field<MassDensity>,
    /// Short-term tensile yield strength at 73 degF.
    pub tensile_yield: Field<Pressure>,
    /// Column of American pull stress tables.
    pub american: Field<Words>,
    /// Column of the German pull stress sheet, or `none`.
    pub german: Field<Words>,
    /// Modulus column that is safe against collapse.
    pub soft: Field<Words>,
    /// Modulus column that is safe for bending stress.
    pub stiff: Field<Words>,
}

/// Allowable pull stress by edition, material and duration.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PullStressRow {
    /// The edition the row belongs to; editions are never mixed in one row.
    pub edition: Field<Words>,
    /// Material column of that edition.
    pub material: Field<Words>,
    /// Longest duration the stress is for.
    pub up_to: Field<Time>,
    /// The stress.
    pub stress: Field<Pressure>,
    /// Pipe temperature the stress is for.
    pub at: Field<ThermodynamicTemperature>,
}

/// A factor by duration.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DurationFactorRow {
    /// The edition the factor belongs to.
    pub edition: Field<Words>,
    /// Longest duration.
    pub up_to: Field<Time>,
    /// The factor.
    pub factor: Field<Ratio>,
}

/// Apparent modulus by material and duration of load.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ModulusRow {
    /// Material column.
    pub material: Field<Words>,
    /// Duration of the load.
    pub duration: Field<Time>,
    /// The modulus at 73 degF.
    pub modulus: Field<Pressure>,
}

/// A multiplier by pipe temperature.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TemperatureFactorRow {
    /// The set the point belongs to.
    pub set: Field<Words>,
    /// Pipe temperature.
    pub at: Field<ThermodynamicTemperature>,
    /// The multiplier.
    pub factor: Field<Ratio>,
}
