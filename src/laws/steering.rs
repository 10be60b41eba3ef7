//! The angle at a jacking joint, from the line of the drive, a curve, or the gap in the joint.

use crate::law::laws;
use crate::quantity::{Angle, Length, Measure};
use core::f64::consts::{FRAC_PI_2, PI, SQRT_2};

laws! {
    /// Angle where one pipe leaves the line of the pipe before it: `tan b = e / L`.
    ///
    /// The shorter pipe turns more.
    JointAngleFromDeviation "joint angle where a pipe leaves the line" {
        /// Deviation over the length of one pipe (of the far end from that line).
        deviation "e": Length as Offset [>= 0.0],
        /// Length of one pipe.
        pipe_length "L": Length as Distance,
    } -> Angle as JointAngle;
    form "tan(b) = deviation / pipe_length";
    from Judgement "jackpull" "geometry of two straight pipes";
    valid "deviation from 0 to below the length of the pipe"
        if |v| v.deviation < v.pipe_length;
    value |s| Angle::from_si(s.deviation.value.atan2(s.pipe_length.value));

    /// Angle at each joint of straight pipes on a curve: `tan(b/2) = L / (2 R)`, the inverse of [`CurveRadius`].
    ///
    /// The longer pipe turns more.
    JointAngleFromRadius "joint angle on a curve" {
        /// Length of one pipe.
        pipe_length "L": Length as Distance [> 0.0],
        /// Radius of the curve.
        radius "R": Length as Distance,
    } -> Angle as JointAngle;
    form "tan(b/2) = pipe_length / (2 radius)";
    from Published "acpa_dd_21" "eq. 1, solved for the angle; geometry only, the limits there are for laid pipe";
    valid "pipe length positive and at most the radius"
        if |v| v.pipe_length <= v.radius;
    value |s| Angle::from_si(2.0 * s.pipe_length.value.atan2(2.0 * s.radius.value));

    /// Radius of straight pipes turned at each joint: `R = L / (2 tan(b/2))`.
    ///
    /// The source has pipe laid in an open trench, with no force in the joint: geometry only.
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
    CurveRadius "radius of a curve of straight pipes" {
        /// Length of one pipe.
        pipe_length "L": Length as Distance [> 0.0],
        /// Angle at each joint.
        angle "b": Angle as JointAngle [> 0.0 < FRAC_PI_2],
    } -> Length as Distance;
    form "R = pipe_length / (2 tan(angle/2))";
    from Published "acpa_dd_21" "eq. 1; geometry only, the limits there are for laid pipe";
    valid "pipe length positive, angle above 0 and below 90 deg";
    value |s| s.pipe_length / (2.0 * (s.angle.value / 2.0).tan());

    /// Angle of a joint wider on one side than on the other: `sin(b/2) = g / (2 D)`.
    ///
    /// An end out of square is such a gap too.
    JointAngleFromGap "joint angle from the gap" {
        /// Widest less narrowest gap.
        gap "g": Length as Wall [>= 0.0],
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter [> 0.0],
    } -> Angle as JointAngle;
    form "sin(b/2) = gap / (2 outside_diameter)";
    from Published "acpa_dd_21" "eq. 2; geometry only, the limits there are for laid pipe";
    valid "gap from 0 to the outside diameter"
        if |v| v.gap <= v.outside_diameter;
    value |s| Angle::from_si(2.0 * (s.gap / (2.0 * s.outside_diameter)).value.clamp(0.0, 1.0).asin());

    /// Angle of a joint between two ends out of square, likely: `b = sqrt(l² + s²)`.
    ///
    /// Two ends meet in a joint, at random to each other and to the line: both at 0.7 of their tolerance, across it.
    LikelyJointAngle "joint angle, likely" {
        /// Angle of the line.
        line "l": Angle as JointAngle [>= 0.0],
        /// Angle of one end that is out of square by its tolerance.
        squareness "s": Angle as JointAngle [>= 0.0],
    } -> Angle as JointAngle;
    form "b = sqrt(line^2 + squareness^2)";
    from Judgement "jackpull" "root of squares of the line and of two ends at random; small angles";
    valid "no angle negative";
    value |s| Angle::from_si(s.line.value.hypot(s.squareness.value));

    /// Angle of a joint between two ends out of square, high: `b = l + sqrt(2) s`.
    ///
    /// Both ends out of square by their tolerance, at random to each other, and the sum of both in the plane of the line.
    HighJointAngle "joint angle, high" {
        /// Angle of the line.
        line "l": Angle as JointAngle [>= 0.0],
        /// Angle of one end that is out of square by its tolerance.
        squareness "s": Angle as JointAngle [>= 0.0],
    } -> Angle as JointAngle;
    form "b = line + sqrt(2) squareness";
    from Judgement "jackpull" "line, and the root of squares of two ends; small angles";
    valid "no angle negative";
    value |s| Angle::from_si(s.line.value + SQRT_2 * s.squareness.value);

    /// Widest less narrowest gap of a turned joint: `g = D tan b`.
    ///
    /// More than a packer can be pressed, and the joint gapes.
    GapAtJointAngle "gap across a turned joint" {
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter [> 0.0],
        /// Angle at the joint.
        angle "b": Angle as JointAngle,
    } -> Length as Wall;
    form "g = outside_diameter tan(angle)";
    from Judgement "jackpull" "geometry of two planes";
    valid "outside diameter positive, angle from 0 to below 90 deg"
        if |v| (0.0..FRAC_PI_2).contains(&v.angle.value);
    value |s| s.outside_diameter * s.angle.value.tan();

    /// Smallest radius on a wave, at its crests: `R = l² / (pi² e)`.
    ///
    /// It goes into [`JointAngleFromRadius`] where a half wave is several pipes long.
    LeastRadiusOfUndulation "smallest radius of an undulation" {
        /// Amplitude of the wave.
        amplitude "e": Length as Offset [> 0.0],
        /// Half of the wave length.
        half_wave "l": Length as Distance [> 0.0],
    } -> Length as Distance;
    form "R = half_wave^2 / (pi^2 amplitude)";
    from Judgement "jackpull" "curvature of a sine at its crest";
    valid "amplitude and half wave positive";
    value |s| s.half_wave * s.half_wave / (PI * PI * s.amplitude);
}
