//! American Concrete Pipe Association, Design Data 21, equations 1 and 2, read: `R = L / (2 tan(b/2))`,
//! `sin(b/2) = pull / (2 Bc)`, standard laying length 8 ft. Radii worked from them for wall B of ASTM C76 with the joint
//! drawn 0.5 in. For laid pipe; the geometry of joints under force is worked by another hand below.

use crate::found::{Found, Outcome, near, needed, pages, q, value};
use jackpull::Handbook;
use jackpull::laws::steering::{
    CurveRadius, GapAtJointAngle, JointAngleFromDeviation, JointAngleFromGap, JointAngleFromRadius,
    LeastRadiusOfUndulation,
};
use jackpull::quantity::{Length, Ratio};
use std::sync::Arc;

pages!(radii_of_drawn_joints, warning_angle_gapes_at_one_metre, square_end_of_the_guide_specification);

/// Outside diameters 30, 44 and 72 in: 0.955, 0.651 and 0.398 deg, radii 480.0, 704.0 and 1152.0 ft.
fn radii_of_drawn_joints(_: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let pipe_length = q::<Length>("8 ft");
    for (outside_diameter, angle, radius) in
        [("30 in", "0.955 deg", "480.0 ft"), ("44 in", "0.651 deg", "704.0 ft"), ("72 in", "0.398 deg", "1152.0 ft")]
    {
        let turned = value(JointAngleFromGap { gap: q("0.5 in"), outside_diameter: q(outside_diameter) });
        near(found, &format!("angle at {outside_diameter}"), turned, angle, "0.0005 deg");
        let curve = value(CurveRadius { pipe_length, angle: turned });
        near(found, &format!("radius at {outside_diameter}"), curve, radius, "0.05 ft");
        let back = value(JointAngleFromRadius { pipe_length, radius: q(radius) });
        near(found, &format!("angle on {radius}"), back, angle, "0.0005 deg");
    }
    Ok(())
}

/// Worked by another hand: gap across the pipe at 0.1, 0.25 and 0.5 deg, mm: 600 mm 1.0, 2.6, 5.2; 1000 mm 1.7, 4.4, 8.7;
/// 2000 mm 3.5, 8.7, 17.5.
#[test]
fn gaps_at_angles() {
    for (outside_diameter, printed) in [
        ("600 mm", ["1.0 mm", "2.6 mm", "5.2 mm"]),
        ("1000 mm", ["1.7 mm", "4.4 mm", "8.7 mm"]),
        ("2000 mm", ["3.5 mm", "8.7 mm", "17.5 mm"]),
    ] {
        for (angle, printed) in ["0.1 deg", "0.25 deg", "0.5 deg"].into_iter().zip(printed) {
            let gap = value(GapAtJointAngle { outside_diameter: q(outside_diameter), angle: q(angle) });
            // 17.45 mm was printed as 17.5.
            assert!((gap - q::<Length>(printed)).abs() <= q("0.051 mm"), "{outside_diameter} {angle}: {gap:?}");
        }
    }
}

/// The warning angle opens a 1000 mm joint by 8.7 mm; half of it is 0.25 deg, 4.4 mm.
fn warning_angle_gapes_at_one_metre(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    let angle = needed(handbook.joint_angle()?.get("most"), || "the warning angle".to_owned())?.value.value;
    let outside_diameter = q("1000 mm");
    near(found, "gap at the warning", value(GapAtJointAngle { outside_diameter, angle }), "8.7 mm", "0.05 mm");
    let half = value(GapAtJointAngle { outside_diameter, angle: angle / 2.0 });
    near(found, "gap at half of it", half, "4.4 mm", "0.05 mm");
    Ok(())
}

/// 0.040 in is printed with 1 mm beside it.
fn square_end_of_the_guide_specification(handbook: &Arc<Handbook>, found: &mut Found) -> Outcome {
    for key in ["clay", "jacked_pipe"] {
        let row = needed(handbook.end_squareness()?.get(key), || format!("squareness of {key}"))?;
        near(found, &format!("squareness of {key}"), row.value.value, "1 mm", "0.02 mm");
    }
    Ok(())
}

/// Line and grade: 25 mm over 91 m is 0.028 %, over one pipe of 3 m 0.83 %.
#[test]
fn slope_of_a_deviation() {
    for (length, printed, within) in [("91 m", "0.028 %", "0.0006 %"), ("3 m", "0.83 %", "0.005 %")] {
        let angle = value(JointAngleFromDeviation { deviation: q("25 mm"), pipe_length: q(length) });
        let slope: Ratio = angle.tan();
        assert!((slope - q::<Ratio>(printed)).abs() <= q(within), "{length}: {slope:?}");
    }
}

/// A wave of 10 mm either side, crossing the line each 20 m, against differences of the sine itself.
#[test]
fn wave_against_its_differences() {
    let (amplitude, half_wave) = (q::<Length>("10 mm"), q::<Length>("20 m"));
    let line = |x: f64| 0.010 * (std::f64::consts::PI * x / 20.0).sin();
    let step = 1e-3;
    let slope = (0..40_000).map(|at| (line(f64::from(at + 1) * step) - line(f64::from(at) * step)) / step);
    let steepest = slope.fold(0.0, f64::max);
    assert!((value(jackpull::laws::undulation::PeakSlope { amplitude, half_wave }).value - steepest).abs() < 1e-9);
    let step = 0.1;
    let bend = (1..400).map(|at| {
        let x = f64::from(at) * step;
        (line(x + step) - 2.0 * line(x) + line(x - step)).abs() / (step * step)
    });
    let radius = 1.0 / bend.fold(0.0, f64::max);
    let got = value(LeastRadiusOfUndulation { amplitude, half_wave }).value;
    assert!((got / radius - 1.0).abs() < 1e-4, "{got} against {radius}");
}
