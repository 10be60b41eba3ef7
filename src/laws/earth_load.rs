//! Load on a rigid pipe in service, and the strength it asks for in the test between three edges.
//!
//! Earth load is [`MarstonLoad`](super::soil::MarstonLoad) without cohesion, with the buoyant unit weight below water
//! and the water added by [`PressureOnPipe`]. Where cohesion is counted, [`FloorColumn`] and a second `MarstonLoad`
//! without it give the [`FlooredLoad`]. Traffic is a printed pressure.
//!
//! ```
//! // Bore 0.6 m, cover 6 m, 19 kN/m3, k 0.130, cohesion 5.7 kPa: nothing is left, but for the floor: 10.7 kN/m.
//! use jackpull::law::Law;
//! use jackpull::laws::earth_load::{FloorColumn, FlooredLoad};
//! use jackpull::laws::soil::MarstonLoad;
//! use jackpull::quantity::{FromText, Length, LineLoad, Pressure, Ratio, UnitWeight};
//! let (bore, depth) = (Length::from_text("0.6 m")?, Length::from_text("6 m")?);
//! let (unit_weight, lateral_friction) = (UnitWeight::from_text("19 kN/m3")?, Ratio::from_text("0.130")?);
//! let marston = |depth, cohesion| MarstonLoad { unit_weight, bore, depth, lateral_friction, cohesion }.value();
//! let load = marston(depth, Pressure::from_text("5.7 kPa")?);
//! let column = FloorColumn { depth, bore, bores: Ratio::from_text("2")? }.value();
//! let floored = FlooredLoad { load, floor: marston(column, Pressure::default()) }.value();
//! assert!(load < LineLoad::from_text("1 N/m")?);
//! // C at two bores is 1.560: 1.560 x 19 x 0.36.
//! assert!((floored - LineLoad::from_text("10.67 kN/m")?).abs() < LineLoad::from_text("5 N/m")?);
//! # Ok::<(), jackpull::quantity::QuantityError>(())
//! ```

use crate::law::laws;
use crate::quantity::{Length, LineLoad, Pressure, Ratio};
use core::f64::consts::PI;

