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

use crate::law::law;
use crate::quantity::{Length, LineLoad, Pressure, Ratio};
use crate::source::{Equation, Mark};

law! {
    /// Height of the column of ground that is taken to rest on the pipe whatever its cohesion: `h = min(H, n B)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | H | `depth` (to the crown) | length |
    /// | B | `bore` | length |
    /// | n | `bores` (1.5 to 2) | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 1 to 3 bores.
    FloorColumn {
        /// Depth of the crown.
        depth: Length as Depth,
        /// Largest bore.
        bore: Length as Diameter,
        /// Height over bore.
        bores: Ratio as Ratio,
    } -> Length as Depth
    { Equation {
        name: "column that always rests on the pipe",
        form: "h = min(depth, bores bore)",
        source: "jackpull",
        locator: "least earth load where cohesion is counted: a loosened column of 1.5 to 2 bores",
        mark: Mark::Judgement,
        valid: "depth not negative, bore positive, 1 to 3 bores",
    } }
    valid |v| v.depth.value >= 0.0 && v.bore.value > 0.0 && (1.0..=3.0).contains(&v.bores.value);
    value |s| s.depth.min(s.bores * s.bore);
}

law! {
    /// Earth load with a floor: `W = max(W_c, W_0)`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | W_c | `load` (with cohesion, over the whole depth) | force per length |
    /// | W_0 | `floor` (without cohesion, over the column of [`FloorColumn`]) | force per length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** loads that are not negative.
    FlooredLoad {
        /// Load with cohesion.
        load: LineLoad as LineWeight,
        /// Load of the column that always rests on the pipe.
        floor: LineLoad as LineWeight,
    } -> LineLoad as LineWeight
    { Equation {
        name: "earth load with cohesion, floored",
        form: "W = max(load, floor)",
        source: "jackpull",
        locator: "least earth load where cohesion is counted",
        mark: Mark::Judgement,
        valid: "loads not negative",
    } }
    valid |v| v.load.value >= 0.0 && v.floor.value >= 0.0;
    value |s| s.load.max(s.floor);
}

law! {
    /// Load of a uniform pressure on the breadth of the pipe: `W = f p D`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | p | `pressure` (of traffic, or of water) | pressure |
    /// | f | `factor` (impact; 1 for water and where impact is inside) | ratio |
    /// | D | `outside_diameter` | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** a factor from 1 to 2. Water presses all
    /// round: as a load from above it is counted on the safe side.
    PressureOnPipe {
        /// Pressure at the crown.
        pressure: Pressure as UnitFriction,
        /// Impact factor.
        factor: Ratio as Ratio,
        /// Outside diameter.
        outside_diameter: Length as Diameter,
    } -> LineLoad as LineWeight
    { Equation {
        name: "load of a pressure on a pipe",
        form: "W = factor pressure outside_diameter",
        source: "jackpull",
        locator: "statics of a uniform pressure on the breadth of the pipe",
        mark: Mark::Judgement,
        valid: "pressure not negative, diameter positive, factor 1 to 2",
    } }
    valid |v| v.pressure.value >= 0.0 && v.outside_diameter.value > 0.0 && (1.0..=2.0).contains(&v.factor.value);
    value |s| s.factor * s.pressure * s.outside_diameter;
}

law! {
    /// Strength between three edges that a pipe in service needs: `T = (W_e / b_e + W_l / b_l) n`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | W_e, b_e | `earth_load` (with water), `earth_bedding_factor` | force per length, ratio |
    /// | W_l, b_l | `live_load`, `live_bedding_factor` | force per length, ratio |
    /// | n | `safety` | ratio |
    ///
    /// With one bedding factor for both, or no live load, it is the older and printed form `T = W n / b`.
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** rigid pipe, factors of at least 1.
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
    CrushingStrengthNeeded {
        /// Earth load.
        earth_load: LineLoad as LineWeight,
        /// Its bedding factor.
        earth_bedding_factor: Ratio as Ratio,
        /// Live load.
        live_load: LineLoad as LineWeight,
        /// Its bedding factor.
        live_bedding_factor: Ratio as Ratio,
        /// Safety factor.
        safety: Ratio as Ratio,
    } -> LineLoad as LineWeight
    { Equation {
        name: "crushing strength that a pipe needs",
        form: "T = (earth_load/earth_bedding_factor + live_load/live_bedding_factor) safety",
        source: "acpa_design_manual",
        locator: "chapter 4, selection of pipe strength; with one factor for both as eq. 3.2 and p. 250 of Moser",
        mark: Mark::Memory,
        valid: "rigid pipe, loads not negative, bedding factors and safety at least 1",
    } }
    valid |v| v.earth_load.value >= 0.0
        && v.live_load.value >= 0.0
        && v.earth_bedding_factor.value >= 1.0
        && v.live_bedding_factor.value >= 1.0
        && v.safety.value >= 1.0;
    value |s| s.safety * (s.earth_load / s.earth_bedding_factor + s.live_load / s.live_bedding_factor);
}

law! {
    /// Strength between three edges of a pipe that is classed by force per length and diameter (D-load): `T = q d`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | q | `class_load` | pressure |
    /// | d | `size` (inside diameter; nominal size for clay) | length |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive arguments.
    StrengthOfClass {
        /// Force per length and diameter.
        class_load: Pressure as UnitFriction,
        /// Inside diameter.
        size: Length as Diameter,
    } -> LineLoad as LineWeight
    { Equation {
        name: "crushing strength of a class",
        form: "T = class_load size",
        source: "moser_buried_pipe",
        locator: "p. 82, example 3.1, strength between three edges beside the D-load",
        mark: Mark::Published,
        valid: "class load and size positive",
    } }
    valid |v| v.class_load.value > 0.0 && v.size.value > 0.0;
    value |s| s.class_load * s.size;
}
