//! What a pipe with restrained joints bears: its joint sets the pull, and the deflection of the joint the radius.

use super::force::{OnPipe, PullOnPipe, Pulling};
use super::pvc;
use super::section::{self, Bend, Borne, Section, Strength, bent, has_ramp, ramp_radius};
use crate::check::at_most;
use crate::drive::{BY_ITS_MAKER, Barrel, Ends, JointPull, JointedPipe, Pipe, Pull, PvcPipe};
use crate::law::{Calc, Doubted, Law};
use crate::laws::pull_limits::JointThrustRating;
use crate::laws::steering::CurveRadius;
use crate::quantity::{Force, Length, Measure, Pressure, Ratio, Role};
use crate::source::{Cited, Origin};

const FALLBACK: &str = "no pull by the joint's maker: the thrust of its pressure rating stands in for it";

pub(super) fn of(
    calc: &mut Calc,
    at: Pulling<'_>,
    (jointed, at_best): (&JointedPipe, bool),
    on_pipe: &OnPipe,
) -> Strength {
    let Pulling { pipe, pull, .. } = at;
    calc.part("allowable tension");
    let borne = |calc: &mut Calc, best| {
        let joint = holds(calc, pipe, jointed, best);
        match &jointed.barrel {
            Barrel::Pvc(barrel) => warm_and_whole(calc, pipe, barrel, pull, joint),
            Barrel::Iron(_) => joint,
        }
    };
    let joint = borne(calc, at_best);
    let against = |joint| at_most(Role::Pull, on_pipe.map(PullOnPipe::in_wall), joint);
    let check = against(joint);
    let check = match jointed.pull {
        JointPull::Rated(_) | JointPull::NotGiven => check,
        JointPull::Thrust { deflection_factor: Ends { low, high }, .. } if low < high => {
            let best = against(borne(&mut Calc::silent(), true));
            check.at_best(best).with_note(FALLBACK).settled_by(&[&["candidates[].joint_deflection_factor"]])
        }
        JointPull::Thrust { .. } => check.with_note(FALLBACK),
    };
    let joint_radius = jointed.deflection.map(|(deflection, pipe_length)| {
        let radius = calc.doubted(|calc| calc.law(CurveRadius { pipe_length, angle: deflection.value }));
        radius.map(|radius| Cited::new(radius, deflection.origin))
    });
    match &jointed.barrel {
        Barrel::Pvc(barrel) => {
            let section = Section::scored(calc, pipe.outside_diameter.value, barrel.wall.value, pull);
            let stress = pvc::allowable(calc, barrel);
            let bend = pvc::bend(calc, section, barrel, pull, stress).map(|bend| match joint_radius {
                Some(joint) => bend.zip(joint).map(|(bend, joint)| no_tighter(bend, joint.value, pull)),
                None => bend,
            });
            let origin = joint_radius.map_or(barrel.bend_ratio.origin, |joint| joint.in_spite_of_doubt().origin);
            let borne = Borne::of(calc, section, pull, joint, (stress, Doubted::sure(barrel.modulus)), bend);
            let beside_bend = joint.zip(borne.beside_bend).map(|(joint, barrel)| joint.value.min(barrel));
            let strength = Strength::of(Borne { beside_bend, ..borne }, check);
            pvc::bends(calc, (section, barrel, origin), pull, on_pipe, (stress, bend), strength)
        }
        Barrel::Iron(_) => {
            let joint_radius = joint_radius.filter(|_| has_ramp(pull));
            let bend = joint_radius.map(|joint| joint.map(|joint| iron_bend(pull, joint.value)));
            let beside_bend = joint.map(|joint| joint.value);
            let borne = Borne { straight: joint, beside_bend, radius: ramp_radius(pull, bend) };
            let origin = joint_radius.map_or(BY_ITS_MAKER, |joint| joint.in_spite_of_doubt().origin);
            let radius = bent(bend, |bend| Bend::check(bend, pull, origin));
            Strength { radius, ..Strength::of(borne, check) }
        }
    }
}

/// A string of stiff pipes turns at its joints, no tighter than they let it.
fn no_tighter(bend: Bend, joint: Length, pull: &Pull) -> Bend {
    let radius = if pull.bend_radius.is_none() { bend.radius.max(joint) } else { bend.radius };
    Bend { radius, smallest: bend.smallest.max(joint), ..bend }
}

/// A joint of PVC loses with temperature as its barrel does, and the barrel may bear less than the joint.
fn warm_and_whole(
    calc: &mut Calc,
    pipe: &Pipe,
    barrel: &PvcPipe,
    pull: &Pull,
    joint: Doubted<Cited<Force>>,
) -> Doubted<Cited<Force>> {
    let section = Section::scored(calc, pipe.outside_diameter.value, barrel.wall.value, pull);
    let stress = pvc::allowable(calc, barrel);
    calc.doubted(|calc| {
        let whole = section::tension(calc, section, stress, Ratio::from(1.0));
        let whole = calc.take(whole);
        let warm = pvc::temperature_factor(calc, barrel).min(Ratio::from(1.0));
        let joint = calc.take(joint).map(|joint| if joint.is_finite() { warm * joint } else { joint });
        if whole.value < joint.value { whole } else { joint }
    })
}

/// An iron barrel does not bend: the ramp is as wide as its joints ask.
fn iron_bend(pull: &Pull, joint: Length) -> Bend {
    let radius = pull.bend_radius.map_or(joint, |given| given.value);
    Bend { radius, smallest: joint, stress: Pressure::default() }
}

/// What the joint holds.
fn holds(calc: &mut Calc, pipe: &Pipe, jointed: &JointedPipe, best: bool) -> Doubted<Cited<Force>> {
    match jointed.pull {
        JointPull::Rated(force) => Doubted::sure(force),
        // Nothing is decided by it: see `not_given`.
        JointPull::NotGiven => Doubted::sure(Cited::new(Force::from_si(f64::INFINITY), BY_ITS_MAKER)),
        JointPull::Thrust { pressure, deflection_factor } => calc.doubted(|calc| {
            let outside_diameter = pipe.outside_diameter.value;
            let deflection_factor = if best { deflection_factor.high } else { deflection_factor.low };
            let law = JointThrustRating { rated_pressure: pressure, outside_diameter, deflection_factor };
            Cited::new(calc.law(law), Origin::Law(&JointThrustRating::EQUATION))
        }),
    }
}
