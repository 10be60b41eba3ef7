//! Rows on pipes: dimensions, strength, factors by scheme, packers, bends.

use crate::quantity::{Angle, Area, Force, Length, LinearMassDensity, Mass, Pressure, Ratio, ThermodynamicTemperature};
use crate::yaml::{Field, Words};
use serde::Deserialize;

/// A reinforced concrete jacking pipe with a spigot.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConcretePipeRow {
    /// Inside diameter.
    pub size: Field<Length>,
    /// Wall of the barrel.
    pub wall: Field<Length>,
    /// Outside diameter of the spigot; the barrel is wider.
    pub spigot_outside_diameter: Field<Length>,
    /// Length of one pipe.
    pub length: Field<Length>,
    /// Mass of one pipe.
    pub mass: Field<Mass>,
}

/// A small reinforced concrete jacking pipe: its effective end area and its printed allowable forces.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConcreteSmallPipeRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Effective area of the pipe end; less than the barrel.
    pub end_area: Field<Area>,
    /// Allowable jacking force printed for concrete of 50 N/mm².
    pub rated_type_50: Field<Force>,
    /// Allowable jacking force printed for concrete of 70 N/mm².
    pub rated_type_70: Field<Force>,
}

/// Wall by nominal size.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SizeWallRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Wall.
    pub wall: Field<Length>,
}

/// Outside diameter by nominal size.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SizeOutsideRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Outside diameter.
    pub outside_diameter: Field<Length>,
}

/// Outside diameter and least wall by nominal size.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SizeOutsideWallRow {
    /// Nominal size.
    pub size: Field<Length>,
    /// Outside diameter.
    pub outside_diameter: Field<Length>,
    /// Least wall, without lining.
    pub wall: Field<Length>,
}

/// A stress for jacking concrete pipe by one scheme. Schemes are not mixed: each hides its own factors.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConcreteStressRow {
    /// The scheme the stress belongs to.
    pub scheme: Field<Words>,
    /// Concrete grade in the words of the scheme.
    pub grade: Field<Words>,
    /// Allowable mean, allowable peak, or design strength that the factors of the scheme still reduce.
    pub kind: Field<Words>,
    /// The stress.
    pub stress: Field<Pressure>,
}

/// One coefficient of one published scheme. Coefficients of different schemes are never multiplied together.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SchemeFactorRow {
    /// The scheme it belongs to.
    pub scheme: Field<Words>,
    /// What it is in that scheme.
    pub role: Field<Words>,
    /// The coefficient.
    pub factor: Field<Ratio>,
}

/// A strength of steel by standard and grade.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SteelGradeRow {
    /// Standard.
    pub standard: Field<Words>,
    /// Grade.
    pub grade: Field<Words>,
    /// Least yield, or design strength (a partial factor is already taken off).
    pub kind: Field<Words>,
    /// The stress.
    pub stress: Field<Pressure>,
}

/// Least wall of a steel casing under a railway. The wall is for earth and rail load, not for jacking.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SteelCasingWallRow {
    /// Nominal diameter; a size between two rows takes the larger one.
    pub size: Field<Length>,
    /// Wall where coated or cathodically protected.
    pub coated: Field<Length>,
    /// Wall where bare.
    pub bare: Field<Length>,
}

/// A steel jacking casing.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SteelCasingPipeRow {
    /// Outside diameter.
    pub outside_diameter: Field<Length>,
    /// Wall.
    pub wall: Field<Length>,
    /// Mass per length.
    pub mass_per_length: Field<LinearMassDensity>,
}

/// A range of lengths.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LengthRangeRow {
    /// Low end.
    pub low: Field<Length>,
    /// High end.
    pub high: Field<Length>,
}

/// A range of pressures or moduli.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PressureRangeRow {
    /// Low end.
    pub low: Field<Pressure>,
    /// High end; none where the range is open above.
    pub high: Option<Field<Pressure>>,
}

/// A range of ratios.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RatioRangeRow {
    /// Low end.
    pub low: Field<Ratio>,
    /// High end.
    pub high: Field<Ratio>,
}

/// Deflection at which a joint must stay tight. Not a deflection under jacking load.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JointDeflectionRow {
    /// Smallest nominal size (inclusive).
    pub size_from: Option<Field<Length>>,
    /// Nominal size that the row starts above (exclusive).
    pub size_over: Option<Field<Length>>,
    /// Largest nominal size (inclusive); none where the row is open above.
    pub size_to: Option<Field<Length>>,
    /// Offset of the far end over the length of the pipe.
    pub offset: Field<Ratio>,
}

/// A smallest bend radius, as a multiple.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BendRadiusRow {
    /// Material, and how the pipe is joined where that counts.
    pub material: Field<Words>,
    /// Temperature of the pipe wall, where the source ties the radius to one.
    pub at: Option<Field<ThermodynamicTemperature>>,
    /// The multiple.
    pub times: Field<Ratio>,
    /// What it multiplies: `outside_diameter`, or `radius_at_20_degc` for a factor on the warm radius.
    pub of: Field<Words>,
}

/// One angle at a joint.
pub type JointAngleRow = Field<Angle>;
