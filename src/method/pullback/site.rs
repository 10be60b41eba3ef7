//! What the pull asks of the site: room for the ramp, the face of the launch pit, ground that falls on the pipe, and
//! the pressure that the ground may bear.

use super::force::annular;
use super::in_place::NO_WEIGHT;
use super::pulled::Pulled;
use super::section::{DRY, NO_RAMP};
use crate::check::{Absent, Outcome, Verdict, at_most, only, rated};
use crate::conditions::{Plan, vertical_stress};
use crate::drive::{HoleState, Pipe, Pull, Stretch};
use crate::handbook::GroundClass;
use crate::law::{Calc, Doubted, Recorder};
use crate::laws::fracture::{CavityPressure, FluidPressureLimit, StrainLimitedRadius};
use crate::laws::outside_pressure::NetOutsidePressure;
use crate::laws::pull_rules::GroundLoadPull;
use crate::laws::ramp::{RampLength, ShortestRamp};
use crate::method::walked::Walked;
use crate::quantity::{Angle, Band, Length, Pressure, Role};
use crate::source::Cited;

const UPPER_BOUND: &str = "upper bound: the whole column of soil on the length that the file names";
const TOO_LONG: &str = "the ramp does not fit: a deeper trench, a smaller pipe, or strings joined in the pit";
const NO_RETURNS: &str =
    "with the pressure in the annulus of the drag, since no flow is given; fluid up to the ground there or at a pit";
const CAP_ALONE: &str = "against the total stress of the ground alone: give shear_modulus, which may allow less";
const CAP_ELSEWHERE: &str =
    "here with its stiffness, elsewhere against the total stress of the ground alone: give shear_modulus there too";
const PART: &str = "of the stretches whose soil is told: elsewhere the fluid is not looked at";
const PART_BY_CAP: &str = "of the stretches whose soil is told, some by the total stress of the ground alone: give the soil \
                           of all, and shear_modulus";
const RETURNS: &str = "with the loss of the flow over the whole length; fluid up to the ground there or at a pit";

pub(in crate::method) fn collapsed<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let Pulled { pull, on_pipe, strength, .. } = at.pulled()?;
    let collapsed = pull.works.collapsed.ok_or(Absent::Missing)?;
    calc.part("ground on the pipe");
    let loaded = calc.doubted(|calc| {
        let outside_diameter = at.pipe.outside_diameter.value;
        let load = calc.law(GroundLoadPull {
            unit_weight: collapsed.unit_weight,
            cover: (collapsed.depth - outside_diameter).max(Length::default()),
            outside_diameter,
            collapsed_length: collapsed.length,
            friction: collapsed.friction,
        });
        calc.take(*on_pipe).peak().map(|pull| pull + load)
    });
    Ok(at_most(Role::Pull, loaded, strength.borne.straight).with_note(UPPER_BOUND))
}

pub(in crate::method) fn reaction(at: &Walked<'_>) -> Outcome {
    let pulled = at.pulled()?;
    let reaction = pulled.pull.works.reaction.ok_or(Absent::Missing)?;
    let pressure = pulled.all().map(|rig| rig.map(|force| force / reaction.area));
    Ok(at_most(Role::Pressure, pressure, reaction.allowable))
}

pub(in crate::method) fn ramp_room<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let Pulled { pull, strength, .. } = at.pulled()?;
    let radius = strength.borne.radius.ok_or(Absent::NotApplicable(NO_RAMP))?;
    let room = pull.works.ramp_room.ok_or(Absent::Missing)?;
    calc.part("ramp");
    let length = calc.doubted(|calc| {
        let radius = calc.take(radius);
        Band::same(ramp(calc, pull, radius))
    });
    let check = at_most(Role::Distance, length, room);
    let fits = check.verdict == Verdict::Within;
    Ok(if fits { check } else { check.with_note(TOO_LONG) })
}

/// Length of the ramp from the ground down to the invert at the reception pit.
pub(super) fn ramp<R: Recorder>(calc: &mut Calc<R>, pull: &Pull, radius: Length) -> Length {
    let (depth, angle) = (pull.works.ramp_depth, pull.ramp);
    // A shallow ramp is two arcs that meet before they have turned that far.
    let arcs = 2.0 * radius * (1.0 - angle.cos().value);
    if depth >= arcs && angle > Angle::default() {
        calc.law(RampLength { depth, radius, angle })
    } else {
        calc.law(ShortestRamp { depth, radius })
    }
}

