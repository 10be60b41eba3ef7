//! The pilot stem.

use crate::quantity::{Band, Force, Length, LineLoad, Pressure, Ratio, Torque, UnitWeight};
use crate::source::Cited;

/// The pilot stem.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Stem {
    /// 0 for a bore without a stem.
    pub(crate) outside_diameter: Cited<Length>,
    /// Diameter of the pilot head, which makes the bore.
    pub(crate) head: Length,
    /// Whether it is out of the bore before a pipe is pushed into it.
    pub(crate) withdrawn: bool,
    /// Weight, where the wall is known.
    pub(crate) weight: Option<LineLoad>,
    /// What buckling needs.
    pub(crate) tube: Option<Tube>,
    pub(crate) joint_thrust: Option<Cited<Force>>,
    pub(crate) joint_pull: Option<Cited<Force>>,
    pub(crate) joint_torque: Option<Cited<Torque>>,
    /// While it is pushed.
    pub(crate) torque: Option<Band<Torque>>,
}

impl Stem {
    pub(crate) fn is_there(&self) -> bool {
        self.outside_diameter.value > Length::default()
    }
}

/// The stem as a slender tube.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tube {
    pub(crate) wall: Length,
    /// Longest length without support in the launch pit.
    pub(crate) free_length: Length,
    pub(crate) modulus: Pressure,
    pub(crate) end_factor: Ratio,
    pub(crate) factor: Cited<Ratio>,
    pub(crate) bedding_per_strength: Ratio,
    /// The bed in sand, rising with the count.
    pub(crate) sand: [SandBed; 3],
}

/// The bed that sand of one density gives a slender bar.
#[derive(Debug, Clone, Copy)]
pub(crate) struct SandBed {
    /// Least SPT blows; the first row serves what is looser too.
    pub(crate) blows_from: Ratio,
    /// Modulus of horizontal subgrade reaction, per depth.
    pub(crate) moist: UnitWeight,
    pub(crate) submerged: UnitWeight,
    /// Low end over the value.
    pub(crate) low_share: Ratio,
}
