//! What the ground behind the thrust wall bears, and where its resultant lies.
//!
//! Drained ground counts effective stress and no cohesion; undrained clay its strength and its moist weight alone, so
//! that water never adds to either. Clay is pushed for hours: where the file tells its strength, that counts; else the lesser.

use crate::conditions::{resisting_stress, undrained_resisting_stress};
use crate::drive::{Clay, Drive, Pipe, Reaction, ThrustWall};
use crate::law::{Calc, Doubted};
use crate::laws::wall::{
    AllowableReaction, EyeResistance, PassiveCoefficient, PassivePressure, PassiveStrip, UndrainedStrip,
};
use crate::laws::wall_fit::{ResultantDepth, StripCentroid};
use crate::quantity::{Force, Length, Measure, Pressure, Ratio, UnitWeight};

pub(super) const PART: &str = "thrust wall";

/// Where a wall stands.
#[derive(Clone, Copy)]
pub(super) struct Stand {
    width: Length,
    pub(super) top: Length,
    bottom: Length,
    pub(super) axis: Length,
    pub(super) eye: Length,
}

impl Stand {
    pub(super) fn of(reaction: &Reaction, wall: &ThrustWall, pipe: &Pipe) -> Self {
        let axis = wall.thrust.unwrap_or(reaction.invert - pipe.outside_diameter.value / 2.0);
        let top = wall.top.unwrap_or((axis - wall.height / 2.0).max(Length::default()));
        Self { width: wall.width, top, bottom: top + wall.height, axis, eye: wall.eye }
    }
}

/// What a wall finds behind it.
#[derive(Clone, Copy, Default)]
pub(super) struct Behind {
    pub(super) force: Force,
    pub(super) centre: Length,
    pub(super) eye: Force,
}

/// One level of ground: what the pressure at it is made of.
#[derive(Clone, Copy)]
struct Strip {
    top: Length,
    bottom: Length,
    stress: Pressure,
    unit_weight: UnitWeight,
    coefficient: Ratio,
    /// Undrained strength; none in drained ground.
    strength: Option<Pressure>,
}

impl Strip {
    fn pressure(&self, calc: &mut Calc, at: Length) -> Pressure {
        let vertical_stress = self.stress + self.unit_weight * (at - self.top);
        let cohesion = self.strength.unwrap_or_default();
        calc.law(PassivePressure { vertical_stress, coefficient: self.coefficient, cohesion })
    }

    fn resistance(&self, calc: &mut Calc, spread: Ratio, width: Length) -> Force {
        let (height, top_stress, unit_weight) = (self.bottom - self.top, self.stress, self.unit_weight);
        match self.strength {
            Some(undrained_strength) => {
                calc.law(UndrainedStrip { spread, width, height, top_stress, unit_weight, undrained_strength })
            }
            None => {
                let (coefficient, cohesion) = (self.coefficient, Pressure::default());
                calc.law(PassiveStrip { spread, width, height, top_stress, unit_weight, coefficient, cohesion })
            }
        }
    }

    /// Greatest pressure that an opening takes away here: at its axis where it lies within the strip, else at its
    /// lower end in it.
    fn at_eye(&self, calc: &mut Calc, stand: &Stand) -> Option<Pressure> {
        let (upper, lower) = (stand.axis - stand.eye / 2.0, stand.axis + stand.eye / 2.0);
        let apart = stand.eye <= Length::default() || lower <= self.top || upper >= self.bottom;
        let within = upper >= self.top && lower <= self.bottom;
        let at = if within { stand.axis } else { lower.min(self.bottom) };
        (!apart).then(|| self.pressure(calc, at))
    }
}

