//! The part-full circular section: area, perimeter and radius of the flow, velocity and flow against those of the full
//! pipe, and the depth of a flow.

use crate::law::laws;
use crate::quantity::{Angle, Area, Length, Measure, Ratio};
use core::f64::consts::{PI, TAU};

/// Halvings of the circle: the last is below the spacing of numbers near 1.
const HALVINGS: u32 = 56;

laws! {
    /// Angle at the axis over which a part-full pipe is wet: `theta = 2 acos(1 - 2 y/D)`.
    ///
    /// It is pi half full and 2 pi full.
    WettedAngle "wetted angle" {
        /// Depth of flow over inside diameter.
        depth_ratio "y/D": Ratio as Ratio [>= 0.0 <= 1.0],
    } -> Angle as Angle;
    form "theta = 2 acos(1 - 2 depth_ratio)";
    from Published "chow_1959" "geometric elements of a circular section; angle as in a reproduction of the table";
    valid "depth ratio 0 to 1";
    value |s| Angle::from_si(2.0 * (1.0 - 2.0 * s.depth_ratio.value).clamp(-1.0, 1.0).acos());

    /// Area of flow: `A = D²/8 (theta - sin(theta))`.
    FlowArea "area of flow" {
        /// Inside diameter.
        inside_diameter "D": Length as Diameter [> 0.0],
        /// Angle that is wet.
        wetted_angle "theta": Angle as Angle,
    } -> Area as Area;
    form "A = inside_diameter^2 / 8 (wetted_angle - sin(wetted_angle))";
    from Published "chow_1959" "geometric elements of a circular section";
    valid "diameter positive, angle 0 to 2 pi"
        if |v| is_wetted(v.wetted_angle);
    value |s| s.inside_diameter * s.inside_diameter * (segment(s.wetted_angle.value) / 8.0);

    /// Hydraulic radius, area over wetted perimeter: `R = D/4 (1 - sin(theta)/theta)`; a quarter of D full and half
    /// full.
    HydraulicRadius "hydraulic radius" {
        /// Inside diameter.
        inside_diameter "D": Length as Diameter [> 0.0],
        /// Angle that is wet.
        wetted_angle "theta": Angle as Angle,
    } -> Length as Diameter;
    form "R = inside_diameter / 4 (1 - sin(wetted_angle) / wetted_angle)";
    from Published "chow_1959" "geometric elements of a circular section";
    valid "diameter positive, angle 0 to 2 pi"
        if |v| is_wetted(v.wetted_angle);
    value |s| s.inside_diameter * (radius_ratio(s.wetted_angle.value) / 4.0);

    /// Flow part full over flow full: `Q/Q_full = (theta - sin(theta))/(2 pi) (1 - sin(theta)/theta)^(2/3)`.
    ///
    /// The same roughness at every depth. Greatest, 1.076, at a depth of 0.938 diameters; nothing should be built on
    /// more than 1.
    FlowRatio "flow over that of the full pipe" {
        /// Angle that is wet.
        wetted_angle "theta": Angle as Angle,
    } -> Ratio as Ratio;
    form "Q/Q_full = (wetted_angle - sin(wetted_angle)) / (2 pi) (1 - sin(wetted_angle) / wetted_angle)^(2/3)";
    from Judgement "jackpull" "Manning's equation part full over full, by the elements of a circular section";
    valid "angle 0 to 2 pi"
        if |v| is_wetted(v.wetted_angle);
    value |s| Ratio::from_si(flow_ratio(s.wetted_angle.value));

    /// Depth ratio of a flow, the lower of two where there are two: the inverse of [`FlowRatio`], bisected.
    ///
    /// A larger flow has no steady depth to rely on: the pipe is taken to be full.
    DepthForFlow "depth of a flow" {
        /// Flow over that of the full pipe.
        flow_ratio "Q/Q_full": Ratio as Ratio [>= 0.0 <= 1.0],
    } -> Ratio as Ratio;
    form "depth ratio at which Q/Q_full is flow_ratio";
    from Judgement "jackpull" "inverse of the flow ratio, bisected over the wetted angle";
    valid "flow ratio 0 to 1";
    value |s| {
        if s.flow_ratio.value > 1.0 {
            return Ratio::from_si(1.0);
        }
        let (mut low, mut high) = (0.0, TAU);
        // The ratio rises to its peak and stays at 1 or above beyond, so "is enough" turns but once.
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            if flow_ratio(middle) >= s.flow_ratio.value { high = middle } else { low = middle }
        }
        Ratio::from_si((1.0 - (high / 2.0).cos()) / 2.0)
    };
}

fn is_wetted(angle: Angle) -> bool {
    (0.0..=TAU).contains(&angle.value)
}

/// `theta - sin(theta)`.
pub(super) fn segment(angle: f64) -> f64 {
    angle - angle.sin()
}

/// `1 - sin(theta)/theta`, 0 in a dry pipe: hydraulic radius over that of the full pipe.
fn radius_ratio(angle: f64) -> f64 {
    if angle > 0.0 { segment(angle).max(0.0) / angle } else { 0.0 }
}

fn flow_ratio(angle: f64) -> f64 {
    segment(angle) / (2.0 * PI) * radius_ratio(angle).powf(2.0 / 3.0)
}
