//! The thrust wall: what it bears, at which level, and how far it moves for it; and one that would do.

use super::super::either::Either;
use super::super::rules::{Gives, asked, can_be_held, stalls_at_most, watched};
use super::super::scheme::Scheme;
use super::super::walked::Walked;
use super::behind::{PART, Resisting, Stand, allowed};
use crate::check::{Absent, Care, Decides, Draft, Outcome, Rule, Verdict, Ways, at_most, only, rated, required};
use crate::conditions::NO_GRAVITY;
use crate::drive::{Drive, Pipe, Reaction, ThrustWall};
use crate::handbook::Service;
use crate::law::{Calc, Doubted};
use crate::laws::wall_fit::{PassiveMovement, ThrustEccentricity, WidthForThrust};
use crate::quantity::{Band, Force, Length, Measure, Ratio, Role};
use crate::source::{Cited, Equation, Origin};

const DRAINED: &str = "only the ground straight behind the wall counts: effective stress, no cohesion, no water";
const UNDRAINED: &str = "undrained, as clay is for the hours of a push: strength and moist weight, no water";
const MOVEMENT: &str = "a quarter of the movement at full resistance, to which the safety factor keeps it: survey \
    the wall, set up the line clear of the frame, or check its movement; less where the thrust is less";
const CLEAR_OF_WALL: &str = "the wall that is asked for may move more than twice the tolerance under its full load: set up the line clear of \
    wall and frame";
const ASKED: &str = "no thrust wall is given: build one at least this wide, as high as wide (but no more than 0.6 of \
    the depth of the floor), its middle behind the pipe axis";
const WIDEST: &str = "no thrust wall is given: with one as wide as is usual, and as high but no more than 0.6 of the floor \
    depth, set the jacks to no more than it bears";
const NONE_DOES: &str = "no thrust wall is given, and none that can usually be built bears the thrust in this ground";

/// How far the thrust may lie from the reaction.
const THRUST_LEVEL: Equation = Equation::judged(
    "level of the thrust on a wall",
    "within height/6 of the level of the reaction",
    "middle third of the wall: further off, a part of it lifts off the ground",
    "a stiff wall",
);

/// Parts of the movement at full resistance of which a safety factor of 2 leaves one: our judgement.
const KEPT: f64 = 4.0;
/// Parts that the height of a wall is cut into for its middle third.
const SIXTH: f64 = 6.0;

fn wall<'w, 'a>(at: &'w Walked<'a>) -> Result<&'w Resisting<'a>, Absent> {
    at.wall.as_ref().ok_or(Absent::Missing)
}

/// The greatest thrust of all stages that push: no more than the jacks give.
pub(in crate::method) fn thrust(at: &Walked<'_>) -> Outcome {
    let Some(wall) = at.wall.as_ref() else { return asked_wall(at) };
    let (_, _, is_undrained) = wall.found.in_spite_of_doubt();
    let cited = |force| Cited::new(force, wall.reaction.safety.origin);
    let limit = Either {
        safe: wall.found.map(|(force, ..)| cited(force)),
        best: wall.best.map(|force| Doubted::sure(cited(force))),
    };
    let check = pushed_against(at, wall.reaction, limit);
    let held = stalls(at, &check);
    let check = if wall.best.is_some() && !held { check.settled_by(&[&["launch.soil"]]) } else { check };
    let ground = if is_undrained { UNDRAINED } else { DRAINED };
    Ok(if check.note.is_some() { check } else { check.with_note(ground) })
}

/// A wall of what it bears. Jacks that are set to that never push it further.
fn pushed_against(at: &Walked<'_>, reaction: &Reaction, limit: Either<Doubted<Cited<Force>>>) -> Draft {
    let share = Decides::SetOn(reaction.safety.value.si()).share(&at.drive.leeway);
    at.thrust_of_jacks().zip(limit).check(|(thrust, limit)| {
        let most = limit.in_spite_of_doubt().value * share;
        watched((at.drive, at.pipe), at_most(Role::Thrust, thrust, limit), share, Gives::InPit(most))
    })
}

/// Whether all would be well with the jacks set to what the wall bears, and the drive freed where it stalls.
fn stalls(at: &Walked<'_>, check: &Draft) -> bool {
    stalls_at_most(check) && can_be_held(check, at.drive.leeway.held)
}