/// Walks down the ground behind the wall, level by level. With an undrained strength the lowest layer has it.
fn behind(calc: &mut Calc, reaction: &Reaction, stand: &Stand, undrained: Option<Pressure>) -> Behind {
    let (at, soil) = (reaction.column(), &reaction.soil);
    let water = reaction.table.unwrap_or(Length::from_si(f64::INFINITY));
    let last = soil.layers.len().saturating_sub(1);
    let mut sum = Behind { centre: stand.axis, ..Behind::default() };
    let mut gone = Pressure::default();
    let mut top = stand.top;
    for (index, layer) in soil.layers.iter().enumerate() {
        let strength = undrained.filter(|_| index == last);
        let stress_at = |calc: &mut Calc, depth: Length| match strength {
            Some(_) => undrained_resisting_stress(calc, at, depth),
            None => resisting_stress(calc, at, depth),
        };
        let end = layer.bottom.min(stand.bottom);
        if top >= end {
            continue;
        }
        let coefficient = match strength {
            Some(_) => Ratio::from(1.0),
            None => calc.law(PassiveCoefficient { friction_angle: layer.friction_angle }),
        };
        let mut stress = stress_at(calc, top);
        while top < end {
            let bottom = if water > top { end.min(water) } else { end };
            let below = stress_at(calc, bottom);
            let height = bottom - top;
            let strip = Strip { top, bottom, stress, unit_weight: (below - stress) / height, coefficient, strength };
            let force = strip.resistance(calc, reaction.spread, stand.width);
            let (top_pressure, bottom_pressure) = (strip.pressure(calc, top), strip.pressure(calc, bottom));
            let centre = top + calc.law(StripCentroid { height, top_pressure, bottom_pressure });
            sum.centre = calc.law(ResultantDepth {
                force: sum.force,
                depth: sum.centre,
                other_force: force,
                other_depth: centre,
            });
            sum.force += force;
            gone = strip.at_eye(calc, stand).unwrap_or_default().max(gone);
            (top, stress) = (bottom, below);
        }
    }
    if stand.eye > Length::default() {
        sum.eye = calc.law(EyeResistance { spread: reaction.spread, pressure: gone, diameter: stand.eye });
        if sum.force > sum.eye {
            let (force, depth) = (sum.force, sum.centre);
            sum.centre = calc.law(ResultantDepth { force, depth, other_force: -sum.eye, other_depth: stand.axis });
        }
    }
    sum
}

/// What may be asked of the case that counts for its clay, the case, and whether it is the undrained one.
pub(super) fn allowed(calc: &mut Calc, reaction: &Reaction, stand: &Stand) -> (Force, Behind, bool) {
    let safety = reaction.safety.value;
    let allow = |calc: &mut Calc, behind: Behind| {
        calc.law(AllowableReaction { resistance: behind.force, eye: behind.eye, safety })
    };
    let drained = behind(calc, reaction, stand, None);
    let force = allow(calc, drained);
    if let Some(clay) = reaction.soil.undrained {
        let undrained = behind(calc, reaction, stand, Some(clay.strength));
        let other = allow(calc, undrained);
        let counts = match reaction.clay {
            Clay::Undrained => true,
            Clay::Lesser => other < force,
            Clay::Greater => other >= force,
        };
        if counts {
            return (other, undrained, true);
        }
    }
    (force, drained, false)
}

/// What a wall finds behind it, and what may be asked of it.
pub(in crate::method) struct Resisting<'a> {
    pub(super) reaction: &'a Reaction,
    pub(super) wall: &'a ThrustWall,
    pub(super) stand: Stand,
    pub(super) found: Doubted<(Force, Behind, bool)>,
    /// What it bears at best, where nothing is told of the ground.
    pub(super) best: Option<Force>,
}

/// What the wall of the file finds, where there is one.
pub(in crate::method) fn resisting<'a>(calc: &mut Calc, drive: &'a Drive, pipe: &Pipe) -> Option<Resisting<'a>> {
    let reaction = drive.reaction.as_ref()?;
    let wall = reaction.wall.as_ref()?;
    calc.part(PART);
    let stand = Stand::of(reaction, wall, pipe);
    let found = calc.doubted(|calc| allowed(calc, reaction, &stand));
    let best = reaction.best.as_deref().map(|best| allowed(&mut Calc::silent(), best, &stand).0);
    Some(Resisting { reaction, wall, stand, found, best })
}
