//! What a pipe with restrained joints bears: its joint sets the pull, and the deflection of the joint the radius.

use super::force::PullOnPipe;
use super::pvc;
use super::section::{Bend, Borne, RADIUS_TAKEN, Section, has_ramp, on_ramp};
use crate::check::{Check, Subject};
use crate::drive::{BY_ITS_MAKER, Barrel, JointPull, JointedPipe, Pipe, Pull, PvcPipe};
use crate::law::{Calc, Doubted, Law, Recorder};
use crate::laws::pe::AllowableTension;
use crate::laws::pull_limits::{JointThrustRating, TensionBesideBend};
use crate::laws::steering::CurveRadius;
use crate::method::scheme::Scheme;
use crate::quantity::{Force, Length, Measure, Ratio, Role};
use crate::source::{Cited, Origin};

const FALLBACK: &str = "no pull by the joint's maker: the thrust of its pressure rating stands in for it";

pub(super) fn checks<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    jointed: &JointedPipe,
    pull: &Pull,
    on_pipe: &Doubted<PullOnPipe>,
    scheme: &mut Scheme,
) -> Borne {
    let peak = on_pipe.map(PullOnPipe::peak);
    calc.part("allowable tension");
    let joint = holds(calc, pipe, jointed);
    let joint = match &jointed.barrel {
        Barrel::Pvc(barrel) => warm_and_whole(calc, pipe, barrel, pull, joint),
        Barrel::Iron { .. } => joint,
    };
    let check = Check::at_most(Subject::Tension, Role::Pull, peak, joint);
    scheme.checks.add(match jointed.pull {
        JointPull::Rated(_) | JointPull::NotGiven => check,
        JointPull::Thrust { .. } => check.with_note(FALLBACK),
    });
    let joint_radius = jointed.deflection.map(|(deflection, pipe_length)| {
        let radius = calc.doubted(|calc| calc.law(CurveRadius { pipe_length, angle: deflection.value }));
        radius.map(|radius| Cited::new(radius, deflection.origin))
    });
    let mut beside_bend = joint.map(|joint| joint.value);
    let radius = match &jointed.barrel {
        Barrel::Pvc(barrel) => {
            let section = Section::scored(calc, pipe.outside_diameter.value, barrel.wall.value, pull);
            let stress = pvc::allowable(calc, barrel);
            let bend = pvc::bent(calc, section, barrel, pull, stress).map(|mut bend| {
                // A string of stiff pipes turns at its joints, no tighter than they let it.
                if let Some(joint) = joint_radius.filter(|joint| joint.value.value > bend.value.smallest) {
                    bend.value.smallest = joint.value.value;
                    if pull.bend_radius.is_none() {
                        bend.value.radius = bend.value.radius.max(joint.value.value);
                    }
                }
                bend
            });
            let ramp = on_ramp(calc, section, on_pipe, bend);
            if let Some(bend) = bend {
                scheme.checks.add(Check::at_most(Subject::TensionAndBending, Role::Strength, ramp, stress));
                let origin = joint_radius.map_or(barrel.bend_ratio.origin, |joint| joint.value.origin);
                scheme.checks.add(Bend::check(bend, pull, Cited::new(bend.value.smallest, origin)));
            }
            let radius = bend.map(|bend| bend.value.radius);
            let ring = pvc::ring(calc, section, barrel, radius, stress);
            if let Some(check) = ring.collapse(calc, pull, on_pipe, ramp) {
                scheme.checks.add(check.with_note(pvc::BOTH_MODULI));
            }
            if let Some(bend) = bend {
                let Section { outside_diameter, wall } = section;
                let (allowable, modulus, radius) = (stress.value.value, barrel.modulus, bend.value.radius);
                let law = TensionBesideBend { allowable, modulus, outside_diameter, wall, radius };
                let barrel = calc.doubted(|calc| calc.law(law));
                beside_bend = Doubted {
                    value: beside_bend.value.min(barrel.value),
                    doubt: beside_bend.doubt.or(barrel.doubt).or(stress.doubt),
                };
            }
            radius
        }
        Barrel::Iron { .. } => joint_radius.filter(|_| has_ramp(pull)).map(|joint| iron_radius(pull, joint, scheme)),
    };
    Borne { straight: joint, beside_bend, radius }
}

/// A joint of PVC loses with temperature as its barrel does, and the barrel may bear less than the joint.
fn warm_and_whole<R: Recorder>(
    calc: &mut Calc<R>,
    pipe: &Pipe,
    barrel: &PvcPipe,
    pull: &Pull,
    joint: Doubted<Cited<Force>>,
) -> Doubted<Cited<Force>> {
    let Section { outside_diameter, wall } =
        Section::scored(calc, pipe.outside_diameter.value, barrel.wall.value, pull);
    let stress = pvc::allowable(calc, barrel);
    let both = calc.doubted(|calc| {
        let weld_factor = Ratio::from(1.0);
        let whole =
            stress.value.map(|stress| calc.law(AllowableTension { stress, outside_diameter, wall, weld_factor }));
        let one = Ratio::from(1.0);
        let warm = pvc::temperature_factor(calc, barrel).min(one);
        let joint = joint.value.map(|joint| if joint.is_finite() { warm * joint } else { joint });
        if whole.value < joint.value { whole } else { joint }
    });
    Doubted { value: both.value, doubt: both.doubt.or(joint.doubt).or(stress.doubt) }
}

/// An iron barrel does not bend: the ramp is as wide as its joints ask.
fn iron_radius(pull: &Pull, joint: Doubted<Cited<Length>>, scheme: &mut Scheme) -> Length {
    let radius = pull.bend_radius.map_or(joint.value.value, |given| given.value);
    let check = Check::at_least(Subject::BendRadius, Role::Distance, radius, joint.value).in_doubt(joint.doubt);
    scheme.checks.add(if pull.bend_radius.is_none() { check.with_note(RADIUS_TAKEN) } else { check });
    radius
}

/// What the joint holds.
fn holds<R: Recorder>(calc: &mut Calc<R>, pipe: &Pipe, jointed: &JointedPipe) -> Doubted<Cited<Force>> {
    match jointed.pull {
        JointPull::Rated(force) => Doubted::sure(force),
        // Nothing is decided by it: see `not_given`.
        JointPull::NotGiven => Doubted::sure(Cited::new(Force::from_si(f64::INFINITY), BY_ITS_MAKER)),
        JointPull::Thrust { pressure, deflection_factor } => calc.doubted(|calc| {
            let outside_diameter = pipe.outside_diameter.value;
            let law = JointThrustRating { rated_pressure: pressure, outside_diameter, deflection_factor };
            Cited::new(calc.law(law), Origin::Law(&JointThrustRating::EQUATION))
        }),
    }
}
