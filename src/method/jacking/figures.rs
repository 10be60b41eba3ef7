//! Figures of a jacked pipe: what other schemes would allow, the angle that is allowed, slopes and offsets.

use super::{capacity, joint, steel};
use crate::drive::{Capacity, ConcreteEnd, ConcreteScheme, Drive, JackedPipe, Pipe, SteelEnd};
use crate::handbook::Method;
use crate::law::{Calc, Law};
use crate::laws::clay::ConcentricEndForce;
use crate::laws::concrete::MeanEndStress;
use crate::laws::packer::KernRadius;
use crate::laws::steering::{GapAtJointAngle, JointAngleFromGap};
use crate::laws::turned_joint::AngleAtForce;
use crate::laws::undulation::PeakSlope;
use crate::method::assess::assess;
use crate::method::figure::Figures;
use crate::quantity::{Area, Force, Pressure, Role};
use crate::source::{Cited, Origin};

const CHOSEN: &str = "the scheme that counts";
const UNIFORM: &str = "uniform bearing without eccentricity: shown, never used";
const UPPER: &str = "a building code's rule for a straight column without eccentricity: shown, never used";
const AT_PEAK: &str = "with the packer as tested, or else a mid-range board; ends out of square included";
const BEYOND_ADVICE: &str = "more than is advised at a joint: the check of the joint angle governs";
const OFF_AXIS: &str = "beyond it part of the first pipe's end lifts off; jacks and thrust ring must keep within it";

pub(in crate::method) fn figures(figures: &mut Figures, drive: &Drive, pipe: &Pipe, jacked: &JackedPipe) {
    match &jacked.capacity {
        Capacity::Concrete(end) => concrete(figures, pipe, jacked, end),
        Capacity::Steel(end) => of_steel(figures, end),
        _ => {}
    }
    turned(figures, drive, pipe, jacked);
    if let Some(inside_diameter) = jacked.inside_diameter {
        let kern = KernRadius { outside_diameter: pipe.outside_diameter.value, inside_diameter };
        figures.law("greatest offset of the jacking force from the axis", Role::Diameter, |_| kern);
        figures.note(OFF_AXIS);
    }
}

fn mean(force: Cited<Force>, end_bearing_area: Area) -> Cited<Pressure> {
    force.map(|force| MeanEndStress { force, end_bearing_area }.value())
}

/// Mean stress that each scheme allows, side by side.
fn concrete(figures: &mut Figures, pipe: &Pipe, jacked: &JackedPipe, end: &ConcreteEnd) {
    let turned = figures.calc.doubted(|calc| joint::turned(calc, pipe, jacked));
    let area = figures.calc.doubted(|calc| capacity::end_area(calc, jacked));
    let Some(area) = area.transpose() else { return };
    for (label, scheme) in [
        ("mean stress allowed by default", ConcreteScheme::Default),
        ("mean stress allowed by EN 1916", ConcreteScheme::En1916),
        ("mean stress allowed by ASCE 27", ConcreteScheme::Asce27),
        ("mean stress allowed by Chinese annex", ConcreteScheme::Annex),
        ("mean stress allowed by JSWAS A-6", ConcreteScheme::Jswas),
    ] {
        let by_scheme = figures.calc.doubted(|calc| {
            let angle = calc.take(turned).high.value;
            let bearing = Some(joint::Bearing { angle, stiffness: joint::Stiffness::Middle });
            capacity::concrete(calc, jacked, end, scheme, bearing)
        });
        if let Some(force) = by_scheme.transpose() {
            figures.put(label, Role::Strength, force.zip(area).map(|(force, area)| mean(force, area)));
            if scheme == end.scheme {
                figures.note(CHOSEN);
            }
        }
    }
    figures.add("mean stress by a guideline", Role::Strength, |calc| {
        let strength = end.strength.value;
        let end_bearing_area = calc.take(area);
        let force =
            end.shares.uniform.map(|factor| calc.law(ConcentricEndForce { end_bearing_area, strength, factor }));
        mean(force, end_bearing_area)
    });
    figures.note(UNIFORM);
}

fn of_steel(figures: &mut Figures, end: &SteelEnd) {
    let mut add = |label, allowed: fn(&mut Calc, &SteelEnd) -> Cited<Force>| {
        figures.add(label, Role::Strength, |calc| mean(allowed(calc, end), steel::section(calc, end)));
    };
    add("mean stress allowed by default", steel::default);
    add("mean stress allowed by Chinese annex", steel::annex);
    add("mean stress by a building code", |calc, end| steel::by_code(calc, end, end.yield_strength.value));
    figures.note(UPPER);
}

/// The angle allowed at the greatest force, and what the line and the ends add.
fn turned(figures: &mut Figures, drive: &Drive, pipe: &Pipe, jacked: &JackedPipe) {
    let force = assess(drive, pipe, Method::PipeJacking).force;
    let allowed = figures.calc.doubted(|calc| {
        let (area, force) = (capacity::end_area(calc, jacked)?, force?.high);
        joint::allowed_angle(calc, jacked, area, force, capacity::edge_stress(jacked)?)
    });
    if let Some(angle) = allowed.transpose() {
        let cited = angle.map(|angle| Cited::new(angle, Origin::Law(&AngleAtForce::EQUATION)));
        figures.put("joint angle allowed at the greatest force", Role::JointAngle, cited);
        figures.note(if angle.in_spite_of_doubt() > jacked.joint.steering.most.value {
            BEYOND_ADVICE
        } else {
            AT_PEAK
        });
    }
    let outside_diameter = pipe.outside_diameter.value;
    let turned = figures.calc.doubted(|calc| joint::turned(calc, pipe, jacked));
    if jacked.joint.steering.turns {
        figures.law("gap across the joint at its greatest angle", Role::Wall, |calc| {
            let angle = calc.take(turned).high.value;
            GapAtJointAngle { outside_diameter, angle }
        });
    }
    let steering = &jacked.joint.steering;
    if let Some(squareness) = steering.squareness {
        let gap = JointAngleFromGap { gap: squareness.value, outside_diameter };
        figures.law("joint angle of an end out of square", Role::JointAngle, |_| gap);
    }
    if let Some((amplitude, half_wave)) = steering.wave {
        let slope = PeakSlope { amplitude: amplitude.value, half_wave };
        figures.law("steepest slope that the wave adds to the line", Role::Slope, |_| slope);
    }
}
