//! Properties of the ground by blow count, density, consistency and class.

use super::classes::{GroundClass, TipModel};
use crate::quantity::{Angle, Pressure, Ratio, UnitWeight};
use crate::yaml::Words;

rows! {
    /// Granular ground by density. An end that the source leaves open is not there.
    SoilGranularRow {
        /// The publication the row belongs to; sets are not mixed.
        set: must Words,
        /// Density.
        density: must Words,
        /// Relative density, low end.
        dr_low: may Ratio,
        /// Relative density, high end.
        dr_high: may Ratio,
        /// Smallest SPT N (inclusive).
        n_from: may Ratio,
        /// Largest SPT N (exclusive).
        n_below: may Ratio,
        /// Friction angle, low end.
        phi_low: may Angle,
        /// Friction angle, high end.
        phi_high: may Angle,
        /// Moist unit weight, low end.
        moist_low: may UnitWeight,
        /// Moist unit weight, high end.
        moist_high: may UnitWeight,
        /// Submerged unit weight, low end; buoyant, with water already taken off.
        submerged_low: may UnitWeight,
        /// Submerged unit weight, high end.
        submerged_high: may UnitWeight,
    }

    /// Undrained strength per SPT blow, as a stress or over atmospheric pressure.
    StrengthFromNRow {
        /// Soil the rule is for.
        soil: must Words,
        /// Plasticity index of the point.
        plasticity: may Ratio,
        /// Largest plasticity index (exclusive).
        plasticity_below: may Ratio,
        /// Strength per blow, low end.
        low: may Pressure,
        /// Strength per blow, high end or only value.
        high: may Pressure,
        /// Strength per blow over atmospheric pressure.
        over_atmosphere: may Ratio,
    }

    /// Cone resistance per blow at the tip of a displacement pilot, and the blow counts it is driven in.
    PilotConeRow {
        /// Clay or sand.
        tip: must TipModel,
        /// Cone resistance per SPT blow, low end.
        per_blow_low: may Pressure,
        /// Cone resistance per SPT blow, high end.
        per_blow_high: may Pressure,
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

    /// Friction angle, strength and stiffness of ground whose soil is not told: what is adverse to one check is favourable
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
