//! Properties of the ground by blow count, density, consistency and class.

use super::classes::{GroundClass, TipModel};
use crate::quantity::{Angle, Pressure, Ratio, UnitWeight};
use crate::yaml::Words;

rows! {
    /// Cone resistance per blow at the tip of a displacement pilot, and the blow counts it is driven in.
    PilotConeRow {
        /// Clay or sand.
        tip: must TipModel,
        /// Most SPT blows for easy driving (inclusive).
        blows_comfortable: may Ratio,
        /// Most SPT blows for driving at all (inclusive).
        blows_most: may Ratio,
    }

    /// Modulus of horizontal subgrade reaction of sand, per depth.
    SandBeddingRow {
        /// Density.
        density: must Words,
        /// Least SPT blows (inclusive).
        blows_from: must Ratio,
        /// Dry or moist.
        moist: must UnitWeight,
        /// Under water.
        submerged: must UnitWeight,
        /// Low end of the printed range over the value.
        low_share: must Ratio,
    }

    /// Friction angle, strength and stiffness of ground whose soil is not given: what is adverse to one check is favourable
    /// to another.
    ClassSoilRow {
        /// Ground.
        ground: must GroundClass,
        /// Friction angle that a load counts on.
        phi_load: must Angle,
        /// Friction angle that a resistance counts on.
        phi_resist: must Angle,
        /// Undrained strength per SPT blow, low end; none of ground that drains.
        blow_low: may Pressure,
        /// Undrained strength per SPT blow, high end.
        blow_high: may Pressure,
        /// Undrained modulus over strength, low end.
        modulus_low: may Ratio,
        /// Undrained modulus over strength, high end.
        modulus_high: may Ratio,
        /// Shear modulus of ground that drains, low end.
        shear_low: may Pressure,
        /// Shear modulus of ground that drains, high end.
        shear_high: may Pressure,
        /// Modulus with which the ground holds a ring, low end.
        native_low: must Pressure,
        /// Modulus with which the ground holds a ring, high end.
        native_high: must Pressure,
    }

    /// Unit weight of natural ground.
    SoilWeightRow {
        /// Ground.
        ground: must GroundClass,
        /// Moist, low.
        moist_low: must UnitWeight,
        /// Moist, likely.
        moist_likely: must UnitWeight,
        /// Moist, high.
        moist_high: must UnitWeight,
        /// Buoyant, low; water is already taken off.
        buoyant_low: must UnitWeight,
        /// Buoyant, likely.
        buoyant_likely: must UnitWeight,
        /// Buoyant, high.
        buoyant_high: must UnitWeight,
    }

    /// What a stability number means.
    StabilityNumberRow {
        /// `behaviour` for the bands of the literature, `open_face` for the rule on an open face.
        set: must Words,
        /// Smallest number (inclusive).
        from: may Ratio,
        /// Largest number (exclusive).
        below: may Ratio,
        /// What happens, or `warn` and `refuse`.
        verdict: must Words,
    }
}
