//! What the end of a vitrified clay jacking pipe can bear.

use crate::law::law;
use crate::quantity::{Area, Force, Pressure, Ratio};
use crate::source::{Equation, Mark};

law! {
    /// The end bearing area behind a printed rating: `A = P n / f`.
    ///
    /// The end of a recessed-joint clay pipe bears on much less than its barrel (8 in: about two thirds); the area
    /// is printed nowhere, the rating, its factor and its strength are.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | P | `rating` | force |
    /// | n | `factor` | ratio |
    /// | f | `strength` | pressure |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** positive arguments.
    EndAreaFromRating {
        /// Printed allowable jacking force.
        rating: Force as Thrust,
        /// Factor the rating holds.
        factor: Ratio as Ratio,
        /// Strength the rating rests on.
        strength: Pressure as Strength,
    } -> Area as Area
    { Equation {
        name: "end bearing area behind a rating",
        form: "A = rating factor / strength",
        source: "us_clay_pipe_sheet",
        locator: "inverse of the rating rule; the least of the three columns, since ratings are rounded",
        mark: Mark::Published,
        valid: "rating, factor and strength positive",
    } }
    valid |v| v.rating.value > 0.0 && v.factor.value > 0.0 && v.strength.value > 0.0;
    value |s| s.rating * s.factor / s.strength;
}

law! {
    /// Allowable jacking force with the force in the axis of the pipe: `P = A f / n`.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | A | `end_bearing_area` | area |
    /// | f | `strength` | pressure |
    /// | n | `factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** uniform stress only: with an angle at the
    /// joint use the lesser of this and [`EdgeEndForce`].
    ///
    /// ```
    /// // 8 in pipe: 29.1 in2, 7,000 psi, factor 3 gives 34 short tons.
    /// use jackpull::law::Law;
    /// use jackpull::laws::clay::ConcentricEndForce;
    /// use jackpull::quantity::{Area, Force, FromText, Pressure, Ratio};
    /// let allowed = ConcentricEndForce {
    ///     end_bearing_area: Area::from_text("29.1 in2")?,
    ///     strength: Pressure::from_text("7000 psi")?,
    ///     factor: Ratio::from_text("3")?,
    /// };
    /// assert!((allowed.value() - Force::from_text("34 tonf_us")?).abs() < Force::from_text("0.5 tonf_us")?);
    /// # Ok::<(), jackpull::quantity::QuantityError>(())
    /// ```
    ConcentricEndForce {
        /// End bearing area.
        end_bearing_area: Area as Area,
        /// Compressive strength.
        strength: Pressure as Strength,
        /// Safety factor on uniform stress.
        factor: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force, concentric",
        form: "P = end_bearing_area strength / factor",
        source: "us_clay_pipe_sheet",
        locator: "rating rule of the dimension table, three factor columns",
        mark: Mark::Published,
        valid: "area and strength positive, factor at least 1",
    } }
    valid |v| v.end_bearing_area.value > 0.0 && v.strength.value > 0.0 && v.factor.value >= 1.0;
    value |s| s.end_bearing_area * s.strength / s.factor;
}

law! {
    /// Allowable jacking force that keeps the most stressed edge of the joint within its limit:
    /// `P = r A f / n_edge`, r the mean over the greatest stress in the joint.
    ///
    /// r is 0.5 for a joint that bears over its whole face down to zero at one edge, and falls fast once it gapes.
    ///
    /// | symbol | argument | dimension |
    /// |---|---|---|
    /// | r | `stress_ratio` | ratio |
    /// | A | `end_bearing_area` | area |
    /// | f | `strength` | pressure |
    /// | n_edge | `factor` | ratio |
    ///
    /// **Source** [`Law::EQUATION`](crate::law::Law::EQUATION). **Valid for** 0 < r <= 1.
    EdgeEndForce {
        /// Mean over greatest stress.
        stress_ratio: Ratio as Ratio,
        /// End bearing area.
        end_bearing_area: Area as Area,
        /// Compressive strength.
        strength: Pressure as Strength,
        /// Safety factor on the greatest edge stress.
        factor: Ratio as Ratio,
    } -> Force as Thrust
    { Equation {
        name: "allowable jacking force, stress at the edge of the joint",
        form: "P = stress_ratio end_bearing_area strength / factor",
        source: "jackpull",
        locator: "linear stress over the joint face; a factor 3 on uniform stress is 1.5 on a full-face triangle",
        mark: Mark::Judgement,
        valid: "stress ratio above 0 and at most 1, factor at least 1",
    } }
    valid |v| v.stress_ratio.value > 0.0 && v.stress_ratio.value <= 1.0 && v.factor.value >= 1.0;
    value |s| s.stress_ratio * s.end_bearing_area * s.strength / s.factor;
}
