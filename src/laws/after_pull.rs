//! The pipe after the pull: how much it draws back, at once and by and by, how much it shrinks with its heat, and how
//! much to leave beyond the pits; and where in the bore it comes to lie.

use crate::law::laws;
use crate::quantity::{Force, Length, Pressure, Ratio, ThermalExpansion, ThermodynamicTemperature};
use core::f64::consts::PI;

/// Largest change of temperature: from a wall in the sun (65 degC) to cold ground (ours).
const MOST_COOLING: f64 = 60.0;

laws! {
    /// Stretch of the string under a tension that falls evenly from head to tail, which comes back after release:
    /// `dL = (T_h + T_t) L / (2 E pi (D - t) t)`.
    PullStretch "stretch of the pulled string" {
        /// Tension at the head.
        head_tension "T_h": Force as Pull [>= 0.0],
        /// Tension at the tail.
        tail_tension "T_t": Force as Pull [>= 0.0],
        /// Length of the string.
        length "L": Length as Distance [>= 0.0],
        /// Modulus (apparent, at the duration of the pull, for the whole stretch; short-term for what springs back).
        modulus "E": Pressure as Modulus [> 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> Length as Offset;
    form "dL = (head_tension + tail_tension) length / (2 modulus pi (outside_diameter - wall) wall)";
    from Judgement "jackpull" "Hooke's law over an even fall of tension";
    valid "tensions not negative, modulus positive, wall positive and below half the outside diameter"
        if |v| 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let section = PI * (s.outside_diameter - s.wall) * s.wall;
        (s.head_tension + s.tail_tension) * s.length / (2.0 * s.modulus * section)
    };

    /// Strain that has still to come back some time after the release: `e = s (1/E(t_p + t_r) - 1/E(t_r))`, a stress
    /// held for t_p and taken off t_r ago, by superposition.
    ///
    /// Evaluated at several rests it tells how long to wait; the rows of `pe_modulus` begin at half an hour.
    DelayedStrain "strain still to recover" {
        /// Stress of the pull.
        stress "s": Pressure as Strength [>= 0.0],
        /// Apparent modulus at the time since the pull began.
        modulus_whole "E(t_p + t_r)": Pressure as Modulus [> 0.0],
        /// Apparent modulus at the time since the release.
        modulus_rest "E(t_r)": Pressure as Modulus,
    } -> Ratio as Percent;
    form "e = stress (1 / modulus_whole - 1 / modulus_rest)";
    from Judgement "jackpull" "superposition of a load and its removal, linear viscoelasticity";
    valid "moduli positive, the one of the longer time not the larger, stress not negative"
        if |v| v.modulus_whole <= v.modulus_rest;
    value |s| s.stress / s.modulus_whole - s.stress / s.modulus_rest;

    /// Shortening of a string that cools to the ground: `dL = a L (T_w - T_g)`.
    ///
    /// Rows of table `thermal_expansion`. Negative: the string grows.
    ThermalShortening "shortening by cooling" {
        /// Coefficient of expansion.
        expansion "a": ThermalExpansion as Expansion [>= 0.0],
        /// Length of the string.
        length "L": Length as Distance [>= 0.0],
        /// Temperature when pulled (mean wall temperature when pulled).
        warm "T_w": ThermodynamicTemperature as Temperature,
        /// Temperature of the ground.
        ground "T_g": ThermodynamicTemperature as Temperature,
    } -> Length as Offset;
    form "dL = expansion length (warm - ground)";
    from Judgement "jackpull" "definition of the coefficient of expansion";
    valid "temperatures no more than 60 K apart"
        if |v| (v.warm.value - v.ground.value).abs() <= MOST_COOLING;
    value |s| s.length * (s.expansion.value * (s.warm.value - s.ground.value));

    /// Stress in a pipe that is held at both ends while it cools: `s = E a (T_w - T_g)`.
    ///
    /// Tension where positive; it pulls on the tie-in.
    RestrainedCoolingStress "stress of a held pipe that cools" {
        /// Modulus (long term: plastics relax).
        modulus "E": Pressure as Modulus,
        /// Coefficient of expansion.
        expansion "a": ThermalExpansion as Expansion [>= 0.0],
        /// Temperature when fixed.
        warm "T_w": ThermodynamicTemperature as Temperature,
        /// Temperature of the ground.
        ground "T_g": ThermodynamicTemperature as Temperature,
    } -> Pressure as Strength;
    form "s = modulus expansion (warm - ground)";
    from Judgement "jackpull" "Hooke's law with the strain that is held back";
    valid "temperatures no more than 60 K apart"
        if |v| (v.warm.value - v.ground.value).abs() <= MOST_COOLING;
    value |s| s.modulus * (s.expansion.value * (s.warm.value - s.ground.value));

    /// Length to leave beyond the pits before the string draws back: `L_x = k (dL_p + dL_t)`.
    ///
    /// A string that warms in the ground is not credited: then `cooling` is 0. Not less than the share of table
    /// `after_pull`.
    ExcessLength "length to leave beyond the pits" {
        /// Stretch of the pull (with the modulus of the pull's duration, so the delayed part is in it).
        stretch "dL_p": Length as Offset [>= 0.0],
        /// Shortening by cooling.
        cooling "dL_t": Length as Offset [>= 0.0],
        /// Margin.
        margin "k": Ratio as Ratio [>= 1.0],
    } -> Length as Distance;
    form "L_x = margin (stretch + cooling)";
    from Judgement "jackpull" "sum of what comes back and what cools, with a margin";
    valid "margin at least 1, neither length negative";
    value |s| s.margin * (s.stretch + s.cooling);

    /// Invert of a pipe that rests on the bottom of the bore, over that bottom: `z = h + t`.
    InvertAtRest "invert of a pipe at rest" {
        /// Height of the spacers (height, 0 without).
        spacer "h": Length as Offset [>= 0.0],
        /// Wall.
        wall "t": Length as Wall [>= 0.0],
    } -> Length as Offset;
    form "z = spacer + wall, over the bottom of the bore";
    from Judgement "jackpull" "geometry of a circle in a circle";
    valid "neither argument negative";
    value |s| s.spacer + s.wall;

    /// Invert of a pipe that floats against the crown of the bore, over the bottom: `z = D_b - h - D + t`.
    ///
    /// The line is uncertain by the difference to [`InvertAtRest`], all clearance that the spacers leave.
    InvertAfloat "invert of a pipe afloat" {
        /// Bore.
        bore "D_b": Length as Diameter,
        /// Height of the spacers (height, 0 without).
        spacer "h": Length as Offset [>= 0.0],
        /// Outside diameter of the pipe.
        outside_diameter "D": Length as Diameter,
        /// Wall.
        wall "t": Length as Wall [>= 0.0],
    } -> Length as Offset;
    form "z = bore - spacer - outside_diameter + wall, over the bottom of the bore";
    from Judgement "jackpull" "geometry of a circle in a circle";
    valid "bore at least the pipe and two spacers, wall not negative"
        if |v| v.bore >= v.outside_diameter + 2.0 * v.spacer;
    value |s| s.bore - s.spacer - s.outside_diameter + s.wall;
}
