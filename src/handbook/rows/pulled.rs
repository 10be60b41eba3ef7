//! Rows on pulled pipe: short rules, walls of steel, temperature, expansion.

use crate::quantity::{Length, Ratio, ThermalExpansion, ThermodynamicTemperature};
use crate::yaml::Field;
use serde::Deserialize;

/// Numbers of a short rule for a pull. A column that is not there is another row's subject.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PullRuleRow {
    /// Factor, share or coefficient.
    pub ratio: Option<Field<Ratio>>,
    /// Length.
    pub length: Option<Field<Length>>,
}

/// Least wall of a pulled steel pipe for a band of diameters, as a wall or as a ratio.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SteelPullWallRow {
    /// Diameter that the row starts above (exclusive).
    pub size_over: Option<Field<Length>>,
    /// Largest diameter (inclusive); none where the row is open above.
    pub size_to: Option<Field<Length>>,
    /// Least wall.
    pub wall: Option<Field<Length>>,
    /// Largest diameter over wall.
    pub diameter_over_wall: Option<Field<Ratio>>,
}

/// One temperature.
pub type TemperatureRow = Field<ThermodynamicTemperature>;
/// One coefficient of thermal expansion.
pub type ThermalExpansionRow = Field<ThermalExpansion>;
