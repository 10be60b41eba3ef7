//! The thrust wall: what the ground behind it bears, at which level, and how far the wall moves for it.
//!
//! Drained ground counts effective stress and no cohesion; undrained clay its strength and its moist weight alone, so
//! that water never adds to either. Where the undrained strength is known, the lesser of both cases counts.

use super::super::scheme::Scheme;
use super::super::walked::Walked;
use crate::check::{Absent, Outcome, at_most, only};
use crate::conditions::{NO_GRAVITY, resisting_stress, undrained_resisting_stress};
use crate::drive::{Drive, Pipe, Reaction, ThrustWall};
use crate::handbook::Service;
use crate::law::{Calc, Doubted, Recorder, Silent};
use crate::laws::wall::{
    AllowableReaction, EyeResistance, PassiveCoefficient, PassivePressure, PassiveStrip, UndrainedStrip,
};
use crate::laws::wall_fit::{PassiveMovement, ResultantDepth, StripCentroid, ThrustEccentricity, WidthForThrust};
use crate::quantity::{Band, Force, Length, Measure, Pressure, Ratio, Role, UnitWeight};
use crate::source::{Cited, Equation, Mark, Origin};

const PART: &str = "thrust wall";
const DRAINED: &str = "the ground straight behind the wall: effective stress, no cohesion, no water";
const UNDRAINED: &str = "undrained, which bears less here than drained: strength and moist weight, no water";
const MOVEMENT: &str =
    "at full resistance; the safety factor keeps it to a part of that: survey the wall, or check its movement";

/// How far the thrust may lie from the reaction.
const THRUST_LEVEL: Equation = Equation {
    name: "level of the thrust on a wall",
    form: "within height/6 of the level of the reaction",
    source: "jackpull",
    locator: "middle third of the wall: further off, a part of it lifts off the ground",
    mark: Mark::Judgement,
    valid: "a stiff wall",
};

/// Parts that the height of a wall is cut into for its middle third.
const SIXTH: f64 = 6.0;

/// Where a wall stands.
#[derive(Clone, Copy)]
struct Stand {
    width: Length,
    top: Length,
    bottom: Length,
    axis: Length,
    eye: Length,
}

impl Stand {
    fn of(reaction: &Reaction, wall: &ThrustWall, pipe: &Pipe) -> Self {
        let axis = wall.thrust.unwrap_or(reaction.invert - pipe.outside_diameter.value / 2.0);
        let top = wall.top.unwrap_or((axis - wall.height / 2.0).max(Length::default()));
        Self { width: wall.width, top, bottom: top + wall.height, axis, eye: wall.eye }
    }
}

/// What a wall finds behind it.
#[derive(Clone, Copy, Default)]
struct Behind {
    force: Force,
    centre: Length,
    eye: Force,
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
    fn pressure<R: Recorder>(&self, calc: &mut Calc<R>, at: Length) -> Pressure {
        let vertical_stress = self.stress + self.unit_weight * (at - self.top);
        let cohesion = self.strength.unwrap_or_default();
        calc.law(PassivePressure { vertical_stress, coefficient: self.coefficient, cohesion })
    }

