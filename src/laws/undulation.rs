//! What an uneven invert does to the slope, and the water that stands in a low spot.

use super::part_full::segment;
use crate::law::laws;
use crate::quantity::{Length, Ratio, Volume};
use core::f64::consts::{FRAC_PI_2, PI};

/// Steps of the sum over half of a low spot.
const STEPS: u32 = 48;

laws! {
    /// Steepest deviation of slope of an invert that waves about its line: `pi e / lambda`.
    ///
    /// The mean over a half wave, 2 e / lambda, is 36 % less and is not the measure of a back-fall.
    ///
    /// For a sine wave.
    ///
    /// ```
    /// // 25 mm over 3 m: 2.62 %.
    /// use jackpull::law::Law;
    /// use jackpull::laws::undulation::PeakSlope;
    /// use jackpull::quantity::{FromText, Length};
    /// let slope = PeakSlope { amplitude: Length::from_text("25 mm")?, half_wave: Length::from_text("3 m")? };
    /// assert!((slope.value().value - 0.0262).abs() < 0.00005);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    PeakSlope "peak slope of a wave of the invert" {
        /// Greatest error of the invert.
        amplitude "e": Length as Offset,
        /// Distance from a high spot to the next low one.
        half_wave "lambda": Length as Distance,
    } -> Ratio as Slope;
    form "slope = pi amplitude / half_wave";
    from Judgement "jackpull" "slope of a sine wave where it crosses its line";
    valid "amplitude not negative, half wave positive"
        if |v| v.amplitude.value >= 0.0 && v.half_wave.value > 0.0;
    value |s| PI * s.amplitude / s.half_wave;

    /// Least slope left by a wave of the invert: `S - pi e / lambda`; below 0 the pipe falls back.
    ///
    /// For a sine wave.
    LeastSlope "least slope of a waving invert" {
        /// Slope of the line.
        design_slope "S": Ratio as Slope,
        /// Greatest error of the invert.
        amplitude "e": Length as Offset,
        /// Distance from a high spot to the next low one.
        half_wave "lambda": Length as Distance,
    } -> Ratio as Slope;
    form "slope = design_slope - pi amplitude / half_wave";
    from Judgement "jackpull" "slope of the line less that of a sine wave";
    valid "amplitude not negative, half wave positive"
        if |v| v.amplitude.value >= 0.0 && v.half_wave.value > 0.0;
    value |s| s.design_slope - PI * s.amplitude / s.half_wave;

    /// Depth of the water that stands in the low spots of a waving invert:
    /// `d = 2 e (sin(phi) - phi cos(phi))`, `cos(phi) = S lambda / (pi e)`; 0 where the pipe falls all the way.
    ///
    /// For a sine wave; 2 e on a level line.
    SagDepth "depth of standing water" {
        /// Slope of the line.
        design_slope "S": Ratio as Slope,
        /// Greatest error of the invert.
        amplitude "e": Length as Offset,
        /// Distance from a high spot to the next low one.
        half_wave "lambda": Length as Distance,
    } -> Length as Offset;
    form "d = 2 amplitude (sin(phi) - phi cos(phi)), cos(phi) = design_slope half_wave / (pi amplitude)";
    from Judgement "jackpull" "rise of the invert from a low spot to the next high one, line plus sine wave";
    valid "slope and amplitude not negative, half wave positive"
        if |v| v.design_slope.value >= 0.0 && v.amplitude.value >= 0.0 && v.half_wave.value > 0.0;
    value |s| {
        let peak = PI * s.amplitude / s.half_wave;
        if peak <= s.design_slope {
            return Length::default();
        }
        let cosine = (s.design_slope / peak).value.max(-1.0);
        let phase = cosine.acos();
        2.0 * s.amplitude * (phase.sin() - phase * cosine)
    };

    /// Water that stands in a low spot: the pipe's segment summed over an invert that is a parabola,
    /// `V = int A(y) dx`, `y = d (1 - (2 x / L)²)`, A the area of flow of depth y.
    SagVolume "volume of standing water" {
        /// Inside diameter.
        inside_diameter "D": Length as Diameter,
        /// Depth of the water at the lowest point.
        depth "d": Length as Offset,
        /// Length of the water.
        length "L": Length as Distance,
    } -> Volume as SagVolume;
    form "V = integral of the area of flow in inside_diameter of depth (1 - (2 x/length)^2) over the length";
    from Judgement "jackpull" "level water over a parabola";
    valid "diameter positive, depth 0 to the diameter, length not negative"
        if |v| v.inside_diameter.value > 0.0
            && v.depth.value >= 0.0
            && v.depth <= v.inside_diameter
            && v.length.value >= 0.0;
    value |s| {
        let deepest = (s.depth / s.inside_diameter).value;
        // x = L/2 sin(t) makes the sum that of a smooth periodic function: equal steps are then as good as any.
        let step = FRAC_PI_2 / f64::from(STEPS);
        let sum: f64 = (0..STEPS)
            .map(|count| {
                let cosine = (f64::from(count) * step).cos();
                let ratio = (deepest * cosine * cosine).clamp(0.0, 1.0);
                let once = segment(2.0 * (1.0 - 2.0 * ratio).acos()) / 8.0 * cosine;
                // The middle counts once, every other point on both sides of it.
                if count == 0 { once } else { 2.0 * once }
            })
            .sum();
        s.inside_diameter * s.inside_diameter * s.length * (sum * step / 2.0)
    };
}
