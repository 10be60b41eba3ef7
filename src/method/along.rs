//! The force of a stage along the drive.

use super::body::Stage;
use crate::quantity::{Band, Force, Length, LineLoad, Measure};

/// Force at one advance. Two points at the same advance are a step, where the front meets other ground.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
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

/// What the force on the rig gains with each length of advance, in a part of a stage where that is the same.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Gain {
    /// Advance at which the part begins and ends.
    pub extent: (Length, Length),
    /// Force over advance; below zero where it falls.
    pub per_length: Band<LineLoad>,
}

impl StageProfile {
    /// The gains along the stage, between its steps.
    #[must_use]
    pub fn gains(&self) -> Vec<Gain> {
        let mut gains: Vec<Gain> = Vec::new();
        for (before, after) in self.points.iter().zip(self.points.iter().skip(1)) {
            let advance = after.advance - before.advance;
            if !(advance > after.advance * SLIVER) {
                continue;
            }
            let per_length = before.on_rig.with(after.on_rig, |before, after| (after - before) / advance);
            match gains.last_mut() {
                Some(last) if same(last.per_length, per_length) => last.extent.1 = after.advance,
                _ => gains.push(Gain { extent: (before.advance, after.advance), per_length }),
            }
        }
        gains
    }
}

/// Part of an advance that is none: rounding of the user's figures.
pub(super) const SLIVER: f64 = 1e-6;

fn same(one: Band<LineLoad>, other: Band<LineLoad>) -> bool {
    let near = |one: LineLoad, other: LineLoad| (one - other).si().abs() <= SLIVER * one.si().abs();
    near(one.low, other.low) && near(one.likely, other.likely) && near(one.high, other.high)
}