/// A wall that is not told is asked for.
fn asked_wall(at: &Walked<'_>) -> Outcome {
    let reaction = at.drive.reaction.as_ref().ok_or(Absent::Missing)?;
    let usual = &at.drive.usual;
    let side = if at.pipe.outside_diameter.value < usual.large { usual.wall } else { usual.wall_of_large };
    let most = at.drive.site.launch.space.map_or(side, |space| space.width);
    let wide = |reaction, thrust, tallest| {
        required(Role::Depth, asked_width(at, reaction, thrust, tallest).map(Band::same), most)
    };
    // No height that walls usually reach bars: one that is told may be taller.
    let thrust = at.thrust_of_jacks();
    let at_best = reaction.best.as_deref().unwrap_or(reaction);
    let best = wide(at_best, thrust.best.unwrap_or(thrust.safe), Length::from_si(LARGEST));
    let check = wide(reaction, thrust.safe, tallest(at.drive, reaction)).at_best(best);
    let none = check.high().is_some_and(|(width, _)| width.si >= LARGEST);
    // The widest that is usual may do with the jacks set to what it bears, as one that is told may.
    let usual = (check.verdict() == Verdict::NotDecided).then(|| widest(at, reaction, most.value));
    if let Some(usual) = usual.filter(|usual| usual.verdict() == Verdict::WithCare) {
        // A habit, which scores nothing.
        return Ok(usual.by(Rule::Screen).with_care(Care::Condition, WIDEST));
    }
    // A wall of that width does; the ground behind it, where it is told, lets a narrower one do.
    let hangs_on_soil = reaction.best.is_some();
    let ways: Ways = match (usual.is_some_and(|usual| stalls(at, &usual)), hangs_on_soil) {
        (true, true) => &[&["if_stalled"], &["launch.wall", "launch.soil"]],
        (true, false) => &[&["if_stalled"], &["launch.wall"]],
        (false, true) => &[&["launch.wall", "launch.soil"]],
        (false, false) => &[&["launch.wall"]],
    };
    let check = check.settled_by(ways);
    // One that is not told never bars: a pit may be dug as wide as it takes.
    Ok(check.with_note(if none { NONE_DOES } else { ASKED }).by_habit())
}

/// The widest wall that is usual, of what it bears.
fn widest(at: &Walked<'_>, reaction: &Reaction, width: Length) -> Draft {
    let bears = |reaction: &Reaction| {
        let stand = Stand::of(reaction, &square(width, tallest(at.drive, reaction)), at.pipe);
        let (force, ..) = allowed(&mut Calc::silent(), reaction, &stand);
        Doubted::sure(Cited::new(force, reaction.safety.origin))
    };
    pushed_against(at, reaction, Either { safe: bears(reaction), best: reaction.best.as_deref().map(bears) })
}

/// As high as it is wide, up to the tallest.
fn square(width: Length, tallest: Length) -> ThrustWall {
    let height = width.min(tallest);
    ThrustWall { width, height, top: None, thrust: None, eye: Length::default(), movement_checked: false }
}

/// Width of the wall that is asked for.
fn asked_width(at: &Walked<'_>, reaction: &Reaction, thrust: Doubted<Band<Force>>, tallest: Length) -> Doubted<Length> {
    // Asked alike at each level.
    let thrust = asked(thrust, reaction.safety.value, at.drive.leeway.set_on).map(|thrust| thrust.high);
    thrust
        .map(|thrust| fitted(reaction, at.pipe, thrust, tallest).map_or(Length::from_si(LARGEST), |(width, ..)| width))
}

/// The height to which a wall usually reaches: higher up it finds made ground and services behind it.
fn tallest(drive: &Drive, reaction: &Reaction) -> Length {
    let floor = drive.site.launch.space.map_or(reaction.invert + drive.usual.floor, |space| space.floor);
    drive.usual.wall_share.value * floor
}

pub(in crate::method) fn level(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let wall = wall(at)?;
    calc.part(PART);
    let off = calc.doubted(|calc| {
        let (_, behind, _) = calc.take(wall.found);
        let law = ThrustEccentricity { thrust_depth: wall.stand.axis, reaction_depth: behind.centre };
        Band::same(calc.law(law))
    });
    let middle = Cited::new(wall.wall.height / SIXTH, Origin::Law(&THRUST_LEVEL));
    // Where the thrust lies outside the wall nothing holds it.
    let outside = at_most(Role::Offset, off, Cited::new(wall.wall.height / 2.0, Origin::Law(&THRUST_LEVEL)));
    Ok(at_most(Role::Offset, off, middle).as_screen().worse(outside.by(Rule::High)))
}

pub(in crate::method) fn movement(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    only(at.drive.service == Service::GravitySewer, NO_GRAVITY)?;
    let reaction = at.drive.reaction.as_ref().ok_or(Absent::Missing)?;
    let thrust = at.thrust_of_jacks().safe;
    // A wall that is asked for is pushed as hard as it may be; one that is told as hard as the jacks are set to, and moves less
    // where that is less.
    let (height, pushed) = match &at.wall {
        Some(found) if found.wall.movement_checked => {
            return Err(Absent::NotApplicable("the file says that its movement was checked apart"));
        }
        Some(found) => {
            let (bears, ..) = found.found.in_spite_of_doubt();
            let share = |force: Force| if force < bears { force / bears } else { Ratio::from(1.0) };
            (found.wall.height, thrust.in_spite_of_doubt().map(share))
        }
        None => {
            let tallest = tallest(at.drive, reaction);
            let width = asked_width(at, reaction, thrust, tallest).in_spite_of_doubt();
            (width.min(tallest), Band::same(Ratio::from(1.0)))
        }
    };
    calc.part(PART);
    let movement = calc.doubted(|calc| {
        calc.levels(pushed, |calc, pushed| {
            calc.law(PassiveMovement { share: reaction.movement.value / KEPT * pushed, height })
        })
    });
    let check = at_most(Role::Offset, movement, at.drive.tolerance).with_note(MOVEMENT);
    // Of a wall that nobody tells only its movement at the worst is known, and the line need not hang on it.
    let far = at.wall.is_none() && check.utilisation().is_some_and(|used| used > 2.0);
    Ok(if far {
        rated(Verdict::Within, at.drive.tolerance.origin).with_care(Care::Condition, CLEAR_OF_WALL)
    } else {
        check
    })
}