/// The place where the fluid comes nearest to what the ground is allowed, of both ends of each stretch and where the
/// surface breaks between; absent where no stretch tells its soil, and never a plain pass where some do not.
pub(in crate::method) fn break_out<R: Recorder>(at: &Walked<'_>, calc: &mut Calc<R>) -> Outcome {
    let Plan { drive, pipe, .. } = **at;
    let pull = at.pulled()?.pull;
    only(pull.works.hole == HoleState::Fluid, DRY)?;
    calc.part("break-out of the bore fluid");
    let mut worst: Option<Place> = None;
    let (mut by_cap, mut in_part, mut unweighed) = (false, false, false);
    let (slope, pits) = (drive.grade.value.tan(), [&drive.site.launch, &drive.site.reception]);
    // Over the invert at the launch pit. The bore is open at the pits: fluid stands no higher than their ground.
    let [launch, reception] = pits.map(|pit| pit.invert);
    let top = launch.max(drive.length.value * slope + reception);
    for stretch in &drive.stretches {
        if stretch.soil.is_none() {
            in_part = true;
            continue;
        }
        for (at, invert) in &stretch.way.points {
            let axis = (*invert - pipe.outside_diameter.value / 2.0).max(Length::default());
            let Some(Allowed { limit, cap_alone }) = allowed(calc, stretch, axis, pipe, pull) else {
                unweighed = true;
                continue;
            };
            by_cap |= cap_alone;
            let height = axis.max(top - *at * slope - pipe.outside_diameter.value / 2.0);
            let pressure = calc.doubted(|calc| {
                let lost = annular(calc, drive, pipe, pull);
                let mut column = |density, added| {
                    calc.law(NetOutsidePressure { density, height, added, inside: Pressure::default() })
                };
                Band {
                    low: column(pull.fluids.light, lost.low),
                    likely: column(pull.fluids.clean, lost.likely),
                    high: column(pull.fluids.heavy, lost.high),
                }
            });
            let both = pressure.zip(limit).map(|(pressure, limit)| (pressure.high / limit).value);
            let used = both.in_spite_of_doubt();
            let used = (both.doubt().is_some(), if used.is_nan() { f64::INFINITY } else { used });
            if worst.as_ref().is_none_or(|worst| used > worst.used) {
                worst = Some(Place { used, pressure, limit, cap_alone });
            }
        }
    }
    let origin = pull.works.break_out.cap.origin;
    let Some(Place { pressure, limit, cap_alone, .. }) = worst else {
        let open = rated(Verdict::NotDecided, origin).with_note(NO_WEIGHT);
        return if unweighed { Ok(open) } else { Err(Absent::Missing) };
    };
    let limit = limit.map(|limit| Cited::new(limit, origin));
    let check = at_most(Role::Pressure, pressure, limit).as_screen();
    Ok(match (in_part, by_cap) {
        _ if unweighed => check.undecided(NO_WEIGHT),
        (true, true) => check.as_caution(PART_BY_CAP),
        (true, false) => check.as_caution(PART),
        (false, true) => check.as_caution(if cap_alone { CAP_ALONE } else { CAP_ELSEWHERE }),
        (false, false) => check.with_note(if pull.works.returns.is_some() { RETURNS } else { NO_RETURNS }),
    })
}

/// Fluid and what the ground is allowed, at one place.
struct Place {
    /// Whether there is doubt, and the share that is used at the high level.
    used: (bool, f64),
    pressure: Doubted<Band<Pressure>>,
    limit: Doubted<Pressure>,
    cap_alone: bool,
}

/// What the ground is allowed to bear at one place.
struct Allowed {
    limit: Doubted<Pressure>,
    /// The stiffness of the ground is not known: the cap on its total stress stands alone.
    cap_alone: bool,
}

/// At a depth of the axis; `None` where the weight of the ground over it is not known.
fn allowed<R: Recorder>(
    calc: &mut Calc<R>,
    stretch: &Stretch,
    depth: Length,
    pipe: &Pipe,
    pull: &Pull,
) -> Option<Allowed> {
    let at = stretch.column()?;
    let soil = at.soil;
    let bore_radius = pipe.bore.value / 2.0;
    let stress = vertical_stress(calc, at, depth)?;
    let undrained = soil.undrained.filter(|undrained| undrained.strength > Pressure::default());
    // Clay is loaded faster than it drains: total stress, no friction; three shear moduli are one undrained modulus.
    let (effective_stress, friction_angle, cohesion, stiffness) = match undrained {
        Some(clay) => {
            let modulus = soil.shear_modulus.or(clay.modulus.map(|modulus| modulus / 3.0));
            (stress.total, Angle::default(), clay.strength, modulus)
        }
        None => (stress.effective, soil.at_pipe()?.friction_angle, Pressure::default(), soil.shear_modulus),
    };
    let pore_pressure = stress.total - effective_stress;
    let rule = &pull.works.break_out;
    let Some(shear_modulus) = stiffness else {
        let limit = Doubted::sure(rule.cap.value * stress.total);
        return Some(Allowed { limit, cap_alone: true });
    };
    let granular =
        matches!(stretch.class, GroundClass::LooseSand | GroundClass::MediumToDenseSand | GroundClass::Gravel);
    let limit = calc.doubted(|calc| {
        let strain = rule.strain;
        let plastic_radius = calc.law(StrainLimitedRadius {
            bore_radius,
            strain,
            effective_stress,
            friction_angle,
            cohesion,
            shear_modulus,
        });
        let cavity = calc.law(CavityPressure {
            effective_stress,
            pore_pressure,
            friction_angle,
            cohesion,
            shear_modulus,
            bore_radius,
            plastic_radius: plastic_radius.min(depth),
        });
        calc.law(FluidPressureLimit {
            cavity,
            safety: if granular { rule.margin_sand } else { rule.margin_other },
            cap: rule.cap.value,
            total_stress: stress.total,
        })
    });
    Some(Allowed { limit, cap_alone: false })
}
