//! How far a guided pilot strays from its line.

use crate::law::laws;
use crate::quantity::Length;

laws! {
    /// Error at the far end of a pilot that is guided by a beam of light: `e0 (L / L0)^2`, and no less than a least one.
    ///
    /// A beam across which the air is not equally warm bends, and strays with the square of its way.
    GuidedError "error of a guided pilot" {
        /// Error at the length that it is told for.
        error "e0": Length as Offset [>= 0.0],
        /// That length.
        told_at "L0": Length as Distance [> 0.0],
        /// Length of the drive.
        length "L": Length as Distance [> 0.0],
        /// Least error, however short the drive.
        least "e1": Length as Offset [>= 0.0],
    } -> Length as Offset;
    form "e = max(least, error (length / told_at)^2)";
    from Judgement "jackpull" "error of a beam that bends in air of uneven warmth, which goes with the square of its way";
    valid "error and least not negative, lengths positive";
    value |s| {
        let share = s.length / s.told_at;
        s.least.max(s.error * share * share)
    };

    /// Rise of a curve over its chord: `s = L^2 / (8 R)`.
    ///
    /// What is sighted from one end of the curve to the other has to pass this far inside of it.
    Sagitta "rise of a curve over its chord" {
        /// Length of the curve.
        length "L": Length as Distance [>= 0.0],
        /// Its radius.
        radius "R": Length as Distance [> 0.0],
    } -> Length as Offset;
    form "s = length^2 / (8 radius)";
    from Judgement "jackpull" "geometry of a flat arc; of a length along the curve on the safe side";
    valid "length not negative, radius positive";
    value |s| s.length * (s.length / s.radius).value / 8.0;
}
