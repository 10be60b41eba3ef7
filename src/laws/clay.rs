//! What the end of a vitrified clay jacking pipe can bear.

use crate::law::laws;
use crate::quantity::{Area, Force, Pressure, Ratio};

laws! {
    /// The end bearing area behind a printed rating: `A = P n / f`.
    ///
    /// The end of a recessed-joint clay pipe bears on much less than its barrel (8 in: about two thirds); the area
    /// is printed nowhere, the rating, its factor and its strength are.
    EndAreaFromRating "end bearing area behind a rating" {
        /// Printed allowable jacking force.
        rating "P": Force as Thrust [> 0.0],
        /// Factor the rating holds.
        factor "n": Ratio as Ratio [> 0.0],
        /// Strength the rating rests on.
        strength "f": Pressure as Strength [> 0.0],
    } -> Area as Area;
    form "A = rating factor / strength";
    from Published "us_clay_pipe_sheet"
        "inverse of the rating rule; the least of the three columns, since ratings are rounded";
    valid "rating, factor and strength positive";
    value |s| s.rating * s.factor / s.strength;

    /// Allowable jacking force with the force in the axis of the pipe: `P = A f / n`.
    ///
    /// Uniform stress only: with an angle at the joint use the lesser of this and [`EdgeEndForce`].
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
    ConcentricEndForce "allowable jacking force, concentric" {
        /// End bearing area.
        end_bearing_area "A": Area as Area [> 0.0],
        /// Compressive strength.
        strength "f": Pressure as Strength [> 0.0],
        /// Safety factor on uniform stress.
        factor "n": Ratio as Ratio [>= 1.0],
    } -> Force as Thrust;
    form "P = end_bearing_area strength / factor";
    from Published "us_clay_pipe_sheet" "rating rule of the dimension table, three factor columns";
    valid "area and strength positive, factor at least 1";
    value |s| s.end_bearing_area * s.strength / s.factor;

    /// Allowable jacking force that keeps the most stressed edge of the joint within its limit:
    /// `P = r A f / n_edge`, r the mean over the greatest stress in the joint.
    ///
    /// r is 0.5 for a joint that bears over its whole face down to zero at one edge, and falls fast once it gapes.
    EdgeEndForce "allowable jacking force, stress at the edge of the joint" {
        /// Mean over greatest stress.
        stress_ratio "r": Ratio as Ratio [> 0.0 <= 1.0],
        /// End bearing area.
        end_bearing_area "A": Area as Area,
        /// Compressive strength.
        strength "f": Pressure as Strength,
        /// Safety factor on the greatest edge stress.
        factor "n_edge": Ratio as Ratio [>= 1.0],
    } -> Force as Thrust;
    form "P = stress_ratio end_bearing_area strength / factor";
    from Judgement "jackpull"
        "linear stress over the joint face; a factor 3 on uniform stress is 1.5 on a full-face triangle";
    valid "stress ratio above 0 and at most 1, factor at least 1";
    value |s| s.stress_ratio * s.end_bearing_area * s.strength / s.factor;
}
