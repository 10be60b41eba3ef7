//! Rows on pipes: dimensions, strength and stiffness, factors by scheme; what a pipe in service bears and carries.

use crate::quantity::{
    Area, Force, Length, LineLoad, LinearMassDensity, Mass, MassDensity, Pressure, Ratio, ThermodynamicTemperature,
    Time, Velocity,
};
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

    /// Outside diameter by nominal size, with what makers usually allow on the end.
    SizeOutsideForceRow {
        /// Nominal size.
        size: must Length,
        /// Outside diameter.
        outside_diameter: must Length,
        /// Jacking force that a maker usually allows.
        force: may Force,
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
        /// The same in walls over 16 mm, where the standard has less there.
        thick: may Pressure,
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