laws! {
    /// Height of the column of ground that is taken to rest on the pipe whatever its cohesion: `h = min(H, n B)`.
    FloorColumn "column that always rests on the pipe" {
        /// Depth of the crown.
        depth "H": Length as Depth [>= 0.0],
        /// Largest bore.
        bore "B": Length as Diameter [> 0.0],
        /// Height over bore (1.5 to 2).
        bores "n": Ratio as Ratio [>= 1.0 <= 3.0],
    } -> Length as Depth;
    form "h = min(depth, bores bore)";
    from Judgement "jackpull" "least earth load where cohesion is counted: a loosened column of 1.5 to 2 bores";
    valid "depth not negative, bore positive, 1 to 3 bores";
    value |s| s.depth.min(s.bores * s.bore);

    /// Earth load with a floor: `W = max(W_c, W_0)`.
    FlooredLoad "earth load with cohesion, floored" {
        /// Load with cohesion.
        load "W_c": LineLoad as LineWeight [>= 0.0],
        /// Load without cohesion of the column that always rests on the pipe, that of [`FloorColumn`].
        floor "W_0": LineLoad as LineWeight [>= 0.0],
    } -> LineLoad as LineWeight;
    form "W = max(load, floor)";
    from Judgement "jackpull" "least earth load where cohesion is counted";
    valid "loads not negative";
    value |s| s.load.max(s.floor);

    /// Load of a uniform pressure on the breadth of the pipe: `W = f p D`.
    ///
    /// Water presses all round: as a load from above it is counted on the safe side.
    PressureOnPipe "load of a pressure on a pipe" {
        /// Pressure at the crown (of traffic, or of water).
        pressure "p": Pressure as UnitFriction [>= 0.0],
        /// Impact factor (impact; 1 for water and where impact is inside).
        factor "f": Ratio as Ratio [>= 1.0 <= 2.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
    } -> LineLoad as LineWeight;
    form "W = factor pressure outside_diameter";
    from Judgement "jackpull" "statics of a uniform pressure on the breadth of the pipe";
    valid "pressure not negative, diameter positive, factor 1 to 2";
    value |s| s.factor * s.pressure * s.outside_diameter;

    /// Strength between three edges that a pipe in service needs: `T = (W_e / b_e + W_l / b_l) n`.
    ///
    /// With one bedding factor for both, or no live load, it is the older and printed form `T = W n / b`.
    ///
    /// ```
    /// // 11,172 lb/ft, bedding factor 1.5, safety 1.5: 11,172 lb/ft.
    /// use jackpull::law::Law;
    /// use jackpull::laws::earth_load::CrushingStrengthNeeded;
    /// use jackpull::quantity::{FromText, LineLoad, Ratio};
    /// let needed = CrushingStrengthNeeded {
    ///     earth_load: LineLoad::from_text("11172 plf")?,
    ///     earth_bedding_factor: Ratio::from_text("1.5")?,
    ///     live_load: LineLoad::from_text("0 plf")?,
    ///     live_bedding_factor: Ratio::from_text("1.5")?,
    ///     safety: Ratio::from_text("1.5")?,
    /// };
    /// assert!((needed.value() - LineLoad::from_text("11172 plf")?).abs() < LineLoad::from_text("0.5 plf")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    CrushingStrengthNeeded "crushing strength that a pipe needs" {
        /// Earth load.
        earth_load "W_e": LineLoad as LineWeight [>= 0.0],
        /// Its bedding factor (with water).
        earth_bedding_factor "b_e": Ratio as Ratio [>= 1.0],
        /// Live load.
        live_load "W_l": LineLoad as LineWeight [>= 0.0],
        /// Its bedding factor.
        live_bedding_factor "b_l": Ratio as Ratio [>= 1.0],
        /// Safety factor.
        safety "n": Ratio as Ratio [>= 1.0],
    } -> LineLoad as LineWeight;
    form "T = (earth_load/earth_bedding_factor + live_load/live_bedding_factor) safety";
    from Memory "acpa_design_manual"
        "chapter 4, selection of pipe strength; with one factor for both as eq. 3.2 and p. 250 of Moser";
    valid "rigid pipe, loads not negative, bedding factors and safety at least 1";
    value |s| s.safety * (s.earth_load / s.earth_bedding_factor + s.live_load / s.live_bedding_factor);

    /// Strength between three edges of a pipe that is classed by force per length and diameter (D-load): `T = q d`.
    StrengthOfClass "crushing strength of a class" {
        /// Force per length and diameter.
        class_load "q": Pressure as UnitFriction [> 0.0],
        /// Inside diameter (inside diameter; nominal size for clay).
        size "d": Length as Diameter [> 0.0],
    } -> LineLoad as LineWeight;
    form "T = class_load size";
    from Published "moser_buried_pipe" "p. 82, example 3.1, strength between three edges beside the D-load";
    valid "class load and size positive";
    value |s| s.class_load * s.size;

    /// Strength between three edges of a ring that breaks where it bends most, under the load: `T = pi f t^2/(3 (D - t))`.
    ///
    /// A thin ring bends there by `T R/pi`; in a thick one the stress is up to a tenth more.
    RingBreaks "crushing strength of a ring by its wall" {
        /// Strength in bending.
        strength "f": Pressure as Strength [> 0.0],
        /// Outside diameter.
        outside_diameter "D": Length as Diameter [> 0.0],
        /// Wall.
        wall "t": Length as Wall [> 0.0],
    } -> LineLoad as LineWeight;
    form "T = pi strength wall^2 / (3 (outside_diameter - wall))";
    from Judgement "jackpull" "statics of a thin ring between two loads";
    valid "arguments positive, wall at most a quarter of the diameter" if |s| s.wall <= 0.25 * s.outside_diameter;
    value |s| PI * s.strength * s.wall * (s.wall / (3.0 * (s.outside_diameter - s.wall))).value;
}
