//! Friction, arching, face and lubrication of jacked pipe.

use crate::quantity::{Angle, Length, LineLoad, Pressure, Ratio};
use crate::yaml::{Field, Words, key_words};
use serde::Deserialize;

/// Published unit friction. Where only `high` is there, the source prints one value or an upper end.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UnitFrictionRow {
    /// The publication the row belongs to; sets are not mixed.
    pub set: Field<Words>,
    /// Ground as the source names it, or `any`.
    pub ground: Field<Words>,
    /// Pipe material, or `any`.
    pub pipe: Field<Words>,
    /// Lubricant that the value supposes, `none` or `not stated`.
    pub slurry: Field<Words>,
    /// Low end on the whole outside area.
    pub low: Option<Field<Pressure>>,
    /// High end.
    pub high: Field<Pressure>,
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

/// Friction between a pipe material and the ground. Where only `high` is there, the source prints one value.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct InterfaceFrictionRow {
    /// Surface of the pipe.
    pub interface: Field<Words>,
    /// Ground as the source names it.
    pub soil: Field<Words>,
    /// What the value is.
    pub kind: Field<FrictionKind>,
    /// Static, sliding, or `not stated`.
    pub state: Field<Words>,
    /// Low end.
    pub low: Option<Field<Ratio>>,
    /// High end.
    pub high: Field<Ratio>,
    /// Interface angle printed beside the low end.
    pub angle_low: Option<Field<Angle>>,
    /// Interface angle printed beside the high end.
    pub angle_high: Option<Field<Angle>>,
}

/// Adhesion of clay on a pipe material.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AdhesionRow {
    /// Surface of the pipe.
    pub interface: Field<Words>,
    /// Consistency of the clay.
    pub soil: Field<Words>,
    /// Low end on the area in contact.
    pub low: Field<Pressure>,
    /// High end.
    pub high: Field<Pressure>,
    /// Undrained strength that the step ends at, where it goes by consistency.
    pub strength_to: Option<Field<Pressure>>,
}

/// Constants of a silo model. A column that is not there is a formula in the source, or not part of it.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FrictionModelSetRow {
    /// Width of the soil column over the outside diameter.
    pub width_factor: Option<Field<Ratio>>,
    /// Length added to the outside diameter before the width is worked out.
    pub width_allowance: Option<Field<Length>>,
    /// Side pressure over vertical pressure in the soil column.
    pub lateral: Option<Field<Ratio>>,
    /// Wall friction angle of the soil column over the friction angle.
    pub wall_over_phi: Option<Field<Ratio>>,
    /// Cohesion that the source takes.
    pub cohesion: Option<Field<Pressure>>,
    /// Side pressure over vertical pressure at the pipe.
    pub on_pipe: Option<Field<Ratio>>,
}

/// A rule of face resistance or face support. The columns that are there say which form it has.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FaceRuleRow {
    /// Machine and ground, or what the rule limits.
    pub machine: Field<Words>,
    /// Force per length of the rim, before the index.
    pub line: Option<Field<LineLoad>>,
    /// Face resistance index that multiplies the line load; not an SPT N.
    pub index: Option<Field<Ratio>>,
    /// Pressure, low end.
    pub low: Option<Field<Pressure>>,
    /// Pressure, high end or only value.
    pub high: Option<Field<Pressure>>,
    /// Pressure per SPT blow.
    pub per_blow: Option<Field<Pressure>>,
    /// Most blows that are counted.
    pub blows_most: Option<Field<Ratio>>,
    /// Share of another pressure, low end; the note says of which.
    pub share_low: Option<Field<Ratio>>,
    /// Share of another pressure, high end or only value.
    pub share_high: Option<Field<Ratio>>,
}

/// Extra jacking force after a stop.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RestartFactorRow {
    /// Ground.
    pub ground: Field<Words>,
    /// Extra force over the force before the stop, low end.
    pub extra_low: Option<Field<Ratio>>,
    /// Extra force, high end.
    pub extra_high: Option<Field<Ratio>>,
    /// Advance after which the extra is gone, over the outside diameter.
    pub dies_within: Option<Field<Ratio>>,
}
