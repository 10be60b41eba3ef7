//! Friction, arching, face and lubrication of jacked pipe.

use crate::quantity::{Length, LineLoad, Pressure, Ratio};
use crate::yaml::{Words, key_words};

rows! {
    /// Published unit friction. Where only `high` is there, the source prints one value or an upper end.
    UnitFrictionRow {
        /// The publication the row belongs to; sets are not mixed.
        set: must Words,
        /// Ground as the source names it, or `any`.
        ground: must Words,
        /// Pipe material, or `any`.
        pipe: must Words,
        /// Lubricant that the value supposes, `none` or `not stated`.
        slurry: must Words,
        /// Low end on the whole outside area.
        low: may Pressure,
        /// High end.
        high: must Pressure,
    }

    /// Friction between a pipe material and the ground. Where only `high` is there, the source prints one value.
    InterfaceFrictionRow {
        /// Surface of the pipe.
        interface: must Words,
        /// Ground as the source names it.
        soil: must Words,
        /// What the value is.
        kind: must FrictionKind,
        /// Static, sliding, or `not stated`.
        state: must Words,
        /// High end.
        high: must Ratio,
    }

    /// Adhesion of clay on a pipe material.
    AdhesionRow {
        /// Surface of the pipe.
        interface: must Words,
        /// Consistency of the clay.
        soil: must Words,
        /// Low end on the area in contact.
        low: must Pressure,
        /// High end.
        high: must Pressure,
        /// Undrained strength that the step ends at, where it goes by consistency.
        strength_to: may Pressure,
    }

    /// Constants of a silo model. A column that is not there is a formula in the source, or not part of it.
    FrictionModelSetRow {
        /// Length added to the outside diameter before the width is worked out.
        width_allowance: may Length,
        /// Side pressure over vertical pressure in the soil column.
        lateral: may Ratio,
        /// Wall friction angle of the soil column over the friction angle.
        wall_over_phi: may Ratio,
        /// Cohesion that the source takes.
        cohesion: may Pressure,
    }

    /// A rule of face resistance or face support. The columns that are there say which form it has.
    FaceRuleRow {
        /// Machine and ground, or what the rule limits.
        machine: must Words,
        /// Force per length of the rim, before the index.
        line: may LineLoad,
        /// Face resistance index that multiplies the line load; not an SPT N.
        index: may Ratio,
        /// Pressure, high end or only value.
        high: may Pressure,
        /// Pressure per SPT blow.
        per_blow: may Pressure,
        /// Most blows that are counted.
        blows_most: may Ratio,
    }

    /// Jacking force after a stop.
    RestartFactorRow {
        /// Ground.
        ground: must Words,
        /// Times the friction, likely.
        likely: may Ratio,
        /// Times the friction, high.
        high: may Ratio,
    }
}

key_words! {
    /// What a friction value of an interface is.
    pub enum FrictionKind: "what a friction value is" {
        /// Tangent of the interface angle: the coefficient of friction.
        #[default]
        TanDelta = "tan_delta",
        /// Interface angle over friction angle of the ground.
        DeltaOverPhi = "delta_over_phi",
    }
}
