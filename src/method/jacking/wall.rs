//! The thrust wall: what it bears, at which level, and how far it moves for it; and one that would do.

use super::super::scheme::Scheme;
use super::super::walked::Walked;
use super::behind::{PART, Resisting, Stand, allowed};
use crate::check::{Absent, Outcome, at_most, only};
use crate::conditions::NO_GRAVITY;
use crate::drive::{Drive, Pipe, ThrustWall};
use crate::handbook::Service;
use crate::law::{Calc, Recorder, Silent};
use crate::laws::wall_fit::{PassiveMovement, ThrustEccentricity, WidthForThrust};
use crate::quantity::{Band, Force, Length, Measure, Ratio, Role};
use crate::source::{Cited, Equation, Origin};

const DRAINED: &str = "the ground straight behind the wall: effective stress, no cohesion, no water";
const UNDRAINED: &str = "undrained, which bears less here than drained: strength and moist weight, no water";
const MOVEMENT: &str =
    "at full resistance; the safety factor keeps it to a part of that: survey the wall, or check its movement";

/// How far the thrust may lie from the reaction.
const THRUST_LEVEL: Equation = Equation::judged(
    "level of the thrust on a wall",
    "within height/6 of the level of the reaction",
    "middle third of the wall: further off, a part of it lifts off the ground",
    "a stiff wall",
);

/// Parts that the height of a wall is cut into for its middle third.
const SIXTH: f64 = 6.0;

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
    Ok(at_most(Role::Offset, off, middle))
}

pub(in crate::method) fn movement<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let wall = wall(at)?;
    only(at.drive.service == Service::GravitySewer, NO_GRAVITY)?;
    only(!wall.wall.movement_checked, "the file says that its movement was checked apart")?;
    calc.part(PART);
    let law = PassiveMovement { share: wall.reaction.movement.value, height: wall.wall.height };
    let movement = calc.doubted(|calc| Band::same(calc.law(law)));
    Ok(at_most(Role::Offset, movement, at.drive.tolerance).with_note(MOVEMENT))
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
