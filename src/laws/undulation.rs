//! What an uneven invert does to the slope, and the water that stands in a low spot.

use crate::law::laws;
use crate::quantity::{Length, Ratio};
use core::f64::consts::PI;

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
        amplitude "e": Length as Offset [>= 0.0],
        /// Distance from a high spot to the next low one.
        half_wave "lambda": Length as Distance [> 0.0],
    } -> Ratio as Slope;
    form "slope = pi amplitude / half_wave";
    from Judgement "jackpull" "slope of a sine wave where it crosses its line";
    valid "amplitude not negative, half wave positive";
    value |s| PI * s.amplitude / s.half_wave;

    /// Depth of the water that stands in the low spots of a waving invert:
    /// `d = 2 e (sin(phi) - phi cos(phi))`, `cos(phi) = S lambda / (pi e)`; 0 where the pipe falls all the way.
    ///
    /// For a sine wave; 2 e on a level line.
    SagDepth "depth of standing water" {
        /// Slope of the line.
        design_slope "S": Ratio as Slope [>= 0.0],
        /// Greatest error of the invert.
        amplitude "e": Length as Offset [>= 0.0],
        /// Distance from a high spot to the next low one.
        half_wave "lambda": Length as Distance [> 0.0],
    } -> Length as Offset;
    form "d = 2 amplitude (sin(phi) - phi cos(phi)), cos(phi) = design_slope half_wave / (pi amplitude)";
    from Judgement "jackpull" "rise of the invert from a low spot to the next high one, line plus sine wave";
    valid "slope and amplitude not negative, half wave positive";
    value |s| {
        let peak = PI * s.amplitude / s.half_wave;
        if peak <= s.design_slope {
            return Length::default();
        }
        let cosine = (s.design_slope / peak).value.max(-1.0);
        let phase = cosine.acos();
        2.0 * s.amplitude * (phase.sin() - phase * cosine)
    };
}
