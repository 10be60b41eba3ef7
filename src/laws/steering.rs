//! The angle at a jacking joint, from the line of the drive, a curve, or the gap in the joint.

use crate::law::law;
use crate::quantity::{Angle, Length, Measure};
use crate::source::{Equation, Mark};
use core::f64::consts::{FRAC_PI_2, PI};

law! {
    /// Angle where one pipe leaves the line of the pipe before it: `tan b = e / L`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | e | `deviation` (of the far end from that line) | length |
    /// | L | `pipe_length` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= e < L. The shorter pipe turns more.
    JointAngleFromDeviation {
        /// Deviation over the length of one pipe.
        deviation: Length as Offset,
        /// Length of one pipe.
        pipe_length: Length as Distance,
    } -> Angle as JointAngle
    { Equation {
        name: "joint angle where a pipe leaves the line",
        form: "tan(b) = deviation / pipe_length",
        source: "jackpull",
        locator: "geometry of two straight pipes",
        mark: Mark::Judgement,
        valid: "deviation from 0 to below the length of the pipe",
    } }
    valid |v| v.deviation.value >= 0.0 && v.deviation < v.pipe_length;
    value |s| Angle::from_si(s.deviation.value.atan2(s.pipe_length.value));
}

law! {
    /// Angle at each joint of straight pipes on a curve: `tan(b/2) = L / (2 R)`, the inverse of [`CurveRadius`].
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | L | `pipe_length` | length |
    /// | R | `radius` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** L up to R. The longer pipe turns more.
    JointAngleFromRadius {
        /// Length of one pipe.
        pipe_length: Length as Distance,
        /// Radius of the curve.
        radius: Length as Distance,
    } -> Angle as JointAngle
    { Equation {
        name: "joint angle on a curve",
        form: "tan(b/2) = pipe_length / (2 radius)",
        source: "acpa_dd_21",
        locator: "eq. 1, solved for the angle; geometry only, the limits there are for laid pipe",
        mark: Mark::Published,
        valid: "pipe length positive and at most the radius",
    } }
    valid |v| v.pipe_length.value > 0.0 && v.pipe_length <= v.radius;
    value |s| Angle::from_si(2.0 * s.pipe_length.value.atan2(2.0 * s.radius.value));
}

law! {
    /// Radius of straight pipes turned at each joint: `R = L / (2 tan(b/2))`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | L | `pipe_length` | length |
    /// | b | `angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** an angle above 0 and below 90 deg. The
    /// source has pipe laid in an open trench, with no force in the joint: geometry only.
    ///
    /// ```
    /// // Bore 24 in with wall B: 30 in outside, joint drawn 0.5 in, pipe of 8 ft: 480.0 ft.
    /// use jackpull::law::Law;
    /// use jackpull::laws::steering::{CurveRadius, JointAngleFromGap};
    /// use jackpull::quantity::{FromText, Length};
    /// let gap = Length::from_text("0.5 in")?;
    /// let angle = JointAngleFromGap { gap, outside_diameter: Length::from_text("30 in")? }.value();
    /// let radius = CurveRadius { pipe_length: Length::from_text("8 ft")?, angle };
    /// assert!((radius.value() - Length::from_text("480 ft")?).abs() < Length::from_text("0.05 ft")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    CurveRadius {
        /// Length of one pipe.
        pipe_length: Length as Distance,
        /// Angle at each joint.
        angle: Angle as JointAngle,
    } -> Length as Distance
    { Equation {
        name: "radius of a curve of straight pipes",
        form: "R = pipe_length / (2 tan(angle/2))",
        source: "acpa_dd_21",
        locator: "eq. 1; geometry only, the limits there are for laid pipe",
        mark: Mark::Published,
        valid: "pipe length positive, angle above 0 and below 90 deg",
    } }
    valid |v| v.pipe_length.value > 0.0 && v.angle.value > 0.0 && v.angle.value < FRAC_PI_2;
    value |s| s.pipe_length / (2.0 * (s.angle.value / 2.0).tan());
}

law! {
    /// Angle of a joint wider on one side than on the other: `sin(b/2) = g / (2 D)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | g | `gap` (widest less narrowest) | length |
    /// | D | `outside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= g <= D. An end out of square is such a
    /// gap too.
    JointAngleFromGap {
        /// Widest less narrowest gap.
        gap: Length as Wall,
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
    } -> Angle as JointAngle
    { Equation {
        name: "joint angle from the gap",
        form: "sin(b/2) = gap / (2 outside_diameter)",
        source: "acpa_dd_21",
        locator: "eq. 2; geometry only, the limits there are for laid pipe",
        mark: Mark::Published,
        valid: "gap from 0 to the outside diameter",
    } }
    valid |v| v.gap.value >= 0.0 && v.outside_diameter.value > 0.0 && v.gap <= v.outside_diameter;
    value |s| Angle::from_si(2.0 * (s.gap / (2.0 * s.outside_diameter)).value.clamp(0.0, 1.0).asin());
}

law! {
    /// Widest less narrowest gap of a turned joint: `g = D tan b`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D | `outside_diameter` | length |
    /// | b | `angle` | angle |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 <= b < 90 deg. More than a packer can be
    /// pressed, and the joint gapes.
    GapAtJointAngle {
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
        /// Angle at the joint.
        angle: Angle as JointAngle,
    } -> Length as Wall
    { Equation {
        name: "gap across a turned joint",
        form: "g = outside_diameter tan(angle)",
        source: "jackpull",
        locator: "geometry of two planes",
        mark: Mark::Judgement,
        valid: "outside diameter positive, angle from 0 to below 90 deg",
    } }
    valid |v| v.outside_diameter.value > 0.0 && (0.0..FRAC_PI_2).contains(&v.angle.value);
    value |s| s.outside_diameter * s.angle.value.tan();
}

law! {
    /// Smallest radius on a wave, at its crests: `R = l² / (pi² e)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | e | `amplitude` | length |
    /// | l | `half_wave` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive arguments. It goes into
    /// [`JointAngleFromRadius`] where a half wave is several pipes long.
    LeastRadiusOfUndulation {
        /// Amplitude of the wave.
        amplitude: Length as Offset,
        /// Half of the wave length.
        half_wave: Length as Distance,
    } -> Length as Distance
    { Equation {
        name: "smallest radius of an undulation",
        form: "R = half_wave^2 / (pi^2 amplitude)",
        source: "jackpull",
        locator: "curvature of a sine at its crest",
        mark: Mark::Judgement,
        valid: "amplitude and half wave positive",
    } }
    valid |v| v.amplitude.value > 0.0 && v.half_wave.value > 0.0;
    value |s| s.half_wave * s.half_wave / (PI * PI * s.amplitude);
}
