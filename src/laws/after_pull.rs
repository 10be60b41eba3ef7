//! The pipe after the pull: how much it draws back, at once and by and by, how much it shrinks with its heat, and how
//! much to leave beyond the pits; and where in the bore it comes to lie.

use crate::law::law;
use crate::quantity::{Force, Length, Pressure, Ratio, ThermalExpansion, ThermodynamicTemperature};
use crate::source::{Equation, Mark};
use core::f64::consts::PI;

law! {
    /// Stretch of the string under a tension that falls evenly from head to tail, which comes back after release:
    /// `dL = (T_h + T_t) L / (2 E pi (D - t) t)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | T_h, T_t | `head_tension`, `tail_tension` | force |
    /// | L | `length` | length |
    /// | E | `modulus`: apparent, at the duration of the pull, for the whole stretch; short-term for what springs back | pressure |
    /// | D, t | `outside_diameter`, `wall` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a tension not negative anywhere.
    PullStretch {
        /// Tension at the head.
        head_tension: Force as Pull,
        /// Tension at the tail.
        tail_tension: Force as Pull,
        /// Length of the string.
        length: Length as Distance,
        /// Modulus.
        modulus: Pressure as Modulus,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
    } -> Length as Offset
    { Equation {
        name: "stretch of the pulled string",
        form: "dL = (head_tension + tail_tension) length / (2 modulus pi (outside_diameter - wall) wall)",
        source: "jackpull",
        locator: "Hooke's law over an even fall of tension",
        mark: Mark::Judgement,
        valid: "tensions not negative, modulus positive, wall positive and below half the outside diameter",
    } }
    valid |v| v.head_tension.value >= 0.0
        && v.tail_tension.value >= 0.0
        && v.length.value >= 0.0
        && v.modulus.value > 0.0
        && v.wall.value > 0.0
        && 2.0 * v.wall < v.outside_diameter;
    value |s| {
        let section = PI * (s.outside_diameter - s.wall) * s.wall;
        (s.head_tension + s.tail_tension) * s.length / (2.0 * s.modulus * section)
    };
}

law! {
    /// Strain that has still to come back some time after the release: `e = s (1/E(t_p + t_r) - 1/E(t_r))`, a stress
    /// held for t_p and taken off t_r ago, by superposition.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | s | `stress` | pressure |
    /// | E(t_p + t_r) | `modulus_whole`: apparent, at the time since the pull began | pressure |
    /// | E(t_r) | `modulus_rest`: apparent, at the time since it ended | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a modulus that falls with time. Evaluated
    /// at several rests it tells how long to wait; the rows of `pe_modulus` begin at half an hour.
    DelayedStrain {
        /// Stress of the pull.
        stress: Pressure as Strength,
        /// Apparent modulus at the time since the pull began.
        modulus_whole: Pressure as Modulus,
        /// Apparent modulus at the time since the release.
        modulus_rest: Pressure as Modulus,
    } -> Ratio as Percent
    { Equation {
        name: "strain still to recover",
        form: "e = stress (1 / modulus_whole - 1 / modulus_rest)",
        source: "jackpull",
        locator: "superposition of a load and its removal, linear viscoelasticity",
        mark: Mark::Judgement,
        valid: "moduli positive, the one of the longer time not the larger, stress not negative",
    } }
    valid |v| v.stress.value >= 0.0 && v.modulus_whole.value > 0.0 && v.modulus_whole <= v.modulus_rest;
    value |s| s.stress / s.modulus_whole - s.stress / s.modulus_rest;
}

law! {
    /// Shortening of a string that cools to the ground: `dL = a L (T_w - T_g)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | a | `expansion` | length per length and temperature |
    /// | L | `length` | length |
    /// | T_w | `warm`, mean wall temperature when pulled | temperature |
    /// | T_g | `ground` | temperature |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION); rows of table `thermal_expansion`. **Valid for** falls
    /// or rises of up to 60 K. Negative: the string grows.
    ThermalShortening {
        /// Coefficient of expansion.
        expansion: ThermalExpansion as Expansion,
        /// Length of the string.
        length: Length as Distance,
        /// Temperature when pulled.
        warm: ThermodynamicTemperature as Temperature,
        /// Temperature of the ground.
        ground: ThermodynamicTemperature as Temperature,
    } -> Length as Offset
    { Equation {
        name: "shortening by cooling",
        form: "dL = expansion length (warm - ground)",
        source: "jackpull",
        locator: "definition of the coefficient of expansion",
        mark: Mark::Judgement,
        valid: "temperatures no more than 60 K apart",
    } }
    valid |v| (v.warm.value - v.ground.value).abs() <= MOST_COOLING && v.expansion.value >= 0.0 && v.length.value >= 0.0;
    value |s| s.length * (s.expansion.value * (s.warm.value - s.ground.value));
}

