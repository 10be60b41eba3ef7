//! What the pull asks of the site: room for the ramp, the face of the launch pit, ground that falls on the pipe.

use super::force::PullOnPipe;
use super::pulled::Pulled;
use super::section::NO_RAMP;
use crate::check::{Absent, Care, Outcome, Rule, Verdict, at_most, required};
use crate::conditions::{resisting_stress, undrained_resisting_stress};
use crate::drive::{Column, Pull};
use crate::law::{Calc, Doubted};
use crate::laws::pull_rules::GroundLoadPull;
use crate::laws::ramp::{RampLength, ShortestRamp};
use crate::laws::wall::{PassiveCoefficient, PassivePressure};
use crate::method::rules::{by_rig, can_be_held};
use crate::method::walked::Walked;
use crate::quantity::{Angle, Area, Band, Force, Length, Pressure, Ratio, Role};
use crate::source::Cited;

const UPPER_BOUND: &str = "upper bound, on rig, stem, link and pipe: the whole column of soil on the length that the \
    file names; a rescue pit there frees the string";
const DUG_FREE: &str = "upper bound: the rig stops at the limit, and a pit is dug over the string, as the file says";
const RAMP: &str = "no room is given: the ramp needs this much along the line; compared with what a street usually \
    leaves";
const ANCHOR: &str = "more than a usual plate on the pit face bears, which would have to be this large: anchor the rig by piles, a deadman \
    or the frame of the pit, designed for its pull; compared with twice the largest usual one";
/// Area over that of the largest usual plate up to which a rig is anchored instead: our judgement.
const ANCHORED: f64 = 2.0;
const PLATE: &str = "no plate is given: one this large is needed on the pit face; compared with the largest usual one";
const TOO_LONG: &str = "the ramp does not fit: a deeper trench, a smaller pipe, or strings joined in the pit";

pub(in crate::method) fn collapsed(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Pulled { pull, on_pipe, strength, rig, .. } = at.pulled()?;
    let collapsed = pull.works.collapsed.ok_or(Absent::Missing)?;
    calc.part("ground on the pipe");
    let outside_diameter = at.pipe.outside_diameter.value;
    let load = calc.law(GroundLoadPull {
        unit_weight: collapsed.unit_weight,
        cover: (collapsed.depth - outside_diameter).max(Length::default()),
        outside_diameter,
        collapsed_length: collapsed.length,
        friction: collapsed.friction,
    });
    let lesser = |most: Cited<Force>, other: Option<Cited<Force>>| match other {
        Some(other) if other.value < most.value => other,
        _ => most,
    };
    let held = strength.borne.straight.map(|most| {
        let most = lesser(most, pull.works.head_rating);
        lesser(most, pull.works.weak_link)
    });
    let with_load = |pull: Doubted<Band<Force>>| pull.map(|pull| pull.map(|pull| pull + load));
    let on_pipe = at_most(Role::Pull, with_load(on_pipe.map(PullOnPipe::peak)), held);
    let rated = lesser(at.drive.rig.pull, at.drive.stem.joint_pull);
    let on_rig = rig.map(with_load).check(|pull| at_most(Role::Pull, pull, rated));
    // An upper bound bars nothing.
    let check = on_pipe.by(Rule::High).worse(on_rig.by(Rule::High)).by_habit().with_note(UPPER_BOUND);
    let freed = at.drive.is_dug_free();
    Ok(match check.verdict() {
        Verdict::Within => check,
        _ if freed && can_be_held(&check, at.drive.leeway.held) => {
            check.by(Rule::Screen).with_care(Care::Condition, DUG_FREE)
        }
        _ => check.settled_by(&[&["if_stalled"]]),
    })
}

pub(in crate::method) fn reaction(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let pulled = at.pulled()?;
    let all = by_rig(at.drive, pulled.all());
    if let Some(reaction) = pulled.pull.works.reaction {
        let pressure = all.map(|rig| rig.map(|rig| rig.map(|force| force / reaction.area)));
        return Ok(pressure.check(|pressure| at_most(Role::Pressure, pressure, reaction.allowable)));
    }
    let stretch = at.drive.stretches.first().ok_or(Absent::Missing)?;
    calc.part("launch pit face");
    let (usual, left) = (&pulled.pull.works.usual, at.drive.leeway.set_on);
    let depth = at.drive.site.launch.invert - at.pipe.outside_diameter.value / 2.0;
    let clay = stretch.earth.strength.map(|strength| strength.ends.low);
    let area = calc.doubted(|calc| {
        let allowed = passive(calc, stretch.light(), clay, depth);
        let force = calc.take(all.safe);
        // As a plate that is told would be judged.
        Band::same((force.likely * usual.plate_safety).max(force.high * left) / allowed)
    });
    // What no plate on the face bears is anchored, as far as rigs in pits usually are.
    let [area_of, most] = [area.in_spite_of_doubt().high, usual.plate.value];
    if area_of > most && area_of <= ANCHORED * most {
        let anchored = usual.plate.map(|plate| ANCHORED * plate);
        return Ok(required(Role::GroundArea, area, anchored).with_note(ANCHOR));
    }
    Ok(required(Role::GroundArea, area, usual.plate).with_note(PLATE).at_best(required(
        Role::GroundArea,
        Area::default(),
        usual.plate,
    )))
}

/// What the ground may press back at a depth: drained, or undrained where that is less.
fn passive(calc: &mut Calc, column: Column<'_>, clay: Option<Pressure>, depth: Length) -> Pressure {
    let friction_angle = column.soil.at_pipe().map_or(Angle::default(), |layer| layer.friction_angle);
    let coefficient = calc.law(PassiveCoefficient { friction_angle });
    let vertical_stress = resisting_stress(calc, column, depth);
    let drained = calc.law(PassivePressure { vertical_stress, coefficient, cohesion: Pressure::default() });
    let Some(cohesion) = clay else { return drained };
    let vertical_stress = undrained_resisting_stress(calc, column, depth);
    drained.min(calc.law(PassivePressure { vertical_stress, coefficient: Ratio::from(1.0), cohesion }))
}

pub(in crate::method) fn ramp_room(at: &Walked<'_>, calc: &mut Calc) -> Outcome {
    let Pulled { pull, strength, .. } = at.pulled()?;
    let radius = strength.borne.radius.ok_or(Absent::NotApplicable(NO_RAMP))?;
    calc.part("ramp");
    let length = calc.doubted(|calc| {
        let radius = calc.take(radius);
        Band::same(ramp(calc, pull, radius))
    });
    let Some(room) = pull.works.ramp_room else {
        return Ok(required(Role::Distance, length, pull.works.usual.ramp).with_note(RAMP));
    };
    let check = at_most(Role::Distance, length, room).by(Rule::High);
    Ok(if check.verdict() == Verdict::Within { check } else { check.with_note(TOO_LONG) })
}

/// Length of the ramp from the ground down to the invert at the reception pit.
pub(super) fn ramp(calc: &mut Calc, pull: &Pull, radius: Length) -> Length {
    let (depth, angle) = (pull.works.ramp_depth, pull.ramp);
    // A shallow ramp is two arcs that meet before they have turned that far.
    let arcs = 2.0 * radius * (1.0 - angle.cos().value);
    if depth >= arcs && angle > Angle::default() {
        calc.law(RampLength { depth, radius, angle })
    } else {
        calc.law(ShortestRamp { depth, radius })
    }
}
