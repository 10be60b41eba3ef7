//! The joint of a jacked pipe: how far it turns, and what a packer makes of it.

use crate::drive::{JackedPipe, Packer, PackerModulus, Pipe};
use crate::law::Calc;
use crate::laws::packer::{RingArea, RingOutside};
use crate::laws::steering::{
    HighJointAngle, JointAngleFromDeviation, JointAngleFromGap, JointAngleFromRadius, LeastRadiusOfUndulation,
    LikelyJointAngle,
};
use crate::laws::turned_joint::{AngleAtForce, StressRatioAtAngle};
use crate::quantity::{Angle, Area, Force, Length, Pressure, Ratio};
use crate::source::Cited;

/// Angle at a joint, likely and high.
#[derive(Debug, Clone, Copy)]
pub(in crate::method) struct Turned {
    /// What the line alone turns it by.
    pub(in crate::method) line: Angle,
    pub(in crate::method) likely: Angle,
    pub(in crate::method) high: Cited<Angle>,
}

/// Angle at the joints.
///
/// A measured gap holds all; else the curve and what leaves its line add up, never to less than the least angle of the
/// table, and the two ends out of square come on top.
pub(super) fn turned(calc: &mut Calc, pipe: &Pipe, jacked: &JackedPipe) -> Turned {
    let steering = &jacked.joint.steering;
    let outside_diameter = pipe.outside_diameter.value;
    let line = line(calc, jacked);
    let mut turned = Turned { line: line.value, likely: line.value, high: line };
    if let Some(squareness) = steering.squareness {
        let end = calc.law(JointAngleFromGap { gap: squareness.value, outside_diameter });
        let line = line.value;
        turned.likely = calc.law(LikelyJointAngle { line, squareness: end });
        let high = calc.law(HighJointAngle { line, squareness: end });
        let origin = if end > line { squareness.origin } else { turned.high.origin };
        turned.high = Cited::new(high, origin);
    }
    if let Some(gap) = steering.joint_gap {
        let measured = gap.map(|gap| calc.law(JointAngleFromGap { gap, outside_diameter }));
        let (likely, high) = (turned.likely.max(measured.value), larger(turned.high, measured));
        turned = Turned { line: turned.line.max(measured.value), likely, high };
    }
    turned
}

/// What the line of the drive turns a joint by.
fn line(calc: &mut Calc, jacked: &JackedPipe) -> Cited<Angle> {
    let steering = &jacked.joint.steering;
    if !steering.turns {
        return Cited::new(Angle::default(), steering.least.origin);
    }
    let (short, long) = steering.pipe_length.unwrap_or_default();
    let mut line = steering.least;
    if let Some(deviation) = steering.deviation {
        let law = |deviation| JointAngleFromDeviation { deviation, pipe_length: short };
        line = larger(line, deviation.map(|deviation| calc.law(law(deviation))));
    }
    if let Some((amplitude, half_wave)) = steering.wave
        && amplitude.value > Length::default()
    {
        let radius = calc.law(LeastRadiusOfUndulation { amplitude: amplitude.value, half_wave });
        line = larger(line, amplitude.map(|_| calc.law(JointAngleFromRadius { pipe_length: long, radius })));
    }
    if let Some(radius) = steering.curve_radius {
        let curve = calc.law(JointAngleFromRadius { pipe_length: long, radius: radius.value });
        line = Cited::new(curve + line.value, if curve > line.value { radius.origin } else { line.origin });
    }
    steering.joint_angle.map_or(line, |given| larger(line, given))
}

fn larger(one: Cited<Angle>, other: Cited<Angle>) -> Cited<Angle> {
    if other.value > one.value { other } else { one }
}

/// How stiff a packer is taken.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Stiffness {
    /// By its test, else in the middle of what boards are.
    Middle,
    /// The same, where the allowed mean stress is high.
    Pressed,
    /// By its test, else at the stiff end.
    Stiff,
}

fn modulus(packer: &Packer, stiffness: Stiffness) -> Pressure {
    match (packer.modulus, stiffness) {
        (PackerModulus::Tested(modulus), _) => modulus.value,
        (PackerModulus::Assumed { middle, .. }, Stiffness::Middle) => middle.value,
        (PackerModulus::Assumed { pressed, .. }, Stiffness::Pressed) => pressed.value,
        (PackerModulus::Assumed { stiff, .. }, Stiffness::Stiff) => stiff.value,
    }
}

/// Outside and inside diameter of the ring that bears: as told, else from the bore on, or up to the outside of the pipe,
/// as wide as the end bears.
fn ring(calc: &mut Calc, packer: &Packer, area: Area) -> (Length, Length) {
    match (packer.outside_diameter, packer.inside_diameter) {
        (Some(outside), Some(inside)) => (outside, inside),
        (None, Some(inside_diameter)) => {
            (calc.law(RingOutside { inside_diameter, area }).min(packer.pipe), inside_diameter)
        }
        (outside, None) => {
            let outside_diameter = outside.unwrap_or(packer.pipe);
            let full = calc.law(RingArea { outside_diameter, inside_diameter: Length::default() });
            (outside_diameter, outside_diameter * (1.0 - (area / full).value.min(1.0)).sqrt())
        }
    }
}

/// What a joint lets an end bear.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bearing {
    pub(super) angle: Angle,
    pub(super) stiffness: Stiffness,
}

/// Mean over greatest stress at a stress allowed at the edge, as told or by the packer; 1 where neither is.
pub(super) fn stress_ratio(
    calc: &mut Calc,
    jacked: &JackedPipe,
    area: Area,
    bearing: Option<Bearing>,
    greatest_stress: Pressure,
) -> Ratio {
    if let Some(told) = jacked.joint.stress_ratio {
        return told.value;
    }
    let (Some(packer), Some(Bearing { angle, stiffness })) = (&jacked.joint.packer, bearing) else {
        return Ratio::from(1.0);
    };
    let (outside_diameter, inside_diameter) = ring(calc, packer, area);
    let (thickness, modulus) = (packer.thickness, modulus(packer, stiffness));
    calc.law(StressRatioAtAngle { outside_diameter, inside_diameter, thickness, modulus, greatest_stress, angle })
}

/// Angle at which the force would just be allowed; `None` without a packer, or where the file tells what the joint leaves.
pub(super) fn allowed_angle(
    calc: &mut Calc,
    jacked: &JackedPipe,
    end_area: Area,
    force: Force,
    greatest_stress: Pressure,
) -> Option<Angle> {
    let packer = jacked.joint.packer.filter(|_| jacked.joint.stress_ratio.is_none())?;
    let (outside_diameter, inside_diameter) = ring(calc, &packer, end_area);
    // The law works on the ring of the packer; the stress is that of the end.
    let ring = calc.law(RingArea { outside_diameter, inside_diameter });
    let force = force * (ring / end_area);
    let (thickness, modulus) = (packer.thickness, modulus(&packer, Stiffness::Middle));
    Some(calc.law(AngleAtForce { outside_diameter, inside_diameter, thickness, modulus, greatest_stress, force }))
}