/// Largest change of temperature: from a wall in the sun (65 degC) to cold ground (ours).
const MOST_COOLING: f64 = 60.0;

law! {
    /// Stress in a pipe that is held at both ends while it cools: `s = E a (T_w - T_g)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | E | `modulus` (long term: plastics relax) | pressure |
    /// | a | `expansion` | length per length and temperature |
    /// | T_w | `warm` | temperature |
    /// | T_g | `ground` | temperature |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** falls or rises of up to 60 K. Tension
    /// where positive; it pulls on the tie-in.
    RestrainedCoolingStress {
        /// Modulus.
        modulus: Pressure as Modulus,
        /// Coefficient of expansion.
        expansion: ThermalExpansion as Expansion,
        /// Temperature when fixed.
        warm: ThermodynamicTemperature as Temperature,
        /// Temperature of the ground.
        ground: ThermodynamicTemperature as Temperature,
    } -> Pressure as Strength
    { Equation {
        name: "stress of a held pipe that cools",
        form: "s = modulus expansion (warm - ground)",
        source: "jackpull",
        locator: "Hooke's law with the strain that is held back",
        mark: Mark::Judgement,
        valid: "temperatures no more than 60 K apart",
    } }
    valid |v| (v.warm.value - v.ground.value).abs() <= MOST_COOLING && v.expansion.value >= 0.0;
    value |s| s.modulus * (s.expansion.value * (s.warm.value - s.ground.value));
}

law! {
    /// Length to leave beyond the pits before the string draws back: `L_x = k (dL_p + dL_t)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | dL_p | `stretch` (with the modulus of the pull's duration, so the delayed part is in it) | length |
    /// | dL_t | `cooling` | length |
    /// | k | `margin` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** margins of at least 1. A string that
    /// warms in the ground is not credited: then `cooling` is 0. Not less than the share of table `after_pull`.
    ExcessLength {
        /// Stretch of the pull.
        stretch: Length as Offset,
        /// Shortening by cooling.
        cooling: Length as Offset,
        /// Margin.
        margin: Ratio as Ratio,
    } -> Length as Distance
    { Equation {
        name: "length to leave beyond the pits",
        form: "L_x = margin (stretch + cooling)",
        source: "jackpull",
        locator: "sum of what comes back and what cools, with a margin",
        mark: Mark::Judgement,
        valid: "margin at least 1, neither length negative",
    } }
    valid |v| v.margin.value >= 1.0 && v.stretch.value >= 0.0 && v.cooling.value >= 0.0;
    value |s| s.margin * (s.stretch + s.cooling);
}

law! {
    /// Invert of a pipe that rests on the bottom of the bore, over that bottom: `z = h + t`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | h | `spacer` height, 0 without | length |
    /// | t | `wall` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** non-negative arguments.
    InvertAtRest {
        /// Height of the spacers.
        spacer: Length as Offset,
        /// Wall.
        wall: Length as Wall,
    } -> Length as Offset
    { Equation {
        name: "invert of a pipe at rest",
        form: "z = spacer + wall, over the bottom of the bore",
        source: "jackpull",
        locator: "geometry of a circle in a circle",
        mark: Mark::Judgement,
        valid: "neither argument negative",
    } }
    valid |v| v.spacer.value >= 0.0 && v.wall.value >= 0.0;
    value |s| s.spacer + s.wall;
}

law! {
    /// Invert of a pipe that floats against the crown of the bore, over the bottom: `z = D_b - h - D + t`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | D_b | `bore` | length |
    /// | h | `spacer` height, 0 without | length |
    /// | D, t | `outside_diameter`, `wall` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a bore that pipe and both spacers fit
    /// into. The line is uncertain by the difference to [`InvertAtRest`], all clearance that the spacers leave.
    InvertAfloat {
        /// Bore.
        bore: Length as Diameter,
        /// Height of the spacers.
        spacer: Length as Offset,
        /// Outside diameter of the pipe.
        outside_diameter: Length as Diameter,
        /// Wall.
        wall: Length as Wall,
    } -> Length as Offset
    { Equation {
        name: "invert of a pipe afloat",
        form: "z = bore - spacer - outside_diameter + wall, over the bottom of the bore",
        source: "jackpull",
        locator: "geometry of a circle in a circle",
        mark: Mark::Judgement,
        valid: "bore at least the pipe and two spacers, wall not negative",
    } }
    valid |v| v.spacer.value >= 0.0
        && v.wall.value >= 0.0
        && v.bore >= v.outside_diameter + 2.0 * v.spacer;
    value |s| s.bore - s.spacer - s.outside_diameter + s.wall;
}
