//! The force of a stage along the drive.

use super::body::Stage;
use crate::quantity::{Band, Force, Length};

/// Force at one advance. Two points at the same advance are a step, where the front meets other ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// How far what moves has come: from the launch pit when pushed, from the reception pit when pulled.
    pub advance: Length,
    /// On the rig.
    pub on_rig: Band<Force>,
    /// On the thrust wall behind the rig; a pull leans on the other face of the launch pit.
    pub on_wall: Option<Band<Force>>,
    /// On the stem where it is loaded most, while it is in the bore.
    pub on_stem: Option<Band<Force>>,
    /// On the casing where it is loaded most, while it is in the bore.
    pub on_casing: Option<Band<Force>>,
    /// On the product pipe, where it is in the bore.
    pub on_pipe: Option<Band<Force>>,
    /// Push of the machine at the tail of the pipe, where one helps the pull: low and likely as far as the pull needs
    /// it, high the whole.
    pub on_tail: Option<Band<Force>>,
}

/// A stage and the force along it.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct StageProfile {
    /// The stage.
    pub stage: Stage,
    /// The bore that a reamer makes.
    pub bore: Option<Length>,
    /// Points in the order of advance.
    pub points: Vec<Point>,
}
