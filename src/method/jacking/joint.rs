//! The joint of a jacked pipe: how far it turns, and what a packer makes of it.

use crate::drive::{JackedPipe, Packer, Pipe};
use crate::law::{Calc, Recorder};
use crate::laws::packer::ResidualThickness;
use crate::laws::steering::{
    JointAngleFromDeviation, JointAngleFromGap, JointAngleFromRadius, LeastRadiusOfUndulation,
};
use crate::laws::turned_joint::{AngleAtForce, StressRatioAtAngle};
use crate::quantity::{Angle, Area, Force, Length, Pressure, Ratio};
use crate::source::Cited;

/// Greatest angle at a joint; `None` where neither packer nor steering is given, so that nothing is known of it.
///
/// A measured gap holds all; else the curve, what leaves its line, and the ends out of square add up. Never less than the
/// least angle of the table, on a straight line too.
pub(super) fn angle<R: Recorder>(calc: &mut Calc<R>, pipe: &Pipe, jacked: &JackedPipe) -> Option<Cited<Angle>> {
    let steering = &jacked.joint.steering;
    if !steering.is_known() && jacked.joint.packer.is_none() {
        return None;
    }
    let outside_diameter = pipe.outside_diameter.value;
    let (short, long) = steering.pipe_length.unwrap_or_default();
    let mut line = Cited::new(Angle::default(), steering.least.origin);
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
    if let Some(given) = steering.joint_angle {
        line = larger(line, given);
    }
    if let Some(squareness) = steering.squareness {
        let turned = calc.law(JointAngleFromGap { gap: squareness.value, outside_diameter });
        line = Cited::new(turned + line.value, if turned > line.value { squareness.origin } else { line.origin });
    }
    if let Some(gap) = steering.joint_gap {
        line = larger(line, gap.map(|gap| calc.law(JointAngleFromGap { gap, outside_diameter })));
    }
    Some(larger(line, steering.least))
}

fn larger(one: Cited<Angle>, other: Cited<Angle>) -> Cited<Angle> {
    if other.value > one.value { other } else { one }
}

/// Mean over greatest stress at a stress allowed at the edge: the lesser of the new and the crushed packer, or what
/// stands in for a packer that is not known.
pub(super) fn stress_ratio<R: Recorder>(
    calc: &mut Calc<R>,
    jacked: &JackedPipe,
    angle: Option<Angle>,
    greatest_stress: Pressure,
) -> Ratio {
    let (Some(packer), Some(angle)) = (&jacked.joint.packer, angle) else { return jacked.joint.stress_ratio.value };
    let Packer { outside_diameter, inside_diameter, .. } = *packer;
    let [new, crushed] = ends(calc, packer).map(|(thickness, modulus)| {
        calc.law(StressRatioAtAngle { outside_diameter, inside_diameter, thickness, modulus, greatest_stress, angle })
    });
    new.min(crushed)
}

/// Angle at which the force would just be allowed, the lesser of the new and the crushed packer; `None` without one.
pub(super) fn allowed_angle<R: Recorder>(
    calc: &mut Calc<R>,
    jacked: &JackedPipe,
    end_area: Area,
    force: Force,
    greatest_stress: Pressure,
) -> Option<Angle> {
    let packer = jacked.joint.packer?;
    let Packer { outside_diameter, inside_diameter, .. } = packer;
    // The law works on the ring of the packer; the stress is that of the end.
    let ring = calc.law(crate::laws::packer::RingArea { outside_diameter, inside_diameter });
    let force = force * (ring / end_area);
    let [new, crushed] = ends(calc, &packer).map(|(thickness, modulus)| {
        calc.law(AngleAtForce { outside_diameter, inside_diameter, thickness, modulus, greatest_stress, force })
    });
    Some(new.min(crushed))
}

/// Thickness and modulus of the packer, new and crushed.
fn ends<R: Recorder>(calc: &mut Calc<R>, packer: &Packer) -> [(Length, Pressure); 2] {
    let crushed = calc.law(ResidualThickness { thickness: packer.thickness, residual: packer.residual.value });
    [(packer.thickness, packer.soft.value), (crushed, packer.stiff.value)]
}