/// A wall that would do, where the file gives none.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct WallNeeded {
    /// Width.
    pub width: Length,
    /// Height: as the width, up to that which walls usually reach.
    pub height: Length,
    /// Depth of its top.
    pub top: Length,
    /// Greatest thrust, high.
    pub thrust: Force,
    /// Resistance over the likely thrust, at least.
    pub safety: Cited<Ratio>,
    /// Resistance over the high one.
    pub left: Ratio,
    /// Whether it is clay that bears by its strength.
    pub is_undrained: bool,
}

/// Widest wall that is looked for.
const LARGEST: f64 = 20.0;
/// Narrowest, a hair.
const LEAST: f64 = 1e-4;
/// Most widths that are tried: hardly ever more than six are.
const TRIES: usize = 60;
/// What a width may lack, as a share of it.
const CLOSE: f64 = 1e-12;

/// The wall that is asked for, with its middle behind the axis of the pipe: it bears the likely thrust of a scheme, or the
/// most that the jacks give, with the whole safety factor and the high one with what must be left of it; `None` where the ground behind is not known, a wall is given, or none of 20 m would do.
#[must_use]
pub fn wall_needed(drive: &Drive, pipe: &Pipe, scheme: &Scheme) -> Option<WallNeeded> {
    let reaction = drive.reaction.as_ref().filter(|reaction| reaction.wall.is_none())?;
    let of_jacks = scheme.thrust?.if_sure()?.map(|thrust| thrust.min(drive.rig.thrust.value));
    let (thrust, safety) = (of_jacks.high, reaction.safety);
    if !(thrust > Force::default()) {
        return None;
    }
    let tallest = tallest(drive, reaction);
    let asked = asked(Doubted::sure(of_jacks), safety.value, drive.leeway.set_on).in_spite_of_doubt().high;
    let (width, top, is_undrained) = fitted(reaction, pipe, asked, tallest)?;
    let left = safety.value * (asked / thrust);
    Some(WallNeeded { width, height: width.min(tallest), top, thrust, safety, left, is_undrained })
}

/// Width and top of the wall that bears a thrust with its middle behind the axis of the pipe, as high as it is wide up to
/// the tallest, and whether undrained clay bears less there; `None` where none of 20 m would do.
fn fitted(reaction: &Reaction, pipe: &Pipe, thrust: Force, tallest: Length) -> Option<(Length, Length, bool)> {
    let mut calc = Calc::silent();
    let safety = reaction.safety.value;
    let mut try_width = |width: f64| {
        let width = Length::from_si(width);
        let stand = Stand::of(reaction, &square(width, tallest), pipe);
        let (_, behind, is_undrained) = allowed(&mut calc, reaction, &stand);
        let law = WidthForThrust { thrust, safety, eye: behind.eye, width, resistance: behind.force };
        (calc.law(law).si(), stand.top, is_undrained)
    };
    let width = needing_no_other(|width| try_width(width).0)?;
    let (_, top, is_undrained) = try_width(width);
    Some((Length::from_si(width), top, is_undrained))
}

/// The width that needs no other, by a secant in logarithms, in which what a width needs is nearly a line; halved where
/// that leads out of what is left. `None` where the largest needs a larger one.
fn needing_no_other(mut needed: impl FnMut(f64) -> f64) -> Option<f64> {
    let mut lacking = |log: f64| needed(log.exp()).ln() - log;
    let (mut short, mut enough) = (LEAST.ln(), LARGEST.ln());
    let (mut before, mut lacked) = (enough, lacking(enough));
    if lacked > 0.0 {
        return None;
    }
    let mut log = before + lacked / 2.0;
    for _ in 0..TRIES {
        let lacks = lacking(log);
        if lacks.abs() <= CLOSE {
            break;
        }
        if lacks > 0.0 {
            short = log
        } else {
            enough = log
        }
        let next = log - lacks * (log - before) / (lacks - lacked);
        (before, lacked) = (log, lacks);
        log = if next > short && next < enough { next } else { (short + enough) / 2.0 };
    }
    Some(log.exp())
}