    fn resistance<R: Recorder>(&self, calc: &mut Calc<R>, spread: Ratio, width: Length) -> Force {
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
    fn at_eye<R: Recorder>(&self, calc: &mut Calc<R>, stand: &Stand) -> Option<Pressure> {
        let (upper, lower) = (stand.axis - stand.eye / 2.0, stand.axis + stand.eye / 2.0);
        let apart = stand.eye <= Length::default() || lower <= self.top || upper >= self.bottom;
        let within = upper >= self.top && lower <= self.bottom;
        let at = if within { stand.axis } else { lower.min(self.bottom) };
        (!apart).then(|| self.pressure(calc, at))
    }
}

/// Walks down the ground behind the wall, level by level. With an undrained strength the lowest layer has it.
fn behind<R: Recorder>(calc: &mut Calc<R>, reaction: &Reaction, stand: &Stand, undrained: Option<Pressure>) -> Behind {
    let soil = &reaction.soil;
    let water = soil.water_depth.unwrap_or(Length::from_si(f64::INFINITY));
    let last = soil.layers.len().saturating_sub(1);
    let mut sum = Behind { centre: stand.axis, ..Behind::default() };
    let mut gone = Pressure::default();
    let mut top = stand.top;
    for (index, layer) in soil.layers.iter().enumerate() {
        let strength = undrained.filter(|_| index == last);
        let stress_at = |calc: &mut Calc<R>, depth: Length| match strength {
            Some(_) => undrained_resisting_stress(calc, soil, depth),
            None => resisting_stress(calc, soil, depth),
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

/// The lesser of the cases, what may be asked of it, and whether it is the undrained one.
fn allowed<R: Recorder>(calc: &mut Calc<R>, reaction: &Reaction, stand: &Stand) -> (Force, Behind, bool) {
    let safety = reaction.safety.value;
    let allow = |calc: &mut Calc<R>, behind: Behind| {
        calc.law(AllowableReaction { resistance: behind.force, eye: behind.eye, safety })
    };
    let drained = behind(calc, reaction, stand, None);
    let force = allow(calc, drained);
    if let Some(clay) = reaction.soil.undrained {
        let undrained = behind(calc, reaction, stand, Some(clay.strength));
        let other = allow(calc, undrained);
        if other < force {
            return (other, undrained, true);
        }
    }
    (force, drained, false)
}

/// What a wall finds behind it, and what may be asked of it.
pub(in crate::method) struct Resisting<'a> {
    reaction: &'a Reaction,
    wall: &'a ThrustWall,
    stand: Stand,
    found: Doubted<(Force, Behind, bool)>,
}

/// What the wall of the file finds, where there is one.
pub(in crate::method) fn resisting<'a, R: Recorder>(
    calc: &mut Calc<R>,
    drive: &'a Drive,
    pipe: &Pipe,
) -> Option<Resisting<'a>> {
    let reaction = drive.reaction.as_ref()?;
    let wall = reaction.wall.as_ref()?;
    calc.part(PART);
    let stand = Stand::of(reaction, wall, pipe);
    let found = calc.doubted(|calc| allowed(calc, reaction, &stand));
    Some(Resisting { reaction, wall, stand, found })
}

fn wall<'w, 'a>(at: &'w Walked<'a>) -> Result<&'w Resisting<'a>, Absent> {
    at.wall.as_ref().ok_or(Absent::Missing)
}

/// The greatest thrust of all stages that push.
pub(in crate::method) fn thrust(at: &Walked<'_>) -> Outcome {
    let wall = wall(at)?;
    let (_, _, is_undrained) = wall.found.in_spite_of_doubt();
    let limit = wall.found.map(|(force, ..)| Cited::new(force, wall.reaction.safety.origin));
    Ok(at_most(Role::Thrust, at.thrust(), limit).with_note(if is_undrained { UNDRAINED } else { DRAINED }))
}

pub(in crate::method) fn level<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let wall = wall(at)?;
    calc.part(PART);
    let off = calc.doubted(|calc| {
        let (_, behind, _) = calc.take(wall.found);
        let law = ThrustEccentricity { thrust_depth: wall.stand.axis, reaction_depth: behind.centre };
        Band::same(calc.law(law))
    });
    let middle = Cited::new(wall.wall.height / SIXTH, Origin::Law(&THRUST_LEVEL));
    Ok(at_most(Role::Offset, off, middle).as_screen())
}

pub(in crate::method) fn movement<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let wall = wall(at)?;
    only(at.drive.service == Service::GravitySewer, NO_GRAVITY)?;
    only(!wall.wall.movement_checked, "the file says that its movement was checked apart")?;
    calc.part(PART);
    let law = PassiveMovement { share: wall.reaction.movement.value, height: wall.wall.height };
    let movement = calc.doubted(|calc| Band::same(calc.law(law)));
    Ok(at_most(Role::Offset, movement, at.drive.tolerance).as_screen().with_note(MOVEMENT))
}

/// A square wall that would do, where the file gives the ground behind it and no wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WallNeeded {
    /// Width and height.
    pub side: Length,
    /// Depth of its top.
    pub top: Length,
    /// Greatest thrust, high.
    pub thrust: Force,
    /// Resistance over thrust.
    pub safety: Cited<Ratio>,
    /// Whether clay that cannot drain bears less here.
    pub is_undrained: bool,
}

/// Largest wall that is looked for.
const LARGEST: f64 = 20.0;
/// Halvings of the interval: beyond these it is below a hair.
const HALVINGS: usize = 40;

/// The square wall that bears the high thrust of a scheme with its middle behind the axis of the pipe; `None` where
/// the ground behind is not known, a wall is given, or none of 20 m would do.
#[must_use]
pub fn wall_needed(drive: &Drive, pipe: &Pipe, scheme: &Scheme) -> Option<WallNeeded> {
    let reaction = drive.reaction.as_ref().filter(|reaction| reaction.wall.is_none())?;
    let thrust = scheme.thrust?.if_sure()?.high;
    if !(thrust > Force::default()) {
        return None;
    }
    let mut calc = Calc::new(Silent);
    let safety = reaction.safety.value;
    let mut try_side = |side: Length| {
        let wall = ThrustWall {
            width: side,
            height: side,
            top: None,
            thrust: None,
            eye: Length::default(),
            movement_checked: false,
        };
        let stand = Stand::of(reaction, &wall, pipe);
        let (_, behind, is_undrained) = allowed(&mut calc, reaction, &stand);
        let law = WidthForThrust { thrust, safety, eye: behind.eye, width: side, resistance: behind.force };
        (calc.law(law), stand.top, is_undrained)
    };
    let (mut short, mut enough) = (Length::default(), Length::from_si(LARGEST));
    if try_side(enough).0 > enough {
        return None;
    }
    for _ in 0..HALVINGS {
        let middle = (short + enough) / 2.0;
        if try_side(middle).0 > middle { short = middle } else { enough = middle }
    }
    let (_, top, is_undrained) = try_side(enough);
    Some(WallNeeded { side: enough, top, thrust, safety: reaction.safety, is_undrained })
}
