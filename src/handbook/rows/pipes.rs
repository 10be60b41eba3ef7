//! Rows on pipes: dimensions, strength, factors by scheme, packers, bends.

use crate::quantity::{Area, Force, Length, LinearMassDensity, Mass, Pressure, Ratio};
use crate::yaml::Words;

rows! {
    /// A reinforced concrete jacking pipe with a spigot.
    ConcretePipeRow {
        /// Inside diameter.
        size: must Length,
        /// Wall of the barrel.
        wall: must Length,
        /// Outside diameter of the spigot; the barrel is wider.
        spigot_outside_diameter: must Length,
        /// Length of one pipe.
        length: must Length,
        /// Mass of one pipe.
        mass: must Mass,
    }

    /// A small reinforced concrete jacking pipe: its effective end area and its printed allowable forces.
    ConcreteSmallPipeRow {
        /// Nominal size.
        size: must Length,
        /// Effective area of the pipe end; less than the barrel.
        end_area: must Area,
        /// Allowable jacking force printed for concrete of 50 N/mm².
        rated_type_50: must Force,
        /// Allowable jacking force printed for concrete of 70 N/mm².
        rated_type_70: must Force,
    }

    /// Wall by nominal size.
    SizeWallRow {
        /// Nominal size.
        size: must Length,
        /// Wall.
        wall: must Length,
    }

    /// Outside diameter by nominal size.
    SizeOutsideRow {
        /// Nominal size.
        size: must Length,
        /// Outside diameter.
        outside_diameter: must Length,
    }

    /// Outside diameter and least wall by nominal size.
    SizeOutsideWallRow {
        /// Nominal size.
        size: must Length,
        /// Outside diameter.
        outside_diameter: must Length,
        /// Least wall, without lining.
        wall: must Length,
    }

    /// A stress for jacking concrete pipe by one scheme. Schemes are not mixed: each hides its own factors.
    ConcreteStressRow {
        /// The scheme the stress belongs to.
        scheme: must Words,
        /// Concrete grade in the words of the scheme.
        grade: must Words,
        /// Allowable mean, allowable peak, or design strength that the factors of the scheme still reduce.
        kind: must Words,
        /// The stress.
        stress: must Pressure,
    }

    /// One coefficient of one published scheme. Coefficients of different schemes are never multiplied together.
    SchemeFactorRow {
        /// The scheme it belongs to.
        scheme: must Words,
        /// What it is in that scheme.
        role: must Words,
        /// The coefficient.
        factor: must Ratio,
    }

    /// A strength of steel by standard and grade.
    SteelGradeRow {
        /// Standard.
        standard: must Words,
        /// Grade.
        grade: must Words,
        /// Least yield, or design strength (a partial factor is already taken off).
        kind: must Words,
        /// The stress.
        stress: must Pressure,
    }

    /// Least wall of a steel casing under a railway. The wall is for earth and rail load, not for jacking.
    SteelCasingWallRow {
        /// Nominal diameter; a size between two rows takes the larger one.
        size: must Length,
        /// Wall where coated or cathodically protected.
        coated: must Length,
        /// Wall where bare.
        bare: must Length,
    }

    /// A steel jacking casing.
    SteelCasingPipeRow {
        /// Outside diameter.
        outside_diameter: must Length,
        /// Wall.
        wall: must Length,
        /// Mass per length.
        mass_per_length: must LinearMassDensity,
    }

    /// A range of lengths.
    LengthRangeRow {
        /// Low end.
        low: must Length,
        /// High end.
        high: must Length,
    }
}
