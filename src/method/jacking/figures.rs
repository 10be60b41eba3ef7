//! Figures of a jacked pipe: what other schemes would allow, the angle that is allowed, slopes and offsets.

use super::{capacity, joint, steel};
use crate::drive::{Capacity, ConcreteEnd, ConcreteScheme, Drive, JackedPipe, Pipe, SteelEnd};
use crate::law::{Calc, Doubted, Law, Silent};
use crate::laws::clay::ConcentricEndForce;
use crate::laws::concrete::MeanEndStress;
use crate::laws::packer::KernRadius;
use crate::laws::steering::{GapAtJointAngle, JointAngleFromGap, PeakSlopeOfUndulation};
use crate::laws::turned_joint::AngleAtForce;
use crate::method::figures::Figure;
use crate::method::{Method, assess};
use crate::quantity::{Area, Force, Measure, Role, Shown};
use crate::source::{Cited, Origin};

const UNIFORM: &str = "uniform bearing, no eccentricity in it: shown, never used";
const UPPER: &str = "a rule of buildings, for a straight column without eccentricity: shown, never used";
const AT_PEAK: &str = "of the new and the crushed packer the lesser, ends out of square included";
const BEYOND_ADVICE: &str = "beyond what is advised at a joint: the check of the angle asks for care before";
const OFF_AXIS: &str =
    "beyond it the first pipe is not pressed over its whole end; jacks and thrust ring have to keep it";

pub(in crate::method) fn figures(drive: &Drive, pipe: &Pipe, jacked: &JackedPipe) -> Vec<Figure> {
    let calc = &mut Calc::new(Silent);
    let mut figures = Vec::new();
    match &jacked.capacity {
        Capacity::Concrete(end) => concrete(calc, pipe, jacked, end, &mut figures),
        Capacity::Steel(end) => of_steel(calc, end, &mut figures),
        _ => {}
    }
    turned(calc, drive, pipe, jacked, &mut figures);
    if let Some(inside_diameter) = jacked.inside_diameter {
        let kern = KernRadius { outside_diameter: pipe.outside_diameter.value, inside_diameter };
        figures.push(Figure {
            label: "greatest offset of the jacking force from the axis".to_owned(),
            value: Shown::of(calc.law(kern), Role::Diameter),
            basis: Origin::Law(&KernRadius::EQUATION),
            note: Some(OFF_AXIS),
        });
    }
    figures
}

fn mean(force: Force, end_bearing_area: Area) -> Shown {
    Shown::of(MeanEndStress { force, end_bearing_area }.value(), Role::Strength)
}

/// Mean stress that each scheme allows, side by side.
fn concrete(calc: &mut Calc<Silent>, pipe: &Pipe, jacked: &JackedPipe, end: &ConcreteEnd, figures: &mut Vec<Figure>) {
    let angle = joint::angle(calc, pipe, jacked).map(|angle| angle.value);
    let Some(area) = capacity::end_area(calc, jacked) else { return };
    for (name, scheme) in [
        ("default", ConcreteScheme::Default),
        ("EN 1916", ConcreteScheme::En1916),
        ("ASCE 27", ConcreteScheme::Asce27),
        ("Chinese annex", ConcreteScheme::Annex),
        ("JSWAS A-6", ConcreteScheme::Jswas),
    ] {
        let by_scheme = calc.doubted(|calc| capacity::concrete(calc, jacked, end, scheme, angle));
        if let Doubted { value: Some(force), doubt: None } = by_scheme {
            let chosen = if scheme == end.scheme { ", which counts" } else { "" };
            figures.push(Figure {
                label: format!("mean stress allowed by {name}{chosen}"),
                value: mean(force.value, area),
                basis: force.origin,
                note: None,
            });
        }
    }
    let (strength, factor) = (end.strength.value, end.uniform.value);
    let force = ConcentricEndForce { end_bearing_area: area, strength, factor }.value();
    figures.push(Figure {
        label: "mean stress by a guideline".to_owned(),
        value: mean(force, area),
        basis: end.uniform.origin,
        note: Some(UNIFORM),
    });
}

fn of_steel(calc: &mut Calc<Silent>, end: &SteelEnd, figures: &mut Vec<Figure>) {
    let unit = |force: Cited<Force>, calc: &mut Calc<Silent>| mean(force.value, steel::section(calc, end));
    let code = |calc: &mut Calc<Silent>| steel::by_code(calc, end, end.yield_strength.value);
    let figure = |label: &str, doubted: Doubted<Cited<Force>>, calc: &mut Calc<Silent>, note| {
        doubted.doubt.is_none().then(|| Figure {
            label: label.to_owned(),
            value: unit(doubted.value, calc),
            basis: doubted.value.origin,
            note,
        })
    };
    let default = calc.doubted(|calc| steel::default(calc, end));
    figures.extend(figure("mean stress allowed by default", default, calc, None));
    let annex = calc.doubted(|calc| steel::annex(calc, end));
    figures.extend(figure("mean stress allowed by Chinese annex", annex, calc, None));
    let code = calc.doubted(code);
    figures.extend(figure("mean stress by a building code", code, calc, Some(UPPER)));
}

/// The angle allowed at the greatest force, and what the line and the ends add.
fn turned(calc: &mut Calc<Silent>, drive: &Drive, pipe: &Pipe, jacked: &JackedPipe, figures: &mut Vec<Figure>) {
    let force = assess(drive, pipe, Method::PipeJacking).force;
    let allowed = calc.doubted(|calc| {
        let (area, force) = (capacity::end_area(calc, jacked)?, force?.high);
        joint::allowed_angle(calc, jacked, area, force, capacity::edge_stress(jacked)?.value)
    });
    if let Doubted { value: Some(angle), doubt: None } = allowed {
        figures.push(Figure {
            label: "joint angle allowed at the greatest force".to_owned(),
            value: Shown::of(angle, Role::JointAngle),
            basis: Origin::Law(&AngleAtForce::EQUATION),
            note: Some(if angle > jacked.joint.steering.warning.value { BEYOND_ADVICE } else { AT_PEAK }),
        });
    }
    let outside_diameter = pipe.outside_diameter.value;
    if let Some(angle) = joint::angle(calc, pipe, jacked) {
        figures.push(Figure {
            label: "gap across the joint at its greatest angle".to_owned(),
            value: Shown::of(calc.law(GapAtJointAngle { outside_diameter, angle: angle.value }), Role::Wall),
            basis: angle.origin,
            note: None,
        });
    }
    let steering = &jacked.joint.steering;
    if let Some(squareness) = steering.squareness {
        let law = JointAngleFromGap { gap: squareness.value, outside_diameter };
        figures.push(Figure {
            label: "joint angle of an end out of square".to_owned(),
            value: Shown::of(calc.law(law), Role::JointAngle),
            basis: squareness.origin,
            note: None,
        });
    }
    if let Some((amplitude, half_wave)) = steering.wave {
        let slope = calc.law(PeakSlopeOfUndulation { amplitude: amplitude.value, half_wave });
        figures.push(Figure {
            label: "steepest slope that the wave adds to the line".to_owned(),
            value: Shown { si: slope.si(), role: Role::Slope },
            basis: Origin::Law(&PeakSlopeOfUndulation::EQUATION),
            note: None,
        });
    }
}
