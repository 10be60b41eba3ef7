//! Worked by another hand: the linear packer
//! model, recomputed there by closed form and by quadrature, and what it means for a clay pipe end.

use crate::found::{Found, Outcome, close, near, needed, pages, q, ratio, value};
use jackpull::Handbook;
use jackpull::laws::clay::{ConcentricEndForce, EdgeEndForce};
use jackpull::laws::packer::{KernRadius, RingArea};
use jackpull::laws::turned_joint::{AngleAtForce, StressRatioAtAngle};
use jackpull::quantity::{Angle, Force, FromText, Length, Measure, Pressure, Ratio};
use std::sync::Arc;

pages!(force_at_the_floor_of_the_angle, factor_three_at_a_turned_joint,);

/// Depth over outside diameter; ratio for inside over outside diameter 0 (solid), 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, and a
/// ring grown thin. The thin ring at 0.2 is printed .1938 and corrected to .1939.
const RATIOS: [(&str, [&str; 8]); 7] = [
    (".1", [".0210", ".0328", ".0412", ".0480", ".0584", ".0735", ".0918", ".1356"]),
    (".2", [".0581", ".0907", ".1108", ".1226", ".1353", ".1489", ".1632", ".1939"]),
    (".4", [".1561", ".2099", ".2261", ".2347", ".2435", ".2525", ".2618", ".2809"]),
    (".5", [".2122", ".2600", ".2734", ".2804", ".2877", ".2951", ".3027", ".3183"]),
    (".6", [".2707", ".3066", ".3174", ".3231", ".3290", ".3350", ".3412", ".3539"]),
    (".8", [".3895", ".3977", ".4027", ".4056", ".4088", ".4122", ".4158", ".4235"]),
    ("1.0", [".5", ".5", ".5", ".5", ".5", ".5", ".5", ".5"]),
];
const INSIDE: [&str; 8] = ["0 m", "0.6 m", "0.7 m", "0.75 m", "0.8 m", "0.85 m", "0.9 m", "0.9999999 m"];

fn number(text: &str) -> f64 {
    text.parse().unwrap()
}

#[track_caller]
fn agrees<Q: FromText>(got: Q, printed: &str, within: &str) {
    let (printed_value, within) = (q::<Q>(printed).si(), q::<Q>(within).si());
    assert!((got.si() - printed_value).abs() <= within * (1.0 + 1e-9), "{} against {printed}", got.si());
}

/// A ring of 1 m outside diameter that is pressed over `depth` metres from its edge.
fn pressed(inside: &str, depth: f64) -> Ratio {
    value(StressRatioAtAngle {
        outside_diameter: q("1 m"),
        inside_diameter: q(inside),
        thickness: Length::from_si(depth),
        modulus: q("1 MPa"),
        greatest_stress: q("1 MPa"),
        angle: q("45 deg"),
    })
}

#[test]
fn table_of_ratios() {
    for (depth, ratios) in RATIOS {
        for (inside, printed) in INSIDE.into_iter().zip(ratios) {
            let got = pressed(inside, number(depth)).value;
            assert!((got - number(printed)).abs() <= 0.000_051, "{depth} {inside}: {got}");
        }
    }
}

/// Kern over outside diameter .1863, .2050, .2263 for inside over outside diameter 0.7, 0.8, 0.9: (1 + 0.49)/8 for the
/// first ring.
#[test]
fn kern_of_a_ring() {
    for (inside, printed) in [("0.7 m", "186.3 mm"), ("0.8 m", "205.0 mm"), ("0.9 m", "226.3 mm")] {
        agrees(value(KernRadius { outside_diameter: q("1 m"), inside_diameter: q(inside) }), printed, "0.051 mm");
    }
}

/// Packer 1160/1010 mm, 15 mm thick, 20 MPa allowed at the edge.
fn example(modulus: Pressure, angle: Angle) -> Force {
    let (outside_diameter, inside_diameter, greatest_stress) = (q("1160 mm"), q("1010 mm"), q::<Pressure>("20 MPa"));
    let thickness = q("15 mm");
    let ratio =
        value(StressRatioAtAngle { outside_diameter, inside_diameter, thickness, modulus, greatest_stress, angle });
    ratio * value(RingArea { outside_diameter, inside_diameter }) * greatest_stress
}

/// Back from each force the angle.
#[test]
fn angle_of_a_force() {
    for modulus in ["50 MPa", "200 MPa", "400 MPa", "600 MPa"] {
        for angle in ["0.05 deg", "0.1 deg", "0.2 deg", "0.25 deg", "0.5 deg"] {
            let (modulus, angle) = (q(modulus), q::<Angle>(angle));
            let back = value(AngleAtForce {
                outside_diameter: q("1160 mm"),
                inside_diameter: q("1010 mm"),
                thickness: q("15 mm"),
                modulus,
                greatest_stress: q("20 MPa"),
                force: example(modulus, angle),
            });
            assert!(((back / angle).value - 1.0).abs() < 1e-6, "{modulus:?} {angle:?}: {back:?}");
        }
    }
}

/// The default modulus at the least angle of the check: 2000 kN; the soft end of a new packer: 4250 kN.
fn force_at_the_floor_of_the_angle(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let angle = needed(handbook.joint_angle()?.get("guided"), || "the least angle".to_owned())?.value.value;
    let modulus = needed(handbook.packer_modulus()?.get("default"), || "the modulus".to_owned())?.value.value;
    near(found, "force with the default modulus", example(modulus, angle), "2000 kN", "0.5 kN");
    near(found, "force with a new packer", example(q("50 MPa"), angle), "4250 kN", "0.5 kN");
    Ok(())
}

/// A factor 3 on uniform stress is 1.5 on the edge of a full triangle, 1.05 at a ratio of 0.35, 0.86 where half of a
/// face of 0.8 bears (ratio 0.288).
fn factor_three_at_a_turned_joint(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let (outside_diameter, inside_diameter) = (q::<Length>("1 m"), q::<Length>("0.8 m"));
    let half = pressed("0.8 m", 0.5);
    near(found, "half of a face of 0.8", half, "0.288", "0.0005");
    let (end_bearing_area, strength) =
        (value(RingArea { outside_diameter, inside_diameter }), q::<Pressure>("48.3 MPa"));
    let uniform = value(ConcentricEndForce { end_bearing_area, strength, factor: ratio(handbook, "clay.factor")? });
    for (stress_ratio, printed) in [(q::<Ratio>("0.5"), "1.5"), (q("0.35"), "1.05"), (half, "0.86")] {
        let crushing = value(EdgeEndForce { stress_ratio, end_bearing_area, strength, factor: q("1") });
        close(found, "safety at the edge", crushing / uniform, printed, 0.006);
    }
    Ok(())
}
